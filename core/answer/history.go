package answer

import (
	"encoding/json"
	"slices"

	"leafround/core/entry"
	"leafround/core/farm"
)

// History answers what was logged, latest first.
type History struct {
	Head
	Paddock string     `json:"paddock,omitempty"`
	Mob     string     `json:"mob,omitempty"`
	Where   []Where    `json:"where,omitempty"` // where it is now, or all where it is not known
	Days    int        `json:"days,omitempty"`
	From    entry.Date `json:"from"`
	To      entry.Date `json:"to"`
	Entries []Line     `json:"entries"`
	More    int        `json:"more,omitempty"` // left out for length
}

// Line is one entry of the log, with who said it.
type Line struct {
	Date   entry.Date  `json:"date"`
	Member string      `json:"member,omitempty"`
	Entry  entry.Entry `json:"-"`
}

// MarshalJSON writes the entry with its kind.
func (l Line) MarshalJSON() ([]byte, error) {
	body, err := entry.Encode(l.Entry)
	if err != nil {
		return nil, err
	}
	return json.Marshal(struct {
		Date   entry.Date      `json:"date"`
		Member string          `json:"member,omitempty"`
		Entry  json.RawMessage `json:"entry"`
	}{l.Date, l.Member, body})
}

// historyDays is how far back history looks where nobody says (ours): a
// fortnight of the farm, a season of one paddock; historyLines how much is
// shown.
const (
	historyDays    = 14
	historySeason  = 120
	historyLines   = 60
	longestHistory = 3660
	lastMoves      = 3 // of a mob, where only its place was asked
)

func history(f *farm.Farm, q entry.Question, day entry.Date) Answer {
	if q.Mob != "" && q.Paddock == "" {
		return mobHistory(f, q, day)
	}
	var p *farm.Paddock
	days := historyDays
	if q.Paddock != "" {
		if p = f.Find(q.Paddock); p == nil {
			return noPaddock(f, q.Paddock)
		}
		days = historySeason
	}
	if q.Days >= 1 {
		days = int(min(q.Days, longestHistory))
	}
	a := History{Head: Head{string(entry.AskHistory)}, Days: days, From: day.Add(1 - days), To: day,
		Entries: []Line{}}
	if p != nil {
		a.Paddock = p.Name
	}
	a.fill(f, f.History(p, a.From, a.To))
	return a
}

// fill takes the lines that fit.
func (a *History) fill(f *farm.Farm, all []entry.Logged) {
	if len(all) > historyLines {
		a.More, all = len(all)-historyLines, all[:historyLines]
	}
	for _, l := range all {
		a.Entries = append(a.Entries, Line{f.DayOf(l), l.Member, scored(f, l.Entry)})
	}
}

// mobHistory answers where a mob is with its last moves or, where days are
// told, what was logged of it. Of a mob that is not known, it tells where the
// others are.
func mobHistory(f *farm.Farm, q entry.Question, day entry.Date) Answer {
	a := History{Head: Head{string(q.About)}, Mob: mobName(f, q.Mob), To: day, Entries: []Line{}, Where: wheres(f, day)}
	m := f.FindMob(q.Mob)
	if m == nil {
		a.Where = slices.DeleteFunc(a.Where, func(w Where) bool { return w.Paddock == "" })
		return a
	}
	a.Where = slices.DeleteFunc(a.Where, func(w Where) bool { return w.Mob != m.Name })
	if q.Days >= 1 {
		a.Days = int(min(q.Days, longestHistory))
		a.From = day.Add(1 - a.Days)
		a.fill(f, f.HistoryOf(m, a.From, day))
		return a
	}
	a.From = day.Add(1 - historySeason)
	moves := slices.DeleteFunc(f.HistoryOf(m, a.From, day), func(l entry.Logged) bool { return l.Entry.Kind() != entry.KindGraze })
	a.fill(f, moves[:min(lastMoves, len(moves))])
	return a
}

// scored gives a count by the farm's rule for the remnant.
func scored(f *farm.Farm, e entry.Entry) entry.Entry {
	if c, ok := e.(entry.Count); ok {
		return c.Scored(f.Remnant)
	}
	return e
}
