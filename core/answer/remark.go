package answer

import (
	"leafround/core/entry"
	"leafround/core/farm"
)

// RemarkKind names something the team should hear beside the figures.
type RemarkKind string

// The remarks of answers; those of [farm.RemarkKind] come as well.
const (
	NeverGrazed   RemarkKind = "never_grazed"   // when was it grazed? the pace is not known
	NeverCounted  RemarkKind = "never_counted"  // the stage is the season's guess
	Odd           RemarkKind = "odd"            // a count that cannot fit; Text says why
	Few           RemarkKind = "few"            // N tillers are too few
	GrassUnknown  RemarkKind = "grass_unknown"  // taken as ryegrass, said once
	MovedSince    RemarkKind = "moved_since"    // told late: Mob is down as in Paddock since Date, by an earlier word
	ToldTwice     RemarkKind = "told_twice"     // the same person told the same count that day: it weighs once
	StaysHeld     RemarkKind = "stays_held"     // stock went in, and the hold for Reason stays
	AlsoCounted   RemarkKind = "also_counted"   // Member counted it the same day, Stage
	CountedBefore RemarkKind = "counted_before" // the same person counted it that day, Stage
	Older         RemarkKind = "older"          // grazed on Date, since the count
	Heading       RemarkKind = "heading"        // mostly reproductive: no date
	Floor         RemarkKind = "floor"          // three or more: leaves are dying off
	ClosedEarly   RemarkKind = "closed_early"   // canopy closed below the window
	Held          RemarkKind = "held"           // held for Reason until Date
	InIt          RemarkKind = "in_it"          // Mob is in it since Date
	Lax           RemarkKind = "lax"            // more was left than usual
	AskUntil      RemarkKind = "ask_until"      // no end told: ask for it
	Partly        RemarkKind = "partly"         // only a part was grazed
	NoArea        RemarkKind = "no_area"        // the register holds no area
	Unregistered  RemarkKind = "unregistered"   // not in the register
	Stale         RemarkKind = "stale"          // weather told last on Date
	NotDone       RemarkKind = "not_done"       // a setting that changed nothing: a name is taken, or unknown
	Suspect       RemarkKind = "suspect"        // HaPerDay etc. could not be known
)

// Remark is one of them, with its figures.
type Remark struct {
	Kind    RemarkKind      `json:"kind"`
	Paddock string          `json:"paddock,omitempty"`
	Mob     string          `json:"mob,omitempty"`
	Member  string          `json:"member,omitempty"`
	Reason  entry.Reason    `json:"reason,omitempty"`
	Date    entry.Date      `json:"date,omitzero"`
	Days    int             `json:"days,omitempty"`
	N       int             `json:"n,omitempty"`
	Stage   entry.LeafStage `json:"stage,omitempty"`
	Part    float64         `json:"part,omitempty"`
	Text    string          `json:"text,omitempty"`
	Mobs    []string        `json:"mobs,omitempty"` // to choose from
}

// fromFarm turns what the fold noticed into remarks of the answer.
func fromFarm(rs []farm.Remark) []Remark {
	out := make([]Remark, 0, len(rs))
	for _, r := range rs {
		out = append(out, Remark{Kind: RemarkKind(r.Kind), Paddock: r.Paddock, Mob: r.Mob,
			Reason: r.Reason, Date: r.Date, Days: r.Days})
	}
	return out
}
