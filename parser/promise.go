package parser

// Who reports often says what comes later: "will send the covers when I'm out of
// the jeep", "I'll do the rest of them tomorrow if the light holds". It plans the
// next message, not what was reported.

// promise steps over the sender's word that more will come, up to the
// sentence's end. A paddock, a mob or a number in it makes it a plan of its own.
//
//	promise = ( "will" | "ill" | "gonna" | … ) ( send | count "the" "rest" ) { word | day }
func (r *reader) promise(c *clause, i int) int {
	if i != r.opening || !r.oneOf(i, "will", "ill", "gonna", "shall") {
		return i
	}
	k := r.over(i+1, "just", "then", "also", "try", "to", "and", "be", "able", "go", "come", "back", "over", "down", "up", "out")
	switch {
	case r.oneOf(k, "send", "text", "tell", "post", "message", "update", "report", "ring", "call", "phone"), r.oneOf(k, "let") && r.oneOf(k+1, "you", "ye", "ya", "u", "everyone"):
	case r.oneOf(k, "do", "finish", "count", "get", "walk", "check", "measure", "add", "weigh") && r.oneOf(r.over(k+1, "the", "all", "of"), "rest", "others", "remainder"):
	default:
		return i
	}
	return r.talkFrom(i, k)
}

// talkFrom gives the end of the talk that goes on at k, or i where it is no talk
// alone.
func (r *reader) talkFrom(i, k int) int {
	if end, ok := r.onlyTalk(k); ok {
		return end
	}
	return i
}

// onlyTalk gives the end of a token's sentence where no paddock, mob or number
// but that of a day or an hour stands before it.
func (r *reader) onlyTalk(k int) (int, bool) {
	for from := k; k < len(r.toks) && !r.endsSentence(k); {
		if k > from+longestTalk {
			return k, false
		}
		if m := r.when(k); m.ok {
			k = m.next
			continue
		}
		if j, ok := r.clock(k); ok {
			k = j
			continue
		}
		t := r.tok(k)
		if _, j := r.mob(k); j > k || t.shape == number || t.shape == part || t.shape == broken || t.tag == numberWord && !r.oneOf(k-1, "right", "last", "new", "that", "this", "correct", "proper", "good") || r.padAhead(k) {
			return k, false
		}
		k++
	}
	return k, true
}

// longestTalk is how many tokens such talk can have (ours): it holds the time
// that a message of nothing else takes.
const longestTalk = 60

// errand steps over what somebody of the team is asked to do: "would whoever
// borrowed my torch put it back". Where stock or a fence may be meant it stays.
//
//	errand = [ "would" | "could" | "can" | "will" ] ( "whoever" | "someone" | "somebody" ) { word }
func (r *reader) errand(c *clause, i int) int {
	k := i
	if r.oneOf(k, "would", "could", "can", "will") {
		k++
	}
	if i != r.opening || !r.oneOf(k, "whoever", "someone", "somebody") || k == i && !r.oneOf(k, "whoever") {
		return i
	}
	end := r.talkFrom(i, k+1)
	for k < end {
		if t := r.tok(k); t.tag == troubleWord || r.oneOf(k, "them", "they", "em", "stock", "animals", "everything", "tell", "send", "count") {
			return i
		}
		k++
	}
	return end
}

// gateShut steps over "and after I close the gate with the chain" behind what
// was done: it tells how the job ended.
//
//	gateShut = ( "and" "after" | "then" ) ( "i" | "we" ) ( "close" | "shut" | … ) [ "the" ] "gate" { word }
func (r *reader) gateShut(c *clause, i int) int {
	if !r.oneOf(i, "then") && !(r.oneOf(i, "after", "afterwards") && r.tok(i-1).tag == andWord) || !c.has(actsGraze) && i > c.from {
		return i
	}
	k := i + 1
	if !r.oneOf(k, "i", "we") || !r.oneOf(k+1, "close", "closed", "shut", "lock", "locked", "chain", "chained", "tie", "tied") {
		return i
	}
	if k = r.over(k+2, "the", "that", "up", "a"); !r.oneOf(k, "gate", "gates", "gateway", "wire", "reel") {
		return i
	}
	return r.talkFrom(i, k+1)
}

// endsSentence tells whether a mark or line break that ends a sentence stands at
// a token.
func (r *reader) endsSentence(i int) bool {
	t := r.tok(i)
	return t.shape == newline || t.shape == mark && (t.text == "." || t.text == "!" || t.text == "?" || t.text == ";")
}

// mayGoIn steps over "cattle can go back in it" behind words that say that a
// paddock is fit again: it says the same once more.
//
//	mayGoIn = stock ( "can" | "may" ) "go" [ "back" ] ( "in" | "into" | "on" ) [ "it" | "there" ] [ "now" | "again" ]
func (r *reader) mayGoIn(c *clause, i int) int {
	k := r.stockAt(i)
	if k == i && r.oneOf(i, "they") {
		k++
	}
	if k == i || !r.oneOf(k, "can", "may") {
		return i
	}
	k = r.over(k+1, "all", "now", "just", "safely")
	if !r.oneOf(k, "go", "come", "get") {
		return i
	}
	k = r.over(k+1, "back", "straight", "right")
	if t := r.tok(k); t.shape != word || t.tag != inWord && t.tag != intoWord && t.tag != onWord {
		return i
	}
	k = r.over(k+1, "it", "there", "to", "again", "now", "any", "time", "anytime", "whenever")
	if n := r.tok(k); n.shape != end && n.shape != mark && n.shape != newline || !r.fitAgain(i) {
		return i
	}
	c.remarks++
	return k
}

// fitAgain tells whether the words of the sentence before a token say that a
// paddock is fit to graze, without a denial.
func (r *reader) fitAgain(i int) bool {
	fit := false
	for k := i - 1; k >= 0 && k > i-2*longestRun && !r.endsSentence(k); k-- {
		t := r.tok(k)
		if t.shape != word {
			continue
		}
		switch t.tag {
		case negWord, notWord, condWord, planWord, wishWord, hearWord, tomorrowWord, nextWord:
			return false
		case dryWord, releaseWord:
			fit = true
		}
		d, _, ok := r.idiomAt(k)
		fit = fit || ok && d.acts&(actRelease|actDry) != 0 && d.guard == 0
	}
	return fit
}

// jobAhead steps over "to spray" right behind a paddock, or "ready to top": it is to
// be done there. Behind a verb it may have been: "managed to spray 12".
func (r *reader) jobAhead(c *clause, i int) int {
	if r.tok(i).tag != toWord || r.padAhead(i+1) || !r.oneOf(i+1, "spray", "spread", "mow", "top", "cut", "sow", "drill", "topdress", "fertilise", "fertilize", "fert", "bale", "mulch") || i == c.from {
		return i
	}
	if c.names(i-1) || r.oneOf(i-1, "ready", "due", "next", "left", "still", "remind", "remember", "yet", "is", "are") {
		c.guard |= guardPlan
		return i + 2
	}
	return i
}
