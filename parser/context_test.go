package parser

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
)

// now is a Wednesday afternoon on the invented farm.
func now(t *testing.T) Context {
	zone, err := time.LoadLocation("Pacific/Auckland")
	require.NoError(t, err)
	return Context{Now: time.Date(2026, 11, 25, 17, 40, 0, 0, zone), Book: register(t, "totara")}
}

func TestBareScoresWithinTheHour(t *testing.T) {
	c := now(t)
	require.NotNil(t, Read("2 2.5 2", c).Ask)
	c.Recent = "12"
	for text, n := range map[string]int{"2.5 2 2": 3, "0 2 2.5": 3, "2.5 3 3 repro": 3} {
		r := Read(text, c)
		require.Len(t, r.Entries, 1, "%s: %+v", text, r.Ask)
		got := r.Entries[0].(entry.Count)
		require.Equal(t, "12", got.Paddock, text)
		require.Len(t, got.Tillers, n, text)
		require.Contains(t, strings.Join(r.Understood, " "), "12", text)
	}
}

func TestSameAgain(t *testing.T) {
	c := now(t)
	until := entry.NewDate(2026, 12, 8)
	c.Last = []entry.Entry{entry.Hold{Paddock: "12", Date: entry.NewDate(2026, 11, 24), Reason: entry.HoldSpray, Until: until}}
	for _, text := range []string{"same again in 13", "ditto 13", "13 too", "and 13 as well"} {
		r := Read(text, c)
		require.Len(t, r.Entries, 1, "%s: %+v", text, r)
		h := r.Entries[0].(entry.Hold)
		require.Equal(t, "13", h.Paddock, text)
		require.Equal(t, entry.NewDate(2026, 11, 25), h.Date, "today")
		require.Equal(t, 14, h.Until.Sub(h.Date), "as many days as the first")
	}
	require.Len(t, Read("same again in 13 and 14", c).Entries, 2)
}

func TestChoose(t *testing.T) {
	c := now(t)
	day := entry.NewDate(2026, 11, 25)
	ask := entry.Ask{Reason: "Which?", Options: []entry.Option{
		{Label: "Paddock 12", Entries: []entry.Entry{entry.Cut{Paddock: "12", Date: day, What: entry.Topped}}},
		{Label: "River 1", Entries: []entry.Entry{entry.Cut{Paddock: "River 1", Date: day, What: entry.Topped}}},
		{Label: "Top 2", Entries: []entry.Entry{entry.Cut{Paddock: "Top 2", Date: day, What: entry.Topped}}},
	}}
	for text, want := range map[string]int{"12": 0, "p12": 0, "paddock 12": 0, "the second": 1, "2": 1, "river 1": 1, "River1": 1, "3": 2,
		"the last one": 2, "top 2 please": 2, "number 3": 2, "first": 0, "1st": 0, "none of these": NoneOfThese, "none": NoneOfThese, "neither": NoneOfThese} {
		got, ok := Choose(text, ask, c)
		require.True(t, ok, text)
		require.Equal(t, want, got, text)
	}
	for _, text := range []string{"13", "4", "p12 2 2.5 2", "hello", "", "the road"} {
		_, ok := Choose(text, ask, c)
		require.False(t, ok, text)
	}
}

func TestLongMessageIsAsked(t *testing.T) {
	c := now(t)
	fits := "p12 2 2.5 2 " + strings.Repeat("🐄", (MaxUnits-12)/2)
	require.Nil(t, Read(fits, c).Ask, "4,096 UTF-16 units")
	require.NotNil(t, Read(fits+"x", c).Ask, "4,097 UTF-16 units")
}

func TestCommandOfAnotherBot(t *testing.T) {
	c := now(t)
	c.Bot = "leafround_bot"
	require.NotNil(t, Read("/next@leafround_bot", c).Question)
	require.NotNil(t, Read("/next@LeafRound_Bot", c).Question)
	require.True(t, Read("/next@weather_bot", c).Ignored)
}

func TestRegisteredMobs(t *testing.T) {
	c := now(t)
	c.Book = NewBook(c.Book.names, []string{"cows", "R2s", "spring calvers"})
	for text, want := range map[string]string{"cows in 12": "cows", "40 R2s in 12": "R2s", "spring calvers into 12": "spring calvers", "r2s in 12": "R2s"} {
		r := Read(text, c)
		require.Len(t, r.Entries, 1, "%s: %+v", text, r)
		require.Equal(t, want, r.Entries[0].(entry.Graze).Mob, text)
		require.Equal(t, "12", r.Entries[0].(entry.Graze).Paddock, text)
	}
	require.Empty(t, Read("cows in 12", now(t)).Entries[0].(entry.Graze).Mob, "cows name no mob unless registered")
}

func TestMonthFirst(t *testing.T) {
	for zone, want := range map[string]bool{"America/New_York": true, "America/Indiana/Knox": true, "US/Pacific": true, "Pacific/Honolulu": true,
		"America/Toronto": false, "America/Sao_Paulo": false, "Pacific/Auckland": false, "Europe/Dublin": false} {
		require.Equal(t, want, MonthFirst(zone), zone)
	}
}

// TestClockChanges reads days on and around clock changes, from moments in the
// farm's own zone.
func TestClockChanges(t *testing.T) {
	zone, err := time.LoadLocation("Pacific/Auckland")
	require.NoError(t, err)
	for _, c := range []struct {
		at   time.Time
		text string
		want entry.Date
	}{
		{time.Date(2026, 9, 27, 1, 59, 0, 0, zone), "12 grazed last night", entry.NewDate(2026, 9, 26)},
		{time.Date(2026, 9, 27, 3, 0, 0, 0, zone), "12 grazed today", entry.NewDate(2026, 9, 27)},
		{time.Date(2026, 9, 28, 0, 0, 0, 0, zone), "12 grazed yesterday", entry.NewDate(2026, 9, 27)},
		{time.Date(2026, 4, 5, 2, 30, 0, 0, zone), "12 grazed yesterday", entry.NewDate(2026, 4, 4)},
		{time.Date(2026, 1, 1, 0, 5, 0, 0, zone), "12 grazed yesterday", entry.NewDate(2025, 12, 31)},
		{time.Date(2026, 3, 1, 0, 5, 0, 0, zone), "12 grazed 2 days ago", entry.NewDate(2026, 2, 27)},
	} {
		r := Read(c.text, Context{Now: c.at, Book: register(t, "totara")})
		require.Len(t, r.Entries, 1, "%s at %s", c.text, c.at)
		require.Equal(t, c.want, r.Entries[0].On(), "%s at %s", c.text, c.at)
	}
}
