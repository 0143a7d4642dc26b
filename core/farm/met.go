package farm

import (
	"math"

	"leafround/core/entry"
)

// met gives the counts of a day that have been told so far.
func (w *walk) met(day entry.Date) []Counted {
	var out []Counted
	for _, c := range w.p.Counts {
		if c.Date == day {
			out = append(out, c)
		}
	}
	return out
}

// StageBefore gives a paddock's leaf stage as stock found it that went in on a
// day: as foreseen the day before, weighed with the counts of that day that
// were sent before they went in (Stay.Met, Grazing.Met).
func (f *Farm) StageBefore(p *Paddock, day entry.Date, met []Counted) (stage float64, ok bool) {
	stage, sd, ok := f.Estimate(day.Add(-1)).At(p.Name, day)
	for _, c := range met {
		s := f.Sample(c)
		switch {
		case s.Reproductive || s.SE <= 0:
		case !ok:
			stage, sd, ok = s.Mean, s.SE, true
		case s.Floor: // this many or more
			stage = max(stage, s.Mean)
		default:
			stage, sd = weigh(stage, sd, s.Mean, s.SE)
		}
	}
	return stage, ok
}

// weigh gives the mean of two figures by their errors, and its own: inverse
// variances (any textbook of statistics).
func weigh(a, aSD, b, bSD float64) (mean, sd float64) {
	if aSD <= 0 {
		return a, aSD
	}
	u, v := 1/(aSD*aSD), 1/(bSD*bSD)
	return (a*u + b*v) / (u + v), 1 / math.Sqrt(u+v)
}
