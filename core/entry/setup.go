package entry

// What names the part of the farm that a setup entry sets.
type What string

// The parts that can be set. The first eight are the first day's; the others
// carry a farm through a year.
const (
	SetFarm       What = "farm"        // Name, Zone
	SetPaddocks   What = "paddocks"    // Paddocks: adds and updates, never deletes
	SetMob        What = "mob"         // Mob, Head (0 where not told)
	SetSummary    What = "summary"     // At ("06:15"), or Off
	SetAim        What = "aim"         // Leaves
	SetPlace      What = "place"       // Lat, Lon in degrees
	SetGrass      What = "grass"       // Paddock, Grass
	SetLastGrazed What = "last_grazed" // Paddock, Date

	SetRemnant   What = "remnant"    // Rule
	SetHoldDays  What = "hold_days"  // Reason, Days: the farm's own days for a hold
	SetOnly      What = "only"       // Mob may graze only Names ("heifers only on Hill and Dam")
	SetBar       What = "bar"        // Mob may not graze Names
	SetDaily     What = "daily"      // Mob, Ha: hectares a day
	SetRename    What = "rename"     // Paddock (or Mob, or the farm when both are empty) becomes To
	SetRetire    What = "retire"     // Paddock leaves the farm; its history stays
	SetSplit     What = "split"      // Paddock becomes Paddocks (Area where told), history follows
	SetMerge     What = "merge"      // Names become To
	SetMerged    What = "mob_merge"  // mobs Names run as To
	SetAway      What = "away"       // Mob leaves the round (winter crop, agistment) ...
	SetBack      What = "back"       // ... and comes home
	SetQuiet     What = "quiet"      // Yes: acknowledge by reaction
	SetTopic     What = "topic"      // the summary goes to the topic in which this was said
	SetUnits     What = "units"      // Unit: "acres" or "hectares"
	SetPin       What = "pin"        // Mob goes into Paddock on Date: a wish for the plan
	SetUnpin     What = "unpin"      // the wishes for Paddock or Mob are dropped
	SetBackFence What = "back_fence" // Mob runs behind a back fence (Yes)
	SetManager   What = "manager"    // Name becomes a manager, or no longer (Off)
)

// Whats lists every part that can be set.
func Whats() []What {
	return []What{SetFarm, SetPaddocks, SetMob, SetSummary, SetAim, SetPlace, SetGrass,
		SetLastGrazed, SetRemnant, SetHoldDays, SetOnly, SetBar, SetDaily, SetRename,
		SetRetire, SetSplit, SetMerge, SetMerged, SetAway, SetBack, SetQuiet, SetTopic,
		SetUnits, SetPin, SetUnpin, SetBackFence, SetManager}
}

// Plot is one line of a paddock register.
type Plot struct {
	Name     string   `json:"name"`
	Area     Hectares `json:"area_ha,omitempty"` // 0 where not told
	Grass    Grass    `json:"grass,omitempty"`
	Mob      string   `json:"mob,omitempty"`      // the only mob that may graze it
	Boundary string   `json:"boundary,omitempty"` // GeoJSON geometry or WKT, as sent
}

// Setup sets something of the farm; which fields apply is told by What.
type Setup struct {
	What     What        `json:"what"`
	Name     string      `json:"name,omitempty"`
	Zone     string      `json:"zone,omitempty"` // IANA
	Paddocks []Plot      `json:"paddocks,omitempty"`
	Mob      string      `json:"mob,omitempty"`
	Head     int         `json:"head,omitempty"`
	At       string      `json:"at,omitempty"` // "06:15", local
	Off      bool        `json:"off,omitempty"`
	Leaves   LeafStage   `json:"leaves,omitempty"`
	Lat      *float64    `json:"lat,omitempty"` // degrees, north positive
	Lon      *float64    `json:"lon,omitempty"` // degrees, east positive
	Paddock  string      `json:"paddock,omitempty"`
	Grass    Grass       `json:"grass,omitempty"`
	Date     Date        `json:"date,omitzero"`
	Rule     RemnantRule `json:"rule,omitempty"`
	Reason   Reason      `json:"reason,omitempty"`
	Days     int         `json:"days,omitempty"`
	Ha       Hectares    `json:"ha,omitempty"` // a day
	Names    []string    `json:"names,omitempty"`
	To       string      `json:"to,omitempty"`
	Yes      bool        `json:"yes,omitempty"`
	Unit     string      `json:"unit,omitempty"`
}
