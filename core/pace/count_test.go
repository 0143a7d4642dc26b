package pace_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"leafround/core/entry"
	"leafround/core/leaf"
	"leafround/core/pace"
)

// farm is a keeper with a running number for its events: a test's shorthand.
type farm struct {
	*pace.Keeper
	id int64
}

func newFarm(lat float64) *farm {
	return &farm{Keeper: pace.New(pace.Site{Lat: lat, Placed: true, South: lat < 0})}
}

func (f *farm) at(day entry.Date, paddock string, do pace.Deed) int64 {
	f.id++
	f.Add(pace.Event{ID: f.id, Day: day, Paddock: paddock, Do: do})
	return f.id
}

func seen(mean float64, n int) *pace.Seen {
	s := leaf.Measure(entry.Count{Mean: entry.LeafStage(mean), N: n}, leaf.Usual)
	return &pace.Seen{Mean: mean, N: n, SE: s.SE, SD: s.SD}
}

var all = &pace.Restart{Share: 1}

// settled is a farm in a southern winter, at 24 days a leaf in all of ten
// paddocks, counted often enough to be sure.
func settled() (*farm, entry.Date) {
	f, day := newFarm(-38), entry.NewDate(2026, 5, 1)
	for p := range 10 {
		name := string(rune('a' + p))
		f.at(day.Add(p), name, all)
		f.at(day.Add(p+24), name, seen(1, 8))
		f.at(day.Add(p+48), name, seen(2, 8))
	}
	return f, day.Add(60)
}

func TestSettledFarm(t *testing.T) {
	f, day := settled()
	assert.InDelta(t, 24, f.On(day).Pace("").DaysPerLeaf, 1.5)
	st, ok := f.On(day).Stage("a")
	require.True(t, ok)
	assert.InDelta(t, 2.5, st.Mean, 0.12, "60 days at 24 a leaf")
	assert.Equal(t, 60, st.Days)
	assert.Less(t, st.High-st.Low, 0.8)
}

// A count that cannot fit: 2.5 leaves five days after grazing in winter.
func TestOddCountIsFlaggedAndDoesNotDragTheFarm(t *testing.T) {
	f, day := settled()
	f.at(day, "a", all)
	before := f.On(day.Add(5)).Pace("").DaysPerLeaf
	_, odd := f.On(day.Add(5)).Odd("a")
	require.False(t, odd)
	f.at(day.Add(5), "a", seen(2.5, 8))
	e := f.On(day.Add(5))
	why, odd := e.Odd("a")
	assert.True(t, odd)
	assert.Contains(t, why, "faster")
	assert.InEpsilon(t, before, e.Pace("").DaysPerLeaf, 0.01)
	assert.InEpsilon(t, before, e.Pace("b").DaysPerLeaf, 0.01)
	_, odd = e.Odd("b")
	assert.False(t, odd)
}

// If a second count agrees with the odd one, it was the grazing that was
// wrong: the paddock's stage follows, the farm's pace still doesn't.
func TestTwoOddCountsThatAgreeAreBelieved(t *testing.T) {
	f, day := settled()
	f.at(day, "a", all)
	before := f.On(day.Add(14)).Pace("").DaysPerLeaf
	f.at(day.Add(5), "a", seen(2.25, 8))
	f.at(day.Add(12), "a", seen(2.5, 8))
	f.at(day.Add(14), "a", seen(2.5, 8))
	st, _ := f.On(day.Add(14)).Stage("a")
	assert.InDelta(t, 2.5, st.Mean, 0.35)
	assert.InEpsilon(t, before, f.On(day.Add(14)).Pace("").DaysPerLeaf, 0.05)
}

// A full tiller is a floor: 3 of 3 live leaves eighty days after grazing does
// not make the grass slow (field guide, "Live leaves stop at about three").
func TestFullTillersAreFloors(t *testing.T) {
	for _, past := range []int{0, 8} {
		f, day := settled()
		f.at(day.Add(-20), "new", all)
		before := f.On(day.Add(80)).Pace("").DaysPerLeaf
		s := seen(3, 8)
		s.Past = past
		f.at(day.Add(80), "new", s)
		e := f.On(day.Add(80))
		assert.InEpsilon(t, before, e.Pace("").DaysPerLeaf, 0.06, "past %d", past)
		st, _ := e.Stage("new")
		assert.Greater(t, st.Mean, 3.0)
		_, odd := e.Odd("new")
		assert.False(t, odd)
	}
}

// Averages without tillers are weak evidence; more tillers are stronger.
func TestMoreTillersTellMore(t *testing.T) {
	moved := func(n int) float64 {
		f, day := newFarm(-38), entry.NewDate(2026, 9, 1)
		f.at(day, "1", all)
		before := f.On(day.Add(20)).Pace("1").DaysPerLeaf
		f.at(day.Add(20), "1", seen(1, n))
		return f.On(day.Add(20)).Pace("1").DaysPerLeaf - before
	}
	assert.Greater(t, moved(0), 1.0)
	assert.Greater(t, moved(8), moved(0))
	assert.Greater(t, moved(20), moved(8))
}

// Two counts of one regrowth tell the pace even where the grazing is not known.
func TestCountsOfAPaddockNeverGrazed(t *testing.T) {
	f, day := newFarm(-38), entry.NewDate(2026, 6, 1)
	_, ok := f.On(day).Stage("1")
	assert.False(t, ok)
	f.at(day, "1", seen(1, 10))
	st, ok := f.On(day).Stage("1")
	require.True(t, ok)
	assert.InDelta(t, 1, st.Mean, 0.1)
	assert.Equal(t, -1, st.Days)
	one := f.On(day).Pace("1")
	f.at(day.Add(28), "1", seen(3, 10))
	two := f.On(day.Add(28)).Pace("1")
	assert.Less(t, two.DaysPerLeaf, 0.9*one.DaysPerLeaf, "14 days a leaf or faster were seen, where over 20 were expected")
	assert.Less(t, two.High/two.Low, one.High/one.Low)
}

// Mostly reproductive tillers: the stage means little, no date is given, until
// regrowth starts again.
func TestReproductive(t *testing.T) {
	f, day := settled()
	s := seen(1.5, 3)
	s.Reproductive = 5
	f.at(day, "a", s)
	st, _ := f.On(day).Stage("a")
	assert.True(t, st.Reproductive)
	_, ok := f.On(day).Reach("a", 3)
	assert.False(t, ok)
	f.at(day.Add(1), "b", &pace.Seen{Reproductive: 8})
	_, ok = f.On(day.Add(1)).Reach("b", 3)
	assert.False(t, ok)
	f.at(day.Add(2), "a", &pace.Restart{Share: 1, Cut: true})
	_, ok = f.On(day.Add(2)).Reach("a", 3)
	assert.True(t, ok)
}
