package pace_test

import (
	"math"
	"math/rand/v2"
	"time"

	"leafround/core/entry"
)

// The season trial's first world: invented farms whose leaves come by a table of
// the months. It shares neither code nor figures with the estimator. All its
// figures are ours, drawn to look like the rules of thumb at two places, not to
// fit the estimator's curve.
var months = map[bool][12]float64{ // days per leaf in the middle of each month
	true:  {11, 12.5, 13, 14, 17, 22, 25, 20, 13, 9, 8, 9},     // 38° S
	false: {40, 36, 26, 13, 8, 7.5, 9, 10.5, 12.5, 17, 26, 36}, // 52° N
}

// lore is what is true of one invented farm.
type lore struct {
	table              [12]float64 // days per leaf in the middle of each month
	pace, swing, shift float64     // the months' table made faster, steeper, later
	quick, quickKeep   float64     // day-to-day weather: deviation, and what a day keeps of it
	slow, slowKeep     float64     // spells of weeks
	apart              float64     // between paddocks
	tillers            float64     // between the tillers of one paddock, leaves
}

func drawLore(r *rand.Rand, south bool) lore {
	return lore{table: months[south], pace: 1 + 0.12*r.NormFloat64(), swing: 1 + 0.12*r.NormFloat64(),
		shift: 9 * r.NormFloat64(), quick: 0.12 + 0.12*r.Float64(), quickKeep: 0.75 + 0.17*r.Float64(),
		slow: 0.05 + 0.1*r.Float64(), slowKeep: 0.97 + 0.015*r.Float64(),
		apart: 0.06 + 0.1*r.Float64(), tillers: 0.35 + 0.2*r.Float64()}
}

// usualRate gives leaves a day before weather and paddock: the table, in
// straight lines between the middles of the months.
func (l lore) usualRate(day entry.Date) float64 {
	t := day.Time().AddDate(0, 0, -int(math.Round(l.shift)))
	mid := time.Date(t.Year(), t.Month(), 15, 0, 0, 0, 0, time.UTC)
	from, to := int(t.Month())-1, int(t.Month())
	if t.Before(mid) {
		from, to, mid = from-1, to-1, mid.AddDate(0, -1, 0)
	}
	part := t.Sub(mid).Hours() / 24 / 30.4
	d := l.table[(from+12)%12]*(1-part) + l.table[(to+12)%12]*part
	return l.pace / (12 * math.Pow(d/12, l.swing))
}

// world is how leaves truly come, for each paddock and day.
type world struct {
	from    entry.Date
	tillers float64
	live    float64
	rates   [][]float64 // by paddock, then day
	fresh   []float64   // by paddock: the stage on the first day
}

// imagine draws a world of a lore.
func imagine(r *rand.Rand, l lore, from entry.Date, paddocks, days int) world {
	w := world{from: from, tillers: l.tillers, live: 3, rates: make([][]float64, paddocks)}
	better := make([]float64, paddocks)
	for p := range better {
		better[p] = 1 + l.apart*r.NormFloat64()
		w.rates[p] = make([]float64, days)
		w.fresh = append(w.fresh, 2.6*r.Float64())
	}
	quick, slow := l.quick*r.NormFloat64(), l.slow*r.NormFloat64()
	for d := range days {
		quick = l.quickKeep*quick + l.quick*math.Sqrt(1-l.quickKeep*l.quickKeep)*r.NormFloat64()
		slow = l.slowKeep*slow + l.slow*math.Sqrt(1-l.slowKeep*l.slowKeep)*r.NormFloat64()
		farm := l.usualRate(from.Add(d)) * max(1+quick+slow, 0.15)
		for p := range w.rates {
			w.rates[p][d] = farm * better[p] * max(1+0.1*r.NormFloat64(), 0)
		}
	}
	return w
}

// reaches gives the moment, in days from the first, at which a paddock with a
// stage at the start of a day reaches another; false where the world ends first.
func (w world) reaches(p, day int, stage, to float64) (float64, bool) {
	for d := day; d < len(w.rates[p]); d++ {
		if stage+w.rates[p][d] >= to {
			return float64(d) + (to-stage)/w.rates[p][d], true
		}
		stage += w.rates[p][d]
	}
	return 0, false
}

// strange are farms that the rule of thumb gets wrong.
var strange = []struct {
	name string
	bend func(month int, days float64) float64
}{
	{"a third faster", func(_ int, d float64) float64 { return d * 0.65 }},
	{"half slower", func(_ int, d float64) float64 { return d * 1.5 }},
	{"no season: 12 days", func(int, float64) float64 { return 12 }},
	{"two months late", func(m int, _ float64) float64 { return months[true][(m+10)%12] }},
}

// bent gives a lore with its table bent.
func (l lore) bent(bend func(int, float64) float64) lore {
	for m, d := range l.table {
		l.table[m] = bend(m, d)
	}
	return l
}
