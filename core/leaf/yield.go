package leaf

import "leafround/core/entry"

// shares are the parts of three leaves' yield that the first, second and third
// leaf bring: 15, 40 and 45 % (Lee et al. 2010, second-hand, in the UK
// levy-board's extension on the three-leaf stage).
var shares = [3]float64{0.15, 0.40, 0.45}

// Yield gives the green yield at a leaf stage as a part of the yield at the
// window's end, in a straight line within each leaf. The shape is ryegrass's,
// stretched to the grass's window (ours); past its end nothing is gained
// (ours, on the cautious side).
func Yield(h Habit, stage entry.LeafStage) float64 {
	left := 3 * float64(stage/h.To)
	sum := 0.0
	for _, share := range shares {
		sum += share * min(max(left, 0), 1)
		left--
	}
	return sum
}

// GivenUp gives the share of growth that is lost by grazing always at this
// stage: 1 − [Y(L)/L] ÷ [Y(3)/3] (ours; 2 leaves 0.175, 1 leaf 0.55).
func GivenUp(h Habit, stage entry.LeafStage) float64 {
	x := 3 * float64(stage/h.To)
	if x <= 1 { // a straight line through nothing: the ratio stays what it is at one leaf
		return 1 - 3*shares[0]
	}
	return 1 - 3*Yield(h, stage)/x
}

// GivenUpClosed gives the same where the canopy had closed at an earlier stage:
// yield stays where it was then (ours).
func GivenUpClosed(h Habit, stage, closed entry.LeafStage) float64 {
	if closed <= 0 || closed >= stage {
		return GivenUp(h, stage)
	}
	return 1 - 3*Yield(h, closed)/(3*float64(stage/h.To))
}
