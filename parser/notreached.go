package parser

// What somebody tells beside the counts of a round: which paddocks were not
// reached, and with what a paddock was sown.

// notReached tells whether a statement says no more than that its paddocks were
// not counted: "didn't get to 7, too dark. 8 was 2 2.5 2 2".
//
//	notReached = ( "didnt" | "never" | … ) ( "get" "to" | "make" "it" "to" | "count" | … ) paddocks
func (r *reader) notReached(c *clause, counted bool) bool {
	if c.says() || c.guard&^guardNeg != 0 || c.guard == 0 && !counted || len(c.pads) == 0 || len(c.mobs) > 0 || c.head > 0 || len(c.nums) > 0 || c.trouble || c.event || c.share != 0 || c.until != 0 || c.spell != 0 {
		return false
	}
	at := c.pads[0].at
	if k := c.pads[len(c.pads)-1].next; counted && r.tok(k).tag == negWord && c.guard == guardNeg &&
		r.oneOf(r.over(k+1, "be", "even"), "get", "got", "bother", "bothered", "reach", "reached", "make", "made", "count", "counted", "manage", "managed") {
		return true // "top 3 couldn't be bothered"
	}
	for i := c.from; i < at; i++ {
		if counted && c.strange <= 1 && (r.oneOf(i, "skipped", "missed") && i == r.back(at-1, "out", "the", "paddock", "p") || r.oneOf(i, "didnt", "havent") && r.oneOf(i+1, "count")) {
			return true
		}
		if r.tok(i).tag != negWord && r.tok(i).tag != notWord {
			continue
		}
		k := r.over(i+1, "even", "actually", "have", "had", "quite", "managed", "manage", "to", "be", "been", "a", "chance", "time", "yet", "bothered", "bother", "with", "i", "we", "did")
		if k > i+1 && k >= r.back(at-1, "the", "paddock", "p") || r.oneOf(k, "get", "got", "make", "made", "reach", "reached", "do", "done", "count", "counted", "walk", "walked", "look", "looked", "see", "check", "checked", "measure", "measured", "getting", "doing") {
			return true
		}
	}
	return false
}

// sownWith steps over what a paddock was sown with: "drilled the new grass into
// 27".
func (r *reader) sownWith(c *clause, i int) int {
	if !c.has(actSow) {
		return i
	}
	k := r.over(i, "the", "some", "new", "fresh", "young", "in", "our")
	if k == i || r.oneOf(k-1, "in") || !r.oneOf(k, "grass", "grasses", "seed", "pasture", "ley", "mix", "sward", "seeds") || r.padAhead(i) {
		return i
	}
	c.remarks++
	return k + 1
}
