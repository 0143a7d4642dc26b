package answer

import (
	"testing"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
)

func (a Logged) has(k RemarkKind) bool {
	for _, r := range a.Remarks {
		if r.Kind == k {
			return true
		}
	}
	return false
}

// The same count told twice is said to be that, not somebody else's.
func TestACountToldTwiceIsSaid(t *testing.T) {
	l := totara()
	require.False(t, l.counted(t, tillers("1", nov(20), 2, 2.5, 2)).has(ToldTwice))
	again := l.counted(t, tillers("1", nov(20), 2, 2.5, 2))
	require.True(t, again.has(ToldTwice))
	require.False(t, again.has(AlsoCounted))
}

// A hold told twice is not "also" that hold.
func TestAHoldToldTwiceIsSaid(t *testing.T) {
	l := totara()
	wet := entry.Hold{Paddock: "1", Date: nov(5), Reason: entry.HoldWet}
	require.Empty(t, l.logs(t, nov(5), wet).Others)
	again := l.logs(t, nov(5), wet)
	require.Empty(t, again.Others)
	require.True(t, again.has("held_already"))
	spray := entry.Hold{Paddock: "1", Date: nov(5), Reason: entry.HoldSpray, Until: nov(20)}
	require.Len(t, l.logs(t, nov(5), spray).Others, 1)
	spray.Until = nov(12)
	require.Equal(t, nov(20), l.logs(t, nov(5), spray).Others[1].Until, "the longer spray still binds")
}

// Stock without a name, where there are several mobs: which, and how to say it.
func TestTheMobsToChooseFromAreNamed(t *testing.T) {
	l := totara()
	a := l.logs(t, nov(5), entry.Graze{Paddock: "1", Date: nov(5), Event: entry.In})
	require.True(t, a.has("mob_untold"))
	require.Equal(t, []string{"milkers", "heifers"}, a.Remarks[0].Mobs)
	require.Empty(t, a.Mobs)
}

// Ground that is too wet stays held though it was grazed, and that is said.
func TestGrazingKeepsAWetHold(t *testing.T) {
	l := totara()
	l.say(nov(5), "Jo", entry.Hold{Paddock: "1", Date: nov(5), Reason: entry.HoldWet})
	require.True(t, l.logs(t, nov(6), goes("1", nov(6))).has(StaysHeld))
	l.say(nov(8), "Jo", entry.Release{Paddock: "1", Date: nov(8), Reason: entry.HoldWet})
	late := l.say(nov(8), "Jo", goes("1", nov(7)))
	require.False(t, Entry(l.farm(), late, noon(nov(8))).(Logged).has(StaysHeld), "it has dried out since")
	l = totara()
	l.say(nov(5), "Jo", entry.Hold{Paddock: "1", Date: nov(5), Reason: entry.HoldSpray})
	require.False(t, l.logs(t, nov(6), goes("1", nov(6))).has(StaysHeld), "a spray has its own words")
}
