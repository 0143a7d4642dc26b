package parser

import (
	"encoding/json"
	"os/exec"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// chronoScript reads texts on standard input as JSON and prints the dates that
// chrono-node, a general-purpose date reader from npm, takes them for.
const chronoScript = `
const chrono = require('chrono-node');
const {now, texts} = JSON.parse(require('fs').readFileSync(0, 'utf8'));
const ref = {instant: new Date(now), timezone: 0};
console.log(JSON.stringify(texts.map(t => {
  const r = chrono.en.GB.parse(t, ref)[0];
  if (!r) return null;
  const s = r.start;
  return [s.get('year'), s.get('month'), s.get('day')].map(n => String(n).padStart(2, '0')).join('-');
})));`

// TestDatesAgainstChrono compares the relative dates that both readers know. It
// is skipped where node or its module chrono-node is not installed: install it
// anywhere and name the folder's node_modules in NODE_PATH.
func TestDatesAgainstChrono(t *testing.T) {
	node, err := exec.LookPath("node")
	if err != nil {
		t.Skip("node is not installed")
	}
	if exec.Command(node, "-e", "require('chrono-node')").Run() != nil {
		t.Skip("the npm module chrono-node is not installed")
	}
	now := time.Date(2026, 11, 25, 17, 40, 0, 0, time.UTC)
	texts := []string{"today", "yesterday", "2 days ago", "two days ago", "5 days ago", "a week ago", "2 weeks ago", "three weeks ago",
		"3 Nov", "Nov 3", "3 November", "3 November 2026", "2026-11-03", "3/11/2026", "3/11", "last night", "this morning",
		"25 Dec 2025", "1 Jan 2026", "last friday", "last monday", "yesterday afternoon", "yesterday morning", "on 12 nov"}
	in, err := json.Marshal(map[string]any{"now": now.Format(time.RFC3339), "texts": texts})
	require.NoError(t, err)
	cmd := exec.Command(node, "-e", chronoScript)
	stdin, err := cmd.StdinPipe()
	require.NoError(t, err)
	go func() {
		_, _ = stdin.Write(in)
		_ = stdin.Close()
	}()
	out, err := cmd.Output()
	require.NoError(t, err)
	var theirs []string
	require.NoError(t, json.Unmarshal(out, &theirs))
	c := Context{Now: now, Book: register(t, "totara")}
	for i, text := range texts {
		r := Read("12 grazed "+text, c)
		require.Len(t, r.Entries, 1, "%s: %+v", text, r)
		require.Equal(t, theirs[i], r.Entries[0].On().String(), text)
	}
}
