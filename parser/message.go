package parser

import (
	"leafround/core/entry"
)

// outcome is what one part of a message came to.
type outcome struct {
	entries  []entry.Entry
	question *entry.Question
	ask      *entry.Ask
	talk     bool
}

// message reads the whole of a message.
//
//	message = command | setup | mending | alarm | { sentence }
func (r *reader) message(out *entry.Reading) {
	for i := range r.toks {
		r.please = r.please || r.oneOf(i, "please", "pls", "plz")
	}
	from, to := r.trim(0, len(r.toks))
	if from >= to {
		out.Ignored = true
		return
	}
	if !r.apologyIn(to, len(r.toks)) {
		r.toks = r.toks[:to] // thanks at the end are no words behind what was told
	}
	if k := r.greeted(from, to); k > from {
		n := copy(r.toks, r.toks[k:])
		r.toks, from, to = r.toks[:n], 0, to-k
	}
	r.notDays(from, to)
	r.simplePast(from, to)
	r.column(from, to)
	r.pairs(from, to)
	for _, read := range wholeReaders {
		if o, ok := read(r, from, to); ok {
			settle(out, o)
			return
		}
	}
	settle(out, r.takenBack(from, to, r.lostCount(from, to, r.mendAsked(from, to, r.firstReport(from, to, r.firmCount(from, to, r.sentences(from, to)))))))
}

// wholeReaders read messages that are one thing as a whole.
var wholeReaders = []func(*reader, int, int) (outcome, bool){
	(*reader).command,
	(*reader).alarm,
	(*reader).remember,
	(*reader).setup,
	(*reader).mending,
	(*reader).again,
}

// settle lays an outcome on the reading so that exactly one part of it holds.
func settle(out *entry.Reading, o outcome) {
	switch {
	case o.ask != nil:
		out.Ask = o.ask
	case len(o.entries) > 0:
		out.Entries, out.Also = o.entries, o.question
	case o.question != nil:
		out.Question = o.question
	default:
		out.Ignored = true
	}
}

// trim takes courtesy and line breaks off both ends.
func (r *reader) trim(from, to int) (int, int) {
	idle := func(t *token) bool {
		return t.shape == newline || t.shape == word && t.tag == courtesy ||
			t.shape == mark && (t.text == "," || t.text == "!" || t.text == "." || t.text == "-" || t.text == "*" || t.text == ";")
	}
	for from < to && idle(r.tok(from)) && !r.negative(from) && !(r.tok(from).text == "*" && r.tok(from+1).glued) {
		from++
	}
	for to > from && (idle(r.tok(to-1)) && r.tok(to-1).text != "*" || r.kiss(from, to-1)) {
		to--
	}
	if to-from > 3 && r.oneOf(to-1, "out") && r.oneOf(to-2, "and", "&") && r.oneOf(to-3, "over") {
		to -= 3
	}
	if to-from > 3 && r.oneOf(to-2, "all") && r.oneOf(to-1, "good", "grand", "ok") && !r.oneOf(to-3, "are", "is", "were", "they", "theyre", "its", "be", "was") && !(r.oneOf(to-3, "it") && r.oneOf(to-4, "is", "was")) && r.tok(to-3).shape != mark {
		to -= 2
	}
	return from, to
}

// kiss tells whether an x behind a courtesy is one, and no tiller set aside.
func (r *reader) kiss(from, i int) bool {
	return i > from && r.oneOf(i, "x", "xx", "xxx") && r.tok(i).shape == word && (r.tok(i-1).tag == courtesy || r.oneOf(i-1, "x", "xx", "xxx") && r.kiss(from, i-1))
}

// sentences reads the clauses of every sentence, merges them into statements
// and gives the meaning of each; a sentence that asks is the question.
func (r *reader) sentences(from, to int) outcome {
	var all outcome
	list := r.told[:0]
	r.told = nil // a sentence inside this one has a list of its own
	defer func() { r.told = list }()
	whole := all.question
	n := 0
	for i := from; i < to; n++ {
		k := r.sentenceEnd(i, to)
		asked := r.tok(k).text == "?" || r.yetAsked(i, k)
		a, b := r.trim(i, k)
		i = k + 1
		if a >= b {
			n-- // a full stop and a line's end are one
			continue
		}
		if r.tooMany(len(list), n) {
			return outcome{ask: &entry.Ask{Reason: tooMuchReason}}
		}
		if told, ok := r.series(a, b, n); ok && !asked {
			list = append(list, told...)
			continue
		}
		if !asked {
			a = r.complaint(a, b)
		}
		q, at, ok := r.question(a, b, n, asked)
		if ok {
			switch had := all.question; {
			case had == nil:
				all.question = q
			case q.Picture && b-a <= 3:
				had.Picture = true
			}
			if at <= a {
				continue
			}
			whole, _, _ = r.wholeQuestion(a, b, asked)
			b = at
		}
		r.asking = asked
		list = r.clauses(list, a, b, n, !ok && (asked || r.opensQuestion(a) && !r.listsScores(a, b)))
	}
	if r.tooMany(len(list), n) {
		return outcome{ask: &entry.Ask{Reason: tooMuchReason}}
	}
	return r.statements(list, all, whole)
}

// tooMany tells whether a message holds more than is read in one.
func (r *reader) tooMany(clauses, sentences int) bool {
	return clauses > mostClauses || sentences > mostClauses || r.named > mostPads || r.asked > mostPads || r.tillers > mostReads
}

// listsScores tells whether a list of scores stands in a sentence, which then
// reports, however it begins: "sorry is late, I counted Road: 2 1.5 2".
func (r *reader) listsScores(from, to int) bool {
	n := 0
	for i := from; i < to; i++ {
		switch t := r.tok(i); {
		case t.shape == number && t.value <= 5 || t.shape == part:
			n++
		case t.text != ",":
			n = 0
		}
		if n > 2 {
			return true
		}
	}
	return false
}

// sentenceEnd gives the token that ends the sentence from i.
func (r *reader) sentenceEnd(i, to int) int {
	for k := i; k < to; k++ {
		t := r.tok(k)
		switch {
		case t.shape == newline, t.text == "!" && t.shape == mark, t.text == "?":
			return k
		case t.text == ";":
			if !r.scoreBehind(k) {
				return k
			}
		case t.text == "." && t.shape == mark:
			if r.tok(k+1).glued && r.tok(k+1).shape != mark && r.tok(k-1).tag == padMark || r.tok(k-1).shape == number && (r.yellowAhead(k+1) || r.setAside(k+1)) {
				continue
			}
			return k
		}
	}
	return to
}

// scoreBehind tells whether a semicolon stands between two scores, and no sentence
// ends there: a mark or nothing is behind the next, and no list of its own.
func (r *reader) scoreBehind(i int) bool {
	if b := r.tok(i - 1); b.shape != number && b.shape != part && !(b.shape == mark && b.text == "+" && b.glued) {
		return false
	}
	a, _ := r.value(i + 1)
	if !r.isScore(i+1) || a.value > 5 && a.next == i+2 && allDigits(r.tok(i+1)) {
		return false // a paddock's number; 7/8 is a score
	}
	k := a.next
	if r.tok(k).text == "," && r.tok(k).glued && r.tok(k+1).glued && r.tok(k+1).shape == number {
		k += 2 // "; 2,5"
	}
	for r.tok(k).text == "+" && r.isScore(k+1) {
		b, _ := r.value(k + 1)
		k = b.next
	}
	goesOn := r.tok(i-2).text == ";" || r.tok(i-4).text == ";" && r.tok(i-2).text == "," // semicolons part the scores before it
	if r.eventPads(i+1) && !goesOn {
		return false // "shut up p13; 3 & 5 limed"
	}
	switch t := r.tok(k); {
	case t.shape == end, t.shape == newline, t.tag == andWord, t.tag == plusWord, t.tag == thenWord, r.oneOf(k, "also"):
		return true
	case t.shape == mark:
		return t.text != ":" && t.text != "," && (t.text != "-" || !t.glued && goesOn)
	}
	return r.tok(k).shape == word && r.setAside(k)
}

// mostClauses is how many clauses one message can hold (ours).
const mostClauses = 300

// namedOnce tells whether the last clause, or the one before it in the same
// sentence, names one paddock.
func namedOnce(list []clause) bool {
	c := &list[len(list)-1]
	if len(c.pads) == 0 && len(list) > 1 && list[len(list)-2].sentence == c.sentence {
		c = &list[len(list)-2]
	}
	return len(c.pads) == 1
}

// clauses cuts a sentence into clauses.
func (r *reader) clauses(list []clause, from, to, sentence int, asked bool) []clause {
	r.paired = false
	for i := from; i < to; {
		r.way, r.prefixed, r.herded, r.opening = roleNone, false, false, i
		for r.tok(r.opening).tag == filler && r.tok(r.opening).shape == word && !placeWords[r.tok(r.opening).text] {
			r.opening++
		}
		r.headed = len(list) > 0 && list[len(list)-1].heads() && len(list[len(list)-1].pads) > 0 && (list[len(list)-1].sentence < sentence || list[len(list)-1].colon) || introducedBefore(list, sentence) || len(list) > 0 && list[len(list)-1].awaits() && namedOnce(list)
		r.rained = len(list) > 0 && list[len(list)-1].sentence == sentence && list[len(list)-1].acts == actRain
		if len(list) > mostClauses || r.named > mostPads {
			return list
		}
		r.awaiting = awaited(list, sentence)
		list = append(list, clause{})
		c := &list[len(list)-1]
		r.clause(c, i, to)
		i = max(c.to, i+1)
		c.sentence = sentence
		if asked {
			c.guard |= guardAsk
		}
		if c.blank() && c.remarks == 0 {
			list = list[:len(list)-1]
		}
	}
	return list
}
