package round

import (
	"cmp"
	"slices"
)

// passLimit and closeEnough end the search: so many rounds of moves, or within
// a thousandth of a percent of the bound (ours).
const (
	passLimit   = 40
	closeEnough = 1e-5
)

// Solve finds an order for one whole round that gives up little growth, and
// proves how little any order can give up. It is deterministic.
func Solve(p Problem) Plan { return solve(p, nil) }

// Replan solves a problem that has changed a little since a plan was made; it
// starts from that plan's order.
func Replan(p Problem, was Plan) Plan { return solve(p, was.Steps) }

func solve(p Problem, was []Step) Plan {
	plan := Plan{Exact: true}
	crews := p.crews(&plan)
	area, low := areaOf(plan.Steps), plan.lost()
	for _, g := range groups(p.jobs(crews), crews) {
		turns, bound, exact := g.solve(p.ranks(g, was))
		plan.Exact = plan.Exact && exact
		low += bound
		area += g.area()
		for _, t := range turns {
			plan.Steps = append(plan.Steps, p.step(g, t))
		}
	}
	sortSteps(plan.Steps)
	plan.Unmet = p.unmet(plan.Steps)
	if len(plan.Unmet) > 0 {
		low = p.unpinned().low()
	}
	if area > 0 {
		plan.Lost, plan.Bound = plan.lost()/area, min(low, plan.lost())/area
	}
	return plan
}

// low gives the proven least cost in hectares, without looking for an order.
func (p Problem) low() float64 {
	begun := Plan{}
	crews := p.crews(&begun)
	sum := begun.lost()
	for _, g := range groups(p.jobs(crews), crews) {
		if turns := g.few(); turns != nil {
			sum += g.sum(turns)
		} else {
			sum += g.bound(g.relax())
		}
	}
	return sum
}

// few gives the best order of a group that is small enough to find it, or nil.
func (g *group) few() []crewTurn {
	switch {
	case len(g.crews) == 1 && len(g.jobs) <= exactLimit:
		return g.exact()
	case len(g.jobs) <= herdsLimit:
		return g.exactHerds()
	}
	return nil
}

func (p Problem) unpinned() Problem {
	p.Pins = nil
	return p
}

// solve gives the turns of a group, the proven least cost in hectares, and
// whether the turns are the best there are.
func (g *group) solve(rank func(job int) float64) ([]crewTurn, float64, bool) {
	if turns := g.few(); turns != nil {
		return turns, g.sum(turns), true
	}
	t := g.relax()
	low := g.bound(t)
	o := guided(g, t)
	if rank != nil {
		if old := dispatch(g, func(j, _ int) float64 { return rank(j) }); old.total() < o.total() {
			o = old
		}
	}
	o.improve(low+closeEnough*g.area(), passLimit)
	return o.all(), low, false
}

func (g *group) sum(turns []crewTurn) float64 {
	sum := 0.0
	for _, t := range turns {
		sum += g.jobs[t.job].price(t.start, t.end)
	}
	return sum
}

func (g *group) area() float64 {
	sum := 0.0
	for j := range g.jobs {
		sum += g.jobs[j].area
	}
	return sum
}

// lost gives the growth given up by the steps, in hectares.
func (plan *Plan) lost() float64 {
	sum := 0.0
	for _, s := range plan.Steps {
		sum += s.Lost * s.hectares
	}
	return sum
}

func areaOf(steps []Step) float64 {
	sum := 0.0
	for _, s := range steps {
		sum += s.hectares
	}
	return sum
}

func sortSteps(steps []Step) {
	slices.SortStableFunc(steps, func(a, b Step) int {
		return cmp.Or(cmp.Compare(a.Start, b.Start), cmp.Compare(a.Mob, b.Mob))
	})
}
