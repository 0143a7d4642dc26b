package main

import (
	"bytes"
	"context"
	"encoding/csv"
	"net/http/httptest"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"leafround/bot/ledger"
	"leafround/bot/pgembed/pgtest"
	"leafround/bot/play"
	"leafround/bot/practice"
	"leafround/bot/script"
)

func TestMain(m *testing.M) { pgtest.Main(m) }

// The conversations hold through the engine of serve too: long polling, the
// go-telegram client, the outbox loop, with every update handed over twice.
func TestConversationsThroughServe(t *testing.T) {
	for _, name := range []string{"01-first-day", "03-grazing", "06-holds", "15-two-counters"} {
		t.Run(name, func(t *testing.T) {
			text, err := os.ReadFile("../../testdata/conversations/" + name + ".txt")
			require.NoError(t, err)
			lines, err := script.Read(string(text))
			require.NoError(t, err)
			want := repliesIn(string(text))
			got := throughServe(t, lines)
			require.Equal(t, want, got)
		})
	}
}

// repliesIn gives the replies that stand in a script, one a message that has
// one; what the bot says unasked is left out.
func repliesIn(text string) []string {
	var all []string
	open := false
	for line := range strings.Lines(text) {
		line = strings.TrimSuffix(line, "\n")
		switch {
		case strings.HasPrefix(line, "bot: "):
			all, open = append(all, strings.TrimPrefix(line, "bot: ")), true
		case open && strings.HasPrefix(line, "  "):
			all[len(all)-1] += "\n" + line[2:]
		default:
			open = false
		}
	}
	return all
}

// throughServe says a script's messages through a practice server, one after
// the other, and gives the bot's replies.
func throughServe(t *testing.T, lines []script.Line) []string {
	zone, err := time.LoadLocation("Pacific/Auckland")
	require.NoError(t, err)
	clock := practice.FrozenClock(time.Unix(0, 0))
	server := practice.New(practice.Options{Clock: clock})
	server.DeliverTwice(true)
	web := httptest.NewServer(server)
	defer web.Close()
	defer server.Close()
	book, err := ledger.Open(t.Context(), pgtest.URL(t), ledger.Options{})
	require.NoError(t, err)
	defer book.Close()
	e, err := newEngine(t.Context(), book, engineOptions{token: server.Token(), server: web.URL, pace: limits("none"), now: clock.Now}, logTo(&bytes.Buffer{}))
	require.NoError(t, err)
	ctx, stop := context.WithCancel(t.Context())
	ran := make(chan error, 1)
	go func() { ran <- e.run(ctx) }()
	group := server.AddGroup(practice.Group{Title: "A farm"})
	for _, l := range lines {
		if l.Message == nil {
			continue
		}
		at, err := l.Message.At(zone)
		require.NoError(t, err)
		if e.sched != nil {
			clock.Set(at)
		}
		server.Say(group, server.AddPerson(l.Message.Name), l.Message.Text)
		settleAll(t, server, book)
	}
	stop()
	require.NoError(t, <-ran)
	var said []string
	for _, m := range server.FromBot(group) {
		if m.ReplyTo != 0 {
			said = append(said, play.Plain(m.HTML))
		}
	}
	return said
}

func settleAll(t *testing.T, server *practice.Server, book *ledger.Ledger) {
	t.Helper()
	ctx, cancel := context.WithTimeout(t.Context(), 20*time.Second)
	defer cancel()
	require.NoError(t, server.Settled(ctx))
	for {
		w, err := book.Waiting(ctx)
		require.NoError(t, err)
		if w.Inbox == 0 && w.Outbox == 0 {
			return
		}
		time.Sleep(5 * time.Millisecond)
	}
}

// A farm's log comes out as a table, from the data directory that the demo has
// filled; and the demo finds its data again.
func TestDemoStartsTellsAndIsThereAgain(t *testing.T) {
	if testing.Short() {
		t.Skip("starts a PostgreSQL of its own, twice")
	}
	dir := t.TempDir()
	first := startDemo(t, dir)
	require.Contains(t, first, "http://127.0.0.1:")
	rows := exported(t, dir)
	require.Greater(t, len(rows), 250)
	second := startDemo(t, dir)
	require.Contains(t, second, "http://127.0.0.1:")
	require.Equal(t, rows, exported(t, dir))
}

// startDemo starts the demo, waits until it is ready, and ends it.
func startDemo(t *testing.T, dir string) string {
	t.Helper()
	ctx, stop := context.WithCancel(t.Context())
	defer stop()
	out := listenFor("practice chat is at")
	var errs bytes.Buffer
	code := make(chan int, 1)
	go func() {
		code <- run(ctx, []string{"demo", "--data-dir", dir, "--listen", "127.0.0.1:0"}, streams{strings.NewReader(""), out, &errs})
	}()
	select {
	case <-out.seen:
	case c := <-code:
		require.Failf(t, "the demo ended", "status %d: %s", c, errs.String())
	case <-time.After(2 * time.Minute):
		require.Fail(t, "the demo does not start", errs.String())
	}
	stop()
	require.Equal(t, exitOK, <-code, errs.String())
	return out.String()
}

func exported(t *testing.T, dir string) [][]string {
	t.Helper()
	var out, errs bytes.Buffer
	code := run(t.Context(), []string{"export", "--data-dir", dir, "--farm", "totara bend"}, streams{strings.NewReader(""), &out, &errs})
	require.Equal(t, exitOK, code, errs.String())
	rows, err := csv.NewReader(&out).ReadAll()
	require.NoError(t, err)
	return rows
}
