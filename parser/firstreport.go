package parser

import (
	"strings"

	"leafround/core/entry"
)

// A plain report with talk beside it is never passed over because of the talk:
// "milkers came out of 25 this morning and headed back to the shed, will sort
// the next break after smoko". Where a whole message comes to nothing, to a note
// or to a question back, it is cut at its joints and read again without the
// pieces that leave the rest as it was told. Where that does not help and the
// message would be passed over, its beginning is asked about if it reports.

// How much is spent on a report beside talk (ours).
const (
	mostJoints = 8   // joints at which a message is cut
	longTalk   = 120 // tokens of a message that is cut
)

// firstReport gives what a message reports beside its talk.
//
//	message = piece { joint piece }
func (r *reader) firstReport(from, to int, o outcome) outcome {
	noted := o.ask == nil && o.question == nil && onlyANote(o.entries)
	if r.retry || to-from > longTalk || len(r.text) > longestTry || !noted && o.ask == nil && (o.question != nil || len(o.entries) > 0) {
		return o
	}
	if o.ask != nil && (o.ask.Reason == partly || o.ask.Reason == allBut || o.ask.Reason == someOfThem) {
		return o // the exception is no talk
	}
	cuts := r.joints(from, to)
	if len(cuts) < 3 {
		return o
	}
	if text, ok := r.withoutTalk(cuts); ok {
		if got := r.readAgain(text, r.Context); plainly(got) {
			r.understood = append(r.understood, got.Understood...)
			return outcome{entries: got.Entries, question: got.Also}
		}
	}
	if text, ok := r.questionAlone(cuts); ok && o.question == nil {
		if got := r.readAgain(text, r.Context); got.Question != nil {
			return outcome{question: got.Question}
		}
	}
	if noted || o.ask != nil {
		return o
	}
	for k := len(cuts) - 2; k > 0; k-- {
		got := r.readAgain(r.source(from, cuts[k]), r.Context)
		if got.Ask != nil && strings.HasPrefix(got.Ask.Reason, noSuchPaddock) {
			return outcome{ask: got.Ask}
		}
		if plainly(got) && got.Also == nil {
			return outcome{ask: r.confirm("Is that so?", got.Entries)}
		}
	}
	return o
}

// joints gives where the pieces of a message begin, and its end.
func (r *reader) joints(from, to int) []int {
	cuts := []int{from}
	for i := from + 1; i < to; i++ {
		if r.joint(i) && i > cuts[len(cuts)-1]+1 {
			cuts = append(cuts, i)
		}
		if len(cuts) > mostJoints {
			break
		}
	}
	return append(cuts, to)
}

// withoutTalk gives a message without the pieces that only talk, where there
// are such and another.
func (r *reader) withoutTalk(cuts []int) (string, bool) {
	var b strings.Builder
	dropped, kept := false, 0
	for n := 0; n+1 < len(cuts); n++ {
		if r.idle(cuts[n], cuts[n+1], kept == 0) && saysNothing(r.readAgain(r.source(cuts[n], cuts[n+1]), r.Context)) {
			dropped = true
			continue
		}
		if kept == 0 || n > 0 {
			b.WriteString(r.source(cuts[n], cuts[n+1]))
			b.WriteByte(' ')
		}
		kept++
	}
	return b.String(), dropped && kept > 0
}

// questionAlone gives a message without the sentences in front that say nothing
// by themselves, where its last one asks: "trying to work out if I have time.
// How long till North gets to 2.5?"
func (r *reader) questionAlone(cuts []int) (string, bool) {
	to := cuts[len(cuts)-1]
	if r.tok(to).text != "?" && r.tok(to-1).text != "?" && !r.opensQuestion(r.sentenceOf(to-1)) {
		return "", false
	}
	from := r.sentenceOf(to - 1)
	if from <= cuts[0] {
		return "", false
	}
	got := r.readAgain(r.source(cuts[0], from), r.Context)
	return r.source(from, to) + "?", got.Ignored
}

// sentenceOf gives the first token of the sentence that a token stands in.
func (r *reader) sentenceOf(i int) int {
	for i > 0 && !(r.tok(i-1).shape == newline || r.tok(i-1).shape == mark && (r.tok(i-1).text == "." || r.tok(i-1).text == "!" || r.tok(i-1).text == "?")) {
		i--
	}
	return i
}

// saysNothing tells whether a piece by itself is talk, or no more than a note.
func saysNothing(got entry.Reading) bool {
	return got.Ignored || got.Ask == nil && got.Question == nil && onlyANote(got.Entries)
}

// plainly tells whether a message reports something and nothing else: no
// question back, no set-up, no mending.
func plainly(got entry.Reading) bool {
	if got.Ask != nil || got.Question != nil || len(got.Entries) == 0 {
		return false
	}
	for _, e := range got.Entries {
		switch e.Kind() {
		case entry.KindSetup, entry.KindCorrect, entry.KindUndo, entry.KindNote:
			return false
		}
	}
	return true
}

// joint tells whether a further piece of a message may begin at a token.
func (r *reader) joint(i int) bool {
	t := r.tok(i)
	switch {
	case t.shape == newline:
		return true
	case t.shape == mark:
		return t.text == "," || t.text == "." && !(t.glued && r.tok(i+1).glued) || t.text == "!" || t.text == ";" || t.text == "-" && !r.negative(i) || t.text == "("
	}
	return t.shape == word && (t.tag == andWord || jointWords[t.text])
}

var jointWords = wordSet(`and but so then which where while because cos coz though although`)

// idle tells whether a piece of a message leaves the report beside it as it was
// told: it speaks of no paddock, stock, amount, day or job, and neither denies
// nor doubts nor plans it. What stands in front of a report must hold no such
// word at all; behind one, a denial, a plan or a condition may be of its own.
func (r *reader) idle(from, to int, front bool) bool {
	start := from
	for start < to && (r.joint(start) || r.tok(start).shape == mark) {
		if r.tok(start).tag == thenWord {
			return false
		}
		start++
	}
	if to-start < 2 || times[r.tok(start).text] || r.oneOf(start, "wait", "when") {
		return false
	}
	own, guarded, refers, frame := 0, false, false, false
	if k := r.unknownTo(start); k > start {
		if front || k+1 >= to {
			return false
		}
		own, start, frame = 1, k, true
	}
	gate := false
	for i := start; i < to; i++ {
		gate = gate || r.oneOf(i, "gate", "gates", "gateway")
	}
	for i := start; i < to; i++ {
		t := r.tok(i)
		switch {
		case t.shape == number && (r.tok(i+1).tag == hourUnit || r.tok(i+1).tag == strangeUnit):
			own++
			i++
			continue
		case t.shape == mark && t.text == "?" || t.shape != word && t.shape != mark && t.shape != newline:
			return false
		case t.shape != word:
			continue
		case r.oneOf(i, "hold", "holds", "held") && r.oneOf(i+1, "off") && weatherNames[r.tok(i-1).text]:
			own++
			i++
			continue
		}
		if p, ok := r.longest(i); ok && p.known {
			return false
		}
		if _, k := r.mob(i); k > i || illWords[t.text] || hurtWords[t.text] || takesBack[t.text] {
			return false
		}
		if d, next, ok := r.idiomAt(i); ok && (d.acts != 0 || d.guard != 0 || d.event) {
			if front || d.acts != 0 || d.event || d.guard != guardPlan {
				return false
			}
			guarded, i = true, next-1
			continue
		}
		n := r.tok(i + 1)
		refers = refers || refersBack[t.text] && !(r.oneOf(i, "that", "this", "those", "these") && (n.tag == unknown || n.tag == troubleWord) && !smallTalk[n.text]) &&
			!(t.text == "it" && (n.tag == rainWord || weatherVerbs[n.text] || weatherNames[strings.TrimSuffix(n.text, "s")]))
		switch t.tag {
		case unknown, remark:
			if !smallTalk[t.text] {
				own++
			}
		case troubleWord:
			own++
		case filler, courtesy, withWord, onWord, ofWord, toWord, inWord, forWord, grassWord, atWord, butWord, andWord, thenWord, dampWord, rainWord, thisWord:
		case openWord, shutWord, closedWord:
			if !gate {
				return false
			}
		case leftWord:
			if front || !frame && !r.oneOf(i+1, "it", "the", "a", "that", "my", "his") {
				return false
			}
		case whWord:
			if front || r.oneOf(i, "when") {
				return false
			}
		case hearWord:
			if front || !r.oneOf(i, "say", "think", "reckon", "guess") || !r.oneOf(i-1, "i", "id", "we", "wed") || own > 0 || n.shape != word || r.oneOf(i+1, "so", "that", "i", "we") {
				return false
			}
		case planWord, wishWord, nextWord, tomorrowWord:
			if front || r.oneOf(i, "maybe", "perhaps", "shouldve", "supposed", "lets") || r.oneOf(i+1, "be", "do", "not", "go") && r.tok(i+2).tag != unknown {
				return false
			}
			guarded = true
		case condWord:
			if front || i == start {
				return false
			}
			guarded = true
		case negWord, notWord:
			if front || i == start && !r.oneOf(i, "cant", "cannot", "couldnt", "dont", "no", "wouldnt") || n.shape != word || n.tag != unknown && n.tag != remark || smallTalk[n.text] {
				return false
			}
		default:
			return false
		}
	}
	return own > 0 && !(guarded && refers)
}

// unknownTo steps over "not sure what", "no idea who", "can't believe how": what
// somebody does not know is told beside what they report.
func (r *reader) unknownTo(i int) int {
	k := i
	switch {
	case r.oneOf(i, "not") && r.oneOf(i+1, "sure", "certain"), r.oneOf(i, "no") && r.oneOf(i+1, "idea", "clue"),
		r.oneOf(i, "cant", "couldnt", "dont") && r.oneOf(i+1, "believe", "say", "tell", "know"):
		k = i + 2
	case r.oneOf(i, "dunno"):
		k = i + 1
	}
	if k > i && r.oneOf(k, "how", "what", "who", "why", "whose") {
		return k + 1
	}
	return i
}

var (
	// takesBack are words that mend, doubt or withdraw what was said.
	takesBack = wordSet(`wrong ignore scrap delete undo mistake oops cancel sorry meant actually same both other another instead unless true false fact
	mistaken yet sure certain certainly definitely correct right really happen happened yes nope nah except rather forget kidding scratch correction`)
	// refersBack are words that may stand for what was reported.
	refersBack = wordSet(`it them they that thats this those these its so theyre theyll itll`)
	// smallTalk are words that carry nothing of their own.
	smallTalk = wordSet(`a an the i im ive id we he we wed she you they it its that this there here is are was were be been am do does did have has had of as to just too
	very much well now ok go goes going come get got give`)
)
