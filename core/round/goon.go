package round

import (
	"math"
	"slices"

	"leafround/core/entry"
	"leafround/core/farm"
	"leafround/core/pace"
)

// goOn carries a plan on past the round's end, and through the days on which a
// mob would wait for a held paddock: whenever a mob has nothing to graze it
// goes round again, into the paddock that will then be furthest through its
// window among those that no hold and no stock keep it from. These steps are
// no part of the round that the plan's cost is about.
func goOn(f *farm.Farm, day entry.Date, p Problem, plan Plan, days float64) []Step {
	if plan.end() >= days && !plan.waits() {
		return nil
	}
	a := again{f: f, p: p, day: day, steps: slices.Clone(plan.Steps), rise: map[string]curve{}}
	for range 400 {
		m, at, until := a.idle(days)
		if m < 0 {
			break
		}
		a.fill(p.Mobs[m], at, until)
	}
	return a.steps[len(plan.Steps):]
}

// again is a plan that is being carried on.
type again struct {
	f     *farm.Farm
	p     Problem
	day   entry.Date
	steps []Step
	rise  map[string]curve // by paddock: leaves grown from today to a day
	spent []Step           // idle stretches that nothing could fill
}

// end gives the moment at which the first mob is through.
func (plan *Plan) end() float64 {
	last := map[string]float64{}
	for _, s := range plan.Steps {
		last[s.Mob] = math.Max(last[s.Mob], s.End)
	}
	first := math.Inf(1)
	for _, e := range last {
		first = math.Min(first, e)
	}
	return first
}

// waits tells whether a mob waits between two steps.
func (plan *Plan) waits() bool {
	last := map[string]float64{}
	for _, s := range plan.Steps {
		if s.Start > last[s.Mob]+epsilon {
			return true
		}
		last[s.Mob] = s.End
	}
	return false
}

// idle gives the first stretch in which a mob has nothing to graze.
func (a *again) idle(days float64) (mob int, from, to float64) {
	mob, from = -1, days
	for m, herd := range a.p.Mobs {
		at := 0.0
		for _, s := range a.of(herd.Name) {
			if s.Start > at+epsilon {
				break
			}
			at = math.Max(at, s.End)
		}
		if at < from-epsilon && herd.HaPerDay > 0 {
			mob, from, to = m, at, a.next(herd.Name, at, days)
		}
	}
	return mob, from, to
}

// of gives a mob's steps and spent stretches by start.
func (a *again) of(mob string) []Step {
	var out []Step
	for _, s := range slices.Concat(a.steps, a.spent) {
		if s.Mob == mob {
			out = append(out, s)
		}
	}
	sortSteps(out)
	return out
}

// next gives the start of a mob's next step after a moment.
func (a *again) next(mob string, at, days float64) float64 {
	for _, s := range a.of(mob) {
		if s.Start > at+epsilon {
			return s.Start
		}
	}
	return math.Max(days, at) + 60
}

// fill puts the ripest paddock into a stretch, whole or as far as it lasts, or
// marks it as spent.
func (a *again) fill(m Mob, from, to float64) {
	best, ripest := Step{}, -1.0
	for i := range a.p.Fields {
		f := &a.p.Fields[i]
		if f.Mobs != nil && !slices.Contains(f.Mobs, m.Name) {
			continue
		}
		end := math.Min(to, from+float64(f.Area)/m.HaPerDay)
		if stage, ok := a.stage(f, from, end); ok && stage/float64(f.Habit.To) > ripest {
			ripest = stage / float64(f.Habit.To)
			best = a.p.stay(f, m.Name, from, end)
			best.Stage, best.Again = entry.LeafStage(stage), true
		}
	}
	if best.Paddock == "" {
		a.spent = append(a.spent, Step{Mob: m.Name, Start: from, End: to})
		return
	}
	a.steps = append(a.steps, best)
}

// stage gives the stage to which a paddock will have grown again by a stretch;
// false where it has not been grazed in the plan before, or may not be grazed.
func (a *again) stage(f *Field, from, end float64) (float64, bool) {
	last := -1.0
	if a.p.stocked(f.Name) {
		last = 0
	}
	for _, s := range a.steps {
		if s.Paddock == f.Name {
			if s.End > from+epsilon { // still to come, or in it
				return 0, false
			}
			last = math.Max(last, s.End)
		}
	}
	if last < 0 || !a.open(f.Name, from, end) {
		return 0, false
	}
	rise := a.leaves(f.Name)
	return rise.at((from+end)/2) - rise.at(last), true
}

// open tells whether no hold binds in a stretch.
func (a *again) open(name string, from, end float64) bool {
	p := a.f.Find(name)
	for d := int(from + epsilon); float64(d) < end-epsilon; d++ {
		if p == nil || len(p.HeldOn(a.day.Add(d))) > 0 {
			return false
		}
	}
	return true
}

// curve gives how long leaves take: the days at which each step of riseStep
// leaves is grown from today.
type curve []float64

// riseStep is the step of the curve, leaves.
const riseStep = 0.25

func (a *again) leaves(name string) curve {
	if c, ok := a.rise[name]; ok {
		return c
	}
	a.rise[name] = riseOf(a.f.Estimate(a.day), name, a.day)
	return a.rise[name]
}

// riseOf gives the curve of a paddock from a day on, at the pace to come.
func riseOf(e *pace.Estimate, name string, day entry.Date) curve {
	c := curve{0}
	for k := 1; c[k-1] < 250 && k < 160; k++ {
		c = append(c, e.Needs(name, day, entry.LeafStage(riseStep*float64(k))))
	}
	return c
}

// at gives the leaves grown from today to a moment.
func (c curve) at(days float64) float64 {
	for k := 1; k < len(c); k++ {
		if c[k] >= days {
			return riseStep * (float64(k-1) + (days-c[k-1])/(c[k]-c[k-1]))
		}
	}
	return riseStep * float64(len(c)-1)
}
