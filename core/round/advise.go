package round

import (
	"slices"

	"leafround/core/entry"
	"leafround/core/farm"
)

// AdviceKind names an advice for the team.
type AdviceKind string

// The advices.
const (
	SlowDown   AdviceKind = "slow_down"   // the round is faster than leaves come
	SpeedUp    AdviceKind = "speed_up"    // the round is slower than the window lasts
	Surplus    AdviceKind = "surplus"     // paddocks will pass their window before anyone reaches them
	Shortage   AdviceKind = "shortage"    // paddocks will be reached before their window opens
	LongStay   AdviceKind = "long_stay"   // three days in one paddock without a back fence
	EarlyTwice AdviceKind = "early_twice" // one paddock grazed below its window twice running
)

// Advice is one thing to do, with the figures behind it; fields that do not
// apply are zero. Advice to slow down or of a shortage asks what feeds the gap.
type Advice struct {
	Kind     AdviceKind
	Mob      string
	Paddocks []Spot          // which, when
	On       entry.Date      // from when it shows
	Running  float64         // the round being run, days
	Needed   float64         // the round that the grass needs to its target, days
	Shortest float64         // to the window's start
	Longest  float64         // to its end
	Stage    entry.LeafStage // at which paddocks will be reached if nothing changes
	Held     entry.LeafStage // that the needed round would hold
	HaPerDay float64         // grazed now
	HaNeeded float64         // that the needed round grazes
	Ha       entry.Hectares  // to shut up, or reached too early
	Days     int             // of a stay
}

// Spot is one paddock of an advice.
type Spot struct {
	Paddock string
	Area    entry.Hectares
	On      entry.Date // the day it passes its window
	Reached entry.Date // the day the plan reaches it
	Stage   entry.LeafStage
}

// Advise gives what the team should hear about the round on a day.
func Advise(f *farm.Farm, day entry.Date) []Advice {
	a := adviser{f: f, day: day, length: LengthOf(f, day, What{})}
	a.problem, _ = Build(f, day, What{})
	a.plan = Solve(a.problem)
	var out []Advice
	for _, ask := range []func() (Advice, bool){a.tooFast, a.tooSlow, a.surplus, a.shortage} {
		if advice, ok := ask(); ok {
			out = append(out, advice)
		}
	}
	out = append(out, a.longStays()...)
	return append(out, a.earlyTwice()...)
}

type adviser struct {
	f       *farm.Farm
	day     entry.Date
	length  Length
	problem Problem
	plan    Plan
}

func (a *adviser) base(k AdviceKind) Advice {
	l, mob := a.length, ""
	if len(a.problem.Mobs) == 1 {
		mob = a.problem.Mobs[0].Name
	}
	return Advice{Kind: k, Mob: mob, Running: l.Running, Needed: l.Days, Shortest: l.Shortest, Longest: l.Longest,
		HaPerDay: l.RunningHa, HaNeeded: l.HaPerDay}
}

// tooFast tells that the round being run reaches paddocks below their window:
// what is grazed today at its next grazing, or one in the plan before.
func (a *adviser) tooFast() (Advice, bool) {
	if a.length.Running <= 0 || a.length.Running >= a.length.Shortest {
		return Advice{}, false
	}
	advice := a.base(SlowDown)
	advice.Stage, advice.On = a.length.StageRunning, a.day.Add(int(a.length.Running+0.5))
	if s, ok := a.firstBelow(); ok && s.From < advice.On {
		advice.On = s.From
	}
	slow := LengthOf(a.f, a.day, What{Days: a.length.Days})
	advice.Held = slow.StageAtGrazing
	return advice, true
}

// firstBelow gives the first step that grazes below the window a paddock which
// the plan chose freely.
func (a *adviser) firstBelow() (Step, bool) {
	for _, s := range a.plan.Steps {
		if f := a.problem.field(s.Paddock); !s.Current && s.Stage < f.Habit.From && f.Closed == 0 {
			return s, true
		}
	}
	return Step{}, false
}

// tooSlow tells that what is grazed today will be past its window when the
// round being run comes back.
func (a *adviser) tooSlow() (Advice, bool) {
	if a.length.Running <= a.length.Longest || a.length.Longest <= 0 {
		return Advice{}, false
	}
	advice := a.base(SpeedUp)
	advice.Stage, advice.On = a.length.StageRunning, a.day.Add(int(a.length.Longest+0.5))
	advice.Held = LengthOf(a.f, a.day, What{Days: a.length.Days}).StageAtGrazing
	return advice, true
}

// surplus lists the paddocks that will pass their window before the plan
// reaches them, and how many hectares can be shut up: what the mobs, at what
// they graze now, leave over of a round to the target stage.
func (a *adviser) surplus() (Advice, bool) {
	advice := a.base(Surplus)
	e := a.f.Estimate(a.day)
	for _, s := range a.plan.Steps {
		f := a.problem.field(s.Paddock)
		past := reach(e, s.Paddock, f.Habit.To)
		if s.Current || past.IsZero() || past >= s.From || f.Closed > 0 || f.Free > past {
			continue
		}
		advice.Paddocks = append(advice.Paddocks, Spot{s.Paddock, f.Area, past, s.From, s.Stage})
	}
	if len(advice.Paddocks) == 0 || a.length.RunningHa <= 0 {
		return Advice{}, false
	}
	spare := float64(a.length.Area) - a.length.RunningHa*a.length.Days
	if spare <= 0 {
		return Advice{}, false
	}
	slices.SortStableFunc(advice.Paddocks, func(x, y Spot) int { return int(y.Reached - x.Reached) })
	advice.Paddocks = upTo(advice.Paddocks, spare)
	for _, s := range advice.Paddocks {
		advice.Ha += s.Area
		if advice.On.IsZero() || s.On < advice.On {
			advice.On = s.On
		}
	}
	return advice, true
}

// upTo keeps the first paddocks whose areas together come to so many hectares.
func upTo(spots []Spot, ha float64) []Spot {
	for i, s := range spots {
		if ha -= float64(s.Area); ha <= 0 {
			return spots[:i+1]
		}
	}
	return spots
}

// shortPart is the part of the round's area that must be reached below its
// window to make a shortage (ours).
const shortPart = 0.1

// shortage lists the paddocks that the plan will reach below their window,
// where they are more than a small part of the round.
func (a *adviser) shortage() (Advice, bool) {
	advice := a.base(Shortage)
	for _, s := range a.plan.Steps {
		f := a.problem.field(s.Paddock)
		if s.Current || s.Stage >= f.Habit.From || f.Closed > 0 {
			continue
		}
		ready := reach(a.f.Estimate(a.day), s.Paddock, f.Habit.From)
		advice.Paddocks = append(advice.Paddocks, Spot{s.Paddock, f.Area, ready, s.From, s.Stage})
		advice.Ha += f.Area
		if advice.On.IsZero() {
			advice.On, advice.Stage = s.From, s.Stage
		}
		advice.Stage = min(advice.Stage, s.Stage)
	}
	return advice, float64(advice.Ha) > shortPart*float64(a.length.Area)
}
