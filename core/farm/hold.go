package farm

import (
	"slices"

	"leafround/core/entry"
)

// Held is one hold of a paddock, on a course of its own.
type Held struct {
	Reason entry.Reason
	From   entry.Date
	Until  entry.Date // the first day it may be grazed again; zero for no end
	Lifted entry.Date // the day it was lifted by hand; zero where it was not
	ByRule bool       // Until comes from the farm's own days
	ID     int64
	Member string
}

// On tells whether the hold binds on a day. It does not on its Until day.
func (h Held) On(day entry.Date) bool {
	return h.From <= day &&
		(h.Until.IsZero() || day < h.Until) &&
		(h.Lifted.IsZero() || day < h.Lifted)
}

// HeldOn gives the holds that bind on a day, oldest first. Of several for one
// reason only that which ends last is given.
func (p *Paddock) HeldOn(day entry.Date) []Held {
	var out []Held
	for _, h := range p.Holds {
		if !h.On(day) {
			continue
		}
		i := slices.IndexFunc(out, func(o Held) bool { return o.Reason == h.Reason })
		switch {
		case i < 0:
			out = append(out, h)
		case out[i].endsBefore(h):
			out[i] = h
		}
	}
	return out
}

// endsBefore tells whether a hold ends before another does.
func (h Held) endsBefore(o Held) bool {
	return !h.Until.IsZero() && (o.Until.IsZero() || h.Until < o.Until)
}

// FreeFrom gives the first day, from a day on, on which no hold binds; ok is
// false where one has no end.
func (p *Paddock) FreeFrom(day entry.Date) (free entry.Date, ok bool) {
	free = day
	for again := true; again; {
		again = false
		for _, h := range p.HeldOn(free) {
			if h.Until.IsZero() {
				return 0, false
			}
			free, again = max(free, h.Until), true
		}
	}
	return free, true
}

// hold takes a hold. Where no end was told, the farm's own days give one,
// except for a spray: its end is on the label alone. A date told for a reason
// that holds already without an end is that hold's end ("until when?").
func (w *walk) hold(it item, e entry.Hold) {
	h := Held{Reason: e.Reason, From: it.day, Until: e.Until, ID: it.id, Member: it.member}
	if days := w.farm.HoldDays[e.Reason]; h.Until.IsZero() && days > 0 && e.Reason != entry.HoldSpray {
		h.Until, h.ByRule = it.day.Add(days), true
	}
	for i := range w.p.Holds {
		o := &w.p.Holds[i]
		if o.Reason != h.Reason || !o.On(it.day) {
			continue
		}
		switch {
		case o.Until.IsZero() && !h.Until.IsZero():
			o.Until, o.ByRule = h.Until, h.ByRule
		case h.Until.IsZero() && o.From == it.day && !h.Reason.Guarded(): // said again
			h.Until = o.Until
			fallthrough
		case h.Until == o.Until:
			w.remark(it, Remark{Kind: HeldAlready, Reason: h.Reason, Date: o.Until})
		}
	}
	w.p.Holds = append(w.p.Holds, h)
}

// release lifts holds: those of its reason, or all but the guarded ones. A
// guarded hold takes a manager who names it.
func (w *walk) release(it item, e entry.Release) {
	lifted := false
	for i := range w.p.Holds {
		h := &w.p.Holds[i]
		if !h.On(it.day) || (e.Reason != "" && e.Reason != h.Reason) {
			continue
		}
		if h.Reason.Guarded() && !(it.manager && e.Reason == h.Reason) {
			w.remark(it, Remark{Kind: StillHeld, Reason: h.Reason, Date: h.Until})
			continue
		}
		h.Lifted, lifted = it.day, true
		w.remark(it, Remark{Kind: Lifted, Reason: h.Reason, Date: h.Until})
	}
	if !lifted && len(w.remarks[it.id]) == 0 {
		w.remark(it, Remark{Kind: NotHeld, Reason: e.Reason})
	}
}

// cutOver ends the shutting up that a cut was waited for.
func (w *walk) cutOver(it item) {
	for i := range w.p.Holds {
		h := &w.p.Holds[i]
		if h.On(it.day) && (h.Reason == entry.HoldSilage || h.Reason == entry.HoldHay) {
			h.Lifted = it.day
			w.remark(it, Remark{Kind: Lifted, Reason: h.Reason, Date: h.Until})
		}
	}
}
