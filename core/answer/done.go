package answer

import (
	"slices"

	"leafround/core/entry"
	"leafround/core/farm"
)

// done tells whether a change of the register took hold: one whose new name is
// taken, or whose paddocks are not known, changes nothing.
func done(f *farm.Farm, e entry.Setup) bool {
	switch {
	case e.What == entry.SetRename && e.Paddock != "":
		p := f.Find(e.Paddock)
		return p != nil && sameName(p.Name, e.To)
	case e.What == entry.SetRename && e.Mob != "":
		m := f.FindMob(e.Mob)
		return m != nil && sameName(m.Name, e.To)
	case e.What == entry.SetRetire:
		p := f.Find(e.Paddock)
		return p != nil && p.Retired
	case e.What == entry.SetSplit:
		return !slices.ContainsFunc(e.Paddocks, func(part entry.Plot) bool { return !active(f, part.Name) })
	case e.What == entry.SetMerge:
		to := f.Find(e.To)
		return active(f, e.To) && !slices.ContainsFunc(e.Names, func(n string) bool { return f.Find(n) != to })
	}
	return true
}

func active(f *farm.Farm, name string) bool {
	p := f.Find(name)
	return p != nil && p.Active()
}

func sameName(a, b string) bool { return entry.FoldName(a) == entry.FoldName(b) }
