package farm

import (
	"slices"

	"leafround/core/entry"
)

func (f *Farm) rename(e entry.Setup) {
	switch {
	case e.To == "":
	case e.Paddock != "":
		f.renamePaddock(f.Find(e.Paddock), e.To)
	case e.Mob != "":
		f.renameMob(f.FindMob(e.Mob), e.To)
	default:
		f.Name = e.To
	}
}

// renamePaddock gives a paddock another name, unless one bears it already. The
// old name still finds it.
func (f *Farm) renamePaddock(p *Paddock, to string) {
	if p == nil {
		return
	}
	old, now := entry.FoldName(p.Name), entry.FoldName(to)
	if taken := f.names[now]; now == "" || taken != nil && taken != p {
		return
	}
	delete(f.names, old)
	f.alias[old], f.names[now] = p, p
	delete(f.alias, now)
	p.Name, p.untold = to, true
	p.redo()
}

// retire takes a paddock off the farm; its history stays. With heirs, they
// carry its history on.
func (f *Farm) retire(p *Paddock, heirs bool) {
	if p == nil {
		return
	}
	p.Retired, p.heirs = true, heirs
	p.redo()
	f.Paddocks = slices.DeleteFunc(f.Paddocks, func(o *Paddock) bool { return o == p })
}

// split makes several paddocks of one; its history follows into each. Where no
// area is told the parts share it alike.
func (f *Farm) split(e entry.Setup, now moment) {
	old := f.Find(e.Paddock)
	if old == nil || len(e.Paddocks) < 2 {
		return
	}
	share, place := f.share(old, e.Paddocks), slices.Index(f.Paddocks, old)
	if !slices.ContainsFunc(e.Paddocks, func(part entry.Plot) bool {
		return entry.FoldName(part.Name) == entry.FoldName(old.Name)
	}) {
		f.retire(old, true)
	}
	for i, part := range e.Paddocks {
		if part.Area == 0 {
			part.Area = share
		}
		p := f.plot(part, now)
		if p == nil || p == old {
			continue
		}
		p.Grass, p.OnlyMob = orGrass(p.Grass, old.Grass), orText(p.OnlyMob, old.OnlyMob)
		p.comesFrom(old)
		f.moveTo(p, place+i)
	}
}

// share gives the area of each part for which none was told.
func (f *Farm) share(old *Paddock, parts []entry.Plot) entry.Hectares {
	left, untold := old.Area, 0
	for _, part := range parts {
		left -= part.Area
		if part.Area == 0 {
			untold++
		}
	}
	if untold == 0 || left <= 0 {
		return 0
	}
	return left / entry.Hectares(untold)
}

// merge makes one paddock of several; the history of each follows.
func (f *Farm) merge(e entry.Setup, now moment) {
	var old []*Paddock
	var area entry.Hectares
	for _, name := range e.Names {
		if p := f.Find(name); p != nil && !slices.Contains(old, p) {
			old, area = append(old, p), area+p.Area
		}
	}
	if len(old) < 2 || entry.FoldName(e.To) == "" {
		return
	}
	place := slices.Index(f.Paddocks, old[0])
	p := f.plot(entry.Plot{Name: e.To, Area: area, Grass: old[0].Grass, Mob: old[0].OnlyMob}, now)
	for _, o := range old {
		if o == p {
			continue
		}
		p.comesFrom(o)
		f.alias[entry.FoldName(o.Name)] = p
		f.retire(o, true)
	}
	p.redo()
	f.moveTo(p, place)
}

// moveTo puts a paddock at a place in the register.
func (f *Farm) moveTo(p *Paddock, place int) {
	f.Paddocks = slices.DeleteFunc(f.Paddocks, func(o *Paddock) bool { return o == p })
	place = min(max(place, 0), len(f.Paddocks))
	f.Paddocks = slices.Insert(f.Paddocks, place, p)
}

func orGrass(a, b entry.Grass) entry.Grass {
	if a != "" {
		return a
	}
	return b
}

func orText(a, b string) string {
	if a != "" {
		return a
	}
	return b
}
