//go:build unix

package pgembed

import (
	"context"
	"fmt"
	"time"
)

// look is how often a program looks whether the server that it uses is up.
const look = time.Second

// watch starts the server anew when it is gone while we use it: it has
// crashed, or the program that started it has ended. Its address stays.
func (s *Server) watch() {
	defer close(s.watched)
	for {
		var died <-chan struct{}
		if c := s.child(); c != nil {
			died = c.done
		}
		select {
		case <-s.quit:
			return
		case <-died:
		case <-time.After(look):
		}
		if state, _ := s.place.postmaster(); state == ready || state == starting {
			continue
		}
		if err := s.revive(); err != nil {
			s.options.Log.Error("the private PostgreSQL is gone and can't be started; trying again", "error", err)
			select {
			case <-s.quit:
				return
			case <-time.After(look):
			}
		}
	}
}

func (s *Server) revive() error {
	ctx, cancel := context.WithTimeout(context.Background(), patience)
	defer cancel()
	gate, err := s.place.lock(ctx, "start.lock", exclusive)
	if err != nil {
		return err
	}
	defer gate.free()
	select {
	case <-s.quit:
		return nil // we are ending ourselves
	default:
	}
	s.setChild(nil)
	s.options.Log.Warn("the private PostgreSQL is gone; starting it again")
	if err := s.joinOrLaunch(ctx); err != nil {
		return fmt.Errorf("pgembed: start again: %w", err)
	}
	return nil
}
