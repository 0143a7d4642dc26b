package farm

import (
	"leafround/core/entry"
	"leafround/core/leaf"
)

// lastCounts is how many counts of each paddock tell the farm's own spread
// between tillers (ours: the season at hand).
const lastCounts = 4

// SpreadFor gives the spread between tillers to hold one count against: the
// usual one pooled with what the farm's other counts of late showed. A count
// is never held against itself.
func (f *Farm) SpreadFor(id int64) leaf.Spread {
	s := leaf.Usual
	for _, p := range f.Paddocks {
		for i, n := len(p.items)-1, 0; i >= 0 && n < lastCounts; i-- {
			c, ok := p.items[i].entry.(entry.Count)
			if !ok {
				continue
			}
			n++
			if p.items[i].id != id {
				s = s.Pool(c.Scored(f.Remnant).Tillers)
			}
		}
	}
	return s
}

// Sample gives what a count says of its paddock's mean leaf stage.
func (f *Farm) Sample(c Counted) leaf.Sample { return leaf.Measure(c.Count, f.SpreadFor(c.ID)) }
