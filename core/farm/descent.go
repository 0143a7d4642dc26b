package farm

import (
	"slices"
	"time"
)

// forebear is a paddock whose history another carries on: the one it was split
// from, or one of those it was made of. Once the forebear is a paddock of its
// own again, only what was sent before that day belongs to both.
type forebear struct {
	paddock *Paddock
	until   moment // of sending; zero while the forebear is retired
}

// moment is a place in the order of sending.
type moment struct {
	at time.Time
	id int64
}

func (m moment) isZero() bool { return m.id == 0 }

// before tells whether an item was sent before a moment; before none, always.
func (it item) before(m moment) bool {
	if m.isZero() {
		return true
	}
	if c := it.at.Compare(m.at); c != 0 {
		return c < 0
	}
	return it.id < m.id
}

// earlier gives the earlier of two moments.
func (m moment) earlier(o moment) moment {
	switch {
	case m.isZero():
		return o
	case o.isZero() || (item{at: m.at, id: m.id}).before(o):
		return m
	}
	return o
}

// comesFrom makes a paddock carry on another's history.
func (p *Paddock) comesFrom(old *Paddock) {
	p.from = append(p.from, forebear{paddock: old})
	p.redo()
}

// revived closes the books of what others carry on of a paddock that is one of
// its own again.
func (f *Farm) revived(p *Paddock, now moment) {
	for _, q := range f.all {
		for i := range q.from {
			if q.from[i].paddock == p && q.from[i].until.isZero() {
				q.from[i].until = now
			}
		}
	}
	p.heirs = false
}

// descent is a walk up the line of forebears; each is visited once for each
// moment to which its history is carried on.
type descent struct {
	seen  map[forebear]bool
	items []item
}

// timeline gives all items of a paddock and of those whose history it carries
// on, in order, each once.
func (p *Paddock) timeline() []item {
	if len(p.from) == 0 {
		return p.items
	}
	d := descent{seen: map[forebear]bool{}}
	d.climb(forebear{paddock: p})
	slices.SortStableFunc(d.items, item.compare)
	return slices.CompactFunc(d.items, func(a, b item) bool {
		return a.compare(b) == 0 && a.mob == b.mob
	})
}

func (d *descent) climb(f forebear) {
	if d.seen[f] {
		return
	}
	d.seen[f] = true
	for _, it := range f.paddock.items {
		if it.before(f.until) {
			d.items = append(d.items, it)
		}
	}
	for _, up := range f.paddock.from {
		d.climb(forebear{up.paddock, up.until.earlier(f.until)})
	}
}

// touched tells whether a paddock or one of its forebears has changed.
func (p *Paddock) touched(seen map[*Paddock]bool) bool {
	if p.dirty {
		return true
	}
	if seen[p] {
		return false
	}
	seen[p] = true
	return slices.ContainsFunc(p.from, func(f forebear) bool { return f.paddock.touched(seen) })
}
