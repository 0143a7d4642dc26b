package round

import (
	"math"

	"leafround/core/entry"
	"leafround/core/farm"
	"leafround/core/pace"
)

// Length is what can be said of the round's length.
type Length struct {
	DaysPerLeaf float64 // the farm's mean, now
	Low, High   float64 // 80 %
	// The days that a paddock grazed today will need at the pace to come: to
	// the start of its window, its target stage, and the end of its window;
	// means over the paddocks in the round, weighted by area.
	Shortest, Days, Longest float64
	Area                    entry.Hectares  // in the round
	HaPerDay                float64         // area ÷ days
	RunningHa               float64         // hectares grazed a day of late; 0 where the log does not tell
	Running                 float64         // area ÷ that; 0 likewise
	StageRunning            entry.LeafStage // that a paddock grazed today will have at its next grazing
	Asked                   float64         // the round of a what-if; 0 where there is none
	AskedHa                 float64
	StageAtGrazing          entry.LeafStage // at the asked round
	Shut                    []string        // by the what-if
}

// What is a what-if: nothing of it is logged.
type What struct {
	Days float64        // a round of so many days
	Ha   entry.Hectares // so many hectares a day, all mobs together
	Shut []string       // these paddocks shut
}

// LengthOf gives the round that the grass needs and the one being run, side by
// side, and what a what-if would come to.
func LengthOf(f *farm.Farm, day entry.Date, w What) Length {
	e := f.Estimate(day)
	l := Length{}
	p := e.Pace("")
	l.DaysPerLeaf, l.Low, l.High = p.DaysPerLeaf, p.Low, p.High
	in := inRound(f, day, w.Shut)
	l.Area, l.Shut = areaOfPaddocks(in), w.Shut
	n := needs{e, day, in}
	l.Shortest = n.mean(func(p *farm.Paddock) entry.LeafStage { return p.Habit().From })
	l.Days = n.mean(func(p *farm.Paddock) entry.LeafStage { return Target(f, p) })
	l.Longest = n.mean(func(p *farm.Paddock) entry.LeafStage { return p.Habit().To })
	l.HaPerDay = HaPerDay(l.Area, l.Days)
	if r, ok := f.RunningRound(day); ok {
		l.RunningHa = float64(r.HaPerDay)
		l.Running = DaysAt(l.Area, l.RunningHa)
		l.StageRunning = n.stageAfter(l.Running)
	}
	l.whatIf(w, n)
	return l
}

// whatIf works out the round asked about: by its days, by hectares a day, or
// as it is run now with paddocks shut.
func (l *Length) whatIf(w What, n needs) {
	switch {
	case w.Days > 0:
		l.Asked = w.Days
	case w.Ha > 0:
		l.Asked = DaysAt(l.Area, float64(w.Ha))
	case len(w.Shut) > 0:
		l.Asked = l.Running
	}
	if l.Asked > 0 {
		l.AskedHa = HaPerDay(l.Area, l.Asked)
		l.StageAtGrazing = n.stageAfter(l.Asked)
	}
}

func inRound(f *farm.Farm, day entry.Date, shut []string) []*farm.Paddock {
	var out []*farm.Paddock
	for _, p := range f.Paddocks {
		if f.InRound(p, day) && !listed(f, shut, p) {
			out = append(out, p)
		}
	}
	return out
}

func listed(f *farm.Farm, names []string, p *farm.Paddock) bool {
	for _, n := range names {
		if f.Find(n) == p {
			return true
		}
	}
	return false
}

func areaOfPaddocks(ps []*farm.Paddock) (ha entry.Hectares) {
	for _, p := range ps {
		ha += p.Area
	}
	return ha
}

// needs asks how long regrowth from a day takes in the paddocks of a round.
type needs struct {
	e   *pace.Estimate
	day entry.Date
	in  []*farm.Paddock
}

// mean gives the days to a stage, which may differ by paddock, as a mean by
// area; without any paddock, those of the farm's mean paddock.
func (n needs) mean(stage func(*farm.Paddock) entry.LeafStage) float64 {
	sum, weight := 0.0, 0.0
	for _, p := range n.in {
		w := max(float64(p.Area), 1e-3) // where no area was told, each weighs the same
		sum += w * n.e.Needs(p.Name, n.day, stage(p))
		weight += w
	}
	if weight == 0 {
		return n.e.Needs("", n.day, stage(&farm.Paddock{}))
	}
	return sum / weight
}

// most is more leaves than any round that is asked about lets grow.
const most = 40.0

// stageAfter gives the stage to which the round's paddocks will have come so
// many days after a grazing today: where the days needed are those days, by
// the Illinois rule of false position (Dowell & Jarratt 1971).
func (n needs) stageAfter(days float64) entry.LeafStage {
	over := func(stage float64) float64 {
		return n.mean(func(*farm.Paddock) entry.LeafStage { return entry.LeafStage(stage) }) - days
	}
	low, atLow := 0.0, -days
	high, atHigh := 3.0, over(3)
	for atHigh < 0 && high < most {
		low, atLow = high, atHigh
		high *= 2
		atHigh = over(high)
	}
	if atHigh < 0 {
		return most
	}
	for range 40 {
		mid := (low*atHigh - high*atLow) / (atHigh - atLow)
		at := over(mid)
		if math.Abs(at) < 1e-6 {
			return entry.LeafStage(mid)
		}
		if at < 0 {
			low, atLow, atHigh = mid, at, atHigh/2
		} else {
			high, atHigh, atLow = mid, at, atLow/2
		}
	}
	return entry.LeafStage((low + high) / 2)
}

// closedAt reckons the stage at which a canopy closed, from the stage now and
// the pace (ours); 0 where it has not closed.
func closedAt(e *pace.Estimate, p *farm.Paddock, stage float64) entry.LeafStage {
	if p.Closed.IsZero() {
		return 0
	}
	since := float64(e.Day().Sub(p.Closed))
	return entry.LeafStage(max(0.5, stage-since/e.Pace(p.Name).DaysPerLeaf))
}
