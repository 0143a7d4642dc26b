package farm

import (
	"leafround/core/entry"
	"leafround/core/leaf"
)

// Paddock is one paddock with all that happened to it.
type Paddock struct {
	Name     string
	Area     entry.Hectares // 0 where not told
	Grass    entry.Grass    // empty where not told
	OnlyMob  string         // the only mob that may graze it, by the register
	Boundary string         // as sent
	Listed   bool           // in the register; else only named in an entry
	Retired  bool           // left the farm, or lives on in others

	Stays    []Stay      // the stock in it now
	Regrowth Regrowth    // since when it grows
	Counts   []Counted   // of this regrowth, oldest first
	Every    []Counted   // every count, oldest first
	Closed   entry.Date  // the canopy closed in this regrowth; zero where not
	Holds    []Held      // every hold, ended ones too, oldest first
	Grazings []Grazing   // every grazing that ended, oldest first
	Cuts     []Cutting   // every cut, oldest first
	LastSeen entry.Date  // the latest day that anything was logged about it
	from     []forebear  // the paddocks whose history it carries on
	key      int         // the order in which paddocks came to be known
	items    []item      // what was logged about it, in order
	heirs    bool        // others carry its history on
	events   []paceEvent // what it means to the estimator
	untold   bool        // the estimator has not heard yet
	dirty    bool        // items changed since the last walk
	walk     *walk       // as it ended; nil: from the start
	walked   int         // items that it has gone through
	remarks  map[int64][]Remark
}

// Habit gives the habit of the paddock's grass.
func (p *Paddock) Habit() leaf.Habit { return leaf.Of(p.Grass) }

// Stay is stock that is in a paddock.
type Stay struct {
	Mob   string // "" where not told
	Since entry.Date
	Head  int  // animals, where told
	Back  bool // behind a back fence
	ID    int64
	Met   []Counted // counts of the day it began, sent before
	mob   *Mob
}

// Regrowth tells since when a paddock grows and from what. Since is zero where
// it was never grazed in the log.
type Regrowth struct {
	Since  entry.Date
	Cut    entry.CutKind   // what began it, where that was a cut
	Share  float64         // of the paddock that began anew (0–1]
	Start  entry.LeafStage // what a lax residual left standing
	Strips int             // days over which it was grazed behind a back fence; 0 where all at once
	ID     int64           // the entry that began it
	Asked  bool            // began by "last grazed", a date from memory
}

// Counted is a leaf count of this regrowth, scored by the farm's rule.
type Counted struct {
	entry.Count
	ID       int64
	MemberID int64
	Member   string
	Since    entry.Date // the regrowth it was taken in began; zero where unknown
	Repeat   bool       // told before, by the same person on the same day: it weighs no more
}

// LastCount gives the latest count of this regrowth.
func (p *Paddock) LastCount() (Counted, bool) {
	if len(p.Counts) == 0 {
		return Counted{}, false
	}
	return p.Counts[len(p.Counts)-1], true
}

// Grazed tells whether the log knows when it was last grazed or cut.
func (p *Paddock) Grazed() bool { return !p.Regrowth.Since.IsZero() }

// Days gives the days from the start of regrowth to a day, 0 where unknown.
func (p *Paddock) Days(on entry.Date) int {
	if !p.Grazed() || on < p.Regrowth.Since {
		return 0
	}
	return on.Sub(p.Regrowth.Since)
}

// Occupied tells whether stock are in it.
func (p *Paddock) Occupied() bool { return len(p.Stays) > 0 }

// Has tells whether that mob is in it.
func (p *Paddock) Has(mob string) bool {
	for _, s := range p.Stays {
		if entry.FoldName(s.Mob) == entry.FoldName(mob) {
			return true
		}
	}
	return false
}

// Active tells whether the paddock is one of the farm now.
func (p *Paddock) Active() bool { return !p.Retired }
