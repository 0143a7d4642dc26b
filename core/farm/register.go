package farm

import (
	"slices"

	"leafround/core/entry"
)

// Pin is a wish for the plan: a mob in a paddock on a day.
type Pin struct {
	Mob     string // "" for any
	Paddock string
	Date    entry.Date
	ID      int64
}

// setup takes an entry that changes the register or the settings.
func (f *Farm) setup(l entry.Logged, e entry.Setup) {
	if f.Settings.set(l, e) {
		if e.What == entry.SetRemnant || e.What == entry.SetHoldDays {
			f.touchAll()
		}
		return
	}
	f.touchAll() // what is remarked about a grazing hangs on the register
	switch e.What {
	case entry.SetPaddocks:
		f.typed(e.Unit)
		for _, plot := range e.Paddocks {
			f.plot(plot, sent(l))
		}
	case entry.SetGrass:
		if p := f.paddockOf(e.Paddock); p != nil {
			p.Grass, p.untold = e.Grass, true
		}
	case entry.SetLastGrazed:
		f.remembered(l, e)
	case entry.SetRename:
		f.rename(e)
	case entry.SetRetire:
		f.retire(f.Find(e.Paddock), false)
	case entry.SetSplit:
		f.split(e, sent(l))
	case entry.SetMerge:
		f.merge(e, sent(l))
	case entry.SetPin:
		f.Pins = append(f.Pins, Pin{Mob: e.Mob, Paddock: e.Paddock, Date: e.Date, ID: l.ID})
	case entry.SetUnpin:
		f.unpin(e)
	default:
		f.setMob(l, e)
	}
}

// sent gives an entry's place in the order of sending.
func sent(l entry.Logged) moment { return moment{l.SentAt, l.ID} }

// touchAll has every paddock walked anew.
func (f *Farm) touchAll() {
	for _, p := range f.all {
		p.redo()
	}
}

// Find gives the paddock of that name, without regard to case, spaces and
// punctuation, or the one that once bore it; nil where there is none.
func (f *Farm) Find(name string) *Paddock {
	folded := entry.FoldName(name)
	if p := f.names[folded]; p != nil && (p.Active() || f.alias[folded] == nil) {
		return p
	}
	return f.alias[folded]
}

// paddockOf resolves a paddock's name; one that is new becomes known, without
// an area. It gives nil for no name.
func (f *Farm) paddockOf(name string) *Paddock {
	if entry.FoldName(name) == "" {
		return nil
	}
	if p := f.Find(name); p != nil {
		return p
	}
	return f.addPaddock(name)
}

func (f *Farm) addPaddock(name string) *Paddock {
	p := &Paddock{Name: name, key: len(f.all), untold: true}
	f.all = append(f.all, p)
	f.Paddocks = append(f.Paddocks, p)
	f.names[entry.FoldName(name)] = p
	return p
}

// plot adds a paddock or updates it: what is not told stays as it was. A
// retired one comes back.
func (f *Farm) plot(e entry.Plot, now moment) *Paddock {
	folded := entry.FoldName(e.Name)
	if folded == "" {
		return nil
	}
	p := f.names[folded]
	if p == nil {
		p = f.addPaddock(e.Name)
	}
	if p.Retired {
		p.Retired = false
		f.revived(p, now)
		f.Paddocks = append(f.Paddocks, p)
	}
	p.Listed = true
	if e.Area > 0 {
		p.Area = e.Area
	}
	if e.Grass != "" {
		p.Grass, p.untold = e.Grass, true
	}
	if e.Mob != "" {
		p.OnlyMob = e.Mob
	}
	if e.Boundary != "" {
		p.Boundary = e.Boundary
	}
	return p
}

// remembered takes the date of a last grazing that somebody remembers, for one
// paddock or for several.
func (f *Farm) remembered(l entry.Logged, e entry.Setup) {
	names := e.Names
	if e.Paddock != "" {
		names = append([]string{e.Paddock}, names...)
	}
	var done []*Paddock
	for _, name := range names {
		if p := f.paddockOf(name); p != nil && !slices.Contains(done, p) {
			done = append(done, p)
			p.insert(itemOf(l))
		}
	}
}

func (f *Farm) unpin(e entry.Setup) {
	f.Pins = slices.DeleteFunc(f.Pins, func(pin Pin) bool {
		paddock := e.Paddock == "" || f.Find(pin.Paddock) == f.Find(e.Paddock)
		mob := e.Mob == "" || entry.FoldName(pin.Mob) == entry.FoldName(e.Mob)
		return paddock && mob
	})
}
