package leaf

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"

	"leafround/core/entry"
)

// Spread is the standard deviation between the tillers of one paddock, as known
// before a sample is looked at, and how many tillers that knowledge is worth.
type Spread struct {
	SD    float64 // leaves
	Worth float64 // tillers
}

// Usual is the spread taken for granted: no published figure was found; 0.45
// leaf, worth five tillers, is ours (0.29 comes from phase alone, 0.32 with
// rounding to half leaves).
var Usual = Spread{SD: 0.45, Worth: 5}

// Enough is the least number of tillers that makes a count worth its name (6
// to 10: common practice, no source).
const Enough = 6

// untoldWorth is how many tillers an average is taken to stand for when its
// number was not told (ours: a look at three).
const untoldWorth = 3

// Sample is what a count says about its paddock's mean leaf stage.
type Sample struct {
	Mean, Low, High float64 // leaves; the 95 % interval of the mean
	SD              float64 // between tillers, pooled with what was known before
	SE              float64 // of the mean
	Own             float64 // between tillers, from this sample alone; 0 where it cannot be told
	N               int     // tillers behind the mean; 0 where not told
	Freedom         float64 // degrees of freedom of SD
	Enough          bool
	Floor           bool // most scores are floors: this many leaves or more
	Reproductive    bool // most of the tillers pulled were reproductive
}

// Measure gives the mean of a count with its interval, by Student's t on the
// pooled degrees of freedom: eight equal scores do not mean certainty.
func Measure(c entry.Count, prior Spread) Sample {
	s := Sample{Mean: float64(c.Mean), N: c.N, Enough: c.N >= Enough}
	s.Floor = c.Past > 0 && 2*c.Past > c.N
	s.Reproductive = c.Skipped.Reproductive > 0 && 2*c.Skipped.Reproductive > c.N+c.Skipped.Total()
	s.Own = own(c.Tillers)
	between := float64(max(len(c.Tillers)-1, 0))
	s.Freedom = prior.Worth + between
	s.SD = math.Sqrt((prior.Worth*prior.SD*prior.SD + between*s.Own*s.Own) / s.Freedom)
	n := float64(c.N)
	if c.N == 0 {
		n = untoldWorth
	}
	s.SE = s.SD / math.Sqrt(n)
	half := Quantile(0.975, s.Freedom) * s.SE
	s.Low, s.High = max(s.Mean-half, 0), s.Mean+half
	return s
}

// Pool adds the spread between one count's tillers to what is known of the
// farm's, keeping at most a hundred tillers' worth, so that it can still move
// (ours).
func (p Spread) Pool(tillers []entry.LeafStage) Spread {
	more := float64(len(tillers) - 1)
	if more <= 0 {
		return p
	}
	sd := own(tillers)
	v := (p.Worth*p.SD*p.SD + more*sd*sd) / (p.Worth + more)
	return Spread{SD: math.Sqrt(v), Worth: min(p.Worth+more, 100)}
}

// Quantile gives the q-quantile of Student's t.
func Quantile(q, freedom float64) float64 {
	return distuv.StudentsT{Mu: 0, Sigma: 1, Nu: freedom}.Quantile(q)
}

// own gives the sample standard deviation (n − 1), 0 for fewer than two.
func own(tillers []entry.LeafStage) float64 {
	n := float64(len(tillers))
	if n < 2 {
		return 0
	}
	mean, ss := 0.0, 0.0
	for _, t := range tillers {
		mean += float64(t) / n
	}
	for _, t := range tillers {
		ss += (float64(t) - mean) * (float64(t) - mean)
	}
	return math.Sqrt(ss / (n - 1))
}
