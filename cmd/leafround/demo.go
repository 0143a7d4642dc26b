package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"time"

	"leafround/bot/invented"
	"leafround/bot/ledger"
	"leafround/bot/practice"
	"leafround/bot/sched"
)

// demoCmd is the whole bot with nothing to configure.
type demoCmd struct {
	storeFlags
	Pace   string `env:"LEAFROUND_PACE" enum:"telegram,none" default:"none" help:"none sends replies at once; telegram as slowly as Telegram wants it ($LEAFROUND_PACE)."`
	Listen string `env:"LEAFROUND_LISTEN" default:"127.0.0.1:8080" placeholder:"ADDRESS" help:"Address of the practice chat and the health pages; port 0 takes any free one ($LEAFROUND_LISTEN)."`
}

// demoFolder is the demo's own place in the data directory: its farm never
// meets a real one.
const demoFolder = "demo"

// Run runs the demo until the context ends.
func (c demoCmd) Run(ctx context.Context, s streams) (err error) {
	say := func(format string, a ...any) { fmt.Fprintf(s.err, "leafround: "+format+"\n", a...) }
	l, err := listen(c.Listen)
	if err != nil {
		return err
	}
	defer l.Close()
	dir, err := c.dir()
	if err != nil {
		return err
	}
	say("starting a private PostgreSQL in %s", filepath.Join(dir, demoFolder))
	log := logTo(io.Discard)
	book, err := c.open(ctx, demoFolder, false, log)
	if err != nil {
		return err
	}
	defer func() {
		if end := book.Close(); err == nil {
			err = end
		}
	}()
	d, err := openPractice(filepath.Join(dir, demoFolder))
	if err != nil {
		return err
	}
	defer d.server.Close()
	return c.perform(ctx, s, l, book, d, say)
}

// stage is the practice chat with its clock and cast.
type stage struct {
	server *practice.Server
	clock  *practice.Clock
	group  int64
	people []practice.Person
	fresh  bool
}

func openPractice(dir string) (*stage, error) {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return nil, fmt.Errorf("the folder %s can't be made: choose another with LEAFROUND_DATA_DIR (%w)", dir, err)
	}
	d := &stage{clock: practice.NewClock(time.Now())}
	var err error
	d.server, err = practice.Open(practice.Options{Clock: d.clock, Journal: filepath.Join(dir, "practice.jsonl")})
	if err != nil {
		return nil, err
	}
	d.fresh = d.server.Seq() == 0
	for _, name := range []string{invented.Ana, invented.Wiremu, invented.Jo} {
		d.people = append(d.people, d.server.AddPerson(name))
	}
	d.group = d.server.AddGroup(practice.Group{Title: "Totara Bend"})
	return d, nil
}

// perform runs the engine against the practice chat, tells the history first
// where the farm is new, and serves the page.
func (c demoCmd) perform(ctx context.Context, s streams, l net.Listener, book *store, d *stage, say func(string, ...any)) error {
	inside, err := net.Listen("tcp", "127.0.0.1:0") // the bot's own way to the practice server
	if err != nil {
		return fmt.Errorf("no free port on loopback: %w", err)
	}
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	served := make(chan error, 2)
	last, stopServing := context.WithCancel(context.WithoutCancel(ctx))
	defer stopServing()
	go func() { served <- serveUntil(last, inside, d.server) }()
	e, err := newEngine(ctx, book.Ledger, engineOptions{token: d.server.Token(),
		server: "http://" + inside.Addr().String(), pace: limits(c.Pace), now: d.clock.Now}, logTo(s.err))
	if err != nil {
		return err
	}
	ran := make(chan error, 1)
	go func() { ran <- e.run(ctx) }()
	if d.fresh {
		say("telling the farm's last season, a moment")
		err = d.tell(ctx, book.Ledger)
	}
	if err == nil && ctx.Err() == nil {
		go func() { served <- serveUntil(ctx, l, d.pages(ctx, e, book.Ledger)) }()
		fmt.Fprintf(s.out, "leafround: the practice chat is at http://%s/ (Ctrl-C ends it)\n", l.Addr())
		select {
		case <-ctx.Done():
		case err = <-served:
		}
	}
	stop()
	return errors.Join(err, <-ran)
}

// pages are the practice chat and the health pages under one address.
func (d *stage) pages(ctx context.Context, e *engine, book *ledger.Ledger) http.Handler {
	mux := http.NewServeMux()
	health := healthPages(book)
	for _, path := range []string{"/healthz", "/readyz", "/metrics"} {
		mux.Handle(path, health)
	}
	mux.Handle("/", d.server.Page(practice.Page{Group: d.group, People: d.people,
		Zone: func(int64) string { return invented.Zone },
		Move: func(by time.Duration) error { return d.move(ctx, e.sched, book, by) }}))
	return mux
}

// move puts the clock on, and stops at each moment at which something is due.
func (d *stage) move(ctx context.Context, s *sched.Sched, book *ledger.Ledger, by time.Duration) error {
	end := d.clock.Now().Add(by)
	for {
		next, ok, err := s.Next(ctx, d.clock.Now())
		if err != nil {
			return err
		}
		if !ok || next.After(end) {
			break
		}
		d.server.MoveClock(next.Sub(d.clock.Now()))
		if err := s.Tick(ctx, d.clock.Now()); err != nil {
			return err
		}
		if err := drained(ctx, book); err != nil { // what is due goes out before the clock leaps on
			return err
		}
	}
	d.server.MoveClock(max(0, end.Sub(d.clock.Now())))
	s.Kick()
	return nil
}

// tell has the team type the season, through the bot's own front door.
func (d *stage) tell(ctx context.Context, book *ledger.Ledger) error {
	now := time.Now()
	d.clock.Run(false)
	by := map[string]practice.Person{}
	for _, p := range d.people {
		by[p.Name] = p
	}
	day := 0
	for _, m := range invented.Season(now) {
		if m.At.YearDay() != day { // each day's replies come on that day
			day = m.At.YearDay()
			if err := d.settled(ctx, book); err != nil {
				return err
			}
		}
		d.clock.Set(m.At)
		if m.File != "" {
			d.server.SendFile(d.group, by[m.Who], m.File, []byte(m.Content), m.Text)
			continue
		}
		d.server.Say(d.group, by[m.Who], m.Text)
	}
	if err := d.settled(ctx, book); err != nil {
		return err
	}
	d.clock.Set(time.Now())
	d.clock.Run(true)
	return ctx.Err()
}

// settled waits until all that was said is handled and answered.
func (d *stage) settled(ctx context.Context, book *ledger.Ledger) error {
	if err := d.server.Settled(ctx); err != nil {
		return err
	}
	return drained(ctx, book)
}

// drained waits until nothing waits in the ledger, or for ten seconds.
func drained(ctx context.Context, book *ledger.Ledger) error {
	ctx, cancel := context.WithTimeout(ctx, 10*time.Second)
	defer cancel()
	for ctx.Err() == nil {
		w, err := book.Waiting(ctx)
		if err != nil && ctx.Err() == nil {
			return err
		}
		if err == nil && w.Inbox == 0 && w.Due == 0 {
			return nil
		}
		time.Sleep(4 * time.Millisecond)
	}
	return nil
}
