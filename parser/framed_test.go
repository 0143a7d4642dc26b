package parser

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
)

// A greeting before a message, or thanks behind it, change nothing of what it says:
// every report and correction of the corpus is read again within each.
func TestFramed(t *testing.T) {
	frames := []struct{ before, behind string }{
		{"morning all, ", ""}, {"Good evening team. ", ""}, {"hi ", ""}, {"hey team. ", ""}, {"right, ", ""}, {"ok so ", ""}, {"fyi ", ""},
		{"update: ", ""}, {"quick one - ", ""}, {"Sam here, ", ""}, {"now then, ", ""},
		{"", " 👍"}, {"", "..."}, {"", ", ta"}, {"", " cheers"}, {"", " all good"}, {"", " over and out"}, {"", " thanks x"},
	}
	tried, other := 0, 0
	for _, p := range corpus(t, "*.jsonl") {
		c := p.context(t)
		base := Read(p.Text, c)
		if p.judge(base) != right || len(base.Entries) == 0 || base.Also != nil || base.Entries[0].Kind() == entry.KindSetup || base.Entries[0].Kind() == entry.KindNote {
			continue
		}
		want := logged(t, base)
		for _, f := range frames {
			text := f.before + p.Text + f.behind
			got := Read(text, c)
			tried++
			if logged(t, got) == want {
				continue
			}
			other++
			require.False(t, reports(got.Entries), "%q logs %s instead of %s", text, logged(t, got), want)
		}
	}
	t.Logf("%d tried, %d read otherwise", tried, other)
	require.Greater(t, tried, 50_000)
	require.Less(t, other*500, tried)
}

// logged gives the entries of a reading as JSON.
func logged(t testing.TB, r entry.Reading) string {
	var b strings.Builder
	for _, e := range r.Entries {
		j, err := entry.Encode(e)
		require.NoError(t, err)
		b.Write(j)
	}
	return b.String()
}
