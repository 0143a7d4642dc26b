package answer

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
)

// grazedRound is Totara Bend with each paddock grazed two days apart.
func grazedRound() *log {
	l := totara()
	for i := range 6 {
		day := nov(1 + 2*i)
		l.say(day, "Jo", entry.Graze{Paddock: fmt.Sprint(i + 1), Date: day, Event: entry.Grazed, Mob: "milkers"})
	}
	l.say(nov(20), "Jo", tillers("1", nov(20), 2, 2.5, 2, 2.5, 2, 2.25))
	return l
}

func ask(t *testing.T, l *log, day entry.Date, q entry.Question) map[string]any {
	t.Helper()
	return keys(t, Question(l.farm(), q, noon(day)))
}

// The keys of the contract, section 4.
func TestKeysOfQuestions(t *testing.T) {
	want := map[entry.About][]string{
		entry.AskPaddock: {"paddock", "stage", "stage_low", "stage_high", "n", "days_since_grazing", "days_per_leaf", "pace",
			"ready_on", "target_on", "target_low", "target_high", "late_on", "advice"},
		entry.AskNext:  {"ranked", "left_out"},
		entry.AskReady: {"ranked", "left_out"},
		entry.AskRate:  {"days_per_leaf", "low", "high"},
		entry.AskRound: {"days_per_leaf", "round_shortest", "round_days", "round_longest", "area_ha", "ha_per_day", "running_days"},
		entry.AskPlan:  {"steps", "lost_share", "bound_share"},
		entry.AskDue:   {"paddocks"},
	}
	l := grazedRound()
	for about, list := range want {
		k := ask(t, l, nov(20), entry.Question{About: about, Paddock: map[bool]string{true: "1"}[about == entry.AskPaddock]})
		require.Equal(t, string(about), k["about"])
		for _, key := range list {
			require.Contains(t, k, key, about)
		}
	}
}

func TestRanking(t *testing.T) {
	l := grazedRound()
	l.say(nov(20), "Ana", entry.Hold{Paddock: "2", Date: nov(20), Reason: entry.HoldSpray, Until: nov(30)})
	k := ask(t, l, nov(20), entry.Question{About: entry.AskNext})
	first := k["ranked"].([]any)[0].(map[string]any)
	require.Equal(t, "1", first["paddock"])
	for _, key := range []string{"paddock", "stage", "advice", "target_on"} {
		require.Contains(t, first, key)
	}
	out := k["left_out"].([]any)[0].(map[string]any)
	require.Equal(t, "2", out["paddock"])
	require.Equal(t, "held: spray until 2026-11-30", out["why"])
	k = ask(t, l, nov(30), entry.Question{About: entry.AskNext})
	require.Empty(t, k["left_out"], "on its date it may be grazed")
}

func TestPaddockTellsItsHolds(t *testing.T) {
	l := grazedRound()
	l.say(nov(20), "Ana", entry.Hold{Paddock: "2", Date: nov(20), Reason: entry.HoldSpray, Until: nov(30)})
	l.say(nov(20), "Ana", entry.Hold{Paddock: "2", Date: nov(20), Reason: entry.HoldWet})
	k := ask(t, l, nov(21), entry.Question{About: entry.AskPaddock, Paddock: "2"})
	held := k["held"].([]any)
	require.Len(t, held, 2)
	require.Equal(t, "spray", held[0].(map[string]any)["reason"])
	require.Equal(t, "2026-11-30", held[0].(map[string]any)["until"])
	require.NotContains(t, held[1], "until")
	require.NotContains(t, ask(t, l, nov(21), entry.Question{About: entry.AskPaddock, Paddock: "1"}), "held")
}

func TestNothingKnown(t *testing.T) {
	l := totara()
	k := ask(t, l, nov(20), entry.Question{About: entry.AskPaddock, Paddock: "1"})
	require.Equal(t, "unknown", k["advice"])
	for _, key := range []string{"stage", "ready_on", "target_on", "late_on", "days_per_leaf", "pace"} {
		require.NotContains(t, k, key)
	}
	k = ask(t, l, nov(20), entry.Question{About: entry.AskPaddock, Paddock: "99"})
	require.Equal(t, "ask", k["about"])
	require.Empty(t, k["options"])
	require.NotNil(t, k["options"])
}

// 15 days × 3 leaves = a 45-day round, 1/45 of the area a day (Agriculture
// Victoria 2020). Here the pace is the estimator's, so the figures are held to
// each other: the longest round is that to three leaves, area ÷ days the
// hectares a day, and what was grazed of late gives the round being run.
func TestRoundFigures(t *testing.T) {
	l := grazedRound()
	a := Question(l.farm(), entry.Question{About: entry.AskRound}, noon(nov(20))).(Round)
	require.Equal(t, entry.Hectares(18), a.AreaHa)
	require.InDelta(t, float64(a.AreaHa)/a.RoundDays, a.HaPerDay, 1e-9)
	require.Less(t, a.RoundShortest, a.RoundDays)
	require.Less(t, a.RoundDays, a.RoundLongest)
	require.InEpsilon(t, 3*a.DaysPerLeaf, a.RoundLongest, 0.15, "in November the pace hardly moves")
	require.InDelta(t, float64(a.AreaHa) / *a.RunningHa, *a.RunningDays, 1e-9)
	what := Question(l.farm(), entry.Question{About: entry.AskRound, Days: 45}, noon(nov(20))).(Round)
	require.Equal(t, 45.0, *what.AskedDays)
	require.InDelta(t, 18.0/45, *what.AskedHa, 1e-9, "1/45 of the area a day (Agriculture Victoria 2020)")
	ha := Question(l.farm(), entry.Question{About: entry.AskRound, Ha: 0.4}, noon(nov(20))).(Round)
	require.InDelta(t, 45.0, *ha.AskedDays, 1e-9)
	shut := Question(l.farm(), entry.Question{About: entry.AskRound, Shut: []string{"1", "2"}}, noon(nov(20))).(Round)
	require.Equal(t, entry.Hectares(12), shut.AreaHa)
	back := Question(l.farm(), entry.Question{About: entry.AskRound, Shut: []string{"1", "2"}, Without: true}, noon(nov(20))).(Round)
	require.Equal(t, entry.Hectares(18), back.AreaHa)
}

func TestPlanSteps(t *testing.T) {
	l := grazedRound()
	a := Question(l.farm(), entry.Question{About: entry.AskPlan, Days: 10}, noon(nov(20))).(Plan)
	require.NotEmpty(t, a.Steps)
	require.Equal(t, 10, a.Days)
	require.LessOrEqual(t, a.BoundShare, a.LostShare)
	require.GreaterOrEqual(t, a.BoundShare, 0.0)
	for _, s := range a.Steps {
		require.Less(t, s.From, s.To)
	}
}

func TestRateTellsOfTheWeekBefore(t *testing.T) {
	k := ask(t, grazedRound(), nov(20), entry.Question{About: entry.AskRate, Paddock: "1"})
	require.Equal(t, "1", k["paddock"])
	require.Less(t, k["low"], k["days_per_leaf"])
	require.Less(t, k["days_per_leaf"], k["high"])
	require.Contains(t, k, "week_ago")
	require.NotContains(t, ask(t, totara(), nov(20), entry.Question{About: entry.AskRate}), "week_ago")
}

func TestWhyExplains(t *testing.T) {
	l := grazedRound()
	a := Question(l.farm(), entry.Question{About: entry.AskPaddock, Paddock: "1", Why: true}, noon(nov(20))).(Paddock)
	require.Equal(t, 1, a.Why.Counts)
	require.Equal(t, nov(1), a.Why.Since)
	require.Greater(t, a.Why.Season, 0.0)
	r := Question(l.farm(), entry.Question{About: entry.AskRate, Why: true}, noon(nov(20))).(Rate)
	require.Equal(t, 1, r.Why.FarmCount)
}

func TestHistory(t *testing.T) {
	l := grazedRound()
	a := Question(l.farm(), entry.Question{About: entry.AskHistory, Days: 10}, noon(nov(20))).(History)
	require.Len(t, a.Entries, 2)
	require.Equal(t, nov(20), a.Entries[0].Date, "latest first")
	require.Equal(t, nov(11), a.From)
	a = Question(l.farm(), entry.Question{About: entry.AskHistory, Paddock: "1"}, noon(nov(20))).(History)
	require.Len(t, a.Entries, 2)
	k := keys(t, a)
	require.Equal(t, "count", k["entries"].([]any)[0].(map[string]any)["entry"].(map[string]any)["kind"])
}

func TestDueTellsWhoCountedLast(t *testing.T) {
	l := grazedRound()
	a := Question(l.farm(), entry.Question{About: entry.AskDue}, noon(nov(29))).(Due)
	require.NotEmpty(t, a.Paddocks)
	for _, d := range a.Paddocks {
		require.NotEmpty(t, d.Why)
		if d.Paddock == "1" {
			require.Equal(t, "Jo", d.Member)
		}
	}
}

func TestSummary(t *testing.T) {
	l := grazedRound()
	l.say(nov(19), "Jo", entry.Graze{Paddock: "6", Date: nov(19), Event: entry.In, Mob: "milkers"})
	l.say(nov(19), "Jo", entry.Note{Text: "two down in 6", Paddock: "6", Alarm: entry.AlarmStock})
	l.say(nov(19), "Ana", entry.Hold{Paddock: "2", Date: nov(19), Reason: entry.HoldSpray, Until: nov(22)})
	l.say(nov(1), "Ana", entry.Hold{Paddock: "3", Date: nov(1).Add(-5), Reason: entry.HoldWet})
	l.say(nov(10), "Ana", entry.Rain{Date: nov(10), Mm: 5})
	a := Question(l.farm(), entry.Question{About: entry.AskSummary}, noon(nov(20))).(Summary)
	require.Equal(t, "6", a.Mobs[0].Paddock)
	require.Equal(t, 2, a.Mobs[0].Days)
	require.Len(t, a.Next, 1, "both mobs have the same choice")
	require.Equal(t, []string{"milkers", "heifers"}, a.Next[0].Mobs)
	require.LessOrEqual(t, len(a.Next[0].Ranked), 2)
	require.Len(t, a.ComingOut, 1)
	require.Len(t, a.OpenEnded, 1)
	require.Equal(t, "3", a.OpenEnded[0].Paddock)
	require.Equal(t, Sick, a.Cautions[len(a.Cautions)-1].Danger)
	require.Equal(t, nov(10), a.StaleSince, "ten days without weather are told")
	require.Positive(t, a.RoundDays)
	require.Contains(t, keys(t, a), "rate")
	empty := Question(new(log).farm(), entry.Question{About: entry.AskSummary}, noon(nov(20))).(Summary)
	require.True(t, empty.Empty)
}
