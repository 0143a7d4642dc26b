package main

import (
	"bytes"
	"encoding/json"
	"net"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"leafround/bot/pgembed/pgtest"
	"leafround/bot/practice"
)

// listener is a writer that tells when a text has come by.
type listener struct {
	mu   sync.Mutex
	b    bytes.Buffer
	word string
	seen chan struct{}
}

func listenFor(word string) *listener { return &listener{word: word, seen: make(chan struct{})} }

func (s *listener) Write(p []byte) (int, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	had := strings.Contains(s.b.String(), s.word)
	n, err := s.b.Write(p)
	if !had && strings.Contains(s.b.String(), s.word) {
		close(s.seen)
	}
	return n, err
}

func (s *listener) String() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.b.String()
}

// command runs one command line.
func command(t *testing.T, in string, args ...string) (code int, out, errs string) {
	t.Helper()
	var o, e bytes.Buffer
	code = run(t.Context(), args, streams{strings.NewReader(in), &o, &e})
	return code, o.String(), e.String()
}

func TestHelpAndBadUsage(t *testing.T) {
	for _, sub := range [][]string{{"-h"}, {"demo", "-h"}, {"serve", "-h"}, {"replay", "-h"}, {"parse", "-h"}, {"export", "-h"}, {"weather", "-h"}} {
		code, out, _ := command(t, "", sub...)
		require.Equal(t, exitOK, code, sub)
		require.Contains(t, out, "Usage:", sub)
	}
	for _, bad := range [][]string{{}, {"fly"}, {"replay"}, {"parse", "--at", "noon"}, {"parse", "--zone", "Mars"}, {"export"}, {"serve", "--pace", "fast"}} {
		code, out, errs := command(t, "", bad...)
		require.Equal(t, exitUsage, code, bad)
		require.Empty(t, out)
		require.Equal(t, 1, strings.Count(errs, "\n"), "one sentence: %q", errs)
	}
}

func TestParsePrintsOneObjectALine(t *testing.T) {
	farm := filepath.Join(t.TempDir(), "farm.csv")
	require.NoError(t, os.WriteFile(farm, []byte("name,area_ha\n12,3\nRiver 1,4\n"), 0o600))
	in := "p12 2 2.5 2\n\nwots next?\nriver1: 2\\nmorning\n12 2 2 2"
	code, out, errs := command(t, in, "parse", "--farm", farm, "--at", "2026-11-25T17:40:00+13:00")
	require.Equal(t, exitOK, code, errs)
	lines := strings.Split(strings.TrimSuffix(out, "\n"), "\n")
	require.Len(t, lines, 5)
	var first struct {
		Entries []struct {
			Kind    string    `json:"kind"`
			Paddock string    `json:"paddock"`
			Date    string    `json:"date"`
			Tillers []float64 `json:"tillers"`
		} `json:"entries"`
		Question, Ask any
		Ignored       bool
	}
	require.NoError(t, json.Unmarshal([]byte(lines[0]), &first))
	require.Equal(t, "count", first.Entries[0].Kind)
	require.Equal(t, "12", first.Entries[0].Paddock)
	require.Equal(t, "2026-11-25", first.Entries[0].Date)
	require.Equal(t, []float64{2, 2.5, 2}, first.Entries[0].Tillers)
	require.Contains(t, lines[1], `"ignored":true`)
	require.Contains(t, lines[2], `"about":"next"`)
}

// Each of these is one plain sentence and status 1.
func TestWhatCannotRunSaysSoInOneSentence(t *testing.T) {
	taken, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	defer taken.Close()
	server := practice.New(practice.Options{Token: "1:right"})
	defer server.Close()
	web := httptest.NewServer(server)
	defer web.Close()
	database := pgtest.URL(t)
	missing := filepath.Join(t.TempDir(), "missing.txt")
	for name, c := range map[string]struct {
		args []string
		want string
	}{
		"no token":      {[]string{"serve", "--database-url", database}, "LEAFROUND_TOKEN is not set"},
		"wrong token":   {[]string{"serve", "--database-url", database, "--token", "1:wrong", "--api-url", web.URL, "--listen", "127.0.0.1:0"}, "does not know this token"},
		"no address":    {[]string{"serve", "--token", "1:right", "--api-url", "over there"}, "LEAFROUND_API_URL is not a web address"},
		"no database":   {[]string{"serve", "--token", "1:right", "--listen", "127.0.0.1:0", "--database-url", "postgres://nobody@127.0.0.1:1/none?sslmode=disable"}, "the database can't be reached"},
		"no such url":   {[]string{"serve", "--token", "1:right", "--database-url", "mysql://x"}, "LEAFROUND_DATABASE_URL is not a PostgreSQL address"},
		"busy port":     {[]string{"serve", "--token", "1:right", "--database-url", database, "--listen", taken.Addr().String()}, "can't be listened on"},
		"no script":     {[]string{"replay", missing}, "the script can't be read"},
		"no register":   {[]string{"parse", "--farm", missing}, "can't be read"},
		"no farm":       {[]string{"export", "--farm", "Nowhere", "--database-url", database}, "there is no farm called Nowhere"},
		"nothing there": {[]string{"export", "--farm", "Nowhere", "--data-dir", t.TempDir()}, "there is no log in the data directory yet"},
		"no weather":    {[]string{"weather", missing, "--farm", "Nowhere", "--database-url", database}, "the table can't be read"},
	} {
		t.Run(name, func(t *testing.T) {
			code, out, errs := command(t, "", c.args...)
			require.Equal(t, exitFailure, code, errs)
			require.Empty(t, out)
			require.Contains(t, errs, c.want)
			last := strings.Split(strings.TrimSuffix(errs, "\n"), "\n")
			require.True(t, strings.HasPrefix(last[len(last)-1], "leafround: "), errs)
		})
	}
}
