package parser

import (
	"fmt"
	"math/big"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"leafround/core/entry"
)

// day draws a day of the two years before the fuzz contexts' today.
func day(t *rapid.T, label string) entry.Date {
	today := entry.NewDate(2026, time.November, 25)
	return today - entry.Date(rapid.IntRange(0, 700).Draw(t, label))
}

// pad draws a paddock of the totara register.
func pad(t *rapid.T) string {
	b := register(nilTB{}, "totara")
	return rapid.SampledFrom(b.names).Draw(t, "paddock").Name
}

// nilTB lets a register that is loaded already be fetched inside rapid.
type nilTB struct{ testing.TB }

func (nilTB) Helper() {}

// entries draws any entry that a text can yield.
func anyEntry(t *rapid.T) entry.Entry {
	d := day(t, "day")
	mob := rapid.SampledFrom([]string{"", "milkers", "heifers", "young stock", "bulls"}).Draw(t, "mob")
	switch rapid.IntRange(0, 10).Draw(t, "kind") {
	case 0:
		return anyCount(t, d)
	case 1:
		g := entry.Graze{Paddock: pad(t), Date: d, Mob: mob,
			Event: rapid.SampledFrom([]entry.GrazeEvent{entry.In, entry.Out, entry.Grazed}).Draw(t, "event")}
		if g.Event != entry.In && rapid.Bool().Draw(t, "left") {
			g.Residual = rapid.SampledFrom([]*entry.Residual{{Value: 1500, Unit: entry.KgDMPerHa}, {Value: 5.5, Unit: entry.Centimetres},
				{Value: 7, Unit: entry.Clicks}, {Value: 2.5, Unit: entry.Inches}}).Draw(t, "residual")
		}
		if mob != "" {
			g.Head = rapid.IntRange(0, 500).Draw(t, "head")
		}
		g.Part = float64(rapid.IntRange(0, 99).Draw(t, "part")) / 100
		return g
	case 2:
		return entry.Cut{Paddock: pad(t), Date: d, What: rapid.SampledFrom([]entry.CutKind{entry.Silage, entry.Hay, entry.Topped}).Draw(t, "cut")}
	case 3:
		return entry.Canopy{Paddock: pad(t), Date: d}
	case 4:
		h := entry.Hold{Paddock: pad(t), Date: d, Reason: rapid.SampledFrom(entry.Reasons()).Draw(t, "reason")}
		if n := rapid.IntRange(0, 60).Draw(t, "days"); n > 0 {
			h.Until = h.Date.Add(n)
		}
		return h
	case 5:
		return entry.Release{Paddock: pad(t), Date: d, Reason: rapid.SampledFrom([]entry.Reason{"", entry.HoldSpray, entry.HoldWet,
			entry.HoldEffluent, entry.HoldFertiliser, entry.HoldSilage, entry.HoldHay, entry.HoldCrop, entry.HoldResown}).Draw(t, "reason")}
	case 6:
		return entry.Rain{Date: d, Mm: float64(rapid.IntRange(0, 3000).Draw(t, "mm")) / 10}
	case 7:
		v := float64(rapid.IntRange(-200, 390).Draw(t, "celsius")) / 10
		return entry.Temperature{Date: d, Celsius: &v, Where: rapid.SampledFrom([]entry.Thermometer{entry.Soil, entry.Air}).Draw(t, "where")}
	case 8:
		return entry.Undo{}
	case 9:
		return entry.Correct{Field: entry.FieldPaddock, From: pad(t), ToName: pad(t)}
	default:
		return entry.Correct{Field: entry.FieldDate, ToDate: d}
	}
}

// anyCount draws a count in one of its forms.
func anyCount(t *rapid.T, d entry.Date) entry.Entry {
	c := entry.Count{Paddock: pad(t), Date: d}
	score := func() entry.LeafStage { return entry.LeafStage(rapid.IntRange(0, 12).Draw(t, "quarters")) / 4 }
	if rapid.Bool().Draw(t, "average") {
		c.Mean, c.N = score(), rapid.IntRange(0, 20).Draw(t, "n")
		return c
	}
	for range rapid.IntRange(2, 12).Draw(t, "tillers") {
		one := entry.Tiller{Score: score(), Floor: rapid.IntRange(0, 9).Draw(t, "floor") == 0}
		if rapid.IntRange(0, 4).Draw(t, "parts") == 0 {
			one = entry.Tiller{Parts: true, Remnant: entry.LeafStage(rapid.IntRange(0, 10).Draw(t, "remnant")) / 10,
				Full: entry.LeafStage(rapid.IntRange(0, 1).Draw(t, "full")), New: entry.LeafStage(rapid.IntRange(0, 9).Draw(t, "new")) / 10}
		}
		c.Said = append(c.Said, one)
	}
	c = c.Scored(entry.RemnantBySize)
	c.Skipped.Reproductive = rapid.IntRange(0, 3).Draw(t, "repro")
	c.Skipped.NoRemnant = rapid.IntRange(0, 2).Draw(t, "no remnant")
	plain := true
	for _, s := range c.Said {
		plain = plain && !s.Parts && !s.Floor
	}
	if plain {
		c.Said = nil
	}
	return c
}

// TestPrintedEntriesReadBack draws any entry that a text can yield: printed, it
// reads back to itself.
func TestPrintedEntriesReadBack(t *testing.T) {
	c := fuzzContexts(t)[0]
	rapid.Check(t, func(t *rapid.T) {
		e := anyEntry(t)
		text := Print(e)
		back := Read(text, c)
		if back.Ask != nil || len(back.Entries) != 1 {
			t.Fatalf("%q from %+v: ask %+v, entries %+v", text, e, back.Ask, back.Entries)
		}
		want, _ := entry.Encode(e)
		got, _ := entry.Encode(back.Entries[0])
		if string(want) != string(got) {
			t.Fatalf("%q:\n%s\n%s", text, want, got)
		}
	})
}

// TestNumbersAgainstBig reads fractions and decimals in every notation and
// compares with math/big.
func TestNumbersAgainstBig(t *testing.T) {
	c := fuzzContexts(t)[0]
	rapid.Check(t, func(t *rapid.T) {
		var texts []string
		var want []float64
		for range rapid.IntRange(2, 10).Draw(t, "n") {
			text, v := anyNumber(t)
			texts, want = append(texts, text), append(want, v)
		}
		text := "p12: " + strings.Join(texts, "; ")
		r := Read(text, c)
		if len(r.Entries) != 1 {
			t.Fatalf("%q: %+v", text, r)
		}
		got := r.Entries[0].(entry.Count).Tillers
		if len(got) != len(want) {
			t.Fatalf("%q: %v, want %v", text, got, want)
		}
		for i := range want {
			if d := float64(got[i]) - want[i]; d > 1e-12 || d < -1e-12 {
				t.Fatalf("%q: %v, want %v", text, got, want)
			}
		}
	})
}

// anyNumber draws a number below four in some notation, with its value by
// math/big.
func anyNumber(t *rapid.T) (string, float64) {
	whole := rapid.IntRange(0, 2).Draw(t, "whole")
	den := rapid.SampledFrom([]int{2, 3, 4, 5, 8}).Draw(t, "den")
	num := rapid.IntRange(1, den-1).Draw(t, "num")
	vulgarOf := map[[2]int]string{{1, 2}: "½", {1, 4}: "¼", {3, 4}: "¾", {1, 3}: "⅓", {2, 3}: "⅔", {1, 8}: "⅛", {3, 8}: "⅜", {5, 8}: "⅝", {7, 8}: "⅞",
		{1, 5}: "⅕", {2, 5}: "⅖", {3, 5}: "⅗", {4, 5}: "⅘"}
	frac := new(big.Rat).SetFrac64(int64(num), int64(den))
	value := func(r *big.Rat) float64 { f, _ := r.Float64(); return f }
	sum := new(big.Rat).Add(frac, new(big.Rat).SetInt64(int64(whole)))
	switch rapid.IntRange(0, 3).Draw(t, "notation") {
	case 0:
		if whole == 0 {
			return fmt.Sprintf("%d/%d", num, den), value(frac)
		}
		return fmt.Sprintf("%d %d/%d", whole, num, den), value(sum)
	case 1:
		if v, ok := vulgarOf[[2]int{num, den}]; ok && whole > 0 {
			return fmt.Sprintf("%d%s", whole, v), value(sum)
		}
		return fmt.Sprint(whole), float64(whole)
	case 2:
		text := fmt.Sprintf("%d.%02d", whole, rapid.IntRange(0, 99).Draw(t, "hundredths"))
		r, _ := new(big.Rat).SetString(text)
		return text, value(r)
	default:
		text := fmt.Sprintf(".%d", rapid.IntRange(1, 9).Draw(t, "tenths"))
		r, _ := new(big.Rat).SetString("0" + text)
		return text, value(r)
	}
}

// TestDatesAgainstTime reads dates in every form and compares with Go's time
// package, day by day.
func TestDatesAgainstTime(t *testing.T) {
	zone, err := time.LoadLocation("Pacific/Auckland")
	require.NoError(t, err)
	c := Context{Now: time.Date(2026, 11, 25, 17, 40, 0, 0, zone), Book: register(t, "totara")}
	for n := range 360 {
		at := c.Now.AddDate(0, 0, -n)
		want := entry.DateOf(at)
		forms := []string{at.Format("2006-01-02"), at.Format("2/1/2006"), at.Format("2/1/06"), at.Format("2/1"), at.Format("2 Jan"),
			at.Format("Jan 2"), at.Format("2 January"), fmt.Sprintf("%d days ago", n), at.Format("Mon 2 Jan")}
		if n < 7 {
			forms = append(forms, at.Format("Monday"), "since "+at.Format("Mon"), "on "+at.Format("Monday"))
		}
		if n < 28 {
			forms = append(forms, "the "+ordinal(at.Day()), ordinal(at.Day()), "on the "+ordinal(at.Day()))
		}
		for _, f := range forms {
			r := Read("12 grazed "+f, c)
			require.Len(t, r.Entries, 1, "%s: %+v", f, r)
			require.Equal(t, want, r.Entries[0].On(), f)
		}
	}
}

func ordinal(n int) string {
	s := "th"
	if n%100 < 11 || n%100 > 13 {
		s = map[int]string{1: "st", 2: "nd", 3: "rd"}[n%10]
		if s == "" {
			s = "th"
		}
	}
	return fmt.Sprint(n, s)
}
