package parser

import (
	"slices"

	"leafround/core/entry"
)

// tidy joins entries of one message that tell of one thing twice: what stock
// left in a paddock that they came out of, "dried out" and "ok to graze", "too
// wet" and "no stock in there".
func tidy(list []entry.Entry) []entry.Entry {
	if len(list) < 2 {
		return list
	}
	out := list[:0:0]
	for _, e := range list {
		if free, ok := e.(entry.Release); ok && free.Reason == "" {
			free.Reason = heldFor(out, free)
			e = free
		}
		i := slices.IndexFunc(out, func(had entry.Entry) bool { return sameThing(had, e) })
		if i < 0 {
			out = append(out, e)
			continue
		}
		out[i] = joined(out[i], e)
	}
	return out
}

// heldFor gives the reason of the one hold of a paddock that a message tells of before
// it says that the paddock may be grazed: "12 sprayed on the 3rd. all clear now".
func heldFor(list []entry.Entry, free entry.Release) (reason entry.Reason) {
	for _, e := range list {
		if h, ok := e.(entry.Hold); ok && h.Paddock == free.Paddock && h.Date < free.Date {
			if reason != "" {
				return ""
			}
			reason = h.Reason
		}
	}
	return reason
}

// sameThing tells whether a later entry tells of what an earlier one told.
func sameThing(had, e entry.Entry) bool {
	switch e := e.(type) {
	case entry.Graze:
		h, ok := had.(entry.Graze)
		if ok && e.Residual == nil && e.Event == h.Event && h.Paddock == e.Paddock && h.Date == e.Date && h.Mob == e.Mob && h.Part == e.Part {
			return true
		}
		return ok && e.Event == entry.Out && e.Residual != nil && h.Residual == nil && h.Event != entry.In &&
			h.Paddock == e.Paddock && h.Date == e.Date && (e.Mob == "" || e.Mob == h.Mob)
	case entry.Release:
		h, ok := had.(entry.Release)
		return ok && h.Paddock == e.Paddock && h.Date == e.Date && (e.Reason == "" || h.Reason == "" || e.Reason == h.Reason)
	case entry.Hold:
		h, ok := had.(entry.Hold)
		return ok && h.Paddock == e.Paddock && h.Date == e.Date && e.Reason == entry.HoldOther && (e.Until.IsZero() || h.Until.IsZero() || e.Until == h.Until)
	}
	return false
}

// joined gives the one entry that two of them come to.
func joined(had, e entry.Entry) entry.Entry {
	switch h := had.(type) {
	case entry.Graze:
		if left := e.(entry.Graze).Residual; left != nil {
			h.Residual = left
		}
		return h
	case entry.Release:
		if h.Reason == "" {
			h.Reason = e.(entry.Release).Reason
		}
		return h
	case entry.Hold:
		if h.Until.IsZero() {
			h.Until = e.(entry.Hold).Until
		}
		return h
	}
	return had
}
