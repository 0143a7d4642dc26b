package answer

import (
	"leafround/core/entry"
	"leafround/core/farm"
	"leafround/core/round"
)

// Advice is one thing that the team should hear about the round, with the
// figures behind it; those that do not apply are left out.
type Advice struct {
	Kind     string          `json:"kind"` // one of round's advices
	Mob      string          `json:"mob,omitempty"`
	Paddocks []Spot          `json:"paddocks,omitempty"`
	On       entry.Date      `json:"on,omitzero"`
	Running  float64         `json:"running_days,omitempty"`
	Needed   float64         `json:"needed_days,omitempty"`
	Stage    entry.LeafStage `json:"stage,omitempty"`
	Held     entry.LeafStage `json:"stage_at_needed,omitempty"`
	HaPerDay float64         `json:"ha_per_day,omitempty"`
	HaNeeded float64         `json:"ha_needed,omitempty"`
	Ha       entry.Hectares  `json:"ha,omitempty"`
	Days     int             `json:"days,omitempty"`
	Again    bool            `json:"again,omitempty"` // yesterday's summary said it already
}

// Spot is one paddock of an advice.
type Spot struct {
	Paddock string          `json:"paddock"`
	AreaHa  entry.Hectares  `json:"area_ha,omitempty"`
	On      entry.Date      `json:"on,omitzero"`
	Reached entry.Date      `json:"reached,omitzero"`
	Stage   entry.LeafStage `json:"stage,omitempty"`
}

func advices(f *farm.Farm, day entry.Date) []Advice {
	var out []Advice
	for _, r := range round.Advise(f, day) {
		if !supported(f, r, day) {
			continue
		}
		a := Advice{Kind: string(r.Kind), Mob: r.Mob, On: r.On, Running: r.Running, Needed: r.Needed,
			Stage: r.Stage, Held: r.Held, HaPerDay: r.HaPerDay, HaNeeded: r.HaNeeded, Ha: r.Ha, Days: r.Days}
		for _, s := range r.Paddocks {
			a.Paddocks = append(a.Paddocks, Spot{s.Paddock, s.Area, s.On, s.Reached, s.Stage})
		}
		out = append(out, a)
	}
	return out
}

// supported tells whether the log bears an advice out: that the mobs ask for
// more than the round grows takes knowing what they graze, as set or as seen.
func supported(f *farm.Farm, a round.Advice, day entry.Date) bool {
	if a.Kind != round.Shortage {
		return true
	}
	if _, ok := f.RunningRound(day); ok {
		return true
	}
	for _, m := range f.Mobs {
		if _, ok := f.MobHa(m, day); ok && m.Active() {
			return true
		}
	}
	return false
}
