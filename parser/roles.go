package parser

// direct lays a direction on the place before it that has none yet ("12 in"),
// or keeps it for the next one ("out 7").
func (r *reader) direct(c *clause, a act) {
	way := roleIn
	if a&actOut != 0 {
		way = roleOut
	}
	r.way = way
	for k := len(c.pads) - 1; k >= 0 && c.pads[k].role == roleNone; k-- {
		c.pads[k].role = way
		r.way = roleNone
	}
}

// prefix keeps a direction for the next place ("to 13", "from 12"); places
// before it that have none go the other way ("12 to 13").
func (r *reader) prefix(c *clause, way role) {
	other := roleOut
	if way == roleOut {
		other = roleIn
	}
	for k := len(c.pads) - 1; k >= 0 && c.pads[k].role == roleNone; k-- {
		c.pads[k].role = other
	}
	r.way = way
}

// locate reads "in" and "on": stock went in, or something happened in there.
func (r *reader) locate(c *clause, i int) {
	if r.padAhead(i + 1) {
		r.way = roleAt
		return
	}
	if n := len(c.pads); n > 0 && c.pads[n-1].role == roleNone {
		r.direct(c, actIn)
	}
	c.acts |= actIn
}

// padAhead tells whether a paddock is named at i, the words "the" and "our" set
// aside.
func (r *reader) padAhead(i int) bool {
	for r.tok(i).text == "the" || r.tok(i).text == "our" {
		i++
	}
	_, ok := r.onePad(i, true)
	return ok
}
