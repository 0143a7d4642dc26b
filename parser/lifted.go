package parser

// holdEnded tells whether a clause says that a hold has run out: "spray
// withholding on 12 is over", "21 days on effluent done", "12 clear of spray".
//
//	ended = hold { word | place } ( "over" | "up" | "finished" | … ) | ( "clear" | "free" ) ( "of" | "from" ) reason
func (r *reader) holdEnded(c *clause) bool {
	if c.guard != 0 || c.until != 0 || c.spell != 0 || len(c.pads) == 0 || !c.has(actSpray|actFert|actEff|actHold) || c.count != nil || r.asking {
		return false
	}
	held := false
	for i := c.from; i < c.to; i++ {
		t := r.tok(i)
		if t.shape != word || c.names(i) {
			continue
		}
		switch {
		case r.oneOf(i, "clear", "free", "clean") && r.oneOf(i+1, "of", "from"):
			switch r.tok(i + 2).tag {
			case sprayWord, fertWord, effWord:
				return r.hasText(c.from, c.to, "now") || r.hasText(c.from, c.to, "again") || r.oneOf(i-1, "is", "now", "s")
			}
		case r.oneOf(i, "withholding", "whp", "standdown"), r.oneOf(i, "holding") && r.oneOf(i-1, "with"), r.oneOf(i, "down") && r.oneOf(i-1, "stand"),
			r.oneOf(i, "period", "time", "hold") && i > c.from && reasonTags[r.tok(i-1).tag]:
			held = true
		case held && r.oneOf(i, "over", "up", "finished", "expired", "ended", "lifted", "passed", "done", "complete", "completed", "gone"):
			return !r.padAhead(i+1) && !r.oneOf(i-1, "start", "started", "not", "nearly")
		}
	}
	return false
}

var reasonTags = map[tag]bool{sprayWord: true, fertWord: true, effWord: true}

// dropStrays takes words that nobody could place for what they are, where they
// are all that there is.
func (r *reader) dropStrays(c *clause, words ...string) {
	for _, i := range c.strays {
		if !r.oneOf(i, words...) {
			return
		}
	}
	if len(c.strays) == c.strange {
		c.remarks += c.strange
		c.strange, c.strays = 0, nil
	}
}
