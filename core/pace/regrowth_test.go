package pace_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"leafround/core/entry"
	"leafround/core/leaf"
	"leafround/core/pace"
)

// Half a paddock grazed: the stage is the mean of both halves (ours).
func TestPartialGrazing(t *testing.T) {
	f, day := settled()
	was, _ := f.On(day).Stage("a")
	f.at(day, "a", &pace.Restart{Share: 0.5})
	is, _ := f.On(day).Stage("a")
	assert.InDelta(t, was.Mean/2, is.Mean, 1e-9)
	assert.Equal(t, 0, is.Days)
	assert.Greater(t, is.SD/is.Mean, was.SD/was.Mean)

	f.at(day, "b", &pace.Restart{Share: 0.25})
	b, _ := f.On(day).Stage("b")
	assert.Equal(t, 59, b.Days, "a corner does not start the days again")
}

// A grazing of three days behind a back fence: the mean strip is a day's growth
// ahead (ours); without the fence regrowth starts from nothing when all was left.
func TestThreeDayGrazing(t *testing.T) {
	f, day := settled()
	f.at(day, "a", &pace.Restart{Share: 1, Strips: 3})
	st, ok := f.On(day).Stage("a")
	require.True(t, ok)
	assert.InDelta(t, 1/f.On(day).Pace("a").DaysPerLeaf, st.Mean, 0.01)
	f.at(day, "b", all)
	st, ok = f.On(day).Stage("b")
	require.True(t, ok)
	assert.Zero(t, st.Mean)
	_, ok = f.On(day).Reach("b", 2.5)
	assert.True(t, ok)
}

// A remnant that counts after a lax residual makes grass look faster than it is,
// unless the stage that regrowth started from is told.
func TestLaxResidual(t *testing.T) {
	told, untold := newFarm(-38), newFarm(-38)
	day := entry.NewDate(2026, 7, 1)
	for _, f := range []*farm{told, untold} {
		start := entry.LeafStage(0)
		if f == told {
			start = 0.6
		}
		f.at(day, "1", &pace.Restart{Share: 1, Start: start})
		f.at(day.Add(24), "1", seen(1.6, 10))
	}
	on := day.Add(24)
	assert.Less(t, untold.On(on).Pace("1").DaysPerLeaf, 17.5, "15 days a leaf is what 24 ÷ 1.6 shows")
	assert.InDelta(t, 22, told.On(on).Pace("1").DaysPerLeaf, 3, "24 days brought one leaf")
}

// A cut starts regrowth again, as a grazing does.
func TestCut(t *testing.T) {
	f, day := settled()
	f.at(day, "a", &pace.Restart{Share: 1, Cut: true})
	st, _ := f.On(day.Add(12)).Stage("a")
	assert.Equal(t, 12, st.Days)
	assert.InDelta(t, 0.5, st.Mean, 0.1)
	f.at(day.Add(12), "a", &pace.Closed{})
	again, _ := f.On(day.Add(12)).Stage("a")
	assert.InDelta(t, st.Mean, again.Mean, 1e-9, "a closed canopy says nothing of leaves")
}

// Dates: in order, never before the day, today once reached.
func TestReach(t *testing.T) {
	f, day := settled()
	e := f.On(day)
	var before entry.Date
	for _, stage := range []entry.LeafStage{2, 2.25, 2.6, 3, 3.5} {
		w, ok := e.Reach("a", stage)
		require.True(t, ok)
		assert.LessOrEqual(t, w.Low, w.On)
		assert.LessOrEqual(t, w.On, w.High)
		assert.GreaterOrEqual(t, w.Low, day)
		assert.GreaterOrEqual(t, w.On, before)
		before = w.On
	}
	w, _ := e.Reach("a", 2)
	assert.Equal(t, day, w.On, "2 leaves have been reached")
	w, _ = e.Reach("a", 3)
	assert.InDelta(t, 13, w.On.Sub(day), 2, "a little over half a leaf at 23 days each")
	mean, sd, ok := e.At("a", w.On)
	assert.True(t, ok)
	assert.InDelta(t, 3, mean, 0.05)
	assert.Greater(t, sd, 0.1)
	_, _, ok = e.At("nowhere", day)
	assert.False(t, ok)
	_, ok = e.Reach("nowhere", 2)
	assert.False(t, ok)
}

// In spring the next leaf is faster than the last: a round takes less than
// leaves times the pace of the day; in autumn more.
func TestNeedsLookAhead(t *testing.T) {
	f := newFarm(-38)
	for month, faster := range map[int]bool{9: true, 3: false} {
		day := entry.NewDate(2026, 1, 1).Add((month-1)*30 + 15)
		e := f.On(day)
		assert.Equal(t, faster, e.Needs("", day, 2.5) < 2.5*e.Pace("").DaysPerLeaf, "month %d", month)
		later := e.Needs("", day.Add(30), 2.5)
		assert.InDelta(t, f.On(day.Add(30)).Needs("", day.Add(30), 2.5), later, 0.5, "nothing new is learnt in between")
	}
}

// 110 °C·d a leaf in ryegrass, 230 in fescue (from memory: Lemaire; Colabelli et
// al. 1998): fescue takes about twice as long, until it is counted.
func TestGrasses(t *testing.T) {
	f, day := newFarm(-38), entry.NewDate(2026, 10, 1)
	f.Paddock("rye", leaf.Of(entry.Ryegrass))
	f.Paddock("fescue", leaf.Of(entry.Fescue))
	f.Paddock("what", leaf.Of("moss"))
	e := f.On(day)
	assert.InDelta(t, 230.0/110, e.Pace("fescue").DaysPerLeaf/e.Pace("rye").DaysPerLeaf, 1e-6)
	assert.Equal(t, e.Pace("rye"), e.Pace("what"))
	for _, name := range []string{"rye", "fescue"} {
		f.at(day, name, all)
		f.at(day.Add(20), name, seen(2, 10))
	}
	e = f.On(day.Add(20))
	assert.Less(t, e.Pace("fescue").DaysPerLeaf/e.Pace("rye").DaysPerLeaf, 1.6)
}
