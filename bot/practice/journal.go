package practice

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
)

// Open makes a server whose events are kept in the file o.Journal: what it
// holds is read back first, and updates that the bot has not acknowledged are
// handed over again. A last line that was cut short by a crash is dropped.
func Open(o Options) (*Server, error) {
	if o.Journal == "" {
		return newServer(o), nil
	}
	s := newServer(o)
	f, err := os.OpenFile(o.Journal, os.O_RDWR|os.O_CREATE, 0o600)
	if err != nil {
		return nil, fmt.Errorf("practice: open the journal: %w", err)
	}
	if err := s.readJournal(f); err != nil {
		return nil, errors.Join(err, f.Close())
	}
	s.journal = f
	s.resumeClock()
	return s, nil
}

// readJournal folds every whole line and leaves the file cut behind the last.
func (s *Server) readJournal(f *os.File) error {
	r, good := bufio.NewReaderSize(f, 1<<16), int64(0)
	for line := 1; ; line++ {
		b, err := r.ReadBytes('\n')
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return fmt.Errorf("practice: read the journal: %w", err)
		}
		var e Event
		if err := json.Unmarshal(b, &e); err != nil {
			return fmt.Errorf("practice: line %d of the journal %s can't be read: %w", line, f.Name(), err)
		}
		s.state.apply(e)
		good += int64(len(b))
	}
	if err := f.Truncate(good); err != nil {
		return fmt.Errorf("practice: mend the journal: %w", err)
	}
	_, err := f.Seek(good, io.SeekStart)
	return err
}

// resumeClock puts the clock to where the journal left it.
func (s *Server) resumeClock() {
	events := s.state.events
	if s.options.Clock == nil || len(events) == 0 {
		return
	}
	var moved *Event
	last := events[0].At
	for i, e := range events {
		if e.Did == DidClock {
			moved = &events[i]
		}
		if e.At.After(last) {
			last = e.At
		}
	}
	s.options.Clock.resume(moved, last)
}

// write appends an event. A failure is kept for Err, and answered to the bot.
func (s *Server) write(e Event) {
	if s.journal == nil || s.failure != nil {
		return
	}
	var b bytes.Buffer
	if err := json.NewEncoder(&b).Encode(e); err != nil {
		s.failure = fmt.Errorf("practice: write the journal: %w", err)
		return
	}
	if _, err := s.journal.Write(b.Bytes()); err != nil {
		s.failure = fmt.Errorf("practice: write the journal: %w", err)
	}
}

// Err tells whether the journal could not be written.
func (s *Server) Err() error {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.failure
}

// Close ends the long polls that wait and closes the journal.
func (s *Server) Close() error {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.poll != nil {
		s.poll.end(nil)
	}
	s.unhook()
	if s.journal == nil {
		return nil
	}
	err := s.journal.Close()
	s.journal = nil
	return err
}
