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
}

// The leaf walk is weekly and takes the next few, the middle and the last of
// the queue (common practice, no source). The other bounds are ours: how many
// are the next few, how near the window is near, and how wide a 95 % interval
// may be.
const (
	walkDays   = 7
	nextFew    = 3
	nearLeaves = 0.5
	wideLeaves = 1.2
)

// DueOn lists what needs counting on a day and why, the most pressing first.
// Paddocks with stock in them, and held ones that will not be free within a
// week, are not due.
func DueOn(f *farm.Farm, day entry.Date) []Due {
	d := dues{f: f, e: f.Estimate(day), day: day}
	var queue []Due
	for _, p := range f.Paddocks {
		free, ends := p.FreeFrom(day)
		if !ends || free > day.Add(walkDays) || p.Occupied() {
			continue
		}
		if due, ok := d.look(p); ok {
			d.add(due, due.Why)
		} else {
			queue = append(queue, due)
		}
	}
	d.walk(queue)
	slices.SortStableFunc(d.list, func(a, b Due) int {
		return cmp.Compare(slices.Index(dueOrder, a.Why), slices.Index(dueOrder, b.Why))
	})
	return d.list
}

var dueOrder = []DueWhy{DueOdd, DueUnknown, DueNext, DueNear, DueUncertain, DueMiddle, DueLast}

type dues struct {
	f    *farm.Farm
	e    *pace.Estimate
	day  entry.Date
	list []Due
}

func (d *dues) add(due Due, why DueWhy) {
	due.Why = why
	d.list = append(d.list, due)
}

// look gives a paddock's figures, and whether it is due for a reason of its own.
func (d *dues) look(p *farm.Paddock) (Due, bool) {
	due := Due{Paddock: p.Name}
	s, known := d.e.Stage(p.Name)
	if c, ok := p.LastCount(); ok {
		due.Last = c.Date
	}
	if !known {
		due.Why = DueUnknown
		return due, true
	}
	h := p.Habit()
	due.Stage, due.Low, due.High = entry.LeafStage(s.Mean), entry.LeafStage(s.Low), entry.LeafStage(s.High)
	due.ReadyOn = reach(d.e, p.Name, h.From)
	near := due.Stage >= h.From-nearLeaves
	if odd, is := d.e.Odd(p.Name); is {
		due.Why, due.Odd = DueOdd, odd
		return due, due.Last > d.day.Add(-walkDays) && due.Last < d.day
	}
	switch {
	case near && due.Last.IsZero():
		due.Why = DueNear
	case near && d.old(due) && due.Low < h.From && due.High-due.Low > wideLeaves:
		due.Why = DueUncertain
	}
	return due, due.Why != ""
}

// old tells whether the last count is a leaf walk ago.
func (d *dues) old(due Due) bool { return due.Last <= d.day.Add(-walkDays) }

// walk adds the next few, the middle and the last of the queue, where they
// were not counted since the last leaf walk.
func (d *dues) walk(queue []Due) {
	slices.SortStableFunc(queue, func(a, b Due) int { return cmp.Compare(b.Stage, a.Stage) })
	for i, due := range queue {
		if !d.old(due) {
			continue
		}
		switch {
		case i < nextFew:
			d.add(due, DueNext)
		case i == len(queue)/2:
			d.add(due, DueMiddle)
		case i == len(queue)-1 && due.Stage >= 1:
			d.add(due, DueLast)
		}
	}
}
