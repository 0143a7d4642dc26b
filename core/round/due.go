package round

import (
	"cmp"
	"slices"

	"leafround/core/entry"
	"leafround/core/farm"
	"leafround/core/pace"
)

// Why a paddock needs counting.
type DueWhy string

// The reasons, most pressing first.
const (
	DueOdd       DueWhy = "odd"       // its latest count cannot fit what was known
	DueUnknown   DueWhy = "unknown"   // never counted and never grazed in the log
	DueNext      DueWhy = "next"      // among the next to be grazed, and not counted of late
	DueNear      DueWhy = "near"      // near its window, and never counted in this regrowth
	DueUncertain DueWhy = "uncertain" // its stage is too uncertain to tell whether it is ready
	DueMiddle    DueWhy = "middle"    // the middle of the queue: how the round will go
	DueLast      DueWhy = "last"      // the last of the queue: how fast leaves come
)

// Due is a paddock that needs counting.
type Due struct {
	Paddock   string
	Why       DueWhy
	Stage     entry.LeafStage // as reckoned; 0 where not known
	Low, High entry.LeafStage
	Last      entry.Date // the last count of this regrowth; zero for none
	ReadyOn   entry.Date
	Odd       string
	from      entry.LeafStage
	known     bool
	ripe      float64
}

// The leaf walk is weekly and takes the next few, the middle and the last of
// the queue (common practice, no source). The other bounds are ours: how many
// are the next few, how wide a 95 % interval may be, and from what stage the
// last of the queue tells the pace.
const (
	walkDays   = 7
	nextFew    = 3
	wideLeaves = 1.2
	tellsPace  = 1.0
)

// DueOn lists what needs counting on a day and why, the most pressing first.
// Paddocks with stock in them, and held ones that will not be free within a
// week, are not due.
func DueOn(f *farm.Farm, day entry.Date) []Due {
	e := f.Estimate(day)
	var queue []Due
	for _, p := range f.Paddocks {
		free, ends := p.FreeFrom(day)
		if ends && free <= day.Add(walkDays) && !p.Occupied() {
			queue = append(queue, look(e, p))
		}
	}
	slices.SortStableFunc(queue, func(a, b Due) int { return cmp.Compare(b.ripe, a.ripe) })
	last := 0
	for i, d := range queue {
		if d.Stage >= tellsPace {
			last = i
		}
	}
	var out []Due
	for i, d := range queue {
		if d.Why = d.why(day, i, len(queue), last); d.Why != "" {
			out = append(out, d)
		}
	}
	slices.SortStableFunc(out, func(a, b Due) int {
		return cmp.Compare(slices.Index(dueOrder, a.Why), slices.Index(dueOrder, b.Why))
	})
	return out
}

var dueOrder = []DueWhy{DueOdd, DueUnknown, DueNext, DueNear, DueUncertain, DueMiddle, DueLast}

// look gives a paddock's figures.
func look(e *pace.Estimate, p *farm.Paddock) Due {
	d := Due{Paddock: p.Name, from: p.Habit().From}
	if c, ok := p.LastCount(); ok {
		d.Last = c.Date
	}
	s, known := e.Stage(p.Name)
	if !known {
		return d
	}
	d.known, d.Stage = true, entry.LeafStage(s.Mean)
	d.Low, d.High = entry.LeafStage(s.Low), entry.LeafStage(s.High)
	d.ReadyOn = reach(e, p.Name, d.from)
	d.Odd, _ = e.Odd(p.Name)
	d.ripe = float64(d.Stage / p.Habit().To)
	return d
}

// why tells why the i-th of a queue of n needs counting; last is the last that
// tells the pace.
func (d Due) why(day entry.Date, i, n, last int) DueWhy {
	old := d.Last <= day.Add(-walkDays)
	near := !d.ReadyOn.IsZero() && d.ReadyOn <= day.Add(walkDays)
	switch {
	case d.Odd != "" && d.Last < day:
		return DueOdd
	case !d.known:
		return DueUnknown
	case !old:
		return ""
	case i < nextFew:
		return DueNext
	case near && d.Last.IsZero():
		return DueNear
	case near && d.Low < d.from && d.High-d.Low > wideLeaves:
		return DueUncertain
	case i == n/2:
		return DueMiddle
	case i == last:
		return DueLast
	}
	return ""
}
