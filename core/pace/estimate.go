package pace

import (
	"maps"
	"math"

	"leafround/core/entry"
)

// Estimate is what is known on one day: the views of the filter's tempers,
// each with its weight.
type Estimate struct {
	day    entry.Date
	at     map[string]int
	views  []*view
	weight []float64
}

// view is what one temper makes of the day.
type view struct {
	m               model
	s               *state
	paths           []*path
	days            []ahead
	warmth, dryness float64
}

// estimate makes an estimate of a mind that nobody else holds.
func (k *Keeper) estimate(m *mind) *Estimate {
	e := &Estimate{day: m.day, at: maps.Clone(k.at), weight: m.weight}
	for i, model := range k.models() {
		v := &view{m: model, s: m.states[i], paths: make([]*path, len(k.grasses))}
		v.warmth, v.dryness = v.s.sky.bearing(k.site, v.s.day)
		e.views = append(e.views, v)
	}
	return e
}

// Day gives the day of the estimate.
func (e *Estimate) Day() entry.Date { return e.day }

// main gives the view that weighs most.
func (e *Estimate) main() *view {
	best := 0
	for i, w := range e.weight {
		if w > e.weight[best] {
			best = i
		}
	}
	return e.views[best]
}

// mix gives the mean and variance of what the views believe.
func (e *Estimate) mix(of func(*view) belief) (b belief) {
	for i, v := range e.views {
		o := of(v)
		b.mean += e.weight[i] * o.mean
		b.v += e.weight[i] * (o.v + o.mean*o.mean)
	}
	if math.IsInf(b.mean, -1) {
		return belief{mean: b.mean}
	}
	b.v = max(b.v-b.mean*b.mean, 0)
	return b
}

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
	p, b := e.views[0].s.plots[i], e.on(i, 0)
	st := Stage{Days: -1, Reproductive: p.repro}
	if p.since != 0 {
		st.Days = e.day.Sub(p.since)
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
	mean, sd = e.on(i, min(max(later.Sub(e.day), 0), horizon)).leaves()
	return mean, sd, true
}

// on gives the belief about a paddock's log stage k days ahead.
func (e *Estimate) on(i, k int) belief {
	return e.mix(func(v *view) belief { return v.on(i, k) })
}

// going gives a paddock's place, where its stage is known.
func (e *Estimate) going(paddock string) (int, bool) {
	i, ok := e.at[paddock]
	return i, ok && e.views[0].s.plots[i].going
}

// Pace is how fast leaves come now, days for one leaf, with its 80 % interval.
type Pace struct{ DaysPerLeaf, Low, High float64 }

// Pace gives a paddock's pace on the estimate's day, or with "" the farm's mean
// (for perennial ryegrass). A paddock that is not known has the farm's.
func (e *Estimate) Pace(paddock string) Pace {
	i, ok := e.at[paddock]
	if !ok {
		i = -1
	}
	b := e.mix(func(v *view) belief { return v.pace(i) })
	sd := math.Sqrt(b.v)
	return Pace{DaysPerLeaf: math.Exp(-b.mean), Low: math.Exp(-b.mean - normal80*sd),
		High: math.Exp(-b.mean + normal80*sd)}
}

// pace gives the belief about log pace in a paddock, or the farm's for −1.
func (e *view) pace(i int) (b belief) {
	a := e.outlook(0)
	b.mean = a.season
	for g, l := range a.load {
		b.mean += l * e.s.x[g]
		for h, lh := range a.load {
			b.v += l * lh * e.s.p[g*e.s.n+h]
		}
	}
	if i < 0 {
		return b
	}
	o := own(i)
	b.mean += e.s.x[o] + e.m.grasses[i].offset()
	b.v += e.s.p[o*e.s.n+o]
	for g, l := range a.load {
		b.v += 2 * l * e.s.p[g*e.s.n+o]
	}
	return b
}

// Odd tells whether a paddock's latest count cannot fit, and why.
func (e *Estimate) Odd(paddock string) (why string, ok bool) {
	i, ok := e.at[paddock]
	if !ok {
		return "", false
	}
	why = e.main().s.plots[i].odd
	return why, why != ""
}
