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
	plan := Plan{Exact: true, rents: rents{}, bare: rents{}}
	crews := p.crews(&plan)
	area, low := areaOf(plan.Steps), plan.lost()
	for _, g := range p.groups(crews) {
		turns, bound, exact := p.order(g, was, &plan)
		plan.Exact = plan.Exact && exact
		low += bound
		area += g.area()
		plan.cost += g.sum(turns)
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

// low gives the proven least growth given up in hectares, without looking for
// an order.
func (p Problem) low() float64 {
	begun := Plan{}
	crews := p.crews(&begun)
	sum := begun.lost()
	for _, g := range p.groups(crews) {
		bare := g.bare()
		if turns := bare.few(math.Inf(1)); turns != nil {
			sum += bare.sum(turns)
		} else {
			sum += bare.prove()
		}
	}
	return sum
}

// few gives the best order of a group that is small enough to find it, or nil;
// most is a cost that is known to be had.
func (g *group) few(most float64) []crewTurn {
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
	if o.improve(math.Inf(-1), passLimit); o.idle() == 0 {
		most = min(most, o.total())
	}
	return g.exactHerds(most)
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

// order gives the turns of a group, the proven least growth given up in
// hectares, and whether the turns are the best there are. An older plan, where
// there is one, gives the start and the prices.
func (p Problem) order(g *group, was Plan, now *Plan) ([]crewTurn, float64, bool) {
	bare := g.bare()
	if turns := g.few(math.Inf(1)); turns != nil {
		low := bare.sum(turns)
		if best := bare.few(low); best != nil {
			return turns, min(low, bare.sum(best)), true
		}
		return turns, bare.prove(), true
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
	o.improve(g.bound(cols, rent)+closeEnough*g.area(), passLimit)
	now.rents.keep(p, g, rent)
	turns := o.all()
	low := bare.bound(cols, rent)
	if bare.sum(turns)-low > looseBound*g.area() {
		low = math.Max(low, p.tighten(bare, cols, was, now))
	}
	return turns, low, false
}

// looseBound is the gap, as a share of growth, from which it is worth while to
// look for better prices (ours).
const looseBound = 0.005

// tighten proves a bound by the prices of growth given up alone: an older
// plan's, or those of its own transport problem.
func (p Problem) tighten(bare *group, cols []column, was Plan, now *Plan) float64 {
	rent := was.bare.recall(p, bare)
	if rent == nil && was.rents != nil {
		return math.Inf(-1)
	}
	if rent == nil {
		t := bare.relax()
		cols, rent = t.cols, bare.rent(t)
	}
	now.bare.keep(p, bare, rent)
	return bare.bound(cols, rent)
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
