package pace_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"leafround/core/entry"
	"leafround/core/leaf"
	"leafround/core/pace"
)

// Degree-day crossings of the Seattle data (npm vega-datasets 3.2.1), mean of
// least and most, base 0 °C: from 2012-03-01, 110 °C·d is passed on 03-21
// (112.4) and 330 on 04-15 (335.7); from 2012-07-01, on 07-07 (116.15) and
// 07-19 (344.1). Ours, reckoned apart from this code.
func TestDegreeDayCrossings(t *testing.T) {
	days, first := readSeattle(t), entry.NewDate(2012, 1, 1)
	for _, c := range []struct {
		from, to entry.Date
		over, is float64
	}{
		{entry.NewDate(2012, 3, 1), entry.NewDate(2012, 3, 21), 110, 112.4},
		{entry.NewDate(2012, 3, 1), entry.NewDate(2012, 4, 15), 330, 335.7},
		{entry.NewDate(2012, 7, 1), entry.NewDate(2012, 7, 7), 110, 116.15},
		{entry.NewDate(2012, 7, 1), entry.NewDate(2012, 7, 19), 330, 344.1},
	} {
		sum, d := 0.0, c.from
		for ; sum <= c.over; d++ {
			sum += leaf.DegreeDays(days[d.Sub(first)].least, days[d.Sub(first)].most)
		}
		assert.Equal(t, c.to, d-1)
		assert.InDelta(t, c.is, sum, 0.06)
	}
}

// The estimator sums the same degree-days to explain itself: 335.7 by the end
// of 15 April.
func TestEstimateSumsDegreeDays(t *testing.T) {
	days, first := readSeattle(t), entry.NewDate(2012, 1, 1)
	f, from := newFarm(47.6), entry.NewDate(2012, 3, 1)
	f.at(from, "1", all)
	for d := from; d <= entry.NewDate(2012, 4, 15); d++ {
		s := days[d.Sub(first)]
		f.at(d, "", &pace.Weather{Min: &s.least, Max: &s.most, Rain: &s.rain})
	}
	assert.InDelta(t, 335.7, f.On(entry.NewDate(2012, 4, 16)).Why("1").Degrees, 0.06)
}

// Days per leaf of the published extension pages, against what a new farm
// starts from. Ireland: 7–8 in May and June, 30–40 in early spring (Teagasc
// 2019). Victoria, early winter: 15 (Agriculture Victoria 2020), within our 80 %
// interval. Spring 6–10, winter 20–35 (common practice, no source).
func TestNewFarmsWithinPublishedRanges(t *testing.T) {
	ireland := pace.New(pace.Site{Lat: 53, Placed: true})
	victoria := pace.New(pace.Site{Lat: -38, Placed: true, South: true})
	on := func(k *pace.Keeper, m time.Month, d int) pace.Pace { return k.On(entry.NewDate(2026, m, d)).Pace("") }
	for _, m := range []time.Month{time.May, time.June} {
		assert.InDelta(t, 7.5, on(ireland, m, 20).DaysPerLeaf, 0.7)
	}
	assert.InDelta(t, 35, on(ireland, time.February, 20).DaysPerLeaf, 5)
	assert.InDelta(t, 8, on(victoria, time.October, 25).DaysPerLeaf, 2)
	assert.InDelta(t, 27, on(victoria, time.July, 10).DaysPerLeaf, 8)
	june := on(victoria, time.June, 5)
	assert.Less(t, june.Low, 15.0)
	assert.Greater(t, june.High, 15.0)
}

// Spring is faster than autumn at one temperature (altitude study, mid-Wales
// 1973–74): of two days with the same normal temperature, the spring one.
func TestSpringIsFasterThanAutumn(t *testing.T) {
	k := pace.New(pace.Site{Lat: 52, Placed: true})
	spring := k.On(entry.NewDate(2026, time.April, 26)).Pace("").DaysPerLeaf
	autumn := k.On(entry.NewDate(2026, time.October, 26)).Pace("").DaysPerLeaf
	assert.Less(t, spring, autumn)
}
