package leaf

import "leafround/core/entry"

// Habit is what a grass carries: how many leaves stay alive on a tiller, and
// between which leaf stages it is best grazed.
type Habit struct {
	Grass      entry.Grass
	Live       entry.LeafStage // leaves that a tiller keeps alive
	From       entry.LeafStage // the window opens
	Target     entry.LeafStage // aimed at, where the farm sets no aim
	To         entry.LeafStage // the window ends
	DegreeDays float64         // °C·d above 0 °C for one leaf
	Known      bool            // false: grass not told or not known, reckoned as perennial ryegrass
}

// ryegrassDegreeDays is 110 °C·d a leaf in perennial ryegrass, 230 in tall
// fescue (from memory: Lemaire; Colabelli et al. 1998). Grasses for which we
// know no figure are reckoned with the first (ours).
const (
	ryegrassDegreeDays = 110.0
	fescueDegreeDays   = 230.0
)

// habits, each with its source. Targets that are no source's lie in the middle
// of the window (ours).
var habits = map[entry.Grass]Habit{
	// Fulkerson & Donaghy 2001; Agriculture Victoria 2020: three leaves, 2 to 3.
	entry.Ryegrass: {Live: 3, From: 2, Target: 2.5, To: 3, DegreeDays: ryegrassDegreeDays},
	// NSW Government, grazing short-term ryegrass: three leaves, near 3. That
	// "near" begins at 2.5 is ours.
	entry.AnnualRye:  {Live: 3, From: 2.5, Target: 2.75, To: 3, DegreeDays: ryegrassDegreeDays},
	entry.ItalianRye: {Live: 3, From: 2.5, Target: 2.75, To: 3, DegreeDays: ryegrassDegreeDays},
	// About 2.5 live leaves (from memory); Oregon State, tall fescue monograph: 2 to 2.5.
	entry.Fescue: {Live: 2.5, From: 2, Target: 2.25, To: 2.5, DegreeDays: fescueDegreeDays},
	// 10.1071/AR05130; Int. Grassland Congress 20: 4–5 leaves, grazed at up to
	// 4–5. The middle, 4.5, as the end and 3.5 as the start are ours.
	entry.Cocksfoot: {Live: 4.5, From: 3.5, Target: 4, To: 4.5, DegreeDays: ryegrassDegreeDays},
	// Turner et al. 2006: 3 to 4.
	entry.PrairieGrass: {Live: 4, From: 3, Target: 3.5, To: 4, DegreeDays: ryegrassDegreeDays},
	// Massey University thesis on pasture brome: 3.5 to 4.
	entry.Brome: {Live: 4, From: 3.5, Target: 3.75, To: 4, DegreeDays: ryegrassDegreeDays},
}

// Of gives the habit of a grass; one that is not told or not known is reckoned
// as perennial ryegrass, with Known false.
func Of(g entry.Grass) Habit {
	h, ok := habits[g]
	if !ok {
		h = habits[entry.Ryegrass]
	}
	h.Grass, h.Known = g, ok
	return h
}

// DaysPerLeaf gives the days that one leaf takes at a constant temperature, by
// degree-days alone: a weak guide, that a farm's own counts soon overrule. At or
// below 0 °C it is infinite.
func (h Habit) DaysPerLeaf(celsius float64) float64 {
	return h.DegreeDays / max(celsius, 0)
}

// DegreeDays gives one day's degree-days above 0 °C from its least and most
// temperature (common practice: the mean of the two, never below nothing).
func DegreeDays(least, most float64) float64 { return max((least+most)/2, 0) }
