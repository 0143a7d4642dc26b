package round

import (
	"math"
	"slices"

	"leafround/core/entry"
)

// Cause tells why a plan changed.
type Cause string

// The causes.
const (
	CauseOut   Cause = "out"   // the paddock is left out now; LeftOut tells why
	CauseFree  Cause = "free"  // the paddock was left out and may be grazed now; LeftOut tells why it was
	CauseStage Cause = "stage" // a paddock is reckoned further or less far on than before
	CauseOrder Cause = "order" // hectares a day, wishes or what else is planned
)

// Change is where a mob's plan departs from an earlier one: the first step that
// is another.
type Change struct {
	Mob      string
	Was, Now Step // a zero Step where there is none
	Cause    Cause
	Paddock  string // the one that the cause is about
	LeftOut  LeftOut
	From, To entry.LeafStage // for a stage: as reckoned before and now, on the same day
}

// stageShift is the least change of a stage that is told as a cause (ours).
const stageShift = 0.1

// Changes tells how a plan departs from one made earlier that day, mob by mob,
// in the days that were asked for. Steps that have been taken since, as
// planned, are no change.
func Changes(was, now Planned) []Change {
	var out []Change
	for _, m := range now.Mobs {
		before, after := was.ahead(m.Name, now.Whole), now.ahead(m.Name, now.Whole)
		for i := range max(len(before), len(after)) {
			a, b := stepAt(before, i), stepAt(after, i)
			if a.Paddock != b.Paddock {
				out = append(out, explain(was, now, Change{Mob: m.Name, Was: a, Now: b}))
				break
			}
		}
	}
	return out
}

// ahead lists a mob's steps of a plan that are still to be begun: without those
// of paddocks that a mob is in by the later plan.
func (p Planned) ahead(mob string, later Plan) []Step {
	var out []Step
	for _, s := range p.Whole.Steps {
		in := slices.ContainsFunc(later.Steps, func(l Step) bool { return l.Current && l.Paddock == s.Paddock })
		if s.Mob == mob && !s.Current && !in && s.Start < float64(p.Days) {
			out = append(out, s)
		}
	}
	return out
}

func stepAt(steps []Step, i int) Step {
	if i < len(steps) {
		return steps[i]
	}
	return Step{}
}

// explain finds the cause of a change.
func explain(was, now Planned, c Change) Change {
	if l, ok := leftOutOf(now.Left, c.Was.Paddock); ok {
		c.Cause, c.Paddock, c.LeftOut = CauseOut, c.Was.Paddock, l
		return c
	}
	if l, ok := leftOutOf(was.Left, c.Now.Paddock); ok {
		c.Cause, c.Paddock, c.LeftOut = CauseFree, c.Now.Paddock, l
		return c
	}
	c.Cause = CauseOrder
	for _, name := range []string{c.Now.Paddock, c.Was.Paddock} {
		from, to := was.Stages[name], now.Stages[name]
		shift := math.Abs(float64(to - from))
		if shift >= stageShift && shift > math.Abs(float64(c.To-c.From)) && from > 0 && to > 0 {
			c.Cause, c.Paddock, c.From, c.To = CauseStage, name, from, to
		}
	}
	return c
}

func leftOutOf(left []LeftOut, name string) (LeftOut, bool) {
	i := slices.IndexFunc(left, func(l LeftOut) bool { return l.Paddock == name && name != "" })
	if i < 0 {
		return LeftOut{}, false
	}
	return left[i], true
}
