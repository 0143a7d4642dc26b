package pace

import (
	"testing"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
	"leafround/core/leaf"
)

// orderKeeper holds one paddock, grazed on day 0 and counted since.
func orderKeeper(events ...Event) *Keeper {
	k := New(Site{South: true})
	k.Paddock("1", leaf.Of(entry.Ryegrass))
	for _, e := range events {
		k.Add(e)
	}
	return k
}

func counted(id int64, day entry.Date, mean float64) Event {
	return Event{ID: id, Day: day, Paddock: "1", Do: &Seen{Mean: mean, N: 8}}
}

// A count that is withdrawn after an estimate was asked for, and logged anew on
// an earlier day ("should be yesterday"), counts on that day.
func TestRedatedCountCountsOnItsDay(t *testing.T) {
	start := entry.NewDate(2026, 10, 1)
	grazed := Event{ID: 1, Day: start, Paddock: "1", Do: &Restart{Share: 1}}
	k := orderKeeper(grazed, counted(2, start.Add(20), 2))
	k.On(start.Add(20))
	k.Remove(2)
	k.Add(counted(3, start.Add(15), 2))
	got, ok := k.On(start.Add(20)).Stage("1")
	require.True(t, ok)
	want, _ := orderKeeper(grazed, counted(3, start.Add(15), 2)).On(start.Add(20)).Stage("1")
	require.InDelta(t, want.Mean, got.Mean, 1e-9)
}

// A day long past is reckoned from the first event, also when the states of
// that time are not kept any more.
func TestPastDayIsReckonedFromTheBeginning(t *testing.T) {
	start := entry.NewDate(2026, 3, 1)
	grazed := Event{ID: 1, Day: start, Paddock: "1", Do: &Restart{Share: 1}}
	k := orderKeeper(grazed)
	want, _ := k.On(start.Add(12)).Stage("1")
	for i := range 60 {
		k.Add(Event{ID: int64(2 + i), Day: start.Add(20 + 3*i), Paddock: "1", Do: &Restart{Share: 1}})
		k.On(start.Add(20 + 3*i))
	}
	got, ok := k.On(start.Add(12)).Stage("1")
	require.True(t, ok)
	require.InDelta(t, want.Mean, got.Mean, 1e-9)
}
