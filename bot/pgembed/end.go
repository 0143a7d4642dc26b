//go:build unix

package pgembed

import (
	"errors"
	"fmt"
	"os"
	"syscall"
)

// throwAway removes a throw-away cluster that lies where its maker would not
// look for it.
func (s *Server) throwAway() error {
	if !s.scratch || !s.place.away {
		return nil
	}
	if err := os.RemoveAll(s.place.home); err != nil {
		return fmt.Errorf("pgembed: throw a cluster away: %w", err)
	}
	return nil
}

// Kill ends the server at once, without a word, as a crash would: for tests of
// what comes after.
func (s *Server) Kill() error {
	_, note := s.place.postmaster()
	if note.pid <= 0 {
		return errors.New("pgembed: kill: no server runs")
	}
	if err := syscall.Kill(note.pid, syscall.SIGKILL); err != nil {
		return fmt.Errorf("pgembed: kill: %w", err)
	}
	return nil
}
