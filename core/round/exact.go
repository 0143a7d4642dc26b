package round

import (
	"math"
	"math/bits"
)

// exactLimit is the most paddocks that are ordered exactly: the table has two
// to that power rows.
const exactLimit = 12

// exact finds the best order for one mob by dynamic programming over the sets
// of paddocks already grazed (Held & Karp 1962). When a mob never waits beside
// a paddock it may graze, the moment a set is done does not depend on its
// order: work fills the same stretches of time whichever comes first.
func (g *group) exact() []crewTurn {
	n := len(g.jobs)
	best := make([]float64, 1<<n)
	done := make([]float64, 1<<n)
	last := make([]int8, 1<<n)
	for s := 1; s < 1<<n; s++ {
		best[s] = math.Inf(1)
	}
	done[0] = g.crews[0].start
	for s := range best {
		if math.IsInf(best[s], 1) {
			continue
		}
		at := g.wait(s, done[s])
		for j := range n {
			if s>>j&1 == 1 || g.jobs[j].free > at+epsilon {
				continue
			}
			next, end := s|1<<j, at+g.stay(j, 0)
			if c := best[s] + g.jobs[j].price(at, end); c < best[next] {
				best[next], done[next], last[next] = c, end, int8(j)
			}
		}
	}
	return g.unwind(last, done)
}

// wait gives the moment at which the mob can go on: now if a paddock that is
// left is free, else when the first of them is.
func (g *group) wait(grazed int, now float64) float64 {
	first := math.Inf(1)
	for j := range g.jobs {
		if grazed>>j&1 == 0 {
			first = min(first, g.jobs[j].free)
		}
	}
	return max(now, first)
}

func (g *group) unwind(last []int8, done []float64) []crewTurn {
	s := len(last) - 1
	out := make([]crewTurn, bits.OnesCount(uint(s)))
	for k := len(out) - 1; k >= 0; k-- {
		j := int(last[s])
		out[k] = crewTurn{turn: turn{job: j, start: done[s] - g.stay(j, 0), end: done[s]}}
		s &^= 1 << j
	}
	return out
}
