package parser

// More that people tell beside a report: what comes later, why it comes late, how
// they looked, what nobody should do to the gate.

// restLater steps over "rest of it tomorrow", "the other half Friday" behind a
// report: it is of other tillers, so that its day is none of the report's.
//
//	restLater = [ "the" ] ( "rest" | "remainder" | "others" | "other" "half" ) [ "of" ( "it" | "them" ) ] { word | day }
func (r *reader) restLater(c *clause, i int) int {
	if i == 0 || !c.blank() || i != c.from && !(r.oneOf(i-1, "the", "and", "will", "do") && i-2 <= c.from) {
		return i
	}
	k := i + 1
	switch {
	case r.oneOf(i, "rest", "remainder", "others"):
	case r.oneOf(i, "other") && r.oneOf(k, "half", "ones", "lot", "side"):
		k++
	default:
		return i
	}
	k = r.over(k, "of", "it", "them", "that", "farm", "the", "round", "paddocks", "place")
	switch {
	case r.day(k).ok, r.oneOf(k, "later", "to", "after", "in", "when", "once", "if", "next"):
	default:
		return i
	}
	return r.talkFrom(i, k)
}

// lateTold steps over "just now getting around to telling y'all": the report is
// late, and its day was told.
//
//	lateTold = "getting" ( "round" | "around" ) "to" ( "telling" | "sending" | … ) { word }
func (r *reader) lateTold(c *clause, i int) int {
	if !r.oneOf(i, "getting", "got", "gotten", "get") || !r.oneOf(i+1, "round", "around") || !r.oneOf(i+2, "to") ||
		!r.oneOf(i+3, "telling", "tell", "sending", "send", "texting", "text", "logging", "log", "writing", "write", "typing", "putting", "saying", "reporting", "entering", "posting") {
		return i
	}
	return r.talkFrom(i, i+4)
}

// whenYouLook steps over "when you part it with your boot": how it was seen.
//
//	whenYouLook = ( "when" | "if" | "where" ) ( "you" | "i" | "we" ) ( "look" | "part" | … ) { word }
func (r *reader) whenYouLook(c *clause, i int) int {
	if !c.has(actCanopy|actClosed|actWet|actDamp) && c.count == nil || c.guard&^guardNeg != 0 || !r.oneOf(i+1, "you", "ye", "ya", "i", "we", "u") {
		return i
	}
	if !r.oneOf(i+2, "look", "part", "stand", "walk", "bend", "kneel", "peer", "open", "push", "pull", "lift", "spread", "kick", "get", "step", "crouch", "put") {
		return i
	}
	return r.talkFrom(i, i+3)
}

// whenPassing steps over "when you're passing", "when somebody gets a chance"
// behind trouble: when it may be mended is no question.
//
//	whenPassing = ( "when" | "next" "time" | "if" ) ( "youre" | "you" "are" | … ) ( "passing" | "next" | … ) { word }
func (r *reader) whenPassing(c *clause, i int) int {
	k := r.over(i+1, "you", "youre", "they", "theyre", "ye", "yere", "are", "were", "somebody", "someone", "anybody", "anyone", "is", "next")
	if k == i+1 || !c.trouble && !r.troubleBefore(i) {
		return i
	}
	switch {
	case r.oneOf(k, "passing", "going", "down", "up", "over", "out", "around", "round", "there", "free", "able", "about"), r.oneOf(k-1, "next"):
	case r.oneOf(k, "get", "gets", "have", "has", "got") && r.oneOf(r.over(k+1, "a", "the"), "chance", "minute", "second", "sec", "moment", "time", "mo"):
	default:
		return i
	}
	return r.talkFrom(i, k)
}

// troubleBefore tells whether trouble is told in the sentence before a token.
func (r *reader) troubleBefore(i int) bool {
	for n := i - 1; n >= 0 && n > i-3*longestPiece && !r.endsSentence(n); n-- {
		if t := r.tok(n); t.tag == troubleWord && t.shape == word {
			return true
		}
	}
	return false
}

// gateLeft steps over "so nobody be opening them" behind a gate: what is not to be
// done to it.
//
//	gateLeft = ( "nobody" | "no" "one" ) { "be" | "is" | "to" } ( "open" | "leave" | "touch" | … ) { word }
func (r *reader) gateLeft(c *clause, i int) int {
	k := i + 1
	switch {
	case r.oneOf(i, "nobody", "noone"):
	case r.oneOf(i, "no") && r.oneOf(k, "one"):
		k++
	default:
		return i
	}
	k = r.over(k, "be", "is", "are", "to", "should", "else", "can", "will", "goes", "go", "ever")
	if !r.oneOf(k, "open", "opens", "opening", "touch", "touches", "touching", "undo", "undoes", "untie", "unties", "cut", "cuts", "drive", "drives", "driving", "leave", "leaves", "leaving", "forgets", "forget") {
		return i
	}
	gate := false
	for n := i - 1; n >= 0 && n > i-longestPiece*2 && !r.endsSentence(n); n-- {
		gate = gate || r.oneOf(n, "gate", "gates", "gateway", "gap", "gaps", "wire", "tape", "twine", "chain", "chained", "padlock")
	}
	end := r.talkFrom(i, k+1)
	for n := k; n < end; n++ {
		gate = gate || r.oneOf(n, "gate", "gates", "gateway", "gap")
	}
	if !gate {
		return i
	}
	return end
}

// thatOne steps over "that one's" behind a paddock: it speaks of it again.
func (r *reader) thatOne(c *clause, i int) int {
	if i == 0 || len(c.mobs) > 0 || !r.oneOf(i, "that", "this") {
		return i
	}
	k := i + 1
	switch {
	case r.oneOf(k, "ones") && r.source(k, k+1) != "ones" && r.source(k, k+1) != "Ones":
	case r.oneOf(k, "one") && r.oneOf(k+1, "is"):
		k++
	default:
		return i
	}
	if t := r.tok(k + 1); t.shape != word || r.oneOf(k+1, "not", "for", "next", "still", "in", "out") && !r.oneOf(k+2, "of", "limits") {
		return i
	}
	c.remarks++
	c.there = true
	return k + 1
}

// theyWalked steps over ", they trotted right on through like they knew the way"
// behind a move: how the stock went. What they did next is none of it.
//
//	theyWalked = ( "," | "and" ) "they" ( "walked" | "ran" | … ) { word }
func (r *reader) theyWalked(c *clause, i int) int {
	if i < 3 || !r.joins(i-1) || !r.oneOf(i, "they", "they'd", "theyd") {
		return i
	}
	k := r.over(i+1, "just", "all", "then", "had", "have")
	if !gaits[r.tok(k).text] || !r.moveTold(i) {
		return i
	}
	for k++; r.tok(k).shape != end && !r.endsSentence(k) && r.tok(k).text != ","; k++ {
		t := r.tok(k)
		if _, j := r.mob(k); j > k || t.shape == number || t.tag == numberWord || t.tag == negWord || t.tag == notWord || t.tag == butWord || t.tag == outWord || t.tag == untilWord || r.day(k).ok || r.padAhead(k) ||
			r.oneOf(k, "back", "again", "off", "then", "until", "before", "after") {
			return i
		}
		if t.tag == andWord {
			break
		}
	}
	c.remarks++
	return k
}

// moveTold tells whether a move of stock stands before a token in its sentence.
func (r *reader) moveTold(i int) bool {
	stock, moved := false, false
	for n := i - 1; n >= 0 && n > i-2*longestPiece && !r.endsSentence(n); n-- {
		t := r.tok(n)
		stock = stock || r.beast(n) || t.tag == looseMob || stockPronouns[t.text]
		moved = moved || t.tag == movedWord || t.tag == putWord || t.tag == intoWord || t.tag == toWord || t.tag == inWord || t.shape == arrow || t.tag == wentWord
	}
	return stock && moved
}

// gaits are how stock walk.
var gaits = wordSet(`walked trotted ran marched strolled galloped charged filed poured flew skipped wandered ambled sauntered bolted dashed danced raced hopped plodded dawdled went knew`)

// simile steps over "like lambs", "like a train" behind how stock went: it names no
// mob.
func (r *reader) simile(c *clause, i int) int {
	if i == 0 || !r.oneOf(i, "like") || !gaits[r.tok(i-1).text] && !r.oneOf(i-1, "in", "through", "moved", "came", "behaved", "eating", "ate", "grazed") {
		return i
	}
	k := r.over(i+1, "a", "the", "an", "little", "good")
	if t := r.tok(k); t.shape != word || r.padAhead(k) && t.tag != mobWord {
		return i
	}
	if t := r.tok(k + 1); t.shape != end && t.shape != newline && t.shape != mark {
		return i
	}
	c.remarks++
	return k + 1
}

// wontHold steps over "it won't hold a bull": a mended fence is told of, and no
// paddock is held.
func (r *reader) wontHold(c *clause, i int) int {
	if !r.oneOf(i+1, "hold") || !r.oneOf(i+2, "a", "an", "the", "anything", "much", "them", "stock", "water", "long", "for", "up", "out") || r.oneOf(i+2, "a", "the", "for") && r.tok(i+3).tag == padMark || r.oneOf(i+2, "for", "them", "up", "out") && !c.trouble {
		return i
	}
	k := i + 3
	if r.oneOf(i+2, "a", "an", "the") {
		k++
	}
	c.trouble = true
	return k
}

// wentToCount steps over "got out to" before the paddock whose scores stand in the
// next sentence: who counts goes there.
//
//	wentToCount = ( "got" | "made" "it" | … ) ( "out" | "over" | … ) "to"
func (r *reader) wentToCount(c *clause, i int) int {
	if len(c.mobs) > 0 || c.head > 0 || c.says() || len(c.pads) > 0 {
		return i
	}
	k := r.over(i+1, "it", "myself", "ourselves", "out", "over", "up", "down", "across", "round", "around", "back", "in")
	if k == i+1 || !r.oneOf(k, "to") {
		return i
	}
	p, ok := r.onePad(r.over(k+1, "the"), false)
	if !ok || !p.known {
		return i
	}
	e := r.sentenceEnd(p.next, len(r.toks))
	for n := c.from; n < e; n++ {
		if r.beast(n) || r.tok(n).tag == looseMob || stockPronouns[r.tok(n).text] {
			return i
		}
	}
	said, _ := r.lookAtScores(r.intro(r.over(e+1, "the", "my", "tillers", "scores", "counts", "were", "was", ":", "came", "out", "at", "and")))
	if len(said.said) < 2 || said.doubt != "" {
		return i
	}
	c.remarks++
	return k + 1
}
