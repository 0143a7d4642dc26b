package round

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
	"leafround/core/leaf"
)

// small makes up an instance of up to eight paddocks and one mob: any areas and
// stages, holds, closed canopies, paddocks barred or held without an end, a
// mob half through a paddock, a pinned step.
func small(r *rand.Rand) Problem {
	p := Problem{Today: today}
	n := 1 + r.IntN(8)
	for i := range n {
		f := Field{Name: fmt.Sprint(i), Area: entry.Hectares(0.3 + 3*r.Float64()), Free: today,
			Habit: leaf.Of(entry.Grasses()[r.IntN(7)])}
		if r.IntN(3) == 0 {
			f.Area = entry.Hectares(1 + r.IntN(3)) // stays of whole days
		}
		at, step, sd := 3.5*r.Float64(), 0.03+0.15*r.Float64(), 0.5*r.Float64()
		for d := range 60 {
			f.Grow = append(f.Grow, Stage{at + step*float64(d), sd * (1 + 0.02*float64(d))})
		}
		switch r.IntN(7) {
		case 0:
			f.Free = today.Add(r.IntN(14))
		case 1:
			f.Closed = entry.LeafStage(at)
		case 2:
			f.NoEnd = r.IntN(3) == 0
		case 3:
			f.Mobs = []string{"milkers", "bulls"}[r.IntN(2) : 1+r.IntN(2)]
		}
		p.Fields = append(p.Fields, f)
	}
	p.Mobs = []Mob{{Name: "milkers", HaPerDay: []float64{0.5, 1, 1.7, 3}[r.IntN(4)]}}
	if r.IntN(3) == 0 {
		p.Mobs[0].In, p.Mobs[0].Left = p.Fields[0].Name, entry.Hectares(r.Float64())*p.Fields[0].Area
	}
	if r.IntN(4) == 0 {
		p.Pins = []Pin{{Mob: "milkers", Paddock: fmt.Sprint(r.IntN(n)), Day: today.Add(r.IntN(8))}}
	}
	return p
}

// brute tries every order in which the mob never waits beside a free paddock,
// by its own arithmetic, and gives the least cost in hectares.
type brute struct {
	p    Problem
	todo []Field
	used []bool
	best float64
	bare bool // nothing but growth given up counts
}

func (b *brute) value(f *Field, day int) float64 {
	if b.bare {
		return f.givenUp(day)
	}
	return f.givenUp(day) + f.harm(day)
}

func (b *brute) cost(f Field, start, end float64) float64 {
	sum := 0.0
	for d := 0; float64(d) < end; d++ {
		hours := math.Min(end, float64(d+1)) - math.Max(start, float64(d))
		if hours > 0 {
			sum += hours * b.value(&f, d)
		}
	}
	c := float64(f.Area) * sum / (end - start)
	for _, pin := range b.p.Pins {
		if pin.Paddock == f.Name {
			day := float64(pin.Day.Sub(b.p.Today))
			if start >= day+1-epsilon {
				c += pinWeight * (start - day)
			} else if end <= day+epsilon {
				c += pinWeight * (day + 1 - end)
			}
		}
	}
	return c
}

func (b *brute) try(at, sum float64, left int) {
	if sum >= b.best {
		return
	}
	if left == 0 {
		b.best = sum
		return
	}
	soonest := math.Inf(1)
	for i, f := range b.todo {
		if !b.used[i] {
			soonest = math.Min(soonest, float64(f.Free.Sub(b.p.Today)))
		}
	}
	at = math.Max(at, soonest)
	for i, f := range b.todo {
		if b.used[i] || float64(f.Free.Sub(b.p.Today)) > at+epsilon {
			continue
		}
		b.used[i] = true
		end := at + float64(f.Area)/b.p.Mobs[0].HaPerDay
		b.try(end, sum+b.cost(f, at, end), left-1)
		b.used[i] = false
	}
}

// least gives the least cost of the paddocks still to be entered, and when the
// mob can begin.
func least(p Problem, bare bool) (b *brute, start float64) {
	b = &brute{p: p, best: math.Inf(1), bare: bare}
	for _, f := range p.Fields {
		may := f.Mobs == nil
		for _, m := range f.Mobs {
			may = may || m == "milkers"
		}
		open := !f.NoEnd && may
		if f.Name == p.Mobs[0].In && !f.NoEnd && f.Free <= p.Today {
			start, open = float64(p.Mobs[0].Left)/p.Mobs[0].HaPerDay, false
		}
		if open {
			b.todo = append(b.todo, f)
		}
	}
	b.used = make([]bool, len(b.todo))
	b.try(start, 0, len(b.todo))
	return b, start
}

// On every instance of up to eight paddocks and one mob the plan is as good as
// the best of all orders.
func TestPlanIsTheBestOfAllOrders(t *testing.T) {
	trials := 2000
	if *long {
		trials = 20000
	}
	several := 0
	for seed := range uint64(trials) {
		p := small(rand.New(rand.NewPCG(11, seed)))
		b, _ := least(p, false)
		plan := Solve(p)
		sum, entered := 0.0, 0
		for _, s := range plan.Steps {
			if !s.Current {
				sum += b.cost(p.field(s.Paddock), s.Start, s.End)
				entered++
			}
		}
		require.Equal(t, len(b.todo), entered, "seed %d", seed)
		require.InDelta(t, b.best, sum, 1e-7, "seed %d: %d paddocks", seed, len(b.todo))
		require.True(t, plan.Exact)
		if len(p.Pins) == 0 && len(b.todo) > 0 && seed%4 == 0 {
			bare, start := least(p, true)
			own := start * p.Mobs[0].HaPerDay
			low := (bare.best + own*begun(plan)) / (areaOfFields(b.todo) + own)
			require.InDelta(t, low, plan.Bound, 1e-9, "seed %d: the least growth given up", seed)
		}
		require.LessOrEqual(t, plan.Bound, plan.Lost)
		if entered > 4 {
			several++
		}
	}
	require.Greater(t, several, trials/4, "too few instances with something to choose")
}

// begun gives the share given up on what the mob finishes.
func begun(p Plan) float64 {
	for _, s := range p.Steps {
		if s.Current {
			return s.Lost
		}
	}
	return 0
}

// The bound of the relaxation lies below the best order on instances of one
// mob, where the best is known.
func TestRelaxationLiesBelowTheBest(t *testing.T) {
	var gaps []float64
	for seed := range uint64(400) {
		p := small(rand.New(rand.NewPCG(12, seed)))
		b, _ := least(p, false)
		found, low := searched(p)
		require.LessOrEqual(t, low, b.best+1e-7, "seed %d: no bound", seed)
		require.GreaterOrEqual(t, found, b.best-1e-7, "seed %d: no order", seed)
		area := areaOfFields(b.todo)
		if area > 0 {
			gaps = append(gaps, (b.best-low)/area)
		}
	}
	slices.Sort(gaps)
	require.Less(t, gaps[len(gaps)/2], 0.01, "the bound is worth little")
}

// herd tries every order of several mobs in which none stands idle beside a
// paddock that it may graze.
type herd struct {
	brute
	until []float64 // by mob: the moment it is free
}

// may tells whether a mob may begin a paddock; one that is pinned waits for the
// mob it is pinned to, where that may graze it.
func (h *herd) may(m, i int) bool {
	allowed := func(mob string) bool {
		return h.todo[i].Mobs == nil || slices.Contains(h.todo[i].Mobs, mob)
	}
	for _, pin := range h.p.Pins {
		if pin.Paddock == h.todo[i].Name && allowed(pin.Mob) && pin.Mob != h.p.Mobs[m].Name {
			return false
		}
	}
	return !h.used[i] && allowed(h.p.Mobs[m].Name)
}

// begins gives the moment at which a mob can begin something.
func (h *herd) begins(m int) float64 {
	soonest := math.Inf(1)
	for i, f := range h.todo {
		if h.may(m, i) {
			soonest = math.Min(soonest, math.Max(h.until[m], float64(f.Free.Sub(h.p.Today))))
		}
	}
	return soonest
}

func (h *herd) try(sum float64, left int) {
	if sum >= h.best {
		return
	}
	if left == 0 {
		h.best = sum
		return
	}
	at := math.Inf(1)
	for m := range h.p.Mobs {
		at = math.Min(at, h.begins(m))
	}
	for m := range h.p.Mobs {
		if h.begins(m) > at+epsilon {
			continue
		}
		for i, f := range h.todo {
			if !h.may(m, i) || float64(f.Free.Sub(h.p.Today)) > at+epsilon {
				continue
			}
			was := h.until[m]
			h.used[i], h.until[m] = true, at+float64(f.Area)/h.p.Mobs[m].HaPerDay
			h.try(sum+h.cost(f, at, h.until[m]), left-1)
			h.used[i], h.until[m] = false, was
		}
	}
}

// searched gives what the search finds and the relaxation proves, in hectares.
func searched(p Problem) (found, low float64) {
	begun := Plan{}
	crews := p.crews(&begun)
	for _, g := range p.groups(crews) {
		tr := g.relax()
		o := guided(g, tr)
		o.improve(0, passLimit)
		found, low = found+o.total(), low+g.bound(tr.cols, g.rent(tr))
	}
	return found, low
}

// Several mobs and up to seven paddocks: the plan is as good as the best of all
// orders; the bound of the relaxation lies below it, and the order that the
// search would find is near it.
func TestSeveralMobsAgainstAllOrders(t *testing.T) {
	var over, loose []float64
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(14, seed))
		p := small(r)
		p.Fields = p.Fields[:min(len(p.Fields), 7)]
		for i := range p.Fields {
			if r.IntN(4) > 0 {
				p.Fields[i].Mobs = nil
			}
		}
		p.Mobs = append(p.Mobs, Mob{Name: "bulls", HaPerDay: 0.4 + 2*r.Float64()})
		if p.Mobs[0].In = ""; r.IntN(3) == 0 {
			p.Mobs = append(p.Mobs, Mob{Name: "heifers", HaPerDay: 0.4 + 2*r.Float64()})
		}
		h := &herd{brute: brute{p: p, best: math.Inf(1)}, until: make([]float64, len(p.Mobs))}
		area := 0.0
		for _, f := range p.Fields {
			if !f.NoEnd && (f.Mobs == nil || len(f.Mobs) > 0) {
				h.todo, area = append(h.todo, f), area+float64(f.Area)
			}
		}
		if area == 0 {
			continue
		}
		h.used = make([]bool, len(h.todo))
		h.try(0, len(h.todo))
		plan := Solve(p)
		require.Len(t, plan.Steps, len(h.todo))
		sum := 0.0
		for _, s := range plan.Steps {
			sum += h.cost(p.field(s.Paddock), s.Start, s.End)
		}
		require.InDelta(t, h.best, sum, 1e-7, "seed %d", seed)
		found, low := searched(p)
		require.LessOrEqual(t, low, h.best+1e-7, "seed %d: no bound", seed)
		require.GreaterOrEqual(t, found, h.best-1e-7, "seed %d: no order", seed)
		if len(p.Pins) == 0 {
			over, loose = append(over, (found-h.best)/area), append(loose, (h.best-low)/area)
		}
	}
	slices.Sort(over)
	slices.Sort(loose)
	n := len(over)
	t.Logf("over the best: median %.4f, worst %.4f; bound below the best: median %.4f, worst %.4f",
		over[n/2], over[n-1], loose[n/2], loose[n-1])
	require.Less(t, over[n*9/10], 0.005)
}

func areaOfFields(fs []Field) (a float64) {
	for _, f := range fs {
		a += float64(f.Area)
	}
	return a
}
