package pace_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"leafround/core/entry"
	"leafround/core/leaf"
	"leafround/core/pace"
)

// somewhat is a year of a small farm's events, numbered by day.
func somewhat(r *rand.Rand) (events []pace.Event, last entry.Date) {
	from, id := entry.NewDate(2025, 3, 1), int64(0)
	for d := range 365 {
		if r.IntN(3) == 0 {
			rain, least, most := 9*r.Float64(), 5+4*r.Float64(), 12+6*r.Float64()
			id++
			events = append(events, pace.Event{ID: id, Day: from.Add(d),
				Do: &pace.Weather{Rain: &rain, Min: &least, Max: &most}})
		}
		if r.IntN(2) == 0 {
			id++
			e := pace.Event{ID: id, Day: from.Add(d), Paddock: fmt.Sprint(r.IntN(6)), Do: seen(3*r.Float64(), r.IntN(10))}
			if r.IntN(3) == 0 {
				e.Do = &pace.Restart{Share: 1 - 0.5*float64(r.IntN(2)), Start: entry.LeafStage(0.5 * float64(r.IntN(2)))}
			}
			events = append(events, e)
		}
	}
	return events, from.Add(365)
}

func keeper() *pace.Keeper {
	k := pace.New(pace.Site{Lat: -38, Placed: true, South: true})
	for p := range 6 {
		k.Paddock(fmt.Sprint(p), leaf.Of(entry.Ryegrass))
	}
	return k
}

// same asks that two keepers say the same of a day.
func same(t *testing.T, a, b *pace.Keeper, day entry.Date) {
	t.Helper()
	for p := range 6 {
		name := fmt.Sprint(p)
		sa, oka := a.On(day).Stage(name)
		sb, okb := b.On(day).Stage(name)
		require.Equal(t, oka, okb, name)
		require.InDelta(t, sa.Mean, sb.Mean, 1e-9, name)
		require.InDelta(t, sa.SD, sb.SD, 1e-9, name)
		require.Equal(t, sa.Days, sb.Days, name)
		require.InDelta(t, a.On(day).Pace(name).High, b.On(day).Pace(name).High, 1e-9)
	}
}

// The order in which events are told does not matter, nor when one asks
// between.
func TestAnyOrder(t *testing.T) {
	for seed := range uint64(3) {
		r := rand.New(rand.NewPCG(seed, 1))
		events, last := somewhat(r)
		straight, mixed := keeper(), keeper()
		for _, e := range events {
			straight.Add(e)
		}
		r.Shuffle(len(events), func(i, j int) { events[i], events[j] = events[j], events[i] })
		for i, e := range events {
			mixed.Add(e)
			if i%13 == 0 {
				mixed.On(e.Day.Add(r.IntN(40)))
			}
		}
		same(t, straight, mixed, last)
		same(t, straight, mixed, last.Add(-100))
		same(t, straight, mixed, last.Add(30))
		same(t, straight, mixed, last)
	}
}

// Mostly in order, sometimes a few days late: the checks are used, and used
// rightly.
func TestLateEvents(t *testing.T) {
	events, last := somewhat(rand.New(rand.NewPCG(9, 1)))
	straight, late := keeper(), keeper()
	var held []pace.Event
	for i, e := range events {
		straight.Add(e)
		if i%11 == 0 {
			held = append(held, e)
			continue
		}
		late.Add(e)
		late.On(e.Day)
		if len(held) > 2 {
			late.Add(held[0])
			held = held[1:]
		}
	}
	for _, e := range held {
		late.Add(e)
	}
	same(t, straight, late, last)
}

// What is withdrawn leaves no trace.
func TestRemove(t *testing.T) {
	events, last := somewhat(rand.New(rand.NewPCG(4, 1)))
	without, with := keeper(), keeper()
	for i, e := range events {
		with.Add(e)
		with.On(e.Day)
		if i%9 != 0 {
			without.Add(e)
		}
	}
	for i, e := range events {
		if i%9 == 0 {
			with.Remove(e.ID)
		}
	}
	with.Remove(999999)
	same(t, without, with, last)
	for _, e := range events {
		with.Remove(e.ID)
	}
	_, ok := with.On(last).Stage("1")
	assert.False(t, ok)
}

// A paddock that is declared late, renamed, or given another grass.
func TestDeclare(t *testing.T) {
	events, last := somewhat(rand.New(rand.NewPCG(5, 1)))
	early, late := keeper(), pace.New(pace.Site{Lat: -38, Placed: true, South: true})
	early.Paddock("new", leaf.Of(entry.Fescue))
	for _, e := range events {
		early.Add(e)
		late.Add(e)
		late.On(e.Day)
	}
	for p := range 6 {
		late.Paddock(fmt.Sprint(p), leaf.Of(entry.Ryegrass))
	}
	late.Paddock("new", leaf.Of(entry.Fescue))
	same(t, early, late, last)
	assert.InDelta(t, early.On(last).Pace("new").DaysPerLeaf, late.On(last).Pace("new").DaysPerLeaf, 1e-9)

	was, _ := late.On(last).Stage("3")
	late.Rename("3", "Top Flat")
	late.Rename("nowhere", "else")
	late.Rename("1", "2")
	_, ok := late.On(last).Stage("3")
	assert.False(t, ok)
	is, ok := late.On(last).Stage("Top Flat")
	assert.True(t, ok)
	assert.Equal(t, was, is)

	late.Rename("Top Flat", "3")
	late.Paddock("3", leaf.Of(entry.Brome))
	late.Paddock("3", leaf.Of(entry.Ryegrass))
	late.Place(pace.Site{Lat: 52, Placed: true})
	late.Place(pace.Site{Lat: -38, Placed: true, South: true})
	same(t, early, late, last)
}
