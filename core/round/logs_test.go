package round

import (
	"fmt"
	"math/rand/v2"
	"time"

	"leafround/core/entry"
	"leafround/core/farm"
)

// diary writes a log for tests, one entry a call.
type diary struct {
	log []entry.Logged
	at  time.Time
}

func newDiary(day entry.Date) *diary { return &diary{at: day.Time().Add(7 * time.Hour)} }

func (d *diary) say(e entry.Entry) {
	d.at = d.at.Add(time.Minute)
	id := int64(len(d.log) + 1)
	d.log = append(d.log, entry.Logged{ID: id, Entry: e, SentAt: d.at, MemberID: 1, Member: "Ana",
		Manager: true, MessageID: id})
}

func (d *diary) on(day entry.Date) { d.at = day.Time().Add(7 * time.Hour) }

// setUp registers Totara Bend (invented) with so many paddocks of two hectares
// and more, and mobs.
func (d *diary) setUp(paddocks int, mobs ...string) {
	d.say(entry.Setup{What: entry.SetFarm, Name: "Totara Bend", Zone: "Pacific/Auckland"})
	var plots []entry.Plot
	for i := range paddocks {
		plots = append(plots, entry.Plot{Name: fmt.Sprint(i + 1), Area: entry.Hectares(2 + 0.25*float64(i%4))})
	}
	d.say(entry.Setup{What: entry.SetPaddocks, Paddocks: plots})
	for i, m := range mobs {
		d.say(entry.Setup{What: entry.SetMob, Mob: m, Head: 100 * (i + 1)})
	}
}

// season lets one mob go round from a day on, two days a paddock, with a count
// in the paddock after the next on each move, as leaves come at a pace of so
// many days each, to the day before the last.
func (d *diary) season(paddocks int, mob string, from, last entry.Date, pace float64) {
	at := 0
	for day := from; day < last; day = day.Add(2) {
		d.on(day)
		if day > from {
			d.say(entry.Graze{Paddock: fmt.Sprint(at%paddocks + 1), Date: day, Event: entry.Out, Mob: mob})
			at++
		}
		d.say(entry.Graze{Paddock: fmt.Sprint(at%paddocks + 1), Date: day, Event: entry.In, Mob: mob})
		if next := (at + 2) % paddocks; at > paddocks {
			stage := entry.LeafStage(2 * float64(paddocks-3) / pace)
			d.say(entry.Count{Paddock: fmt.Sprint(next + 1), Date: day, Mean: stage, N: 8})
		}
	}
}

// wander makes up a log of which nothing can be relied on: counts, grazings,
// holds of every kind with and without an end, releases, cuts, canopies,
// several mobs with bars and pins.
func wander(r *rand.Rand, first entry.Date, days int) *farm.Farm {
	d := newDiary(first)
	n := 4 + r.IntN(8)
	mobs := []string{"milkers", "heifers", "bulls"}[:r.IntN(4)]
	d.setUp(n, mobs...)
	any := func() string { return fmt.Sprint(r.IntN(n) + 1) }
	mob := func() string {
		if len(mobs) == 0 {
			return ""
		}
		return mobs[r.IntN(len(mobs))]
	}
	for k := range days {
		day := first.Add(k)
		d.on(day)
		for range r.IntN(4) {
			d.say(deed(r, day, any, mob))
		}
	}
	return farm.Fold(d.log)
}

func deed(r *rand.Rand, day entry.Date, any, mob func() string) entry.Entry {
	reasons := entry.Reasons()
	reason := reasons[r.IntN(len(reasons))]
	switch r.IntN(14) {
	case 0, 1, 2:
		return entry.Count{Paddock: any(), Date: day, Mean: entry.LeafStage(3.4 * r.Float64()), N: 3 + r.IntN(8)}
	case 3, 4:
		return entry.Graze{Paddock: any(), Date: day, Event: entry.In, Mob: mob()}
	case 5:
		return entry.Graze{Paddock: any(), Date: day, Event: entry.Out, Mob: mob()}
	case 6:
		return entry.Graze{Paddock: any(), Date: day, Event: entry.Grazed, Mob: mob(), Part: float64(r.IntN(2)) / 2}
	case 7:
		return entry.Cut{Paddock: any(), Date: day, What: entry.Silage}
	case 8:
		return entry.Canopy{Paddock: any(), Date: day}
	case 9:
		return entry.Hold{Paddock: any(), Date: day.Add(r.IntN(2) * r.IntN(9)), Reason: reason}
	case 10:
		from := day.Add(r.IntN(2) * r.IntN(9))
		return entry.Hold{Paddock: any(), Date: from, Reason: reason, Until: from.Add(1 + r.IntN(25))}
	case 11:
		return entry.Release{Paddock: any(), Date: day, Reason: []entry.Reason{"", reason}[r.IntN(2)]}
	case 12:
		return entry.Setup{What: entry.SetPin, Mob: mob(), Paddock: any(), Date: day.Add(r.IntN(10))}
	}
	if m := mob(); m != "" && r.IntN(2) == 0 {
		return entry.Setup{What: entry.SetBar, Mob: m, Names: []string{any()}}
	}
	return entry.Rain{Date: day, Mm: 10 * r.Float64()}
}
