package pace

import (
	"math"

	"leafround/core/entry"
)

// Why is what an estimate rests on, as values for a reply to word.
type Why struct {
	Counts    int        // counts of this regrowth
	Last      entry.Date // the last of them; zero where none
	Seen      float64    // its mean
	Expected  float64    // the stage that was expected of it, before it was seen
	Since     entry.Date // regrowth began; zero where not known
	Start     float64    // leaves it began with
	Pace      Pace
	Farm      Pace    // the farm's mean
	Season    float64 // days per leaf by the rule of thumb for the place and day
	FarmCount int     // counts on the whole farm so far
	Own       float64 // the paddock's pace as a part of the farm's: 1.1 is a tenth faster
	Warmth    float64 // pace by the warmth told, as a part of normal; 1 where none is told
	Dryness   float64 // pace by the dryness reckoned, as a part of moist; 1 where none is
	Degrees   float64 // °C·d since regrowth began, where every day's warmth was told; else 0
	PerLeaf   float64 // °C·d that a leaf of this grass takes, roughly
	Odd       string  // why the last count cannot fit
}

// Why explains a paddock's estimate, or with "" the farm's.
func (e *Estimate) Why(paddock string) Why {
	v := e.main()
	w := Why{Pace: e.Pace(paddock), Farm: e.Pace(""), Own: 1, FarmCount: v.s.counts,
		Season:  math.Exp(-v.m.site.season(e.day)),
		Warmth:  math.Exp(v.warmth * v.s.x[atWarmth]),
		Dryness: math.Exp(v.dryness * v.s.x[atDryness])}
	if i, ok := e.at[paddock]; ok {
		p := v.s.plots[i]
		w.Counts, w.Last, w.Seen, w.Expected = p.looks, p.last, p.seen, p.hoped
		w.Since, w.Start, w.Odd = p.since, p.start, p.odd
		w.PerLeaf = v.m.grasses[i].habit.DegreeDays
		if p.since != 0 && v.s.sky.gap < p.since {
			w.Degrees = v.s.sky.sum - p.warmth
		}
		w.Own = math.Exp(v.s.x[own(i)] + v.m.grasses[i].offset())
	}
	return w
}
