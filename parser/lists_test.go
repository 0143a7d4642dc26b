package parser

import (
	"fmt"
	"math/rand"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
)

// A message of lists of paddocks, small numbers and names among them, with what was
// done in each before or behind it and leaf counts between them, says of each paddock
// what stands with its list and nothing else. The messages are drawn by chance, each
// with what it says; a list that could be parted in two ways is not drawn, as its
// parts stand in sentences of their own or behind "then" and "also".
func TestLists(t *testing.T) {
	rng := rand.New(rand.NewSource(41))
	c := Context{Now: fuzzContexts(t)[0].Now, Book: register(t, "totara")}
	tried, asked, lost := 0, 0, 0
	for range 6000 {
		d := &draw{Rand: rng, says: map[string]bool{}}
		var parts []string
		for range 1 + rng.Intn(3) {
			parts = append(parts, d.part())
		}
		text := strings.Join(parts, []string{". ", "\n", "; ", " then ", " also "}[rng.Intn(5)])
		got := Read(text, c)
		tried++
		if got.Ask != nil {
			asked++
			continue
		}
		found := map[string]bool{}
		for _, e := range got.Entries {
			if e.Kind() == entry.KindNote {
				continue
			}
			k := jobOf(t, e)
			require.True(t, d.says[k], "%q logs %s", text, k)
			found[k] = true
		}
		if len(found) < len(d.says) {
			lost++
		}
	}
	t.Logf("%d tried, %d asked about, of %d not everything is logged", tried, asked, lost)
	require.Less(t, asked*8, tried)
	require.Less(t, lost*200, tried)
}

// draw draws the parts of a message by chance, and keeps what they say.
type draw struct {
	*rand.Rand
	taken []string
	says  map[string]bool
}

var (
	listNames  = strings.Fields("1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16 17 18 19 20 21 22 23 24 River_1 River_2 Hill Dam Road House Top_1 Top_Flat")
	jobsBehind = map[string]string{"grazed": "graze grazed", "topped": "cut topped", "sprayed": "hold spray", "cut for silage": "cut silage", "too wet": "hold wet", "shut for hay": "hold hay", "limed": "hold fertiliser"}
	jobsBefore = map[string]string{"grazed ": "graze grazed", "topped ": "cut topped", "sprayed ": "hold spray", "urea on ": "hold fertiliser", "shut up ": "hold other", "milkers out of ": "graze out", "slurry on ": "hold effluent"}
)

// part draws a count of one paddock, or a list with its job.
func (d *draw) part() string {
	if d.Intn(3) == 0 {
		list, text := d.list(1)
		d.says["count "+list[0]] = true
		scores := []string{"2.5"}
		for range 2 + d.Intn(4) {
			scores = append(scores, []string{"1.5", "2", "2.25", "2.5", "3"}[d.Intn(5)])
		}
		return text + []string{" ", ": ", " - "}[d.Intn(3)] + strings.Join(scores, " ")
	}
	list, text := d.list(1 + d.Intn(5))
	jobs := jobsBehind
	before := d.Intn(2) == 0
	if before {
		jobs = jobsBefore
	}
	words := make([]string, 0, len(jobs))
	for w := range jobs {
		words = append(words, w)
	}
	slices.Sort(words)
	job := words[d.Intn(len(words))]
	for _, name := range list {
		d.says[jobs[job]+" "+name] = true
	}
	if before {
		return job + text
	}
	if len(list) > 2 && d.Intn(2) == 0 {
		job = "all " + job
	}
	return text + " " + job
}

// list draws paddocks that the message has not, as they are typed.
func (d *draw) list(n int) (names []string, text string) {
	for len(names) < n {
		name := strings.ReplaceAll(listNames[d.Intn(len(listNames))], "_", " ")
		if !slices.Contains(d.taken, name) {
			d.taken, names = append(d.taken, name), append(names, name)
		}
	}
	typed := strings.ToLower(strings.Join(names[:n-1], ", "))
	last := strings.ToLower(names[n-1])
	if n == 1 {
		return names, last
	}
	return names, typed + []string{" and ", " & ", ", and ", ", "}[d.Intn(4)] + last
}

// jobOf gives what an entry says was done where.
func jobOf(t testing.TB, e entry.Entry) string {
	switch e := e.(type) {
	case entry.Count:
		return "count " + e.Paddock
	case entry.Graze:
		return fmt.Sprint("graze ", e.Event, " ", e.Paddock)
	case entry.Cut:
		return fmt.Sprint("cut ", e.What, " ", e.Paddock)
	case entry.Hold:
		return fmt.Sprint("hold ", e.Reason, " ", e.Paddock)
	}
	require.Failf(t, "another kind", "%+v", e)
	return ""
}
