package parser

import "strings"

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
	if c.sentence != last.sentence || !last.says() || len(last.pads) == 0 && last.count == nil || last.guard != 0 {
		return false
	}
	if r.forgot(c) || r.gatePlea(last, c) || r.theirMood(last, c) || r.orderBeside(last, c) || r.crossTold(last, c) || r.toldOthers(c) {
		return true
	}
	if last.count != nil && last.guard == 0 && !c.says() && len(c.pads)+len(c.mobs)+len(c.nums) == 0 && c.until == 0 && !r.asking && (r.hasText(c.from, c.to, "rest") || r.hasText(c.from, c.to, "others")) && !c.tillers {
		return true // "did the rest yesterday": those scores are of another day
	}
	if r.makingAhead(last, c) {
		return true
	}
	at := r.firstWord(c)
	if r.oneOf(at, "looks", "look", "looking", "looked") && r.oneOf(at+1, "like") && r.oneOf(at+2, "a", "an", "my", "our") && len(c.pads)+len(c.mobs)+len(c.nums) == 0 && !c.says() && !c.trouble && !c.event && c.guard == guardHear && !r.asking {
		return true // "looks like a bowling green now"
	}
	if c.guard == guardJoke && c.wordy() && r.happily(at, c.to) {
		return true
	}
	if r.oneOf(at, "when", "while", "after", "before") && r.oneOf(at+1, "i", "we", "he", "she", "ive", "id") && len(c.pads)+len(c.mobs)+len(c.nums) == 0 && c.count == nil && c.until == 0 {
		return r.inThePast(c) // "when I went round it on the bike"
	}
	if !c.wordy() || c.tillers || c.bare || c.to-c.from < 3 {
		return false
	}
	counted := last.count != nil && (len(last.count.said) > 1 || last.count.decimal || last.count.n > 0)
	if c.stock && !counted && !r.oneOf(at, "where", "which", "who", "when") {
		return false // "heifers into 12, but they didn't go"
	}
	switch {
	case r.oneOf(at, "ring", "call", "text", "shout", "message", "phone"):
		return true // "ring me if the gate's open"
	case counted:
		return r.besideCount(c, at)
	case c.guard == guardPlan && r.oneOf(at, "will", "ill", "gonna", "might"):
		return c.strange+c.remarks > 0 && !r.speaksOfIt(c) // "will sort the next break after smoko"
	case c.guard == guardAsk && r.oneOf(at, "when", "while"):
		return r.inThePast(c)
	case c.guard == guardNeg && r.oneOf(at, "couldnt", "cant", "cannot"):
		return c.strange+c.remarks > 0 // "couldn't find the gate"
	case c.guard == guardAsk && r.oneOf(at, "where", "which", "who"):
		return true
	case !subordinate[r.tok(at).text], c.guard&(guardCond|guardPlan|guardFuture|guardWish|guardHear|guardJoke) != 0:
		return false
	}
	return c.strange+c.remarks > 0
}

// besideCount tells whether a clause behind leaf scores is talk: scores are
// neither planned nor denied by it, unless it doubts them.
func (r *reader) besideCount(c *clause, at int) bool {
	if c.guard&(guardWish|guardHear|guardFuture|guardJoke) != 0 {
		return false
	}
	return c.strange+c.remarks > 0 || c.guard != 0 && r.oneOf(at, "i", "im", "ill", "ive", "we", "well", "my", "will", "gonna", "going", "doing")
}

// forgot tells whether a clause does no more than excuse that something comes
// late: "forgot to say", "the young lad forgot to put it in here".
func (r *reader) forgot(c *clause) bool {
	if len(c.pads) > 0 || len(c.mobs) > 0 || c.count != nil || c.days.ok || c.until != 0 || len(c.nums) > 0 {
		return false
	}
	if at := r.firstWord(c); r.unsentAt(at) > at && r.unsentAt(at) >= r.back(c.to-1, ",") {
		return true
	}
	for i := c.from; i < c.to; i++ {
		if r.oneOf(i, "forgot", "forgotten") || r.oneOf(i, "meant") && r.oneOf(i+1, "to") && r.oneOf(i+2, "say", "tell", "text", "send", "mention", "message") {
			return true
		}
	}
	return false
}

// inThePast tells whether a verb of a clause is in the past: "when I went round
// it", not "when it's dry".
func (r *reader) inThePast(c *clause) bool {
	for i := c.from + 1; i < c.to; i++ {
		t := r.tok(i)
		if t.shape == word && (pastForm(t.text) || t.text == "put") {
			return true
		}
	}
	return false
}

// pastForm tells whether a word is a verb's form of the past and of nothing else.
func pastForm(text string) bool { return strings.HasSuffix(text, "ed") || pastVerbs[text] }

// pastVerbs are those that do not end in "ed".
var pastVerbs = wordSet(`went was were had came got did held saw ran said left took drove rode mown gone`)

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
	dayOnly := c.days.ok && !c.says() && len(c.pads)+len(c.mobs) == 0 && r.oneOf(i, "when")
	if r.asking || i == c.from || c.guard != 0 || !dayOnly && (len(c.pads) == 0 && c.resid == nil && (c.count == nil || len(c.count.said) < 2) && !(c.has(actRain) && c.mm > 0) && len(c.temps) == 0 || !c.says()) {
		return false
	}
	if r.oneOf(i, "when") {
		d := clause{from: i, to: min(i+8, len(r.toks))}
		return r.inThePast(&d) && !r.padAhead(i+1)
	}
	return r.oneOf(i, "which", "where", "whose", "who", "though", "although", "altho", "whereas", "whilst") && r.tok(i+1).shape == word && !r.padAhead(i+1)
}

// happily tells whether no more than how stock like it is laughed about: "they
// r loving it lol".
func (r *reader) happily(i, to int) bool {
	if r.oneOf(i, "they", "the", "he", "she") {
		i++
		if r.girls(i) {
			i++
		}
		if !r.oneOf(i, "r", "are", "were", "is", "look", "looked", "love", "loved", "hate", "hated", "seem") {
			return false
		}
	} else if !r.oneOf(i, "theyre") {
		return false
	}
	return r.oneOf(to-1, "lol", "haha", "hahaha", "hehe", "lmao", "rofl") || r.tok(to-1).shape == mark && r.oneOf(to-2, "lol", "haha", "hahaha", "hehe", "lmao", "rofl")
}

// speaksOfIt tells whether a plan may be that of what was just told: "will do it
// tonight".
func (r *reader) speaksOfIt(c *clause) bool {
	for i := c.from; i < c.to; i++ {
		if r.oneOf(i, "do", "it", "them", "then", "happen", "so", "that") {
			return true
		}
	}
	return false
}
