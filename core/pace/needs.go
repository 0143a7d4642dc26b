package pace

import (
	"math"

	"leafround/core/entry"
)

// Needs gives the days that a paddock grazed on a day will need to a leaf
// stage, at the pace to come; with "", the farm's mean paddock (of perennial
// ryegrass). A day before the estimate's counts as the estimate's.
func (e *Estimate) Needs(paddock string, from entry.Date, to entry.LeafStage) float64 {
	x := append([]float64(nil), e.s.x[:farmTerms]...)
	plus := 0.0
	if i, ok := e.at[paddock]; ok {
		plus = e.s.x[own(i)] + e.m.grasses[i].offset()
	}
	start := max(from.Sub(e.s.day), 0)
	left := float64(to)
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
