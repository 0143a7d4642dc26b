package pace

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// sight is one count as a likelihood over the paddock's true leaf stage.
type sight struct {
	mean  float64 // leaves, as counted
	sd    float64 // of the mean
	live  float64 // leaves that stay alive
	floor bool    // most tillers were past their last live leaf
	odd   float64 // part of counts that cannot fit
}

// within is how much the tillers of a paddock lie apart where their leaves
// stop: it rounds the corner at the last live leaf (ours).
const within = 0.3

// expect gives the mean that tillers show at a true stage: each shows its own
// stage or its live leaves, whichever is less. For a normal spread σ about S
// and a cap K this is S − σ[d Φ(d) + φ(d)], d = (S−K)/σ.
func (v sight) expect(stage float64) float64 {
	d := (stage - v.live) / within
	switch {
	case d > 8: // far past: the formula would take one big number from another
		return v.live
	case d < -6: // far below: nothing is cut off
		return stage
	}
	return stage - within*(d*distuv.UnitNormal.CDF(d)+distuv.UnitNormal.Prob(d))
}

// likely gives the likelihood of the count at a true stage, without and with
// the part that cannot fit. That part is flat over what anyone could write.
func (v sight) likely(stage float64) (fit, all float64) {
	if v.floor {
		fit = distuv.UnitNormal.CDF((stage - v.mean) / v.sd)
	} else {
		e := (min(v.mean, v.live) - v.expect(stage)) / v.sd
		fit = math.Exp(-e*e/2) / (v.sd * math.Sqrt(2*math.Pi))
	}
	flat := 1 / (v.live + 1)
	return fit, (1-v.odd)*fit + v.odd*flat
}

// belief is a normal distribution of log stage.
type belief struct{ mean, v float64 }

// nodes gives how finely a belief is summed, across six standard deviations
// either way: five steps to two standard deviations of the count.
func (v sight) nodes(b belief) int {
	stage := min(max(math.Exp(b.mean), v.mean, 0.5), v.live)
	return min(max(int(30*math.Sqrt(b.v)*stage/v.sd), 60), 400)
}

// meet gives the belief after a count, by summing over a grid (assumed density
// filtering: the first two moments are kept), the chance that the count
// cannot fit, and its likelihood.
func (v sight) meet(b belief) (after belief, odd, chance float64) {
	sd := math.Sqrt(b.v)
	var w, fits, all0, m1, m2 float64
	nodes := v.nodes(b)
	for i := range nodes + 1 {
		u := 12 * (float64(i)/float64(nodes) - 0.5)
		fit, all := v.likely(math.Exp(b.mean + sd*u))
		prior := math.Exp(-u * u / 2)
		w += prior * all
		all0 += prior
		fits += prior * (1 - v.odd) * fit
		m1 += prior * all * u
		m2 += prior * all * u * u
	}
	m1, m2 = m1/w, m2/w
	return belief{mean: b.mean + sd*m1, v: min(b.v*max(m2-m1*m1, 1e-6), b.v)}, 1 - fits/w, w / all0
}
