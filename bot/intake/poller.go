package intake

import (
	"context"
	"errors"
	"log/slog"
	"math/rand/v2"
	"net/http"
	"time"

	"leafround/bot/chat"
)

// Inbox is where updates are committed; one that it has already changes
// nothing.
type Inbox interface {
	Receive(ctx context.Context, updates []chat.Raw) error
}

// Kinds are the kinds of update that we ask for.
var Kinds = []string{"message", "edited_message", "callback_query", "my_chat_member"}

// Poller asks the Bot API for updates, again and again.
type Poller struct {
	URL   string // address of getUpdates, the token in it
	Inbox Inbox
	Log   *slog.Logger     // nil for silence
	Wait  time.Duration    // how long the server holds a call open; 0 means 50 seconds
	Now   func() time.Time // the wall clock if nil

	client *http.Client
	offset int64     // 0: from the first that the server has not been told to forget
	last   time.Time // when the last update came
}

const (
	firstPause = 100 * time.Millisecond
	longPause  = 5 * time.Second
	commitTime = 30 * time.Second
)

// trustOffset is how long an offset is worth something. After a quiet week
// the server may number updates anew, from anywhere, and an offset from before
// would hide the new ones (https://core.telegram.org/bots/api#update). The
// server remembers what it was told to forget, so none is needed then.
const trustOffset = 3 * 24 * time.Hour

// Run polls until the context ends. Whatever goes wrong is tried again.
func (p *Poller) Run(ctx context.Context) error {
	p.fill()
	pause := time.Duration(0)
	for ctx.Err() == nil {
		err := p.once(ctx)
		if err == nil {
			pause = 0
			continue
		}
		if ctx.Err() != nil {
			break
		}
		pause = min(max(2*pause, firstPause), longPause)
		wait := pause
		var told *serverError
		if errors.As(err, &told) && told.after > 0 {
			wait = told.after
		}
		p.Log.Warn("can't get updates; trying again", "in", wait, "error", err)
		sleep(ctx, wait+rand.N(wait/10+1))
	}
	return nil
}

func (p *Poller) fill() {
	if p.Log == nil {
		p.Log = slog.New(slog.DiscardHandler)
	}
	if p.Wait == 0 {
		p.Wait = 50 * time.Second
	}
	if p.Now == nil {
		p.Now = time.Now
	}
	p.client = &http.Client{Timeout: p.Wait + 15*time.Second}
	p.last = p.Now()
}

// once makes one call and commits what it brings. Only then does the offset
// move, and with the next call the server forgets.
func (p *Poller) once(ctx context.Context) error {
	if p.Now().Sub(p.last) > trustOffset {
		p.offset = 0
	}
	batch, err := p.ask(ctx)
	if err != nil || len(batch) == 0 {
		return err
	}
	updates, next := p.read(batch)
	// What was handed over is committed even if we are told to end meanwhile.
	commit, cancel := context.WithTimeout(context.WithoutCancel(ctx), commitTime)
	defer cancel()
	if err := p.Inbox.Receive(commit, updates); err != nil {
		return err
	}
	p.last = p.Now()
	if next == 0 {
		return errNoNumber
	}
	p.offset = next
	return nil
}

var errNoNumber = errors.New("the server hands over updates without a number; they are kept, but it can't be told to forget them")

// read gives updates as the inbox takes them, and the offset behind them.
func (p *Poller) read(batch [][]byte) (updates []chat.Raw, next int64) {
	now := p.Now()
	for _, raw := range batch {
		u := Read(raw, now)
		if !u.HasID {
			p.Log.Warn("an update has no number; it is kept")
		} else {
			next = max(next, u.UpdateID+1)
		}
		updates = append(updates, u)
	}
	return updates, next
}

func sleep(ctx context.Context, d time.Duration) {
	select {
	case <-ctx.Done():
	case <-time.After(d):
	}
}
