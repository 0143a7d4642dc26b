package pace_test

import (
	"math"
	"math/rand/v2"

	"leafround/core/entry"
)

// happened is one line of an invented farm's diary: a grazing, or a count with
// what was true then.
type happened struct {
	day     int
	paddock int
	count   *entry.Count // nil: a grazing
	stage   float64      // at a count: the true leaf stage
	due     float64      // at a count: the true moment of 2.5 leaves, days from the first
	asked   bool         // a forecast is scored here: 2.5 was still to come and does come
}

// manner is how a team counts.
type manner struct {
	name        string
	every       int     // days between leaf walks
	chance      float64 // that a paddock with leaves to count is counted
	least, most int     // tillers
}

var (
	dense  = manner{"dense", 7, 0.8, 6, 10}
	sparse = manner{"sparse", 14, 0.3, 5, 8}
)

// keepDiary runs a farm through its world: grazes what has about 2.2 to 3
// leaves, and counts as its manner is. What happened in the first skip days is
// not written down.
func keepDiary(r *rand.Rand, w world, m manner, skip int) []happened {
	var diary []happened
	stage := append([]float64(nil), w.fresh...)
	at := make([]float64, len(stage))
	for p := range at {
		at[p] = 2.2 + 0.8*r.Float64()
	}
	for d := range w.rates[0] {
		for p := range stage {
			if d >= skip && d%m.every == 0 && stage[p] > 0.8 && r.Float64() < m.chance {
				diary = append(diary, countOf(r, w, m, d, p, stage[p]))
			}
			if stage[p] >= at[p] {
				stage[p], at[p] = 0, 2.2+0.8*r.Float64()
				if d >= skip {
					diary = append(diary, happened{day: d, paddock: p})
				}
			}
			stage[p] += w.rates[p][d]
		}
	}
	return diary
}

// countOf pulls tillers: each shows its own stage to the quarter, three leaves
// at most; one that is well past them is mostly seen to yellow.
func countOf(r *rand.Rand, w world, m manner, d, p int, stage float64) happened {
	c := &entry.Count{Date: w.from.Add(d), N: m.least + r.IntN(m.most-m.least+1)}
	for range c.N {
		s := stage + w.tillers*r.NormFloat64()
		if s > w.live+0.3 && r.Float64() < 0.7 {
			c.Past++
		}
		s = math.Round(4*min(max(s, 0), w.live)) / 4
		c.Tillers = append(c.Tillers, entry.LeafStage(s))
		c.Mean += entry.LeafStage(s / float64(c.N))
	}
	h := happened{day: d, paddock: p, count: c, stage: stage}
	h.due, h.asked = w.reaches(p, d, stage, 2.5)
	h.asked = h.asked && stage < 2.5
	return h
}

// paper is pen and paper: days since grazing ÷ leaf stage, and a straight line
// from there (common practice).
func paper(day, grazed int, mean float64) float64 {
	perLeaf := float64(day-grazed) / mean
	return float64(day) + max(2.5-mean, 0)*perLeaf
}
