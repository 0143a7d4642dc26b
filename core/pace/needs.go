package pace

import (
	"math"

	"leafround/core/entry"
)

// Needs gives the days that a paddock grazed on a day will need to a leaf
// stage, at the pace to come; with "", the farm's mean paddock (of perennial
// ryegrass). A day before the estimate's counts as the estimate's.
func (e *Estimate) Needs(paddock string, from entry.Date, to entry.LeafStage) (days float64) {
	i, ok := e.at[paddock]
	if !ok {
		i = -1
	}
	for j, v := range e.views {
		days += e.weight[j] * v.needs(i, max(from.Sub(e.day), 0), float64(to))
	}
	return days
}

// needs gives the same as one temper sees it, from start days ahead.
func (e *view) needs(i, start int, left float64) float64 {
	x := append([]float64(nil), e.s.x[:farmTerms]...)
	plus := 0.0
	if i >= 0 {
		plus = e.s.x[own(i)] + e.m.grasses[i].offset()
	}
	for k := 0; k < start+horizon; k++ {
		a := e.outlook(k)
		rate := a.season + plus
		for g, l := range a.load {
			rate += l * x[g]
		}
		x[atDrift] *= math.Exp(-1 / e.m.tune.driftTime)
		x[atWeather] *= math.Exp(-1 / e.m.tune.quickTime)
		if k < start {
			continue
		}
		r := math.Exp(rate)
		if r >= left {
			return float64(k-start) + left/r
		}
		left -= r
	}
	return horizon
}
