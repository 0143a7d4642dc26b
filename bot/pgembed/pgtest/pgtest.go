//go:build unix

// Package pgtest gives tests a database: one private PostgreSQL a test binary,
// started when it is first asked for, and an empty, migrated database a test.
//
//	func TestMain(m *testing.M) { pgtest.Main(m) }
//
//	func TestIt(t *testing.T) {
//		book := pgtest.Ledger(t)
//	}
//
// It is for tests alone; nothing that it makes is kept.
package pgtest

import (
	"context"
	"fmt"
	"net/url"
	"os"
	"sync"
	"testing"
	"time"

	"leafround/bot/ledger"
	"leafround/bot/pgembed"
)

// Main runs a binary's tests and takes the server down after them.
func Main(m *testing.M) {
	code := m.Run()
	if err := shared.stop(); err != nil {
		fmt.Fprintln(os.Stderr, err)
		code = 1
	}
	os.Exit(code)
}

// server is the one server of this test binary.
type server struct {
	once     sync.Once
	err      error
	dir      string
	running  *pgembed.Server
	template string // name of a migrated database to copy

	mu   sync.Mutex
	free []string // addresses of empty databases
}

func (s *server) take(ctx context.Context) (string, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if n := len(s.free); n > 0 {
		url := s.free[n-1]
		s.free = s.free[:n-1]
		return url, nil
	}
	url, _, err := ledger.Fresh(ctx, s.running.URL(), s.template)
	return url, err
}

func (s *server) give(url string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.free = append(s.free, url)
}

var shared server

// URL gives the address of an empty database with the schema of today. After
// the test it is emptied and given to another.
func URL(t testing.TB) string {
	t.Helper()
	shared.once.Do(shared.start)
	if shared.err != nil {
		t.Fatal(shared.err)
	}
	url, err := shared.take(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := ledger.Empty(context.Background(), url); err != nil {
			t.Error(err)
			return
		}
		shared.give(url)
	})
	return url
}

// Ledger gives an open ledger on a fresh database; it is closed after the test.
func Ledger(t testing.TB) *ledger.Ledger {
	t.Helper()
	return Open(t, URL(t), ledger.Options{Backoff: func(int) time.Duration { return 0 }})
}

// Open opens a ledger and closes it after the test.
func Open(t testing.TB, url string, o ledger.Options) *ledger.Ledger {
	t.Helper()
	book, err := ledger.Open(t.Context(), url, o)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := book.Close(); err != nil {
			t.Error(err)
		}
	})
	return book
}

func (s *server) start() {
	ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
	defer cancel()
	if s.dir, s.err = os.MkdirTemp("", "lr-test-"); s.err != nil {
		return
	}
	if s.running, s.err = pgembed.Start(ctx, pgembed.Options{DataDir: s.dir, Fast: true}); s.err != nil {
		return
	}
	s.err = s.prepare(ctx)
}

// prepare makes the database that each test's own is copied from.
func (s *server) prepare(ctx context.Context) error {
	fresh, _, err := ledger.Fresh(ctx, s.running.URL(), "")
	if err != nil {
		return err
	}
	book, err := ledger.Open(ctx, fresh, ledger.Options{})
	if err != nil {
		return err
	}
	u, err := url.Parse(fresh)
	if err != nil {
		return err
	}
	s.template = u.Path[1:]
	return book.Close()
}

func (s *server) stop() error {
	if s.running != nil {
		if err := s.running.Stop(); err != nil {
			return err
		}
	}
	if s.dir == "" {
		return nil
	}
	return os.RemoveAll(s.dir)
}
