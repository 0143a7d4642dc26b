package parser

// People talk beside what they report: "bulls in 6, where they can't annoy
// anybody", "12 about 2.5, though my eyes are not what they were". Such talk
// says nothing of what was reported, so that a denial or a question word in it
// is none of the report's. What could be its condition, its plan or its denial
// stays with it: "if it's dry", "not yet", "I think".

// subordinate words open a clause of talk behind a statement.
var subordinate = wordSet(`which where whose who though although altho tho whereas while whilst because cos coz cause since so as but and
	will ill gonna going doing i im ive id my we weve our he hes she shes his her it its that thats there theres what hope hopefully reminds looks seems somebody someone nobody anyone`)

// talksOn tells whether a clause behind a statement of its sentence is talk.
func (r *reader) talksOn(last, c *clause) bool {
	if c.sentence != last.sentence || !last.says() || len(last.pads) == 0 && last.count == nil || last.guard != 0 || !c.wordy() || c.tillers || c.bare {
		return false
	}
	at := r.firstWord(c)
	t := r.tok(at)
	if c.stock && last.count == nil && !r.oneOf(at, "where", "which", "who") {
		return false // "heifers into 12, but they didn't go"
	}
	if !subordinate[t.text] {
		return false
	}
	if c.guard&(guardCond|guardPlan|guardFuture|guardWish|guardHear) != 0 {
		return last.count != nil && len(last.count.said) > 1 && c.guard&(guardWish|guardHear|guardFuture) == 0 && r.oneOf(at, "i", "im", "ill", "ive", "we", "well", "my", "will", "gonna", "going", "doing")
	}
	return c.to-at >= 3 && c.strange+c.remarks > 0
}

// firstWord gives the first token of a clause that is no mark, with "and" and
// "but" stepped over.
func (r *reader) firstWord(c *clause) int {
	i := c.from
	for i < c.to && (r.tok(i).shape == mark || (r.tok(i).tag == andWord || r.tok(i).tag == butWord) && i+1 < c.to) {
		i++
	}
	return i
}

// relative tells whether a word opens a relative clause behind a complete
// statement: it starts a clause of its own, so that it asks nothing.
func (r *reader) relative(c *clause, i int) bool {
	if r.asking || i == c.from || len(c.pads) == 0 && (c.count == nil || len(c.count.said) < 2) || !c.says() || c.guard != 0 {
		return false
	}
	return r.oneOf(i, "which", "where", "whose", "who", "though", "although", "altho", "whereas", "whilst") && r.tok(i+1).shape == word && !r.padAhead(i+1)
}
