package farm

import (
	"slices"
	"time"

	"leafround/core/entry"
)

// item is one entry in the timeline of a paddock.
type item struct {
	day     entry.Date
	at      time.Time // of sending
	id      int64
	entry   entry.Entry // nil for a soft out
	mob     *Mob        // whose stock, where known
	named   bool        // the mob was named, not inferred
	soft    bool        // follows from what was said elsewhere
	member  string
	author  int64
	manager bool
}

// compare orders items by day, then by sending; what follows softly from an
// entry comes before the entry itself.
func (a item) compare(b item) int {
	if a.day != b.day {
		return int(a.day - b.day)
	}
	if c := a.at.Compare(b.at); c != 0 {
		return c
	}
	if a.id != b.id {
		return int(a.id - b.id)
	}
	switch {
	case a.soft == b.soft:
		return 0
	case a.soft:
		return -1
	}
	return 1
}

// insert puts an item into its place; late ones go where their day is.
func (p *Paddock) insert(it item) {
	i := placeOf(p.items, it)
	p.items = slices.Insert(p.items, i, it)
	p.dirty = true
	if i < p.walked {
		p.redo()
	}
}

// placeOf finds the place of an item, from the end: most come last.
func placeOf(items []item, it item) int {
	i := len(items)
	for i > 0 && items[i-1].compare(it) > 0 {
		i--
	}
	return i
}

// drop takes the items of one entry out.
func (p *Paddock) drop(id int64) {
	n := len(p.items)
	p.items = slices.DeleteFunc(p.items, func(it item) bool { return it.id == id && !it.soft })
	if len(p.items) != n {
		p.redo()
	}
}

// dropSoft takes out what followed from one entry for a mob.
func (p *Paddock) dropSoft(m *Mob, id int64) {
	n := len(p.items)
	p.items = slices.DeleteFunc(p.items, func(it item) bool {
		return it.soft && it.mob == m && it.id == id
	})
	if len(p.items) != n {
		p.redo()
	}
}
