package parser

// What stands beside a report may say no more than that all is well there: "2 and 3
// too wet, 4 is grand". It is no part of the report.

// fineThere tells whether a clause says of its paddocks that they are in order, and
// no more. That it is dry is so beside one that is wet, and news elsewhere.
//
//	fine = place { place } [ "is" | "are" | "looks" | … ] [ "still" | "all" ] ( "grand" | "fine" | "ok" | … )
func (r *reader) fineThere(list []clause, n int, last *clause) bool {
	c := &list[n]
	if n+1 < len(list) && list[n+1].sentence == c.sentence && list[n+1].says() && len(list[n+1].pads) == 0 {
		return false // "north's dry, good to go again"
	}
	if c.says() || len(c.pads) == 0 || len(c.mobs) > 0 || c.head > 0 || len(c.nums) > 0 || c.guard != 0 || c.until != 0 || c.spell != 0 || c.trouble || c.event {
		return false
	}
	k := r.over(c.pads[len(c.pads)-1].next, "is", "are", "was", "were", "looks", "look", "looked", "seems", "still", "all", "s", "just", "nice", "and", "pretty", "perfectly", "grand")
	if r.oneOf(k, "dry") && !last.has(actWet) {
		return false
	}
	return r.tok(k).tag == okWord || fineWords[r.tok(k).text] || r.oneOf(k-1, "grand", "nice")
}

// driedThere tells whether a clause says of its paddocks that they are dry: what was
// done to the one before is not said of them.
func (r *reader) driedThere(c *clause) bool {
	return len(c.pads) > 0 && r.oneOf(r.over(c.pads[len(c.pads)-1].next, "is", "are", "was", "looks", "still", "s", "all", "nice", "and", "pretty", "now"), "dry")
}

var fineWords = wordSet(`grand fine ok okay okey good great alright dry sound perfect spot happy handy`)
