package answer

import (
	"leafround/core/entry"
	"leafround/core/farm"
	"leafround/core/round"
)

// Round answers how long a round the grass needs, beside the one being run,
// and what a what-if would come to.
type Round struct {
	Head
	DaysPerLeaf    float64         `json:"days_per_leaf"`
	Low            float64         `json:"low,omitempty"` // 80 %, of days per leaf
	High           float64         `json:"high,omitempty"`
	RoundShortest  float64         `json:"round_shortest"`
	RoundDays      float64         `json:"round_days"`
	RoundLongest   float64         `json:"round_longest"`
	AreaHa         entry.Hectares  `json:"area_ha"`
	HaPerDay       float64         `json:"ha_per_day"`
	RunningDays    *float64        `json:"running_days,omitempty"`
	RunningHa      *float64        `json:"running_ha_per_day,omitempty"`
	StageRunning   entry.LeafStage `json:"stage_running,omitempty"`
	AskedDays      *float64        `json:"asked_days,omitempty"`
	AskedHa        *float64        `json:"asked_ha_per_day,omitempty"`
	StageAtGrazing *float64        `json:"stage_at_grazing,omitempty"`
	Shut           []string        `json:"shut,omitempty"`
	From           entry.LeafStage `json:"window_from"` // ryegrass's, or the farm's only grass's
	Target         entry.LeafStage `json:"window_target"`
	To             entry.LeafStage `json:"window_to"`
	Acres          *Acres          `json:"acres,omitempty"` // where the farm speaks of acres
	Mixed          bool            `json:"mixed,omitempty"` // grasses of several windows: the figures are means over them
	Advice         []Advice        `json:"advice,omitempty"`
	Held           []LeftOut       `json:"left_out,omitempty"`
	Today          entry.Date      `json:"today"`
	Remarks        []Remark        `json:"remarks,omitempty"`
}

// Acres are areas in acres.
type Acres struct {
	Area    float64 `json:"area"`
	PerDay  float64 `json:"per_day"`
	Running float64 `json:"running_per_day,omitempty"`
	Asked   float64 `json:"asked_per_day,omitempty"`
}

// roundLength answers the question for the round.
func roundLength(f *farm.Farm, q entry.Question, day entry.Date) Answer {
	w := whatIf(q)
	l := round.LengthOf(f, day, w)
	a := Round{Head: Head{string(entry.AskRound)}, DaysPerLeaf: l.DaysPerLeaf, Low: l.Low, High: l.High,
		RoundShortest: l.Shortest, RoundDays: l.Days, RoundLongest: l.Longest, AreaHa: l.Area,
		HaPerDay: l.HaPerDay, StageRunning: l.StageRunning, Shut: l.Shut, Today: day}
	a.RunningDays, a.RunningHa = told(l.Running), told(l.RunningHa)
	if a.AskedDays = told(l.Asked); a.AskedDays != nil {
		stage := float64(l.StageAtGrazing)
		a.AskedHa, a.StageAtGrazing = told(l.AskedHa), &stage
	}
	a.window(f)
	a.acres(f, l)
	a.held(f, day)
	if l.Area == 0 {
		a.Remarks = append(a.Remarks, Remark{Kind: NoArea})
	}
	if w.Days == 0 && w.Ha == 0 && len(w.Shut) == 0 {
		a.Advice = advices(f, day)
	}
	return a
}

// whatIf gives the what-if of a question; one taken back is none.
func whatIf(q entry.Question) round.What {
	if q.Without {
		return round.What{}
	}
	return round.What{Days: q.Days, Ha: entry.Hectares(q.Ha), Shut: q.Shut}
}

// told gives a figure, nil where it is not known.
func told(v float64) *float64 {
	if v == 0 {
		return nil
	}
	return &v
}

// window gives the window that the round is spoken of: that of the grass that
// carries most of the area.
func (a *Round) window(f *farm.Farm) {
	areas := map[entry.Grass]entry.Hectares{}
	most := &farm.Paddock{}
	for _, p := range f.Paddocks {
		areas[p.Grass] += p.Area
		if areas[p.Grass] > areas[most.Grass] {
			most = p
		}
	}
	h := most.Habit()
	a.From, a.Target, a.To = h.From, round.Target(f, most), h.To
	for _, p := range f.Paddocks {
		a.Mixed = a.Mixed || p.Habit().From != h.From || p.Habit().To != h.To
	}
}

func (a *Round) acres(f *farm.Farm, l round.Length) {
	if f.Units != "acres" {
		return
	}
	const ha = entry.HectaresPerAcre
	a.Acres = &Acres{float64(l.Area) / ha, l.HaPerDay / ha, l.RunningHa / ha, l.AskedHa / ha}
}

// held lists what is out of the round.
func (a *Round) held(f *farm.Farm, day entry.Date) {
	_, left := round.Rank(f, day, "")
	for _, l := range leftOuts(left) {
		if l.Code == round.OutHeld {
			a.Held = append(a.Held, l)
		}
	}
}
