package parser

import "strings"

// What stock left may be told behind the move, in the same sentence or the
// next: "off 20 and onto 21. 4cm behind them", "22 to 23. Residual in 22 was
// 1,550". It belongs to the paddock that they came out of.

// leftOver steps over words that say that an amount was left: "1480 behind
// them", "1500 still standing", "4cm left behind".
//
//	leftOver = [ "still" | "was" ] ( "left" | "behind" | "remaining" | "standing" ) { … } [ "them" | "it" ]
func (r *reader) leftOver(i int) (next int) {
	k := r.over(i, "was", "were", "is", "still", "about")
	t := r.tok(k)
	if t.shape != word || t.tag != leftWord && !r.oneOf(k, "behind", "remaining", "standing", "remains") {
		return i
	}
	k++
	for r.tok(k).tag == leftWord || r.oneOf(k, "behind", "standing") {
		k++
	}
	if r.oneOf(k, "them", "em", "it", "us", "her", "there") {
		return k + 1
	}
	if t := r.tok(k); t.shape == word && (t.tag == padMark || t.tag == onWord && !r.padAhead(k+1) || r.oneOf(k, "budget", "plan", "target", "last", "schedule", "where", "what")) && r.oneOf(k-1, "behind") {
		return i // "1480 behind target"
	}
	return k
}

// aimWords make what would be left an aim, not what was.
var aimWords = wordSet(`aim aims aiming target targets goal want wanting hoping budget ideal ideally`)

// leftIn reads where a residual was left, where the amount follows: "residual
// in 22 was 1,550".
//
//	leftIn = ( "in" | "of" | "on" | "from" | "for" ) place [ "was" | ":" | … ] amount
func (r *reader) leftIn(i int) (p place, next int) {
	t := r.tok(i)
	if t.shape == number && !t.decimal && r.bears(t.text) && r.tok(i+1).shape == number && !r.tok(i+1).glued {
		if v, k, ok := r.plain(i + 1); ok && (v >= 800 && !r.unitAhead(k) || r.tok(k).tag == cmUnit || r.tok(k).tag == clickUnit) {
			return place{name: t.text, known: true, role: roleAt, at: i, next: i + 1}, i + 1 // "resid 12 1600"
		}
	}
	if t.shape != word || t.tag != inWord && t.tag != ofWord && t.tag != onWord && t.tag != fromWord && t.tag != forWord {
		return p, i
	}
	p, ok := r.onePad(r.over(i+1, "the"), r.anyPaddock)
	if !ok || !p.known {
		return p, i
	}
	k := p.next
	for r.oneOf(k, "was", "is", ":", "=", "-", "at", "about", "around", "came", "comes", "to", "measured", "measures") {
		k++
	}
	if _, _, ok := r.plain(k); !ok {
		return p, i
	}
	p.role = roleAt
	return p, k
}

// leftBehind lays a residual that stands by itself on the statement before that
// tells where stock came out, unless another paddock or day is told with it.
func (r *reader) leftBehind(out []clause, c *clause) bool {
	if c.resid == nil || c.acts&^(actPlace|actGrazed) != 0 || c.has(actGrazed) && len(c.pads) > 0 || c.guard != 0 || c.count != nil || c.trouble || c.event || c.share != 0 || len(c.pads) > 1 {
		return false
	}
	for n := len(out) - 1; n >= 0 && n >= len(out)-3; n-- {
		d := &out[n]
		if d.family() != famGraze || d.guard != 0 || d.resid != nil || c.sentence > d.sentence+2 {
			return false
		}
		for _, p := range d.pads {
			if len(c.pads) == 1 && p.role == roleIn && p.name == c.pads[0].name {
				c.unsure("Stock have just gone into " + p.name + ": in which paddock was that left?")
				return false
			}
		}
		if !d.comesOut() {
			continue
		}
		if c.has(actGrazed) && !r.hasText(c.from, c.to, "it") && !c.stock {
			return false
		}
		if n == len(out)-1 && len(c.pads) == 0 && len(c.nums) == 0 {
			return false // plain joining does it
		}
		if c.days.ok && d.days.ok && c.days.day != d.days.day || c.days.ok && !d.days.ok && c.days.day != r.today {
			return false
		}
		if len(c.mobs) > 0 && mobsOf(c)[0] != "" && mobsOf(c)[0] != mobsOf(d)[0] || !r.sameOut(d, c) {
			return false
		}
		d.resid, d.remarks = c.resid, d.remarks+c.remarks+c.strange
		if c.doubt != "" {
			d.unsure(c.doubt)
		}
		return true
	}
	return false
}

// goesIn makes a clause that tells no more than where stock are one of their
// going in.
func (c *clause) goesIn() {
	for n := range c.pads {
		c.pads[n].role = roleIn
	}
}

// putThere tells whether a word says that stock were brought where they were:
// "were put in 4", "were let into 9".
func (r *reader) putThere(c *clause) bool {
	for i := c.from; i < c.to; i++ {
		if t := r.tok(i); t.shape == word && (t.tag == putWord || t.tag == movedWord || r.oneOf(i, "let", "run", "walked", "driven", "taken", "brought")) {
			return true
		}
	}
	return false
}

// comesOut tells whether stock came out of a paddock of a clause.
func (c *clause) comesOut() bool {
	if n := len(c.pads); n > 1 && c.family() == famGraze && c.pads[0].role != roleIn && c.pads[0].role != roleAt && c.pads[n-1].role == roleIn {
		return true // "milkers 12 to 18"
	}
	return len(c.pads) > 0 && !c.only(roleIn) && c.acts&(actOut|actGrazed|actMoved|actPlace) != 0
}

// sameOut tells whether a residual is of a paddock that stock came out of: it
// names that one, by its number alone ("in the 40" behind West 40) or not at
// all. Strange words beside it are none of a residual.
func (r *reader) sameOut(d, c *clause) bool {
	if c.strange > len(c.nums) || len(c.nums) > 1 || len(c.nums) == 1 && len(c.pads) > 0 {
		return false
	}
	if len(c.pads) == 0 && len(c.nums) == 0 {
		return true
	}
	found := 0
	for _, p := range d.pads {
		if p.role == roleIn {
			continue
		}
		switch {
		case len(c.pads) == 1 && p.name == c.pads[0].name:
			return true
		case len(c.nums) == 1 && r.tok(c.nums[0]-1).text == "the" && strings.HasSuffix(p.name, " "+r.tok(c.nums[0]).text):
			found++
		}
	}
	return found == 1
}

// leftInEach lays a residual that is told of both or all on every paddock that
// stock came out of in the same sentence: "heifers off 3, steers off 2, both
// left 1500".
func (r *reader) leftInEach(out []clause, c *clause) bool {
	if c.resid == nil || len(c.pads)+len(c.mobs)+len(c.nums)+c.strange > 0 || c.acts&^(actPlace|actGrazed) != 0 || c.guard != 0 || c.days.ok || c.share != 0 || c.doubt != "" ||
		!r.hasText(c.from, c.to, "both") && !r.hasText(c.from, c.to, "all") && !r.hasText(c.from, c.to, "each") {
		return false
	}
	first := len(out)
	for n := first - 1; n >= 0 && out[n].sentence == c.sentence; n-- {
		if d := &out[n]; d.family() != famGraze || d.guard != 0 || d.resid != nil || !d.only(roleOut) && !d.only(roleNone) || !d.comesOut() {
			return false
		}
		first = n
	}
	if len(out)-first < 2 {
		return false
	}
	for n := first; n < len(out); n++ {
		out[n].resid = c.resid
	}
	return true
}
