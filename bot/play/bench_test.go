package play_test

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"leafround/bot/invented"
	"leafround/bot/pgembed/pgtest"
	"leafround/bot/play"
	"leafround/bot/script"
)

// BenchmarkSeason plays the invented farm's season, from message to reply.
func BenchmarkSeason(b *testing.B) {
	zone, err := time.LoadLocation(invented.Zone)
	require.NoError(b, err)
	var text strings.Builder
	dir := b.TempDir()
	for _, m := range invented.Season(time.Date(2026, 11, 25, 20, 0, 0, 0, zone)) {
		mark := ""
		if m.File != "" {
			mark = " [file " + m.File + "]"
			require.NoError(b, os.WriteFile(filepath.Join(dir, m.File), []byte(m.Content), 0o600))
		}
		fmt.Fprintf(&text, "%s %s%s: %s\n", m.At.Format("2006-01-02 15:04"), m.Who, mark, strings.ReplaceAll(m.Text, "\n", "\n  "))
	}
	lines, err := script.Read(text.String())
	require.NoError(b, err)
	for b.Loop() {
		p, err := play.New(b.Context(), play.Options{URL: pgtest.URL(b), Dir: dir})
		require.NoError(b, err)
		require.NoError(b, p.Play(b.Context(), lines, play.Text(io.Discard)))
		require.NoError(b, p.Close())
	}
	b.ReportMetric(float64(b.Elapsed().Milliseconds())/float64(b.N*len(lines)), "ms/message")
}
