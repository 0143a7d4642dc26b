package farm

import (
	"slices"

	"leafround/core/entry"
)

// Running is the round as it is being run: hectares grazed a day of late.
type Running struct {
	HaPerDay entry.Hectares
	From, To entry.Date // the grazings counted ended after From, up to To
	Grazings int
}

// lately is how far back the running round looks, in days (ours: three weeks
// hold at least a few paddocks at the slowest round; older grazings belong to
// another pace).
const lately = 21

// What it takes before hectares a day are told (all ours): a move or two say
// more of the day they fell on than of a round. A few grazings over ten days
// do, or over half of the round, however fast that went.
const (
	leastGrazings = 3
	leastSpan     = 10  // days
	leastPart     = 0.5 // of the round's area
)

// RunningRound tells how many hectares a day were grazed of late, by all mobs;
// ok is false where the log does not tell.
func (f *Farm) RunningRound(day entry.Date) (Running, bool) {
	return f.running(day, func(Grazing) bool { return true })
}

// MobHa tells how many hectares a day a mob takes: as the team set it, or else
// as it grazed of late; ok is false where neither is known.
func (f *Farm) MobHa(m *Mob, day entry.Date) (ha entry.Hectares, ok bool) {
	if m == nil {
		return 0, false
	}
	if m.Set > 0 {
		return m.Set, true
	}
	name := entry.FoldName(m.Name)
	r, ok := f.running(day, func(g Grazing) bool {
		return slices.ContainsFunc(g.Mobs, func(n string) bool { return entry.FoldName(n) == name })
	})
	return r.HaPerDay, ok
}

// running adds up what was grazed in the last weeks. The clock starts when the
// first of those grazings ended: what was grazed after it, over the days since
// (so that a month with one grazing too few or too many at its edges does not
// count for it).
func (f *Farm) running(day entry.Date, which func(Grazing) bool) (Running, bool) {
	ended := f.endedSince(day.Add(-lately), day, which)
	if len(ended) == 0 {
		return Running{}, false
	}
	slices.SortStableFunc(ended, func(a, b done) int { return int(a.day - b.day) })
	r := Running{From: ended[0].day, To: ended[len(ended)-1].day}
	for _, d := range ended {
		if d.day > r.From {
			r.HaPerDay += d.ha
			r.Grazings++
		}
	}
	if r.Grazings == 0 {
		return r, false
	}
	span := r.To.Sub(r.From)
	// Stock that stopped moving slow the round down: twice the usual gap without
	// a grazing counts as running time.
	if gap := r.To.Sub(r.From) / r.Grazings; day.Sub(r.To) > 2*max(gap, 1) {
		r.To = day
	}
	days, ha := r.To.Sub(r.From), r.HaPerDay
	r.HaPerDay /= entry.Hectares(max(days, 1))
	enough := span >= leastSpan || days > 0 && ha >= leastPart*f.RoundArea(day)
	return r, enough && r.Grazings >= leastGrazings && ha > 0
}

// done is an area whose grazing ended on a day.
type done struct {
	day entry.Date
	ha  entry.Hectares
}

func (f *Farm) endedSince(from, to entry.Date, which func(Grazing) bool) []done {
	var out []done
	for _, p := range f.Paddocks {
		for i := len(p.Grazings) - 1; i >= 0 && p.Grazings[i].Out > from; i-- {
			g := p.Grazings[i]
			if g.Out <= to && !g.Asked && which(g) && p.Area > 0 {
				out = append(out, done{g.Out, p.Area * entry.Hectares(g.Part)})
			}
		}
	}
	return out
}

// InRound tells whether a paddock is in the round on a day: one of the farm's,
// and not held.
func (f *Farm) InRound(p *Paddock, day entry.Date) bool {
	return p.Active() && len(p.HeldOn(day)) == 0
}

// RoundArea gives the hectares of the paddocks that are in the round on a day.
func (f *Farm) RoundArea(day entry.Date) (ha entry.Hectares) {
	for _, p := range f.Paddocks {
		if f.InRound(p, day) {
			ha += p.Area
		}
	}
	return ha
}
