package reply

import "leafround/core/answer"

// drifts is how much the pace must change over a round to be told (ours).
const drifts = 0.05

// drift says that leaves will come faster or slower over the round to come:
// days a leaf times leaves then give another length than the one told.
func drift(r answer.Round) string {
	plain := r.DaysPerLeaf * float64(r.To)
	switch {
	case plain <= 0 || r.RoundLongest <= 0 || r.Mixed:
		return ""
	case r.RoundLongest < plain*(1-drifts):
		return "less as the weeks go by"
	case r.RoundLongest > plain*(1+drifts):
		return "more as the weeks go by"
	}
	return ""
}
