package reply

import (
	"fmt"
	"time"

	"leafround/core/entry"
)

var nov = func(day int) entry.Date { return entry.NewDate(2026, time.November, day) }

// noon is noon of a day in Auckland (UTC+13 in November).
func noon(day entry.Date) time.Time { return day.Time().Add(-time.Hour) }

type log []entry.Logged

func (l *log) say(day entry.Date, who string, e entry.Entry) entry.Logged {
	id := int64(len(*l) + 1)
	out := entry.Logged{ID: id, Entry: e, SentAt: noon(day).Add(time.Duration(id) * time.Second), Member: who,
		MemberID: int64(len(who)), Manager: who == "Ana", MessageID: id}
	*l = append(*l, out)
	return out
}

func tillers(p string, day entry.Date, scores ...entry.LeafStage) entry.Count {
	c := entry.Count{Paddock: p, Date: day}
	for _, s := range scores {
		c.Said = append(c.Said, entry.Tiller{Score: s})
	}
	return c.Scored(entry.RemnantBySize)
}

// season is a month at Totara Bend: twelve paddocks, two mobs, every kind of
// entry.
func season() *log {
	l := &log{}
	l.say(nov(1), "Ana", entry.Setup{What: entry.SetFarm, Name: "Totara Bend", Zone: "Pacific/Auckland"})
	plots := []entry.Plot{{Name: "River 1", Area: 4.1}, {Name: "Hill <top>", Area: 2}}
	for i := range 12 {
		plots = append(plots, entry.Plot{Name: fmt.Sprint(i + 1), Area: 3})
	}
	l.say(nov(1), "Ana", entry.Setup{What: entry.SetPaddocks, Paddocks: plots})
	l.say(nov(1), "Ana", entry.Setup{What: entry.SetMob, Mob: "milkers", Head: 320})
	l.say(nov(1), "Ana", entry.Setup{What: entry.SetMob, Mob: "heifers", Head: 90})
	for i := range 10 {
		day := nov(1 + 2*i)
		p := fmt.Sprint(i + 1)
		l.say(day, "Jo", entry.Graze{Paddock: p, Date: day, Event: entry.In, Mob: "milkers"})
		l.say(day+1, "Jo", entry.Graze{Paddock: p, Date: day + 1, Event: entry.Out, Mob: "milkers",
			Residual: &entry.Residual{Value: 1500 + 50*float64(i), Unit: entry.KgDMPerHa}})
	}
	l.say(nov(19), "Wiremu", tillers("1", nov(19), 2, 2.5, 2, 2.5, 2, 2.25))
	l.say(nov(20), "Jo", tillers("2", nov(20), 1.5, 2, 1.75, 1.5))
	l.say(nov(20), "Ana", tillers("2", nov(20), 2, 2, 1.75, 1.5, 2, 2))
	l.say(nov(20), "Ana", entry.Hold{Paddock: "4", Date: nov(20), Reason: entry.HoldSpray, Until: nov(30)})
	l.say(nov(20), "Ana", entry.Hold{Paddock: "5", Date: nov(20), Reason: entry.HoldEffluent})
	l.say(nov(21), "Jo", entry.Hold{Paddock: "4", Date: nov(21), Reason: entry.HoldWet})
	l.say(nov(22), "Jo", entry.Release{Paddock: "4", Date: nov(22)})
	l.say(nov(22), "Jo", entry.Canopy{Paddock: "3", Date: nov(22)})
	l.say(nov(22), "Jo", entry.Cut{Paddock: "6", Date: nov(22), What: entry.Topped})
	l.say(nov(22), "Jo", entry.Rain{Date: nov(22), Mm: 12})
	l.say(nov(22), "Jo", entry.Temperature{Date: nov(22), Celsius: new(14.5), Where: entry.Soil})
	l.say(nov(22), "Jo", entry.Note{Text: "gate broken in 7", Paddock: "7"})
	l.say(nov(23), "Jo", entry.Note{Text: "couple of cows wobbly in 5", Paddock: "5", Alarm: entry.AlarmStock})
	l.say(nov(23), "Jo", entry.Note{Text: "came off the bike in hill", Alarm: entry.AlarmPerson})
	l.say(nov(24), "Jo", entry.Graze{Paddock: "11", Date: nov(24), Event: entry.In, Mob: "milkers"})
	l.say(nov(24), "Jo", entry.Graze{Paddock: "Hill <top>", Date: nov(24), Event: entry.Grazed, Part: 0.5})
	wrong := l.say(nov(24), "Jo", tillers("12", nov(24), 3, 3, 3))
	u := l.say(nov(24), "Jo", entry.Undo{})
	(*l)[wrong.ID-1].ReplacedBy = u.ID
	off := l.say(nov(25), "Jo", tillers("7", nov(25), 1, 1.25, 1, 1.5, 1.25, 1))
	c := l.say(nov(25), "Jo", entry.Correct{Field: entry.FieldPaddock, From: "7", ToName: "8"})
	(*l)[off.ID-1].ReplacedBy = c.ID
	l.say(nov(25), "Jo", tillers("8", nov(25), 1, 1.25, 1, 1.5, 1.25, 1))
	return l
}

func questions() []entry.Question {
	var out []entry.Question
	for _, a := range entry.Abouts() {
		q := entry.Question{About: a}
		if a == entry.AskPaddock {
			q.Paddock = "1"
		}
		out = append(out, q)
	}
	return append(out, entry.Question{About: entry.AskPaddock, Paddock: "4"},
		entry.Question{About: entry.AskPaddock, Paddock: "12"}, entry.Question{About: entry.AskPaddock, Paddock: "99"},
		entry.Question{About: entry.AskPaddock, Paddock: "1", Why: true}, entry.Question{About: entry.AskRate, Why: true},
		entry.Question{About: entry.AskRate, Paddock: "1"},
		entry.Question{About: entry.AskPaddock, Paddock: "11"}, entry.Question{About: entry.AskRound, Days: 35},
		entry.Question{About: entry.AskRound, Ha: 2}, entry.Question{About: entry.AskNext, Mob: "heifers"},
		entry.Question{About: entry.AskHistory, Mob: "milkers"}, entry.Question{About: entry.AskHistory, Mob: "heifers", Days: 9},
		entry.Question{About: entry.AskHistory, Mob: "goats"},
		entry.Question{About: entry.AskHistory, Paddock: "4"}, entry.Question{About: entry.AskPlan, Days: 10, Mob: "milkers"})
}
