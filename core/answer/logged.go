package answer

import (
	"bytes"
	"encoding/json"
	"fmt"

	"leafround/core/entry"
	"leafround/core/farm"
	"leafround/core/leaf"
)

// Logged answers an entry that was logged, other than a count: the entry, and
// what the team should hear about it.
type Logged struct {
	Head
	Entry entry.Entry `json:"-"`
	More  `json:"-"`
}

// More is what comes beside the entry's own keys.
type More struct {
	Name     string         `json:"name_now,omitempty"` // the paddock as the register calls it
	Today    entry.Date     `json:"today,omitzero"`
	Mobs     []string       `json:"mobs,omitempty"`       // whose stock it was, as far as known
	Since    entry.Date     `json:"in_since,omitzero"`    // when they went in, if on an earlier day
	Stay     int            `json:"stay_days,omitempty"`  // days that stock were in, first and last included
	Before   *Before        `json:"before,omitempty"`     // the regrowth that was grazed
	AreaHa   entry.Hectares `json:"area_ha,omitempty"`    // of the paddock
	DayMm    float64        `json:"day_mm,omitempty"`     // rain of that day in all
	WeekMm   float64        `json:"week_mm,omitempty"`    // of the seven days up to it
	Others   []Hold         `json:"still_held,omitempty"` // holds that bind after this
	Undone   []Line         `json:"undone,omitempty"`     // what an undo or a correction replaced
	Stood    *Paddock       `json:"standing,omitempty"`   // how the paddock stands after a correction
	Register *Register      `json:"register,omitempty"`   // after a setup
	Remarks  []Remark       `json:"remarks,omitempty"`
	Cautions []Caution      `json:"cautions,omitempty"`
}

// Before tells of the regrowth that a grazing or a cut ended.
type Before struct {
	Days  int             `json:"days,omitempty"` // since the grazing before; 0 where unknown
	Stage float64         `json:"stage,omitempty"`
	From  entry.LeafStage `json:"window_from"`
	To    entry.LeafStage `json:"window_to"`
	When  leaf.Advice     `json:"when"` // wait: it was early
}

// Register tells what the register holds.
type Register struct {
	Paddocks int            `json:"paddocks"`
	AreaHa   entry.Hectares `json:"area_ha"`
	Acres    float64        `json:"acres,omitempty"`
	Mobs     int            `json:"mobs"`
	Nameless int            `json:"without_area,omitempty"`
	South    bool           `json:"south"`
	NextAt   string         `json:"summary_at,omitempty"`
}

// MarshalJSON writes "about", the keys of the entry, and the rest.
func (l Logged) MarshalJSON() ([]byte, error) {
	body, err := entry.Encode(l.Entry)
	if err != nil {
		return nil, err
	}
	more, err := json.Marshal(l.More)
	if err != nil {
		return nil, fmt.Errorf("answer: %w", err)
	}
	out := fmt.Appendf(nil, `{"about":%q,`, l.About)
	out = append(out, body[1:]...)
	if bytes.Equal(more, []byte("{}")) {
		return out, nil
	}
	return append(append(out[:len(out)-1], ','), more[1:]...), nil
}

// logged answers an entry that is no count.
func logged(f *farm.Farm, l entry.Logged, day entry.Date) Answer {
	a := Logged{Head: Head{string(l.Entry.Kind())}, Entry: l.Entry}
	a.Today = day
	if p := f.Find(farm.PaddockOf(l.Entry)); p != nil {
		a.Name, a.AreaHa = p.Name, p.Area
		a.Remarks = fromFarm(f.Remarks(l.ID))
	}
	switch e := l.Entry.(type) {
	case entry.Graze:
		a.graze(f, l, e)
	case entry.Cut:
		a.cut(f, l, e)
	case entry.Canopy:
		a.canopy(f, e, day)
	case entry.Hold:
		a.hold(f, l, e, day)
	case entry.Release:
		a.release(f, e)
	case entry.Rain:
		a.rain(f, e)
	case entry.Note:
		a.note(f, e)
	case entry.Undo, entry.Correct:
		a.replaced(f, l, day)
	case entry.Setup:
		a.setup(f, l, e, day)
	}
	return a
}

// Fact gives the entry's facts beside its keys.
func (l Logged) Fact() More { return l.More }
