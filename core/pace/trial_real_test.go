package pace_test

import (
	"math"
	"math/rand/v2"
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
	"leafround/core/pace"
	"leafround/core/pace/weather"
)

// The season trial's second world: leaves that answer to four real years of
// weather at Seattle (testdata/published/seattle-weather.md) through a law of
// another form than the estimator's. Warmth bears by the beta function of crop
// models (Yin et al. 1995, from memory) on a week's mean; dryness by a smooth
// step of a leaking store that dries by Hamon's day-length law (Hamon 1961, from
// memory), and the lengthening day hastens leaves. The figures are ours.
type realDay struct{ least, most, rain float64 }

func readSeattle(t *testing.T) []realDay {
	text, err := os.ReadFile("../../testdata/published/seattle-weather.csv")
	require.NoError(t, err)
	days := make([]realDay, 1461)
	first := entry.NewDate(2012, 1, 1)
	for _, e := range weather.Read(string(text)).Entries {
		d := &days[e.On().Sub(first)]
		switch e := e.(type) {
		case entry.Temperature:
			d.least, d.most = *e.Min, *e.Max
		case entry.Rain:
			d.rain = e.Mm
		}
	}
	return days
}

// beta is 0 at 0 and 34 °C, 1 at 20 °C.
func beta(c float64) float64 {
	const top, hot = 20.0, 34.0
	if c <= 0 || c >= hot {
		return 0
	}
	return (hot - c) / (hot - top) * math.Pow(c/top, top/(hot-top))
}

// daylength gives hours, by a sine of the day of the northern year.
func daylength(i int) float64 { return 12.2 + 3.8*math.Sin(2*math.Pi*float64(i-80)/365.25) }

// answer gives leaves a day for each real day, for a paddock of the usual kind.
func answer(days []realDay, depth float64) []float64 {
	rates := make([]float64, len(days))
	store, warm := 0.8*depth, 5.0
	for i, d := range days {
		mean := (d.least + d.most) / 2
		warm += (mean - warm) / 7
		vapour := 0.611 * math.Exp(17.27*mean/(mean+237.3))
		loss := 29.8 * daylength(i) * vapour / (mean + 273.2) * min(1, 1.4*store/depth)
		store = min(max(store+d.rain-loss, 0), depth)
		moist := 1 / (1 + math.Exp(-12*(store/depth-0.28)))
		longer := 1 + 0.15*math.Cos(2*math.Pi*float64(i-95)/365.25)
		rates[i] = 0.012 + 0.165*beta(warm)*(0.25+0.75*moist)*longer
	}
	return rates
}

// imagineReal draws a farm under the real sky: its soil, its paddocks, and what
// no weather explains.
func imagineReal(r *rand.Rand, days []realDay, from entry.Date, paddocks int) world {
	rates := answer(days, 60+60*r.Float64())
	w := world{from: from, tillers: 0.35 + 0.2*r.Float64(), live: 3, rates: make([][]float64, paddocks)}
	level, other := math.Exp(0.1*r.NormFloat64()), 0.0
	apart := 0.06 + 0.1*r.Float64()
	for range paddocks {
		w.fresh = append(w.fresh, 2.6*r.Float64())
	}
	better := make([]float64, paddocks)
	for p := range better {
		better[p] = 1 + apart*r.NormFloat64()
	}
	for d := range rates {
		other = 0.9*other + 0.1*math.Sqrt(1-0.81)*r.NormFloat64()
		for p := range w.rates {
			w.rates[p] = append(w.rates[p], max(rates[d]*level*better[p]*(1+other+0.1*r.NormFloat64()), 0.001))
		}
	}
	return w
}

// tellSky logs the weather of the days up to, not including, a day.
func tellSky(k *pace.Keeper, days []realDay, from entry.Date, told, day int) int {
	for ; told < day; told++ {
		d := days[told]
		k.Add(pace.Event{ID: int64(1000000 + told), Day: from.Add(told),
			Do: &pace.Weather{Min: &d.least, Max: &d.most, Rain: &d.rain}})
	}
	return told
}
