package round

import (
	"slices"

	"leafround/core/entry"
	"leafround/core/farm"
	"leafround/core/pace"
)

// foresight is how far ahead holds are looked at, days (ours): what is free
// only later is left out of the plan.
const foresight = 120

// Build makes a problem of a farm on a day, bent by a what-if, and lists what
// is left out of it.
func Build(f *farm.Farm, day entry.Date, w What) (Problem, []LeftOut) {
	e := f.Estimate(day)
	b := builder{f: f, e: e, day: day, what: w}
	b.herds()
	for _, p := range f.Paddocks {
		b.paddock(p)
	}
	b.finish()
	return b.problem, b.left
}

type builder struct {
	f       *farm.Farm
	e       *pace.Estimate
	day     entry.Date
	what    What
	mobs    []*farm.Mob // nil stands for stock without a name
	problem Problem
	left    []LeftOut
}

// herds lists the mobs that go round: those on the farm that are registered,
// or have been seen in a paddock; stock that stay for weeks in one paddock do
// not. A farm without any has one without a name.
func (b *builder) herds() {
	for _, m := range b.f.Mobs {
		if m.Active() && (m.Listed || m.In != nil) && !farm.SetStocked(m.Name) {
			b.mobs = append(b.mobs, m)
		}
	}
	if len(b.mobs) == 0 {
		b.mobs = []*farm.Mob{nil}
	}
	b.problem.Today = b.day
}

// paddock adds a paddock as a field, or says why not.
func (b *builder) paddock(p *farm.Paddock) {
	l := LeftOut{Paddock: p.Name}
	free, ends := freeFor(p, b.day)
	stage, known := b.e.Stage(p.Name)
	switch {
	case listed(b.f, b.what.Shut, p):
		l.Why = OutShut
	case !ends || free > b.day.Add(foresight):
		l.Why, l.Held, l.Free = OutHeld, holdsFrom(p, b.day), free
		if ends {
			l.Why = OutLater
		}
	case b.strangers(p):
		l.Why = OutStock
		for _, s := range p.Stays {
			l.Mobs = append(l.Mobs, s.Mob)
		}
	case !known && !p.Occupied(): // stock that are in an unknown one finish it all the same
		l.Why = OutUnknown
	case len(b.allowed(p)) == 0:
		l.Why = OutNoMob
	default:
		b.problem.Fields = append(b.problem.Fields, Field{Name: p.Name, Area: p.Area, Free: free,
			Habit: p.Habit(), Closed: closedAt(b.e, p, stage.Mean), Mobs: b.allowed(p)})
		return
	}
	b.left = append(b.left, l)
}

// freeFor gives the first day from which no hold that is known binds any more.
// One that is to begin only later counts from now on, so that no plan runs
// into it.
func freeFor(p *farm.Paddock, day entry.Date) (entry.Date, bool) {
	free := day
	for _, h := range holdsFrom(p, day) {
		if h.Until.IsZero() && h.Lifted.IsZero() {
			return 0, false
		}
		free = max(free, endOf(h))
	}
	return free, true
}

// endOf gives the first day on which a hold with an end does not bind.
func endOf(h farm.Held) entry.Date {
	switch {
	case h.Until.IsZero():
		return h.Lifted
	case h.Lifted.IsZero():
		return h.Until
	}
	return min(h.Until, h.Lifted)
}

// holdsFrom gives the holds that bind on a day or will.
func holdsFrom(p *farm.Paddock, day entry.Date) []farm.Held {
	var out []farm.Held
	for _, h := range p.Holds {
		if h.On(day) || h.On(max(day, h.From)) {
			out = append(out, h)
		}
	}
	return out
}

// strangers tells whether stock are in it that don't go round.
func (b *builder) strangers(p *farm.Paddock) bool {
	return slices.ContainsFunc(p.Stays, func(s farm.Stay) bool {
		return !slices.ContainsFunc(b.mobs, func(m *farm.Mob) bool { return m != nil && m.In == p || m == nil && s.Mob == "" })
	})
}

// allowed names the mobs that may graze a paddock.
func (b *builder) allowed(p *farm.Paddock) []string {
	out := []string{}
	for _, m := range b.mobs {
		if m == nil {
			out = append(out, "")
		} else if b.f.MayGraze(m.Name, p) {
			out = append(out, m.Name)
		}
	}
	return out
}

// finish fills in what hangs on the whole: areas that nobody told, hectares a
// day, what is left in the paddocks with stock, and how the grass will grow.
func (b *builder) finish() {
	b.areas()
	b.rates()
	b.stock()
	for _, pin := range b.f.Pins {
		b.pin(pin)
	}
	days := b.horizon()
	for i := range b.problem.Fields {
		b.problem.Fields[i].Grow = b.grow(b.problem.Fields[i].Name, days)
	}
}

// areas gives a paddock whose area nobody told the mean of the others, or a
// hectare (ours).
func (b *builder) areas() {
	sum, n := entry.Hectares(0), 0
	for _, f := range b.problem.Fields {
		if f.Area > 0 {
			sum, n = sum+f.Area, n+1
		}
	}
	mean := entry.Hectares(1)
	if n > 0 {
		mean = sum / entry.Hectares(n)
	}
	for i := range b.problem.Fields {
		if b.problem.Fields[i].Area <= 0 {
			b.problem.Fields[i].Area = mean
		}
	}
}

func (b *builder) pin(pin farm.Pin) {
	if pin.Date < b.day {
		return
	}
	p := b.f.Find(pin.Paddock)
	if p == nil {
		return
	}
	mob := pin.Mob
	if m := b.f.FindMob(mob); m != nil {
		mob = m.Name
	}
	b.problem.Pins = append(b.problem.Pins, Pin{Mob: mob, Paddock: p.Name, Day: pin.Date})
}

// horizon gives the days that the longest round can take.
func (b *builder) horizon() int {
	area, rate, free := 0.0, 0.0, 0
	for _, f := range b.problem.Fields {
		area += float64(f.Area)
		free = max(free, f.Free.Sub(b.day))
	}
	for _, m := range b.problem.Mobs {
		rate += m.HaPerDay
	}
	if rate <= 0 {
		return 1
	}
	return min(int(area/rate)+free+7, 300)
}

func (b *builder) grow(name string, days int) []Stage {
	out := make([]Stage, 0, days)
	for d := range days {
		mean, sd, known := b.e.At(name, b.day.Add(d))
		if !known { // stock are in it: taken as grazed in its time
			mean, sd = float64(b.f.Find(name).Habit().Target), 0
		}
		out = append(out, Stage{mean, sd})
	}
	return out
}
