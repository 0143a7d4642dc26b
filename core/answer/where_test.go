package answer

import (
	"testing"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
)

// "Where are the milkers": where they are, then their last three moves.
func TestWhereAMobIs(t *testing.T) {
	l := totara()
	for i, p := range []string{"1", "2", "3", "4"} {
		day := nov(3 + i)
		l.say(day, "Jo", goes(p, day))
		l.say(day, "Jo", tillers(p, day, 2, 2))
	}
	l.say(nov(5), "Jo", entry.Graze{Paddock: "6", Date: nov(5), Event: entry.In, Mob: "heifers"})
	for _, about := range []entry.About{entry.AskHistory, entry.AskPaddock} {
		a := Question(l.farm(), entry.Question{About: about, Mob: "Milkers"}, noon(nov(8))).(History)
		require.Equal(t, "history", a.Subject())
		require.Len(t, a.Where, 1)
		require.Equal(t, "4", a.Where[0].Paddock)
		require.Equal(t, nov(6), a.Where[0].Since)
		require.Len(t, a.Entries, 3)
		for _, e := range a.Entries {
			require.Equal(t, entry.KindGraze, e.Entry.Kind())
			require.Equal(t, "milkers", e.Entry.(entry.Graze).Mob)
		}
	}
	a := Question(l.farm(), entry.Question{About: entry.AskHistory, Mob: "milkers", Days: 30}, noon(nov(8))).(History)
	require.Len(t, a.Entries, 5, "four moves, and that they were set up")
	a = Question(l.farm(), entry.Question{About: entry.AskHistory, Mob: "goats"}, noon(nov(8))).(History)
	require.Len(t, a.Where, 2, "of a mob that nobody knows: where the others are")
	require.Empty(t, a.Entries)
}
