package round

import (
	"cmp"
	"math"
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
func Solve(p Problem) Plan { return solve(p, Plan{}) }

// Replan solves a problem that has changed a little since a plan was made: it
// starts from that plan's order, and proves its bound by that plan's prices,
// which is faster and leaves the bound a little looser.
func Replan(p Problem, was Plan) Plan { return solve(p, was) }

func solve(p Problem, was Plan) Plan {
	plan := Plan{Exact: true, rents: rents{}}
	crews := p.crews(&plan)
	area, low := areaOf(plan.Steps), plan.lost()
	for _, g := range p.groups(crews) {
		turns, bound, exact := p.order(g, was, plan.rents)
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
	for _, g := range p.groups(crews) {
		if turns := g.few(); turns != nil {
			sum += g.sum(turns)
		} else {
			sum += g.prove()
		}
	}
	return sum
}

// few gives the best order of a group that is small enough to find it, or nil.
func (g *group) few() []crewTurn {
	if len(g.crews) == 1 {
		if len(g.jobs) <= exactLimit {
			return g.exact()
		}
		return nil
	}
	if len(g.jobs) > herdsLimit {
		return nil
	}
	o := guided(g, g.relax())
	o.improve(math.Inf(-1), passLimit)
	if o.idle() > 0 {
		return g.exactHerds(math.Inf(1))
	}
	return g.exactHerds(o.total())
}

func (p Problem) unpinned() Problem {
	p.Pins = nil
	return p
}

// prove gives the bound of a group by the prices of its transport problem.
func (g *group) prove() float64 {
	t := g.relax()
	return g.bound(t.cols, g.rent(t))
}

// order gives the turns of a group, the proven least cost in hectares, and
// whether the turns are the best there are. An older plan, where there is one,
// gives the start and the prices.
func (p Problem) order(g *group, was Plan, keep rents) ([]crewTurn, float64, bool) {
	if turns := g.few(); turns != nil {
		return turns, g.sum(turns), true
	}
	var o *order
	var cols []column
	rent := was.rents.recall(p, g)
	if rent != nil {
		rank := p.ranks(g, was.Steps)
		o, cols = dispatch(g, func(j, _ int) float64 { return rank(j) }), g.columns()
	} else {
		t := g.relax()
		o, cols, rent = guided(g, t), t.cols, g.rent(t)
	}
	low := g.bound(cols, rent)
	keep.keep(p, g, rent)
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
