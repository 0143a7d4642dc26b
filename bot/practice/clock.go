package practice

import (
	"sync"
	"time"
)

// Clock is a clock that can be moved. It runs on with the wall clock, or
// stands still between moves when it is frozen.
type Clock struct {
	mu     sync.Mutex
	base   time.Time // what the clock showed at mark
	mark   time.Time // wall clock when it was set
	frozen bool
}

// NewClock gives a clock that shows t now and runs on.
func NewClock(t time.Time) *Clock { return &Clock{base: t, mark: time.Now()} }

// FrozenClock gives a clock that shows t until it is moved.
func FrozenClock(t time.Time) *Clock { return &Clock{base: t, mark: time.Now(), frozen: true} }

// Now tells what the clock shows.
func (c *Clock) Now() time.Time {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.now()
}

func (c *Clock) now() time.Time {
	if c.frozen {
		return c.base
	}
	return c.base.Add(time.Since(c.mark))
}

// Move puts the clock on by d and tells what it shows then.
func (c *Clock) Move(d time.Duration) time.Time {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.base, c.mark = c.now().Add(d), time.Now()
	return c.base
}

// Set puts the clock to t.
func (c *Clock) Set(t time.Time) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.base, c.mark = t, time.Now()
}

// Run lets a frozen clock run on from what it shows, or stops it.
func (c *Clock) Run(on bool) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.base, c.mark, c.frozen = c.now(), time.Now(), !on
}

// lead tells how far the clock is ahead of the wall clock.
func (c *Clock) lead() Lead { return time.Until(c.Now()) }

// resume puts the clock to where a journal left it: a running clock keeps its
// lead over the wall clock, a frozen one shows what it showed. It never falls
// behind the last thing that happened.
func (c *Clock) resume(moved *Event, last time.Time) {
	c.mu.Lock()
	defer c.mu.Unlock()
	if moved != nil {
		c.base, c.mark = moved.At, time.Now()
		if !c.frozen {
			c.base = c.mark.Add(moved.Lead)
		}
	}
	if c.now().Before(last) {
		c.base, c.mark = last, time.Now()
	}
}
