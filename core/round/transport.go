package round

import "math"

// The relaxation. Let each paddock be cut into strips that any mob that may
// graze it may take on any day: what is left is a transport problem from
// paddocks (hectares) to mob-days (hectares a day), which gives up no more
// growth than any order does. It is solved by shortest augmenting paths with
// potentials (Ford & Fulkerson 1962; Edmonds & Karp 1972); only its prices are
// used for the bound, and whatever they are, the bound holds (bound.go).

// column is one mob's day, or several that need not be told apart.
type column struct {
	crew, day, days int
	room            float64 // hectares that can be eaten
	full            bool    // every order eats them all
}

// filler is what a column that every order fills is made cheaper by, per
// hectare: more than any share given up, so that it is filled first.
const filler = 4.0

// transport is the state of the solver.
type transport struct {
	cols  []column
	cost  [][]float64 // by job, by column; +Inf where it cannot be
	flow  [][]float64
	left  []float64 // room left in a column
	price []float64 // potential of a column; never below 0
	best  []float64 // potential of a job
	// the state of one search
	dist  []float64
	from  []int     // the job from which a column was reached
	open  []int     // columns not yet settled
	reach []float64 // distance of a job
	via   []int     // the column over which a job was reached, -1 the root
	users [][]int   // by column, the jobs that use it
}

// relax sets up the transport problem of a group and solves it.
func (g *group) relax() *transport {
	cols := g.columns()
	cost := make([][]float64, len(g.jobs))
	for j := range g.jobs {
		cost[j] = g.costs(j, cols)
	}
	t := newTransport(cols, cost)
	for j := range g.jobs {
		t.send(j, g.jobs[j].area)
	}
	return t
}

func newTransport(cols []column, cost [][]float64) *transport {
	n, m := len(cost), len(cols)
	t := &transport{cols: cols, cost: cost, flow: make([][]float64, n),
		left: make([]float64, m), price: make([]float64, m), best: make([]float64, n),
		dist: make([]float64, m), from: make([]int, m),
		reach: make([]float64, n), via: make([]int, n), users: make([][]int, m)}
	for c, col := range cols {
		t.left[c] = col.room
	}
	for j := range t.flow {
		t.flow[j] = make([]float64, m)
	}
	return t
}

// costs gives what a hectare of a job costs in each column; in one of several
// days, on the cheapest of them.
func (g *group) costs(j int, cols []column) []float64 {
	out := make([]float64, len(cols))
	for k, c := range cols {
		out[k] = math.Inf(1)
		for d := c.day; d < c.day+c.days; d++ {
			out[k] = min(out[k], g.strip(j, c.crew, d))
		}
		if c.full {
			out[k] -= filler
		}
	}
	return out
}

// strip gives what a hectare of a job costs on a crew's day; +Inf where no
// order grazes it then. A strip of a stay that reaches the pinned day misses
// nothing.
func (g *group) strip(j, crew, on int) float64 {
	job, day, stay := &g.jobs[j], float64(on), g.stay(j, crew)
	if !job.mobs[crew] || day+1 <= job.free || day >= job.latest+stay {
		return math.Inf(1)
	}
	cost := job.cost.on(on)
	if job.pinned {
		cost += pinWeight * job.missed(day-stay-2*epsilon, day+1+stay+2*epsilon) / job.area
	}
	return cost
}

// send routes a job's hectares, by as many shortest paths as it takes.
func (t *transport) send(j int, hectares float64) {
	t.best[j] = math.Inf(1)
	for c := range t.cols {
		t.best[j] = min(t.best[j], t.cost[j][c]+t.price[c])
	}
	for hectares > 1e-9 {
		c, d := t.search(j)
		if c < 0 {
			return // no room: the prices so far still prove a bound
		}
		t.reprice(d)
		hectares -= t.push(j, c, hectares)
	}
}

// search finds the nearest column with room, by reduced costs.
func (t *transport) search(root int) (int, float64) {
	t.open = t.open[:0]
	for c := range t.cols {
		t.dist[c] = math.Inf(1)
		t.open = append(t.open, c)
	}
	for j := range t.reach {
		t.reach[j] = math.Inf(1)
	}
	t.reach[root], t.via[root] = 0, -1
	next := t.scan(root, 0)
	for next >= 0 {
		c := t.open[next]
		t.open[next] = t.open[len(t.open)-1]
		t.open = t.open[:len(t.open)-1]
		if t.left[c] > 1e-9 {
			return c, t.dist[c]
		}
		next = -1
		for _, j := range t.users[c] {
			if math.IsInf(t.reach[j], 1) && t.flow[j][c] > 0 {
				t.reach[j], t.via[j] = t.dist[c], c
				next = t.scan(j, t.dist[c])
			}
		}
		if next < 0 {
			next = t.nearest()
		}
	}
	return -1, 0
}

// scan looks from a job at every open column and gives the place of the
// nearest, -1 where none can be reached.
func (t *transport) scan(j int, at float64) int {
	cost, base := t.cost[j], at-t.best[j]
	place, least := -1, math.Inf(1)
	for k, c := range t.open {
		d := base + cost[c] + t.price[c]
		if d < t.dist[c] {
			t.dist[c], t.from[c] = d, j
		} else {
			d = t.dist[c]
		}
		if d < least {
			place, least = k, d
		}
	}
	return place
}

// nearest gives the place of the nearest open column, -1 for none.
func (t *transport) nearest() int {
	place, least := -1, math.Inf(1)
	for k, c := range t.open {
		if d := t.dist[c]; d < least {
			place, least = k, d
		}
	}
	return place
}

// reprice moves the potentials so that the path found costs nothing more.
func (t *transport) reprice(d float64) {
	for c := range t.price {
		if t.dist[c] < d {
			t.price[c] += d - t.dist[c]
		}
	}
	for j := range t.best {
		if t.reach[j] < d {
			t.best[j] += d - t.reach[j]
		}
	}
}

// push sends what fits along the path to column c and gives how much.
func (t *transport) push(root, c int, most float64) float64 {
	amount := min(most, t.left[c])
	for j, at := t.from[c], c; j != root; j = t.from[at] {
		at = t.via[j]
		amount = min(amount, t.flow[j][at])
	}
	t.left[c] -= amount
	for at := c; ; {
		j := t.from[at]
		t.add(j, at, amount)
		if j == root {
			return amount
		}
		at = t.via[j]
		t.flow[j][at] -= amount
	}
}

func (t *transport) add(j, c int, amount float64) {
	if t.flow[j][c] == 0 {
		t.users[c] = append(t.users[c], j)
	}
	t.flow[j][c] += amount
}
