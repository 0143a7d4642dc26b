package leaf_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"leafround/core/entry"
	"leafround/core/leaf"
)

func count(scores ...entry.LeafStage) entry.Count {
	c := entry.Count{Tillers: scores, N: len(scores)}
	for _, s := range scores {
		c.Mean += s / entry.LeafStage(len(scores))
	}
	return c
}

// Two-sided 95 % (0.975) and 80 % (0.9) points of Student's t, as printed in
// the common tables (from memory, three decimals); the last line is the
// normal's.
func TestQuantilesAgainstAPrintedTable(t *testing.T) {
	for freedom, want := range map[float64][2]float64{
		1: {12.706, 3.078}, 2: {4.303, 1.886}, 4: {2.776, 1.533}, 5: {2.571, 1.476},
		7: {2.365, 1.415}, 9: {2.262, 1.383}, 10: {2.228, 1.372}, 14: {2.145, 1.345},
		19: {2.093, 1.328}, 30: {2.042, 1.310}, 120: {1.980, 1.289}, 1e7: {1.960, 1.282},
	} {
		assert.InDelta(t, want[0], leaf.Quantile(0.975, freedom), 0.0006, "%g", freedom)
		assert.InDelta(t, want[1], leaf.Quantile(0.9, freedom), 0.0006, "%g", freedom)
		assert.InDelta(t, 0.975, distuv.StudentsT{Sigma: 1, Nu: freedom}.CDF(leaf.Quantile(0.975, freedom)), 1e-9)
	}
	assert.InDelta(t, 1.959963984540054, distuv.UnitNormal.Quantile(0.975), 1e-12)
	assert.InDelta(t, 1.2815515655446004, distuv.UnitNormal.Quantile(0.9), 1e-12)
}

// With a standard deviation of 0.5 and no prior: half-widths 0.62 (n=5), 0.42
// (8), 0.36 (10), 0.23 (20) (field guide: ours).
func TestHalfWidths(t *testing.T) {
	for n, want := range map[int]float64{5: 0.62, 8: 0.42, 10: 0.36, 20: 0.23} {
		c := spread(n, 2, 0.5)
		s := leaf.Measure(c, leaf.Spread{})
		assert.InDelta(t, 0.5, s.SD, 1e-9)
		assert.InDelta(t, want, s.High-s.Mean, 0.005, "n=%d", n)
		assert.InDelta(t, want, s.Mean-s.Low, 0.005, "n=%d", n)
	}
}

// spread gives a count of n tillers with a mean and a standard deviation.
func spread(n int, mean, sd float64) entry.Count {
	x := make([]float64, n)
	for i := range x {
		x[i] = float64(i)
	}
	m, s := stat.MeanStdDev(x, nil)
	scores := make([]entry.LeafStage, n)
	for i := range x {
		scores[i] = entry.LeafStage(mean + sd*(x[i]-m)/s)
	}
	return count(scores...)
}

// 1 2 2 1 1 2 2 1: the sample's own deviation is √(2/7) = 0.5345 (gonum agrees);
// pooled with 0.45 worth five: √((5·0.45² + 7·0.2857)/12) = 0.5011; 12 degrees of
// freedom: t 2.179 (printed table); half-width 2.179 · 0.5011/√8 = 0.386.
func TestMeasurePools(t *testing.T) {
	s := leaf.Measure(count(1, 2, 2, 1, 1, 2, 2, 1), leaf.Usual)
	assert.InDelta(t, stat.StdDev([]float64{1, 2, 2, 1, 1, 2, 2, 1}, nil), s.Own, 1e-12)
	assert.InDelta(t, 0.5011, s.SD, 0.0001)
	assert.Equal(t, 12.0, s.Freedom)
	assert.InDelta(t, 0.386, s.High-1.5, 0.001)
	assert.True(t, s.Enough)
}

// Eight equal scores do not mean certainty.
func TestEqualScores(t *testing.T) {
	s := leaf.Measure(count(2, 2, 2, 2, 2, 2, 2, 2), leaf.Usual)
	assert.Zero(t, s.Own)
	assert.Greater(t, s.High-s.Low, 0.3)
}

func TestAverages(t *testing.T) {
	told := leaf.Measure(entry.Count{Mean: 2.5, N: 8}, leaf.Usual)
	untold := leaf.Measure(entry.Count{Mean: 2.5}, leaf.Usual)
	assert.InDelta(t, 0.45/math.Sqrt(8), told.SE, 1e-12)
	assert.Greater(t, untold.SE, told.SE)
	assert.False(t, untold.Enough)
	low := leaf.Measure(entry.Count{Mean: 0.1, N: 2}, leaf.Usual)
	assert.Zero(t, low.Low, "no less than nothing")
}

func TestFloorAndReproductive(t *testing.T) {
	c := count(3, 3, 3, 2)
	c.Past = 2
	assert.False(t, leaf.Measure(c, leaf.Usual).Floor, "half is not most")
	c.Past = 3
	assert.True(t, leaf.Measure(c, leaf.Usual).Floor)
	c.Skipped.Reproductive = 4
	assert.False(t, leaf.Measure(c, leaf.Usual).Reproductive, "4 of 8")
	c.Skipped.Reproductive = 5
	assert.True(t, leaf.Measure(c, leaf.Usual).Reproductive)
	c.Skipped.Daughter = 3
	assert.False(t, leaf.Measure(c, leaf.Usual).Reproductive, "5 of 12")
}

// The farm's own spread takes over from the prior, and stays movable.
func TestPool(t *testing.T) {
	p := leaf.Usual
	for range 40 {
		p = p.Pool(spread(8, 2, 0.6).Tillers)
	}
	assert.InDelta(t, 0.6, p.SD, 0.01)
	assert.Equal(t, 100.0, p.Worth)
	assert.Equal(t, p, p.Pool(nil))
}
