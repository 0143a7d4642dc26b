package parser

import (
	"encoding/json"
	"fmt"
	"math/rand"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
)

// Two reports in one message, each on its line or in its sentence, log of each
// paddock what they log by themselves: pairs of the corpus's short messages are read
// together, and whatever is logged must be of a kind and a paddock that one of the
// two logs. A mob, a residual or the reason of a hold that ends may pass from one to the
// other.
func TestTogether(t *testing.T) {
	byFarm := map[string][]phrase{}
	for _, p := range corpus(t, "*.jsonl") {
		if len(p.Text) > 70 || p.Farm == "" || strings.ContainsAny(p.Text, "\n?") {
			continue
		}
		if r := Read(p.Text, p.context(t)); plain(r) {
			byFarm[p.Farm] = append(byFarm[p.Farm], p)
		}
	}
	tried, asked, lost := 0, 0, 0
	rng := rand.New(rand.NewSource(31))
	for _, farm := range []string{"ballin", "cedar", "mixed", "smiths", "totara"} {
		list := byFarm[farm]
		for n := range 3000 {
			a, b := list[rng.Intn(len(list))], list[rng.Intn(len(list))]
			b.At, b.Zone = a.At, a.Zone
			c := a.context(t)
			ra, rb := Read(a.Text, c), Read(b.Text, c)
			if !plain(ra) || !plain(rb) {
				continue
			}
			text := strings.TrimRight(a.Text, " .!") + []string{"\n", ". "}[n%2] + b.Text
			got := Read(text, c)
			tried++
			if got.Ask != nil {
				asked++
				continue
			}
			said, found := map[string]bool{}, map[string]bool{}
			for _, e := range append(ra.Entries[:len(ra.Entries):len(ra.Entries)], rb.Entries...) {
				said[gistOf(t, e)] = true
			}
			for _, e := range rb.Entries {
				if free, ok := e.(entry.Release); ok && free.Reason == "" {
					free.Reason = heldFor(ra.Entries, free)
					said[gistOf(t, free)] = true
				}
			}
			for _, e := range got.Entries {
				require.True(t, e.Kind() == entry.KindNote || said[gistOf(t, e)], "%q of %s logs %+v", text, farm, e)
				found[gistOf(t, e)] = true
			}
			for k := range said {
				if !found[k] {
					lost++
					break
				}
			}
		}
	}
	t.Logf("%d pairs, %d asked about, of %d not everything is logged", tried, asked, lost)
	require.Greater(t, tried, 10_000)
	require.Less(t, (asked+lost)*50, tried)
}

// plain tells whether a reading is of reports alone.
func plain(r entry.Reading) bool {
	for _, e := range r.Entries {
		switch e.Kind() {
		case entry.KindUndo, entry.KindCorrect, entry.KindSetup, entry.KindNote:
			return false
		}
	}
	return len(r.Entries) > 0 && r.Also == nil
}

// gistOf gives what an entry is about: its kind, its paddock, and what happened.
func gistOf(t testing.TB, e entry.Entry) string {
	b, err := entry.Encode(e)
	require.NoError(t, err)
	var m map[string]any
	require.NoError(t, json.Unmarshal(b, &m))
	return fmt.Sprint(m["kind"], m["paddock"], m["event"], m["what"], m["reason"], m["mean"], m["mm"], m["celsius"])
}
