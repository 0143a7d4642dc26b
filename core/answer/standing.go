package answer

import (
	"leafround/core/entry"
	"leafround/core/farm"
	"leafround/core/leaf"
	"leafround/core/pace"
	"leafround/core/round"
)

// Standing is how a paddock stands: the figures of a count's answer and of a
// paddock's. Pointers are nil, and dates zero, where nothing can be said.
type Standing struct {
	Paddock          string      `json:"paddock"`
	Stage            *float64    `json:"stage,omitempty"`
	StageLow         *float64    `json:"stage_low,omitempty"` // 95 % of the mean
	StageHigh        *float64    `json:"stage_high,omitempty"`
	N                *int        `json:"n,omitempty"`
	DaysSinceGrazing *int        `json:"days_since_grazing,omitempty"`
	DaysPerLeaf      *float64    `json:"days_per_leaf,omitempty"` // days ÷ stage, plainly
	Pace             *float64    `json:"pace,omitempty"`          // days per leaf as estimated
	PaceLow          *float64    `json:"pace_low,omitempty"`      // 80 %
	PaceHigh         *float64    `json:"pace_high,omitempty"`
	ReadyOn          entry.Date  `json:"ready_on,omitzero"`
	TargetOn         entry.Date  `json:"target_on,omitzero"`
	TargetLow        entry.Date  `json:"target_low,omitzero"` // 80 %
	TargetHigh       entry.Date  `json:"target_high,omitzero"`
	TargetGive       int         `json:"target_give,omitempty"` // days to give or take: the wider half of it
	LateOn           entry.Date  `json:"late_on,omitzero"`
	Advice           leaf.Advice `json:"advice"`

	Today    entry.Date      `json:"today,omitzero"`
	Grass    entry.Grass     `json:"grass,omitempty"`
	From     entry.LeafStage `json:"window_from"` // leaves
	Target   entry.LeafStage `json:"window_target"`
	To       entry.LeafStage `json:"window_to"`
	AreaHa   entry.Hectares  `json:"area_ha,omitempty"`
	Acres    float64         `json:"acres,omitempty"` // where the farm speaks of acres
	Closed   entry.Date      `json:"canopy_closed,omitzero"`
	Since    entry.Date      `json:"regrowth_since,omitzero"`
	Counted  bool            `json:"counted"` // in this regrowth
	Heading  bool            `json:"heading,omitempty"`
	Occupied bool            `json:"occupied,omitempty"` // stock are in it
	Floor    bool            `json:"floor,omitempty"`
}

// blank fills in what does not depend on counts.
func blank(f *farm.Farm, p *farm.Paddock, day entry.Date) Standing {
	h := p.Habit()
	s := Standing{Paddock: p.Name, Advice: leaf.Unknown, Today: day, Grass: p.Grass, From: h.From,
		Target: round.Target(f, p), To: h.To, AreaHa: p.Area, Closed: p.Closed, Counted: len(p.Counts) > 0,
		Occupied: p.Occupied()}
	if f.Units == "acres" {
		s.Acres = float64(p.Area) / entry.HectaresPerAcre
	}
	return s
}

// forecast fills in the pace and the dates, from the estimator.
func (s *Standing) forecast(e *pace.Estimate) {
	if _, ok := e.Stage(s.Paddock); !ok {
		return
	}
	p := e.Pace(s.Paddock)
	s.Pace, s.PaceLow, s.PaceHigh = &p.DaysPerLeaf, &p.Low, &p.High
	if r, ok := e.Reach(s.Paddock, s.From); ok {
		s.ReadyOn = r.On
	}
	if r, ok := e.Reach(s.Paddock, s.Target); ok {
		s.TargetOn, s.TargetLow, s.TargetHigh = r.On, r.Low, r.High
	}
	if r, ok := e.Reach(s.Paddock, s.To); ok {
		s.LateOn = r.On
	}
}

// heed makes the dates agree with a stage that was counted today: what it has
// reached is today, what it has not is tomorrow at the earliest.
func (s *Standing) heed(counted entry.LeafStage) {
	fix := func(on *entry.Date, stage entry.LeafStage) {
		switch {
		case on.IsZero():
		case counted >= stage:
			*on = s.Today
		default:
			*on = max(*on, s.Today.Add(1))
		}
	}
	fix(&s.ReadyOn, s.From)
	fix(&s.TargetOn, s.Target)
	fix(&s.LateOn, s.To)
	s.LateOn = later(s.LateOn, s.TargetOn, s.To >= s.Target)
	if s.TargetOn.IsZero() {
		return
	}
	if counted >= s.Target {
		s.TargetLow, s.TargetHigh = s.Today, s.Today
	}
	s.TargetLow, s.TargetHigh = min(s.TargetLow, s.TargetOn), max(s.TargetHigh, s.TargetOn)
}

// later gives the later of two days, where both are told and it applies.
func later(a, b entry.Date, applies bool) entry.Date {
	if applies && !a.IsZero() && !b.IsZero() {
		return max(a, b)
	}
	return a
}

// give reckons the days to give or take around the target date.
func (s *Standing) give() {
	if !s.TargetOn.IsZero() {
		s.TargetGive = max(s.TargetHigh.Sub(s.TargetOn), s.TargetOn.Sub(s.TargetLow))
	}
}

// plainly fills in days since grazing and days ÷ stage.
func (s *Standing) plainly(since, on entry.Date) {
	s.Since = since
	if since.IsZero() || on < since {
		return
	}
	days := on.Sub(since)
	s.DaysSinceGrazing = &days
	if s.Stage != nil && *s.Stage > 0 {
		per := float64(days) / *s.Stage
		s.DaysPerLeaf = &per
	}
}
