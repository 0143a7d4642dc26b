package farm

import "leafround/core/entry"

// usual is the most that a good grazing leaves, in each unit; above it the
// residual is lax (ours, from what is common practice: 4 to 6 cm, 7 to 9
// clicks, 1,500 to 1,700 kg of dry matter a hectare).
var usual = map[entry.ResidualUnit]float64{
	entry.Centimetres: 6,
	entry.Inches:      6 / 2.54,
	entry.Clicks:      9,
	entry.KgDMPerHa:   1700,
}

// mostLeft is the most that a lax residual is taken to leave standing, in
// leaves (ours: the remnant leaf, which is no more than one, at half).
const mostLeft = 0.5

// lax gives the leaf stage from which a paddock starts after a residual: none
// up to the usual, half a leaf at twice the usual (a straight line, ours).
func lax(r *entry.Residual) entry.LeafStage {
	if r == nil || usual[r.Unit] == 0 {
		return 0
	}
	over := r.Value/usual[r.Unit] - 1
	return entry.LeafStage(mostLeft * min(max(over, 0), 1))
}

// Lax tells whether a residual is more than a good grazing leaves.
func Lax(r *entry.Residual) bool { return lax(r) > 0 }

// Inches tells whether the team measures heights in inches: by the latest
// height that was told.
func (f *Farm) Inches() bool {
	for i := len(f.log) - 1; i >= 0; i-- {
		g, ok := f.log[i].Entry.(entry.Graze)
		if !ok || g.Residual == nil || !f.log[i].Stands() {
			continue
		}
		switch g.Residual.Unit {
		case entry.Inches:
			return true
		case entry.Centimetres:
			return false
		}
	}
	return false
}
