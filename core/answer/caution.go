package answer

import (
	"strings"

	"leafround/core/entry"
	"leafround/core/farm"
)

// Danger names what can hurt.
type Danger string

// The dangers, each with when its caution comes; the words and the one to whom
// we defer are the reply's.
const (
	Spray      Danger = "spray"      // a spray was logged, or its paddock is asked about
	Effluent   Danger = "effluent"   // likewise
	Fertiliser Danger = "fertiliser" // likewise
	Sick       Danger = "sick"       // stock look ill: the vet and the manager, now
	Hurt       Danger = "hurt"       // a person may be hurt: the emergency number first
	Bloat      Danger = "bloat"      // hungry stock onto clover (NSW Local Land Services)
	Nitrate    Danger = "nitrate"    // young growth after nitrogen or drought (Clemson University)
	Staggers   Danger = "staggers"   // ryegrass grazed hard, late summer to autumn (Manitoba Agriculture)
	Tetany     Danger = "tetany"     // potassium-rich growth near calving (10.4236/oalib.1109149)
	Eczema     Danger = "eczema"     // warm wet spells with litter; no number of ours
	Pugging    Danger = "pugging"    // wet ground (Victorian soil health guide)
)

// Caution is one danger that the log makes relevant.
type Caution struct {
	Danger    Danger     `json:"danger"`
	Paddock   string     `json:"paddock,omitempty"`
	Mob       string     `json:"mob,omitempty"`
	Until     entry.Date `json:"until,omitzero"`
	Text      string     `json:"text,omitempty"`      // the note, where the caution comes later than it
	Emergency string     `json:"emergency,omitempty"` // the number to call, where known
}

// Guarded tells whether the caution comes every time: a held paddock, a sick
// animal, a person. The others come at most once a week.
func (d Danger) Guarded() bool {
	switch d {
	case Spray, Effluent, Fertiliser, Sick, Hurt:
		return true
	}
	return false
}

// guarded are the dangers of the holds that only a date or a manager ends.
var guarded = map[entry.Reason]Danger{
	entry.HoldSpray:      Spray,
	entry.HoldEffluent:   Effluent,
	entry.HoldFertiliser: Fertiliser,
}

// heldCautions gives the cautions of the holds that bind a paddock on a day.
func heldCautions(p *farm.Paddock, day entry.Date) []Caution {
	var out []Caution
	for _, h := range p.HeldOn(day) {
		if d := guarded[h.Reason]; d != "" {
			out = append(out, Caution{Danger: d, Paddock: p.Name, Until: h.Until})
		}
	}
	return out
}

// grazeCautions gives what a grazing makes relevant: the holds, every time,
// and the background that was not told of this paddock or mob for a week.
func grazeCautions(f *farm.Farm, l entry.Logged, e entry.Graze) []Caution {
	p := f.Find(e.Paddock)
	if p == nil {
		return nil
	}
	out := heldCautions(p, e.Date)
	for _, d := range background {
		if d.applies(f, p, e) && !toldLately(f, l, e, p, d) {
			out = append(out, Caution{Danger: d.danger, Paddock: p.Name, Mob: e.Mob})
		}
	}
	return out
}

// quietDays is how long a background caution keeps still after it was shown.
const quietDays = 7

// toldLately tells whether a grazing of the same paddock or mob, within the
// week before, has brought the same caution.
func toldLately(f *farm.Farm, l entry.Logged, e entry.Graze, p *farm.Paddock, d backgroundRule) bool {
	log := f.Log()
	for i := len(log) - 1; i >= 0; i-- {
		o, ok := log[i].Entry.(entry.Graze)
		if log[i].SentAt.Before(l.SentAt.AddDate(0, 0, -quietDays)) {
			return false
		}
		if !ok || !log[i].Stands() || log[i].ID >= l.ID {
			continue
		}
		other := f.Find(o.Paddock)
		same := other == p || e.Mob != "" && entry.FoldName(o.Mob) == entry.FoldName(e.Mob)
		if same && other != nil && d.applies(f, other, o) {
			return true
		}
	}
	return false
}

// emergency holds the number to call, by the zone's region or the zone (from
// memory, as printed in telephone books; elsewhere the reply says "your
// emergency number").
func emergency(f *farm.Farm) string {
	region, _, _ := strings.Cut(f.ZoneName, "/")
	switch {
	case f.ZoneName == "Pacific/Auckland" || f.ZoneName == "Pacific/Chatham" || region == "NZ":
		return "111"
	case region == "Australia":
		return "000"
	case f.ZoneName == "Europe/London" || f.ZoneName == "Europe/Dublin":
		return "999 or 112"
	case region == "Europe":
		return "112"
	case region == "US" || region == "Canada" || unitedStates[f.ZoneName]:
		return "911"
	}
	return ""
}

// unitedStates are the zones of the United States and Canada in common use.
var unitedStates = map[string]bool{
	"America/New_York": true, "America/Chicago": true, "America/Denver": true,
	"America/Los_Angeles": true, "America/Phoenix": true, "America/Anchorage": true,
	"America/Detroit": true, "America/Boise": true, "Pacific/Honolulu": true,
	"America/Toronto": true, "America/Vancouver": true, "America/Edmonton": true,
	"America/Winnipeg": true, "America/Halifax": true, "America/Regina": true,
	"America/St_Johns": true, "America/Moncton": true,
}
