package round

import "math"

// The bound. Put a price on each mob's every day and charge each paddock for
// the days that its stay uses: the sum of what each paddock would pay at its
// cheapest, less what the days bring in, is no more than the cost of any order
// (Lagrangian duality: Geoffrion 1974). A day that an order may leave unused
// bears a price of nothing or more; a day that every order fills may bear any.
// So the bound is proven by the prices alone, wherever they come from. Stays
// are whole here, which makes the bound a little tighter than that of the
// transport problem whose prices it takes.

// columns lists the mob-days of a group, with what can be eaten on each.
func (g *group) columns() []column {
	if len(g.crews) == 1 {
		return g.busy()
	}
	var out []column
	for c := range g.crews {
		end := g.lastEnd(c)
		for d := int(g.crews[c].start); float64(d) < end; d++ {
			hours := float64(d+1) - math.Max(float64(d), g.crews[c].start)
			full := g.neverIdle(c, d)
			out = append(out, column{c, d, hours * g.crews[c].rate, full})
		}
	}
	return out
}

// busy lists the days of a single mob: it waits only when nothing that is left
// is free, so that its working hours do not depend on the order.
func (g *group) busy() []column {
	room := make([]float64, g.far+1)
	at, rate := g.crews[0].start, g.crews[0].rate
	for j := range g.jobs { // sorted by the day they are free
		at = math.Max(at, g.jobs[j].free)
		for left := g.jobs[j].area; left > 1e-9; {
			d := int(at + epsilon)
			eat := min(left, (float64(d+1)-at)*rate)
			room[d] += eat
			left -= eat
			at += eat / rate
		}
	}
	var out []column
	for d, r := range room {
		if r > 0 {
			out = append(out, column{0, d, r, true})
		}
	}
	return out
}

func (g *group) lastEnd(c int) float64 {
	end := 0.0
	for j := range g.jobs {
		if g.jobs[j].mobs[c] {
			end = math.Max(end, g.jobs[j].latest+g.stay(j, c))
		}
	}
	return end
}

// neverIdle tells whether in every order the mob is busy all that day: of what
// it may graze, more is free by then than all mobs can have begun by its end.
func (g *group) neverIdle(c, day int) bool {
	area := 0.0
	begun := make([]float64, len(g.crews)) // by crew, the largest it may be in
	for j := range g.jobs {
		job := &g.jobs[j]
		if !job.mobs[c] || job.free > float64(day) {
			continue
		}
		area += job.area
		for o, ok := range job.mobs {
			if ok {
				begun[o] = math.Max(begun[o], job.area)
			}
		}
	}
	for o, b := range begun {
		if b > 0 {
			area -= b + g.crews[o].rate*math.Max(0, float64(day+1)-g.crews[o].start)
		}
	}
	return area > epsilon
}

// bound gives the proven least cost of any order, in hectares, from the prices
// of the transport problem.
func (g *group) bound(t *transport) float64 {
	rent := make([][]float64, len(g.crews))
	for c := range rent {
		rent[c] = make([]float64, g.far+1)
	}
	sum := 0.0
	for k, col := range t.cols {
		p := t.price[k]
		if col.full {
			p -= filler
		}
		rent[col.crew][col.day] = p
		sum -= p * col.room
	}
	tallies := make([]tally, len(rent))
	for c, r := range rent {
		tallies[c] = newTally(len(r), func(d int) float64 { return r[d] })
	}
	for j := range g.jobs {
		sum += g.cheapest(j, tallies)
	}
	return sum
}

// cheapest gives the least that a job can pay for its stay and its rent. Both
// are straight lines in the start between the moments at which the stay's
// start or end crosses midnight, so only those and the first and last start
// need be looked at.
func (g *group) cheapest(j int, rent []tally) float64 {
	job, least := &g.jobs[j], math.Inf(1)
	for c, ok := range job.mobs {
		if !ok {
			continue
		}
		stay, rate := g.stay(j, c), g.crews[c].rate
		try := func(s float64) {
			cost := job.price(s, s+stay) + rate*(rent[c].upTo(s+stay)-rent[c].upTo(s))
			if job.pinned && job.missed(s, s+stay) > 0 {
				cost -= pinWeight * epsilon // the edge itself
			}
			least = math.Min(least, cost)
		}
		first := math.Max(job.free, g.crews[c].start)
		last := math.Max(first, job.latest)
		try(first)
		try(last)
		for d := math.Ceil(first); d <= last; d++ {
			try(d)
		}
		for d := math.Ceil(first+stay) - stay; d <= last; d++ {
			if d >= first {
				try(d)
			}
		}
	}
	return least
}
