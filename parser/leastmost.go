package parser

import "leafround/core/entry"

// leastAndMost keeps a reading, with what is told behind it: which of the two it
// is, and the other one: "-1 min, 7 max", "4 to 16".
//
//	leastAndMost = number ( "min" | "max" ) [ [ "," | "and" | "/" ] number ( "max" | "min" ) ]
func (r *reader) leastAndMost(c *clause, v float64, k int, where entry.Thermometer, side tag) int {
	t := r.tok(k)
	if w, n, ok := r.plain(k + 1); side == unknown && ok && w > v && (r.oneOf(k, "to") || t.text == "-" && t.glued) && r.ranges(k-2) && !r.unitAhead(n) {
		r.keepTemperature(c, v, where, minWord)
		r.keepTemperature(c, w, where, maxWord)
		return n
	}
	if side != unknown || t.shape != word || t.tag != minWord && t.tag != maxWord {
		r.keepTemperature(c, v, where, side)
		return k
	}
	if _, _, ok := r.plain(r.over(k+1, ":", "of")); ok && !r.otherSide(t.tag, k+1) {
		r.keepTemperature(c, v, where, side)
		return k // "18 min 5": the word belongs to what follows
	}
	r.keepTemperature(c, v, where, t.tag)
	k++
	if !r.otherSide(t.tag, k) {
		return k
	}
	w, n, _ := r.plain(r.overJoins(k))
	_, _, n = r.degrees(n)
	r.keepTemperature(c, w, where, r.tok(n).tag)
	return n + 1
}

// downAndUp reads how far a temperature went both ways: "air got down to 4 and
// up to 17".
//
//	downAndUp = [ verb ] "down" "to" number ( "and" | "," ) [ verb ] "up" "to" number | the same the other way round
func (r *reader) downAndUp(c *clause, i int, where entry.Thermometer) int {
	turn := func(i int) (up bool, v float64, next int, ok bool) {
		i = r.over(i, "it", "got", "went", "was", "dropped", "fell", "came", "climbed", "rose", "back")
		if !r.oneOf(i, "down", "up") || !r.oneOf(i+1, "to") {
			return false, 0, i, false
		}
		v, k, ok := r.plain(i + 2)
		if !ok {
			return false, 0, i, false
		}
		deg, fahrenheit, k := r.degrees(k)
		if r.unitTold = deg; fahrenheit {
			v = (v - 32) / 1.8
		}
		return r.oneOf(i, "up"), v, k, deg || !r.unitAhead(k)
	}
	up, v, k, ok := turn(i)
	if !ok || !r.joins(k) && !r.oneOf(k, "then") {
		return i
	}
	other, w, next, ok := turn(r.over(k, ",", "and", "then"))
	if !ok || up == other {
		return i
	}
	if up {
		v, w = w, v
	}
	r.keepTemperature(c, v, where, minWord)
	r.keepTemperature(c, w, where, maxWord)
	return next
}

// ranges tells whether temperatures, not one of them, are spoken of before a
// token: "temps 4 to 16", "air temp range 4 to 16".
func (r *reader) ranges(i int) bool {
	for k := i; k > i-4 && k >= 0; k-- {
		if r.oneOf(k, "up", "from", "went", "gone", "risen") {
			return false
		}
		if r.oneOf(k, "temps", "temperatures", "range", "ranged", "between") {
			return true
		}
	}
	return false
}

// otherSide tells whether a number with the other of "min" and "max" behind it
// stands at a token.
func (r *reader) otherSide(side tag, i int) bool {
	_, n, ok := r.plain(r.overJoins(i))
	if !ok {
		return false
	}
	_, _, n = r.degrees(n)
	t := r.tok(n)
	return t.shape == word && (t.tag == minWord || t.tag == maxWord) && t.tag != side
}

// overJoins steps over what joins two amounts.
func (r *reader) overJoins(i int) int {
	for r.joins(i) || r.oneOf(i, "a") {
		i++
	}
	return i
}

// leastFirst tells whether a bare number is the least or the most of a day, with
// the other one behind it: "4 min 16 max".
func (r *reader) leastFirst(i int) bool {
	_, k, ok := r.plain(i)
	if !ok {
		return false
	}
	_, _, k = r.degrees(k)
	t := r.tok(k)
	return t.shape == word && (t.tag == minWord || t.tag == maxWord) && r.otherSide(t.tag, k+1)
}

const whichIsWhich = "Which temperature is which? Please send one message for each."

// apartFrom tells whether two readings were taken in two places, each told.
func (c *clause) apartFrom(d *clause) bool {
	whole := func(c *clause) bool { return len(c.temps) == 1 || c.low != nil || c.high != nil }
	return c.where != "" && d.where != "" && c.where != d.where && whole(c) && whole(d)
}

// otherReading tells whether a word of where a temperature was taken belongs to
// the number behind it, as another place stands before the reading: the "air" of
// "soil 11 air 18".
func (r *reader) otherReading(i int, where entry.Thermometer) bool {
	if where == "" {
		return false
	}
	for n := 0; n < longestRun && r.tok(i).shape == word && (r.tok(i).tag == soilWord || r.tok(i).tag == airWord || r.tok(i).tag == tempWord || r.oneOf(i, "is", "was", "at", "about")); n++ {
		i++
	}
	if r.oneOf(i, ":", "=") {
		i++
	}
	_, _, ok := r.plain(i)
	return ok
}

// ofScores tells whether the least and the most may be those of leaf scores: no
// word says that they are temperatures, and they stand beside a paddock or an
// average.
func (r *reader) ofScores(c *clause) bool {
	if c.where != "" || c.low == nil && c.high == nil {
		return false
	}
	beside := c.count != nil || len(c.pads) > 0
	for i := c.from; i < c.to; i++ {
		if t := r.tok(i); t.tag == tempWord || t.tag == frostWord || t.tag == degreeUnit || t.text == "°" {
			return false
		}
		beside = beside || r.tok(i).tag == averageWord || r.tok(i).tag == tillerUnit
	}
	return beside
}

const leastOfScores = "Are those the lowest and the highest score, or temperatures? Please send the average with the number of tillers."

// extremes tells whether the least and the most of a clause may be scores, as no
// word says what they are of: behind a count, "low 1.5, high 3".
func (r *reader) extremes(c *clause) bool {
	if c.family() != famTemp || c.where != "" || len(c.temps) > 0 || r.hasTag(c.from, c.to, tempWord) || r.hasTag(c.from, c.to, degreeUnit) || r.hasTag(c.from, c.to, frostWord) {
		return false
	}
	return (c.low == nil || *c.low >= 0 && *c.low <= 5) && (c.high == nil || *c.high <= 5)
}
