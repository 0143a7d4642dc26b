package farm

import (
	"slices"

	"leafround/core/entry"
)

// Log gives the whole log, in order of sending.
func (f *Farm) Log() []entry.Logged { return f.log }

// Entry gives a logged entry by its number.
func (f *Farm) Entry(id int64) (entry.Logged, bool) {
	l, ok := f.at[id]
	return l, ok
}

// DayOf gives the day that an entry is about: its own, or else the day of sending.
func (f *Farm) DayOf(l entry.Logged) entry.Date {
	if day := l.Entry.On(); !day.IsZero() {
		return day
	}
	return f.Today(l.SentAt)
}

// History gives what stands in the log from one day to another, latest first;
// of one paddock (its forebears' included) where one is given.
func (f *Farm) History(p *Paddock, from, to entry.Date) []entry.Logged {
	var ids map[int64]bool
	if p != nil {
		ids = map[int64]bool{}
		for _, it := range p.timeline() {
			if !it.soft {
				ids[it.id] = true
			}
		}
	}
	var out []entry.Logged
	for _, l := range f.log {
		day := f.DayOf(l)
		if !l.Stands() || day < from || day > to || l.Entry.Kind() == entry.KindUndo ||
			l.Entry.Kind() == entry.KindCorrect {
			continue
		}
		if p == nil || ids[l.ID] || f.about(l.Entry, p) {
			out = append(out, l)
		}
	}
	slices.SortStableFunc(out, func(a, b entry.Logged) int {
		if c := int(f.DayOf(b) - f.DayOf(a)); c != 0 {
			return c
		}
		return bySending(b, a)
	})
	return out
}

// HistoryOf gives what stands in the log about one mob from one day to another,
// latest first: where it went, and what names it.
func (f *Farm) HistoryOf(m *Mob, from, to entry.Date) []entry.Logged {
	moves := map[int64]bool{}
	for _, mv := range m.moves {
		moves[mv.item.id] = true
	}
	return slices.DeleteFunc(f.History(nil, from, to), func(l entry.Logged) bool {
		return !moves[l.ID] && f.FindMob(mobIn(l.Entry)) != m
	})
}

// mobIn gives the mob that an entry names, "" where it names none.
func mobIn(e entry.Entry) string {
	switch e := e.(type) {
	case entry.Graze:
		return e.Mob
	case entry.Note:
		return e.Mob
	case entry.Setup:
		return e.Mob
	}
	return ""
}

// about tells whether a note or a setting names a paddock.
func (f *Farm) about(e entry.Entry, p *Paddock) bool {
	switch e.(type) {
	case entry.Note, entry.Setup:
		name := PaddockOf(e)
		return name != "" && f.Find(name) == p
	}
	return false
}

// LatestBy gives the latest standing entry of a member, by sending: the one
// that "undo" withdraws. Undos and corrections themselves do not count.
func (f *Farm) LatestBy(member int64) (entry.Logged, bool) {
	for i := len(f.log) - 1; i >= 0; i-- {
		l := f.log[i]
		k := l.Entry.Kind()
		if l.MemberID == member && l.Stands() && k != entry.KindUndo && k != entry.KindCorrect {
			return l, true
		}
	}
	return entry.Logged{}, false
}

// Replaced gives the entries that one entry withdrew or mended.
func (f *Farm) Replaced(by int64) []entry.Logged {
	var out []entry.Logged
	for _, l := range f.log {
		if l.ReplacedBy == by && by != 0 {
			out = append(out, l)
		}
	}
	return out
}

// Counted gives a count by the number of its entry, with its paddock.
func (f *Farm) Counted(id int64) (Counted, *Paddock, bool) {
	for _, p := range f.all {
		for _, c := range p.Every {
			if c.ID == id && !p.heirs {
				return c, p, true
			}
		}
	}
	return Counted{}, nil, false
}
