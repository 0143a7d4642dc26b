package picture

import (
	"math"

	"leafround/core/answer"
	"leafround/core/entry"
)

// FromPlan gives the plan's answer as a picture's values.
func FromPlan(farm string, a answer.Plan) Plan {
	v := Plan{Farm: farm, Today: a.Today, Days: a.Days}
	for _, m := range a.Mobs {
		v.Mobs = append(v.Mobs, m.Mob)
	}
	for _, s := range a.Steps {
		v.Stays = append(v.Stays, Stay{Mob: s.Mob, Paddock: s.Paddock, From: s.From, To: s.To,
			Stage: float64(s.Stage), Early: s.Advice == "wait", Now: s.Now})
		v.Mobs = with(v.Mobs, s.Mob)
	}
	return v
}

// with adds a name to a list that lacks it.
func with(list []string, name string) []string {
	for _, n := range list {
		if n == name {
			return list
		}
	}
	return append(list, name)
}

// FromPaddock gives how one paddock stands as a row of [Stages].
func FromPaddock(a answer.Paddock) Row {
	r := Row{Paddock: a.Paddock, Stage: math.NaN(), From: float64(a.From), To: float64(a.To),
		Advice: string(a.Advice), ReadyOn: a.ReadyOn}
	if a.Stage != nil {
		r.Stage = *a.Stage
		r.Low, r.High = or(a.StageLow, r.Stage), or(a.StageHigh, r.Stage)
	}
	if len(a.Held) > 0 {
		r.Held = holdWord(a.Held[0].Reason)
	}
	return r
}

func or(v *float64, otherwise float64) float64 {
	if v == nil {
		return otherwise
	}
	return *v
}

// holdWord gives a hold's reason where space is short.
func holdWord(r entry.Reason) string {
	if r == "other" || r == "" {
		return "held"
	}
	return string(r)
}
