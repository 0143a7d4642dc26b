package send

import (
	"context"
	"errors"
	"math/rand/v2"
	"time"

	"leafround/bot/chat"
)

// result is what became of one send.
type result struct {
	due  chat.Due
	out  chat.Outgoing
	id   int // Telegram's number of what was sent
	err  error
	over time.Time
}

// note writes a result into the outbox.
type note struct {
	chat  int64
	write func(ctx context.Context, box Outbox) error
}

// sendTime is how long one send may take, pictures included.
const sendTime = 90 * time.Second

func (l *Loop) send(ctx context.Context, d chat.Due, out chat.Outgoing) {
	ctx, cancel := context.WithTimeout(ctx, sendTime)
	defer cancel()
	id, err := l.Bot.Send(ctx, out)
	l.over <- result{d, out, id, err, l.Clock.Now()}
}

// settle takes what is over and notes it. A note that can't be written now is
// kept, and its chat waits for it: a send that was answered is not made again.
func (l *Loop) settle(ctx context.Context) error {
	for more := true; more; {
		select {
		case r := <-l.over:
			l.take(r)
		default:
			more = false
		}
	}
	for len(l.notes) > 0 {
		n := l.notes[0]
		if err := n.write(ctx, l.box); err != nil {
			return err
		}
		l.notes = l.notes[1:]
		delete(l.busy, n.chat)
	}
	return nil
}

// take turns a result into a note and counts it against the pace.
func (l *Loop) take(r result) {
	if !free(r.out) {
		l.pacer.arrive(r.due.Chat, r.over)
	}
	l.notes = append(l.notes, note{r.due.Chat, l.judge(r)})
}

// mostCosmetic is how often an acknowledgement is tried: a reaction or buttons
// taken away an hour later help nobody.
const mostCosmetic = 4

// judge decides by a result what to write.
func (l *Loop) judge(r result) func(context.Context, Outbox) error {
	if r.err == nil {
		return func(ctx context.Context, box Outbox) error { return box.Sent(ctx, r.due.ID, r.id, r.over) }
	}
	why := r.err.Error()
	var told *chat.SendError
	if !errors.As(r.err, &told) {
		told = &chat.SendError{Fate: chat.Retry, Err: r.err}
	}
	log := l.Log.With("outbox", r.due.ID, "chat", r.due.Chat, "attempt", r.due.Attempts+1, "error", why)
	cosmetic := free(r.out) || r.out.React != "" || r.out.Strip != 0
	switch {
	case told.Fate == chat.Moved:
		log.Info("a group has become a supergroup; it is followed")
		return func(ctx context.Context, box Outbox) error { return box.Moved(ctx, r.due.Chat, told.NewChat) }
	case told.Fate == chat.GiveUp, cosmetic && r.due.Attempts+1 >= mostCosmetic:
		log.Error("a send is refused for good; it is given up")
		return func(ctx context.Context, box Outbox) error { return box.Fail(ctx, r.due.ID, why) }
	}
	wait := backoff(r.due.Attempts, told)
	log.Warn("a send failed; it will be tried again", "in", wait)
	l.pacer.lane(r.due.Chat).hold = r.over.Add(told.After)
	next := r.over.Add(wait)
	return func(ctx context.Context, box Outbox) error { return box.Retry(ctx, r.due.ID, next, why) }
}

// The pauses before a send is tried again (ours).
const (
	firstPause = 250 * time.Millisecond
	longPause  = 30 * time.Second
	tokenPause = time.Minute
)

// backoff doubles the pause with each failure, and waits at least as long as
// the server asks for.
func backoff(failures int, told *chat.SendError) time.Duration {
	if told.After > 0 {
		return told.After + rand.N(100*time.Millisecond)
	}
	if told.Fate == chat.BadToken {
		return tokenPause
	}
	pause := min(firstPause<<min(failures, 10), longPause)
	return pause + rand.N(pause/5)
}

// finish waits for what is under way, for the grace, and notes it.
func (l *Loop) finish(abort func()) {
	ctx, cancel := context.WithTimeout(context.Background(), l.Grace+5*time.Second)
	defer cancel()
	grace := time.After(l.Grace)
	for len(l.busy) > len(l.notes) {
		select {
		case r := <-l.over:
			l.take(r)
		case <-grace:
			abort() // each send ends with an error, and is tried again another day
			grace = nil
		}
	}
	for ctx.Err() == nil {
		err := l.lastNotes(ctx)
		if err == nil {
			return
		}
		l.Log.Warn("what was sent last could not be noted; trying again", "error", err)
		l.close()
		time.Sleep(reopenPause / 5)
	}
}

func (l *Loop) lastNotes(ctx context.Context) error {
	if len(l.notes) == 0 {
		return nil
	}
	if l.box == nil {
		box, err := l.Open(ctx)
		if err != nil {
			return err
		}
		l.box = box
	}
	return l.settle(ctx)
}
