package round

import (
	"cmp"
	"math"
	"slices"
)

// idleWeight is what a day of a mob's standing idle beside a paddock that it
// may graze costs the search, in hectares: such an order is no order, and no
// wish is worth it (ours).
const idleWeight = 100 * pinWeight

// order is a solution in the making: what each mob grazes, in turn.
type order struct {
	g     *group
	seq   [][]int     // by crew: jobs
	turns [][]turn    // by crew
	cost  [][]float64 // by crew: cost of the first k turns
	spare [2][]int    // for turns on trial
}

// settle works out times and costs of a crew's turns from position k on.
func (o *order) settle(c, k int) {
	n := len(o.seq[c])
	o.turns[c] = append(o.turns[c][:k], make([]turn, n-k)...)
	o.cost[c] = append(o.cost[c][:k+1], make([]float64, n-k)...)
	at := o.g.crews[c].start
	if k > 0 {
		at = o.turns[c][k-1].end
	}
	for ; k < n; k++ {
		j := o.seq[c][k]
		s := math.Max(at, o.g.jobs[j].free)
		at = s + o.g.stay(j, c)
		o.turns[c][k] = turn{j, s, at}
		o.cost[c][k+1] = o.cost[c][k] + o.g.jobs[j].price(s, at)
	}
}

func newOrder(g *group) *order {
	n := len(g.crews)
	o := &order{g: g, seq: make([][]int, n), turns: make([][]turn, n), cost: make([][]float64, n)}
	for c := range o.cost {
		o.cost[c] = []float64{0}
	}
	return o
}

// dispatch makes an order: whenever a mob is free, it takes the paddock of the
// least rank among those that it may graze now, so that no mob stands idle.
func dispatch(g *group, rank func(job, crew int) float64) *order {
	o := newOrder(g)
	free := make([]float64, len(g.crews))
	for c := range free {
		free[c] = g.crews[c].start
	}
	taken := make([]bool, len(g.jobs))
	for range g.jobs {
		c, at := g.turnOf(free, taken)
		if c < 0 {
			break
		}
		best := -1
		for j := range g.jobs {
			if taken[j] || !g.jobs[j].mobs[c] || g.jobs[j].free > at+epsilon {
				continue
			}
			if best < 0 || rank(j, c) < rank(best, c) {
				best = j
			}
		}
		taken[best] = true
		o.seq[c] = append(o.seq[c], best)
		free[c] = at + g.stay(best, c)
	}
	for c := range o.seq {
		o.settle(c, 0)
	}
	return o
}

// turnOf gives the crew that can begin a paddock the soonest, and when.
func (g *group) turnOf(free []float64, taken []bool) (int, float64) {
	crew, at := -1, math.Inf(1)
	for c := range g.crews {
		soonest := math.Inf(1)
		for j := range g.jobs {
			if !taken[j] && g.jobs[j].mobs[c] {
				soonest = math.Min(soonest, math.Max(free[c], g.jobs[j].free))
			}
		}
		if soonest < at {
			crew, at = c, soonest
		}
	}
	return crew, at
}

// guided makes an order from the transport problem: each paddock ranks by the
// mean day on which its hectares were eaten there, and behind its time where
// another mob was to have it.
func guided(g *group, t *transport) *order {
	when := make([]float64, len(g.jobs))
	share := make([][]float64, len(g.jobs))
	for j := range when {
		share[j] = make([]float64, len(g.crews))
		for k, c := range t.cols {
			if f := t.flow[j][k]; f > 0 {
				when[j] += f * (float64(c.day) + 0.5) / g.jobs[j].area
				share[j][c.crew] += f / g.jobs[j].area
			}
		}
	}
	return dispatch(g, func(j, c int) float64 { return when[j] + 3*(1-share[j][c]) })
}

func (o *order) total() float64 {
	sum := 0.0
	for c := range o.cost {
		sum += o.cost[c][len(o.cost[c])-1]
	}
	return sum + idleWeight*o.idle()
}

// idle gives the days that mobs stand idle beside what they might graze.
func (o *order) idle() float64 {
	sum := 0.0
	for c, turns := range o.turns {
		at := o.g.crews[c].start
		for _, t := range turns {
			if t.start > at+epsilon {
				sum += o.passed(c, at, t.start)
			}
			at = t.end
		}
		if len(o.turns) > 1 {
			sum += o.passed(c, at, math.Inf(1))
		}
	}
	return sum
}

// passed gives for how long, at the most, a job waited for another mob or
// another turn while this crew stood idle from one moment to another.
func (o *order) passed(c int, from, to float64) float64 {
	worst := 0.0
	for _, turns := range o.turns {
		for k := len(turns) - 1; k >= 0 && turns[k].start > from+epsilon; k-- {
			if j := &o.g.jobs[turns[k].job]; j.mobs[c] {
				if d := min(turns[k].start, to) - max(from, j.free); d > epsilon {
					worst = max(worst, d)
				}
			}
		}
	}
	return worst
}

// all gives the turns of every crew by start, with their crews.
func (o *order) all() []crewTurn {
	var out []crewTurn
	for c, turns := range o.turns {
		for _, t := range turns {
			out = append(out, crewTurn{t, c})
		}
	}
	slices.SortStableFunc(out, func(a, b crewTurn) int { return cmp.Compare(a.start, b.start) })
	return out
}

type crewTurn struct {
	turn
	crew int
}
