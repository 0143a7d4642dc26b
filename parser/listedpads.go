package parser

// Numbers behind a comma may be scores or paddocks: "12 2 2.5 2, 8 cut for hay", "20,
// 3 and road all sprayed". What tells them apart is the verb, or the state, that
// stands behind a list of paddocks.

// eventPads tells whether a paddock stands at i, or a list of them, with what was
// done there behind: the 8 of "2 2.5 2, 8 cut for hay".
func (r *reader) eventPads(i int) bool {
	t := r.tok(i)
	if t.shape != number || t.decimal || t.value < 1 || !r.anyPaddock && !r.bears(t.text) {
		return false
	}
	n, k := r.padRun(i)
	return n > 0 && r.runsVerb(k)
}

// padRun gives how many paddocks of the register stand in a list at i, and what
// follows it.
func (r *reader) padRun(i int) (n, next int) {
	for next = i; n < mostTogether*2; n++ {
		k := next
		for k < next+2 && n > 0 && (r.joins(k) || r.tok(k).text == "-" && r.tok(k).glued && r.tok(k+1).glued) {
			k++
		}
		if n > 0 && (k == next || r.tok(next).text == "," && r.tok(next).glued && r.tok(next+1).glued) {
			return n, next // "2,5 and"
		}
		if t := r.tok(k); allDigits(t) && !(r.tok(k+1).glued && r.tok(k+1).shape != mark) {
			if !r.anyPaddock && !r.bears(t.text) {
				return n, next
			}
			next = k + 1
			continue
		}
		p, ok := r.onePad(k, false)
		if !ok || !p.known || r.anyPaddock {
			return n, next
		}
		next = p.next
	}
	return n, next
}

// runsVerb tells whether the verb or the state of a list of paddocks stands at i.
func (r *reader) runsVerb(i int) bool {
	k := r.over(i, "all", "both", "were", "was", "are", "have", "been", "is")
	if s := r.tok(k); s.shape != word || s.glued || s.tag == doneWord || s.tag == outWord || s.tag == offWord || s.tag == inWord {
		return false
	}
	return r.eventAhead(k) || r.stateAhead(k) || r.tok(k).tag == holdWord
}

// listedPads tells whether a paddock opens a list of them with what was done there
// behind, small numbers among them: "20, 3 and road all sprayed". No score with a
// point stands in it.
func (r *reader) listedPads(p place, i int) bool {
	if !r.joins(p.next) {
		return false
	}
	n, k := r.padRun(i)
	return n > 1 && r.runsVerb(k)
}

// stateAhead tells whether a paddock's state follows that is news by itself: "8 too
// wet", "river 2 canopy closed".
func (r *reader) stateAhead(i int) bool {
	k := r.over(i, "is", "was", "are", "were", "got", "has", "too", "very", "still", "s")
	for _, j := range [2]int{i, k} {
		if d, _, ok := r.idiomAt(j); ok && !d.none && d.acts&(actWet|actCanopy|actDry) != 0 {
			return true
		}
	}
	t := r.tok(k)
	return t.shape == word && (r.oneOf(k, "dry") || t.tag == wetWord || t.tag == dampWord && r.oneOf(k-1, "too"))
}

// plainRun tells whether nothing but spaces parts the numbers of a list: with commas
// or "and" they may be paddocks.
func (r *reader) plainRun(from, to int) bool {
	for k := from; k < to; k++ {
		if r.joins(k) {
			return false
		}
	}
	return true
}

// sameMark tells whether the scores before the mark at next are parted by the
// same: "2, 2.5, 2 cut for hay" may be three of them.
func (r *reader) sameMark(from, next, to int) bool {
	for k := from + 1; k < next; k++ {
		if r.tok(k).text == r.tok(to-1).text {
			return true
		}
	}
	return false
}
