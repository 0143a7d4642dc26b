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
	return f.expect(day, func(at entry.LeafStage) float64 { return leaf.GivenUpClosed(f.Habit, at, f.Closed) })
}

// regrazed is how much more than the share of growth given up it costs to
// graze what has hardly grown: at nothing, 0.95 in all instead of 0.55, and no
// more at one leaf (regrazing within three to six days costs 55–95 % of
// regrowth: Aust. J. Agric. Res. 45:1809–1815).
const regrazed = 0.4

// harm gives that cost, as expected. The planner minds it when it looks for an
// order, so that no paddock is sacrificed, grazed again days after the last
// time, to let others grow; it is no part of the growth given up that a plan
// states.
func (f *Field) harm(day int) float64 {
	return f.expect(day, func(at entry.LeafStage) float64 {
		return regrazed * max(0, 1-3*float64(at/f.Habit.To))
	})
}

// expect gives the mean of a value over the uncertainty of a day's stage.
func (f *Field) expect(day int, value func(entry.LeafStage) float64) float64 {
	s := f.on(day)
	if s.SD <= 0 {
		return value(entry.LeafStage(math.Max(0, s.Mean)))
	}
	sum := 0.0
	for _, g := range gauss {
		sum += g[1] * value(entry.LeafStage(math.Max(0, s.Mean+g[0]*s.SD)))
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
