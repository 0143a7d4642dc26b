package parser

// Farm people say how wet it is, what they mended on the way and which machine is
// coming. None of it is a part of what they report.

// likened steps over "you could lose a dog in", behind a word, up to the next comma:
// it tells how bad something is, and is no plan.
//
//	likened = ( "you" | "ya" | … ) ( "could" | "can" | "would" | "d" ) [ "nearly" ] ( "lose" | "swim" | "hide" | … ) { word }
func (r *reader) likened(c *clause, i int) int {
	if i == 0 || !r.oneOf(i+1, "could", "can", "would", "cud", "d", "might") {
		return i
	}
	k := r.over(i+2, "nearly", "almost", "easily", "of", "have", "just", "a")
	if !r.oneOf(k, "lose", "lost", "swim", "hide", "drown", "sink", "bury", "bog", "fish", "float", "sail", "park", "cut", "wade", "row", "ski", "skate", "grow", "plant", "eat", "smell") {
		return i
	}
	return r.talkedTo(c, i, k+1, func(k int) bool { return r.tok(k).shape != word || r.padAhead(k) })
}

// talkedTo steps to the next comma or the sentence's end, or stays at i where
// something that is no talk stands before it.
func (r *reader) talkedTo(c *clause, i, k int, other func(int) bool) int {
	for last := k + longestRun; k < last && !r.endsSentence(k) && r.tok(k).text != "," && r.tok(k).shape != end; k++ {
		if other(k) {
			return i
		}
	}
	c.remarks++
	return k
}

// mendedThing steps over "gate was hanging off its hinge so I tied it" beside what
// was reported: it has been seen to.
//
//	mendedThing = thing { word } ( "tied" | "fixed" | "propped" | … ) { word }
func (r *reader) mendedThing(c *clause, i int) int {
	if i != r.opening || i == 0 || r.tok(i-1).text != "," && r.tok(i-1).tag != andWord && r.tok(i-1).tag != butWord {
		return i
	}
	end, ok := r.onlyTalk(i + 1)
	if !ok {
		return i
	}
	for k := i + 1; k < end; k++ {
		if r.oneOf(k, "tied", "fixed", "propped", "sorted", "mended", "rehung", "wired", "patched", "repaired", "replaced", "strung", "cleared", "unblocked") && !r.refuted(i, k) && !r.oneOf(k-1, "be", "get", "needs", "need", "being") {
			c.remarks++
			return end
		}
	}
	return i
}

// machineComing steps over "forager's booked for six tmrw" beside what was reported.
//
//	machineComing = machine [ "is" ] ( "booked" | "coming" | "due" | … ) { word }
func (r *reader) machineComing(c *clause, i int) int {
	if i != r.opening || i == 0 {
		return i
	}
	k := r.over(i+1, "is", "are", "s", "all", "was")
	if !r.oneOf(k, "booked", "coming", "due", "arriving", "ordered", "arrives", "comes") {
		return i
	}
	return r.talkedTo(c, i, k, func(k int) bool {
		t := r.tok(k)
		return r.herdAhead(k) || t.shape == word && (t.tag == padMark || t.tag == andWord || t.tag == thenWord || t.tag == butWord || t.tag == toWord && r.tok(k+1).shape == word)
	})
}

// boggyBit steps over "one boggy corner but got round it": a bit of the paddock, and
// not all of it, beside what was done there.
//
//	boggyBit = ( "one" | "a" | "the" | "few" ) ( wet ) ( "corner" | "patch" | … ) { word }
func (r *reader) boggyBit(c *clause, i int) int {
	w := r.tok(i + 1)
	if i != r.opening || i == 0 || r.tok(i-1).text != "," || w.shape != word || w.tag != wetWord && w.tag != dampWord && !r.oneOf(i+1, "soft", "muddy", "sticky") {
		return i
	}
	if !r.oneOf(i+2, "corner", "corners", "patch", "patches", "spot", "spots", "bit", "bits", "hole", "end", "gateway", "hollow", "dip") {
		return i
	}
	return r.talkedTo(c, i, i+3, func(k int) bool {
		return r.herdAhead(k) || r.tok(k).shape != word || r.padAhead(k)
	})
}

// cutsAhead reads for which cut a paddock is shut: "shut up for first cut". It has
// not been cut.
//
//	cutsAhead = ( "first" | "second" | "1st" | … ) "cut" [ "of" ] [ "silage" | "hay" | "grass" ]
func (r *reader) cutsAhead(c *clause, i int) int {
	if r.tok(i-1).tag != forWord || !c.has(actShut|actClosed|actHold) {
		return i
	}
	k := i + 1
	if r.oneOf(k, "st", "nd", "rd", "th") && r.tok(k).glued { // "2nd"
		k++
	}
	if !r.oneOf(k, "cut", "crop") {
		return i
	}
	k = r.over(k+1, "of")
	switch t := r.tok(k); {
	case t.tag == hayWord && t.shape == word:
		c.acts |= actHay
		k++
	default:
		if t.tag == silageWord && t.shape == word || r.oneOf(k, "grass") {
			k++
		}
		c.acts |= actSilage
	}
	if c.has(actClosed) {
		c.acts = c.acts&^actClosed | actShut
	}
	return k
}

// unseen reads that no ground is to be seen: the canopy has closed.
//
//	unseen = ( "cant" | "cannot" | "can" "not" | … ) ( "see" | "find" | "spot" ) { "no" | "any" | "the" | "bare" | … } earth [ "at" "all" | "anywhere" | … ]
func (r *reader) unseen(c *clause, i int) int {
	k := i + 1
	if r.oneOf(i, "can", "could") {
		if !r.oneOf(k, "not", "hardly", "barely") {
			return i
		}
		k++
	}
	if !r.oneOf(k, "see", "find", "spot") {
		return i
	}
	k = r.over(k+1, "no", "any", "the", "a", "bit", "speck", "of", "bare", "much", "single", "patch")
	if !r.oneOf(k, "dirt", "soil", "ground", "clay", "earth", "mud") {
		return i
	}
	c.acts = c.acts&^actClosed | actCanopy
	return r.over(k+1, "at", "all", "anywhere", "now", "through", "it", "between", "any", "more", "anymore", "showing", "underneath")
}
