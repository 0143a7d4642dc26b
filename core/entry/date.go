package entry

import (
	"fmt"
	"time"
)

// Date is a day of the calendar, without an hour or a zone: days since
// 1970-01-01. The zero Date means "not told".
type Date int32

// NewDate gives the date of a year, month and day; values outside their usual
// range run over, as in [time.Date].
func NewDate(year int, month time.Month, day int) Date {
	return Date(time.Date(year, month, day, 0, 0, 0, 0, time.UTC).Unix() / 86400)
}

// DateOf gives the day on which t falls, in t's own zone.
func DateOf(t time.Time) Date { return NewDate(t.Year(), t.Month(), t.Day()) }

// ParseDate reads an ISO 8601 date (2026-11-25).
func ParseDate(s string) (Date, error) {
	t, err := time.Parse(time.DateOnly, s)
	if err != nil {
		return 0, fmt.Errorf("entry: %q is not a date like 2026-11-25", s)
	}
	return DateOf(t), nil
}

// Time gives midnight UTC of the day: for the calendar's fields and for
// formatting, never as a moment.
func (d Date) Time() time.Time { return time.Unix(int64(d)*86400, 0).UTC() }

// Start gives the first moment of the day in a zone; where a clock change
// skips midnight, the first that exists.
func (d Date) Start(zone *time.Location) time.Time {
	y, m, day := d.Time().Date()
	t := time.Date(y, m, day, 0, 0, 0, 0, zone)
	for DateOf(t) < d {
		t = t.Add(15 * time.Minute)
	}
	return t
}

// Add gives the date that many days later.
func (d Date) Add(days int) Date { return d + Date(days) }

// Sub gives the days from other to d.
func (d Date) Sub(other Date) int { return int(d) - int(other) }

// Weekday gives the day of the week.
func (d Date) Weekday() time.Weekday { return d.Time().Weekday() }

// IsZero tells whether the date was not told.
func (d Date) IsZero() bool { return d == 0 }

// String gives the ISO date, or "" when not told.
func (d Date) String() string {
	if d == 0 {
		return ""
	}
	return d.Time().Format(time.DateOnly)
}

// MarshalText gives the ISO date.
func (d Date) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText reads an ISO date; empty is "not told".
func (d *Date) UnmarshalText(b []byte) error {
	if len(b) == 0 {
		*d = 0
		return nil
	}
	v, err := ParseDate(string(b))
	*d = v
	return err
}
