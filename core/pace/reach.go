package pace

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"

	"leafround/core/entry"
)

// Forecast is the day on which a stage is reached, and its 80 % interval.
type Forecast struct{ On, Low, High entry.Date }

// Reach gives the day, never before the estimate's, on which a paddock reaches
// a leaf stage; false where nothing can be said: never counted and never
// grazed, mostly reproductive, or not within a year.
func (e *Estimate) Reach(paddock string, to entry.LeafStage) (Forecast, bool) {
	i, ok := e.going(paddock)
	if !ok || e.views[0].s.plots[i].repro || to <= 0 {
		return Forecast{}, false
	}
	on, ok := e.quantile(i, float64(to), 0.5)
	if !ok {
		return Forecast{}, false
	}
	low, _ := e.quantile(i, float64(to), 0.1)
	high, ok := e.quantile(i, float64(to), 0.9)
	if !ok {
		high = horizon
	}
	l, h := e.whole(i, float64(to), low, high)
	mid := int(math.Round(on))
	return Forecast{On: e.day.Add(mid), Low: e.day.Add(min(l, mid)), High: e.day.Add(max(h, mid))}, true
}

// chance gives the probability that a stage is reached by k days ahead.
func (e *Estimate) chance(i int, to float64, k int) (sum float64) {
	for j, v := range e.views {
		if e.weight[j] > 0.001 {
			sum += e.weight[j] * v.chance(i, to, k)
		} else {
			sum += e.weight[j] * e.main().chance(i, to, k)
		}
	}
	return sum
}

// chance gives the same as one temper sees it.
func (e *view) chance(i int, to float64, k int) float64 {
	b := e.on(i, k)
	d := b.mean - math.Log(to)
	if b.v <= 0 || math.IsInf(d, -1) {
		if d >= 0 {
			return 1
		}
		return 0
	}
	return distuv.UnitNormal.CDF(d / math.Sqrt(b.v))
}

// quantile gives the days ahead by which a stage is reached with a probability,
// in a straight line within a day.
func (e *Estimate) quantile(i int, to, q float64) (float64, bool) {
	was := e.chance(i, to, 0)
	if was >= q {
		return 0, true
	}
	for k := 1; k <= horizon; k++ {
		now := e.chance(i, to, k)
		if now >= q {
			return float64(k-1) + (q-was)/(now-was), true
		}
		was = now
	}
	return 0, false
}

// by gives the probability that a stage is reached by a moment ahead.
func (e *Estimate) by(i int, to, t float64) float64 {
	if t < 0 {
		return 0
	}
	k := int(t)
	a, b := e.chance(i, to, k), e.chance(i, to, k+1)
	return a + (t-float64(k))*(b-a)
}

// whole gives the two whole days around a low and a high moment between which,
// both included, the chance is nearest to 80 %: a day stands for half a day
// either way.
func (e *Estimate) whole(i int, to, low, high float64) (l, h int) {
	best := math.Inf(1)
	for a := int(low); a <= int(low)+1; a++ {
		for b := max(int(high), a); b <= max(int(high)+1, a); b++ {
			from := 0.0
			if a > 0 {
				from = e.by(i, to, float64(a)-0.5)
			}
			if d := math.Abs(e.by(i, to, float64(b)+0.5) - from - 0.8); d < best {
				best, l, h = d, a, b
			}
		}
	}
	return l, h
}
