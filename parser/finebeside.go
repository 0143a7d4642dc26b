package parser

// What stands beside a report may say no more than that all is well there: "2 and 3
// too wet, 4 is grand". It is no part of the report.

// fineThere tells whether a clause says of its paddocks that they are in order, and
// no more.
//
//	fine = place { place } [ "is" | "are" | "looks" | … ] [ "still" | "all" ] ( "grand" | "fine" | "ok" | … )
func (r *reader) fineThere(c *clause) bool {
	if c.says() || len(c.pads) == 0 || len(c.mobs) > 0 || c.head > 0 || len(c.nums) > 0 || c.guard != 0 || c.until != 0 || c.spell != 0 || c.trouble || c.event {
		return false
	}
	k := r.over(c.pads[len(c.pads)-1].next, "is", "are", "was", "were", "looks", "look", "looked", "seems", "still", "all", "s", "just", "nice", "and", "pretty", "perfectly", "grand")
	return r.tok(k).tag == okWord || fineWords[r.tok(k).text] || r.oneOf(k-1, "grand", "nice")
}

var fineWords = wordSet(`grand fine ok okay okey good great alright dry sound perfect spot happy handy`)
