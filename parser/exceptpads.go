package parser

// A list or a range of paddocks, and one or more of them that it was not: "p1 to p6
// all grazed except p4". And all of one paddock but a part that has a size.

// exceptPads takes the paddocks of an exception out of the paddocks before it.
//
//	exceptPads = [ "," ] ( "except" [ "for" ] | "bar" | "but" "not" | "apart" "from" | … ) place { ( "," | "and" | "or" ) place }
func (r *reader) exceptPads(c *clause, i int) int {
	if len(c.pads) < 2 || r.asking || c.guard&^guardFuture != 0 || c.count != nil && c.count.empty() {
		return i
	}
	k, firm := i+1, true
	switch r.tok(i).text {
	case "except", "excepting", "excluding", "barring", "bar", "minus", "skipping":
		k = r.over(k, "for", "from", "just", "only")
	case "apart", "aside":
		if !r.oneOf(k, "from") {
			return i
		}
		k = r.over(k+1, "just", "only")
	case "other":
		if !r.oneOf(k, "than") {
			return i
		}
		k++
	case "but", "not", "just", "only":
		k, firm = r.over(i, "but", "just", "only", "not"), false
		if !r.oneOf(k-1, "not") {
			return i
		}
	default:
		return i
	}
	if n := len(c.pads) - 1; r.oneOf(i, "not") && r.oneOf(i+1, "yet") && c.says() && c.count == nil && c.pads[n].next == i && r.oneOf(c.pads[n].at-1, ",") && r.endsPiece(i+2) {
		c.pads = c.pads[:n] // "canopy closed in 14, 15 not yet"
		c.remarks++
		return i + 2
	}
	one, ok := r.onePad(k, true)
	if !ok || !one.known {
		return i
	}
	list, next := r.padList(one, k, true)
	all := c.pads
	if len(all) == 2 && all[0].role == roleOut && all[1].role == roleIn && len(c.mobs) == 0 {
		all = r.spread(all) // "1 to 6"
	}
	kept := make([]place, 0, len(all))
	for _, p := range all {
		if !hasPad(list, p.name) {
			kept = append(kept, p)
		}
	}
	if len(kept) == len(all) && !firm && c.says() && c.count == nil && r.endsPiece(r.over(next, "yet", "though")) {
		c.remarks++
		return r.over(next, "yet", "though") // "12 and 13 grazed, not 14"
	}
	if len(kept) != len(all)-len(list) || len(kept) == 0 || !firm && len(all) < 3 || c.count != nil && !r.endsPiece(next) {
		if firm {
			c.unsure(allBut)
		}
		return i
	}
	c.pads = kept
	return next
}

func hasPad(list []place, name string) bool {
	for n := range list {
		if list[n].name == name {
			return true
		}
	}
	return false
}

// endsPiece tells whether a sentence or a piece of one ends before a token.
func (r *reader) endsPiece(i int) bool {
	t := r.tok(i)
	return t.shape == end || t.shape == newline || t.shape == mark
}

// allButPart reads "all but a quarter of 8": what is left of one paddock has a size.
//
//	allBut = "all" "but" [ "a" | "one" | "the" "last" ] ( "quarter" | "third" | … ) "of" place
func (r *reader) allButPart(c *clause, i int) int {
	if !r.oneOf(i+1, "but", "bar", "except") || c.count != nil || c.share != 0 || len(c.pads) > 0 {
		return i
	}
	k := r.over(i+2, "for", "a", "one", "the", "last", "about", "maybe")
	t, j := r.tok(k), k+1
	var left float64
	switch {
	case t.shape == part && t.value > 0 && t.value < 1:
		left = t.value
	case t.shape == number && r.oneOf(j, "%") && t.value > 0 && t.value < 100:
		left, j = t.value/100, j+1
	case r.oneOf(k, "quarter"):
		left = 0.25
	case r.oneOf(k, "third"):
		left = 1.0 / 3
	case r.oneOf(k, "half"):
		left = 0.5
	}
	if left == 0 || r.tok(j).tag != ofWord || !r.padAhead(j+1) {
		return i
	}
	c.share = 1 - left
	return j + 1
}

// notYetIn takes out of a statement the paddocks that the next clause says are
// still to come: "12, 13 and 14 grazed, 14 not yet", "canopy closed in 14, 15 not
// yet".
//
//	notYet = place { place } ( "not" "yet" | "isnt" | "wasnt" | … )
func (r *reader) notYetIn(last, c *clause) bool {
	if !last.says() || last.count != nil || last.guard != 0 || last.sentence != c.sentence || len(last.pads) == 0 || len(last.mobs)+len(c.mobs) > 0 || c.guard != guardNeg ||
		c.says() || len(c.pads) == 0 || c.strange > 0 || len(c.nums) > 0 || c.days.ok || c.until != 0 || c.spell != 0 || c.share != 0 {
		return false
	}
	kept := make([]place, 0, len(last.pads))
	for _, p := range last.pads {
		if !hasPad(c.pads, p.name) {
			kept = append(kept, p)
		}
	}
	if len(kept) == 0 {
		last.unsure("Was that done in " + last.pads[0].name + ", or not?") // "12 grazed, 12 not yet"
		return true
	}
	last.pads = kept
	return true
}
