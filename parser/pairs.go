package parser

// Scores may stand before their paddocks: "leaf stage 2.5 in 12, 2 in 13, 1.5
// in 14". Each pair is a statement of its own.
//
//	pairs = leaf-word value place { "," value place } ; place = ( "in" | "for" | "at" ) paddock

// pairAt tells whether a score with its paddock behind it stands at a token.
func (r *reader) pairAt(i int) bool {
	a, ok := r.value(i)
	if !ok || !r.isScore(i) || a.value > 6 {
		return false
	}
	k := r.over(a.next, "leaf", "leaves", "lvs", "lf")
	return r.pairWord(k) && r.padAhead(k+1)
}

// pairWord tells whether a word ties a score to the paddock behind it.
func (r *reader) pairWord(i int) bool {
	t := r.tok(i)
	return t.shape == word && (t.tag == inWord || t.tag == forWord || t.tag == onWord)
}

// pairAhead tells whether another pair follows behind a paddock.
func (r *reader) pairAhead(i int) bool {
	k := i
	for r.joins(k) || r.tok(k).text == ";" {
		k++
	}
	return k > i && r.pairAt(k)
}

// pairPad reads the paddock of a pair: the number behind it is the next pair's
// score, not its own.
func (r *reader) pairPad(c *clause, one place, i int) bool {
	if c.count == nil || len(c.count.said) != 1 || len(c.pads) > 0 || c.acts != 0 || !r.pairWord(i-1) && !(r.tok(i-1).text == "the" && r.pairWord(i-2)) {
		return false
	}
	more := r.pairAhead(one.next)
	if !more && !r.paired {
		return false
	}
	one.role = roleAt
	c.pads = append(c.pads, one)
	r.named++
	r.way, r.cut, r.paired = roleNone, more, true
	return true
}
