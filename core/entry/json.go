package entry

import (
	"encoding/json"
	"fmt"
)

// Encode gives an entry as a JSON object with its "kind" and the keys of the
// contract; keys that do not apply are left out.
func Encode(e Entry) ([]byte, error) {
	body, err := json.Marshal(e)
	if err != nil {
		return nil, fmt.Errorf("entry: encode %s: %w", e.Kind(), err)
	}
	head := fmt.Sprintf(`{"kind":%q`, e.Kind())
	if string(body) == "{}" {
		return []byte(head + "}"), nil
	}
	return append([]byte(head+","), body[1:]...), nil
}

// Decode reads what Encode wrote.
func Decode(b []byte) (Entry, error) {
	var k struct {
		Kind Kind `json:"kind"`
	}
	if err := json.Unmarshal(b, &k); err != nil {
		return nil, fmt.Errorf("entry: decode: %w", err)
	}
	read, ok := decoders[k.Kind]
	if !ok {
		return nil, fmt.Errorf("entry: decode: unknown kind %q", k.Kind)
	}
	e, err := read(b)
	if err != nil {
		return nil, fmt.Errorf("entry: decode %s: %w", k.Kind, err)
	}
	return e, nil
}

var decoders = map[Kind]func([]byte) (Entry, error){
	KindCount:       decode[Count],
	KindGraze:       decode[Graze],
	KindCut:         decode[Cut],
	KindCanopy:      decode[Canopy],
	KindHold:        decode[Hold],
	KindRelease:     decode[Release],
	KindRain:        decode[Rain],
	KindTemperature: decode[Temperature],
	KindNote:        decode[Note],
	KindUndo:        decode[Undo],
	KindCorrect:     decode[Correct],
	KindSetup:       decode[Setup],
}

func decode[T Entry](b []byte) (Entry, error) {
	var v T
	err := json.Unmarshal(b, &v)
	return v, err
}

// encodeAll gives a list of entries, never null.
func encodeAll(entries []Entry) ([]json.RawMessage, error) {
	out := make([]json.RawMessage, 0, len(entries))
	for _, e := range entries {
		b, err := Encode(e)
		if err != nil {
			return nil, err
		}
		out = append(out, b)
	}
	return out, nil
}

// correctJSON is how a correction is written: "from" and "to" hold a name, an ISO
// date or an array of scores.
type correctJSON struct {
	Field Field           `json:"field"`
	From  json.RawMessage `json:"from,omitempty"`
	To    json.RawMessage `json:"to"`
	Said  []Tiller        `json:"said,omitempty"`
	About string          `json:"about,omitempty"`
	Day   Date            `json:"day,omitzero"`
}

// MarshalJSON writes the correction with one "to".
func (c Correct) MarshalJSON() ([]byte, error) {
	var from, to any
	if c.Told() {
		from = c.From
	}
	switch c.Field {
	case FieldDate:
		to = c.ToDate
	case FieldTillers:
		to = stages(c.ToTillers)
		if c.Told() {
			from = stages(c.FromTillers)
		}
	default:
		to = c.ToName
	}
	j := correctJSON{Field: c.Field, Said: c.ToTillers, About: c.About, Day: c.Day}
	var err error
	if j.To, err = json.Marshal(to); err != nil {
		return nil, err
	}
	if from != nil {
		j.From, err = json.Marshal(from)
	}
	if err != nil {
		return nil, err
	}
	return json.Marshal(j)
}

// stages gives the leaf stage of each tiller.
func stages(list []Tiller) []LeafStage { return Count{Said: list}.Scored(RemnantBySize).Tillers }

// UnmarshalJSON reads what MarshalJSON wrote.
func (c *Correct) UnmarshalJSON(b []byte) error {
	var j correctJSON
	if err := json.Unmarshal(b, &j); err != nil {
		return err
	}
	*c = Correct{Field: j.Field, ToTillers: j.Said, About: j.About, Day: j.Day}
	if err := c.from(j.From); err != nil {
		return err
	}
	switch j.Field {
	case FieldDate:
		return json.Unmarshal(j.To, &c.ToDate)
	case FieldTillers:
		if len(j.Said) > 0 {
			return nil
		}
		var scores []LeafStage
		err := json.Unmarshal(j.To, &scores)
		for _, s := range scores {
			c.ToTillers = append(c.ToTillers, Tiller{Score: s})
		}
		return err
	default:
		return json.Unmarshal(j.To, &c.ToName)
	}
}

// from reads what was wrong: a text, or an array of scores.
func (c *Correct) from(b []byte) error {
	if len(b) == 0 {
		return nil
	}
	if b[0] == '"' {
		return json.Unmarshal(b, &c.From)
	}
	var scores []LeafStage
	err := json.Unmarshal(b, &scores)
	for _, s := range scores {
		c.FromTillers = append(c.FromTillers, Tiller{Score: s})
	}
	return err
}

type optionJSON struct {
	Label    string            `json:"label"`
	Entries  []json.RawMessage `json:"entries,omitempty"`
	Question *Question         `json:"question,omitempty"`
}

// MarshalJSON writes the option's entries with their kinds.
func (o Option) MarshalJSON() ([]byte, error) {
	raw, err := encodeAll(o.Entries)
	if err != nil {
		return nil, err
	}
	return json.Marshal(optionJSON{o.Label, raw, o.Question})
}

// UnmarshalJSON reads what MarshalJSON wrote.
func (o *Option) UnmarshalJSON(b []byte) error {
	var j optionJSON
	if err := json.Unmarshal(b, &j); err != nil {
		return err
	}
	*o = Option{Label: j.Label, Question: j.Question}
	for _, raw := range j.Entries {
		e, err := Decode(raw)
		if err != nil {
			return err
		}
		o.Entries = append(o.Entries, e)
	}
	return nil
}

type readingJSON struct {
	Text       string            `json:"text"`
	Entries    []json.RawMessage `json:"entries"`
	Question   *Question         `json:"question"`
	Also       *Question         `json:"also,omitempty"`
	Ask        *Ask              `json:"ask"`
	Ignored    bool              `json:"ignored"`
	Understood []string          `json:"understood,omitempty"`
}

// MarshalJSON writes the reading as `leafround parse` prints it.
func (r Reading) MarshalJSON() ([]byte, error) {
	raw, err := encodeAll(r.Entries)
	if err != nil {
		return nil, err
	}
	if r.Ask != nil && r.Ask.Options == nil {
		r.Ask = &Ask{Reason: r.Ask.Reason, Options: []Option{}}
	}
	return json.Marshal(readingJSON{r.Text, raw, r.Question, r.Also, r.Ask, r.Ignored, r.Understood})
}
