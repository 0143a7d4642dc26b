package round

import "math"

// herdsLimit is the most paddocks that are ordered exactly for several mobs.
const herdsLimit = 7

// hunt finds the best order for several mobs among few paddocks: it tries all
// of them, in the order of time, and turns back where what is spent and the
// least that each paddock left can cost are no better than the best so far
// (branch and bound: Land & Doig 1960).
type hunt struct {
	g     *group
	least []float64 // by job, whatever its turn
	used  []bool
	until []float64 // by crew
	path  []crewTurn
	best  []crewTurn
	cost  float64
}

func (g *group) exactHerds() []crewTurn {
	h := &hunt{g: g, used: make([]bool, len(g.jobs)), cost: math.Inf(1)}
	free := make([]tally, len(g.crews))
	for c, crew := range g.crews {
		h.until = append(h.until, crew.start)
		free[c] = make(tally, g.far+2)
	}
	rest := 0.0
	for j := range g.jobs {
		h.least = append(h.least, g.cheapest(j, free))
		rest += h.least[j]
	}
	h.try(0, rest)
	return h.best
}

// try goes on from what is in the path; rest is the least that the others cost.
func (h *hunt) try(spent, rest float64) {
	if spent+rest >= h.cost {
		return
	}
	if len(h.path) == len(h.g.jobs) {
		h.cost, h.best = spent, append([]crewTurn(nil), h.path...)
		return
	}
	at := math.Inf(1)
	begins := make([]float64, len(h.until))
	for c := range h.until {
		begins[c] = h.begins(c)
		at = math.Min(at, begins[c])
	}
	for c := range begins {
		if begins[c] <= at+epsilon {
			h.pick(c, at, spent, rest)
		}
	}
}

// begins gives the moment at which a crew can begin something.
func (h *hunt) begins(c int) float64 {
	soonest := math.Inf(1)
	for j := range h.g.jobs {
		if !h.used[j] && h.g.jobs[j].mobs[c] {
			soonest = math.Min(soonest, math.Max(h.until[c], h.g.jobs[j].free))
		}
	}
	return soonest
}

// pick lets a crew begin each paddock that it may, at a moment.
func (h *hunt) pick(c int, at, spent, rest float64) {
	was := h.until[c]
	for j := range h.g.jobs {
		job := &h.g.jobs[j]
		if h.used[j] || !job.mobs[c] || job.free > at+epsilon {
			continue
		}
		end := at + h.g.stay(j, c)
		h.used[j], h.until[c] = true, end
		h.path = append(h.path, crewTurn{turn{j, at, end}, c})
		h.try(spent+job.price(at, end), rest-h.least[j])
		h.path = h.path[:len(h.path)-1]
		h.used[j], h.until[c] = false, was
	}
}
