package parser

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
)

// lower is a farm with a few names that are easily told by halves.
func lowerFarm(t *testing.T) Context {
	c := now(t)
	var list []Name
	for _, n := range []string{"1", "2", "4", "7", "8", "12", "Top Flat", "Top Hill", "Well Field"} {
		list = append(list, Name{Name: n})
	}
	c.Book = NewBook(list, nil)
	return c
}

// TestNeverDropsWords: words that nobody knows are never dropped because a
// paddock was named within the hour.
func TestNeverDropsWords(t *testing.T) {
	for _, text := range []string{"river 2.5 2.5 2.5", "40 acre 2 2 2.5", "forty acre 2.5 2 2.5", "2 2.5 2.5 3", "2.5 2.5 3 rivver",
		"top 2.5 2.5 2", "corner 2.5 2.5 2", "smiths 2.5 2 2.5", "back paddock 2.5 2.5 2", "big 2.5 2.5 2 2", "river paddock 2.5 2 2"} {
		for _, recent := range []string{"", "2", "12"} {
			c := lowerFarm(t)
			c.Recent = recent
			r := Read(text, c)
			require.NotNil(t, r.Ask, "%s after %q: %+v", text, recent, r.Entries)
		}
	}
}

// TestOffers holds the buttons of asks: what each says, and what it logs.
func TestOffers(t *testing.T) {
	for text, want := range map[string][]string{
		"2 2.5 2 3":                 {"Paddock 2: 2.5, 2, 3"},
		"p12 25 20 30 25":           {"Paddock 12: 2.5, 2, 3, 2.5"},
		"top 2 2.5 2":               {"Top Flat: 2, 2.5, 2", "Top Hill: 2, 2.5, 2"},
		"milkers into topp flat":    {"Milkers into Top Flat today"},
		"milkers into top":          {"Milkers into Top Flat today", "Milkers into Top Hill today"},
		"milkers into 7 or 12":      {"Milkers into 7 today", "Milkers into 12 today"},
		"4 is closed":               {"Canopy closed", "Shut up"},
		"soil temp 58":              {"58 °F"},
		"temp 14":                   {"Soil", "Air"},
		"12 grazed, residual 7":     {"7 cm", "7 clicks"},
		"grazing 12 tomorrow":       {},
		"milkers will go in 12":     {},
		"p23 2 2 2":                 {},
		"milkers into zzyzx":        {},
		"milkers blorped into 8":    {"Yes, log it"},
		"p12 2 2.5 2 5":             {},
		"3/13 p12 2.5 2":            {"Paddock 12: 2.5, 2 on 13 March"},
		"milkers 12, heifers 8":     {"Yes: milkers into 12, heifers into 8"},
		"half inch last night":      {"12.7 mm of rain yesterday"},
		"p12 3-4 leaves":            {},
		"well 2.5 2.5 2":            {"Well Field: 2.5, 2.5, 2"},
		"2 2.5 2.5 3 this is a lot": {"Paddock 2: 2.5, 2.5, 3"},
	} {
		r := Read(text, lowerFarm(t))
		if len(want) == 0 {
			if r.Ask != nil {
				require.Empty(t, r.Ask.Options, text)
			}
			require.Empty(t, r.Entries, text)
			continue
		}
		require.NotNil(t, r.Ask, "%s: %+v", text, r)
		var got []string
		for _, o := range r.Ask.Options {
			got = append(got, o.Label)
			require.NotEmpty(t, o.Entries, text)
		}
		require.Equal(t, want, got, text)
	}
}

// TestRecentIsOffered: the paddock named within the hour is one of the ways.
func TestRecentIsOffered(t *testing.T) {
	c := lowerFarm(t)
	c.Recent = "12"
	r := Read("2 2.5 2 3", c)
	require.Len(t, r.Ask.Options, 2)
	require.Equal(t, "Paddock 12: 2, 2.5, 2, 3", r.Ask.Options[1].Label)
	require.Equal(t, "12", r.Ask.Options[1].Entries[0].(entry.Count).Paddock)
}

// TestYesSaysWhat: what a yes would log stands in the question.
func TestYesSaysWhat(t *testing.T) {
	for text, want := range map[string]string{
		"milkers blorped into 8":                "Log: milkers into 8 today?",
		"12 grazed blorp yesterday, left 1500":  "Log: stock grazed 12 yesterday, 1500 kgDM/ha left?",
		"wiremu reckons the milkers went in 12": "Log: milkers into 12 today?",
		"12 sprayed blorp till friday":          "Log: 12 sprayed today, until 27 November?",
	} {
		r := Read(text, lowerFarm(t))
		require.NotNil(t, r.Ask, "%s: %+v", text, r)
		require.Contains(t, r.Ask.Reason, want, text)
		require.Equal(t, "Yes, log it", r.Ask.Options[0].Label, text)
	}
}

// TestEveryOfferIsSound reads the corpus and holds every option to its rules.
func TestEveryOfferIsSound(t *testing.T) {
	for _, p := range corpus(t, "*.jsonl") {
		r := Read(p.Text, p.context(t))
		if r.Ask == nil {
			continue
		}
		require.LessOrEqual(t, len(r.Ask.Options), mostOptions, p.Text)
		for _, o := range r.Ask.Options {
			require.NotEmpty(t, o.Label, p.Text)
			require.True(t, len(o.Entries) > 0 || o.Question != nil, p.Text)
			if o.Label == "Yes, log it" {
				require.Contains(t, r.Ask.Reason, "Log: ", p.Text)
			}
		}
	}
}

// TestNoWordIsDropped puts a word that nobody knows at every place of a bare
// list of scores: it is never filed on the paddock named within the hour.
func TestNoWordIsDropped(t *testing.T) {
	lists := [][]string{{"2.5", "2", "2"}, {"2", "2.5", "2", "3"}, {"2.5", "2.5"}, {"2.5", "2", "repro", "2"}, {"2.5,", "2,", "2"}, {"avg", "2.5"}, {"counted", "2.5", "2", "2", "2.5"}}
	for _, list := range lists {
		for _, w := range []string{"zzyzx", "river", "top", "corner", "smiths", "forty", "acre", "back", "B", "hilltop", "far"} {
			for at := 0; at <= len(list); at++ {
				words := append(append(append([]string{}, list[:at]...), w), list[at:]...)
				c := lowerFarm(t)
				c.Recent = "12"
				text := strings.Join(words, " ")
				for _, e := range Read(text, c).Entries {
					n, is := e.(entry.Count)
					require.False(t, is, "%s: %+v", text, n)
				}
			}
		}
	}
}
