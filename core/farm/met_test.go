package farm

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// The normal day: a count in the morning, stock in after milking. What they
// met is what was counted, not what was foreseen the day before.
func TestStockMeetWhatWasCountedThatDay(t *testing.T) {
	m := newTeam(t, "milkers").say(1, grazed("1", 1)).say(25, count("1", 25, 1.5, 1.5, 1.5, 1.5, 1.5, 1.5, 1.5, 1.5))
	m.say(25, in("1", 25, "milkers"))
	p := m.paddock("1")
	foreseen, ok := m.farm().StageBefore(p, nov(25), nil)
	require.True(t, ok)
	require.Greater(t, foreseen, 2.0)
	met, ok := m.farm().StageBefore(p, nov(25), p.Stays[0].Met)
	require.True(t, ok)
	require.InDelta(t, 1.5, met, 0.15)
	m.say(26, out("1", 26, "milkers"))
	p = m.paddock("1")
	left, _ := m.farm().StageBefore(p, nov(25), p.Grazings[1].Met)
	require.Equal(t, met, left, "coming out tells the same as going in")
}

// A count that was sent after the stock went in says what they left to see.
func TestCountsAfterTheMoveAreNotWhatStockMet(t *testing.T) {
	m := newTeam(t, "milkers").say(1, grazed("1", 1)).say(25, in("1", 25, "milkers"), count("1", 25, 0.5, 0.5, 0.5))
	require.Empty(t, m.paddock("1").Stays[0].Met)
	m.say(26, out("1", 26, "milkers"))
	p := m.paddock("1")
	foreseen, _ := m.farm().StageBefore(p, nov(25), nil)
	stage, ok := m.farm().StageGrazed(p, p.Grazings[1])
	require.True(t, ok)
	require.Equal(t, foreseen, stage, "a low count in a paddock that is being eaten is no news")
}

// A count sent while stock were in that saw more than was foreseen is of grass
// that was still to be eaten: the walk often comes after the milking.
func TestAHighCountWhileStockAreInTells(t *testing.T) {
	m := newTeam(t, "milkers").say(10, grazed("1", 10)).say(25, in("1", 25, "milkers"), count("1", 25, 2.5, 2.5, 2.5, 2.5, 2.5, 2.5, 2.5))
	m.say(26, out("1", 26, "milkers"))
	p := m.paddock("1")
	stage, ok := m.farm().StageGrazed(p, p.Grazings[1])
	require.True(t, ok)
	require.InDelta(t, 2.45, stage, 0.15)
}

// Two normal errors weigh by their squares (inverse variances, any textbook):
// 2 ± 0.3 and 1.5 ± 0.1 make (2/0.09 + 1.5/0.01) / (1/0.09 + 1/0.01) = 1.55.
func TestMeetWeighsByError(t *testing.T) {
	mean, sd := weigh(2, 0.3, 1.5, 0.1)
	require.InDelta(t, 1.55, mean, 1e-12)
	require.InDelta(t, 0.0949, sd, 1e-4)
}
