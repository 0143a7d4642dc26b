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
		a.Before = beforeOut(f, p, g)
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
		a.Before = beforeIn(f, p, e.Date, s.Met)
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

// beforeIn tells of the regrowth that stock find that go in on a day: as
// foreseen the day before and as counted that day.
func beforeIn(f *farm.Farm, p *farm.Paddock, day entry.Date, met []farm.Counted) *Before {
	stage, ok := f.StageBefore(p, day, met)
	return before(p, p.Regrowth.Since, day, stage, ok)
}

// beforeOut tells of the regrowth that a grazing took.
func beforeOut(f *farm.Farm, p *farm.Paddock, g farm.Grazing) *Before {
	stage, ok := f.StageGrazed(p, g)
	return before(p, g.Before, g.First(), stage, ok)
}

// before tells of a regrowth at a stage. Where nobody knows since when it grew,
// a count still tells its stage.
func before(p *farm.Paddock, since, day entry.Date, stage float64, known bool) *Before {
	if !known || !since.IsZero() && since >= day {
		return nil
	}
	h := p.Habit()
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
