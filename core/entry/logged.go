package entry

import "time"

// Logged is an entry as the log keeps it. Nothing in the log is deleted: what
// was mended or withdrawn points to the entry that did so.
type Logged struct {
	ID         int64
	Entry      Entry
	SentAt     time.Time // when the message was written
	MemberID   int64
	Member     string // the name of who wrote it
	Manager    bool   // who wrote it was a manager then
	MessageID  int64  // our own number of the message it came in; entries of one message share it
	ReplacedBy int64  // the entry that mended or withdrew this one; 0 if it stands
}

// Stands tells whether the entry counts: not mended, not withdrawn.
func (l Logged) Stands() bool { return l.ReplacedBy == 0 }
