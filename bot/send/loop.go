package send

import (
	"context"
	"log/slog"
	"time"

	"leafround/bot/chat"
)

// Outbox is what waits to be sent. It is used by one goroutine.
type Outbox interface {
	Heads(ctx context.Context) ([]chat.Due, error)
	LastSends(ctx context.Context, since time.Time) ([]chat.Due, error)
	Load(ctx context.Context, id int64) (out chat.Outgoing, ok bool, err error)
	Sent(ctx context.Context, id int64, messageID int, at time.Time) error
	Retry(ctx context.Context, id int64, next time.Time, why string) error
	Fail(ctx context.Context, id int64, why string) error
	Late(ctx context.Context, id int64) error
	Moved(ctx context.Context, from, to int64) error
	Close() error
}

// Bot sends one thing. Its errors are a [chat.SendError].
type Bot interface {
	Send(ctx context.Context, out chat.Outgoing) (messageID int, err error)
}

// Clock tells the time that sends are paced by.
type Clock interface {
	Now() time.Time
	After(d time.Duration) <-chan time.Time
}

// Loop empties an outbox.
type Loop struct {
	Open  func(ctx context.Context) (Outbox, error) // takes the sender's place
	Bot   Bot
	Rung  <-chan struct{} // tells that something new may wait
	Pace  Limits
	Clock Clock            // the wall clock if nil
	Now   func() time.Time // the farm's clock, by which things are late; Clock's if nil
	Log   *slog.Logger     // nil for silence
	Most  int              // sends under way at once; 0 means 16
	Grace time.Duration    // for what is under way when told to end; 0 means 10 seconds

	box   Outbox
	pacer *pacer
	busy  map[int64]bool // chats with a send under way, or one not yet noted
	over  chan result
	notes []note // what could not be noted yet
}

// Run sends until the context ends, then waits for what is under way.
func (l *Loop) Run(ctx context.Context) error {
	l.fill()
	ours, abort := context.WithCancel(context.WithoutCancel(ctx)) // sends outlive ctx by the grace
	defer abort()
	for ctx.Err() == nil {
		wait, err := l.round(ctx, ours)
		if err != nil && ctx.Err() == nil {
			l.Log.Warn("the outbox can't be worked on; trying again", "error", err)
			l.close()
			wait = reopenPause
		}
		l.rest(ctx, wait)
	}
	l.finish(abort)
	l.close()
	return nil
}

const (
	reopenPause = 200 * time.Millisecond
	longestRest = 5 * time.Second
	paceMemory  = time.Minute // how far back the longest of the limits reaches
)

func (l *Loop) fill() {
	if l.Clock == nil {
		l.Clock = wall{}
	}
	if l.Now == nil {
		l.Now = l.Clock.Now
	}
	if l.Log == nil {
		l.Log = slog.New(slog.DiscardHandler)
	}
	if l.Most == 0 {
		l.Most = 16
	}
	if l.Grace == 0 {
		l.Grace = 10 * time.Second
	}
	l.pacer, l.busy, l.over = newPacer(l.Pace), map[int64]bool{}, make(chan result, l.Most)
}

// round notes what is over and sends off all that may go now. It tells how
// long nothing more can be done, unless something happens.
func (l *Loop) round(ctx, ours context.Context) (time.Duration, error) {
	if l.box == nil {
		if err := l.reopen(ctx); err != nil {
			return 0, err
		}
	}
	if err := l.settle(ctx); err != nil {
		return 0, err
	}
	heads, err := l.box.Heads(ctx)
	if err != nil {
		return 0, err
	}
	wait := longestRest
	for _, d := range heads {
		if l.busy[d.Chat] {
			continue
		}
		if len(l.busy) >= l.Most {
			break // the end of one wakes us
		}
		w, err := l.start(ctx, ours, d)
		if err != nil {
			return 0, err
		}
		wait = min(wait, w)
	}
	return wait, nil
}

// start sends the head of a chat off if it may go now; else it tells how long
// it has to wait.
func (l *Loop) start(ctx, ours context.Context, d chat.Due) (time.Duration, error) {
	if !d.Until.IsZero() && l.Now().After(d.Until) {
		l.Log.Warn("what should have been sent by now is dropped", "outbox", d.ID, "chat", d.Chat, "until", d.Until)
		return 0, l.box.Late(ctx, d.ID)
	}
	now := l.Clock.Now()
	if at := later(l.pacer.next(d.Chat, d.Group, now), d.Next); at.After(now) {
		return at.Sub(now), nil
	}
	out, ok, err := l.box.Load(ctx, d.ID)
	if err != nil {
		return 0, err
	}
	if !ok {
		return 0, l.box.Fail(ctx, d.ID, "nothing left to do")
	}
	l.busy[d.Chat] = true
	if !free(out) {
		l.pacer.leave(now)
	}
	go l.send(ours, d, out)
	return longestRest, nil
}

// free tells whether a send counts against no limit: the answer to a press of
// a button is no message.
func free(out chat.Outgoing) bool { return out.AnswerTo != "" }

func (l *Loop) reopen(ctx context.Context) error {
	box, err := l.Open(ctx)
	if err != nil {
		return err
	}
	l.box = box
	last, err := box.LastSends(ctx, l.Clock.Now().Add(-paceMemory))
	if err != nil {
		return err
	}
	l.pacer = newPacer(l.Pace)
	for _, d := range last {
		l.pacer.leave(d.Next)
		l.pacer.arrive(d.Chat, d.Next)
	}
	return nil
}

func (l *Loop) close() {
	if l.box != nil {
		if err := l.box.Close(); err != nil {
			l.Log.Debug("the outbox was not closed cleanly", "error", err)
		}
		l.box = nil
	}
}

// rest waits until there may be something to do.
func (l *Loop) rest(ctx context.Context, wait time.Duration) {
	if wait <= 0 {
		return
	}
	select {
	case <-ctx.Done():
	case <-l.Rung:
	case r := <-l.over:
		l.take(r)
	case <-l.Clock.After(wait):
	}
}

// wall is the wall clock.
type wall struct{}

func (wall) Now() time.Time                         { return time.Now() }
func (wall) After(d time.Duration) <-chan time.Time { return time.After(d) }
