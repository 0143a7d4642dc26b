package farm

import (
	"testing"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
)

func (m *team) names() (out []string) {
	for _, p := range m.farm().Paddocks {
		out = append(out, p.Name)
	}
	return out
}

func TestPaddocksAddAndUpdateNeverDelete(t *testing.T) {
	m := newTeam(t).say(2, entry.Setup{What: entry.SetPaddocks, Paddocks: []entry.Plot{
		{Name: "river1", Area: 4.5}, {Name: "5", Area: 1, Grass: entry.Fescue, Mob: "heifers"}}})
	require.Equal(t, []string{"1", "2", "3", "River 1", "5"}, m.names())
	require.Equal(t, entry.Hectares(4.5), m.paddock("RIVER-1").Area)
	require.Equal(t, entry.Fescue, m.paddock("5").Grass)
	require.False(t, m.farm().MayGraze("milkers", m.paddock("5")))
}

// Names are matched without regard to case, spaces and punctuation; a number
// never for one that looks like it.
func TestFind(t *testing.T) {
	f := newTeam(t).farm()
	require.Equal(t, "River 1", f.Find(" river1").Name)
	require.Nil(t, f.Find("11"))
	require.Nil(t, f.Find(""))
}

func TestRenamedPaddockKeepsItsHistory(t *testing.T) {
	m := newTeam(t).say(3, grazed("1", 3)).say(9, count("1", 9, 1, 1.25))
	m.say(10, entry.Setup{What: entry.SetRename, Paddock: "1", To: "Dam"})
	m.say(12, count("dam", 12, 1.5, 1.25))
	p := m.paddock("Dam")
	require.Len(t, p.Counts, 2)
	require.Equal(t, p.Name, m.paddock("1").Name, "the old name still finds it")
	s, ok := m.farm().Estimate(nov(12)).Stage("Dam")
	require.True(t, ok)
	require.Equal(t, 9, s.Days)
	m.say(13, entry.Setup{What: entry.SetRename, Paddock: "2", To: "Dam"})
	require.Equal(t, "2", m.paddock("2").Name, "a name that is taken is left alone")
}

func TestRetiredPaddockLeavesItsHistory(t *testing.T) {
	m := newTeam(t).say(3, grazed("1", 3)).say(5, entry.Setup{What: entry.SetRetire, Paddock: "1"})
	require.Equal(t, []string{"2", "3", "River 1"}, m.names())
	f := m.farm()
	require.Len(t, f.History(f.Find("1"), nov(1), nov(30)), 2)
	m.say(6, entry.Setup{What: entry.SetPaddocks, Paddocks: []entry.Plot{{Name: "1"}}})
	require.Equal(t, nov(3), m.paddock("1").Regrowth.Since)
	require.Contains(t, m.names(), "1")
}

func TestSplitPaddocksShareHistoryAndArea(t *testing.T) {
	m := newTeam(t).say(3, grazed("River 1", 3)).say(5, held("River 1", 5, entry.HoldSpray, nov(20)))
	m.say(6, entry.Setup{What: entry.SetSplit, Paddock: "River 1", Paddocks: []entry.Plot{{Name: "East", Area: 1}, {Name: "West"}}})
	require.Equal(t, []string{"1", "2", "3", "East", "West"}, m.names())
	require.Equal(t, entry.Hectares(3), m.paddock("West").Area)
	for _, name := range []string{"East", "West"} {
		require.Equal(t, nov(3), m.paddock(name).Regrowth.Since)
		require.Len(t, m.paddock(name).HeldOn(nov(6)), 1, "the spray lies on both")
	}
	m.say(8, grazed("East", 8))
	require.Equal(t, nov(3), m.paddock("West").Regrowth.Since)
	require.Equal(t, nov(8), m.paddock("East").Regrowth.Since)
	m = newTeam(t).say(3, grazed("1", 3)).say(6, entry.Setup{What: entry.SetSplit, Paddock: "1",
		Paddocks: []entry.Plot{{Name: "1", Area: 0.5}, {Name: "1A"}}})
	require.Equal(t, []string{"1", "1A", "2", "3", "River 1"}, m.names())
	require.Equal(t, entry.Hectares(1.5), m.paddock("1A").Area)
	require.Equal(t, nov(3), m.paddock("1A").Regrowth.Since)
}

func TestMergedPaddocksAddUp(t *testing.T) {
	m := newTeam(t).say(3, grazed("1", 3)).say(5, grazed("2", 5)).say(5, held("1", 5, entry.HoldSpray, nov(20)))
	m.say(6, entry.Setup{What: entry.SetMerge, Names: []string{"1", "2"}, To: "Flat"})
	p := m.paddock("Flat")
	require.Equal(t, []string{"Flat", "3", "River 1"}, m.names())
	require.Equal(t, entry.Hectares(4), p.Area)
	require.Equal(t, nov(5), p.Regrowth.Since)
	require.Len(t, p.HeldOn(nov(6)), 1)
	require.Len(t, p.Grazings, 2)
}

func TestMobsThroughAYear(t *testing.T) {
	m := newTeam(t, "milkers", "heifers").say(3, in("1", 3, "milkers"), in("2", 3, "heifers"))
	m.say(5, entry.Setup{What: entry.SetMerged, Names: []string{"milkers", "heifers"}, To: "milkers"})
	f := m.farm()
	require.Equal(t, 200, f.FindMob("milkers").Head)
	require.Equal(t, f.FindMob("milkers"), f.FindMob("heifers"))
	require.Equal(t, nov(5), f.Find("2").Regrowth.Since, "the heifers left to join them")
	require.True(t, f.Find("1").Has("milkers"))
	m.say(8, entry.Setup{What: entry.SetAway, Mob: "milkers"})
	f = m.farm()
	require.Nil(t, f.FindMob("milkers").In)
	require.Equal(t, nov(8), f.Find("1").Regrowth.Since)
	m.say(20, entry.Setup{What: entry.SetBack, Mob: "milkers"})
	require.True(t, m.farm().FindMob("milkers").Active())
	m.say(21, entry.Setup{What: entry.SetMob, Mob: "heifers", Head: 40})
	f = m.farm()
	require.NotSame(t, f.FindMob("milkers"), f.FindMob("heifers"), "split off again")
	require.Equal(t, 40, f.FindMob("heifers").Head)
}

func TestWhereMobsMayGo(t *testing.T) {
	m := newTeam(t, "heifers").say(2, entry.Setup{What: entry.SetOnly, Mob: "heifers", Names: []string{"1", "2"}})
	f := m.farm()
	require.True(t, f.MayGraze("heifers", f.Find("1")))
	require.False(t, f.MayGraze("heifers", f.Find("3")))
	m.say(3, entry.Setup{What: entry.SetBar, Mob: "heifers", Names: []string{"2"}})
	f = m.farm()
	require.False(t, f.MayGraze("heifers", f.Find("2")))
	require.True(t, f.MayGraze("milkers", f.Find("2")))
}

func TestSettings(t *testing.T) {
	m := newTeam(t).say(2, entry.Setup{What: entry.SetSummary, At: "06:15"}, entry.Setup{What: entry.SetAim, Leaves: 2.75},
		entry.Setup{What: entry.SetUnits, Unit: "acres"}, entry.Setup{What: entry.SetQuiet, Yes: true})
	f := m.farm()
	require.Equal(t, "06:15", f.SummaryAt)
	require.Equal(t, entry.LeafStage(2.75), f.Aim)
	require.True(t, f.Quiet)
	require.Equal(t, "acres", f.Units)
	m.say(3, entry.Setup{What: entry.SetSummary, Off: true}, entry.Setup{What: entry.SetPlace, Lat: new(52.1), Lon: new(5.2)})
	require.Empty(t, m.farm().SummaryAt)
	require.False(t, m.farm().South(), "the latitude comes before the zone")
	m.say(4, entry.Setup{What: entry.SetRename, To: "Rimu Flat"}, entry.Setup{What: entry.SetFarm, Zone: "Nowhere/Land"})
	require.Equal(t, "Rimu Flat", m.farm().Name)
	require.Equal(t, "Pacific/Auckland", m.farm().ZoneName)
}

// A farm without a register: any name is a paddock.
func TestFarmWithoutARegister(t *testing.T) {
	m := (&team{t: t}).say(3, grazed("anything", 3)).say(9, count("anything", 9, 1, 1))
	p := m.paddock("anything")
	require.False(t, p.Listed)
	require.Equal(t, nov(3), p.Regrowth.Since)
}

// Two hectares every second day are one hectare a day (arithmetic).
func TestRunningRound(t *testing.T) {
	m := newTeam(t)
	for i := range 6 {
		m.say(2+2*i, grazed([]string{"1", "2", "3"}[i%3], 2+2*i))
	}
	r, ok := m.farm().RunningRound(nov(13))
	require.True(t, ok)
	require.InDelta(t, 1.0, float64(r.HaPerDay), 1e-9)
	require.InDelta(t, 10.0, float64(m.farm().RoundArea(nov(13))), 1e-9)
	r, _ = m.farm().RunningRound(nov(22))
	require.InDelta(t, 0.5, float64(r.HaPerDay), 1e-9, "10 ha in 20 days: stock that stopped moving slow the round")
	_, ok = newTeam(t).say(3, grazed("1", 3)).farm().RunningRound(nov(20))
	require.False(t, ok, "one grazing tells no pace")
	few := newTeam(t).say(2, grazed("1", 2)).say(5, grazed("2", 5)).say(8, grazed("3", 8))
	_, ok = few.farm().RunningRound(nov(8))
	require.False(t, ok, "two moves tell none either")
	stopped := few.say(9, grazed("2", 9))
	stopped.log[1].Entry = entry.Setup{What: entry.SetPaddocks, Paddocks: []entry.Plot{{Name: "1", Area: 2}, {Name: "2", Area: 2}, {Name: "3", Area: 2}, {Name: "4", Area: 20}}}
	_, ok = stopped.farm().RunningRound(nov(25))
	require.False(t, ok, "days without a grazing don't make the log longer")
	quick := newTeam(t).say(2, grazed("1", 2)).say(4, grazed("2", 4)).say(6, grazed("3", 6)).say(8, grazed("1", 8))
	r, ok = quick.farm().RunningRound(nov(8))
	require.True(t, ok, "more than half of the 10 ha were grazed, though in six days")
	require.InDelta(t, 1.0, float64(r.HaPerDay), 1e-9)
	f := m.say(14, entry.Setup{What: entry.SetDaily, Mob: "milkers", Ha: 3}).farm()
	mob, ok := f.MobHa(f.FindMob("milkers"), nov(14))
	require.True(t, ok)
	require.Equal(t, entry.Hectares(3), mob)
}

func TestHistoryAndTheLatestEntry(t *testing.T) {
	m := newTeam(t).say(3, grazed("1", 3)).say(5, count("1", 5, 1), entry.Note{Text: "gate", Paddock: "1"}, entry.Undo{})
	f := m.farm()
	l, ok := f.LatestBy(1)
	require.True(t, ok)
	require.Equal(t, entry.KindNote, l.Entry.Kind())
	require.Len(t, f.History(f.Find("1"), nov(1), nov(30)), 3)
	require.Len(t, f.History(f.Find("1"), nov(4), nov(30)), 2)
	require.Empty(t, f.Replaced(99))
}
