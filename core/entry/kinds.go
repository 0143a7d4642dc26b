package entry

// Kind names an entry's kind, as the log and the JSON write it.
type Kind string

// The closed set of kinds.
const (
	KindCount       Kind = "count"
	KindGraze       Kind = "graze"
	KindCut         Kind = "cut"
	KindCanopy      Kind = "canopy"
	KindHold        Kind = "hold"
	KindRelease     Kind = "release"
	KindRain        Kind = "rain"
	KindTemperature Kind = "temperature"
	KindNote        Kind = "note"
	KindUndo        Kind = "undo"
	KindCorrect     Kind = "correct"
	KindSetup       Kind = "setup"
)

// Kinds lists the closed set.
func Kinds() []Kind {
	return []Kind{KindCount, KindGraze, KindCut, KindCanopy, KindHold, KindRelease,
		KindRain, KindTemperature, KindNote, KindUndo, KindCorrect, KindSetup}
}

// Entry is one thing that somebody said happened. The set of its types is
// closed: only this package can add one.
type Entry interface {
	Kind() Kind
	// On gives the day that the entry is about; zero where it has none.
	On() Date
	closed()
}

// Count is a leaf count in one paddock: tillers, or an average without them.
type Count struct {
	Paddock string      `json:"paddock"`
	Date    Date        `json:"date"`
	Tillers []LeafStage `json:"tillers,omitempty"` // after the counting rules, in the order given
	Mean    LeafStage   `json:"mean"`
	N       int         `json:"n"`                // tillers behind the mean; 0 when not told
	Skipped Skipped     `json:"skipped,omitzero"` // set aside
	Past    int         `json:"past,omitempty"`   // tillers whose score is a floor
	Said    []Tiller    `json:"said,omitempty"`   // the tillers as told, where parts or floors were
}

// Scored gives the count with its Tillers, Mean, N and Past reckoned from what
// was said, by the farm's rule for the remnant. A count without Said is
// returned as it is.
func (c Count) Scored(rule RemnantRule) Count {
	if len(c.Said) == 0 {
		return c
	}
	c.Tillers = make([]LeafStage, len(c.Said))
	c.Past, c.N = 0, len(c.Said)
	sum := LeafStage(0)
	for i, t := range c.Said {
		c.Tillers[i] = t.Stage(rule)
		sum += c.Tillers[i]
		if t.Floor {
			c.Past++
		}
	}
	c.Mean = sum / LeafStage(c.N)
	return c
}

// GrazeEvent tells which part of a grazing is logged.
type GrazeEvent string

// The parts of a grazing.
const (
	In     GrazeEvent = "in"     // stock went in
	Out    GrazeEvent = "out"    // stock came out
	Grazed GrazeEvent = "grazed" // all over, told in one message
)

// Graze is stock going into a paddock, coming out of it, or both.
type Graze struct {
	Paddock  string     `json:"paddock"`
	Date     Date       `json:"date"`
	Event    GrazeEvent `json:"event"`
	Mob      string     `json:"mob,omitempty"`
	Head     int        `json:"head,omitempty"` // animals, where told
	Residual *Residual  `json:"residual,omitempty"`
	Part     float64    `json:"part,omitempty"`       // 0–1 where only part of the paddock was grazed
	Moved    bool       `json:"moved,omitempty"`      // one half of a move: the out and the in belong together
	Back     bool       `json:"back_fence,omitempty"` // grazed in breaks behind a back fence
}

// CutKind tells how a paddock was cut.
type CutKind string

// The kinds of cut; each starts regrowth again.
const (
	Silage CutKind = "silage"
	Hay    CutKind = "hay"
	Topped CutKind = "topped"
)

// Cut is a cut for silage or hay, or a topping.
type Cut struct {
	Paddock string  `json:"paddock"`
	Date    Date    `json:"date"`
	What    CutKind `json:"what"`
}

// Canopy tells that the canopy has closed: no bare ground is seen through it.
type Canopy struct {
	Paddock string `json:"paddock"`
	Date    Date   `json:"date"`
}

// Reason tells why a paddock is held out of the round.
type Reason string

// The reasons of a hold.
const (
	HoldSilage     Reason = "silage"
	HoldHay        Reason = "hay"
	HoldSpray      Reason = "spray"
	HoldFertiliser Reason = "fertiliser"
	HoldEffluent   Reason = "effluent"
	HoldResown     Reason = "resown"
	HoldWet        Reason = "wet"
	HoldCrop       Reason = "crop"
	HoldOther      Reason = "other"
)

// Reasons lists the closed set of hold reasons.
func Reasons() []Reason {
	return []Reason{HoldSilage, HoldHay, HoldSpray, HoldFertiliser, HoldEffluent,
		HoldResown, HoldWet, HoldCrop, HoldOther}
}

// Guarded tells whether a hold of this reason ends only on its date or by a
// manager who names it.
func (r Reason) Guarded() bool {
	return r == HoldSpray || r == HoldEffluent || r == HoldFertiliser
}

// Hold takes a paddock out of the round.
type Hold struct {
	Paddock string `json:"paddock"`
	Date    Date   `json:"date"`
	Reason  Reason `json:"reason"`
	Until   Date   `json:"until,omitzero"` // the first day it may be grazed again
}

// Release lifts the holds of a reason; without one, all but the guarded ones.
type Release struct {
	Paddock string `json:"paddock"`
	Date    Date   `json:"date"`
	Reason  Reason `json:"reason,omitempty"`
}

// Rain is rain on one day; several on one day add up.
type Rain struct {
	Date Date    `json:"date"`
	Mm   float64 `json:"mm"`
}

// Temperature is a reading, or the day's least and most, in degrees Celsius.
type Temperature struct {
	Date    Date        `json:"date"`
	Celsius *float64    `json:"celsius,omitempty"`
	Min     *float64    `json:"min,omitempty"`
	Max     *float64    `json:"max,omitempty"`
	Where   Thermometer `json:"where"`
}

// Alarm marks a note that wants help now.
type Alarm string

// The alarms.
const (
	AlarmStock  Alarm = "stock"  // animals that look ill: the vet, and the manager
	AlarmPerson Alarm = "person" // somebody may be hurt: the emergency number
)

// Note is a remark worth keeping.
type Note struct {
	Text    string `json:"text"`
	Paddock string `json:"paddock,omitempty"`
	Mob     string `json:"mob,omitempty"`
	Alarm   Alarm  `json:"alarm,omitempty"`
}

// Undo withdraws the sender's latest entry.
type Undo struct{}

// Field names what a correction mends.
type Field string

// The fields that can be mended.
const (
	FieldPaddock Field = "paddock"
	FieldDate    Field = "date"
	FieldTillers Field = "tillers"
	FieldMob     Field = "mob"
)

// Correct mends the sender's latest entry, or the one replied to. One of the
// To values is set, as the field asks.
type Correct struct {
	Field     Field
	From      string // a paddock, a mob or an ISO date, as told; "" where not
	ToName    string // paddock or mob
	ToDate    Date
	ToTillers []Tiller
	// FromTillers are the scores that were wrong; empty where not told.
	FromTillers []Tiller
	// About and Day narrow which entry is meant ("p12 was 2 not 3 on mon"):
	// the sender's latest on that paddock and day. Empty and zero where not told.
	About string
	Day   Date
}

// Told tells whether the correction says what was wrong.
func (c Correct) Told() bool { return c.From != "" || len(c.FromTillers) > 0 }

// Kind, On and closed make the closed set.
func (Count) Kind() Kind       { return KindCount }
func (Graze) Kind() Kind       { return KindGraze }
func (Cut) Kind() Kind         { return KindCut }
func (Canopy) Kind() Kind      { return KindCanopy }
func (Hold) Kind() Kind        { return KindHold }
func (Release) Kind() Kind     { return KindRelease }
func (Rain) Kind() Kind        { return KindRain }
func (Temperature) Kind() Kind { return KindTemperature }
func (Note) Kind() Kind        { return KindNote }
func (Undo) Kind() Kind        { return KindUndo }
func (Correct) Kind() Kind     { return KindCorrect }
func (Setup) Kind() Kind       { return KindSetup }

func (e Count) On() Date       { return e.Date }
func (e Graze) On() Date       { return e.Date }
func (e Cut) On() Date         { return e.Date }
func (e Canopy) On() Date      { return e.Date }
func (e Hold) On() Date        { return e.Date }
func (e Release) On() Date     { return e.Date }
func (e Rain) On() Date        { return e.Date }
func (e Temperature) On() Date { return e.Date }
func (Note) On() Date          { return 0 }
func (Undo) On() Date          { return 0 }
func (Correct) On() Date       { return 0 }
func (e Setup) On() Date       { return e.Date }

func (Count) closed()       {}
func (Graze) closed()       {}
func (Cut) closed()         {}
func (Canopy) closed()      {}
func (Hold) closed()        {}
func (Release) closed()     {}
func (Rain) closed()        {}
func (Temperature) closed() {}
func (Note) closed()        {}
func (Undo) closed()        {}
func (Correct) closed()     {}
func (Setup) closed()       {}
