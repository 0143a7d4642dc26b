package parser

import (
	"flag"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
)

// fuzzContexts are the registers that the fuzzer reads every text against.
func fuzzContexts(t testing.TB) []Context {
	now := time.Date(2026, 11, 25, 17, 40, 0, 0, time.FixedZone("NZDT", 13*3600))
	return []Context{
		{Now: now, Book: register(t, "totara"), Recent: "12"},
		{Now: now, Book: NewBook(nil, nil), AnyPaddock: true},
		{Now: now, Book: register(t, "smiths"), MonthFirst: true},
	}
}

// FuzzRead reads any text: it must not panic or hang, exactly one part of the
// reading must hold, and what is logged must print back to a text that reads to
// the same.
func FuzzRead(f *testing.F) {
	stride := 1
	if fuzzing := flag.Lookup("test.fuzz"); fuzzing != nil && fuzzing.Value.String() != "" {
		stride = seedStride
	}
	for n, p := range corpus(f, "*.jsonl") {
		if n%stride == 0 {
			f.Add(p.Text)
		}
	}
	for _, s := range worstTexts() {
		f.Add(s[:min(len(s), 200)])
	}
	f.Add(strings.Repeat("t", MaxUnits-2) + "12 in")
	for _, s := range foundByFuzzing {
		f.Add(s)
	}
	contexts := fuzzContexts(f)
	f.Fuzz(func(t *testing.T, text string) {
		for _, c := range contexts {
			r := Read(text, c)
			checkReading(t, r)
			for _, e := range r.Entries {
				checkPrint(t, e, c)
			}
		}
	})
}

// seedStride is of how many messages of the corpus one is a seed while the fuzzer
// runs: it reads all seeds before it begins, which took 27 of the 30 seconds that a
// check gives it. TestPrintsBack holds every message to the same.
const seedStride = 10

// foundByFuzzing are texts on which earlier runs failed.
var foundByFuzzing = []string{
	"\x80", "no10 0", "100should Be0X2", "mAke it\x1f0.0", "urea on p\x120-p23 wed", "paddocks\np``1addoDk 22 \x7f8",
	" clear!of spray", "12 is now called Bottom Hillr\xf6\xe8\xba\xcd\x1c\x89\"", "soil 92F", "%%%%%%young stock in hill",
	"merge heifers and dries into!%rrs", "no,bloat \xb8oday",
	"p12 .8+1+.2 yellowing", "p12 0+1+0.5 0+2+0.25+ 2.5 2", "split 12 into North and !", "grazed paddock zero", "ambulance on", "lame sprayed", "unpin 12 tomorrow", "p12 812 tillers avg 2.3",
	"split 12 into 12 an 12A 12B 1.4", "air min 3 max 140", "low 41 high 119 soil", "split paddock 12 into 1o\x01 2 and 1 2B 1.4 ha", "split paddock 12 into 1o, and 12\xe6B 1.4", "split 12 into 12 an!. 1 and 12A 1 ha", "split 12 into 12 an. 1 and 12A 1 ha", "split 12 into 12 an! 1 ha and 12A 1.4", "merge heifers and dries into !eczema", "rename 12 to Hi !", "12 is now called hello \"", "50 degrees in the soil", "rain 1550mm",
	"merge 9a\x03and#6b into 6", "12 is now called Bottom Hillr\xf6om Hi\"", "heifers x 96666660 into 12", "paddocks\n1 3.2\n, summary 18 30", "paddocks\n25 not p 12\n2\n2.5\n2", "should be heifers not mob 0 in", "unpin paddock river 2 milkers", "field scores should be 2",
	"\x87\x13\x02\x1fno\x015 2 2 5.2", "split 12\xf9\xf9\xf9\xf9\xf9 into 12A 1\", and 12B 1.4",
}

// checkReading tells whether exactly one part of a reading holds. It spends
// nothing on readings that are sound: the fuzzer calls it millions of times.
func checkReading(t testing.TB, r entry.Reading) {
	n := 0
	for _, held := range []bool{len(r.Entries) > 0, r.Question != nil, r.Ask != nil, r.Ignored} {
		if held {
			n++
		}
	}
	if n != 1 {
		t.Fatalf("%q: %d parts hold: %+v", r.Text, n, r)
	}
	if r.Ask != nil && r.Ask.Reason == "" {
		t.Fatalf("%q: an ask without a reason", r.Text)
	}
	if r.Ask != nil && len(r.Ask.Options) > mostOptions {
		t.Fatalf("%q: %d options", r.Text, len(r.Ask.Options))
	}
}

// checkPrint tells whether an entry's printed form reads back to it.
func checkPrint(t testing.TB, e entry.Entry, c Context) {
	if !printable(e) {
		return
	}
	text := Print(e)
	c.Rule = entry.RemnantBySize
	back := Read(text, c)
	if back.Ask != nil || len(back.Entries) != 1 {
		t.Fatalf("%q printed from %+v reads as %+v, ask %+v", text, e, back, back.Ask)
	}
	if want, got := encoded(t, e), encoded(t, back.Entries[0]); want != got {
		t.Fatalf("%q is printed from\n%s\nbut reads as\n%s", text, want, got)
	}
}

// printable tells whether an entry has a printed form of one message: notes are
// their own text, and a name that only a register makes a name may not be told
// from other words without one.
func printable(e entry.Entry) bool {
	switch v := e.(type) {
	case entry.Note:
		return false
	case entry.Setup:
		return printSetup(v) != "" && !strings.ContainsAny(v.Name+v.Mob, "\n")
	}
	return true
}

// encoded is the entry's JSON without what the printed form does not carry: that
// an out and an in belonged to one move.
func encoded(t testing.TB, e entry.Entry) string {
	if g, ok := e.(entry.Graze); ok {
		g.Moved = false
		e = g
	}
	b, err := entry.Encode(e)
	require.NoError(t, err)
	return string(b)
}

// TestPrintsBack holds every entry of the corpus to it.
func TestPrintsBack(t *testing.T) {
	for _, p := range corpus(t, "*.jsonl") {
		c := p.context(t)
		for _, e := range Read(p.Text, c).Entries {
			checkPrint(t, e, c)
		}
	}
}
