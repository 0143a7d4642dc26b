package pace

import (
	"math"

	"leafround/core/entry"
)

// Estimate is what is known on one day.
type Estimate struct {
	m               model
	s               *state
	at              map[string]int
	paths           []*path
	days            []ahead
	warmth, dryness float64
}

// estimate makes an estimate of a state that nobody else holds.
func (k *Keeper) estimate(s *state) *Estimate {
	s.widen(k.grasses, k.tune)
	at := make(map[string]int, len(k.at))
	for name, i := range k.at {
		at[name] = i
	}
	e := &Estimate{m: k.model, s: s, at: at, paths: make([]*path, len(s.plots))}
	e.warmth, e.dryness = s.sky.bearing(k.site, s.day)
	return e
}

// Day gives the day of the estimate.
func (e *Estimate) Day() entry.Date { return e.s.day }

// Stage is a paddock's leaf stage: leaves grown since regrowth began, of which
// a tiller keeps only its last few alive. Past those, and where nobody counts,
// it goes on growing: word it as "3 or more".
type Stage struct {
	Mean, SD     float64
	Low, High    float64 // 95 %
	Days         int     // since regrowth began; -1 where that is not known
	Reproductive bool    // mostly reproductive tillers: a stage means little, no date is given
}

// normal95 and normal80 are the normal quantiles of 0.975 and 0.9.
const (
	normal95 = 1.959963984540054
	normal80 = 1.2815515655446004
)

// Stage gives a paddock's leaf stage on the estimate's day; false where it was
// never counted and never grazed.
func (e *Estimate) Stage(paddock string) (Stage, bool) {
	i, ok := e.going(paddock)
	if !ok {
		return Stage{}, false
	}
	p, b := e.s.plots[i], e.on(i, 0)
	st := Stage{Days: -1, Reproductive: p.repro}
	if p.since != 0 {
		st.Days = e.s.day.Sub(p.since)
	}
	st.Mean, st.SD = b.leaves()
	sd := math.Sqrt(b.v)
	st.Low, st.High = math.Exp(b.mean-normal95*sd), math.Exp(b.mean+normal95*sd)
	return st, true
}

// leaves gives the median stage and its standard deviation, leaves, of a belief
// about its logarithm.
func (b belief) leaves() (mid, sd float64) {
	mid = math.Exp(b.mean)
	return mid, mid * math.Sqrt(b.v)
}

// At gives the stage expected on a later day, if nothing happens until then,
// and its standard deviation. On an earlier day it is that of the estimate's.
func (e *Estimate) At(paddock string, later entry.Date) (mean, sd float64, ok bool) {
	i, ok := e.going(paddock)
	if !ok {
		return 0, 0, false
	}
	mean, sd = e.on(i, min(max(later.Sub(e.s.day), 0), horizon)).leaves()
	return mean, sd, true
}

// going gives a paddock's place, where its stage is known.
func (e *Estimate) going(paddock string) (int, bool) {
	i, ok := e.at[paddock]
	return i, ok && e.s.plots[i].going
}

// Pace is how fast leaves come now, days for one leaf, with its 80 % interval.
type Pace struct{ DaysPerLeaf, Low, High float64 }

// Pace gives a paddock's pace on the estimate's day, or with "" the farm's mean
// (for perennial ryegrass). A paddock that is not known has the farm's.
func (e *Estimate) Pace(paddock string) Pace {
	a := e.outlook(0)
	mean, v := a.season, 0.0
	for g, l := range a.load {
		mean += l * e.s.x[g]
		for h, lh := range a.load {
			v += l * lh * e.s.p[g*e.s.n+h]
		}
	}
	if i, ok := e.at[paddock]; ok {
		o := own(i)
		mean += e.s.x[o] + e.m.grasses[i].offset()
		v += e.s.p[o*e.s.n+o]
		for g, l := range a.load {
			v += 2 * l * e.s.p[g*e.s.n+o]
		}
	}
	sd := math.Sqrt(max(v, 0))
	return Pace{DaysPerLeaf: math.Exp(-mean), Low: math.Exp(-mean - normal80*sd),
		High: math.Exp(-mean + normal80*sd)}
}

// Odd tells whether a paddock's latest count cannot fit, and why.
func (e *Estimate) Odd(paddock string) (why string, ok bool) {
	i, ok := e.at[paddock]
	if !ok || e.s.plots[i].odd == "" {
		return "", false
	}
	return e.s.plots[i].odd, true
}
