package farm

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"leafround/core/entry"
)

var (
	somePaddocks = []string{"1", "2", "3", "River 1", "4", "9"}
	someMobs     = []string{"", "", "milkers", "heifers", "dries"}
)

// anyEntry draws one entry about the first three weeks of November.
func anyEntry(t *rapid.T) entry.Entry {
	p := rapid.SampledFrom(somePaddocks).Draw(t, "paddock")
	mob := rapid.SampledFrom(someMobs).Draw(t, "mob")
	day := nov(rapid.IntRange(1, 20).Draw(t, "day"))
	switch rapid.IntRange(0, 9).Draw(t, "sort") {
	case 0, 1, 2:
		event := rapid.SampledFrom([]entry.GrazeEvent{entry.In, entry.Out, entry.Grazed}).Draw(t, "event")
		part := rapid.SampledFrom([]float64{0, 0, 0.5}).Draw(t, "part")
		return entry.Graze{Paddock: p, Date: day, Event: event, Mob: mob, Part: part}
	case 3, 4:
		full := entry.LeafStage(rapid.IntRange(0, 2).Draw(t, "full"))
		return entry.Count{Paddock: p, Date: day, Said: []entry.Tiller{
			{Parts: true, Remnant: 0.8, Full: full, New: 0.5}, {Score: 1.5}}}
	case 5:
		return entry.Hold{Paddock: p, Date: day, Reason: rapid.SampledFrom(entry.Reasons()).Draw(t, "reason"),
			Until: rapid.SampledFrom([]entry.Date{0, day.Add(5)}).Draw(t, "until")}
	case 6:
		return entry.Release{Paddock: p, Date: day,
			Reason: rapid.SampledFrom([]entry.Reason{"", entry.HoldSpray, entry.HoldWet}).Draw(t, "reason")}
	case 7:
		return rapid.SampledFrom([]entry.Entry{entry.Cut{Paddock: p, Date: day, What: entry.Hay},
			entry.Canopy{Paddock: p, Date: day}, entry.Note{Text: "gate", Paddock: p}}).Draw(t, "other")
	case 8:
		return rapid.SampledFrom([]entry.Entry{entry.Rain{Date: day, Mm: 4},
			entry.Temperature{Date: day, Celsius: new(12.0), Where: entry.Soil}}).Draw(t, "weather")
	}
	return anySetup(t, p, mob, day)
}

func anySetup(t *rapid.T, p, mob string, day entry.Date) entry.Entry {
	return rapid.SampledFrom([]entry.Entry{
		entry.Setup{What: entry.SetGrass, Paddock: p, Grass: entry.Fescue},
		entry.Setup{What: entry.SetLastGrazed, Paddock: p, Date: day},
		entry.Setup{What: entry.SetRename, Paddock: p, To: "Dam"},
		entry.Setup{What: entry.SetRetire, Paddock: p},
		entry.Setup{What: entry.SetSplit, Paddock: p, Paddocks: []entry.Plot{{Name: "4"}, {Name: "5"}}},
		entry.Setup{What: entry.SetMerge, Names: []string{p, "2"}, To: "Big"},
		entry.Setup{What: entry.SetMob, Mob: "milkers", Head: 300},
		entry.Setup{What: entry.SetMerged, Names: []string{"heifers", "dries"}, To: "young"},
		entry.Setup{What: entry.SetAway, Mob: "heifers", Date: day},
		entry.Setup{What: entry.SetBack, Mob: "heifers"},
		entry.Setup{What: entry.SetOnly, Mob: "milkers", Names: []string{p}},
		entry.Setup{What: entry.SetBar, Mob: "heifers", Names: []string{p}},
		entry.Setup{What: entry.SetBackFence, Mob: "milkers", Yes: true},
		entry.Setup{What: entry.SetRemnant, Rule: entry.RemnantHalf},
		entry.Setup{What: entry.SetPaddocks, Paddocks: []entry.Plot{{Name: "2", Mob: "heifers"}}},
		entry.Setup{What: entry.SetPlace, Lat: new(-37.8), Lon: new(175.3)},
		entry.Setup{What: entry.SetHoldDays, Reason: entry.HoldFertiliser, Days: 21},
		entry.Setup{What: entry.SetPaddocks, Paddocks: []entry.Plot{{Name: "9", Area: 3}}},
	}).Draw(t, "setup")
}

// firstEvent is a grazing from before all others, never withdrawn: a farm's
// very first event sets the day on which the estimator begins.
var firstEvent = entry.Setup{What: entry.SetLastGrazed, Paddock: "3", Date: nov(1).Add(-30)}

// However entries arrive (late, withdrawn, mended, told twice), the farm is
// the one that the whole log folds to.
func TestApplyEqualsFold(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		m := newTeam(t, "milkers").say(1, firstEvent)
		n := rapid.IntRange(1, 40).Draw(rt, "entries")
		for range n {
			m.say(20, anyEntry(rt))
		}
		f := New()
		for i := range m.log {
			f.Apply(m.log[i])
			f.Estimate(nov(rapid.IntRange(1, 30).Draw(rt, "looked at")))
			if rapid.IntRange(0, 4).Draw(rt, "withdraw") == 0 {
				j := rapid.IntRange(4, max(i, 4)).Draw(rt, "which")
				if j <= i && m.log[j].Stands() {
					m.log[j].ReplacedBy = m.log[i].ID
					f.Apply(m.log[j])
				}
			}
			f.Apply(m.log[i])
		}
		same(rt, Fold(m.log), f)
	})
}

// An entry that mends another keeps the other's SentAt and with it its place.
func TestMendedEntryKeepsItsPlace(t *testing.T) {
	m := newTeam(t, "milkers").say(5, in("1", 5, "milkers"), out("1", 5, "milkers"))
	f := m.farm()
	first := m.log[len(m.log)-2]
	mended := first
	mended.ID, mended.Entry = 99, in("1", 5, "milkers")
	first.ReplacedBy = 99
	f.Apply(first)
	f.Apply(mended)
	require.False(t, f.Find("1").Occupied())
	require.Equal(t, nov(5), f.Find("1").Regrowth.Since)
}

func TestLateEntryIsFoldedByItsDay(t *testing.T) {
	m := newTeam(t, "milkers").say(10, in("2", 10, "milkers")).say(12, in("1", 8, "milkers"))
	f := m.farm()
	require.Equal(t, nov(10), f.Find("1").Regrowth.Since, "the milkers left 1 when they went into 2")
	require.Equal(t, f.Find("2"), f.FindMob("milkers").In)
}

func TestTodayIsTheFarmsOwn(t *testing.T) {
	f := newTeam(t).farm()
	require.Equal(t, nov(26), f.Today(time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC)))
	require.True(t, f.South())
}

// Entries that come in any order make the same farm.
func TestAnyOrderOfArrival(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		m := newTeam(t, "milkers", "heifers").say(1, firstEvent)
		for range rapid.IntRange(1, 25).Draw(rt, "entries") {
			m.say(20, anyEntry(rt))
		}
		f := New()
		f.ApplyAll(rapid.Permutation(m.log).Draw(rt, "arrival"))
		same(rt, Fold(m.log), f)
	})
}

// Estimates that are kept for their day are the ones that would be made anew,
// whatever is told late in between.
func TestAskingBetween(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		m := newTeam(t, "milkers")
		f := Fold(m.log)
		for range rapid.IntRange(1, 20).Draw(rt, "entries") {
			p := rapid.SampledFrom(somePaddocks[:4]).Draw(rt, "paddock")
			day := rapid.IntRange(1, 20).Draw(rt, "day")
			e := rapid.SampledFrom([]entry.Entry{grazed(p, day), count(p, day, 1.5, 1.25), entry.Rain{Date: nov(day), Mm: 5},
				entry.Canopy{Paddock: p, Date: nov(day)}}).Draw(rt, "entry")
			m.say(20, e)
			f.Apply(m.log[len(m.log)-1])
			if j := rapid.IntRange(0, 3*len(m.log)).Draw(rt, "withdrawn"); j >= 4 && j < len(m.log)-1 && m.log[j].Stands() {
				m.log[j].ReplacedBy = m.log[len(m.log)-1].ID
				f.Apply(m.log[j])
			}
			f.Estimate(nov(rapid.IntRange(1, 30).Draw(rt, "looked at"))).Stage(p)
		}
		same(rt, Fold(m.log), f)
	})
}

// A paddock that was split off and comes back by its old name carries its own
// history only; what others carry on of it ends there.
func TestSplitPaddockComesBack(t *testing.T) {
	m := newTeam(t).say(3, grazed("1", 3)).say(5, entry.Setup{What: entry.SetSplit, Paddock: "1",
		Paddocks: []entry.Plot{{Name: "A"}, {Name: "B"}}})
	m.say(6, entry.Setup{What: entry.SetMerge, Names: []string{"A", "B"}, To: "1"}).say(9, grazed("1", 9))
	m.say(10, entry.Setup{What: entry.SetPaddocks, Paddocks: []entry.Plot{{Name: "A", Area: 1}}})
	require.Equal(t, nov(9), m.paddock("1").Regrowth.Since)
	require.Len(t, m.paddock("1").Grazings, 2)
	require.Equal(t, nov(3), m.paddock("A").Regrowth.Since, "the grazing of the 9th was not in A")
	require.Equal(t, []string{"1", "2", "3", "River 1", "A"}, m.names())
}
