package farm

import (
	"reflect"
	"slices"

	"leafround/core/entry"
	"leafround/core/pace"
)

// Farm is what the log says of one farm, as it stands after the last entry
// that was applied.
type Farm struct {
	Settings
	Paddocks []*Paddock // in register order, retired ones left out
	Mobs     []*Mob     // in the order in which they came to be known
	Pins     []Pin      // wishes for the plan
	Notes    []entry.Logged

	all      []*Paddock // retired ones too
	names    map[string]*Paddock
	alias    map[string]*Paddock // names of the past
	mobNames map[string]*Mob
	mobAlias map[string]*Mob
	left     map[int64][]Remark
	weather  map[entry.Date]*Day
	stale    map[entry.Date]bool // days whose weather changed since it was told
	log      []entry.Logged      // in order of sending, all of it
	at       map[int64]entry.Logged
	register int  // place in the log of the last entry that changed the register
	turned   bool // the entry being taken changed the register by the way
	rebuilt  bool // folded anew: the estimator may know of things that are gone
	version  int
	clock    *estimator
}

// New gives a farm of which nothing is known.
func New() *Farm {
	f := &Farm{at: map[int64]entry.Logged{}, clock: newEstimator()}
	f.reset()
	return f
}

// Fold makes a farm of a whole log, in any order.
func Fold(log []entry.Logged) *Farm {
	f := New()
	f.log = slices.Clone(log)
	slices.SortStableFunc(f.log, bySending)
	f.log = slices.CompactFunc(f.log, func(a, b entry.Logged) bool { return a.ID == b.ID })
	for _, l := range f.log {
		f.at[l.ID] = l
	}
	f.rebuild()
	return f
}

// bySending orders entries as they were sent; an entry that mends another has
// the other's SentAt, and so its place.
func bySending(a, b entry.Logged) int {
	if c := a.SentAt.Compare(b.SentAt); c != 0 {
		return c
	}
	return int(a.ID - b.ID)
}

// Apply takes one entry: a new one, or a known one that was withdrawn or
// mended since. Telling it twice changes nothing.
func (f *Farm) Apply(l entry.Logged) {
	known, again := f.at[l.ID]
	delete(f.clock.seen, seenKey{l.ID, f.Remnant})
	f.at[l.ID] = l
	switch {
	case again && reflect.DeepEqual(known, l):
	case again && !known.SentAt.Equal(l.SentAt):
		f.relog()
		f.rebuild()
	case again:
		f.replace(known, l)
	default:
		f.add(l)
	}
}

// ApplyAll takes several entries.
func (f *Farm) ApplyAll(log []entry.Logged) {
	for _, l := range log {
		f.Apply(l)
	}
}

// add takes a new entry. One that belongs before the register's last change
// was said to a farm that looked different: everything is folded anew.
func (f *Farm) add(l entry.Logged) {
	i, _ := slices.BinarySearchFunc(f.log, l, bySending)
	f.log = slices.Insert(f.log, i, l)
	last := i == len(f.log)-1
	switch {
	case !l.Stands():
		if i < f.register {
			f.register++
		}
	case last || i > f.register && f.plain(l):
		f.take(l, i)
	default:
		f.rebuild()
		return
	}
	f.finish()
}

// replace takes a known entry in its new form.
func (f *Farm) replace(known, l entry.Logged) {
	i, _ := slices.BinarySearchFunc(f.log, l, bySending)
	f.log[i] = l
	switch {
	case known.Stands() && !l.Stands() && i > f.register && f.plain(known):
		f.drop(known)
		f.finish()
	case known.Stands() || l.Stands():
		f.rebuild()
	}
}

// plain tells whether an entry leaves the register as it is.
func (f *Farm) plain(l entry.Logged) bool {
	switch e := l.Entry.(type) {
	case entry.Setup:
		return false
	case entry.Graze:
		return f.listed(e.Paddock) && (e.Mob == "" || f.listedMob(e.Mob))
	}
	name := PaddockOf(l.Entry)
	return name == "" || f.listed(name)
}

func (f *Farm) listed(name string) bool {
	p := f.Find(name)
	return p != nil && p.Listed
}

func (f *Farm) listedMob(name string) bool {
	m := f.FindMob(name)
	return m != nil && m.Listed && m.Active()
}

// PaddockOf gives the paddock that an entry names, "" where it names none.
func PaddockOf(e entry.Entry) string {
	switch e := e.(type) {
	case entry.Count:
		return e.Paddock
	case entry.Graze:
		return e.Paddock
	case entry.Cut:
		return e.Paddock
	case entry.Canopy:
		return e.Paddock
	case entry.Hold:
		return e.Paddock
	case entry.Release:
		return e.Paddock
	case entry.Note:
		return e.Paddock
	case entry.Setup:
		return e.Paddock
	}
	return ""
}

// Estimate gives the estimator's view of a day, from all that is logged up to
// it.
func (f *Farm) Estimate(day entry.Date) *pace.Estimate { return f.clock.on(day) }

// Version changes whenever the farm does.
func (f *Farm) Version() int { return f.version }
