package farm

import (
	"testing"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
)

// Where several mobs are registered, stock without a name are nobody's: that is
// said, never guessed.
func TestStockWithoutANameAreNotGuessed(t *testing.T) {
	m := newTeam(t, "milkers", "heifers").say(3, in("1", 3, ""))
	require.Equal(t, []RemarkKind{MobUntold}, m.kinds())
	require.Empty(t, m.paddock("1").Stays[0].Mob)
	require.Nil(t, m.farm().FindMob("milkers").In)
	m = newTeam(t, "milkers").say(3, in("1", 3, ""))
	require.Empty(t, m.kinds(), "the only mob")
	m = newTeam(t).say(3, in("1", 3, ""))
	require.Empty(t, m.kinds(), "no mob is registered: there is nothing to choose from")
}

// The name may come a moment later; it is then the same stay.
func TestANameGivenLaterIsForTheSameStock(t *testing.T) {
	m := newTeam(t, "milkers", "heifers").say(3, in("1", 3, "")).say(4, in("1", 4, "milkers"))
	p := m.paddock("1")
	require.Equal(t, []RemarkKind{Named}, m.kinds())
	require.Len(t, p.Stays, 1)
	require.Equal(t, nov(3), p.Stays[0].Since)
	require.Equal(t, "milkers", p.Stays[0].Mob)
	require.Equal(t, p, m.farm().FindMob("milkers").In)
	m = newTeam(t, "milkers", "heifers").say(3, in("1", 3, "")).say(6, in("1", 6, "milkers"))
	require.Len(t, m.paddock("1").Stays, 2, "days later they may be others")
}

func TestANamedOutEndsTheStayOfStockWithoutAName(t *testing.T) {
	m := newTeam(t, "milkers", "heifers").say(3, in("1", 3, "")).say(6, in("1", 6, "milkers")).say(7, out("1", 7, "milkers"))
	p := m.paddock("1")
	require.False(t, p.Occupied())
	require.Equal(t, nov(7), p.Regrowth.Since)
	require.Equal(t, nov(3), p.Grazings[0].In)
}

// Holds of one reason are one in a list: that which ends last.
func TestHoldsOfOneReasonAreListedOnce(t *testing.T) {
	m := newTeam(t).say(5, held("1", 5, entry.HoldWet, 0), held("1", 5, entry.HoldWet, 0))
	require.Len(t, m.paddock("1").HeldOn(nov(6)), 1)
	require.Equal(t, []RemarkKind{HeldAlready}, m.kinds())
	m = newTeam(t).say(5, held("1", 5, entry.HoldSpray, nov(12))).say(6, held("1", 6, entry.HoldSpray, nov(20)))
	hs := m.paddock("1").HeldOn(nov(7))
	require.Len(t, hs, 1)
	require.Equal(t, nov(20), hs[0].Until)
	m = newTeam(t).say(5, held("1", 5, entry.HoldSpray, nov(12))).say(6, held("1", 6, entry.HoldSpray, 0))
	hs = m.paddock("1").HeldOn(nov(7))
	require.Len(t, hs, 1)
	require.Zero(t, hs[0].Until, "a second spray without its days holds until they are told")
	m = newTeam(t).say(5, held("1", 5, entry.HoldResown, nov(12)), held("1", 5, entry.HoldResown, 0))
	require.Equal(t, nov(12), m.paddock("1").HeldOn(nov(7))[0].Until, "said again on the same day, its date stays")
	require.Empty(t, m.paddock("1").HeldOn(nov(12)))
	m.say(13, entry.Release{Paddock: "1", Date: nov(13)})
	require.Equal(t, []RemarkKind{NotHeld}, m.kinds())
}

// The very same scores from one person on one day are one count told twice; two
// people who see the same are two counts.
func TestACountToldTwiceWeighsOnce(t *testing.T) {
	once := newTeam(t).say(1, grazed("1", 1)).say(20, count("1", 20, 2, 2, 2.5, 2))
	twice := newTeam(t).say(1, grazed("1", 1)).say(20, count("1", 20, 2, 2, 2.5, 2), count("1", 20, 2, 2, 2.5, 2))
	p := twice.paddock("1")
	require.Len(t, p.Counts, 1)
	require.Len(t, p.Every, 2)
	require.True(t, p.Every[1].Repeat)
	a, _ := once.farm().Estimate(nov(20)).Stage("1")
	b, _ := twice.farm().Estimate(nov(20)).Stage("1")
	require.Equal(t, a.SD, b.SD)
	require.Equal(t, once.farm().SpreadFor(0), twice.farm().SpreadFor(0))
	other := newTeam(t).say(1, grazed("1", 1)).say(20, count("1", 20, 2, 2, 2.5, 2), count("1", 20, 2, 2, 2.5, 2))
	other.log[len(other.log)-1].MemberID = 2
	require.Len(t, other.paddock("1").Counts, 2)
}

// Acres typed in the register make the farm speak of acres, unless its unit was
// set; inches told of what stock left, of inches.
func TestUnitsFollowWhatIsTyped(t *testing.T) {
	acres := entry.Setup{What: entry.SetPaddocks, Unit: "acres", Paddocks: []entry.Plot{{Name: "9", Area: entry.Acres(10)}}}
	require.Equal(t, "acres", newTeam(t).say(2, acres).farm().Units)
	require.Equal(t, "hectares", newTeam(t).say(2, entry.Setup{What: entry.SetUnits, Unit: "hectares"}, acres).farm().Units)
	require.Empty(t, newTeam(t).farm().Units)
	left := func(u entry.ResidualUnit) entry.Graze {
		g := out("1", 3, "")
		g.Residual = &entry.Residual{Value: 3, Unit: u}
		return g
	}
	require.False(t, newTeam(t).farm().Inches())
	require.True(t, newTeam(t).say(3, left(entry.Inches), left(entry.KgDMPerHa)).farm().Inches())
	require.False(t, newTeam(t).say(3, left(entry.Inches), left(entry.Centimetres)).farm().Inches())
}
