package parser

// Beside a report people plead, and tell of their own coming and going: "please
// nobody open this gate", "somebody help me tomorrow with the fence", "I am only
// on until Wednesday", "my bill comes Friday". None of it is about a paddock or
// stock, so that its days, denials and orders are none of the report's.

// besideThePoint tells whether a clause does no more than that.
func (r *reader) besideThePoint(c *clause) bool {
	if len(c.pads) > 0 || len(c.mobs) > 0 || len(c.nums) > 0 || c.count != nil || c.resid != nil || c.head > 0 || c.share != 0 {
		return false
	}
	return r.asksHelp(c) || r.ownTime(c) || r.visit(c) || r.feedInStore(c)
}

// asksHelp reads "somebody help me tomorrow with the fence".
func (r *reader) asksHelp(c *clause) bool {
	at := r.over(r.firstWord(c), "can", "could", "would", "will", "please", "pls", "maybe")
	if c.acts != 0 || !r.oneOf(at, "somebody", "someone", "anybody", "anyone", "whoever", "you") {
		return false
	}
	for i := at + 1; i < min(at+4, c.to); i++ {
		if r.oneOf(i, "help", "ring", "call", "phone", "remind", "collect", "bring") && (r.oneOf(i+1, "me", "us", "him", "her", "out") || r.oneOf(i+1, "with")) {
			return true
		}
	}
	return false
}

// ownTime reads "I am only on until Wednesday", "I'm away from Friday": how long
// somebody is at work.
func (r *reader) ownTime(c *clause) bool {
	at := r.over(r.firstWord(c), "as", "because", "cos")
	if c.acts&^(actOut|actIn) != 0 || c.stock || c.until == 0 && c.spell == 0 && !c.days.ok {
		return false
	}
	k := at
	switch {
	case r.oneOf(at, "im", "ill"):
		k = at + 1
	case r.oneOf(at, "i", "he", "she") && r.oneOf(at+1, "am", "is", "will"):
		k = at + 2
	case r.oneOf(r.over(at, "the", "my", "our"), "boss", "owner", "manager", "dad", "mum", "missus", "wife", "vet", "contractor", "relief", "milker", "lad") && r.oneOf(r.over(at, "the", "my", "our")+1, "is", "will", "was"):
		k = r.over(at, "the", "my", "our") + 2
	default:
		return false
	}
	k = r.over(k, "only", "just", "be", "not", "here", "back", "gone")
	if r.oneOf(k, "on", "off", "in", "at", "for") && r.oneOf(k+1, "it", "there", "them", "that", "this", "the") && !r.oneOf(k+2, "farm", "moment", "job", "morning", "weekend") {
		return false // "I'm off it until Friday"
	}
	return r.oneOf(k, "on", "off", "away", "here", "until", "till", "til", "in", "home", "for", "around", "at") || r.oneOf(k-1, "here", "back", "gone")
}

// feedInStore reads "we have already enough bales for two winters".
func (r *reader) feedInStore(c *clause) bool {
	if c.acts&^(actBale|actSilage|actHay) != 0 || c.guard != 0 || c.days.ok || c.until != 0 || !r.hasText(c.from, c.to, "bales") && !r.hasText(c.from, c.to, "silage") && !r.hasText(c.from, c.to, "hay") {
		return false
	}
	at := r.over(r.firstWord(c), "as", "because", "since")
	return r.oneOf(at, "we", "weve", "i", "ive", "theres", "there", "plenty", "enough") && (r.hasText(c.from, c.to, "enough") || r.hasText(c.from, c.to, "plenty"))
}

// toldOthers reads "and I told everyone in the kitchen" behind a report: whom the
// sender told does not make it hearsay.
func (r *reader) toldOthers(c *clause) bool {
	at := r.firstWord(c)
	if !r.oneOf(at, "i", "ive", "we") || len(c.pads)+len(c.nums) > 0 || mobsOf(c)[0] != "" || c.count != nil || c.resid != nil || c.days.ok || c.until != 0 || c.guard&^guardHear != 0 || c.acts&^actIn != 0 {
		return false
	}
	k := r.over(at+1, "have", "already", "did", "even")
	return r.oneOf(k, "told", "rang", "texted", "messaged", "phoned") && r.oneOf(r.over(k+1, "to", "it", "the"), "everyone", "everybody", "all", "him", "her", "them", "you", "ye", "lads", "boss", "others", "dad", "mam", "mum", "team")
}

// visit reads "my bill comes friday", "the vet is coming tomorrow": somebody or
// something that nobody knows is to come on a day.
func (r *reader) visit(c *clause) bool {
	if !c.days.ok || c.acts&^(actMoved|actGoing) != 0 || c.stock || c.guard&^(guardFuture|guardPlan) != 0 {
		return false
	}
	at := r.firstWord(c)
	if !r.oneOf(at, "my", "the", "our", "his", "her", "a") || r.hasTag(c.from, c.to, padMark) || r.hasText(c.from, c.to, "back") || r.hasText(c.from, c.to, "off") {
		return false
	}
	for i := at + 2; i < min(at+5, c.to); i++ {
		if r.oneOf(i, "comes", "coming", "arrives", "arriving", "calls", "calling") {
			return true
		}
	}
	return false
}

// gatePlea tells whether a clause behind a report asks that a gate or a fence be
// left as it is: "please nobody open this gate", "leave the gate shut".
func (r *reader) gatePlea(last, c *clause) bool {
	if c.sentence != last.sentence || !last.says() || len(last.pads) == 0 || last.guard != 0 || !c.trouble || c.event ||
		len(c.pads)+len(c.mobs)+len(c.nums) > 0 || c.count != nil || c.days.ok || c.until != 0 || c.acts&^(actRelease|actShut|actClosed|actPlace|actHold) != 0 {
		return false
	}
	at := r.firstWord(c)
	for r.tok(at).tag == courtesy || r.oneOf(at, "so", "just") {
		at++
	}
	return r.oneOf(at, "nobody", "noone", "dont", "leave", "keep", "mind", "make", "watch", "everyone", "everybody", "shut", "close") || r.oneOf(at, "no", "do") && r.oneOf(at+1, "one", "not")
}

// theirMood tells whether a clause behind a report tells how the stock took it:
// "they run very happy", "they were hollering to move". An order or a plan names
// a day or a paddock.
func (r *reader) theirMood(last, c *clause) bool {
	eats := c.guard == guardPlan && c.acts == 0 && r.hasTag(c.from, c.to, grazeWord) && !r.hasTag(c.from, c.to, planWord) && !r.hasTag(c.from, c.to, nextWord)
	if last.family() != famGraze || c.guard != 0 && !eats || !r.oneOf(r.firstWord(c), "they", "theyre") || len(c.pads)+len(c.mobs)+len(c.nums) > 0 || c.count != nil || c.resid != nil ||
		c.days.ok || c.until != 0 || c.spell != 0 || c.trouble || c.event || !c.has(actOrder) && !eats || c.acts&^(actOrder|actMoved) != 0 || c.strange+c.remarks == 0 {
		return false
	}
	return true
}

// orderBeside tells whether a clause behind a hold orders where stock walk
// instead, and names no paddock: "so run everybody around the other way".
func (r *reader) orderBeside(last, c *clause) bool {
	at := r.over(r.firstWord(c), "so", "please", "just")
	return last.family() == famHold && c.sentence == last.sentence && last.guard == 0 && len(last.pads) > 0 && c.guard == 0 && r.tok(at).tag == moveWord && c.has(actOrder) && c.acts&^(actOrder|actMoved) == 0 &&
		len(c.pads)+len(c.mobs)+len(c.nums) == 0 && c.count == nil && c.resid == nil && !c.days.ok && c.until == 0 && c.spell == 0
}

// crossTold tells whether a clause behind scores says what a mark among them
// means: "the x is one which the cow pull out".
func (r *reader) crossTold(last, c *clause) bool {
	at := r.over(r.firstWord(c), "the")
	return last.count != nil && last.count.skipped.Other > 0 && c.sentence <= last.sentence+1 && r.oneOf(at, "x", "xs") && r.oneOf(at+1, "is", "was", "are", "were", "means", "one") &&
		len(c.pads)+len(c.nums) == 0 && mobsOf(c)[0] == "" && c.resid == nil && c.until == 0
}

// complaint steps over "why nobody write it," before a report with its day: who
// complains so asks nothing.
func (r *reader) complaint(from, to int) int {
	i := r.over(from, "so", "and", "but", "hey")
	if !r.oneOf(i, "why") || !r.oneOf(r.over(i+1, "is", "does", "did", "has", "do", "there"), "nobody", "noone", "no", "nothing", "isnt", "didnt", "doesnt", "dont", "hasnt", "havent", "never") {
		return from
	}
	for k := i + 2; k < min(i+10, to); k++ {
		if t := r.tok(k); t.text != "," && t.text != "-" {
			continue
		}
		if m := r.when(k + 1); m.ok && m.day <= r.today && !m.vague && r.wordsOnly(i, k) {
			return k + 1
		}
		return from
	}
	return from
}

// opensAfterAll makes "no silage from 7 and 4 after all" the paddocks that the
// next sentence opens: "I opened both of them yesterday". By itself the denial
// may as well be of a cut.
func (r *reader) opensAfterAll(last, c *clause) bool {
	if c.sentence != last.sentence+1 || !c.has(actRelease) || c.acts&^(actRelease|actIn) != 0 || len(c.pads) > 0 || c.guard != 0 || c.until != 0 || c.count != nil || mobsOf(c)[0] != "" ||
		r.please || !r.hasText(c.from, c.to, "opened") || !r.hasText(c.from, c.to, "them") && !r.hasText(c.from, c.to, "it") && !r.hasText(c.from, c.to, "both") {
		return false
	}
	fed := last.acts & (actSilage | actHay)
	if last.guard != guardNeg || fed == 0 || last.acts != fed || len(last.pads) == 0 || last.count != nil || last.until != 0 {
		return false
	}
	c.pads = append([]place(nil), last.pads...)
	for n := range c.pads {
		c.pads[n].role = roleNone
	}
	c.acts |= fed
	return true
}
