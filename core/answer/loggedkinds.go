package answer

import (
	"slices"

	"leafround/core/entry"
	"leafround/core/farm"
	"leafround/core/leaf"
)

// graze tells of a grazing: how long stock stayed, at what stage, and what it
// makes relevant.
func (a *Logged) graze(f *farm.Farm, l entry.Logged, e entry.Graze) {
	a.Cautions = grazeCautions(f, l, e)
	p := f.Find(e.Paddock)
	if p == nil {
		return
	}
	if g, ok := grazingOf(p, l.ID); ok {
		a.Mobs = g.Mobs
		if !g.In.IsZero() && g.Out > g.In {
			a.Since, a.Stay = g.In, g.Out.Sub(g.In)+1
		}
		a.Before = before(f, p, g.Before, firstDay(g), g.Met)
		if farm.Lax(g.Residual) {
			a.Remarks = append(a.Remarks, Remark{Kind: Lax, Paddock: p.Name})
		}
		if g.Part < 1 {
			a.Remarks = append(a.Remarks, Remark{Kind: Partly, Paddock: p.Name, Part: g.Part})
		}
	} else if e.Event == entry.In {
		s := stayBy(p, l.ID)
		if s.Mob != "" {
			a.Mobs = []string{s.Mob}
		}
		a.Before = before(f, p, p.Regrowth.Since, e.Date, s.Met)
		a.entering(f, p, e)
		a.movedSince(f, l, e)
	}
}

func grazingOf(p *farm.Paddock, id int64) (farm.Grazing, bool) {
	for i := len(p.Grazings) - 1; i >= 0; i-- {
		if p.Grazings[i].ID == id || slices.Contains(p.Grazings[i].Told, id) {
			return p.Grazings[i], true
		}
	}
	return farm.Grazing{}, false
}

// firstDay gives the day on which a grazing began, as far as known.
func firstDay(g farm.Grazing) entry.Date {
	switch {
	case !g.Began.IsZero():
		return g.Began
	case !g.In.IsZero():
		return g.In
	}
	return g.Out
}

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
	for _, h := range p.HeldOn(e.Date) {
		if h.Until.IsZero() && !h.Reason.Guarded() {
			a.Remarks = append(a.Remarks, Remark{Kind: StaysHeld, Paddock: p.Name, Reason: h.Reason})
		}
	}
}

// before tells of the regrowth that was grazed from a day on, as foreseen the
// day before and as counted that day. Where nobody knows since when it grew, a
// count still tells its stage.
func before(f *farm.Farm, p *farm.Paddock, since, day entry.Date, met []farm.Counted) *Before {
	if !since.IsZero() && since >= day {
		return nil
	}
	h := p.Habit()
	stage, ok := f.StageBefore(p, day, met)
	if !ok {
		return nil
	}
	b := Before{Stage: stage, From: h.From, To: h.To}
	if !since.IsZero() {
		b.Days = day.Sub(since)
	}
	b.When = leaf.Advise(h, entry.LeafStage(stage), false)
	return &b
}

// cut tells of a cut.
func (a *Logged) cut(f *farm.Farm, l entry.Logged, e entry.Cut) {
	if p := f.Find(e.Paddock); p != nil {
		a.Others = holds(p, e.Date)
	}
}

// canopy tells of a closed canopy, and whether it closed below the window.
func (a *Logged) canopy(f *farm.Farm, e entry.Canopy, day entry.Date) {
	p := f.Find(e.Paddock)
	if p == nil {
		return
	}
	s, ok := f.Estimate(day).Stage(p.Name)
	if ok && entry.LeafStage(s.Mean) < p.Habit().From {
		a.Remarks = append(a.Remarks, Remark{Kind: ClosedEarly, Paddock: p.Name, Date: e.Date,
			Stage: entry.LeafStage(s.Mean)})
	}
	a.Others = holds(p, day)
}

// hold tells of a hold: until when, and who has the last word.
func (a *Logged) hold(f *farm.Farm, l entry.Logged, e entry.Hold, day entry.Date) {
	p := f.Find(e.Paddock)
	if p == nil {
		return
	}
	for _, h := range p.HeldOn(max(e.Date, day)) {
		// One of the same reason is another only where it ends later than this one.
		if h.ID != l.ID && (h.Reason != e.Reason || !e.Until.IsZero() && h.Until != e.Until) {
			a.Others = append(a.Others, Hold{h.Reason, h.Until, h.From})
		}
	}
	until := e.Until
	for _, h := range p.Holds {
		if h.ID == l.ID && h.ByRule {
			until = h.Until
			a.Remarks = append(a.Remarks, Remark{Kind: Held, Paddock: p.Name, Reason: h.Reason, Date: until})
		}
	}
	if d := guarded[e.Reason]; d != "" {
		a.Cautions = append(a.Cautions, Caution{Danger: d, Paddock: p.Name, Until: until})
		if until.IsZero() {
			a.Remarks = append(a.Remarks, Remark{Kind: AskUntil, Paddock: p.Name, Reason: e.Reason})
		}
	}
	if p.Occupied() {
		a.Remarks = append(a.Remarks, Remark{Kind: InIt, Paddock: p.Name, Mob: p.Stays[0].Mob, Date: p.Stays[0].Since})
	}
}

// release tells what still holds.
func (a *Logged) release(f *farm.Farm, e entry.Release) {
	if p := f.Find(e.Paddock); p != nil {
		a.Others = holds(p, e.Date)
		a.Cautions = heldCautions(p, e.Date)
	}
}

// rain tells the day's rain in all, and the week's.
func (a *Logged) rain(f *farm.Farm, e entry.Rain) {
	a.DayMm, _ = f.RainSince(e.Date.Add(-1), e.Date)
	a.WeekMm, _ = f.RainSince(e.Date.Add(-7), e.Date)
}

// note tells where help is to be had, if help is wanted.
func (a *Logged) note(f *farm.Farm, e entry.Note) {
	switch e.Alarm {
	case entry.AlarmPerson:
		a.Cautions = append(a.Cautions, Caution{Danger: Hurt, Paddock: e.Paddock, Emergency: emergency(f)})
	case entry.AlarmStock:
		a.Cautions = append(a.Cautions, Caution{Danger: Sick, Paddock: e.Paddock, Mob: e.Mob})
	}
}

// replaced tells what an undo withdrew or a correction mended, and how the
// paddock stands after it.
func (a *Logged) replaced(f *farm.Farm, l entry.Logged, day entry.Date) {
	var last string
	for _, o := range f.Replaced(l.ID) {
		a.Undone = append(a.Undone, Line{f.DayOf(o), o.Member, scored(f, o.Entry)})
		last = farm.PaddockOf(o.Entry)
	}
	if c, ok := l.Entry.(entry.Correct); ok && c.Field == entry.FieldPaddock {
		last = c.ToName
	}
	if p := f.Find(last); p != nil {
		s := stand(f, p, day)
		a.Name, a.Stood = p.Name, &s
	}
}

// setup tells what the register holds after it.
func (a *Logged) setup(f *farm.Farm, l entry.Logged, e entry.Setup, day entry.Date) {
	r := Register{AreaHa: 0, South: f.South(), NextAt: f.SummaryAt}
	for _, p := range f.Paddocks {
		if p.Listed {
			r.Paddocks++
			r.AreaHa += p.Area
		}
		if p.Listed && p.Area == 0 {
			r.Nameless++
		}
	}
	for _, m := range f.Mobs {
		if m.Listed && !m.Gone {
			r.Mobs++
		}
	}
	if f.Units == "acres" {
		r.Acres = float64(r.AreaHa) / entry.HectaresPerAcre
	}
	a.Register = &r
	if !done(f, e) {
		a.Remarks = append(a.Remarks, Remark{Kind: NotDone, Paddock: e.Paddock})
	}
	if p := f.Find(e.Paddock); p != nil && (e.What == entry.SetLastGrazed || e.What == entry.SetGrass) {
		s := stand(f, p, day)
		a.Stood = &s
	}
	if e.What == entry.SetFarm && f.ZoneName == "" {
		a.Remarks = append(a.Remarks, Remark{Kind: Suspect, Text: e.Zone})
	}
}
