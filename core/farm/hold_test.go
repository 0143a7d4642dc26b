package farm

import (
	"testing"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
)

func held(p string, day int, r entry.Reason, until entry.Date) entry.Hold {
	return entry.Hold{Paddock: p, Date: nov(day), Reason: r, Until: until}
}

func release(p string, day int, r entry.Reason) entry.Release {
	return entry.Release{Paddock: p, Date: nov(day), Reason: r}
}

// A hold ends on its Until date: that day it may be grazed.
func TestHoldEndsOnItsDate(t *testing.T) {
	p := newTeam(t).say(5, held("1", 5, entry.HoldSpray, nov(12))).paddock("1")
	require.Empty(t, p.HeldOn(nov(4)))
	require.Len(t, p.HeldOn(nov(5)), 1)
	require.Len(t, p.HeldOn(nov(11)), 1)
	require.Empty(t, p.HeldOn(nov(12)))
	free, ok := p.FreeFrom(nov(6))
	require.True(t, ok)
	require.Equal(t, nov(12), free)
}

// Several holds each run their own course: that it dried out doesn't lift the
// spray.
func TestHoldsRunTheirOwnCourse(t *testing.T) {
	m := newTeam(t).say(5, held("1", 5, entry.HoldSpray, nov(12)), held("1", 5, entry.HoldWet, 0))
	m.say(7, release("1", 7, ""))
	left := m.paddock("1").HeldOn(nov(7))
	require.Len(t, left, 1)
	require.Equal(t, entry.HoldSpray, left[0].Reason)
	require.Equal(t, []RemarkKind{StillHeld, Lifted}, m.kinds())
}

// Spray, effluent and fertiliser end on their date, or by a manager who names
// them; never by anybody else, never unnamed.
func TestGuardedHolds(t *testing.T) {
	for _, r := range []entry.Reason{entry.HoldSpray, entry.HoldEffluent, entry.HoldFertiliser} {
		m := newTeam(t).say(5, held("1", 5, r, 0))
		m.say(6, release("1", 6, ""))
		require.Len(t, m.paddock("1").HeldOn(nov(6)), 1, "a manager who names nothing")
		m.say(7, release("1", 7, r))
		m.log[len(m.log)-1].Manager = false
		require.Len(t, m.paddock("1").HeldOn(nov(7)), 1, "no manager")
		m.say(8, release("1", 8, entry.HoldWet))
		require.Len(t, m.paddock("1").HeldOn(nov(8)), 1, "another reason")
		m.say(9, release("1", 9, r))
		require.Empty(t, m.paddock("1").HeldOn(nov(9)), "a manager who names it")
		require.Len(t, m.paddock("1").HeldOn(nov(8)), 1, "it was held until then")
	}
}

func TestReleaseLiftsAllTheOthers(t *testing.T) {
	m := newTeam(t)
	for _, r := range entry.Reasons() {
		m.say(5, held("1", 5, r, 0))
	}
	m.say(6, release("1", 6, ""))
	var left []entry.Reason
	for _, h := range m.paddock("1").HeldOn(nov(6)) {
		left = append(left, h.Reason)
	}
	require.Equal(t, []entry.Reason{entry.HoldSpray, entry.HoldFertiliser, entry.HoldEffluent}, left)
}

func TestReleaseAndHoldOnOneDay(t *testing.T) {
	m := newTeam(t).say(5, held("1", 5, entry.HoldWet, 0), release("1", 5, ""))
	require.Empty(t, m.paddock("1").HeldOn(nov(5)))
	m.say(5, held("1", 5, entry.HoldWet, 0))
	require.Len(t, m.paddock("1").HeldOn(nov(5)), 1, "wet again the same day")
	m.say(6, release("2", 6, ""))
	require.Equal(t, []RemarkKind{NotHeld}, m.kinds())
}

// The farm's own days end a fertiliser hold, told before or after; a spray's
// end is on the label alone.
func TestFarmsOwnDays(t *testing.T) {
	m := newTeam(t).say(5, held("1", 5, entry.HoldFertiliser, 0), held("1", 5, entry.HoldSpray, 0))
	m.say(6, entry.Setup{What: entry.SetHoldDays, Reason: entry.HoldFertiliser, Days: 21},
		entry.Setup{What: entry.SetHoldDays, Reason: entry.HoldSpray, Days: 21})
	p := m.paddock("1")
	require.Equal(t, nov(26), p.Holds[0].Until)
	require.True(t, p.Holds[0].ByRule)
	require.Zero(t, p.Holds[1].Until)
	_, ends := p.FreeFrom(nov(6))
	require.False(t, ends)
}

// Holds that follow on each other free the paddock at the last one's end.
func TestFreeFromSeveralHolds(t *testing.T) {
	p := newTeam(t).say(5, held("1", 5, entry.HoldEffluent, nov(12)), held("1", 10, entry.HoldSpray, nov(20))).paddock("1")
	free, ok := p.FreeFrom(nov(6))
	require.True(t, ok)
	require.Equal(t, nov(20), free)
}

// The date sent after "until when?" ends the hold that had none; a later spray
// with a date of its own does not shorten the first.
func TestDateForAnOpenHold(t *testing.T) {
	m := newTeam(t).say(5, held("1", 5, entry.HoldSpray, 0), held("1", 6, entry.HoldSpray, nov(20)))
	require.Len(t, m.paddock("1").HeldOn(nov(6)), 1)
	require.Empty(t, m.paddock("1").HeldOn(nov(20)))
	m.say(7, held("1", 7, entry.HoldSpray, nov(12)))
	require.Equal(t, nov(20), m.paddock("1").HeldOn(nov(7))[0].Until, "of one reason, that which ends last is told")
	require.Len(t, m.paddock("1").HeldOn(nov(19)), 1)
}

func TestGrazingAHeldPaddockIsRemarked(t *testing.T) {
	m := newTeam(t).say(5, held("1", 5, entry.HoldSpray, nov(12))).say(6, in("1", 6, ""))
	require.Equal(t, []RemarkKind{WhileHeld}, m.kinds())
	require.True(t, m.paddock("1").Occupied(), "what happened is logged all the same")
}
