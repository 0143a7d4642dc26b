package parser

import (
	"leafround/core/entry"
)

// rains gives the rain told.
func (r *reader) rains(c *clause) ([]entry.Entry, string) {
	if !r.toldRain(c) {
		return nil, ""
	}
	if r.besideWeather(c) {
		return nil, "Is that rain, something in " + c.pads[0].name + ", or both? Please send them apart."
	}
	for _, p := range c.pads {
		if !p.marked && p.role != roleAt && r.tok(p.at).shape == number {
			return nil, "How much rain was that? Please send one number, such as: rain 12mm"
		}
	}
	for i := c.from; i < c.to; i++ {
		if !c.names(i) && r.oneOf(i, "week", "month", "total", "far", "year") || r.oneOf(i, "since") && !r.hourOfToday(i+1) && !r.mostSince(c, i) {
			return nil, "Is that one day's rain? Please send the rain of each day, such as: rain 12mm yesterday"
		}
	}
	if c.mm < 0 || c.mm > 1000 {
		return nil, "How much rain was that, in millimetres?"
	}
	return []entry.Entry{entry.Rain{Date: r.dayOf(c), Mm: c.mm}}, ""
}

// mostSince tells whether "since August" says how long no day was as wet: "31mm,
// the most since August".
func (r *reader) mostSince(c *clause, i int) bool {
	for k := i - 1; k > max(c.from, i-10); k-- {
		if r.oneOf(k, "most", "heaviest", "wettest", "biggest", "worst", "highest", "first") {
			return r.hasShape(c.from, k, number) && (r.tok(i+1).tag == monthName || r.oneOf(i+1, "last", "spring", "autumn", "winter", "summer", "christmas", "easter"))
		}
	}
	return false
}

// hasShape tells whether a token of some form stands in a run of tokens.
func (r *reader) hasShape(from, to int, want shape) bool {
	for i := from; i < to; i++ {
		if r.tok(i).shape == want {
			return true
		}
	}
	return false
}

// toldRain tells whether an amount stood in the clause.
func (r *reader) toldRain(c *clause) bool {
	if c.mm > 0 {
		return true
	}
	for i := c.from; i < c.to; i++ {
		if t := r.tok(i); t.shape == number && t.value == 0 || t.text == "no" || t.text == "nil" || t.text == "zero" {
			return true
		}
	}
	return false
}

// temperatures gives the temperature told, with where it was taken.
func (r *reader) temperatures(c *clause) ([]entry.Entry, string) {
	if len(c.temps) == 0 && c.low == nil && c.high == nil {
		return nil, ""
	}
	if r.besideWeather(c) {
		return nil, "Is that a temperature, something in " + c.pads[0].name + ", or both? Please send them apart."
	}
	if r.ofScores(c) {
		return nil, leastOfScores
	}
	if why := r.fromFahrenheit(c); why != "" {
		return nil, why
	}
	t := entry.Temperature{Date: r.dayOf(c), Min: c.low, Max: c.high, Where: c.where}
	switch {
	case len(c.temps) > 1, len(c.temps) == 1 && (c.low != nil || c.high != nil):
		return nil, whichIsWhich
	case len(c.temps) == 1:
		v := c.temps[0]
		t.Celsius = &v
	case c.low == nil || c.high == nil:
		v := c.low
		if v == nil {
			v = c.high
		}
		t.Celsius, t.Min, t.Max = nil, c.low, c.high
		_ = v
	}
	if t.Min != nil && t.Max != nil && *t.Min > *t.Max {
		return nil, "The least is above the most there. Which is which?"
	}
	if t.Where == "" && t.Celsius == nil {
		t.Where = entry.Air
	}
	if t.Where == "" && r.hasText(c.from, c.to, "soil") {
		t.Where = entry.Soil // "11 degrees in the soil"
	}
	for _, v := range []*float64{t.Celsius, t.Min, t.Max} {
		if t.Where == entry.Soil && v != nil && *v > mostSoil {
			return nil, fahrenheitOrNot // told for the soil only behind the reading
		}
	}
	if t.Where == "" {
		const why = "Is that the soil's temperature or the air's?"
		r.offer(why, c.from, c.from, "soil", "Soil")
		r.offer(why, c.from, c.from, "air", "Air")
		return nil, why
	}
	return []entry.Entry{t}, ""
}
