package round

import (
	"math"
	"slices"
)

// herdsLimit is the most paddocks, crewsLimit the most mobs, and nodesLimit the
// most states for which several mobs are ordered exactly.
const (
	herdsLimit = 14
	crewsLimit = 4
	nodesLimit = 40000
)

// node is a state on the way: which mob has had which paddock, when each mob is
// free, and what that cost at the least.
type node struct {
	key    nodeKey
	until  [crewsLimit]float64 // when each mob is free
	cost   float64
	turn   crewTurn
	parent int // in the layer before
}

// nodeKey tells states apart: three bits a paddock (0 not grazed, else the mob
// plus one), and when each mob is free, in units of the tolerance. What comes
// after hangs on these alone.
type nodeKey struct {
	had   uint64
	until [crewsLimit]int64
}

func (k nodeKey) grazed(j int) bool { return k.had>>(3*j)&7 != 0 }

// exactHerds finds the best order for several mobs, by dynamic programming over
// the states in layers of as many paddocks grazed (Held & Karp 1962), without
// those that can no longer come below a cost that is known to be had. It gives
// nil where that takes too many states.
func (g *group) exactHerds(most float64) []crewTurn {
	n := len(g.jobs)
	if n > herdsLimit || len(g.crews) > crewsLimit {
		return nil
	}
	h := sweep{g: g, least: g.leastFrom(), most: most, seen: map[nodeKey]int{}}
	first := node{}
	for c, crew := range g.crews {
		first.until[c] = crew.start
	}
	layers := [][]node{{first}}
	for range n {
		h.next = nil
		clear(h.seen)
		for i := range layers[len(layers)-1] {
			h.grow(&layers[len(layers)-1][i], i)
			if h.made > nodesLimit {
				return nil
			}
		}
		layers = append(layers, h.next)
	}
	return trace(layers)
}

// leastFrom gives, by job and day, the least that a job costs when it is begun
// on that day or later.
func (g *group) leastFrom() [][]float64 {
	out := make([][]float64, len(g.jobs))
	for j := range g.jobs {
		out[j] = make([]float64, g.far+1)
		least := math.Inf(1)
		for d := g.far; d >= 0; d-- {
			least = min(least, g.jobs[j].area*g.jobs[j].cost.on(d))
			out[j][d] = least
		}
	}
	return out
}

// sweep grows one layer from the one before.
type sweep struct {
	g     *group
	least [][]float64
	most  float64
	next  []node
	seen  map[nodeKey]int
	made  int
}

// grow adds the states that follow a state: whichever mob can begin something
// the soonest begins a paddock that it may.
func (h *sweep) grow(from *node, parent int) {
	at := math.Inf(1)
	var begins [crewsLimit]float64
	for c := range h.g.crews {
		begins[c] = h.begins(from, c)
		at = min(at, begins[c])
	}
	for c := range h.g.crews {
		if begins[c] > at+epsilon {
			continue
		}
		for j := range h.g.jobs {
			job := &h.g.jobs[j]
			if !from.key.grazed(j) && job.mobs[c] && job.free <= at+epsilon {
				end := at + h.g.stay(j, c)
				h.add(from, parent, crewTurn{turn{j, at, end}, c})
			}
		}
	}
}

// begins gives the moment at which a mob can begin something.
func (h *sweep) begins(from *node, c int) float64 {
	soonest := math.Inf(1)
	for j := range h.g.jobs {
		if job := &h.g.jobs[j]; job.mobs[c] && !from.key.grazed(j) {
			soonest = min(soonest, max(from.until[c], job.free))
		}
	}
	return soonest
}

// add notes a state, unless it is known to cost less another way or cannot end
// below the most.
func (h *sweep) add(from *node, parent int, t crewTurn) {
	to := node{key: from.key, until: from.until, turn: t, parent: parent}
	to.key.had |= uint64(t.crew+1) << (3 * t.job)
	to.until[t.crew] = t.end
	to.key.until[t.crew] = int64(math.Round(t.end / epsilon))
	to.cost = from.cost + h.g.jobs[t.job].price(t.start, t.end)
	if to.cost+h.rest(&to, t.start) > h.most+1e-7 {
		return
	}
	if i, ok := h.seen[to.key]; ok {
		if to.cost < h.next[i].cost {
			h.next[i] = to
		}
		return
	}
	h.made++
	h.seen[to.key] = len(h.next)
	h.next = append(h.next, to)
}

// rest gives the least that the paddocks left cost when begun at a moment or
// later.
func (h *sweep) rest(n *node, at float64) float64 {
	sum, day := 0.0, min(int(at), h.g.far)
	for j := range h.g.jobs {
		if !n.key.grazed(j) {
			sum += h.least[j][day]
		}
	}
	return sum
}

// trace follows the cheapest state of the last layer back.
func trace(layers [][]node) []crewTurn {
	last := layers[len(layers)-1]
	if len(last) == 0 {
		return nil
	}
	at := 0
	for i := range last {
		if last[i].cost < last[at].cost {
			at = i
		}
	}
	var out []crewTurn
	for k := len(layers) - 1; k > 0; k-- {
		out = append(out, layers[k][at].turn)
		at = layers[k][at].parent
	}
	slices.Reverse(out)
	return out
}
