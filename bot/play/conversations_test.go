package play_test

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"leafround/bot/pgembed/pgtest"
	"leafround/bot/play"
	"leafround/bot/script"
)

var update = flag.Bool("update", false, "print the conversations anew, with the bot's words as they are now")

func TestMain(m *testing.M) { pgtest.Main(m) }

const conversations = "../../testdata/conversations"

// A script that prints itself still holds; handed over twice, every update
// leads to the same words.
func TestConversations(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(conversations, "*.txt"))
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(files), 15)
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txt"), func(t *testing.T) {
			want, err := os.ReadFile(file)
			require.NoError(t, err)
			got := perform(t, file, string(want), false)
			if *update {
				require.NoError(t, os.WriteFile(file, []byte(got), 0o644))
				return
			}
			require.Equal(t, string(want), got)
			require.Equal(t, got, perform(t, file, string(want), true), "handed over twice")
		})
	}
}

func perform(t *testing.T, file, text string, twice bool) string {
	t.Helper()
	lines, err := script.Read(text)
	require.NoError(t, err)
	p, err := play.New(t.Context(), play.Options{URL: pgtest.URL(t), Dir: filepath.Dir(file), Twice: twice})
	require.NoError(t, err)
	defer p.Close()
	var b strings.Builder
	require.NoError(t, p.Play(t.Context(), lines, play.Text(&b)))
	return b.String()
}

const readme = "../../README.md"

// The conversation in README.md is a script too, and prints itself.
func TestConversationInTheReadme(t *testing.T) {
	page, err := os.ReadFile(readme)
	require.NoError(t, err)
	before, rest, ok := strings.Cut(string(page), "## A conversation\n\n")
	require.True(t, ok)
	block, after, ok := strings.Cut(rest, "\n\nYou can write")
	require.True(t, ok)
	var text strings.Builder
	for line := range strings.Lines(strings.TrimSpace(block) + "\n") {
		text.WriteString(strings.TrimPrefix(line, "    "))
	}
	got := perform(t, readme, text.String(), false)
	if *update {
		shown := "    " + strings.ReplaceAll(strings.TrimSuffix(got, "\n"), "\n", "\n    ")
		page := before + "## A conversation\n\n" + shown + "\n\nYou can write" + after
		require.NoError(t, os.WriteFile(readme, []byte(page), 0o644))
		return
	}
	require.Equal(t, text.String(), got)
}
