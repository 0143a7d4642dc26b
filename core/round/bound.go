package round

import (
	"math"
	"slices"

	"leafround/core/entry"
)

// The bound. Put a price on each mob's every day and charge each paddock for
// the days that its stay uses: the sum of what each paddock would pay at its
// cheapest, less what the days bring in, is no more than the cost of any order
// (Lagrangian duality: Geoffrion 1974). A day that an order may leave unused
// bears a price of nothing or more; a day that every order fills may bear any.
// So the bound is proven by the prices alone, wherever they come from. Stays
// are whole here, which makes the bound a little tighter than that of the
// transport problem whose prices it takes.

// lump is how many days a column takes in when all work could long be done:
// those days are hardly used, and need not be told apart. Nor are single days
// where a slow mob's round takes more than so many columns.
const (
	lump       = 7
	mostColumn = 150
)

// columns lists the mob-days of a group, with what can be eaten on each.
func (g *group) columns() []column {
	if len(g.crews) == 1 {
		return g.busy()
	}
	usual := int(eaten(slices.Clone(g.crews), g.area())) + 3
	unit := 1 + usual/mostColumn
	var out []column
	for c, crew := range g.crews {
		end := g.lastEnd(c)
		for d := int(crew.start); float64(d) < end; {
			days := unit
			if d >= usual {
				days = unit * lump
			}
			hours := float64(d+days) - math.Max(float64(d), crew.start)
			full := d < usual
			for k := d; k < d+days && full; k++ {
				full = g.neverIdle(c, k)
			}
			out = append(out, column{c, d, days, hours * crew.rate, full})
			d += days
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
	unit := 1 + len(room)/mostColumn
	var out []column
	for d := 0; d < len(room); d += unit {
		sum := 0.0
		for _, r := range room[d:min(d+unit, len(room))] {
			sum += r
		}
		if sum > 0 {
			out = append(out, column{0, d, unit, sum, true})
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

// neverIdle tells whether in every order the mob is busy all that day. At a
// moment when it stands idle, all that it may graze and that is free has been
// begun: eaten by then, or still being eaten by another mob, each at most the
// largest paddock that both may graze. Where more than that is free by the
// day, it is not idle before the day's end.
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
			area -= g.crews[o].rate * math.Max(0, float64(day+1)-g.crews[o].start)
			if o != c {
				area -= b
			}
		}
	}
	return area > epsilon
}

// rents are the prices of mob-days, for each hectare, by mob and date.
type rents map[string]map[entry.Date]float64

// room gives days enough for every column.
func (g *group) room() int { return g.far + lump*(1+g.far/mostColumn) + 1 }

// rent gives the prices of the transport problem, by crew and day.
func (g *group) rent(t *transport) [][]float64 {
	rent := make([][]float64, len(g.crews))
	for c := range rent {
		rent[c] = make([]float64, g.room())
	}
	for k, col := range t.cols {
		p := t.price[k]
		if col.full {
			p -= filler
		}
		for d := col.day; d < col.day+col.days; d++ {
			rent[col.crew][d] = p
		}
	}
	return rent
}

// bound gives the least cost of any order, in hectares, that prices prove. On
// days that an order may leave unused no price below nothing counts.
func (g *group) bound(cols []column, rent [][]float64) float64 {
	sum := 0.0
	for _, col := range cols {
		p := &rent[col.crew][col.day]
		if !col.full {
			*p = math.Max(0, *p)
			for d := col.day; d < col.day+col.days; d++ {
				rent[col.crew][d] = *p
			}
		}
		sum -= *p * col.room
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

// keep notes the prices for a later plan.
func (r rents) keep(p Problem, g *group, rent [][]float64) {
	for c, days := range rent {
		name := p.Mobs[g.crews[c].mob].Name
		r[name] = make(map[entry.Date]float64, len(days))
		for d, price := range days {
			r[name][p.Today.Add(d)] = price
		}
	}
}

// recall gives the prices that an older plan had for a group's days; nil where
// it had none.
func (r rents) recall(p Problem, g *group) [][]float64 {
	out := make([][]float64, len(g.crews))
	for c := range out {
		days, ok := r[p.Mobs[g.crews[c].mob].Name]
		if !ok {
			return nil
		}
		out[c] = make([]float64, g.room())
		for d := range out[c] {
			out[c][d] = days[p.Today.Add(d)]
		}
	}
	return out
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
			cost := job.area*job.cost.mean(s, s+stay) + rate*(rent[c].upTo(s+stay)-rent[c].upTo(s))
			if job.pinned { // a hair more room: to touch the day is not to miss it
				cost += pinWeight * job.missed(s-2*epsilon, s+stay+2*epsilon)
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
