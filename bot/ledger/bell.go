package ledger

import (
	"context"
	"fmt"
	"log/slog"
	"sync"
	"time"

	"github.com/lib/pq"
)

// Topic is something that can be waited for.
type Topic string

// The topics.
const (
	Inbox  Topic = "inbox"
	Outbox Topic = "outbox"
)

// channel is the one that the program listens on; the payload is the topic.
const channel = "leafround"

// ringSQL wakes whoever waits, when the transaction commits.
const ringSQL = `SELECT pg_notify('leafround', $1)`

// Bell rings when something new may be there. It may ring for nothing, and it
// keeps one ring that nobody waited for.
type Bell struct {
	hub   *hub
	topic Topic
	ring  chan struct{}
}

// Wait returns when the bell has rung, after atMost, or with the context's
// error.
func (b *Bell) Wait(ctx context.Context, atMost time.Duration) error {
	select {
	case <-ctx.Done():
		return ctx.Err()
	case <-b.ring:
	case <-time.After(atMost):
	}
	return nil
}

// Rung is the channel behind the bell, for a select of one's own.
func (b *Bell) Rung() <-chan struct{} { return b.ring }

// Close takes the bell down.
func (b *Bell) Close() { b.hub.remove(b) }

// Bell hangs up a bell for a topic.
func (l *Ledger) Bell(t Topic) *Bell {
	b := &Bell{hub: l.hub, topic: t, ring: make(chan struct{}, 1)}
	l.hub.add(b)
	return b
}

// hub passes notifications on to the bells.
type hub struct {
	listener *pq.Listener
	mu       sync.Mutex
	bells    map[*Bell]bool
}

func newHub(url string, log *slog.Logger) (*hub, error) {
	told := func(_ pq.ListenerEventType, err error) {
		if err != nil {
			log.Warn("the database's notifications are interrupted", "error", err)
		}
	}
	h := &hub{bells: map[*Bell]bool{}}
	h.listener = pq.NewListener(url, 50*time.Millisecond, 5*time.Second, told)
	if err := h.listener.Listen(channel); err != nil {
		h.listener.Close()
		return nil, fmt.Errorf("ledger: listen: %w", err)
	}
	go h.pass()
	return h, nil
}

// pass rings for each notification, and all bells after the connection was
// lost and found (a nil notification), since some may have been missed.
func (h *hub) pass() {
	for n := range h.listener.Notify {
		h.mu.Lock()
		for b := range h.bells {
			if n == nil || n.Extra == string(b.topic) {
				select {
				case b.ring <- struct{}{}:
				default:
				}
			}
		}
		h.mu.Unlock()
	}
}

func (h *hub) add(b *Bell) {
	h.mu.Lock()
	defer h.mu.Unlock()
	h.bells[b] = true
}

func (h *hub) remove(b *Bell) {
	h.mu.Lock()
	defer h.mu.Unlock()
	delete(h.bells, b)
}

func (h *hub) close() { h.listener.Close() } // it always returns nil, and closes Notify
