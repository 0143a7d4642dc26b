package chat

import (
	"fmt"
	"time"
)

// Raw is an update as it was handed over, kept before anything else is done
// with it.
type Raw struct {
	UpdateID int64
	HasID    bool  // false where no number could be made out
	Chat     int64 // 0 where no chat could be made out
	JSON     []byte
	At       time.Time // when it was received
}

// Due is the first message that waits for a chat.
type Due struct {
	ID       int64
	Chat     int64
	Group    bool
	Attempts int       // sends that failed so far
	Next     time.Time // not to be tried before
	Until    time.Time // not to be sent after; zero: always
}

// Daily is a farm's wish for a daily summary. Days are midnights in UTC: the
// calendar's day, not a moment.
type Daily struct {
	Farm   int64
	Zone   string    // IANA
	Minute int       // of the local day
	From   time.Time // the first day
	Last   time.Time // the latest day that is done or skipped; zero: none
}

// Fate tells what to do after a send that failed.
type Fate string

// The fates.
const (
	Retry    Fate = "retry"     // try again, after a while
	GiveUp   Fate = "give up"   // the server refuses it for good
	Moved    Fate = "moved"     // the chat has a new id
	BadToken Fate = "bad token" // the server doesn't know the bot
)

// SendError is a send that failed, classed.
type SendError struct {
	Fate    Fate
	After   time.Duration // Retry: as long as the server told to wait, if it told
	NewChat int64         // Moved
	Err     error
}

// Error tells what went wrong.
func (e *SendError) Error() string { return fmt.Sprintf("%s: %v", e.Fate, e.Err) }

// Unwrap gives the cause.
func (e *SendError) Unwrap() error { return e.Err }
