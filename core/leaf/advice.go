package leaf

import (
	"math"

	"leafround/core/entry"
)

// Advice is what a leaf stage says about grazing.
type Advice string

// The advices.
const (
	Wait    Advice = "wait"    // below the window
	Ready   Advice = "ready"   // within it
	Late    Advice = "late"    // at its end or past it: a leaf dies for each that grows
	Canopy  Advice = "canopy"  // closed, whatever the stage: graze early (common practice, no source)
	Unknown Advice = "unknown" // nothing is known of the stage
)

// Advise gives the advice for a stage. A negative or missing (NaN) stage is
// not known. The window's end is late, not ready: a ryegrass tiller can't show
// more than its three live leaves.
func Advise(h Habit, stage entry.LeafStage, closed bool) Advice {
	switch {
	case closed:
		return Canopy
	case math.IsNaN(float64(stage)) || stage < 0:
		return Unknown
	case stage < h.From:
		return Wait
	case stage < h.To:
		return Ready
	}
	return Late
}
