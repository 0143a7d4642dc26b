package farm

import "leafround/core/entry"

// namedLater is how many days after stock without a name went in a name for
// them is still taken for theirs (ours: "which mob?" is answered soon).
const namedLater = 1

// name gives the mob that goes in to the stock without a name that went in a
// moment ago; it tells whether there were any.
func (w *walk) name(it item, e entry.Graze) bool {
	if it.mob == nil {
		return false
	}
	for i := range w.p.Stays {
		s := &w.p.Stays[i]
		if s.mob != nil || it.day.Sub(s.Since) > namedLater {
			continue
		}
		s.mob, s.Mob, s.Back = it.mob, it.mob.Name, s.Back || e.Back || it.mob.BackFence
		s.Head = max(s.Head, e.Head)
		w.remark(it, Remark{Kind: Named, Mob: s.Mob, Date: s.Since})
		return true
	}
	return false
}

// several tells whether more than one mob is registered: stock without a name
// could then be any of them.
func (f *Farm) several() bool {
	n := 0
	for _, m := range f.Mobs {
		if m.Listed && !m.Gone {
			n++
		}
	}
	return n > 1
}
