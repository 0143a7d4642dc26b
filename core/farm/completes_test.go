package farm

import (
	"testing"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
)

func left(p string, day int, mob string, kg float64) entry.Graze {
	g := out(p, day, mob)
	g.Residual = &entry.Residual{Value: kg, Unit: entry.KgDMPerHa}
	return g
}

// The commonest order of two messages: "milkers in 2", then "1 left 2550". The
// second tells more of the grazing that the first ended; it is no other one.
func TestAnOutAfterTheMoveCompletesTheGrazing(t *testing.T) {
	for _, mob := range []string{"", "milkers"} {
		m := newTeam(t, "milkers").say(3, in("1", 3, "milkers")).say(5, in("2", 5, "milkers"), left("1", 5, mob, 2550))
		p := m.paddock("1")
		require.Equal(t, []RemarkKind{Completes}, m.kinds())
		require.Len(t, p.Grazings, 1)
		require.Equal(t, nov(3), p.Grazings[0].In)
		require.Equal(t, 2550.0, p.Grazings[0].Residual.Value)
		require.Equal(t, []int64{int64(len(m.log))}, p.Grazings[0].Told)
		require.Equal(t, entry.LeafStage(0.25), p.Regrowth.Start, "the lax residual is where regrowth begins")
		require.InDelta(t, 0.25, m.farm().Estimate(nov(5)).Why("1").Start, 1e-9, "and the estimator hears of it")
	}
}

// A day or two later it is still that grazing, and regrowth began when the mob
// was seen elsewhere; after that it is a grazing that nobody logged.
func TestHowLongAnOutCompletesAGrazing(t *testing.T) {
	m := newTeam(t, "milkers").say(3, in("1", 3, "milkers")).say(5, in("2", 5, "milkers")).say(7, left("1", 7, "", 1600))
	require.Equal(t, nov(5), m.paddock("1").Regrowth.Since)
	require.Equal(t, []RemarkKind{Completes}, m.kinds())
	m.say(12, out("1", 12, "milkers"))
	require.Equal(t, []RemarkKind{NeverIn}, m.kinds())
	require.Equal(t, nov(12), m.paddock("1").Regrowth.Since)
}

// Another mob's grazing, and a second "out" once the first was told, are
// grazings of their own.
func TestWhatDoesNotCompleteAGrazing(t *testing.T) {
	m := newTeam(t, "milkers", "heifers").say(3, in("1", 3, "milkers")).say(5, in("2", 5, "milkers"), out("1", 5, "heifers"))
	require.Equal(t, []RemarkKind{NeverIn}, m.kinds())
	require.Len(t, m.paddock("1").Grazings, 2)
	m = newTeam(t, "milkers").say(3, in("1", 3, "milkers")).say(5, out("1", 5, "milkers")).say(6, left("1", 6, "", 1600))
	require.Equal(t, []RemarkKind{Completes}, m.kinds(), "a residual told after the out belongs to it")
	m.say(6, out("1", 6, "milkers"))
	require.NotEqual(t, []RemarkKind{Completes}, m.kinds())
}

// Half was grazed, then all was done: the second word ends the same grazing,
// and stock need no going in.
func TestTheRestOfAPaddockIsTheSameGrazing(t *testing.T) {
	half := grazed("1", 25)
	half.Part = 0.5
	m := newTeam(t, "milkers").say(1, grazed("1", 1)).say(25, half).say(26, out("1", 26, "milkers"))
	require.Empty(t, m.kinds())
	gs := m.paddock("1").Grazings
	require.Equal(t, nov(1), gs[2].Before, "what it grazed had grown since the grazing before")
	require.Equal(t, nov(25), gs[2].Began, "and its stage is that of the first day")
}
