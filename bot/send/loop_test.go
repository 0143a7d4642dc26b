package send

import (
	"context"
	"errors"
	"fmt"
	"sync"
	"testing"
	"testing/synctest"
	"time"

	"github.com/stretchr/testify/require"

	"leafround/bot/chat"
)

// box is an outbox in memory.
type box struct {
	mu    sync.Mutex
	rows  []*row
	down  bool // the database does not answer
	moves int
}

type row struct {
	chat.Due
	text   string
	strip  bool
	state  string
	sentID int
}

var errDown = errors.New("the database does not answer")

func (b *box) add(chatID int64, group bool, text string) *row {
	b.mu.Lock()
	defer b.mu.Unlock()
	r := &row{Due: chat.Due{ID: int64(len(b.rows) + 1), Chat: chatID, Group: group}, text: text, state: "pending"}
	b.rows = append(b.rows, r)
	return r
}

func (b *box) Heads(context.Context) (heads []chat.Due, err error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.down {
		return nil, errDown
	}
	seen := map[int64]bool{}
	for _, r := range b.rows {
		if r.state == "pending" && !seen[r.Chat] {
			seen[r.Chat] = true
			heads = append(heads, r.Due)
		}
	}
	return heads, nil
}

func (b *box) LastSends(context.Context, time.Time) ([]chat.Due, error) { return nil, nil }

func (b *box) Load(_ context.Context, id int64) (chat.Outgoing, bool, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	r := b.rows[id-1]
	out := chat.Outgoing{Chat: r.Chat, HTML: r.text}
	if r.strip {
		out.Strip = 1
	}
	return out, true, nil
}

func (b *box) change(id int64, f func(*row)) error {
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.down {
		return errDown
	}
	f(b.rows[id-1])
	return nil
}

func (b *box) Sent(_ context.Context, id int64, messageID int, _ time.Time) error {
	return b.change(id, func(r *row) { r.state, r.sentID = "sent", messageID })
}

func (b *box) Retry(_ context.Context, id int64, next time.Time, _ string) error {
	return b.change(id, func(r *row) { r.Next = next; r.Attempts++ })
}

func (b *box) Fail(_ context.Context, id int64, _ string) error {
	return b.change(id, func(r *row) { r.state = "failed" })
}

func (b *box) Late(_ context.Context, id int64) error {
	return b.change(id, func(r *row) { r.state = "late" })
}

func (b *box) Moved(_ context.Context, from, to int64) error {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.moves++
	for _, r := range b.rows {
		if r.Chat == from && r.state == "pending" {
			r.Chat = to
		}
	}
	return nil
}

func (b *box) Close() error { return nil }

func (b *box) states() (all []string) {
	b.mu.Lock()
	defer b.mu.Unlock()
	for _, r := range b.rows {
		all = append(all, r.state)
	}
	return all
}

// server is a Bot API that answers each send after a while, as told.
type server struct {
	mu    sync.Mutex
	took  []arrival
	begun int
	reply func(n int, out chat.Outgoing) error // n counts the sends of this text, from 1
	delay time.Duration
}

type arrival struct {
	at   time.Time
	chat int64
	text string
}

func (s *server) Send(ctx context.Context, out chat.Outgoing) (int, error) {
	s.mu.Lock()
	s.begun++
	s.mu.Unlock()
	select {
	case <-time.After(s.delay):
	case <-ctx.Done():
		return 0, &chat.SendError{Fate: chat.Retry, Err: ctx.Err()}
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	s.took = append(s.took, arrival{time.Now(), out.Chat, out.HTML})
	n := 0
	for _, a := range s.took {
		if a.text == out.HTML {
			n++
		}
	}
	if s.reply != nil {
		if err := s.reply(n, out); err != nil {
			return 0, err
		}
	}
	return 1000 + len(s.took), nil
}

func (s *server) texts() (all []string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	for _, a := range s.took {
		all = append(all, a.text)
	}
	return all
}

// run runs a loop over a box for a while of the bubble's time.
func run(t *testing.T, b *box, s *server, pace Limits, d time.Duration) {
	t.Helper()
	ctx, cancel := context.WithTimeout(t.Context(), d)
	defer cancel()
	loop := Loop{Open: func(context.Context) (Outbox, error) { return b, nil }, Bot: s, Pace: pace}
	require.NoError(t, loop.Run(ctx))
}

func TestTheOrderOfAChatHoldsWhateverFails(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		b := &box{}
		s := &server{delay: 30 * time.Millisecond, reply: func(n int, out chat.Outgoing) error {
			if n <= int(out.HTML[len(out.HTML)-1]-'0')%3 { // some fail once, some twice
				return &chat.SendError{Fate: chat.Retry, Err: errors.New("502")}
			}
			return nil
		}}
		for i := range 10 {
			b.add(-100, true, fmt.Sprint("a", i))
			b.add(-200, true, fmt.Sprint("b", i))
		}
		run(t, b, s, Unpaced(), 5*time.Minute)
		last := map[byte]byte{}
		for _, text := range s.texts() {
			require.GreaterOrEqual(t, text[1], last[text[0]])
			last[text[0]] = text[1]
		}
		for _, state := range b.states() {
			require.Equal(t, "sent", state)
		}
	})
}

func TestThePaceOfTelegram(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		b, s := &box{}, &server{delay: 80 * time.Millisecond}
		for i := range 45 {
			b.add(-100, true, fmt.Sprint("group ", i))
		}
		for c := range 60 {
			b.add(int64(c+1), false, fmt.Sprint("person ", c))
			b.add(int64(c+1), false, fmt.Sprint("person again ", c))
		}
		run(t, b, s, Telegram(), 4*time.Minute)
		require.Len(t, s.took, 165)
		most := func(only func(arrival) bool, span time.Duration) (most int) {
			for i, a := range s.took {
				n := 0
				for _, later := range s.took[i:] {
					if only(later) && later.at.Sub(a.at) < span {
						n++
					}
				}
				most = max(most, n)
			}
			return most
		}
		require.LessOrEqual(t, most(func(arrival) bool { return true }, time.Second), 30)
		require.LessOrEqual(t, most(func(a arrival) bool { return a.chat == -100 }, time.Minute), 20)
		require.LessOrEqual(t, most(func(a arrival) bool { return a.chat == -100 }, time.Second), 1)
		require.LessOrEqual(t, most(func(a arrival) bool { return a.chat == 5 }, time.Second), 1)

		// And it does not dawdle: 120 messages to persons need four seconds at 30
		// a second, 45 to one group two minutes at 20 a minute.
		var people, group time.Duration
		for _, a := range s.took {
			took := a.at.Sub(s.took[0].at)
			if a.chat > 0 {
				people = max(people, took)
			} else {
				group = max(group, took)
			}
		}
		require.Less(t, people, 6*time.Second)
		require.Less(t, group, 130*time.Second)
	})
}

func TestAChatThatMustWaitHoldsUpNoOther(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		b := &box{}
		s := &server{reply: func(n int, out chat.Outgoing) error {
			if out.Chat == -100 && n == 1 {
				return &chat.SendError{Fate: chat.Retry, After: 40 * time.Second, Err: errors.New("429")}
			}
			return nil
		}}
		b.add(-100, true, "blocked")
		for i := range 5 {
			b.add(-200, true, fmt.Sprint("free ", i))
		}
		begin := time.Now()
		run(t, b, s, Unpaced(), 2*time.Minute)
		for _, a := range s.took[1:6] {
			require.Less(t, a.at.Sub(begin), time.Second)
		}
		require.Equal(t, "blocked", s.took[6].text)
		require.GreaterOrEqual(t, s.took[6].at.Sub(begin), 40*time.Second, "sent before the server's retry_after")
	})
}

func TestWhatIsRefusedForGoodIsGivenUpAndTheNextGoesOn(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		b := &box{}
		s := &server{reply: func(_ int, out chat.Outgoing) error {
			if out.HTML == "bad" {
				return &chat.SendError{Fate: chat.GiveUp, Err: errors.New("400")}
			}
			return nil
		}}
		b.add(-100, true, "bad")
		b.add(-100, true, "good")
		run(t, b, s, Unpaced(), time.Minute)
		require.Equal(t, []string{"bad", "good"}, s.texts())
		require.Equal(t, []string{"failed", "sent"}, b.states())
	})
}

func TestAnAcknowledgementIsNotTriedForEver(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		b := &box{}
		s := &server{reply: func(_ int, out chat.Outgoing) error {
			if out.Strip != 0 {
				return &chat.SendError{Fate: chat.Retry, Err: errors.New("no JSON")}
			}
			return nil
		}}
		b.add(-100, true, "").strip = true
		b.add(-100, true, "next")
		run(t, b, s, Unpaced(), time.Minute)
		require.Equal(t, []string{"failed", "sent"}, b.states())
	})
}

func TestWhatWasAnsweredIsNotSentAgainWhateverTheDatabaseDoes(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		b, s := &box{}, &server{delay: 100 * time.Millisecond}
		b.add(-100, true, "once")
		b.add(-100, true, "next")
		time.AfterFunc(50*time.Millisecond, func() { b.mu.Lock(); b.down = true; b.mu.Unlock() })
		time.AfterFunc(20*time.Second, func() { b.mu.Lock(); b.down = false; b.mu.Unlock() })
		run(t, b, s, Unpaced(), time.Minute)
		require.Equal(t, []string{"once", "next"}, s.texts())
	})
}

func TestWhatIsLateIsDropped(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		b, s := &box{}, &server{}
		b.add(-100, true, "morning").Until = time.Now().Add(-time.Second)
		b.add(-100, true, "in time").Until = time.Now().Add(time.Second)
		run(t, b, s, Unpaced(), time.Minute)
		require.Equal(t, []string{"in time"}, s.texts())
		require.Equal(t, []string{"late", "sent"}, b.states())
	})
}

func TestASupergroupIsFollowed(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		b := &box{}
		s := &server{reply: func(_ int, out chat.Outgoing) error {
			if out.Chat == -100 {
				return &chat.SendError{Fate: chat.Moved, NewChat: -1001, Err: errors.New("upgraded")}
			}
			return nil
		}}
		b.add(-100, true, "one")
		b.add(-100, true, "two")
		run(t, b, s, Unpaced(), time.Minute)
		require.Equal(t, []string{"one", "one", "two"}, s.texts())
		require.Equal(t, []string{"sent", "sent"}, b.states())
		require.Equal(t, 1, b.moves)
	})
}

func TestWhatIsUnderWayIsFinishedWhenToldToEnd(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		b, s := &box{}, &server{delay: 5 * time.Second}
		b.add(-100, true, "under way")
		b.add(-100, true, "not begun")
		run(t, b, s, Unpaced(), time.Second)
		require.Equal(t, []string{"sent", "pending"}, b.states())
	})
	synctest.Test(t, func(t *testing.T) {
		b, s := &box{}, &server{delay: time.Hour}
		b.add(-100, true, "hangs")
		begin := time.Now()
		run(t, b, s, Unpaced(), time.Second)
		require.Less(t, time.Since(begin), 20*time.Second)
		require.Equal(t, []string{"pending"}, b.states())
	})
}
