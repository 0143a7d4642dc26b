package farm

import (
	"slices"

	"leafround/core/entry"
)

// walk goes through the timeline of one paddock, from its first entry to its
// last, and leaves the paddock as it stands.
type walk struct {
	farm    *Farm
	p       *Paddock
	grown   float64 // share grazed so far in a grazing that goes by parts
	partDay entry.Date
	first   Grazing // the first of those parts
	remarks map[int64][]Remark
	events  []paceEvent
}

// settle walks a paddock on to the end of its timeline: from where the last
// walk ended, or from the start if something before that has changed.
func (f *Farm) settle(p *Paddock) {
	items := p.timeline()
	if p.walk == nil || len(p.from) > 0 {
		p.walk, p.walked = &walk{farm: f, p: p, remarks: map[int64][]Remark{}}, 0
		p.Stays, p.Regrowth, p.Counts, p.Closed = nil, Regrowth{}, nil, 0
		p.Holds, p.Grazings, p.Cuts, p.Every, p.LastSeen = nil, nil, nil, nil, 0
	}
	for ; p.walked < len(items); p.walked++ {
		p.walk.step(items[p.walked])
	}
	p.remarks, p.dirty = p.walk.remarks, false
	f.tell(p, p.walk.events)
}

// redo has a paddock walked anew from the start.
func (p *Paddock) redo() { p.dirty, p.walk = true, nil }

func (w *walk) step(it item) {
	w.p.LastSeen = max(w.p.LastSeen, it.day)
	switch e := it.entry.(type) {
	case nil:
		w.softOut(it)
	case entry.Count:
		w.count(it, e)
	case entry.Graze:
		w.graze(it, e)
	case entry.Cut:
		w.cut(it, e)
	case entry.Canopy:
		w.p.Closed = it.day
		w.event(it, paceEvent{closed: true})
	case entry.Hold:
		w.hold(it, e)
	case entry.Release:
		w.release(it, e)
	case entry.Setup:
		w.lastGrazed(it)
	}
}

func (w *walk) remark(it item, r Remark) {
	if r.Paddock == "" {
		r.Paddock = w.p.Name
	}
	w.remarks[it.id] = append(w.remarks[it.id], r)
}

// count takes a leaf count, scored by the farm's rule for the remnant.
func (w *walk) count(it item, e entry.Count) {
	c := Counted{Count: e.Scored(w.farm.Remnant), ID: it.id, MemberID: it.author, Member: it.member,
		Since: w.p.Regrowth.Since}
	c.Repeat = w.told(c)
	w.p.Every = append(w.p.Every, c)
	if c.Repeat {
		return
	}
	w.p.Counts = append(w.p.Counts, c)
	w.event(it, paceEvent{count: &c.Count})
}

// told tells whether the same person has told the very same count that day.
func (w *walk) told(c Counted) bool {
	for i := len(w.p.Counts) - 1; i >= 0 && w.p.Counts[i].Date == c.Date; i-- {
		if sameCount(w.p.Counts[i].Count, c.Count) && w.p.Counts[i].MemberID == c.MemberID {
			return true
		}
	}
	return false
}

// sameCount tells whether two counts say the same scores of one day.
func sameCount(a, b entry.Count) bool {
	return a.Date == b.Date && a.Mean == b.Mean && a.N == b.N && a.Past == b.Past && a.Skipped == b.Skipped &&
		slices.Equal(a.Tillers, b.Tillers)
}

// restart begins regrowth anew.
func (w *walk) restart(it item, r Regrowth) {
	r.Since, r.ID = it.day, it.id
	w.p.Regrowth, w.p.Counts, w.p.Closed = r, nil, 0
	w.event(it, paceEvent{restart: true, share: r.Share, start: r.Start, cut: r.Cut != "", strips: r.Strips})
}

// Cutting is a cut for silage or hay, or a topping.
type Cutting struct {
	Date entry.Date
	What entry.CutKind
	ID   int64
}

// cut starts regrowth again, as after a grazing; it ends the shutting up that
// it was waited for.
func (w *walk) cut(it item, e entry.Cut) {
	if n := len(w.p.Cuts); n > 0 && w.p.Cuts[n-1].Date == it.day && w.p.Cuts[n-1].What == e.What && w.p.Regrowth.ID == w.p.Cuts[n-1].ID {
		w.remark(it, Remark{Kind: CutAlready, Date: it.day})
		return
	}
	w.p.Cuts = append(w.p.Cuts, Cutting{it.day, e.What, it.id})
	w.restart(it, Regrowth{Cut: e.What, Share: 1})
	w.grown = 0
	if e.What != entry.Topped {
		w.cutOver(it)
	}
}

// lastGrazed takes the date from which somebody remembers a paddock's last
// grazing.
func (w *walk) lastGrazed(it item) {
	w.p.Grazings = append(w.p.Grazings, Grazing{Out: it.day, Part: 1, ID: it.id, Asked: true})
	w.restart(it, Regrowth{Share: 1, Asked: true})
	w.grown = 0
}
