package farm

import (
	"testing"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
	"leafround/core/leaf"
	"leafround/core/pace"
)

// kinds lists the kinds of what was noticed about the last entry.
func (m *team) kinds() []RemarkKind {
	m.t.Helper()
	var out []RemarkKind
	for _, r := range m.farm().Remarks(int64(len(m.log))) {
		out = append(out, r.Kind)
	}
	return out
}

// Regrowth starts on the day the last stock left (field guide, "Going round":
// ours for strips; common practice otherwise).
func TestRegrowthStartsWhenTheLastStockLeave(t *testing.T) {
	m := newTeam(t, "milkers", "heifers").say(3, in("1", 3, "milkers")).say(4, in("1", 4, "heifers"))
	m.say(5, out("1", 5, "milkers"))
	require.False(t, m.paddock("1").Grazed(), "the heifers are still in")
	require.Equal(t, []RemarkKind{OthersIn}, m.kinds())
	m.say(6, out("1", 6, "heifers"))
	p := m.paddock("1")
	require.Equal(t, nov(6), p.Regrowth.Since)
	require.Len(t, p.Grazings, 2)
	require.Equal(t, nov(3), p.Grazings[0].In)
	require.Equal(t, []string{"milkers"}, p.Grazings[0].Mobs)
}

func TestThreeDayStay(t *testing.T) {
	p := newTeam(t, "milkers").say(3, in("1", 3, "milkers")).say(6, out("1", 6, "milkers")).paddock("1")
	require.Equal(t, nov(6), p.Regrowth.Since)
	require.Equal(t, nov(3), p.Grazings[0].In)
	require.Empty(t, p.remarks)
}

// More than three days without a back fence are told (Aust. J. Agric. Res.
// 45:1809–1815), but not of set-stocked ewes, nor behind a back fence.
func TestLongStaysAreTold(t *testing.T) {
	m := newTeam(t, "milkers").say(3, in("1", 3, "milkers")).say(7, out("1", 7, "milkers"))
	require.Equal(t, []RemarkKind{OverStayed}, m.kinds())
	m = newTeam(t, "ewes").say(3, in("1", 3, "ewes")).say(17, out("1", 17, "ewes"))
	require.Empty(t, m.kinds())
	fenced := in("1", 3, "milkers")
	fenced.Back = true
	m = newTeam(t, "milkers").say(3, fenced).say(9, out("1", 9, "milkers"))
	require.Empty(t, m.kinds())
	require.Equal(t, 7, m.paddock("1").Regrowth.Strips)
}

func TestOutWithoutAStayIsAGrazing(t *testing.T) {
	m := newTeam(t).say(5, out("1", 5, ""))
	require.Equal(t, nov(5), m.paddock("1").Regrowth.Since)
	require.Equal(t, []RemarkKind{NeverIn}, m.kinds())
}

func TestInWhileInKeepsTheFirstDay(t *testing.T) {
	m := newTeam(t, "milkers").say(3, in("1", 3, "milkers")).say(4, in("1", 4, "milkers"))
	require.Equal(t, nov(3), m.paddock("1").Stays[0].Since)
	require.Len(t, m.paddock("1").Stays, 1)
	require.Equal(t, []RemarkKind{AlreadyIn}, m.kinds())
}

// A mob that goes into one paddock has left the other; stock without a name
// are the only mob's, where there is one.
func TestGoingInElsewhereIsGoingOut(t *testing.T) {
	m := newTeam(t, "milkers").say(3, in("1", 3, "")).say(5, in("2", 5, ""))
	f := m.farm()
	require.Equal(t, nov(5), f.Find("1").Regrowth.Since)
	require.Equal(t, []RemarkKind{TakenOut}, m.kinds())
	require.Equal(t, f.Find("2"), f.FindMob("milkers").In)
	require.Equal(t, nov(5), f.FindMob("milkers").Since)
	m = newTeam(t, "milkers", "heifers").say(3, in("1", 3, "")).say(5, in("2", 5, ""))
	require.True(t, m.paddock("1").Occupied(), "with two mobs, whose stock it was is not known")
}

// Day and night paddocks: each leaving starts regrowth again.
func TestDayAndNightPaddocks(t *testing.T) {
	m := newTeam(t, "milkers")
	for day := 3; day < 6; day++ {
		m.say(day, in("1", day, "milkers"), in("2", day, "milkers"))
	}
	m.say(6, in("3", 6, "milkers"))
	require.Equal(t, nov(5), m.paddock("1").Regrowth.Since)
	require.Equal(t, nov(6), m.paddock("2").Regrowth.Since)
	require.Len(t, m.paddock("1").Grazings, 3)
}

func TestOutOfEverybodyEndsEveryStay(t *testing.T) {
	m := newTeam(t, "milkers", "heifers").say(3, in("1", 3, "milkers"), in("1", 3, "heifers")).say(4, out("1", 4, ""))
	p := m.paddock("1")
	require.False(t, p.Occupied())
	require.Len(t, p.Grazings, 1)
	require.ElementsMatch(t, []string{"milkers", "heifers"}, p.Grazings[0].Mobs)
	require.Nil(t, m.farm().FindMob("milkers").In)
}

// The stage after strips is a mean over them (field guide, ours): half of it
// restarts half, and the other half, days later, all that was left.
func TestPartialGrazing(t *testing.T) {
	half := grazed("1", 5)
	half.Part = 0.5
	m := newTeam(t).say(5, half)
	require.Equal(t, 0.5, m.paddock("1").Regrowth.Share)
	require.Equal(t, nov(5), m.paddock("1").Regrowth.Since)
	half.Date = nov(8)
	m.say(8, half)
	require.Equal(t, 1.0, m.paddock("1").Regrowth.Share)
	half.Date = nov(28)
	m.say(28, half)
	require.Equal(t, 0.5, m.paddock("1").Regrowth.Share, "weeks later it is another grazing")
}

func TestCutStartsRegrowthAndEndsTheShuttingUp(t *testing.T) {
	m := newTeam(t).say(2, entry.Hold{Paddock: "1", Date: nov(2), Reason: entry.HoldSilage},
		entry.Hold{Paddock: "1", Date: nov(2), Reason: entry.HoldWet})
	m.say(20, entry.Cut{Paddock: "1", Date: nov(20), What: entry.Silage})
	p := m.paddock("1")
	require.Equal(t, nov(20), p.Regrowth.Since)
	require.Equal(t, entry.Silage, p.Regrowth.Cut)
	require.Len(t, p.HeldOn(nov(20)), 1)
	require.Equal(t, entry.HoldWet, p.HeldOn(nov(20))[0].Reason)
	m = newTeam(t).say(2, entry.Hold{Paddock: "1", Date: nov(2), Reason: entry.HoldSilage})
	m.say(20, entry.Cut{Paddock: "1", Date: nov(20), What: entry.Topped})
	require.Len(t, m.paddock("1").HeldOn(nov(20)), 1, "topping is not the cut that was waited for")
	require.Equal(t, nov(20), m.paddock("1").Regrowth.Since)
}

// "Silage cut on 1", and again from somebody else: one cut.
func TestACutToldTwiceIsOne(t *testing.T) {
	cut := entry.Cut{Paddock: "1", Date: nov(20), What: entry.Silage}
	m := newTeam(t).say(20, cut, cut)
	require.Len(t, m.paddock("1").Cuts, 1)
	require.Equal(t, []RemarkKind{CutAlready}, m.kinds())
}

func TestCanopyEndsWithTheNextGrazing(t *testing.T) {
	m := newTeam(t).say(10, entry.Canopy{Paddock: "1", Date: nov(10)})
	require.Equal(t, nov(10), m.paddock("1").Closed)
	require.Zero(t, m.say(12, grazed("1", 12)).paddock("1").Closed)
}

// Residuals: up to 6 cm, or 1,700 kg, is usual, twice that leaves half a leaf
// (a straight line; ours).
func TestLaxResidualGivesAStartingStage(t *testing.T) {
	for _, c := range []struct {
		r    entry.Residual
		want entry.LeafStage
	}{
		{entry.Residual{Value: 5, Unit: entry.Centimetres}, 0},
		{entry.Residual{Value: 6, Unit: entry.Centimetres}, 0},
		{entry.Residual{Value: 9, Unit: entry.Centimetres}, 0.25},
		{entry.Residual{Value: 30, Unit: entry.Centimetres}, 0.5},
		{entry.Residual{Value: 1500, Unit: entry.KgDMPerHa}, 0},
		{entry.Residual{Value: 2550, Unit: entry.KgDMPerHa}, 0.25},
		{entry.Residual{Value: 12 / 2.54, Unit: entry.Inches}, 0.5},
	} {
		g := grazed("1", 5)
		g.Residual = &c.r
		require.InDelta(t, float64(c.want), float64(newTeam(t).say(5, g).paddock("1").Regrowth.Start), 1e-9, c.r)
	}
}

func TestLastGrazedFromMemory(t *testing.T) {
	m := newTeam(t).say(20, entry.Setup{What: entry.SetLastGrazed, Paddock: "1", Names: []string{"2", "1"}, Date: nov(8)})
	for _, name := range []string{"1", "2"} {
		p := m.paddock(name)
		require.Equal(t, nov(8), p.Regrowth.Since)
		require.Equal(t, 12, p.Days(nov(20)))
	}
	_, ok := m.farm().RunningRound(nov(20))
	require.False(t, ok, "remembered dates say nothing of the round being run")
}

// Several counts in one regrowth, and two people on one day: all count. A
// count from before the grazing is of another regrowth.
func TestCountsOfARegrowth(t *testing.T) {
	m := newTeam(t).say(5, count("1", 5, 2.5, 3)).say(6, grazed("1", 6)).say(15, count("1", 15, 1, 1.25))
	m.say(18, count("1", 18, 1.5, 1.25), count("1", 18, 1.5, 1.75))
	p := m.paddock("1")
	require.Len(t, p.Counts, 3)
	require.Len(t, p.Every, 4)
	require.Equal(t, nov(6), p.Counts[0].Since)
	require.Equal(t, 2, m.farm().Estimate(nov(20)).Why("1").Counts-1, "the estimator has all three")
}

// Remnants: by size (common practice), or each a half (NSW Government).
func TestRemnantRuleScoresEveryCount(t *testing.T) {
	c := entry.Count{Paddock: "1", Date: nov(10),
		Said: []entry.Tiller{{Parts: true, Remnant: 0.8, Full: 1, New: 0.25}}}
	m := newTeam(t).say(10, c)
	require.InDelta(t, 2.05, float64(m.paddock("1").Counts[0].Mean), 1e-9)
	m.say(11, entry.Setup{What: entry.SetRemnant, Rule: entry.RemnantHalf})
	require.InDelta(t, 1.75, float64(m.paddock("1").Counts[0].Mean), 1e-9)
}

// A count is never held against itself: alone on a farm it is measured by the
// usual spread.
func TestSpreadOfAFirstCount(t *testing.T) {
	m := newTeam(t).say(10, count("1", 10, 2, 2.5, 2, 3))
	require.Equal(t, leaf.Usual, m.farm().SpreadFor(m.log[len(m.log)-1].ID))
	m.say(11, count("2", 11, 2, 2))
	require.NotEqual(t, leaf.Usual, m.farm().SpreadFor(m.log[len(m.log)-1].ID))
}

func TestEstimatorHearsOfWeatherGrazingsAndCounts(t *testing.T) {
	m := newTeam(t).say(2, grazed("1", 2)).say(12, count("1", 12, 1.5, 1.5, 1.5, 1.25, 1.5, 1.75))
	m.say(13, entry.Rain{Date: nov(13), Mm: 4}, entry.Rain{Date: nov(13), Mm: 6},
		entry.Temperature{Date: nov(13), Celsius: new(13.5), Where: entry.Soil})
	f := m.farm()
	d, ok := f.Weather(nov(13))
	require.True(t, ok)
	require.Equal(t, 10.0, *d.Rain, "rain of one day adds up")
	require.Equal(t, 13.5, *d.Soil)
	s, ok := f.Estimate(nov(14)).Stage("1")
	require.True(t, ok)
	require.Equal(t, 12, s.Days)
	require.InDelta(t, 1.7, s.Mean, 0.3)
	_, ok = f.Estimate(nov(14)).Stage("2")
	require.False(t, ok, "never counted and never grazed")
	var _ *pace.Estimate = f.Estimate(nov(14))
}
