package round

import (
	"math"
	"slices"

	"leafround/core/entry"
)

// crews gives the mobs from the moment each is free, and puts into the plan
// the steps in which they finish the paddocks they are in.
func (p Problem) crews(plan *Plan) []crew {
	var out []crew
	for m, mob := range p.Mobs {
		if mob.HaPerDay <= 0 {
			continue
		}
		c := crew{mob: m, rate: mob.HaPerDay}
		if f := p.current(mob); f != nil && mob.Left > 0 {
			c.start = float64(mob.Left) / mob.HaPerDay
			s := p.stay(f, mob.Name, 0, c.start)
			lost := newTally(int(c.start)+2, f.givenUp)
			s.Current, s.hectares, s.Lost = true, float64(mob.Left), lost.mean(0, c.start)
			plan.Steps = append(plan.Steps, s)
		}
		out = append(out, c)
	}
	return out
}

// current gives the paddock that a mob is in, unless that may not be grazed.
func (p Problem) current(m Mob) *Field {
	if m.In == "" {
		return nil
	}
	i := slices.IndexFunc(p.Fields, func(f Field) bool { return f.Name == m.In })
	if i < 0 || p.Fields[i].NoEnd || p.Fields[i].Free > p.Today || len(p.Fields[i].Grow) == 0 {
		return nil
	}
	return &p.Fields[i]
}

// jobs gives the paddocks to be grazed.
func (p Problem) jobs(crews []crew) []job {
	var out []job
	for i, f := range p.Fields {
		j := job{field: i, area: float64(f.Area), free: daysUntil(p.Today, f.Free)}
		if f.NoEnd || f.Area <= 0 || len(f.Grow) == 0 || p.stocked(f.Name) {
			continue
		}
		j.mobs = p.allowed(f, crews)
		p.pin(&j, crews)
		if slices.Contains(j.mobs, true) {
			out = append(out, j)
		}
	}
	return out
}

// stocked tells whether a mob is in the paddock and will finish it.
func (p Problem) stocked(name string) bool {
	return slices.ContainsFunc(p.Mobs, func(m Mob) bool {
		return m.In == name && m.HaPerDay > 0 && p.current(m) != nil
	})
}

func (p Problem) allowed(f Field, crews []crew) []bool {
	out := make([]bool, len(crews))
	for c, crew := range crews {
		out[c] = f.Mobs == nil || slices.Contains(f.Mobs, p.Mobs[crew.mob].Name)
	}
	return out
}

// pin puts the manager's wish on a job: the mob, and the day. A wish for a mob
// that may not graze there is not kept.
func (p Problem) pin(j *job, crews []crew) {
	for _, pin := range p.Pins {
		if pin.Paddock != p.Fields[j.field].Name || pin.Day < p.Today {
			continue
		}
		wished := make([]bool, len(crews))
		for c, crew := range crews {
			wished[c] = j.mobs[c] && (pin.Mob == "" || p.Mobs[crew.mob].Name == pin.Mob)
		}
		if slices.Contains(wished, true) {
			j.mobs, j.pinned, j.pinDay = wished, true, daysUntil(p.Today, pin.Day)
			return
		}
	}
}

// unmet gives the pins that the steps don't keep.
func (p Problem) unmet(steps []Step) []Pin {
	var out []Pin
	for _, pin := range p.Pins {
		day := pin.Day.Sub(p.Today)
		kept := slices.ContainsFunc(steps, func(s Step) bool {
			return s.Paddock == pin.Paddock && (pin.Mob == "" || s.Mob == pin.Mob) &&
				s.Start < float64(day+1) && s.End > float64(day)
		})
		if !kept {
			out = append(out, pin)
		}
	}
	return out
}

// ranks gives the order of an older plan as a rank of each job; nil without one.
func (p Problem) ranks(g *group, was []Step) func(int) float64 {
	if len(was) == 0 {
		return nil
	}
	at := make(map[string]float64, len(was))
	for k, s := range was {
		at[s.Paddock] = float64(k)
	}
	return func(j int) float64 { return at[p.Fields[g.jobs[j].field].Name] }
}

func (p Problem) step(g *group, t crewTurn) Step {
	f := &p.Fields[g.jobs[t.job].field]
	s := p.stay(f, p.Mobs[g.crews[t.crew].mob].Name, t.start, t.end)
	s.Lost = g.jobs[t.job].lost.mean(t.start, t.end)
	return s
}

// stay gives the step of a mob's stay in a paddock.
func (p Problem) stay(f *Field, mob string, start, end float64) Step {
	days := int(end) + 2
	stage := newTally(days, func(d int) float64 { return f.on(d).Mean })
	s := Step{Start: start, End: end, Paddock: f.Name, Mob: mob}
	s.Stage = entry.LeafStage(stage.mean(start, end))
	first := int(start + epsilon)
	last := max(first+1, int(math.Ceil(end-epsilon)))
	s.From, s.To = p.Today.Add(first), p.Today.Add(last)
	s.hectares = float64(f.Area)
	return s
}
