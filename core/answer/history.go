package answer

import (
	"encoding/json"

	"leafround/core/entry"
	"leafround/core/farm"
)

// History answers what was logged, latest first.
type History struct {
	Head
	Paddock string     `json:"paddock,omitempty"`
	Days    int        `json:"days"`
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
)

func history(f *farm.Farm, q entry.Question, day entry.Date) Answer {
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
	all := f.History(p, a.From, a.To)
	if len(all) > historyLines {
		a.More, all = len(all)-historyLines, all[:historyLines]
	}
	for _, l := range all {
		a.Entries = append(a.Entries, Line{f.DayOf(l), l.Member, scored(f, l.Entry)})
	}
	return a
}

// scored gives a count by the farm's rule for the remnant.
func scored(f *farm.Farm, e entry.Entry) entry.Entry {
	if c, ok := e.(entry.Count); ok {
		return c.Scored(f.Remnant)
	}
	return e
}
