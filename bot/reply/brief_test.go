package reply

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"leafround/core/answer"
	"leafround/core/entry"
	"leafround/core/farm"
)

// Three counts in one message get two lines each; a warning stays.
func TestBriefCounts(t *testing.T) {
	l := season()
	logged := []entry.Logged{
		l.say(nov(25), "Jo", tillers("7", nov(25), 1, 1.25, 1, 1.5, 1.25, 1)),
		l.say(nov(25), "Jo", tillers("8", nov(25), 1.5, 1.25, 1, 1.5, 1.25, 1)),
		l.say(nov(25), "Jo", tillers("4", nov(25), 1.5, 1.25, 1, 1.5)),
	}
	f := farm.Fold(*l)
	var as []answer.Answer
	for _, e := range logged {
		as = append(as, answer.Entry(f, e, noon(nov(25))))
	}
	require.Len(t, strings.Split(Brief(as[0], Voice{}), "\n"), 2)
	held := Plain(Brief(as[2], Voice{}))
	require.Contains(t, held, "Paddock 4 is sprayed until Mon 30 Nov: not to be grazed.")
	require.NotContains(t, held, "tillers")
	all := Plain(Join(Each(as, Voice{})))
	require.NotContains(t, all, "since grazing")
	require.Contains(t, Plain(Join(Each(as[:2], Voice{}))), "since grazing", "two are told in full")
	require.True(t, strings.HasSuffix(Brief(as[0], Voice{Understood: []string{"read x"}}), "\nI read x."))
}

// A day of setting up: one line for each paddock.
func TestBriefLastGrazed(t *testing.T) {
	l := season()
	e := l.say(nov(25), "Ana", entry.Setup{What: entry.SetLastGrazed, Paddock: "12", Date: nov(5)})
	text := Plain(Brief(answer.Entry(farm.Fold(*l), e, noon(nov(25))), Voice{}))
	require.Regexp(t, `^Paddock 12: last grazed on Thu 5 Nov, now at about [\d.]+ leaves\.$`, text)
}

func TestSmallFiguresAndUnits(t *testing.T) {
	require.Equal(t, "0.12 ha", Voice{}.area(0.12))
	require.Equal(t, "0.5 ha", Voice{}.area(0.5))
	require.Equal(t, "3.3 ha", Voice{}.area(3.34))
	require.Equal(t, "0.3 acres", Voice{Acres: true}.area(0.12))
	seven := &entry.Residual{Value: 7.62, Unit: entry.Centimetres}
	require.Equal(t, "7.6 cm", Voice{}.residual(seven))
	require.Equal(t, "3 inches", Voice{Inches: true}.residual(seven), "an inch is 2.54 cm")
	require.Equal(t, "no new leaf", leaves(0))
	require.Equal(t, "no new leaf", about(0.0, 3.0))
	require.Equal(t, "has no new leaf yet", stands(0.0, 3.0))
	require.Equal(t, "stands at about 2 leaves", stands(2.0, 3.0))
	require.Equal(t, "the scores are 2 2.5", Voice{}.Describe(entry.Correct{Field: entry.FieldTillers,
		ToTillers: []entry.Tiller{{Score: 2}, {Score: 2.5}}}))
}

// 9 days a leaf and 23 days to three leaves: they come faster by then.
func TestDriftIsTold(t *testing.T) {
	r := answer.Round{DaysPerLeaf: 9, RoundLongest: 23, To: 3}
	require.Equal(t, "less as the weeks go by", drift(r))
	r.RoundLongest = 27
	require.Empty(t, drift(r))
	r.RoundLongest = 31
	require.Equal(t, "more as the weeks go by", drift(r))
	r.Mixed = true
	require.Empty(t, drift(r), "means over several grasses don't show it")
}

// A count of nothing new is worded plainly, and dates are not told where stock
// are in the paddock or the count can't fit.
func TestCountsThatNeedOtherWords(t *testing.T) {
	l := season()
	e := l.say(nov(25), "Jo", tillers("10", nov(25), 0, 0, 0, 0, 0))
	text := Plain(HTML(answer.Entry(farm.Fold(*l), e, noon(nov(25))), Voice{}))
	require.Contains(t, text, "Paddock 10 has no new leaf yet.")
	require.NotContains(t, text, "0 to 0")
	e = l.say(nov(25), "Jo", tillers("11", nov(25), 2.75, 2.75, 2.75, 2.5, 2.75))
	require.NotContains(t, Plain(HTML(answer.Entry(farm.Fold(*l), e, noon(nov(25))), Voice{})), "Best time is now")
	require.Equal(t, "2.9 leaves seen, about 1.0 expected", odd("faster than fits: 2.9 leaves seen, about 1.0 expected"))
}

// The same cut and the same hold told again.
func TestToldAgain(t *testing.T) {
	l := season()
	say := func(e entry.Entry) string {
		l.say(nov(25), "Jo", e)
		again := l.say(nov(25), "Ana", e)
		return Plain(HTML(answer.Entry(farm.Fold(*l), again, noon(nov(25))), Voice{}))
	}
	require.Equal(t, "Paddock 9 was down as cut for silage today already; it is counted once.",
		say(entry.Cut{Paddock: "9", Date: nov(25), What: entry.Silage}))
	require.Equal(t, "Paddock 10 is out of the round: too wet.\nIt was down as too wet already.",
		say(entry.Hold{Paddock: "10", Date: nov(25), Reason: entry.HoldWet}))
}
