package answer

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
)

// hurried is Totara Bend with a paddock grazed every day, far faster than grass
// comes back, from the third of November on, and a summary at six.
func hurried(upTo int) *log {
	l := totara()
	l.say(nov(1), "Ana", entry.Setup{What: entry.SetSummary, At: "06:00"})
	for d := 3; d <= upTo; d++ {
		l.say(nov(d), "Jo", entry.Graze{Paddock: fmt.Sprint(d%6 + 1), Date: nov(d), Event: entry.Grazed, Mob: "milkers"})
	}
	return l
}

func morning(l *log, day entry.Date) Summary {
	return Question(l.farm(), entry.Question{About: entry.AskSummary}, noon(day)).(Summary)
}

func (a Summary) advice(kind string) (Advice, bool) {
	for _, ad := range a.Advice {
		if ad.Kind == kind {
			return ad, true
		}
	}
	return Advice{}, false
}

// One move tells no round, and no advice hangs on it.
func TestNoAdviceFromAMoveOrTwo(t *testing.T) {
	a := morning(hurried(4), nov(4))
	require.Nil(t, a.Running)
	require.Empty(t, a.Advice)
}

// Said in full on the first morning, and marked as said on the next.
func TestAdviceIsNewOnce(t *testing.T) {
	first := -1
	for d := 5; d < 20; d++ {
		ad, ok := morning(hurried(d), nov(d)).advice("slow_down")
		if !ok {
			continue
		}
		if first < 0 {
			first = d
			require.False(t, ad.Again, "day %d", d)
		}
		if d > first+8 {
			require.True(t, ad.Again, "day %d", d)
		}
	}
	require.Positive(t, first)
	l := hurried(19)
	l.say(nov(19), "Ana", entry.Setup{What: entry.SetSummary, At: "06:00"})
	ad, ok := morning(l, nov(19)).advice("slow_down")
	require.True(t, ok)
	require.False(t, ad.Again, "the summary was set only today: nobody heard it yesterday")
}

// Nothing is ready: to go faster would be no use.
func TestNoSpeedUpWhereNothingIsReady(t *testing.T) {
	for d := 10; d < 28; d++ {
		l := totara()
		for i := range 5 {
			day := nov(1 + 2*i)
			l.say(day, "Jo", entry.Graze{Paddock: fmt.Sprint(i + 1), Date: day, Event: entry.Grazed, Mob: "milkers"})
		}
		l.say(nov(d), "Jo", entry.Hold{Paddock: "6", Date: nov(d), Reason: entry.HoldCrop})
		a := morning(l, nov(d))
		if _, is := a.advice("speed_up"); is {
			require.NotEqual(t, "below", string(a.Next[0].Ranked[0].Reason), "day %d", d)
		}
	}
}
