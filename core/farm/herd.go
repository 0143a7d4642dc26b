package farm

import (
	"slices"

	"leafround/core/entry"
)

// setMob takes a setup entry that concerns a mob.
func (f *Farm) setMob(l entry.Logged, e entry.Setup) {
	if e.What == entry.SetMerged {
		f.joinMobs(l, e)
		return
	}
	if e.What == entry.SetMob { // a mob that ran with another is one of its own again
		delete(f.mobAlias, entry.FoldName(e.Mob))
	}
	m := f.mobOf(e.Mob)
	if m == nil {
		return
	}
	switch e.What {
	case entry.SetMob:
		m.Listed, m.Gone = true, false
		if e.Head > 0 {
			m.Head = e.Head
		}
	case entry.SetOnly:
		m.Only = slices.Clone(e.Names)
	case entry.SetBar:
		m.Bar = f.bars(m, e.Names)
	case entry.SetDaily:
		m.Set = e.Ha
	case entry.SetAway:
		m.Away = true
		f.leaves(l, e, m)
	case entry.SetBack:
		m.Away = false
	case entry.SetBackFence:
		m.BackFence = e.Yes
	}
}

// bars adds paddocks to those that a mob may not graze; they leave the list of
// the only ones that it may.
func (f *Farm) bars(m *Mob, names []string) []string {
	bar := slices.Clone(m.Bar)
	for _, n := range names {
		if !slices.ContainsFunc(bar, func(b string) bool { return entry.FoldName(b) == entry.FoldName(n) }) {
			bar = append(bar, n)
		}
	}
	m.Only = slices.DeleteFunc(slices.Clone(m.Only), func(o string) bool {
		return slices.ContainsFunc(names, func(n string) bool { return entry.FoldName(n) == entry.FoldName(o) })
	})
	return bar
}

// leaves takes a mob out of the paddock where it is.
func (f *Farm) leaves(l entry.Logged, e entry.Setup, m *Mob) {
	it := itemOf(l)
	if it.day.IsZero() {
		it.day = f.Today(l.SentAt)
	}
	m.addMove(move{item: it})
}

// joinMobs makes several mobs run as one. Where that is one of them, the
// others come to it; else the first takes the new name and the others come.
func (f *Farm) joinMobs(l entry.Logged, e entry.Setup) {
	var mobs []*Mob
	for _, name := range e.Names {
		if m := f.mobOf(name); m != nil && !slices.Contains(mobs, m) {
			mobs = append(mobs, m)
		}
	}
	if len(mobs) == 0 || e.To == "" {
		return
	}
	to := f.FindMob(e.To)
	if to == nil {
		to = mobs[0]
		f.renameMob(to, e.To)
	}
	to.Listed, to.Gone, to.Away = true, false, false
	for _, m := range mobs {
		if m == to {
			continue
		}
		to.Head += m.Head
		m.Gone = true
		f.leaves(l, e, m)
		delete(f.mobNames, entry.FoldName(m.Name))
		f.mobAlias[entry.FoldName(m.Name)] = to
	}
}

// renameMob gives a mob another name, unless one bears it already. The old
// name still finds it.
func (f *Farm) renameMob(m *Mob, to string) {
	if m == nil {
		return
	}
	old, now := entry.FoldName(m.Name), entry.FoldName(to)
	if taken := f.mobNames[now]; now == "" || taken != nil && taken != m {
		return
	}
	delete(f.mobNames, old)
	f.mobAlias[old], f.mobNames[now] = m, m
	delete(f.mobAlias, now)
	m.Name = to
	f.touchAll()
}
