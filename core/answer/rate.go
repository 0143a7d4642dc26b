package answer

import (
	"leafround/core/entry"
	"leafround/core/farm"
)

// Rate answers how fast leaves are coming.
type Rate struct {
	Head
	Paddock     string     `json:"paddock,omitempty"`
	DaysPerLeaf float64    `json:"days_per_leaf"`
	Low         float64    `json:"low"` // 80 %
	High        float64    `json:"high"`
	WeekAgo     float64    `json:"week_ago,omitempty"` // days per leaf, as estimated then
	Counts      int        `json:"counts"`             // behind it: this regrowth's, or the farm's
	Farm        float64    `json:"farm,omitempty"`     // the farm's mean, where a paddock was asked
	Season      float64    `json:"season"`             // the rule of thumb for the place and day
	Today       entry.Date `json:"today,omitzero"`
	Why         *Why       `json:"why,omitempty"`
	Remarks     []Remark   `json:"remarks,omitempty"`
}

func rate(f *farm.Farm, q entry.Question, day entry.Date) Answer {
	name := ""
	if q.Paddock != "" {
		p := f.Find(q.Paddock)
		if p == nil {
			return noPaddock(f, q.Paddock)
		}
		name = p.Name
	}
	e := f.Estimate(day)
	now, why := e.Pace(name), e.Why(name)
	a := Rate{Head: Head{string(entry.AskRate)}, Paddock: name, DaysPerLeaf: now.DaysPerLeaf,
		Low: now.Low, High: now.High, Counts: why.FarmCount, Season: why.Season, Today: day}
	if name != "" {
		a.Counts, a.Farm = why.Counts, why.Farm.DaysPerLeaf
	}
	if why.FarmCount > 0 {
		a.WeekAgo = f.PaceOn(name, day.Add(-7))
	}
	if q.Why {
		a.Why = whyOf(f, name, day)
	}
	return a
}
