package round

import (
	"slices"

	"leafround/core/entry"
	"leafround/core/farm"
)

// Planned is the answer to a question for the plan.
type Planned struct {
	Whole Plan   // one whole round
	Steps []Step // of the days and the mob asked for; past the round's end it goes on (Again)
	Left  []LeftOut
	Mobs  []Mob // with the hectares a day that the plan reckons with
	// The whole round's growth given up with every stage at its mean, by this
	// order, and the least that any order could reach then.
	LostAtMean, BoundAtMean float64
	Days                    int                        // asked for
	Stages                  map[string]entry.LeafStage // of each paddock in it, on the day it was made
}

// PlanFor plans the coming days for a mob ("" is all), bent by a what-if;
// nothing is logged by it. Several mobs are always planned together.
func PlanFor(f *farm.Farm, day entry.Date, days int, mob string, w What) Planned {
	p, left := Build(f, day, w)
	plan := Solve(p)
	out := Planned{Whole: plan, Left: left, Mobs: p.Mobs, Days: days, Stages: map[string]entry.LeafStage{}}
	for i := range p.Fields {
		out.Stages[p.Fields[i].Name] = entry.LeafStage(p.Fields[i].on(0).Mean)
	}
	out.LostAtMean, out.BoundAtMean = p.atMean(plan)
	steps := append(slices.Clone(plan.Steps), goOn(f, day, p, plan, float64(days))...)
	sortSteps(steps)
	for _, s := range steps {
		if s.Start < float64(days)-epsilon && (mob == "" || entry.FoldName(mob) == entry.FoldName(s.Mob)) {
			out.Steps = append(out.Steps, s)
		}
	}
	return out
}

// atMean weighs a plan as if the stages were certain, at their means.
func (p Problem) atMean(plan Plan) (lost, bound float64) {
	area := areaOf(plan.Steps)
	if area <= 0 {
		return 0, 0
	}
	sure := p.certain()
	for _, s := range plan.Steps {
		i := slices.IndexFunc(sure.Fields, func(f Field) bool { return f.Name == s.Paddock })
		f := sure.Fields[i]
		cost := newTally(int(s.End)+2, f.givenUp)
		lost += cost.mean(s.Start, s.End) * s.hectares / area
	}
	return lost, min(lost, sure.unpinned().low()/area)
}

// certain gives the problem with every stage at its mean.
func (p Problem) certain() Problem {
	p.Fields = slices.Clone(p.Fields)
	for i := range p.Fields {
		grow := slices.Clone(p.Fields[i].Grow)
		for d := range grow {
			grow[d].SD = 0
		}
		p.Fields[i].Grow = grow
	}
	return p
}
