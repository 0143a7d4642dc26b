package parser

import "slices"

// A list or a range of paddocks, and one or more of them that it was not: "p1 to p6
// all grazed except p4". And all of one paddock but a part that has a size.

// exceptPads takes the paddocks of an exception out of the paddocks before it.
//
//	exceptPads = [ "," ] ( "except" [ "for" ] | "bar" | "but" "not" | "apart" "from" | … ) place { ( "," | "and" | "or" ) place }
func (r *reader) exceptPads(c *clause, i int) int {
	if len(c.pads) < 2 || r.asking || c.guard&^guardFuture != 0 || c.count != nil && c.count.empty() {
		return i
	}
	k := r.exceptWord(i)
	firm := k > i
	if !firm {
		if k = r.over(i, "but", "just", "only", "not"); !r.oneOf(k-1, "not") {
			return i
		}
	}
	k = r.over(k, "just", "only")
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
	if !firm && c.says() && len(kept) < len(all) && !r.endsPiece(next) {
		c.unsure(partly) // "but not 4 fully"
		return next
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

// exceptWord steps over a word that makes an exception of what follows; it gives i
// where there is none.
//
//	exceptWord = ( "except" | "bar" | … ) [ "for" | "from" ] | ( "apart" | "aside" ) "from" | "other" "than"
func (r *reader) exceptWord(i int) int {
	switch {
	case r.oneOf(i, "except", "excepting", "excluding", "barring", "bar", "minus", "skipping"):
		return r.over(i+1, "for", "from")
	case r.oneOf(i, "apart", "aside") && r.oneOf(i+1, "from"), r.oneOf(i, "other") && r.oneOf(i+1, "than"):
		return i + 2
	}
	return i
}

func hasPad(list []place, name string) bool {
	return slices.ContainsFunc(list, func(p place) bool { return p.name == name })
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
	var left clause
	k := r.sharePart(&left, r.over(i+2, "for", "a", "one", "the", "last", "about", "maybe"))
	if left.share <= 0 || left.share >= 1 || left.doubt != "" || r.tok(k-1).tag != ofWord && !r.oneOf(k-1, "the") || !r.padAhead(k) {
		return i
	}
	c.share = 1 - left.share
	return k
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
	if r.hasTag(c.from, c.to, allWord) || r.hasText(c.from, c.to, "fully") {
		last.unsure(partly) // "12 and 13 grazed, not all of 13"
		return true
	}
	if len(kept) == 0 {
		last.unsure("Was that done in " + last.pads[0].name + ", or not?") // "12 grazed, 12 not yet"
		return true
	}
	last.pads = kept
	return true
}
