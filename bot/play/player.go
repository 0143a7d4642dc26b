package play

import (
	"context"
	"encoding/json"
	"fmt"
	"net/http"
	"net/http/httptest"
	"time"

	"leafround/bot"
	"leafround/bot/intake"
	"leafround/bot/ledger"
	"leafround/bot/practice"
	"leafround/bot/sched"
	"leafround/bot/script"
	"leafround/bot/telegram"
	"leafround/core/entry"
	"leafround/parser"
)

// Options say what a script is played on.
type Options struct {
	URL   string // an empty database
	Dir   string // where the script's files lie
	Twice bool   // hand every update over twice
}

// Player plays one script.
type Player struct {
	o      Options
	book   *ledger.Ledger
	clock  *practice.Clock
	server *practice.Server
	http   *httptest.Server
	client *telegram.Client
	sender *ledger.Sender
	bot    *bot.Bot
	sched  *sched.Sched
	zone   *time.Location
	offset int64

	seen   []bot.Outcome // of the step that runs
	groups map[int]int64
	people map[string]practice.Person
	said   map[int]spoken            // the script's messages by their number
	chosen map[practice.Person]int64 // managers to be, and the chat whose farm they will manage
}

// spoken is where a message of the script landed.
type spoken struct {
	chat int64
	id   int
}

// New makes a player on an empty database.
func New(ctx context.Context, o Options) (*Player, error) {
	book, err := ledger.Open(ctx, o.URL, ledger.Options{Backoff: func(int) time.Duration { return 0 }})
	if err != nil {
		return nil, err
	}
	p := &Player{o: o, book: book, groups: map[int]int64{}, people: map[string]practice.Person{}, said: map[int]spoken{},
		chosen: map[practice.Person]int64{}}
	p.clock = practice.FrozenClock(time.Unix(0, 0))
	p.server = practice.New(practice.Options{Clock: p.clock})
	p.server.DeliverTwice(o.Twice)
	p.http = httptest.NewServer(p.server)
	if p.client, err = telegram.New(p.server.Token(), telegram.Options{ServerURL: p.http.URL}); err != nil {
		p.Close()
		return nil, err
	}
	p.bot = bot.New(book, bot.Options{Decode: telegram.Decode, Now: p.clock.Now, Observe: p.observe,
		Fetch: func(ctx context.Context, id string) ([]byte, error) { return p.client.Download(ctx, id, 20<<20) }})
	p.sched = sched.New(bot.Mornings{Bot: p.bot}, p.clock.Now, nil)
	if p.sender, err = book.Sender(ctx); err != nil {
		p.Close()
		return nil, err
	}
	return p, nil
}

// Close ends the player's servers and connections.
func (p *Player) Close() error {
	if p.sender != nil {
		p.sender.Close()
	}
	p.http.Close()
	p.server.Close()
	return p.book.Close()
}

// Ledger gives what was played on, to be looked at afterwards.
func (p *Player) Ledger() *ledger.Ledger { return p.book }

func (p *Player) observe(o bot.Outcome) { p.seen = append(p.seen, o) }

// Printer takes what is played, in order.
type Printer interface {
	Verbatim(s string) error
	Message(m *script.Message, at time.Time, outcomes []bot.Outcome) error
	Unasked(o bot.Outcome) error
}

// Play plays a script to its end.
func (p *Player) Play(ctx context.Context, lines []script.Line, out Printer) error {
	p.zone = zoneOf(lines)
	for _, l := range lines {
		if l.Message == nil {
			if err := out.Verbatim(l.Verbatim); err != nil {
				return err
			}
			continue
		}
		if err := p.step(ctx, l, out); err != nil {
			return fmt.Errorf("script line %d: %w", l.Number, err)
		}
	}
	return nil
}

// zoneOf gives the zone of the script's first set-up; UTC where there is none.
func zoneOf(lines []script.Line) *time.Location {
	for _, l := range lines {
		if l.Message == nil {
			continue
		}
		r := parser.Read(l.Message.Text, parser.Context{Now: time.Unix(0, 0).UTC(), AnyPaddock: true})
		for _, e := range r.Entries {
			s, ok := e.(entry.Setup)
			if !ok || s.What != entry.SetFarm {
				continue
			}
			if zone, err := time.LoadLocation(s.Zone); err == nil {
				return zone
			}
		}
	}
	return time.UTC
}

func (p *Player) step(ctx context.Context, l script.Line, out Printer) error {
	at, err := l.Message.At(p.zone)
	if err != nil {
		return err
	}
	if at.Before(p.clock.Now()) {
		return fmt.Errorf("time goes back to %s", l.Message.Local)
	}
	if err := p.jobs(ctx, at, out); err != nil {
		return err
	}
	p.clock.Set(at)
	p.seen = nil
	if err := p.do(ctx, l.Message); err != nil {
		return err
	}
	if err := p.run(ctx); err != nil {
		return err
	}
	return out.Message(l.Message, at, p.seen)
}

// jobs runs what is due at or before a moment, each at its own.
func (p *Player) jobs(ctx context.Context, until time.Time, out Printer) error {
	for {
		next, ok, err := p.sched.Next(ctx, p.clock.Now())
		if err != nil {
			return err
		}
		if !ok || next.After(until) {
			return nil
		}
		p.clock.Set(next)
		p.seen = nil
		if err := p.sched.Tick(ctx, next); err != nil {
			return err
		}
		if err := p.drain(ctx); err != nil {
			return err
		}
		for _, o := range p.seen {
			if err := out.Unasked(o); err != nil {
				return err
			}
		}
	}
}

// run takes in all that waits, handles it and sends what comes of it.
func (p *Player) run(ctx context.Context) error {
	for {
		n, err := p.poll(ctx)
		if err != nil {
			return err
		}
		for {
			did, err := p.bot.Step(ctx)
			if err != nil {
				return err
			}
			if !did {
				break
			}
		}
		if err := p.drain(ctx); err != nil {
			return err
		}
		if n == 0 {
			return nil
		}
	}
}

// poll takes updates from the practice server into the inbox, as intake does.
func (p *Player) poll(ctx context.Context) (int, error) {
	req, err := http.NewRequestWithContext(ctx, http.MethodGet,
		fmt.Sprintf("%s?timeout=0&offset=%d", p.client.MethodURL("getUpdates"), p.offset), nil)
	if err != nil {
		return 0, err
	}
	resp, err := p.http.Client().Do(req)
	if err != nil {
		return 0, err
	}
	defer resp.Body.Close()
	var batch struct {
		Result []json.RawMessage `json:"result"`
	}
	if err := json.NewDecoder(resp.Body).Decode(&batch); err != nil {
		return 0, err
	}
	for _, raw := range batch.Result {
		u := intake.Read(raw, p.clock.Now())
		if err := p.book.Receive(ctx, rawOf(u)); err != nil {
			return 0, err
		}
		p.offset = max(p.offset, u.UpdateID+1)
	}
	return len(batch.Result), nil
}

// drain sends what waits, chat by chat in order.
func (p *Player) drain(ctx context.Context) error {
	for {
		heads, err := p.sender.Heads(ctx)
		if err != nil || len(heads) == 0 {
			return err
		}
		for _, d := range heads {
			o, ok, err := p.sender.Load(ctx, d.ID)
			if err != nil {
				return err
			}
			if !ok {
				if err := p.sender.Fail(ctx, d.ID, "nothing left to do"); err != nil {
					return err
				}
				continue
			}
			id, err := p.client.Send(ctx, o)
			if err != nil {
				return fmt.Errorf("the practice server refuses what the bot sends: %w", err)
			}
			if err := p.sender.Sent(ctx, d.ID, id, p.clock.Now()); err != nil {
				return err
			}
		}
	}
}
