package answer

import (
	"strings"
	"time"

	"leafround/core/entry"
	"leafround/core/farm"
)

// backgroundRule tells when a grazing makes a background caution relevant. All
// thresholds and months are ours: they decide when a line is shown, never what
// anyone should do.
type backgroundRule struct {
	danger  Danger
	applies func(*farm.Farm, *farm.Paddock, entry.Graze) bool
}

var background = []backgroundRule{
	{Bloat, bloat}, {Nitrate, nitrate}, {Staggers, staggers}, {Tetany, tetany},
	{Eczema, eczema}, {Pugging, pugging},
}

// bloat: stock go into a paddock of which a note of the last two months says
// clover.
func bloat(f *farm.Farm, p *farm.Paddock, e entry.Graze) bool {
	if e.Event == entry.Out {
		return false
	}
	for _, l := range f.Notes {
		n := l.Entry.(entry.Note)
		if n.Paddock != "" && f.Find(n.Paddock) == p && within(e.Date, f.DayOf(l), 60) &&
			strings.Contains(strings.ToLower(n.Text), "clover") {
			return true
		}
	}
	return false
}

// nitrate: stock go into regrowth younger than three weeks after fertiliser,
// or into any within a fortnight of the rain that ended a dry month.
func nitrate(f *farm.Farm, p *farm.Paddock, e entry.Graze) bool {
	if e.Event == entry.Out {
		return false
	}
	for _, h := range p.Holds {
		if h.Reason == entry.HoldFertiliser && within(e.Date, h.From, 21) {
			return true
		}
	}
	return droughtBroke(f, e.Date)
}

// droughtBroke tells whether 10 mm or more fell in the last two weeks after a
// month with less than 10 mm of which at least one day was told.
func droughtBroke(f *farm.Farm, day entry.Date) bool {
	now, told := f.RainSince(day.Add(-14), day)
	before, known := f.RainSince(day.Add(-44), day.Add(-14))
	return told && known && now >= 10 && before < 10
}

// staggers: ryegrass left short in late summer or autumn.
func staggers(f *farm.Farm, p *farm.Paddock, e entry.Graze) bool {
	rye := !p.Habit().Known || p.Grass == entry.Ryegrass
	return rye && season(f, e.Date, time.February, time.April) && short(e.Residual)
}

// short tells whether less was left than four centimetres, or as much.
func short(r *entry.Residual) bool {
	if r == nil {
		return false
	}
	least := map[entry.ResidualUnit]float64{entry.Centimetres: 4, entry.Inches: 4 / 2.54,
		entry.Clicks: 7, entry.KgDMPerHa: 1400}
	return r.Value < least[r.Unit]
}

// tetany: cows go onto ground that had effluent within two months, near
// calving (late winter and early spring).
func tetany(f *farm.Farm, p *farm.Paddock, e entry.Graze) bool {
	if e.Event == entry.Out || !cattle(e.Mob) || !season(f, e.Date, time.July, time.September) {
		return false
	}
	for _, h := range p.Holds {
		if h.Reason == entry.HoldEffluent && within(e.Date, h.From, 60) {
			return true
		}
	}
	return false
}

// cattle tells whether a mob may be cows: anything but sheep by its name.
func cattle(mob string) bool {
	name := entry.FoldName(mob)
	return !farm.SetStocked(name) && !strings.Contains(name, "sheep")
}

// eczema: in summer and autumn, after rain within three days, onto a paddock
// topped within two months, where the litter lies.
func eczema(f *farm.Farm, p *farm.Paddock, e entry.Graze) bool {
	if e.Event == entry.Out || !season(f, e.Date, time.January, time.May) {
		return false
	}
	if _, rained := f.RainSince(e.Date.Add(-3), e.Date); !rained {
		return false
	}
	for _, c := range p.Cuts {
		if c.What == entry.Topped && within(e.Date, c.Date, 60) {
			return true
		}
	}
	return false
}

// pugging: stock go onto ground that is wet by a hold, or by 30 mm of rain in
// three days.
func pugging(f *farm.Farm, p *farm.Paddock, e entry.Graze) bool {
	if e.Event == entry.Out {
		return false
	}
	for _, h := range p.HeldOn(e.Date) {
		if h.Reason == entry.HoldWet {
			return true
		}
	}
	mm, _ := f.RainSince(e.Date.Add(-3), e.Date)
	return mm >= 30
}

// within tells whether a day lies at most so many days before another.
func within(day, before entry.Date, days int) bool {
	return before <= day && day.Sub(before) <= days
}

// season tells whether a day falls into months named for the south; in the
// north half a year is added.
func season(f *farm.Farm, day entry.Date, from, to time.Month) bool {
	month := day.Time().Month()
	if !f.South() {
		month = (month+5)%12 + 1
	}
	return from <= month && month <= to
}
