package round

import (
	"cmp"
	"slices"

	"leafround/core/entry"
	"leafround/core/farm"
	"leafround/core/leaf"
	"leafround/core/pace"
)

// Reason tells why a paddock has its place in the ranking.
type Reason string

// The reasons, in the order of the ranking (common practice: closed canopy and
// past the window first, then the highest stage within it, then, with a
// warning, the best below it).
const (
	ByCanopy Reason = "canopy" // its canopy has closed
	ByPast   Reason = "past"   // at or past the end of its window
	ByWindow Reason = "window" // within its window
	Below    Reason = "below"  // below its window: flagged
)

// Ranked is a paddock in the ranking.
type Ranked struct {
	Paddock           string
	Reason            Reason
	Stage             entry.LeafStage
	Low, High         entry.LeafStage // 95 %
	Advice            leaf.Advice
	ReadyOn, TargetOn entry.Date // zero where nothing can be said
	LateOn            entry.Date
	Days              int // since regrowth began; -1 where not known
	Area              entry.Hectares
	Habit             leaf.Habit
	Reproductive      bool   // most tillers are heading: the stage means little
	Odd               string // why its latest count cannot fit; "" where it can
	ripe              float64
}

// Rank ranks the paddocks for a mob ("" is any) on a day, best first, with the
// reason for each, and lists those left out. A held paddock is never ranked.
// Of two paddocks in one class the one further through its own grass's window
// comes first (ours: 2.4 leaves are more in fescue than in ryegrass).
func Rank(f *farm.Farm, day entry.Date, mob string) ([]Ranked, []LeftOut) {
	var ranked []Ranked
	var left []LeftOut
	e := f.Estimate(day)
	for _, p := range f.Paddocks {
		if l, is := out(f, p, day, mob); is {
			left = append(left, l)
		} else if r, ok := rate(f, e, p); ok {
			ranked = append(ranked, r)
		} else {
			left = append(left, LeftOut{Paddock: p.Name, Why: OutUnknown})
		}
	}
	slices.SortStableFunc(ranked, func(a, b Ranked) int {
		return cmp.Or(cmp.Compare(a.Reason.class(), b.Reason.class()), cmp.Compare(b.ripe, a.ripe))
	})
	return ranked, left
}

// Ready ranks only those that are ready; what is below its window is left out.
func Ready(f *farm.Farm, day entry.Date, mob string) ([]Ranked, []LeftOut) {
	all, left := Rank(f, day, mob)
	var ranked []Ranked
	for _, r := range all {
		if r.Reason != Below {
			ranked = append(ranked, r)
			continue
		}
		left = append(left, LeftOut{Paddock: r.Paddock, Why: OutBelow, Stage: r.Stage, ReadyOn: r.ReadyOn})
	}
	return ranked, left
}

// class gives the order of the reasons.
func (r Reason) class() int {
	switch r {
	case ByCanopy, ByPast:
		return 0
	case ByWindow:
		return 1
	}
	return 2
}

// rate gives a paddock's figures; false where its stage is not known. A closed
// canopy counts without a stage.
func rate(f *farm.Farm, e *pace.Estimate, p *farm.Paddock) (Ranked, bool) {
	s, ok := e.Stage(p.Name)
	closed := !p.Closed.IsZero()
	if !ok && !closed {
		return Ranked{}, false
	}
	h := p.Habit()
	r := Ranked{Paddock: p.Name, Stage: entry.LeafStage(s.Mean), Low: entry.LeafStage(s.Low),
		High: entry.LeafStage(s.High), Days: s.Days, Area: p.Area, Habit: h, Reproductive: s.Reproductive}
	r.Advice = leaf.Advise(h, r.Stage, closed)
	r.Reason = reasonOf(r.Advice)
	r.Odd, _ = e.Odd(p.Name)
	r.ReadyOn = reach(e, p.Name, h.From)
	r.TargetOn = reach(e, p.Name, Target(f, p))
	r.LateOn = reach(e, p.Name, h.To)
	r.ripe = float64(r.Stage / h.To)
	return r, true
}

func reasonOf(a leaf.Advice) Reason {
	switch a {
	case leaf.Canopy:
		return ByCanopy
	case leaf.Late:
		return ByPast
	case leaf.Ready:
		return ByWindow
	}
	return Below
}

func reach(e *pace.Estimate, paddock string, stage entry.LeafStage) entry.Date {
	forecast, ok := e.Reach(paddock, stage)
	if !ok {
		return 0
	}
	return forecast.On
}

// Target gives the leaf stage aimed at in a paddock: the farm's aim, where its
// grass keeps that many leaves alive, else the grass's own (ours: an aim is
// told with ryegrass in mind, and fescue never reaches 2.75).
func Target(f *farm.Farm, p *farm.Paddock) entry.LeafStage {
	h := p.Habit()
	if f.Aim <= 0 || f.Aim > h.Live {
		return h.Target
	}
	return f.Aim
}
