package parser

// MillimetresPerInch is exact (international yard and pound agreement of
// 1959); a point of rain is a hundredth of an inch (common practice in
// Australia, no source).
const (
	millimetresPerInch  = 25.4
	millimetresPerPoint = 0.254
)

// rainPart reads an amount of rain.
//
//	rain = number rain-unit [ "of" ] [ "rain" ] | "rain" [ ":" ] number [ rain-unit ] | number [ "of" ] "rain"
func (r *reader) rainPart(c *clause, i int) int {
	j, named := i, false
	if r.tok(j).tag == rainWord && r.tok(j).shape == word {
		named = true
		j++
		for j < i+longestRun && (r.oneOf(j, ":", "=", "was", "of") || r.tok(j).text == "-" && !r.negative(j) || r.tok(j).tag == gaugeWord) {
			j++
		}
	} else if r.tok(j).tag == gaugeWord {
		j++
		for j < i+longestRun && introWords[r.tok(j).text] {
			j++
		}
		named = true
	}
	if r.tok(j).text == "no" && r.tok(j+1).tag == rainWord && len(c.pads) == 0 && r.tok(j+2).shape == end {
		c.acts |= actRain
		c.mm = 0
		return j + 2
	}
	if k := r.moreRain(c, j); k > j && !named {
		return k
	}
	if r.cut {
		return i
	}
	more := r.oneOf(j, "another")
	if more {
		j++
	}
	v, k, ok := r.inches(j)
	if !ok {
		v, k, ok = r.plain(j)
	}
	if !ok {
		return i
	}
	if r.tok(k).text == "an" || r.tok(k).text == "a" {
		k++
	}
	per, k2 := r.rainUnit(k)
	k = k2
	if f, k3, more := r.andPart(k); more && per > 1 {
		v, k = v+f, k3 // "an inch and a half"
	}
	named = named || per == millimetresPerInch && r.gotInches(i, k)
	if per == 0 && r.oneOf(k, "in") && (r.tok(k+1).tag == rainWord || r.oneOf(k+1, "of") && r.tok(k+2).tag == rainWord) {
		per, k = millimetresPerInch, k+1
	}
	if u := r.tok(k + 1); per == 0 && named && r.oneOf(k, "in") && (u.shape == end || u.shape == mark || u.shape == newline || r.day(k+1).ok) {
		per, k = millimetresPerInch, k+1 // "rain .75 in"
	}
	if r.tok(k).tag == ofWord && r.tok(k+1).tag == rainWord || r.tok(k).text == "in" && (r.tok(k+1).tag == gaugeWord || r.tok(k+1).text == "the" && r.tok(k+2).tag == gaugeWord) {
		named = true
		for last := k + longestRun; k < last && (r.tok(k).tag == ofWord || r.tok(k).tag == rainWord || r.tok(k).tag == inWord || r.tok(k).text == "the" || r.tok(k).tag == gaugeWord); {
			k++
		}
	} else if r.tok(k).tag == rainWord && r.tok(k).shape == word {
		named = true
		k++
	}
	if per == 0 {
		if !named || r.unitAhead(k) || v < 0 {
			return i
		}
		per = 1
	}
	if per > 1 && !named {
		return i // inches and points are of rain only where rain is named
	}
	if v < 0 || v*per > 1000 {
		c.unsure("How much rain was that, in millimetres?")
	}
	if c.has(actRain) && c.mm > 0 {
		r.cut = true
		return i
	}
	c.acts |= actRain
	c.mm, c.more = v*per, more
	c.share = 0
	r.perRain = per
	return r.rainFell(k)
}

// rainFell steps over how rain came down: "27 mm fell", "12mm came down".
func (r *reader) rainFell(i int) int {
	k := r.over(i, "has", "had", "of", "it")
	switch {
	case r.oneOf(k, "fell", "fallen"):
		return k + 1
	case r.oneOf(k, "came", "come") && r.oneOf(k+1, "down"):
		return k + 2
	}
	return i
}

// moreRain reads further rain behind rain, without its unit: "18mm yesterday
// and another 6 today". Without "another" the number may be anything.
//
//	more = "another" number [ day ]
func (r *reader) moreRain(c *clause, i int) int {
	if k := r.nextDaysRain(c, i); k > i || r.cut {
		return k
	}
	if !r.oneOf(i, "another") || !r.rained && !c.has(actRain) {
		return i
	}
	v, k, ok := r.plain(i + 1)
	if !ok || v < 0 || r.unitAhead(k) {
		return i
	}
	if t, m := r.tok(k), r.when(k); m.day > r.today || !m.ok && t.shape != end && t.shape != newline && t.shape != mark && t.tag != clockWord {
		return i
	}
	return r.furtherRain(c, v, i, k)
}

// furtherRain keeps rain beside rain; where the clause has its own, it opens
// another.
func (r *reader) furtherRain(c *clause, v float64, i, next int) int {
	if c.has(actRain) {
		r.cut = true
		return i
	}
	c.acts |= actRain
	c.mm, c.more = v*r.perRain, true
	return next
}

// inches reads "an inch" and "three quarters of an inch" up to the unit.
func (r *reader) inches(i int) (v float64, next int, ok bool) {
	if !r.hasTag(i+1, i+7, inchUnit) {
		return 0, i, false
	}
	if r.oneOf(i, "a", "an") && r.tok(i+1).tag == inchUnit {
		return 1, i + 1, true
	}
	a, ok := r.value(i)
	k := i
	if r.oneOf(k, "a") {
		k++
	}
	if r.oneOf(k, "third") {
		a, ok = amount{1.0 / 3, true, k + 1}, true
	}
	if ok && r.oneOf(a.next, "of") && r.oneOf(a.next+1, "a", "an") && r.tok(a.next+2).tag == inchUnit {
		return a.value, a.next + 2, true
	}
	return 0, i, false
}

// gotInches tells whether inches that are told of nothing are rain: "got an
// inch and a quarter Saturday" is all that is said between two marks.
func (r *reader) gotInches(from, next int) bool {
	if !r.oneOf(from-1, "got", "had") {
		return false
	}
	for i := from - 2; i >= 0; i-- {
		t := r.tok(i)
		if t.shape == mark || t.shape == newline || t.tag == andWord || t.tag == plusWord || t.tag == thenWord {
			break
		}
		if t.tag != filler && t.tag != courtesy && !r.oneOf(i, "we", "we've", "weve", "i", "also") {
			return false
		}
	}
	if m := r.when(next); m.ok {
		next = m.next
	}
	t := r.tok(next)
	return t.shape == mark || t.shape == newline || t.shape == end
}

// rainUnit reads a unit of rain and gives the millimetres in it.
func (r *reader) rainUnit(i int) (per float64, next int) {
	t := r.tok(i)
	switch {
	case t.tag == mmUnit && r.oneOf(i+1, "per", "each", "a", "to", "/") && !r.oneOf(i+2, "day", "and"):
		return 0, i // "2.5 mls per calf"
	case t.tag == mmUnit:
		return 1, i + 1
	case t.tag == inchUnit, t.text == `"`:
		return millimetresPerInch, i + 1
	case t.tag == pointUnit:
		return millimetresPerPoint, i + 1
	}
	return 0, i
}
