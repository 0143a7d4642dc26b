package answer

import (
	"leafround/core/entry"
	"leafround/core/farm"
	"leafround/core/round"
)

// Plan answers the order for the coming days. It is advice: the log records
// only what people say they did.
type Plan struct {
	Head
	Steps      []Step         `json:"steps"`
	LostShare  float64        `json:"lost_share"`
	BoundShare float64        `json:"bound_share"`
	Gap        float64        `json:"gap"`   // what a better order could save at most
	Exact      bool           `json:"exact"` // proven the best, to a twentieth of a percent
	Days       int            `json:"days"`
	Mob        string         `json:"mob,omitempty"`
	Mobs       []Daily        `json:"mobs,omitempty"` // hectares a day that it reckons with
	LeftOut    []LeftOut      `json:"left_out,omitempty"`
	Unmet      []Wish         `json:"unmet,omitempty"` // pins that could not be kept
	AreaHa     entry.Hectares `json:"area_ha,omitempty"`
	WhatIf     bool           `json:"what_if,omitempty"`
	Shut       []string       `json:"shut,omitempty"`
	Today      entry.Date     `json:"today"`
	Early      int            `json:"early,omitempty"`   // steps below the window
	Unknown    int            `json:"unknown,omitempty"` // paddocks left out because nothing is known of them, where they are many
	Remarks    []Remark       `json:"remarks,omitempty"`
}

// Step is one stay of the plan.
type Step struct {
	From    entry.Date      `json:"from"`
	To      entry.Date      `json:"to"` // not included
	Paddock string          `json:"paddock"`
	Mob     string          `json:"mob,omitempty"`
	Stage   entry.LeafStage `json:"stage,omitempty"` // 0 where nobody knows it
	Now     bool            `json:"now,omitempty"`   // it is there already
	Again   bool            `json:"again,omitempty"`
	Advice  string          `json:"advice,omitempty"` // "wait": below its window
	Last    entry.Date      `json:"last"`             // the last day of it
	Most    entry.LeafStage `json:"window_to"`        // the grass keeps no more alive
}

// Daily is the hectares a day of one mob.
type Daily struct {
	Mob      string  `json:"mob,omitempty"`
	HaPerDay float64 `json:"ha_per_day"`
}

// Wish is a pin.
type Wish struct {
	Mob     string     `json:"mob,omitempty"`
	Paddock string     `json:"paddock"`
	Date    entry.Date `json:"date"`
}

// planDays is how many days a plan shows where nobody says (ours: a week), and
// longestPlan how many at most.
const (
	planDays    = 7
	longestPlan = 120
)

// sameShare is the difference in growth given up below which two orders are
// the same (ours).
const sameShare = 0.0005

func plan(f *farm.Farm, q entry.Question, day entry.Date) Answer {
	days := planDays
	if q.Days >= 1 {
		days = int(min(q.Days, longestPlan))
	}
	w := round.What{}
	if !q.Without {
		w = round.What{Ha: entry.Hectares(q.Ha), Shut: q.Shut}
	}
	p := round.PlanFor(f, day, days, q.Mob, w)
	a := Plan{Head: Head{string(entry.AskPlan)}, Steps: []Step{}, LostShare: p.LostAtMean,
		BoundShare: min(p.BoundAtMean, p.LostAtMean), Days: days, Mob: mobName(f, q.Mob),
		LeftOut: leftOuts(p.Left), AreaHa: f.RoundArea(day), Shut: w.Shut, WhatIf: w.Ha > 0 || len(w.Shut) > 0, Today: day}
	a.Gap = a.LostShare - a.BoundShare
	a.Exact = a.Gap < sameShare
	for _, s := range p.Steps {
		a.Steps = append(a.Steps, a.step(f, s))
	}
	for _, m := range p.Mobs {
		a.Mobs = append(a.Mobs, Daily{m.Name, m.HaPerDay})
	}
	for _, u := range p.Whole.Unmet {
		a.Unmet = append(a.Unmet, Wish{u.Mob, u.Paddock, u.Day})
	}
	a.unknown(len(f.Paddocks))
	if a.AreaHa == 0 {
		a.Remarks = append(a.Remarks, Remark{Kind: NoArea})
	}
	return a
}

// manyUnknown is the part of the paddocks of which nothing need be known to say
// so (ours): a plan for the rest is then a plan for want of better.
const manyUnknown = 0.25

func (a *Plan) unknown(paddocks int) {
	n := 0
	for _, l := range a.LeftOut {
		if l.Code == round.OutUnknown {
			n++
		}
	}
	if float64(n) >= manyUnknown*float64(paddocks) {
		a.Unknown = n
	}
}

func (a *Plan) step(f *farm.Farm, s round.Step) Step {
	o := Step{From: s.From, To: s.To, Paddock: s.Paddock, Mob: s.Mob, Stage: s.Stage, Now: s.Current,
		Again: s.Again, Last: max(s.From, s.To.Add(-1))}
	p := f.Find(s.Paddock)
	if p == nil {
		return o
	}
	o.Most = p.Habit().To
	if s.Current && !p.Grazed() && len(p.Counts) == 0 {
		o.Stage = 0
		return o
	}
	if s.Stage < p.Habit().From && p.Closed.IsZero() {
		o.Advice = "wait"
		a.Early++
	}
	return o
}
