package bot

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"leafround/bot/chat"
)

// Ten years of daily weather come in as one file: the sender hears that it is
// being read, and then what was taken. The same file again changes nothing.
func TestTenYearsOfWeather(t *testing.T) {
	var table strings.Builder
	table.WriteString("date,tmin,tmax,rain\n")
	day := time.Date(2016, 11, 1, 0, 0, 0, 0, time.UTC)
	const days = 3652
	for i := range days {
		d := day.AddDate(0, 0, i)
		fmt.Fprintf(&table, "%s,%d,%d,%d.5\n", d.Format(time.DateOnly), 5+i%7, 15+i%9, i%4)
	}
	b := newBench(t, Options{Fetch: func(context.Context, string) ([]byte, error) { return []byte(table.String()), nil }})
	b.take(message(1, "set up Totara Bend, Pacific/Auckland"))
	file := message(2, "")
	file.File = &chat.File{ID: "w", Name: "daily.csv", Size: int64(table.Len())}
	began := time.Now()
	out := b.take(file)
	t.Logf("%d days taken in %v", days, time.Since(began).Round(time.Millisecond))
	require.Contains(t, out[0].Replies[0].HTML, "Weather taken: 3,652 days")
	require.Equal(t, []string{"Reading daily.csv", "Weather taken"}, b.starts(2))
	file.MessageID = 3
	b.take(file)
	_, log, err := b.book.Export(t.Context(), "Totara Bend", 0)
	require.NoError(t, err)
	standing := 0
	for _, l := range log {
		if l.Stands() && l.Entry.Kind() != "setup" {
			standing++
		}
	}
	require.Equal(t, 2*days, standing)
}

// starts gives the first words of the last n messages that wait to be sent.
func (b *bench) starts(n int) []string {
	b.t.Helper()
	sender, err := b.book.Sender(b.t.Context())
	require.NoError(b.t, err)
	defer sender.Close()
	var said []string
	for {
		heads, err := sender.Heads(b.t.Context())
		require.NoError(b.t, err)
		if len(heads) == 0 {
			break
		}
		out, _, err := sender.Load(b.t.Context(), heads[0].ID)
		require.NoError(b.t, err)
		words, _, _ := strings.Cut(out.HTML, " (")
		words, _, _ = strings.Cut(words, ":")
		said = append(said, words)
		require.NoError(b.t, sender.Sent(b.t.Context(), heads[0].ID, len(said), time.Now()))
	}
	return said[len(said)-n:]
}
