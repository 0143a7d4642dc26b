package leaf_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"leafround/core/entry"
	"leafround/core/leaf"
)

// The windows and live leaves of the field guide's sources: perennial ryegrass
// 3, 2–3 (Fulkerson & Donaghy 2001); annual and Italian 3, near 3 (NSW
// Government); fescue about 2.5 (from memory), 2–2.5 (Oregon State); cocksfoot
// 4–5 (10.1071/AR05130); prairie grass 3–4 (Turner et al. 2006); brome 3.5–4
// (Massey University thesis).
func TestHabits(t *testing.T) {
	for grass, want := range map[entry.Grass][3]entry.LeafStage{
		entry.Ryegrass: {3, 2, 3}, entry.AnnualRye: {3, 2.5, 3}, entry.ItalianRye: {3, 2.5, 3},
		entry.Fescue: {2.5, 2, 2.5}, entry.Cocksfoot: {4.5, 3.5, 4.5},
		entry.PrairieGrass: {4, 3, 4}, entry.Brome: {4, 3.5, 4},
	} {
		h := leaf.Of(grass)
		assert.Equal(t, want, [3]entry.LeafStage{h.Live, h.From, h.To}, grass)
		assert.True(t, h.Known)
		assert.True(t, h.From < h.Target && h.Target < h.To, grass)
	}
	assert.Equal(t, entry.LeafStage(2.5), leaf.Of(entry.Ryegrass).Target)
	for _, grass := range entry.Grasses() {
		assert.True(t, leaf.Of(grass).Known, "every grass that the log can name has a habit: %s", grass)
	}
}

func TestUnknownGrassIsRyegrass(t *testing.T) {
	for _, grass := range []entry.Grass{"", "moss"} {
		h := leaf.Of(grass)
		assert.False(t, h.Known)
		assert.Equal(t, entry.LeafStage(2.5), h.Target)
		assert.Equal(t, grass, h.Grass)
	}
}

// 110 °C·d: 22 days a leaf at 5 °C, 11 at 10, 7.3 at 15; 230 in tall fescue: 23
// at 10 °C (from memory: Lemaire; Colabelli et al. 1998).
func TestDaysPerLeafAtConstantTemperature(t *testing.T) {
	rye := leaf.Of(entry.Ryegrass)
	assert.InDelta(t, 22, rye.DaysPerLeaf(5), 1e-9)
	assert.InDelta(t, 11, rye.DaysPerLeaf(10), 1e-9)
	assert.InDelta(t, 7.3, rye.DaysPerLeaf(15), 0.05)
	assert.InDelta(t, 23, leaf.Of(entry.Fescue).DaysPerLeaf(10), 1e-9)
	assert.True(t, math.IsInf(rye.DaysPerLeaf(-3), 1))
	assert.Equal(t, 10.0, leaf.DegreeDays(4, 16))
	assert.Zero(t, leaf.DegreeDays(-8, 2))
}

func TestAdvise(t *testing.T) {
	rye, fescue := leaf.Of(""), leaf.Of(entry.Fescue)
	for _, c := range []struct {
		h      leaf.Habit
		stage  float64
		closed bool
		want   leaf.Advice
	}{
		{rye, 0, false, leaf.Wait}, {rye, 1.99, false, leaf.Wait}, {rye, 2, false, leaf.Ready},
		{rye, 2.9, false, leaf.Ready}, {rye, 3, false, leaf.Late}, {rye, 4, false, leaf.Late},
		{rye, 1.5, true, leaf.Canopy}, {rye, math.NaN(), false, leaf.Unknown}, {rye, -1, false, leaf.Unknown},
		{fescue, 2.4, false, leaf.Ready}, {fescue, 2.5, false, leaf.Late},
	} {
		assert.Equal(t, c.want, leaf.Advise(c.h, entry.LeafStage(c.stage), c.closed), "%v", c)
	}
}

// 15, 40 and 45 % of three leaves' yield (Lee et al. 2010, second-hand). 2
// leaves give 0.825 of the growth a day, 1 leaf 0.45 (field guide: ours).
func TestYieldAndGivenUp(t *testing.T) {
	h := leaf.Of(entry.Ryegrass)
	for stage, want := range map[entry.LeafStage]float64{0: 0, 1: 0.15, 2: 0.55, 2.5: 0.775, 3: 1, 3.5: 1} {
		assert.InDelta(t, want, leaf.Yield(h, stage), 1e-12, "%g", float64(stage))
	}
	for stage, want := range map[entry.LeafStage]float64{0: 0.55, 0.5: 0.55, 1: 0.55, 2: 0.175, 3: 0, 4: 0.25, 6: 0.5} {
		assert.InDelta(t, want, leaf.GivenUp(h, stage), 1e-12, "%g", float64(stage))
	}
	brome := leaf.Of(entry.Brome)
	assert.InDelta(t, 0.175, leaf.GivenUp(brome, 4*2.0/3), 1e-12, "the same shape, stretched to the window")
	assert.InDelta(t, leaf.GivenUp(h, 2), leaf.GivenUpClosed(h, 2, 2.5), 1e-12, "not closed yet")
	assert.InDelta(t, 1-0.55, leaf.GivenUpClosed(h, 3, 2), 1e-12, "yield stays at 0.55 from 2 leaves on")
	assert.InDelta(t, 0, leaf.GivenUpClosed(h, 3, 0), 1e-12, "0: not closed")
}
