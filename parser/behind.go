package parser

import (
	"leafround/core/entry"
)

// question reads a question at the sentence's start, or behind a statement; at
// is the token where it starts.
//
//	question = [ "so" | "and" ] words-of-a-question [ "?" ]
func (r *reader) question(from, to, sentence int, asked bool) (q *entry.Question, at int, ok bool) {
	tries := 0
	for i := from + 1; i < to && tries < mostAsked; i++ {
		t := r.tok(i)
		if t.text != "," && t.text != "-" && t.text != ":" && t.tag != andWord && t.text != "so" && t.tag != thenWord && t.text != "but" {
			continue
		}
		for r.tok(i).text == "," || r.tok(i).text == "-" || r.tok(i).text == ":" || r.tok(i).tag == andWord || r.tok(i).text == "so" || r.tok(i).text == "but" || r.tok(i).tag == thenWord {
			i++
		}
		for r.tok(i).tag == courtesy {
			i++
		}
		if r.tok(i).tag != whWord && r.tok(i).tag != nextWord && !r.oneOf(i, "tell", "give", "show") && !r.asksBot(i) {
			continue
		}
		if r.oneOf(i, "which") && r.unsentAt(i) > i {
			continue // "which I forgot to tell you"
		}
		tries++
		if r.standsIt(i, to) && r.statesPlainly(from, i, sentence) {
			r.ofIt = true
			return &entry.Question{About: entry.AskReady}, i, true
		}
		if q := r.ask(i, to, true); q != nil {
			if w := r.ask(from, to, true); w != nil && w.About == entry.AskRound && w.Days > 0 {
				return w, from, true // "going to a 25 day round, what would that do"
			}
			if d := r.roundTold(from, i); d > 0 && q.Paddock == "" && (r.hasText(i, to, "that") || r.hasText(i, to, "if")) && r.hasText(i, to, "would") {
				return &entry.Question{About: entry.AskRound, Days: d}, from, true
			}
			return r.behind(q, i, to), i, true
		}
		if q := r.beforeTalk(i, to, true); q != nil {
			return r.behind(q, i, to), i, true
		}
	}
	if q, at := r.toldAnew(from, to); q != nil {
		return q, at, true
	}
	if q, at := r.trailing(from, to, sentence); q != nil {
		return q, at, true
	}
	if !asked && r.tellsLeaves(from, to) {
		return nil, from, false
	}
	if q, at, ok = r.wholeQuestion(from, to, asked); ok {
		return r.behind(q, from, to), at, ok
	}
	if q := r.beforeTalk(from, to, asked); q != nil {
		return r.behind(q, from, to), from, true
	}
	return nil, at, false
}

// tellsLeaves tells whether a sentence opens with a paddock and its leaves, so
// that it asks nothing: "bog 0.8 lvs, slow enough".
func (r *reader) tellsLeaves(from, to int) bool {
	p, ok := r.onePad(from, false)
	if !ok || !p.known {
		return false
	}
	k := r.intro(p.next)
	return k < to && r.tok(k).decimal && r.tok(k+1).tag == leafUnit
}

// asksBot tells whether somebody is asked to tell something: "can you tell me".
func (r *reader) asksBot(i int) bool {
	k := r.over(i+2, "please", "pls", "just", "kindly")
	return r.oneOf(i, "can", "could", "would", "will") && r.oneOf(i+1, "you", "u", "ye", "ya") && r.oneOf(k, "tell", "show", "give") && r.oneOf(k+1, "me", "us")
}

// mostTalk is how often in a message a question before talk is looked for (ours).
const mostTalk = 30

// beforeTalk reads a question that talk follows: "what did we log on 12 this
// week, trying to fill in the diary".
func (r *reader) beforeTalk(from, to int, asked bool) *entry.Question {
	if to-from > longestQuestion {
		return nil
	}
	if _, framed := r.request(from, to); !asked && !framed && !r.opensQuestion(from) {
		return nil
	}
	for i := from + 2; i < to-1; i++ {
		if t := r.tok(i); t.text != "," && t.text != "-" && !r.oneOf(i, "so", "because", "cos", "coz", "as", "before") {
			continue
		}
		if r.afterTalk++; r.afterTalk > mostTalk || !r.wordsOnly(i+1, to) {
			return nil
		}
		if q := r.ask(from, i, true); q != nil {
			return q
		}
	}
	return nil
}

// wordsOnly tells whether nothing but words stands in a run of tokens: no number,
// no paddock, no herd.
func (r *reader) wordsOnly(from, to int) bool {
	for i := from; i < to; i++ {
		if r.tok(i).shape != word {
			if r.tok(i).shape == mark {
				continue
			}
			return false
		}
		if _, k := r.mob(i); k > i {
			return false
		}
		if _, ok := r.longest(i); ok {
			return false
		}
	}
	return true
}

// wholeQuestion reads a sentence that is nothing but a question.
func (r *reader) wholeQuestion(from, to int, asked bool) (*entry.Question, int, bool) {
	a := r.salute(from, to)
	signal := asked || r.opensQuestion(a)
	if k := r.wantTail(a, to); k < to && signal {
		if q := r.ask(a, k, true); q != nil {
			return q, from, true
		}
	}
	q := r.ask(a, to, signal)
	if k := r.reasonFrom(a, to); q == nil && k < to {
		q = r.ask(a, k, signal)
	}
	return q, from, q != nil
}

// trailing reads a question that nothing parts from the statement before it:
// "p4 2 2.5 2 whats next". It is one only where what stands before it states
// something plainly, or is no more than a greeting.
func (r *reader) trailing(from, to, sentence int) (*entry.Question, int) {
	if to-from > longestQuestion || r.opensQuestion(from) {
		return nil, from
	}
	for i := from + 1; i < to; i++ {
		if !r.asksAnew(i) {
			continue
		}
		q := r.ask(i, to, true)
		if q == nil {
			continue
		}
		if r.greets(from, i) || r.statesPlainly(from, i, sentence) {
			return r.behind(q, i, to), i
		}
		return nil, from
	}
	return nil, from
}

// toldAnew reads a request behind talk that nothing parts from it, with talk
// behind: "right before I head out can you tell me how 12 stands, I walked past
// it last week".
func (r *reader) toldAnew(from, to int) (*entry.Question, int) {
	if to-from > longestQuestion {
		return nil, from
	}
	for i := from + 1; i < to-3; i++ {
		if !r.oneOf(i, "can", "could", "would", "will") || !r.oneOf(i+1, "you", "u", "ye", "someone", "somebody", "anyone") || !r.oneOf(i+2, "tell", "show", "give", "send") || !r.oneOf(i+3, "me", "us") {
			continue
		}
		if !r.wordsOnly(from, i) {
			return nil, from
		}
		q := r.ask(i, to, true)
		if q == nil {
			q = r.beforeTalk(i, to, true)
		}
		return r.behind(q, i, to), from
	}
	return nil, from
}

// standsIt tells whether "how does it stand now" is asked behind what was told of
// a paddock.
func (r *reader) standsIt(i, to int) bool {
	k := r.over(i, "so", "and")
	if !r.oneOf(k, "how", "hows", "where") || to-i > 9 {
		return false
	}
	k = r.over(k+1, "does", "do", "is", "are")
	if !r.oneOf(k, "it", "that", "they", "those") && !(r.oneOf(k-1, "hows") && r.oneOf(k, "it", "that")) {
		return false
	}
	k++
	if !r.oneOf(k, "stand", "stands", "standing", "look", "looking", "sit", "sitting", "stack", "placed", "fixed") {
		return false
	}
	k = r.over(k+1, "up", "now", "then", "today", "after", "that", "at", "the", "moment", "for", "grazing", "against", "rest", "please")
	return k >= to
}

// asksAnew tells whether a word can open a question inside a sentence. "When"
// and "which" may as well lead a clause of the statement ("12 grazed when it
// was dry"), so that a verb or a noun must follow.
func (r *reader) asksAnew(i int) bool {
	t := r.tok(i)
	if t.shape != word {
		return false
	}
	switch t.text {
	case "when":
		return r.oneOf(i+1, "is", "will", "can", "should", "are", "do")
	case "which":
		return r.tok(i+1).tag == padMark || r.oneOf(i+1, "one", "next")
	case "who", "whose":
		return false
	case "is", "will":
		return r.oneOf(i+1, "it", "that", "this")
	}
	return t.tag == whWord
}

// statesPlainly tells whether the tokens before a question are statements with
// no guard on any of them.
func (r *reader) statesPlainly(from, to, sentence int) bool {
	named, tillers, none, forms := r.named, r.tillers, r.noScores, len(r.forms)
	defer func() { r.named, r.tillers, r.noScores, r.forms = named, tillers, none, r.forms[:forms] }()
	says := false
	for _, c := range r.clauses(nil, from, to, sentence, false) {
		if c.guard&^guardFuture != 0 {
			return false
		}
		says = says || c.says()
	}
	return says
}

// greets tells whether nothing but a greeting stands before a question: "hi,
// new here, how do i send a count".
func (r *reader) greets(from, to int) bool {
	for i := from; i < to; i++ {
		t := r.tok(i)
		if t.shape != mark && t.tag != courtesy && !greetingWords[t.text] {
			return false
		}
	}
	return true
}

// greetingWords say no more than who asks, or that something is asked.
var greetingWords = wordSet(`new here im i am its me first day time quick question just a wondering was the bot team all everyone got one`)

// behind notes whether a question asks when "it" is ready, which is the paddock
// that the message is about.
func (r *reader) behind(q *entry.Question, from, to int) *entry.Question {
	if q == nil || q.About != entry.AskReady {
		return q
	}
	for i := from; i < to; i++ {
		if r.oneOf(i, "which", "what", "whats", "anything", "any", "where", "paddocks") {
			r.ofIt = false // "which are ready after that"
			return q
		}
		r.ofIt = r.ofIt || r.oneOf(i, "it", "its", "that", "when", "long")
	}
	return q
}

// ofWhatItSays makes "how long till it's ready" behind what was told of one
// paddock a question about that paddock.
func (r *reader) ofWhatItSays(all *outcome) {
	if all.question == nil || all.question.About != entry.AskReady || !r.ofIt || all.ask != nil {
		return
	}
	name := ""
	for _, e := range all.entries {
		p := ""
		switch v := e.(type) {
		case entry.Count:
			p = v.Paddock
		case entry.Graze:
			p = v.Paddock
		case entry.Hold:
			p = v.Paddock
		case entry.Canopy:
			p = v.Paddock
		}
		if p == "" || name != "" && name != p {
			return
		}
		name = p
	}
	if name != "" {
		all.question = &entry.Question{About: entry.AskPaddock, Paddock: name}
	}
}

// ofWhoItSays gives a question where "they" go next the mob that the message
// moved: "heifers out of 9, where do they go next?".
func (r *reader) ofWhoItSays(all *outcome) {
	if all.question == nil || all.question.About != entry.AskNext || all.question.Mob != "" || !r.asksOfThem() {
		return
	}
	mob := ""
	for _, e := range all.entries {
		g, ok := e.(entry.Graze)
		if !ok || g.Mob == "" || mob != "" && mob != g.Mob {
			return
		}
		mob = g.Mob
	}
	all.question.Mob = mob
}

// asksOfThem tells whether a question word is followed by "they" or "them".
func (r *reader) asksOfThem() bool {
	for i := range r.toks {
		if r.tok(i).tag != whWord || r.tok(i).shape != word {
			continue
		}
		for k := i + 1; k < i+7; k++ {
			if r.oneOf(k, "they", "them", "theyre") {
				return true
			}
		}
	}
	return false
}

// roundTold gives the days of a round that is spoken of: "a 25 day round".
func (r *reader) roundTold(from, to int) float64 {
	for i := from; i < to; i++ {
		n, k := r.whole(i)
		if k = r.over(k, "-"); n > 0 && k > i && r.tok(k).tag == dayUnit && r.oneOf(k+1, "round", "rotation") {
			return float64(n)
		}
	}
	return 0
}
