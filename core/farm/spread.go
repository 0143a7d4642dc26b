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
			if p.items[i].id != id && !repeated(p.items[:i], p.items[i], c) {
				s = s.Pool(c.Scored(f.Remnant).Tillers)
			}
		}
	}
	return s
}

// repeated tells whether a count was told before by the same person on the
// same day.
func repeated(before []item, it item, c entry.Count) bool {
	for i := len(before) - 1; i >= 0 && before[i].day == it.day; i-- {
		if o, ok := before[i].entry.(entry.Count); ok && before[i].author == it.author && sameCount(o, c) {
			return true
		}
	}
	return false
}

// Sample gives what a count says of its paddock's mean leaf stage.
func (f *Farm) Sample(c Counted) leaf.Sample { return leaf.Measure(c.Count, f.SpreadFor(c.ID)) }
