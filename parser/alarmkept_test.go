package parser

import (
	"math/rand"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// An alarm stays one whatever stands beside it: every short message of the corpus
// that is one is read again with each of some greetings and thanks around it, and
// before and behind reports drawn by chance, in a sentence or on a line of its own.
func TestAlarmKept(t *testing.T) {
	reports := map[string][]phrase{}
	var alarms []phrase
	for _, p := range corpus(t, "*.jsonl") {
		if len(p.Text) > 90 || strings.ContainsAny(p.Text, "?") {
			continue
		}
		switch r := Read(p.Text, p.context(t)); {
		case alarmIn(r.Entries):
			alarms = append(alarms, p)
		case plain(r) && !strings.Contains(p.Text, "\n"):
			reports[p.Farm] = append(reports[p.Farm], p)
		}
	}
	require.Greater(t, len(alarms), 200)
	rng := rand.New(rand.NewSource(51))
	tried := 0
	var lost []string
	for _, p := range alarms {
		c := p.context(t)
		texts := []string{"morning all, " + p.Text, "ok so " + p.Text, "heads up - " + p.Text, "Sam here, " + p.Text, p.Text + " thanks", p.Text + "!!", p.Text + ". All good otherwise"}
		for range 12 {
			other := strings.TrimRight(reports[p.Farm][rng.Intn(len(reports[p.Farm]))].Text, " .!")
			sep := []string{"\n", ". "}[rng.Intn(2)]
			texts = append(texts, other+sep+p.Text, strings.TrimRight(p.Text, " .!")+sep+other)
		}
		for _, text := range texts {
			tried++
			if !alarmIn(Read(text, c).Entries) {
				lost = append(lost, text)
			}
		}
	}
	require.Empty(t, lost, "alarms that are none any more")
	require.Greater(t, tried, 5_000)
}
