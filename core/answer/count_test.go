package answer

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"leafround/core/entry"
)

// counted logs a count and answers it the same day.
func (l *log) counted(t *testing.T, c entry.Count) Count {
	t.Helper()
	e := l.say(c.Date, "Jo", c)
	a, ok := Entry(l.farm(), e, noon(c.Date)).(Count)
	require.True(t, ok)
	return a
}

func (a Count) has(k RemarkKind) bool {
	for _, r := range a.Remarks {
		if r.Kind == k {
			return true
		}
	}
	return false
}

// 36 days, 2.25 leaves: 16 days per leaf (field guide, "Pace": days since the
// last grazing ÷ leaf stage, common practice; the figures are ours).
func TestDaysPerLeafPlainly(t *testing.T) {
	l := totara()
	day := nov(1).Add(36)
	l.say(nov(1), "Jo", entry.Graze{Paddock: "1", Date: nov(1), Event: entry.Out})
	a := l.counted(t, tillers("1", day, 2, 2.5, 2.25, 2.25))
	require.Equal(t, 2.25, *a.Stage)
	require.Equal(t, 36, *a.DaysSinceGrazing)
	require.InDelta(t, 16.0, *a.DaysPerLeaf, 1e-12)
	k := keys(t, a)
	for _, key := range []string{"about", "paddock", "stage", "stage_low", "stage_high", "n", "days_since_grazing", "days_per_leaf",
		"pace", "ready_on", "target_on", "target_low", "target_high", "late_on", "advice"} {
		require.Contains(t, k, key)
	}
	require.Equal(t, "2026-12-07", k["ready_on"], "reached: today")
	require.Equal(t, "ready", k["advice"])
}

// The interval of the mean by Student's t: a prior SD of 0.45 worth five
// tillers (ours), pooled with the sample's; quantile from gonum.
func TestIntervalOfTheMean(t *testing.T) {
	l := totara()
	scores := []float64{2, 2.5, 2, 2.5, 1.5, 2, 3, 2.5}
	c := entry.Count{Paddock: "1", Date: nov(20)}
	for _, s := range scores {
		c.Said = append(c.Said, entry.Tiller{Score: entry.LeafStage(s)})
	}
	a := l.counted(t, c.Scored(entry.RemnantBySize))
	mean, sd := stat.MeanStdDev(scores, nil)
	freedom := 5.0 + 7
	pooled := math.Sqrt((5*0.45*0.45 + 7*sd*sd) / freedom)
	half := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: freedom}.Quantile(0.975) * pooled / math.Sqrt(8)
	require.InDelta(t, mean, *a.Stage, 1e-12)
	require.InDelta(t, mean-half, *a.StageLow, 1e-9)
	require.InDelta(t, mean+half, *a.StageHigh, 1e-9)
	require.Equal(t, 8, *a.N)
}

// Never grazed in the log: the stage is known, the plain pace is not; it is
// asked for.
func TestCountWithoutAGrazing(t *testing.T) {
	a := totara().counted(t, tillers("1", nov(20), 1, 1.25, 1.5, 1, 1.25, 1))
	k := keys(t, a)
	require.NotContains(t, k, "days_since_grazing")
	require.NotContains(t, k, "days_per_leaf")
	require.Contains(t, k, "target_on")
	require.True(t, a.has(NeverGrazed))
	require.Equal(t, "wait", k["advice"])
}

func TestAdviceFollowsTheCount(t *testing.T) {
	for _, c := range []struct {
		score entry.LeafStage
		want  string
	}{{1.75, "wait"}, {2, "ready"}, {2.75, "ready"}, {3, "late"}} {
		l := totara()
		l.say(nov(1), "Jo", entry.Graze{Paddock: "1", Date: nov(1), Event: entry.Out})
		a := l.counted(t, tillers("1", nov(20), c.score, c.score, c.score, c.score, c.score, c.score))
		require.EqualValues(t, c.want, a.Advice, c.score)
		require.Equal(t, c.score >= 2, a.ReadyOn == nov(20), c.score)
		require.Equal(t, c.score >= 2.5, a.TargetOn == nov(20), c.score)
		require.Equal(t, c.score >= 3, a.LateOn == nov(20), c.score)
		require.True(t, a.ReadyOn <= a.TargetOn && a.TargetOn <= a.LateOn, c.score)
		require.True(t, a.TargetLow <= a.TargetOn && a.TargetOn <= a.TargetHigh, c.score)
	}
	l := totara()
	l.say(nov(19), "Jo", entry.Canopy{Paddock: "1", Date: nov(19)})
	a := l.counted(t, tillers("1", nov(20), 1.5, 1.5))
	require.EqualValues(t, "canopy", a.Advice)
	require.True(t, a.has(ClosedEarly))
}

// The farm's aim, or else the grass's target; tall fescue's window is 2 to 2.5
// (Oregon State, tall fescue monograph).
func TestTargets(t *testing.T) {
	l := totara()
	l.say(nov(1), "Ana", entry.Setup{What: entry.SetGrass, Paddock: "2", Grass: entry.Fescue})
	l.say(nov(1), "Ana", entry.Setup{What: entry.SetAim, Leaves: 2.75})
	a := l.counted(t, tillers("1", nov(20), 1, 1, 1))
	require.Equal(t, entry.LeafStage(2.75), a.Target)
	b := l.counted(t, tillers("2", nov(20), 1, 1, 1))
	require.Equal(t, entry.LeafStage(2.5), b.To)
	require.LessOrEqual(t, float64(b.Target), 2.5)
	require.EqualValues(t, "late", l.counted(t, tillers("2", nov(20), 2.5, 2.5)).Advice)
}

// That a grass is taken for ryegrass is said once, not with every count.
func TestUnknownGrassIsSaidOnce(t *testing.T) {
	l := totara()
	require.True(t, l.counted(t, tillers("1", nov(20), 2, 2)).has(GrassUnknown))
	require.False(t, l.counted(t, tillers("2", nov(20), 2, 2)).has(GrassUnknown))
	require.False(t, l.counted(t, tillers("1", nov(21), 2, 2)).has(GrassUnknown))
}

// Two people on one day: both count, and each hears of the other.
func TestTwoPeopleCount(t *testing.T) {
	l := totara()
	l.say(nov(1), "Jo", entry.Graze{Paddock: "1", Date: nov(1), Event: entry.Out})
	l.counted(t, tillers("1", nov(20), 2, 2, 2, 2, 2, 2))
	require.True(t, l.counted(t, tillers("1", nov(20), 2, 2, 2, 2, 2)).has(CountedBefore), "the same person again")
	(*l) = (*l)[:len(*l)-1]
	second := l.say(nov(20), "Wiremu", tillers("1", nov(20), 2.5, 2.5, 2.5, 2.5, 2.5, 2.5))
	b := Entry(l.farm(), second, noon(nov(20))).(Count)
	require.True(t, b.has(AlsoCounted))
	require.False(t, b.has(CountedBefore))
	require.Equal(t, 2.5, *b.Stage)
	s := Question(l.farm(), entry.Question{About: entry.AskPaddock, Paddock: "1"}, noon(nov(20))).(Paddock)
	require.InDelta(t, 2.25, *s.Stage, 0.1, "the paddock stands between the two")
}

// 2.5 leaves five days after grazing in winter can't be: kept, flagged, and
// it does not drag the farm's pace.
func TestOddCountIsFlagged(t *testing.T) {
	l := totara()
	july := entry.NewDate(2026, 7, 1)
	for i, p := range []string{"2", "3", "4", "5"} {
		l.say(july.Add(-40+i), "Jo", entry.Graze{Paddock: p, Date: july.Add(-40 + i), Event: entry.Out})
		l.say(july, "Jo", tillers(p, july, 1.5, 1.75, 1.5, 1.25, 1.5, 1.75))
	}
	before := l.farm().Estimate(july.Add(1)).Pace("").DaysPerLeaf
	l.say(july.Add(-4), "Jo", entry.Graze{Paddock: "1", Date: july.Add(-4), Event: entry.Out})
	a := l.counted(t, tillers("1", july.Add(1), 2.5, 2.5, 2.5, 2.5, 2.5, 2.5))
	require.True(t, a.has(Odd))
	require.InDelta(t, before, l.farm().Estimate(july.Add(1)).Pace("").DaysPerLeaf, 0.2*before)
}

// Mostly reproductive tillers: no date, and why.
func TestHeading(t *testing.T) {
	l := totara()
	l.say(nov(1), "Jo", entry.Graze{Paddock: "1", Date: nov(1), Event: entry.Out})
	c := tillers("1", nov(20), 2, 2.5)
	c.Skipped.Reproductive = 6
	a := l.counted(t, c)
	require.True(t, a.Heading)
	require.True(t, a.has(Heading))
	k := keys(t, a)
	require.NotContains(t, k, "target_on")
	require.Equal(t, "unknown", k["advice"])
}

// A count told late, of a regrowth that has been grazed since, says nothing of
// today.
func TestLateCountOfAnOlderRegrowth(t *testing.T) {
	l := totara()
	l.say(nov(1), "Jo", entry.Graze{Paddock: "1", Date: nov(1), Event: entry.Out})
	l.say(nov(15), "Jo", entry.Graze{Paddock: "1", Date: nov(15), Event: entry.Out})
	e := l.say(nov(20), "Jo", tillers("1", nov(11), 1.25, 1.25))
	a := Entry(l.farm(), e, noon(nov(20))).(Count)
	require.True(t, a.has(Older))
	require.Equal(t, 10, *a.DaysSinceGrazing)
	require.InDelta(t, 8.0, *a.DaysPerLeaf, 1e-12)
	require.NotContains(t, keys(t, a), "target_on")
}

// Parts enter by the rule: .8 + 1 + .2 = 2.0; .4 + 1 + .5 = 1.5 (field guide,
// ours by common practice).
func TestPartsAreCounted(t *testing.T) {
	part := func(r, f, n entry.LeafStage) entry.Tiller {
		return entry.Tiller{Parts: true, Remnant: r, Full: f, New: n}
	}
	c := entry.Count{Paddock: "1", Date: nov(20), Said: []entry.Tiller{part(.8, 1, .2), part(.4, 1, .5)}}
	a := totara().counted(t, c.Scored(entry.RemnantBySize))
	require.InDelta(t, 1.75, *a.Stage, 1e-12)
}
