package pace_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"leafround/core/entry"
	"leafround/core/leaf"
	"leafround/core/pace"
)

// Nothing is known but the place: a pace with a wide interval, needs, no stage.
func TestNoCountsYet(t *testing.T) {
	k := pace.New(pace.Site{})
	e := k.On(entry.NewDate(2026, 5, 1))
	p := e.Pace("")
	assert.Greater(t, p.High/p.Low, 2.0)
	assert.InDelta(t, 19, e.Needs("", e.Day(), 2.5), 4)
	_, ok := e.Stage("1")
	assert.False(t, ok)
	_, ok = e.Odd("1")
	assert.False(t, ok)
	assert.Equal(t, 0, e.Why("1").Counts)
}

// Grazed, never counted: a stage and dates from the season alone, with an
// interval that says so.
func TestGrazedNeverCounted(t *testing.T) {
	f, day := newFarm(-37), entry.NewDate(2026, 11, 1)
	f.at(day, "1", all)
	st, ok := f.On(day.Add(15)).Stage("1")
	require.True(t, ok)
	assert.InDelta(t, 2, st.Mean, 0.3)
	assert.Greater(t, st.High-st.Low, 1.5)
	w, ok := f.On(day.Add(15)).Reach("1", 3)
	require.True(t, ok)
	assert.Greater(t, w.High.Sub(w.Low), 6)
}

// Whatever is thrown at it, an estimate stays finite and its dates in order.
func TestNeverNonsense(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := pace.New(pace.Site{Lat: rapid.Float64Range(-90, 90).Draw(t, "lat"), Placed: true})
		k.Paddock("1", leaf.Of(rapid.SampledFrom(entry.Grasses()).Draw(t, "grass")))
		from := entry.NewDate(2026, 1, 1)
		for id := range rapid.IntRange(0, 25).Draw(t, "events") {
			k.Add(pace.Event{ID: int64(id), Day: from.Add(rapid.IntRange(0, 300).Draw(t, "day")),
				Paddock: rapid.SampledFrom([]string{"1", "2"}).Draw(t, "paddock"), Do: anything(t)})
		}
		e := k.On(from.Add(rapid.IntRange(-30, 500).Draw(t, "on")))
		for _, name := range []string{"", "1", "2", "3"} {
			sane(t, e, name)
		}
	})
}

func anything(t *rapid.T) pace.Deed {
	some := func(low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, "value") }
	switch rapid.IntRange(0, 3).Draw(t, "what") {
	case 0:
		return &pace.Restart{Share: some(-1, 2), Start: entry.LeafStage(some(-1, 3)), Strips: rapid.IntRange(-1, 5).Draw(t, "strips")}
	case 1:
		return &pace.Seen{Mean: some(-1, 12), N: rapid.IntRange(-1, 30).Draw(t, "n"), SE: some(-1, 2),
			Past: rapid.IntRange(0, 9).Draw(t, "past"), Reproductive: rapid.IntRange(0, 9).Draw(t, "repro")}
	case 2:
		rain, least, most, soil := some(0, 400), some(-40, 30), some(-30, 50), some(-10, 40)
		return &pace.Weather{Rain: &rain, Min: &least, Max: &most, Soil: &soil}
	}
	return &pace.Closed{}
}

func sane(t *rapid.T, e *pace.Estimate, name string) {
	p := e.Pace(name)
	require.True(t, p.Low > 0.5 && p.Low <= p.DaysPerLeaf && p.DaysPerLeaf <= p.High && p.High < 5000, "%v", p)
	need := e.Needs(name, e.Day(), 2.5)
	require.True(t, need > 1 && need <= 400, "%v", need)
	st, ok := e.Stage(name)
	if !ok {
		return
	}
	require.False(t, math.IsNaN(st.Mean) || math.IsNaN(st.SD) || math.IsInf(st.High, 0), "%v", st)
	require.LessOrEqual(t, st.Low, st.High)
	if w, ok := e.Reach(name, 2.5); ok {
		require.True(t, e.Day() <= w.Low && w.Low <= w.On && w.On <= w.High, "%v", w)
		require.LessOrEqual(t, w.High.Sub(e.Day()), 400)
	}
}
