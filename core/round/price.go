package round

import (
	"math"

	"leafround/core/entry"
	"leafround/core/leaf"
)

// gauss holds the nodes and weights of seven-point Gauss–Hermite quadrature
// for the standard normal (Abramowitz & Stegun, table 25.10, n = 7: nodes
// times √2, weights over √π).
var gauss = [7][2]float64{
	{-3.750439717725742, 0.000548268855972218},
	{-2.366759410734541, 0.0307571239675865},
	{-1.154405394739968, 0.240123178605013},
	{0, 0.457142857142857},
	{1.154405394739968, 0.240123178605013},
	{2.366759410734541, 0.0307571239675865},
	{3.750439717725742, 0.000548268855972218},
}

// givenUp gives the expected share of growth given up by grazing the field on
// a day, over the uncertainty of its stage. A stage below nothing is nothing.
func (f *Field) givenUp(day int) float64 {
	s := f.on(day)
	if s.SD <= 0 {
		return leaf.GivenUpClosed(f.Habit, entry.LeafStage(math.Max(0, s.Mean)), f.Closed)
	}
	sum := 0.0
	for _, g := range gauss {
		at := entry.LeafStage(math.Max(0, s.Mean+g[0]*s.SD))
		sum += g[1] * leaf.GivenUpClosed(f.Habit, at, f.Closed)
	}
	return sum
}

// on gives the stage of a field so many days from today.
func (f *Field) on(day int) Stage {
	n := len(f.Grow)
	if n == 0 {
		return Stage{}
	}
	if day < n {
		return f.Grow[max(day, 0)]
	}
	last, step := f.Grow[n-1], Stage{}
	if n > 1 {
		step = Stage{last.Mean - f.Grow[n-2].Mean, last.SD - f.Grow[n-2].SD}
	}
	over := float64(day - n + 1)
	return Stage{last.Mean + over*step.Mean, last.SD + over*math.Max(0, step.SD)}
}

// tally is a running sum of a value that is constant within each day, so that
// the mean over any stretch of time costs two look-ups.
type tally []float64

func newTally(days int, value func(day int) float64) tally {
	t := make(tally, days+1)
	for d := range days {
		t[d+1] = t[d] + value(d)
	}
	return t
}

// upTo gives the sum from the start of today up to a moment, in days; past the
// last day it runs on as on that day.
func (t tally) upTo(at float64) float64 {
	last := len(t) - 2
	d := min(int(at), last)
	return t[d] + (at-float64(d))*(t[d+1]-t[d])
}

// on gives the value of one day.
func (t tally) on(day int) float64 {
	d := min(day, len(t)-2)
	return t[d+1] - t[d]
}

// mean gives the mean over a stretch of time.
func (t tally) mean(from, to float64) float64 {
	return (t.upTo(to) - t.upTo(from)) / (to - from)
}
