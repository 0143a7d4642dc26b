package pace

import (
	"math"

	"leafround/core/entry"
	"leafround/core/leaf"
	"leafround/core/pace/water"
)

// sky is the weather as the state carries it from day to day.
type sky struct {
	today   Weather
	warmC   float64    // °C: air, smoothed over some days
	warmWas float64    // the same before that day
	warmD   entry.Date // the last day that told it
	soilC   float64    // °C
	soilD   entry.Date
	store   water.Bucket
	rainD   entry.Date // the last day that told rain
	begun   bool       // rain has been told at all
	sum     float64    // degree-days so far, °C·d
	gap     entry.Date // the last day whose warmth was not told
}

// How long the last word on warmth and rain holds, days (ours): a dry month
// has no rain to tell, a month without warmth does not exist.
const (
	warmHolds = 4
	soilHolds = 7
	rainHolds = 30
)

// The root zone: 0.5 m of a loam (θFC 0.32, θWP 0.15) hold 85 mm (ours, with
// FAO-56's least root depth for rotated grazing), of which 0.60 are used
// without stress (FAO-56, Table 22).
var (
	rootZone  = water.TotalAvailable(0.32, 0.15, 0.5)
	depletion = 0.60
)

// parched is the part of leaf rate that is left where the root zone is dry (ours).
const parched = 0.25

// normal gives the mean air temperature to expect on a day at a latitude, °C: a
// coarse fit to temperate maritime places (from memory), a cosine with its top
// five weeks after midsummer.
func (s Site) normal(day entry.Date) float64 {
	far := min(max(math.Abs(s.latitude()), 15), 60) - 37
	top := year/2 + 35
	return 14 - 0.25*far + (5+0.05*far)*math.Cos(2*math.Pi*(s.winterDay(day)-top)/year)
}

// response gives leaves a day by temperature as a part of those at 14 °C: a
// straight line to about 14 °C (Davies & Thomas 1983), level to 18 and falling
// beyond (ours); never quite nothing.
func response(celsius float64) float64 {
	switch {
	case celsius <= 14:
		return max(celsius/14, 0.1)
	case celsius <= 18:
		return 1
	}
	return max(1-(celsius-18)/20, 0.3)
}

// warm tells whether the warmth of a day is known.
func (k *sky) warm(day entry.Date) bool {
	return k.warmD != 0 && day.Sub(k.warmD) <= warmHolds ||
		k.soilD != 0 && day.Sub(k.soilD) <= soilHolds
}

// bearing gives the two weather terms of log pace on a day: how much faster
// than at the normal temperature, and how much slower than without stress. Both
// are 0 where nothing is told. That Ks of FAO-56 slows leaves as it slows
// evapotranspiration is our choice: no published multiplier was found.
func (k *sky) bearing(site Site, day entry.Date) (warmth, dryness float64) {
	if k.warm(day) {
		c := k.warmC
		if k.soilD != 0 && day.Sub(k.soilD) <= soilHolds {
			c = k.soilC
		}
		warmth = math.Log(response(c) / response(site.normal(day)))
	}
	if k.begun && day.Sub(k.rainD) <= rainHolds {
		dryness = parch(k.store)
	}
	return warmth, dryness
}

// parch gives the log of the stress on leaf rate: no drought stops leaves
// wholly.
func parch(store water.Bucket) float64 { return math.Log(parched + (1-parched)*store.Stress()) }

// tell takes a day's weather as far as told.
func (k *sky) tell(day entry.Date, w *Weather) {
	k.today = merge(k.today, *w)
	if w.Rain != nil && !k.begun {
		k.begun, k.store = true, water.Bucket{TAW: rootZone, P: depletion, Depletion: rootZone * 0.3}
	}
	if w.Rain != nil {
		k.rainD = day
	}
	if w.Soil != nil {
		k.soilC, k.soilD = *w.Soil, day
	}
	if c, ok := k.today.air(); ok {
		k.feel(day, c)
	}
}

// feel smooths the air's warmth over some days, half of it new each day; a later
// word on the same day replaces the earlier.
func (k *sky) feel(day entry.Date, c float64) {
	if k.warmD != day {
		k.warmWas = k.warmC
		if k.warmD == 0 || day.Sub(k.warmD) > warmHolds {
			k.warmWas = c
		}
		k.warmD = day
	}
	k.warmC = (k.warmWas + c) / 2
}

// pass closes a day: its rain and evapotranspiration go through the soil.
func (k *sky) pass(site Site, day entry.Date) {
	if k.begun {
		rain := 0.0
		if k.today.Rain != nil {
			rain = *k.today.Rain
		}
		k.store.Day(rain, k.thirst(site, day))
	}
	if c, ok := k.today.air(); ok {
		k.sum += leaf.DegreeDays(c, c)
	} else {
		k.gap = day
	}
	k.today = Weather{}
}

// thirst gives the day's reference evapotranspiration, mm, from the day's
// temperatures or else the normal ones with a span of 10 °C (ours).
func (k *sky) thirst(site Site, day entry.Date) float64 {
	mean := site.normal(day)
	least, most := mean-5, mean+5
	if k.today.Min != nil && k.today.Max != nil {
		least, most = *k.today.Min, *k.today.Max
	}
	return water.Hargreaves(least, most, water.Radiation(site.latitude(), day.Time().YearDay()))
}

// air gives the mean air temperature that was told.
func (w *Weather) air() (float64, bool) {
	switch {
	case w.Min != nil && w.Max != nil:
		return (*w.Min + *w.Max) / 2, true
	case w.Mean != nil:
		return *w.Mean, true
	}
	return 0, false
}

// merge adds a later word on a day to an earlier one.
func merge(a, b Weather) Weather {
	if b.Rain != nil {
		mm := *b.Rain
		if a.Rain != nil {
			mm += *a.Rain
		}
		a.Rain = &mm
	}
	a.Min, a.Max = or(b.Min, a.Min), or(b.Max, a.Max)
	a.Mean, a.Soil = or(b.Mean, a.Mean), or(b.Soil, a.Soil)
	return a
}

func or(a, b *float64) *float64 {
	if a != nil {
		return a
	}
	return b
}
