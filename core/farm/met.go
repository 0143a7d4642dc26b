package farm

import (
	"math"
	"slices"

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

// during gives the counts of a grazing's first day that were told after stock
// had gone in.
func (w *walk) during(g Grazing) []Counted {
	if g.In.IsZero() {
		return nil
	}
	return slices.DeleteFunc(w.met(g.In), func(c Counted) bool {
		return slices.ContainsFunc(g.Met, func(m Counted) bool { return m.ID == c.ID })
	})
}

// StageBefore gives a paddock's leaf stage as stock found it that went in on a
// day: as foreseen the day before, weighed with the counts of that day that
// were sent before they went in (Stay.Met, Grazing.Met).
func (f *Farm) StageBefore(p *Paddock, day entry.Date, met []Counted) (stage float64, ok bool) {
	stage, _, ok = f.weighed(p, day, met)
	return stage, ok
}

// StageGrazed gives the leaf stage at which a grazing took a paddock. A count
// of its first day that was sent later than the stock went in tells too, where
// it saw more than was foreseen: what is eaten shows no more leaves (ours).
func (f *Farm) StageGrazed(p *Paddock, g Grazing) (stage float64, ok bool) {
	day := g.First()
	stage, sd, ok := f.weighed(p, day, g.Met)
	for _, c := range g.During {
		if s := f.Sample(c); !s.Reproductive && s.SE > 0 && s.Mean > stage {
			stage, sd = weigh(stage, sd, s.Mean, s.SE)
		}
	}
	return stage, ok
}

// First gives the day on which a grazing began, as far as known.
func (g Grazing) First() entry.Date {
	switch {
	case !g.Began.IsZero():
		return g.Began
	case !g.In.IsZero():
		return g.In
	}
	return g.Out
}

// weighed weighs what was foreseen with counts.
func (f *Farm) weighed(p *Paddock, day entry.Date, met []Counted) (stage, sd float64, ok bool) {
	stage, sd, ok = f.Estimate(day.Add(-1)).At(p.Name, day)
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
	return stage, sd, ok
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
