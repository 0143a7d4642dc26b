package entry

// RemnantRule says how the remnant leaf (the bitten one) enters a score that
// was told in parts.
type RemnantRule string

// The rules a farm may choose from.
const (
	// RemnantBySize counts the remnant by its length as a part of a full leaf if
	// that is a half or more, else not at all (common practice, no source). It is
	// the default.
	RemnantBySize RemnantRule = ""
	// RemnantHalf counts every remnant as half a leaf (NSW Government, grazing
	// short-term ryegrass).
	RemnantHalf RemnantRule = "half"
)

// Tiller is one tiller as it was told: a score, or its parts.
type Tiller struct {
	Score   LeafStage `json:"score,omitempty"`   // told whole, leaves
	Parts   bool      `json:"parts,omitempty"`   // told in parts: the three below
	Remnant LeafStage `json:"remnant,omitempty"` // part of a full leaf
	Full    LeafStage `json:"full,omitempty"`    // full-length new leaves
	New     LeafStage `json:"new,omitempty"`     // part of a full leaf
	Floor   bool      `json:"floor,omitempty"`   // the oldest leaf yellows: this many or more
}

// Stage gives the leaf stage of the tiller after the counting rule.
func (t Tiller) Stage(rule RemnantRule) LeafStage {
	if !t.Parts {
		return t.Score
	}
	remnant := t.Remnant
	switch {
	case rule == RemnantHalf:
		remnant = 0.5
	case remnant < 0.5:
		remnant = 0
	}
	return remnant + t.Full + t.New
}

// Skipped counts the tillers that were pulled but set aside.
type Skipped struct {
	Reproductive int `json:"reproductive,omitempty"`
	Daughter     int `json:"daughter,omitempty"`
	NoRemnant    int `json:"no_remnant,omitempty"`
	Other        int `json:"other,omitempty"`
}

// Total gives how many tillers were set aside.
func (s Skipped) Total() int { return s.Reproductive + s.Daughter + s.NoRemnant + s.Other }
