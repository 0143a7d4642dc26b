package answer

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
)

// logs says an entry and answers it the same day.
func (l *log) logs(t *testing.T, day entry.Date, e entry.Entry) Logged {
	t.Helper()
	in := l.say(day, "Jo", e)
	a, ok := Entry(l.farm(), in, noon(day)).(Logged)
	require.True(t, ok)
	return a
}

func (a Logged) dangers() (out []Danger) {
	for _, c := range a.Cautions {
		out = append(out, c.Danger)
	}
	return out
}

func goes(p string, day entry.Date) entry.Graze {
	return entry.Graze{Paddock: p, Date: day, Event: entry.In, Mob: "milkers"}
}

// What was logged, as the entry (contract, section 4).
func TestLoggedIsTheEntry(t *testing.T) {
	k := keys(t, totara().logs(t, nov(5), entry.Hold{Paddock: "4", Date: nov(5), Reason: entry.HoldWet, Until: nov(9)}))
	require.Equal(t, "hold", k["about"])
	require.Equal(t, "4", k["paddock"])
	require.Equal(t, "2026-11-05", k["date"])
	require.Equal(t, "wet", k["reason"])
	require.Equal(t, "2026-11-09", k["until"])
	k = keys(t, totara().logs(t, nov(5), entry.Undo{}))
	require.Equal(t, "undo", k["about"])
	k = keys(t, totara().logs(t, nov(5), entry.Graze{Paddock: "1", Date: nov(5), Event: entry.Out,
		Residual: &entry.Residual{Value: 6, Unit: entry.Centimetres}}))
	require.Equal(t, map[string]any{"value": 6.0, "unit": "cm"}, k["residual"])
}

func TestGrazingTellsOfTheRegrowthBefore(t *testing.T) {
	l := totara()
	l.say(nov(1), "Jo", entry.Graze{Paddock: "1", Date: nov(1), Event: entry.Out})
	a := l.logs(t, nov(10), goes("1", nov(10)))
	require.Equal(t, 9, a.Before.Days)
	require.EqualValues(t, "wait", a.Before.When, "nine days in spring are early")
	require.Greater(t, a.Before.Stage, 0.8)
	b := l.logs(t, nov(12), entry.Graze{Paddock: "1", Date: nov(12), Event: entry.Out, Mob: "milkers"})
	require.Equal(t, 3, b.Stay, "days 10, 11 and 12")
	require.InDelta(t, a.Before.Stage, b.Before.Stage, 1e-9)
}

func TestWithholdingIsShownEveryTime(t *testing.T) {
	l := totara()
	a := l.logs(t, nov(5), entry.Hold{Paddock: "1", Date: nov(5), Reason: entry.HoldSpray})
	require.Equal(t, []Danger{Spray}, a.dangers())
	require.Equal(t, AskUntil, a.Remarks[0].Kind, "the days are asked for, never suggested")
	for day := nov(6); day < nov(9); day++ {
		require.Equal(t, []Danger{Spray}, l.logs(t, day, goes("1", day)).dangers())
	}
	require.Equal(t, []Danger{Spray}, l.logs(t, nov(9), entry.Release{Paddock: "1", Date: nov(9)}).dangers())
	b := l.logs(t, nov(9), entry.Hold{Paddock: "2", Date: nov(9), Reason: entry.HoldWet})
	require.Empty(t, b.dangers())
	require.Empty(t, b.Remarks)
}

// Background cautions come at most once a week for a paddock or mob.
func TestBackgroundCautionsOnceAWeek(t *testing.T) {
	l := totara()
	l.say(nov(1), "Jo", entry.Note{Text: "heaps of Clover", Paddock: "1"})
	require.Equal(t, []Danger{Bloat}, l.logs(t, nov(2), goes("1", nov(2))).dangers())
	require.Empty(t, l.logs(t, nov(5), goes("1", nov(5))).dangers())
	require.Equal(t, []Danger{Bloat}, l.logs(t, nov(13), goes("1", nov(13))).dangers())
	require.Empty(t, l.logs(t, nov(14), goes("2", nov(14))).dangers(), "no clover there")
}

// Each background caution has its time (all thresholds ours).
func TestWhenCautionsApply(t *testing.T) {
	march := entry.NewDate(2026, time.March, 10)
	august := entry.NewDate(2026, time.August, 10)
	hard := entry.Graze{Paddock: "1", Date: march, Event: entry.Out, Residual: &entry.Residual{Value: 3, Unit: entry.Centimetres}}
	require.Equal(t, []Danger{Staggers}, totara().logs(t, march, hard).dangers())
	hard.Date = august
	require.Empty(t, totara().logs(t, august, hard).dangers(), "not in winter")

	l := totara()
	l.say(august, "Ana", entry.Hold{Paddock: "1", Date: august.Add(-30), Reason: entry.HoldEffluent, Until: august.Add(-9)})
	require.Equal(t, []Danger{Tetany}, l.logs(t, august, goes("1", august)).dangers())

	l = totara()
	l.say(nov(1), "Ana", entry.Hold{Paddock: "1", Date: nov(1), Reason: entry.HoldFertiliser, Until: nov(5)})
	require.Equal(t, []Danger{Nitrate}, l.logs(t, nov(10), goes("1", nov(10))).dangers())

	l = totara()
	l.say(nov(9), "Ana", entry.Rain{Date: nov(9), Mm: 35})
	require.Equal(t, []Danger{Pugging}, l.logs(t, nov(10), goes("1", nov(10))).dangers())

	l = totara()
	l.say(march, "Ana", entry.Cut{Paddock: "1", Date: march.Add(-20), What: entry.Topped})
	l.say(march, "Ana", entry.Rain{Date: march.Add(-1), Mm: 4})
	require.Equal(t, []Danger{Eczema}, l.logs(t, march, goes("1", march)).dangers())
}

func TestEmergencyNumberByZone(t *testing.T) {
	l := totara()
	a := l.logs(t, nov(5), entry.Note{Text: "came off the bike", Alarm: entry.AlarmPerson})
	require.Equal(t, []Danger{Hurt}, a.dangers())
	require.Equal(t, "111", a.Cautions[0].Emergency)
	for zone, want := range map[string]string{"Australia/Melbourne": "000", "Europe/Dublin": "999 or 112",
		"Europe/Paris": "112", "America/Chicago": "911", "Africa/Nairobi": ""} {
		l := &log{}
		l.say(nov(1), "Ana", entry.Setup{What: entry.SetFarm, Name: "F", Zone: zone})
		a := l.logs(t, nov(5), entry.Note{Text: "hurt", Alarm: entry.AlarmPerson})
		require.Equal(t, want, a.Cautions[0].Emergency, zone)
	}
}

func TestUndoAndCorrectTellWhatTheyReplaced(t *testing.T) {
	l := totara()
	c := l.say(nov(5), "Jo", tillers("1", nov(5), 2, 2))
	u := l.say(nov(5), "Jo", entry.Undo{})
	(*l)[c.ID-1].ReplacedBy = u.ID
	a := Entry(l.farm(), u, noon(nov(5))).(Logged)
	require.Len(t, a.Undone, 1)
	require.Equal(t, entry.KindCount, a.Undone[0].Entry.Kind())
	d := l.say(nov(6), "Jo", tillers("1", nov(6), 2, 2))
	fix := l.say(nov(6), "Jo", entry.Correct{Field: entry.FieldPaddock, From: "1", ToName: "2"})
	(*l)[d.ID-1].ReplacedBy = fix.ID
	l.say(nov(6), "Jo", tillers("2", nov(6), 2, 2))
	b := Entry(l.farm(), fix, noon(nov(6))).(Logged)
	require.Len(t, b.Undone, 1)
	require.Equal(t, "2", b.Stood.Paddock)
	require.Equal(t, "2", keys(t, b)["to"])
}

func TestRegisterAfterASetup(t *testing.T) {
	l := totara()
	a := l.logs(t, nov(2), entry.Setup{What: entry.SetPaddocks, Paddocks: []entry.Plot{{Name: "7", Area: 2}, {Name: "8"}}})
	require.Equal(t, 8, a.Register.Paddocks)
	require.Equal(t, entry.Hectares(20), a.Register.AreaHa)
	require.Equal(t, 1, a.Register.Nameless)
	b := l.logs(t, nov(2), entry.Setup{What: entry.SetLastGrazed, Paddock: "7", Date: nov(1).Add(-10)})
	require.Equal(t, 11, *b.Stood.DaysSinceGrazing)
	require.NotNil(t, b.Stood.Stage)
}

// A change of the register that did not take hold is not told as done.
func TestRegisterChangesThatDoNotTakeHold(t *testing.T) {
	kinds := func(e entry.Setup) (out []RemarkKind) {
		for _, r := range totara().logs(t, nov(5), e).Remarks {
			out = append(out, r.Kind)
		}
		return out
	}
	two := []entry.Plot{{Name: "1A"}, {Name: "1B"}}
	for _, e := range []entry.Setup{
		{What: entry.SetRename, Paddock: "1", To: "Dam"},
		{What: entry.SetRename, Mob: "heifers", To: "R2"},
		{What: entry.SetRetire, Paddock: "1"},
		{What: entry.SetSplit, Paddock: "1", Paddocks: two},
		{What: entry.SetMerge, Names: []string{"1", "2"}, To: "Flat"},
		{What: entry.SetMerge, Names: []string{"1", "2"}, To: "1"},
	} {
		require.Empty(t, kinds(e), "%+v", e)
	}
	for _, e := range []entry.Setup{
		{What: entry.SetRename, Paddock: "1", To: "2"},
		{What: entry.SetRename, Mob: "heifers", To: "milkers"},
		{What: entry.SetRetire, Paddock: "99"},
		{What: entry.SetSplit, Paddock: "99", Paddocks: two},
		{What: entry.SetMerge, Names: []string{"1", "99"}, To: "Flat"},
	} {
		require.Equal(t, []RemarkKind{NotDone}, kinds(e), "%+v", e)
	}
}
