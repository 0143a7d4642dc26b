package round

import (
	"cmp"
	"math"
	"slices"
	"sync"

	"leafround/core/entry"
	"leafround/core/farm"
	"leafround/core/leaf"
)

// Pick is how fast to go round for now, as a round's length in days, and the
// mean share of growth given up that it foresees.
type Pick struct{ Days, Lost float64 }

// BestLength picks how fast to go round, so that the least growth is given up
// over the months to come (ours). The round that a paddock grazed today needs
// is right only where the farm is in step with it and the pace stays: ahead of
// spring a farm has to speed up in time, and in autumn what has grown is not to
// be left standing for the winter's round. So it lays out a speed for each
// fortnight, sees at which stage each hectare would be grazed, ripest first and
// then in the order of the round before, and mends the speeds one by one while
// that helps. No pick is shorter than least days.
func BestLength(f *farm.Farm, day entry.Date, least float64) Pick {
	e := f.Estimate(day)
	l := LengthOf(f, day, What{})
	o := outlook{rise: riseOf(e, "", day).daily(outlookDays), least: max(least, 1)}
	total := 0.0
	for _, p := range inRound(f, day, nil) {
		if s, ok := e.Stage(p.Name); ok && p.Area > 0 {
			o.standing = append(o.standing, stand{float64(p.Area), s.Mean})
			total += float64(p.Area)
		}
	}
	if total == 0 {
		return Pick{Days: max(least, l.Days)}
	}
	slices.SortFunc(o.standing, func(a, b stand) int { return cmp.Compare(b.stage, a.stage) })
	for i := range o.standing {
		o.standing[i].part /= total
	}
	return o.pick(l.Days)
}

// outlookDays is how far the speeds are laid out, in days, and outlookStep for
// how long each (ours: two rounds of winter; a fortnight).
const (
	outlookDays = 154
	outlookStep = 14
)

// slowest is the slowest round that is looked at, as a part of the one needed.
const slowest = 2.5

// stand is grass as it stands: a part of the round's area, and its stage.
type stand struct{ part, stage float64 }

type outlook struct {
	standing []stand   // ripest first
	rise     []float64 // by day: leaves grown from today
	least    float64   // days of the shortest round
}

// pick mends a speed for each step until none can be mended.
func (o *outlook) pick(start float64) Pick {
	days := make([]float64, outlookDays/outlookStep)
	for i := range days {
		days[i] = max(start, o.least)
	}
	best, lost := o.weigh(days)
	for by := 1.5; by > 1.05; by = math.Sqrt(by) {
		for again, sweeps := true, 0; again && sweeps < 6; sweeps++ {
			again = false
			for i := range days {
				for _, f := range []float64{by, 1 / by} {
					was := days[i]
					days[i] = min(max(o.least, was*f), slowest*start)
					if w, share := o.weigh(days); w < best-1e-9 {
						best, lost, again = w, share, true
					} else {
						days[i] = was
					}
				}
			}
		}
	}
	return Pick{days[0], lost}
}

// weigh gives the growth given up over the outlook at rounds of so many days.
// Each hectare counts by the leaves that it had, which is the time it took
// them; so a round that is slow is not better for grazing less. What stands at
// the end counts by what it has lost by then. It also gives the plain mean by
// area.
func (o *outlook) weigh(days []float64) (weight, share float64) {
	done := make([]float64, 1, len(o.rise)) // by day: rounds done
	before, at, gone := 0, 0, 0.0           // the day that was grazed a round ago; the stand, and what is done of it
	area, lost := 0.0, 0.0
	for d := 0; d+1 < len(o.rise); d++ {
		v := 1 / days[min(d/outlookStep, len(days)-1)]
		middle := done[d] + v/2
		done = append(done, done[d]+v)
		leaves := o.rise[d]
		if middle < 1 {
			for at+1 < len(o.standing) && gone+o.standing[at].part < middle {
				gone += o.standing[at].part
				at++
			}
			leaves += o.standing[at].stage
		} else {
			for done[before+1] < middle-1 {
				before++
			}
			leaves -= o.rise[before]
		}
		g := foreseen(leaves)
		weight += v * leaves / 3 * g
		lost, area = lost+v*g, area+v
	}
	return weight + o.left(done), lost / max(area, 1e-9)
}

// left gives what stands at the end has lost: all that it grew past three
// leaves.
func (o *outlook) left(done []float64) (weight float64) {
	end := len(done) - 1
	over := func(part, leaves float64) { weight += part * max(0, leaves/3-1) }
	gone := 0.0
	for _, s := range o.standing {
		gone += s.part
		over(min(s.part, max(0, gone-done[end])), s.stage+o.rise[end])
	}
	for d := end - 1; d >= 0 && done[d+1] > done[end]-1; d-- {
		over(min(done[d+1]-done[d], done[d+1]-done[end]+1), o.rise[end]-o.rise[d])
	}
	return weight
}

// scatter is how widely stages at grazing scatter about what is foreseen,
// leaves (ours).
const scatter = 0.35

// foreseen gives the share of growth given up that is expected at a stage, by
// its table, in a straight line between.
func foreseen(leaves float64) float64 {
	table := foreseenTable()
	at := min(max(leaves, 0)*tableSteps, float64(len(table)-2))
	k := int(at)
	return table[k] + (at-float64(k))*(table[k+1]-table[k])
}

// tableSteps is how many steps of a leaf the table has.
const tableSteps = 20

var foreseenTable = sync.OnceValue(func() []float64 {
	table := make([]float64, 20*tableSteps)
	for k := range table {
		f := Field{Habit: leaf.Of(entry.Ryegrass), Grow: []Stage{{float64(k) / tableSteps, scatter}}}
		table[k] = f.givenUp(0) + f.harm(0)
	}
	return table
})

// daily turns a curve into leaves grown by each day.
func (c curve) daily(days int) []float64 {
	out := make([]float64, days)
	for d := range out {
		out[d] = c.at(float64(d))
	}
	return out
}
