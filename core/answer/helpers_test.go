package answer

import (
	"encoding/json"
	"fmt"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
	"leafround/core/farm"
)

var nov = func(day int) entry.Date { return entry.NewDate(2026, time.November, day) }

// noon is noon of a day in Auckland (UTC+13 in November).
func noon(day entry.Date) time.Time { return day.Time().Add(-time.Hour) }

// log is a log in the making.
type log []entry.Logged

func (l *log) say(day entry.Date, who string, e entry.Entry) entry.Logged {
	id := int64(len(*l) + 1)
	out := entry.Logged{ID: id, Entry: e, SentAt: noon(day).Add(time.Duration(id) * time.Second), Member: who,
		MemberID: int64(len(who)), Manager: who == "Ana", MessageID: id}
	*l = append(*l, out)
	return out
}

// totara is Totara Bend with six paddocks and two mobs.
func totara() *log {
	l := &log{}
	l.say(nov(1), "Ana", entry.Setup{What: entry.SetFarm, Name: "Totara Bend", Zone: "Pacific/Auckland"})
	var plots []entry.Plot
	for i := range 6 {
		plots = append(plots, entry.Plot{Name: fmt.Sprint(i + 1), Area: 3})
	}
	l.say(nov(1), "Ana", entry.Setup{What: entry.SetPaddocks, Paddocks: plots})
	l.say(nov(1), "Ana", entry.Setup{What: entry.SetMob, Mob: "milkers", Head: 320})
	l.say(nov(1), "Ana", entry.Setup{What: entry.SetMob, Mob: "heifers", Head: 90})
	return l
}

func tillers(p string, day entry.Date, scores ...entry.LeafStage) entry.Count {
	c := entry.Count{Paddock: p, Date: day}
	for _, s := range scores {
		c.Said = append(c.Said, entry.Tiller{Score: s})
	}
	return c.Scored(entry.RemnantBySize)
}

func (l *log) farm() *farm.Farm { return farm.Fold(*l) }

// keys gives an answer as the JSON map that the outside sees.
func keys(t *testing.T, a Answer) map[string]any {
	t.Helper()
	b, err := json.Marshal(a)
	require.NoError(t, err)
	require.Regexp(t, `^\{"about":`, string(b))
	var m map[string]any
	require.NoError(t, json.Unmarshal(b, &m))
	return m
}
