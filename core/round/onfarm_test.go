package round

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"leafround/core/entry"
	"leafround/core/farm"
	"leafround/core/leaf"
)

// bend is Totara Bend with twelve paddocks and a winter's log, and what was
// said since.
func bend(day entry.Date, pace float64, more ...entry.Entry) *farm.Farm {
	d := newDiary(day.Add(-60))
	d.setUp(12, "milkers")
	d.season(12, "milkers", day.Add(-60), day, pace)
	d.on(day)
	for _, e := range more {
		d.say(e)
	}
	return farm.Fold(d.log)
}

func TestHoldsRunTheirOwnCourses(t *testing.T) {
	day := entry.NewDate(2026, time.September, 20)
	spray := entry.Hold{Paddock: "9", Date: day.Add(-3), Reason: entry.HoldSpray, Until: day.Add(4)}
	wet := entry.Hold{Paddock: "9", Date: day.Add(-1), Reason: entry.HoldWet}
	f := bend(day, 9, spray, wet)
	_, left := Rank(f, day, "")
	i := indexOut(left, "9")
	require.GreaterOrEqual(t, i, 0)
	assert.Len(t, left[i].Held, 2)
	assert.True(t, left[i].Free.IsZero(), "the wet has no end")
	assert.NotContains(t, names(PlanFor(f, day, 30, "", What{}).Steps), "9")

	f = bend(day, 9, spray, wet, entry.Release{Paddock: "9", Date: day, Reason: entry.HoldWet})
	_, left = Rank(f, day, "")
	i = indexOut(left, "9")
	require.GreaterOrEqual(t, i, 0, "that it dried out doesn't lift the spray")
	assert.Equal(t, day.Add(4), left[i].Free)
	for _, s := range PlanFor(f, day, 30, "", What{}).Steps {
		if s.Paddock == "9" {
			assert.GreaterOrEqual(t, s.From, day.Add(4))
		}
	}
	ranked, _ := Rank(f, day.Add(4), "")
	assert.GreaterOrEqual(t, indexRanked(ranked, "9"), 0, "on its until day it may be grazed")
}

func indexOut(left []LeftOut, name string) int {
	for i, l := range left {
		if l.Paddock == name {
			return i
		}
	}
	return -1
}

func indexRanked(ranked []Ranked, name string) int {
	for i, r := range ranked {
		if r.Paddock == name {
			return i
		}
	}
	return -1
}

func TestRankingGivesItsReasons(t *testing.T) {
	day := entry.NewDate(2026, time.September, 20)
	f := bend(day, 9,
		entry.Count{Paddock: "3", Date: day, Mean: 1.2, N: 8}, entry.Canopy{Paddock: "3", Date: day},
		entry.Count{Paddock: "4", Date: day, Mean: 2.9, N: 8}, entry.Count{Paddock: "5", Date: day, Mean: 2.2, N: 8},
		entry.Setup{What: entry.SetBar, Mob: "milkers", Names: []string{"5"}})
	ranked, _ := Rank(f, day, "")
	seen := 0
	for i, r := range ranked {
		require.NotEmpty(t, r.Reason)
		if i > 0 {
			assert.LessOrEqual(t, ranked[i-1].Reason.class(), r.Reason.class())
		}
		if r.Paddock == "3" {
			assert.Equal(t, ByCanopy, r.Reason)
			assert.Equal(t, leaf.Canopy, r.Advice)
			seen++
		}
	}
	assert.Equal(t, 1, seen)
	_, left := Rank(f, day, "milkers")
	i := indexOut(left, "5")
	require.GreaterOrEqual(t, i, 0)
	assert.Equal(t, OutBarred, left[i].Why)
	ready, left := Ready(f, day, "milkers")
	for _, r := range ready {
		assert.NotEqual(t, Below, r.Reason)
	}
	assert.Len(t, f.Paddocks, len(ready)+len(left), "each paddock is ranked or left out, never lost")
}

func TestPlanGoesRoundAgain(t *testing.T) {
	day := entry.NewDate(2026, time.September, 20)
	f := bend(day, 9)
	p := PlanFor(f, day, 40, "", What{})
	again, last := 0, 0.0
	for _, s := range p.Steps {
		require.InDelta(t, last, s.Start, 1e-6, "a mob is somewhere on every day of the plan")
		last = s.End
		if s.Again {
			again++
			assert.Less(t, float64(s.Stage), 5.0)
			assert.Greater(t, float64(s.Stage), 0.5)
		}
	}
	assert.GreaterOrEqual(t, last, 40.0)
	assert.Positive(t, again)
	assert.LessOrEqual(t, p.Whole.Bound, p.Whole.Lost)
	assert.LessOrEqual(t, p.BoundAtMean, p.LostAtMean)
}

func TestWhatIfsChangeNothing(t *testing.T) {
	day := entry.NewDate(2026, time.September, 20)
	f := bend(day, 9)
	was := LengthOf(f, day, What{})
	slow := LengthOf(f, day, What{Days: 35})
	assert.InDelta(t, 35, slow.Asked, 1e-9)
	assert.InDelta(t, was.Days, slow.Days, 1e-9)
	// The stage at the grass's own round is its target (ours: by definition).
	own := LengthOf(f, day, What{Days: was.Days})
	assert.InDelta(t, 2.5, float64(own.StageAtGrazing), 1e-6)
	ha := LengthOf(f, day, What{Ha: 2})
	assert.InDelta(t, float64(was.Area)/2, ha.Asked, 1e-9)
	shut := LengthOf(f, day, What{Shut: []string{"8", "p9"}})
	assert.Less(t, float64(shut.Area), float64(was.Area))
	assert.NotContains(t, names(PlanFor(f, day, 20, "", What{Shut: []string{"8"}}).Steps), "8")
	assert.Equal(t, was, LengthOf(f, day, What{}), "nothing was changed by asking")
}

func TestAdviceSlowsDownAndAsksInTime(t *testing.T) {
	// Twelve paddocks at two days each is a 24-day round; in July at 37° S leaves
	// take far more than 8 days (common practice: 20–35 in winter).
	day := entry.NewDate(2026, time.July, 1)
	f := bend(day, 16)
	var slow, short *Advice
	for _, a := range Advise(f, day) {
		switch a.Kind {
		case SlowDown:
			slow = &a
		case Shortage:
			short = &a
		}
		assert.NotEqual(t, SpeedUp, a.Kind)
		assert.NotEqual(t, Surplus, a.Kind)
	}
	require.NotNil(t, slow)
	assert.InDelta(t, 24, slow.Running, 1.5)
	assert.Greater(t, slow.Needed, slow.Running)
	assert.Less(t, float64(slow.Stage), 2.0)
	assert.InDelta(t, 2.5, float64(slow.Held), 0.01)
	require.NotNil(t, short)
	assert.Positive(t, short.Ha)
	for _, s := range short.Paddocks {
		assert.Less(t, float64(s.Stage), 2.0)
		assert.Greater(t, s.On, s.Reached, "it is reached before its window opens")
	}
}

func TestAdviceOfSurplus(t *testing.T) {
	// The same round in October, when leaves take 6 to 10 days (common practice),
	// is slower than a window lasts.
	day := entry.NewDate(2026, time.November, 1)
	d := newDiary(day.Add(-70))
	d.setUp(16, "milkers")
	d.season(16, "milkers", day.Add(-70), day, 8)
	f := farm.Fold(d.log)
	kinds := map[AdviceKind]Advice{}
	for _, a := range Advise(f, day) {
		kinds[a.Kind] = a
	}
	require.Contains(t, kinds, Surplus)
	s := kinds[Surplus]
	assert.Positive(t, s.Ha)
	for _, spot := range s.Paddocks {
		assert.Less(t, spot.On, spot.Reached, "it passes its window before anyone reaches it")
	}
}

func TestAdviceOfLongStaysAndRepeatedEarlyGrazing(t *testing.T) {
	day := entry.NewDate(2026, time.September, 20)
	d := newDiary(day.Add(-30))
	d.setUp(6, "milkers")
	say := func(on entry.Date, e entry.GrazeEvent, p string) {
		d.on(on)
		d.say(entry.Graze{Paddock: p, Date: on, Event: e, Mob: "milkers"})
	}
	say(day.Add(-28), entry.In, "1")
	say(day.Add(-27), entry.Out, "1")
	say(day.Add(-18), entry.In, "1") // nine days: below two leaves
	say(day.Add(-17), entry.Out, "1")
	say(day.Add(-8), entry.In, "1")
	say(day.Add(-7), entry.Out, "1")
	say(day.Add(-4), entry.In, "2")
	f := farm.Fold(d.log)
	kinds := map[AdviceKind]Advice{}
	for _, a := range Advise(f, day) {
		kinds[a.Kind] = a
	}
	require.Contains(t, kinds, LongStay)
	assert.Equal(t, "2", kinds[LongStay].Paddocks[0].Paddock)
	assert.Equal(t, 4, kinds[LongStay].Days)
	require.Contains(t, kinds, EarlyTwice)
	assert.Equal(t, "1", kinds[EarlyTwice].Paddocks[0].Paddock)
	assert.Less(t, float64(kinds[EarlyTwice].Stage), 2.0)
}

func TestDueFollowsTheLeafWalk(t *testing.T) {
	day := entry.NewDate(2026, time.September, 20)
	f := bend(day, 9, entry.Setup{What: entry.SetPaddocks, Paddocks: []entry.Plot{{Name: "New", Area: 2}}},
		entry.Hold{Paddock: "4", Date: day, Reason: entry.HoldSilage})
	due := map[string]DueWhy{}
	for _, d := range DueOn(f, day) {
		require.NotEmpty(t, d.Why)
		due[d.Paddock] = d.Why
	}
	assert.Equal(t, DueUnknown, due["New"])
	assert.NotContains(t, due, "4", "it is shut")
	for _, p := range f.Paddocks {
		if c, ok := p.LastCount(); ok && c.Date == day {
			assert.NotContains(t, due, p.Name)
		}
		if p.Occupied() {
			assert.NotContains(t, due, p.Name)
		}
	}
}

func TestChangesSinceTheMorning(t *testing.T) {
	day := entry.NewDate(2026, time.September, 20)
	morning := PlanFor(bend(day, 9), day, 10, "", What{})
	require.Empty(t, Changes(morning, PlanFor(bend(day, 9), day, 10, "", What{})))
	next := morning.Whole.Steps[1]
	require.False(t, next.Current)

	wet := PlanFor(bend(day, 9, entry.Hold{Paddock: next.Paddock, Date: day, Reason: entry.HoldWet}), day, 10, "", What{})
	changes := Changes(morning, wet)
	require.Len(t, changes, 1)
	assert.Equal(t, CauseOut, changes[0].Cause)
	assert.Equal(t, next.Paddock, changes[0].Was.Paddock)
	assert.Equal(t, entry.HoldWet, changes[0].LeftOut.Held[0].Reason)

	back := Changes(wet, morning)
	require.Len(t, back, 1)
	assert.Equal(t, CauseFree, back[0].Cause)

	ripe := morning.Whole.Steps[4]
	high := entry.Count{Paddock: ripe.Paddock, Date: day, Mean: 2.3, N: 10}
	changes = Changes(morning, PlanFor(bend(day, 9, high), day, 10, "", What{}))
	require.NotEmpty(t, changes)
	assert.Equal(t, CauseStage, changes[0].Cause)
	assert.Equal(t, ripe.Paddock, changes[0].Paddock)
	assert.Greater(t, changes[0].To, changes[0].From)

	moved := PlanFor(bend(day, 9, entry.Graze{Paddock: next.Paddock, Date: day, Event: entry.In, Mob: "milkers"}), day, 10, "", What{})
	assert.Empty(t, Changes(morning, moved), "it was done as planned")
}

// A new farm, of which little or nothing is known, gets answers without figures
// that are no numbers.
func TestLittleIsKnown(t *testing.T) {
	day := entry.NewDate(2026, time.September, 20)
	bare := newDiary(day)
	bare.setUp(3, "milkers", "heifers")
	still := newDiary(day)
	still.say(entry.Count{Paddock: "7", Date: day, Mean: 2.2, N: 8})
	for _, f := range []*farm.Farm{farm.New(), farm.Fold(bare.log), farm.Fold(still.log)} {
		for _, w := range []What{{}, {Days: 30}, {Ha: 2}, {Shut: []string{"1", "2", "3"}}} {
			l := LengthOf(f, day, w)
			for _, v := range []float64{l.Days, l.Shortest, l.Longest, l.HaPerDay, l.Running, l.Asked, l.AskedHa, float64(l.StageAtGrazing)} {
				assert.False(t, math.IsNaN(v) || math.IsInf(v, 0))
			}
			p := PlanFor(f, day, 20, "", w)
			assert.False(t, math.IsNaN(p.Whole.Lost) || math.IsNaN(p.LostAtMean))
			for _, m := range p.Mobs {
				assert.False(t, math.IsNaN(m.HaPerDay))
			}
		}
		Advise(f, day)
		DueOn(f, day)
		BestLength(f, day, 0)
		ranked, left := Rank(f, day, "")
		assert.Len(t, f.Paddocks, len(ranked)+len(left))
	}
}
