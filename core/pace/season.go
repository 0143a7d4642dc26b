package pace

import (
	"math"
	"time"

	"leafround/core/entry"
)

// Site is where the farm lies, as far as known.
type Site struct {
	Lat    float64 // degrees, south negative; only where Placed
	Placed bool
	South  bool // southern hemisphere, from the latitude or else from the zone
}

// latitude gives the latitude to reckon with: 40° of the right sign where the
// farm has no position (ours: between the regions that our rules come from).
func (s Site) latitude() float64 {
	switch {
	case s.Placed:
		return s.Lat
	case s.South:
		return -40
	}
	return 40
}

// year gives the days in a year, by the Gregorian calendar's mean.
const year = 365.2425

// winterDay gives the days from the last winter solstice to a day (0 to 365),
// in the site's hemisphere.
func (s Site) winterDay(day entry.Date) float64 {
	solstice := entry.NewDate(2000, time.December, 21)
	if s.latitude() < 0 {
		solstice = entry.NewDate(2000, time.June, 21)
	}
	d := math.Mod(float64(day.Sub(solstice)), year)
	if d < 0 {
		d += year
	}
	return d
}

// season gives the log of leaves a day that the rules of thumb lead one to
// expect, before a farm has counted anything.
//
// The rules: 6–10 days a leaf in spring, 20–35 in winter (common practice, no
// source); Ireland (52° N): 7–8 in May and June, 30–40 in early spring (Teagasc
// 2019); Victoria (38° S), early winter: 15 (Agriculture Victoria 2020). At one
// temperature growth is faster in spring than in autumn (altitude study,
// mid-Wales 1973–74), so the year rises in four months and falls in eight.
//
// The curve through them is ours: a cosine that is stretched so, between a
// slowest and a fastest number of days that both lie further from the equator's
// as latitude grows.
func (s Site) season(day entry.Date) float64 {
	far := s.far()
	trough := 18 + 1.5*far
	peak := 135 + 1.6*far
	rise := peak - trough
	since := math.Mod(s.winterDay(day)-trough+year, year)
	angle := math.Pi * since / rise
	if since > rise {
		angle = math.Pi * (1 + (since-rise)/(year-rise))
	}
	mid, half := s.middle()
	return mid - half*math.Cos(angle)
}

// far gives how much farther from the equator a site lies than 37°, degrees,
// within what the rules of thumb reach.
func (s Site) far() float64 { return min(max(math.Abs(s.latitude()), 20), 60) - 37 }

// middle gives the middle of log pace over the year, and half its range.
func (s Site) middle() (mid, half float64) {
	fastest, slowest := math.Log(7.5), math.Log(22)+0.04*s.far()
	return -(fastest + slowest) / 2, (slowest - fastest) / 2
}

// turn gives the angle of a day in the year, for the farm's own season.
func (s Site) turn(day entry.Date) float64 { return 2 * math.Pi * s.winterDay(day) / year }
