package parser

// A word that nobody knows right before a number makes a name with it that the
// register does not hold: "kauri 7 2 2.5 2" is no count of paddock 7.

// unregistered gives such a name, and ok where the number at i stands behind one.
//
//	unregistered = ( unknown | possessive | lie ) whole
func (r *reader) unregistered(i int) (string, bool) {
	t := r.tok(i)
	if r.anyPaddock || t.shape != number || t.decimal {
		return "", false
	}
	at := r.opensName(i)
	b := r.tok(at)
	if at < 0 || b.shape != word || len(b.text) < 3 || b.tag != unknown && !placeWords[b.text] && b.names == 0 && !(b.tag == acreUnit && r.tok(at-1).shape == word) || noNames[b.text] && b.names == 0 || partNames[b.text] || mayBeVerb(b.text) || r.adverb(at) {
		return "", false
	}
	if _, k := r.mob(at); k > at {
		return "", false
	}
	return r.source(at, i+1), true
}

// opensName gives the token of the word before a number, where a possessive stands
// there the owner's: "smith's 3".
func (r *reader) opensName(i int) int {
	if r.oneOf(i-1, "s") && r.oneOf(i-2, "'") && r.tok(i-1).glued {
		return i - 3
	}
	return i - 1
}

// unknownName gives the doubt about a number that stands behind a word that nobody
// knows, with the paddock of that number as a way out.
func (r *reader) unknownName(i int) (doubt string, ok bool) {
	name, ok := r.unregistered(i)
	if !ok {
		return "", false
	}
	if r.tok(i).value <= 4 && r.isScore(i+1) {
		name = r.source(r.opensName(i), i) // "haggard 2 2 2": the number may be a score
	}
	doubt = r.noSuch(name)
	r.offer(doubt, r.opensName(i), i+1, "paddock "+r.tok(i).text, "")
	return doubt, true
}

// noNames are words without a meaning of their own that stand before the number of
// a paddock all the same: of counting, of talk, to somebody, and for a paddock.
var noNames = wordSet(`did count counts score scores tally okay report reports result results reading readings figures numbers data latest newest update updates
	redo redone recount another heres theres thats its here there was is are for about regarding re then also plus finally lastly firstly secondly
	well btw fyi hmm hm umm um uh uhm erm ah eh oh nah nope yup yip hullo hiya heya sup ahoy
	chief skipper skip bro bruv cuz cobber buddy pal dude mate matey gang crew
	block blk cell plot camp fld pad pdck pddk padock paddy`)

// namedAbove asks about counts of numbers behind a colon and a word that nobody
// knows: the numbers of "kauri: 3 at 2, 5 at 2.5" are tillers of it.
func (r *reader) namedAbove(list []clause) {
	for n := 1; n < len(list); n++ {
		h, c := &list[n-1], &list[n]
		if r.anyPaddock || !h.colon || h.sentence != c.sentence || len(h.strays) == 0 || h.to-h.from > 4 || r.walks(h.from, h.to) || !h.wordy() || c.count == nil || len(c.pads) != 1 || c.pads[0].marked {
			continue
		}
		if at := c.pads[0].at; r.tok(at).shape != number || r.tok(at).value > 9 || len(c.count.said) != 1 || !r.maybeNames(h.strays) {
			continue
		}
		c.unsure(r.noSuch(r.source(h.from, h.to-1)))
	}
}

// maybeNames tells whether words that found no place may be a paddock's name.
func (r *reader) maybeNames(words []int) bool {
	for _, i := range words {
		if t := r.tok(i); t.shape != word || t.tag != unknown && t.tag != acreUnit && !placeWords[t.text] || len(t.text) < 3 || noNames[t.text] || dayMarks[t.text] {
			return false
		}
	}
	return true
}
