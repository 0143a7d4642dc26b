package pace_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
	"leafround/core/leaf"
	"leafround/core/pace"
)

// longLog gives a keeper of 60 paddocks, each grazed every 24 days and counted
// twice between, with weather told every day, and the day that the log ends.
func longLog(years int) (*pace.Keeper, entry.Date, int64) {
	k := pace.New(pace.Site{Lat: -38, Placed: true, South: true})
	from, id := entry.NewDate(2016, 7, 1), int64(0)
	for p := range 60 {
		k.Paddock(fmt.Sprint(p), leaf.Of(entry.Ryegrass))
	}
	least, most, rain := 7.0, 17.0, 2.5
	for d := range 365 * years {
		id++
		k.Add(pace.Event{ID: id, Day: from.Add(d), Do: &pace.Weather{Min: &least, Max: &most, Rain: &rain}})
		for p := range 60 {
			var do pace.Deed
			switch (d + 7*p) % 24 {
			case 0:
				do = &pace.Restart{Share: 1}
			case 10:
				do = &pace.Seen{Mean: 1.25, N: 8, SE: 0.16, SD: 0.45}
			case 19:
				do = &pace.Seen{Mean: 2.25, N: 8, SE: 0.16, SD: 0.45}
			default:
				continue
			}
			id++
			k.Add(pace.Event{ID: id, Day: from.Add(d), Paddock: fmt.Sprint(p), Do: do})
		}
	}
	day := from.Add(365 * years)
	k.On(day)
	return k, day, id
}

// BenchmarkCount is one count more, and its answer: the stage, the pace and
// three dates. The goal is under 2 ms, and less than a fifth more after ten
// years than after one.
func BenchmarkCount(b *testing.B) {
	for _, years := range []int{1, 10} {
		b.Run(fmt.Sprintf("years=%d", years), func(b *testing.B) {
			k, day, id := longLog(years)
			for b.Loop() {
				id++
				oneCount(b, k, day, id)
			}
		})
	}
}

// costs words the benchmark for the trial's table.
func costs() string {
	var ns [2]int64
	for i, years := range []int{1, 10} {
		k, day, id := longLog(years)
		ns[i] = testing.Benchmark(func(b *testing.B) {
			for b.Loop() {
				id++
				oneCount(b, k, day, id)
			}
		}).NsPerOp()
	}
	return fmt.Sprintf("\n## Cost\n\nOne count more on 60 paddocks, with its stage, pace and three dates (goal: under 2 ms, and less than a fifth\n"+
		"more after ten years): %.2f ms with one year in the log, %.2f ms with ten; ratio %.2f.\n",
		float64(ns[0])/1e6, float64(ns[1])/1e6, float64(ns[1])/float64(ns[0]))
}

func oneCount(t require.TestingT, k *pace.Keeper, day entry.Date, id int64) {
	name := fmt.Sprint(id % 60)
	k.Add(pace.Event{ID: id, Day: day, Paddock: name, Do: &pace.Seen{Mean: 1.5, N: 8, SE: 0.16, SD: 0.45}})
	e := k.On(day)
	_, ok := e.Stage(name)
	require.True(t, ok)
	for _, stage := range []entry.LeafStage{2, 2.5, 3} {
		_, ok = e.Reach(name, stage)
		require.True(t, ok)
	}
	_ = e.Pace(name)
}

// BenchmarkLate is a count of yesterday, sent today.
func BenchmarkLate(b *testing.B) {
	k, day, id := longLog(2)
	for b.Loop() {
		id++
		k.Add(pace.Event{ID: id, Day: day.Add(-1), Paddock: "7", Do: &pace.Seen{Mean: 1.5, N: 8, SE: 0.16, SD: 0.45}})
		k.On(day)
	}
}
