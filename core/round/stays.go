package round

import (
	"leafround/core/entry"
	"leafround/core/farm"
)

// longStayDays is how long a mob may stay in one paddock without a back fence:
// regrazing within three to six days costs 55–95 % of regrowth (Aust. J.
// Agric. Res. 45:1809–1815).
const longStayDays = 3

// earlyDays is how far back a grazing may lie to be worth a warning (ours).
const earlyDays = 7

// longStays lists mobs that have been in one paddock for three days without a
// back fence; stock that stay for weeks by their nature are let be.
func (a *adviser) longStays() []Advice {
	var out []Advice
	for _, p := range a.f.Paddocks {
		for _, s := range p.Stays {
			days := a.day.Sub(s.Since)
			if days < longStayDays || s.Back || farm.SetStocked(s.Mob) {
				continue
			}
			out = append(out, Advice{Kind: LongStay, Mob: s.Mob, Days: days, On: s.Since,
				Paddocks: []Spot{{Paddock: p.Name, Area: p.Area}}})
		}
	}
	return out
}

// earlyTwice lists paddocks whose last two grazings both came below the
// window, the later within the last week. One early grazing is forgiven,
// repeated ones are the harm (Fulkerson & Slack 1994; common practice).
func (a *adviser) earlyTwice() []Advice {
	var out []Advice
	for _, p := range a.f.Paddocks {
		n := len(p.Grazings)
		if n < 2 || p.Grazings[n-1].Out < a.day.Add(-earlyDays) {
			continue
		}
		last, before := GrazedAt(a.f, p, p.Grazings[n-1]), GrazedAt(a.f, p, p.Grazings[n-2])
		from := p.Habit().From
		if last > 0 && before > 0 && last < from && before < from {
			out = append(out, Advice{Kind: EarlyTwice, On: p.Grazings[n-1].Out, Stage: last, Held: before,
				Paddocks: []Spot{{Paddock: p.Name, Area: p.Area, On: p.Grazings[n-1].Out, Stage: last}}})
		}
	}
	return out
}

// GrazedAt gives the leaf stage at which a paddock was grazed, as its reply
// told it; 0 where nothing was known.
func GrazedAt(f *farm.Farm, p *farm.Paddock, g farm.Grazing) entry.LeafStage {
	stage, ok := f.StageGrazed(p, g)
	if !ok {
		return 0
	}
	return entry.LeafStage(stage)
}
