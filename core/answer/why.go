package answer

import (
	"leafround/core/entry"
	"leafround/core/farm"
)

// Why is what an estimate rests on.
type Why struct {
	Counts    int        `json:"counts"` // of this regrowth
	Last      entry.Date `json:"last_count,omitzero"`
	Seen      float64    `json:"last_mean,omitempty"`
	Since     entry.Date `json:"since,omitzero"`
	Start     float64    `json:"start,omitempty"` // leaves it began with, after a lax residual
	Pace      float64    `json:"pace"`            // days per leaf
	Farm      float64    `json:"farm_pace"`
	Season    float64    `json:"season_pace"` // rule of thumb for the place and day
	FarmCount int        `json:"farm_counts"`
	Faster    float64    `json:"faster,omitempty"`  // percent faster than the farm
	Slower    float64    `json:"slower,omitempty"`  // percent slower
	Warmth    float64    `json:"warmth,omitempty"`  // percent faster (or, negative, slower) by warmth told
	Dryness   float64    `json:"dryness,omitempty"` // percent slower by dryness
	Odd       string     `json:"odd,omitempty"`
}

// least is the difference, in percent, below which none is told (ours).
const least = 3

// whyOf gives what an estimate rests on; "" is the farm's.
func whyOf(f *farm.Farm, paddock string, day entry.Date) *Why {
	w := f.Estimate(day).Why(paddock)
	o := Why{Counts: w.Counts, Last: w.Last, Seen: w.Seen, Since: w.Since, Start: w.Start,
		Pace: w.Pace.DaysPerLeaf, Farm: w.Farm.DaysPerLeaf, Season: w.Season, FarmCount: w.FarmCount, Odd: w.Odd}
	if more := 100 * (w.Own - 1); more >= least {
		o.Faster = more
	} else if more <= -least {
		o.Slower = -more
	}
	if d := 100 * (w.Warmth - 1); d >= least || d <= -least {
		o.Warmth = d
	}
	if d := 100 * (1 - w.Dryness); d >= least {
		o.Dryness = d
	}
	return &o
}
