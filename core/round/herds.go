package round

import (
	"leafround/core/entry"
	"leafround/core/farm"
)

// rates gives each mob its hectares a day: those the team set or the log
// shows; the others share what is left of the area that the grass's own round
// would have grazed, by their heads (ours). A what-if scales all of them.
func (b *builder) rates() {
	known, heads := 0.0, 0.0
	for _, m := range b.mobs {
		mob := Mob{}
		if m != nil {
			mob.Name = m.Name
		}
		if ha, ok := b.grazes(m); ok {
			mob.HaPerDay = float64(ha)
			known += mob.HaPerDay
		} else {
			heads += headsOf(m)
		}
		b.problem.Mobs = append(b.problem.Mobs, mob)
	}
	area := 0.0
	for _, f := range b.problem.Fields {
		area += float64(f.Area)
	}
	if heads > 0 {
		b.share(area, known, heads)
	}
	b.bend(area)
}

// grazes gives the hectares a day that a mob is known to graze; stock without
// a name graze all that the log shows.
func (b *builder) grazes(m *farm.Mob) (entry.Hectares, bool) {
	if m == nil {
		r, ok := b.f.RunningRound(b.day)
		return r.HaPerDay, ok
	}
	return b.f.MobHa(m, b.day)
}

// share deals out the hectares a day that are left to the mobs that have none;
// where the others graze all of them, a tenth (ours).
func (b *builder) share(area, known, heads float64) {
	n := needs{b.e, b.day, inRound(b.f, b.day, b.what.Shut)}
	own := area / n.mean(func(p *farm.Paddock) entry.LeafStage { return Target(b.f, p) })
	rest := max(own-known, own/10)
	for i := range b.problem.Mobs {
		if m := &b.problem.Mobs[i]; m.HaPerDay <= 0 {
			m.HaPerDay = rest * headsOf(b.mobs[i]) / heads
		}
	}
}

func headsOf(m *farm.Mob) float64 {
	if m == nil || m.Head <= 0 {
		return 1
	}
	return float64(m.Head)
}

// bend makes the mobs together graze what a what-if says.
func (b *builder) bend(area float64) {
	asked := float64(b.what.Ha)
	if b.what.Days > 0 {
		asked = area / b.what.Days
	}
	if asked <= 0 {
		return
	}
	sum := 0.0
	for _, m := range b.problem.Mobs {
		sum += m.HaPerDay
	}
	for i := range b.problem.Mobs {
		b.problem.Mobs[i].HaPerDay *= asked / max(sum, 1e-9)
	}
}

// stock works out what each mob has left to graze where it is. Mobs in one
// paddock finish it together.
func (b *builder) stock() {
	for i := range b.problem.Fields {
		field := &b.problem.Fields[i]
		p := b.f.Find(field.Name)
		left, rate := float64(field.Area), 0.0
		for k, m := range b.mobs {
			if since, in := stayOf(m, p); in {
				left -= b.problem.Mobs[k].HaPerDay * float64(b.day.Sub(since))
				rate += b.problem.Mobs[k].HaPerDay
			}
		}
		for k, m := range b.mobs {
			if _, in := stayOf(m, p); in {
				b.problem.Mobs[k].In = field.Name
				b.problem.Mobs[k].Left = entry.Hectares(max(0, left) * b.problem.Mobs[k].HaPerDay / rate)
			}
		}
	}
}

// stayOf tells since when a mob, or stock without a name, is in a paddock.
func stayOf(m *farm.Mob, p *farm.Paddock) (entry.Date, bool) {
	for _, s := range p.Stays {
		if m == nil && s.Mob == "" || m != nil && m.In == p && s.Mob == m.Name {
			return s.Since, true
		}
	}
	return 0, false
}
