package pace

import "math"

// ahead is one day to come: the season's part of log pace and how the farm's
// terms bear on it.
type ahead struct {
	season float64
	load   [farmTerms]float64
}

// How the weather's bearing is expected to wear off, days (ours): a warm spell
// lasts a week, a drought a month.
const (
	warmthLasts  = 8
	drynessLasts = 25
)

// outlook gives the k-th day after the estimate's. The day itself has the
// weather told so far; then it is expected to go back to normal.
func (e *view) outlook(k int) ahead {
	for len(e.days) <= k {
		n := len(e.days)
		s := &state{day: e.s.day.Add(n), x: e.s.x[:farmTerms]}
		a := ahead{season: e.m.site.season(s.day)}
		_, a.load = e.m.loads(s)
		a.load[atWarmth] = e.warmth * math.Exp(-float64(n)/warmthLasts)
		a.load[atDryness] = e.dryness * math.Exp(-float64(n)/drynessLasts)
		e.days = append(e.days, a)
	}
	return e.days[k]
}
