package practice

import (
	"context"
	"encoding/json"
	"time"
)

// poller is the getUpdates call that waits. A second call ends the first one,
// as at Telegram.
type poller struct {
	done   chan struct{}
	reason *apiError
}

func (p *poller) end(reason *apiError) {
	select {
	case <-p.done:
	default:
		p.reason = reason
		close(p.done)
	}
}

var errOtherPoll = &apiError{Code: 409, Text: "Conflict: terminated by other getUpdates request; make sure that only one bot instance is running"}

// getUpdates hands over what waits: from the offset on, which acknowledges all
// below it; negative, the last so many, forgetting those before them.
func (s *Server) getUpdates(ctx context.Context, p params) (any, error) {
	s.mu.Lock()
	if s.hook != nil {
		s.mu.Unlock()
		return nil, errHooked
	}
	s.allow(p)
	s.forget(p.int64("offset"))
	me := &poller{done: make(chan struct{})}
	if s.poll != nil {
		s.poll.end(errOtherPoll)
	}
	s.poll = me
	s.mu.Unlock()
	limit := p.int("limit")
	if limit < 1 || limit > 100 {
		limit = 100
	}
	wait := time.NewTimer(time.Duration(p.int("timeout")) * time.Second)
	defer wait.Stop()
	for {
		batch, changed := s.batch(p.int64("offset"), limit)
		if len(batch) > 0 {
			return batch, nil
		}
		select {
		case <-changed:
		case <-wait.C:
			return batch, nil
		case <-ctx.Done():
			return batch, nil
		case <-me.done:
			if me.reason != nil {
				return nil, me.reason
			}
			return batch, nil
		}
	}
}

// batch takes up to limit updates and notes that they were handed over.
func (s *Server) batch(offset int64, limit int) ([]json.RawMessage, <-chan struct{}) {
	s.mu.Lock()
	defer s.mu.Unlock()
	out := []json.RawMessage{}
	for _, u := range s.state.pending {
		if len(out) == limit || (u.ID < offset && !s.twice) {
			break
		}
		s.handed[u.ID]++
		out = append(out, u.Raw)
	}
	return out, s.changed
}

// forget drops what an offset acknowledges. While every update is to be handed
// over twice, one that was handed over once stays and comes again.
func (s *Server) forget(offset int64) {
	n := int64(len(s.state.pending))
	if offset < 0 && n > -offset {
		offset = s.state.pending[n+offset].ID
	}
	if offset <= 0 || n == 0 {
		return
	}
	if s.twice {
		offset = s.twiceHanded(offset)
	}
	if s.state.pending[0].ID < offset {
		s.record(Event{Did: DidAck, Offset: offset})
	}
}

// twiceHanded gives the offset up to which all were handed over twice.
func (s *Server) twiceHanded(offset int64) int64 {
	for _, u := range s.state.pending {
		if u.ID < offset && s.handed[u.ID] < 2 {
			return u.ID
		}
	}
	return offset
}

// allow keeps the kinds of update that the bot asks for; they hold for updates
// to come, as at Telegram.
func (s *Server) allow(p params) {
	var kinds []string
	if !p.json("allowed_updates", &kinds) {
		return
	}
	s.allowed = nil
	for _, k := range kinds {
		if s.allowed == nil {
			s.allowed = map[string]bool{}
		}
		s.allowed[k] = true
	}
}

// DeliverTwice makes the server hand every update over twice: it comes again
// after it was acknowledged the first time.
func (s *Server) DeliverTwice(on bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.twice = on
}

// Settled waits until the bot has acknowledged every update.
func (s *Server) Settled(ctx context.Context) error {
	for {
		s.mu.Lock()
		n, changed := len(s.state.pending), s.changed
		s.mu.Unlock()
		if n == 0 {
			return nil
		}
		select {
		case <-changed:
		case <-ctx.Done():
			return ctx.Err()
		}
	}
}
