package answer

import (
	"leafround/core/entry"
	"leafround/core/farm"
)

// stayBy gives the stay that began with an entry.
func stayBy(p *farm.Paddock, id int64) farm.Stay {
	for _, s := range p.Stays {
		if s.ID == id {
			return s
		}
	}
	return farm.Stay{}
}

// movedSince tells of a move that was told late, where the mob is down as
// somewhere else by what was told before.
func (a *Logged) movedSince(f *farm.Farm, l entry.Logged, e entry.Graze) {
	m := f.FindMob(e.Mob)
	if m == nil || m.In == nil || m.In == f.Find(e.Paddock) || m.Since < e.Date {
		return
	}
	for _, s := range m.In.Stays {
		if sameName(s.Mob, m.Name) && s.ID < l.ID {
			a.Remarks = append(a.Remarks, Remark{Kind: MovedSince, Paddock: m.In.Name, Mob: m.Name, Date: m.Since})
		}
	}
}

// entering adds to what was noticed when stock went in: which mobs they could
// be, and that a hold without an end stays though it was grazed.
func (a *Logged) entering(f *farm.Farm, p *farm.Paddock, e entry.Graze) {
	for i, r := range a.Remarks {
		if string(r.Kind) == string(farm.MobUntold) {
			for _, m := range f.Mobs {
				if m.Listed && m.Active() {
					a.Remarks[i].Mobs = append(a.Remarks[i].Mobs, m.Name)
				}
			}
		}
	}
	for _, h := range p.HeldOn(max(e.Date, a.Today)) {
		if h.Until.IsZero() && !h.Reason.Guarded() {
			a.Remarks = append(a.Remarks, Remark{Kind: StaysHeld, Paddock: p.Name, Reason: h.Reason})
		}
	}
}
