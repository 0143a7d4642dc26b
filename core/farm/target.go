package farm

import "leafround/core/entry"

// Target gives the leaf stage at which a paddock is best grazed: the farm's
// aim where it set one, or else the grass's own target. An aim is thought of
// for ryegrass: another grass keeps within its own window (ours).
func (f *Farm) Target(p *Paddock) entry.LeafStage {
	h := p.Habit()
	switch {
	case f.Aim <= 0:
		return h.Target
	case !h.Known || h.Grass == entry.Ryegrass:
		return f.Aim
	}
	return min(max(f.Aim, h.From), h.To)
}
