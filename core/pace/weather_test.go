package pace_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"leafround/core/entry"
	"leafround/core/pace"
)

func ptr(v float64) *float64 { return &v }

// sky tells the same weather every day from one day up to another.
func (f *farm) sky(from, to entry.Date, w pace.Weather) {
	for d := from; d < to; d++ {
		f.at(d, "", &w)
	}
}

// Warm grows faster than cold, and moist than dry, even before a count.
func TestWeatherBears(t *testing.T) {
	day := entry.NewDate(2026, 9, 1)
	rate := func(w pace.Weather) float64 {
		f := newFarm(-38)
		f.sky(day, day.Add(60), w)
		return f.On(day.Add(60)).Pace("").DaysPerLeaf
	}
	cold := rate(pace.Weather{Min: ptr(1), Max: ptr(9)})
	warm := rate(pace.Weather{Min: ptr(8), Max: ptr(18)})
	assert.Less(t, warm, 0.8*cold)
	assert.InDelta(t, warm, rate(pace.Weather{Mean: ptr(13)}), 0.01)
	assert.InDelta(t, warm, rate(pace.Weather{Soil: ptr(13)}), 0.01)
	moist := rate(pace.Weather{Min: ptr(8), Max: ptr(18), Rain: ptr(4)})
	dry := rate(pace.Weather{Min: ptr(8), Max: ptr(18), Rain: ptr(0)})
	assert.InDelta(t, warm, moist, 0.01)
	assert.Greater(t, dry, 1.2*moist)
	hot := rate(pace.Weather{Min: ptr(20), Max: ptr(36), Rain: ptr(9)})
	assert.Greater(t, hot, warm, "the line is not run past 18 °C")
}

// A temperature told once is forgotten after some days; a farm that tells none
// has its season.
func TestStaleWeather(t *testing.T) {
	f, plain, day := newFarm(-38), newFarm(-38), entry.NewDate(2026, 9, 1)
	f.at(day, "", &pace.Weather{Min: ptr(-2), Max: ptr(4)})
	assert.Greater(t, f.On(day.Add(1)).Pace("").DaysPerLeaf, 1.3*plain.On(day.Add(1)).Pace("").DaysPerLeaf)
	assert.InDelta(t, plain.On(day.Add(30)).Pace("").DaysPerLeaf, f.On(day.Add(30)).Pace("").DaysPerLeaf, 1e-9)
	w := f.On(day.Add(30)).Why("")
	assert.Equal(t, 1.0, w.Warmth)
	assert.Equal(t, 1.0, w.Dryness)
}

// Why: what an estimate rests on.
func TestWhy(t *testing.T) {
	f, day := settled()
	f.at(day, "a", all)
	f.sky(day, day.Add(20), pace.Weather{Min: ptr(4), Max: ptr(12), Rain: ptr(2)})
	f.at(day.Add(10), "a", seen(0.5, 8))
	w := f.On(day.Add(20)).Why("a")
	assert.Equal(t, 1, w.Counts)
	assert.Equal(t, day.Add(10), w.Last)
	assert.Equal(t, 0.5, w.Seen)
	assert.InDelta(t, 0.3, w.Expected, 0.12, "ten days at 24 a leaf, and colder than normal")
	assert.Equal(t, day, w.Since)
	assert.InDelta(t, 160, w.Degrees, 1e-9, "20 days at 8 °C")
	assert.Equal(t, 110.0, w.PerLeaf)
	assert.Equal(t, 21, w.FarmCount)
	assert.InDelta(t, 1, w.Own, 0.1)
	assert.Equal(t, w.Pace, f.On(day.Add(20)).Pace("a"))
	assert.Equal(t, 1.0, w.Dryness)
	assert.Less(t, w.Warmth, 1.0)
	assert.InDelta(t, 22, w.Season, 3)
}

// A later word on a day replaces the earlier; a least and a most may come apart.
func TestSecondWordOnADay(t *testing.T) {
	day := entry.NewDate(2026, 9, 1)
	rate := func(words ...pace.Weather) float64 {
		f := newFarm(-38)
		f.sky(day, day.Add(10), pace.Weather{Min: ptr(8), Max: ptr(12)})
		for _, w := range words {
			f.at(day.Add(10), "", &w)
		}
		return f.On(day.Add(10)).Pace("").DaysPerLeaf
	}
	once := rate(pace.Weather{Min: ptr(0), Max: ptr(8)})
	assert.Less(t, rate(), once)
	assert.InDelta(t, once, rate(pace.Weather{Min: ptr(9), Max: ptr(19)}, pace.Weather{Min: ptr(0), Max: ptr(8)}), 1e-9)
	assert.InDelta(t, once, rate(pace.Weather{Min: ptr(0)}, pace.Weather{Max: ptr(8)}), 1e-9)
}
