package parser

// nobodyPart reads that nothing may go into a paddock until a day or for so many
// days: "nobody in there until 11/15", "no cows in 12 till friday". Without an
// end it may tell how things stand.
//
//	nobody = ( "nobody" | "nothing" | "no" ( stock | herd ) ) [ "to" "go" | "allowed" ] ( "in" | "on" | "into" ) { word } limit
func (r *reader) nobodyPart(c *clause, i int) int {
	t := r.tok(i)
	if t.shape != word || t.tag != negWord || c.guard&^guardHear != 0 || c.count != nil {
		return i
	}
	k := i + 1
	switch {
	case r.oneOf(i, "nobody", "none", "nothing", "nothin"):
	case r.oneOf(i, "no") && r.oneOf(k, "one", "stock", "animals", "livestock"):
		k++
	case r.oneOf(i, "no"):
		name, j := r.mob(k)
		if j == k || name != "" {
			return i // "no heifers in 12 until friday": the others may
		}
		k = j
	default:
		return i
	}
	k = r.over(k, "to", "be", "go", "goes", "going", "is", "are", "allowed", "put", "back", "at", "all")
	if u := r.tok(k); u.shape != word || u.tag != inWord && u.tag != onWord && u.tag != intoWord {
		return i
	}
	for n := k + 1; n < k+8; n++ {
		u := r.tok(n)
		if u.shape == end || u.shape == newline || u.shape == mark {
			return i
		}
		if u.tag == untilWord || u.tag == forWord && r.spellAt(n) {
			c.acts |= actHold
			r.heldAt(k + 1)
			return r.over(k+1, "there", "it")
		}
	}
	return i
}

// spellAt tells whether so many days or weeks are told at a token.
func (r *reader) spellAt(i int) bool {
	var c clause
	return r.spellPart(&c, i) > i && c.spell > 0
}

// spokenOf joins "it is far too wet in there" to the sentence before, which
// names a paddock and says nothing to log of it.
func (c *clause) spokenOf(d *clause) bool {
	if len(c.pads) != 1 || !c.pads[0].known || c.says() || c.guard != 0 || len(c.mobs) > 0 || len(c.nums) > 0 || c.trouble || c.event || c.share != 0 ||
		c.until != 0 || c.spell != 0 || d.sentence != c.sentence+1 || len(d.pads) > 0 || d.family() != famHold || d.guard != 0 || !d.there {
		return false
	}
	c.strange, c.strays, c.strangeW = 0, nil, ""
	c.absorb(d)
	c.sentence, c.bare, c.intro, c.there = d.sentence, false, false, true
	return true
}
