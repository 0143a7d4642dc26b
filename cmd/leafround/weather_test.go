package main

import (
	"bytes"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"leafround/bot"
	"leafround/bot/ledger"
	"leafround/bot/pgembed/pgtest"
	"leafround/bot/play"
	"leafround/bot/script"
	"leafround/bot/skies"
	"leafround/core/entry"
)

// farmOn sets a farm up in a fresh database and gives its address.
func farmOn(t *testing.T) string {
	t.Helper()
	url := pgtest.URL(t)
	lines, err := script.Read("2026-11-16 08:00 Ana: set up Totara Bend, Pacific/Auckland\n" +
		"2026-11-16 08:01 Ana: we are at -37.81 175.28\n2026-11-16 08:02 Jo: 7mm rain\n")
	require.NoError(t, err)
	p, err := play.New(t.Context(), play.Options{URL: url})
	require.NoError(t, err)
	defer p.Close()
	require.NoError(t, p.Play(t.Context(), lines, play.Text(io.Discard)))
	return url
}

// rains gives the rain that stands, by day.
func rains(t *testing.T, book *ledger.Ledger) map[string]float64 {
	t.Helper()
	_, log, err := book.Export(t.Context(), "Totara Bend", 0)
	require.NoError(t, err)
	got := map[string]float64{}
	for _, l := range log {
		if r, ok := l.Entry.(entry.Rain); ok && l.Stands() {
			got[r.Date.String()] += r.Mm
		}
	}
	return got
}

func TestWeatherServiceFillsWhatNobodyTold(t *testing.T) {
	book, err := ledger.Open(t.Context(), farmOn(t), ledger.Options{})
	require.NoError(t, err)
	defer book.Close()
	status := http.StatusOK
	web := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		w.WriteHeader(status)
		fmt.Fprint(w, `{"daily":{"time":["2026-11-15","2026-11-16","2026-11-17","2026-11-18"],"precipitation_sum":[1,2,3,4]}}`)
	}))
	defer web.Close()
	var told bytes.Buffer
	now := time.Date(2026, 11, 18, 0, 0, 0, 0, time.UTC) // Wednesday 13:00 in the farm's zone
	e := &engine{book: book, log: logTo(&told), bot: bot.New(book, bot.Options{})}
	service := skiesAt(web.URL)
	require.NoError(t, e.skies(t.Context(), service, now))
	want := map[string]float64{"2026-11-15": 1, "2026-11-16": 7, "2026-11-17": 3}
	require.Equal(t, want, rains(t, book), "Jo's 7 mm stand, and the 18th is not over")
	require.NoError(t, e.skies(t.Context(), service, now.Add(3*time.Hour)))
	require.Equal(t, want, rains(t, book), "asked again, nothing is told twice")
	status = http.StatusBadGateway
	require.ErrorContains(t, e.skies(t.Context(), service, now.Add(6*time.Hour)), "502")
}

func TestWeatherTableGivenTwiceIsTakenOnce(t *testing.T) {
	url := farmOn(t)
	file := filepath.Join(t.TempDir(), "daily.csv")
	require.NoError(t, os.WriteFile(file, []byte("date,tmin,tmax,rain\n2026-11-14,8,19,5\n2026-11-15,x,19,2\n2026-11-16,9,21,0\n"), 0o600))
	for range 2 {
		code, out, errs := command(t, "", "weather", file, "--farm", "totara bend", "--database-url", url)
		require.Equal(t, exitOK, code, errs)
		require.Equal(t, "2 days taken, 2026-11-14 to 2026-11-16.\n", out)
		require.Contains(t, errs, `left out line 3`)
	}
	book, err := ledger.Open(t.Context(), url, ledger.Options{})
	require.NoError(t, err)
	defer book.Close()
	require.Equal(t, map[string]float64{"2026-11-14": 5, "2026-11-16": 0}, rains(t, book))
}

func skiesAt(server string) skies.Service {
	return skies.Service{Template: server + "/?lat={lat}&lon={lon}"}
}
