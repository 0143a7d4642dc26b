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
	r.way, r.prefixed = way, true
}

// locate reads "in" and "on": stock went in, or something happened in there.
func (r *reader) locate(c *clause, i int) {
	r.way = roleAt
	if _, k := r.partAhead(i + 1); k > i+1 || r.padAhead(i+1) {
		return
	}
	r.way = roleNone
	if c.count != nil && len(c.mobs) == 0 && r.oneOf(i+1, "each", "both") {
		c.remarks++ // "about 2 leaves in each"
		return
	}
	if r.oneOf(i+1, "the", "a", "an", "my", "our", "his", "her", "this", "that", "some", "case", "time", "total", "fact", "town", "front", "general") {
		c.remarks++
		return
	}
	if r.oneOf(i+1, "it", "there", "here") && !r.stockNamed(c, i) {
		c.remarks++ // "lots of clover in it"
		return
	}
	if n := len(c.pads); n > 0 && c.pads[n-1].role == roleNone {
		r.direct(c, actIn)
	}
	c.acts |= actIn
}

// stockNamed tells whether a clause has named stock before a token, or spoken
// of them as "they" or "the girls".
func (r *reader) stockNamed(c *clause, to int) bool {
	if len(c.mobs) > 0 || c.head > 0 || c.acts&actsGraze != 0 {
		return true
	}
	return r.stockSaid(c, to)
}

// stockSaid tells whether a pronoun of stock stands in a clause before a token.
func (r *reader) stockSaid(c *clause, to int) bool {
	for c.looked = max(c.looked, c.from); c.looked < to && !c.pronoun; c.looked++ {
		i := c.looked
		c.pronoun = stockPronouns[r.tok(i).text] && !(r.oneOf(i, "all", "everything") && r.tok(i+1).tag == doneWord) && !(r.oneOf(i, "all") && (i > c.from && c.names(i-1) || r.tok(i+1).tag == grazedWord)) && !(r.oneOf(i, "grazing") && r.oneOf(i-1, "post", "pre"))
	}
	return c.pronoun && c.looked <= to
}

// stockPronouns stand for the stock in a farm's talk.
var stockPronouns = wordSet(`they theyre theyve theyd them em stock animals girls ladies boys lads lot everyone everything everybody all grazing`)

// turns tells whether "out" or "in" tells of a further turn on another day or at
// another hour: "12 in yesterday out today", "12 in at 6 out at 12".
func (r *reader) turns(c *clause, i int) bool {
	t := r.tok(i)
	if t.tag != outWord && t.tag != inWord && t.tag != offWord || !c.days.ok && !c.hour || !c.has(actIn|actOut) && len(c.mobs) == 0 || len(c.pads) == 0 {
		return false
	}
	for _, p := range c.pads {
		if p.role == roleNone {
			return false
		}
	}
	k := r.over(i+1, "again", "of", "it")
	_, hour := r.clock(k)
	return r.day(k).ok || hour
}

// padAhead tells whether a paddock is named at i, the words "the" and "our" set
// aside.
func (r *reader) padAhead(i int) bool {
	_, ok := r.onePad(r.over(i, "the", "our"), true)
	return ok
}
