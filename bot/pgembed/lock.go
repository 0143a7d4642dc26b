//go:build unix

package pgembed

import (
	"context"
	"errors"
	"fmt"
	"os"
	"syscall"
	"time"
)

const (
	shared    = syscall.LOCK_SH
	exclusive = syscall.LOCK_EX
)

// lock is a lock on a file (flock(2)). The kernel frees it when its holder
// dies, however it dies; a child does not inherit it.
type lock struct{ file *os.File }

// lock waits for a lock, as long as the context lasts.
func (p place) lock(ctx context.Context, name string, how int) (*lock, error) {
	path := p.file(name)
	f, err := os.OpenFile(path, os.O_CREATE|os.O_RDWR, 0o600)
	if err != nil {
		return nil, fmt.Errorf("can't use the data directory: %w", err)
	}
	if err := p.give(path); err != nil {
		f.Close()
		return nil, err
	}
	for {
		err := syscall.Flock(int(f.Fd()), how|syscall.LOCK_NB)
		if err == nil {
			return &lock{f}, nil
		}
		if !errors.Is(err, syscall.EWOULDBLOCK) && !errors.Is(err, syscall.EINTR) {
			f.Close()
			return nil, fmt.Errorf("pgembed: lock %s: %w", path, err)
		}
		if err := pause(ctx, 20*time.Millisecond); err != nil {
			f.Close()
			return nil, fmt.Errorf("another start or stop over this data directory takes too long (%s is locked)", path)
		}
	}
}

// alone tells whether nobody else holds the lock. It is shared again after, for
// a change of a lock that fails has lost it; whoever could come between waits
// for the start.lock that its caller holds.
func (l *lock) alone() bool {
	alone := syscall.Flock(int(l.file.Fd()), exclusive|syscall.LOCK_NB) == nil
	syscall.Flock(int(l.file.Fd()), shared|syscall.LOCK_NB)
	return alone
}

func (l *lock) free() { l.file.Close() }
