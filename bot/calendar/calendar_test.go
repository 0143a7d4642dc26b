package calendar

import (
	"bytes"
	"testing"
	"time"

	other "github.com/emersion/go-ical"
	"github.com/stretchr/testify/require"

	"leafround/core/entry"
)

// Another library's parser reads what we write (RFC 5545).
func TestAnotherParserReadsTheStays(t *testing.T) {
	day := entry.NewDate(2026, 11, 27)
	b := Write("Totara Bend", time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC), []Stay{
		{From: day, To: day.Add(2), What: "milkers in River 1; then, 7", Note: "2.6 leaves when reached"},
		{From: day, To: day, What: "heifers in Hill"},
	})
	cal, err := other.NewDecoder(bytes.NewReader(b)).Decode()
	require.NoError(t, err)
	events := cal.Events()
	require.Len(t, events, 2)
	from, err := events[0].DateTimeStart(time.UTC)
	require.NoError(t, err)
	to, err := events[0].DateTimeEnd(time.UTC)
	require.NoError(t, err)
	require.Equal(t, "2026-11-27", from.Format(time.DateOnly))
	require.Equal(t, "2026-11-29", to.Format(time.DateOnly))
	what, err := events[0].Props.Text(other.PropSummary)
	require.NoError(t, err)
	require.Equal(t, "milkers in River 1; then, 7", what)
	to, err = events[1].DateTimeEnd(time.UTC)
	require.NoError(t, err)
	require.Equal(t, "2026-11-28", to.Format(time.DateOnly))
}
