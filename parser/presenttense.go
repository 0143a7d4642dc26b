package parser

// Many write of what is done in the simple present: "cows finish 3 yesterday
// evening", "cows go to paddock 4 already", "Steers finish in 8, now in 9". It
// is the past only where a day or a word beside it says so.

// pastForms gives the past of verbs that tell of stock.
var pastForms = map[string]string{`finish`: `finished`, `finishes`: `finished`, `go`: `went`, `goes`: `went`, `come`: `came`, `comes`: `came`, `move`: `moved`,
	`moves`: `moved`, `shift`: `shifted`, `eat`: `ate`, `eats`: `ate`, `graze`: `grazed`, `grazes`: `grazed`, `leave`: `left`, `leaves`: `left`,
	`bring`: `brought`, `brings`: `brought`}

// simplePast takes such verbs for their past, piece by piece of a sentence. A
// piece without a day of its own follows the one before: "finish 12 yesterday, go
// to 13".
func (r *reader) simplePast(from, to int) {
	for a := from; a < to; {
		b := r.sentenceEnd(a, to)
		if i := r.presentVerb(a, b); i < b && !r.planned(a, b) {
			r.pastIn(a, b, i)
		}
		a = b + 1
	}
}

// presentVerb gives the first such verb of a sentence, or its end.
func (r *reader) presentVerb(a, b int) int {
	for a < b && (r.tok(a).shape != word || pastForms[r.tok(a).text] == "") {
		a++
	}
	return a
}

// pastIn takes the verbs of one sentence, from the first, for their past.
func (r *reader) pastIn(a, b, first int) {
	subject, followed := r.subjectIn(a, first), false
	for i := first; i < b; i++ {
		t := r.tok(i)
		subject = subject || r.subjectIn(i, i+1)
		if t.shape != word || pastForms[t.text] == "" || !subject || t.text == "leaves" && !r.oneOf(i-1, "they", "mob", "herd") {
			continue
		}
		own, dayTold := r.pastTold(b, i, r.piece(i, a, b))
		if !own && (dayTold || !followed) {
			continue
		}
		m := lexicon[pastForms[t.text]]
		t.tag, t.sense = m.tag, m.value
		r.reword(t, pastForms[t.text])
		followed = true
	}
}

// piece gives the part of a sentence between commas and "and" that holds a token.
func (r *reader) piece(i, a, b int) [2]int {
	from, to := i, i
	for from > max(a, i-longestPiece) && !r.joins(from-1) {
		from--
	}
	for to < min(b, i+longestPiece) && !r.joins(to) {
		to++
	}
	return [2]int{from, to}
}

// planned tells whether a sentence asks, plans, denies or sets a condition.
func (r *reader) planned(a, b int) bool {
	if r.tok(b).text == "?" {
		return true
	}
	verb := r.presentVerb(a, b)
	for i := a; i < b; i++ {
		t := r.tok(i)
		if t.shape == mark && t.text == "," && i > verb && r.oneOf(i+1, "before", "already") && r.oneOf(i+2, "was", "no", "not", "is", "were") {
			return false // "I move from 3 to 4 this morning, before was already no grass there"
		}
		if t.shape != word {
			continue
		}
		switch t.tag {
		case planWord, condWord, wishWord, hearWord, whWord, auxWord, negWord, notWord, nextWord, tomorrowWord, tonightWord, courtesy:
			return true
		}
		if r.oneOf(i, "to") && pastForms[r.tok(i+1).text] != "" || r.oneOf(i, "can", "let", "lets", "did", "do", "does", "every", "always", "usually") {
			return true
		}
	}
	return false
}

// pastTold tells whether the piece of a verb, or for "finish" what comes behind
// it, says that what the verb tells is done: a day past, "already", or where the
// stock are now; and whether a day is told in it at all.
func (r *reader) pastTold(b, verb int, piece [2]int) (past, day bool) {
	for i := piece[0]; i < piece[1]; i++ {
		t := r.tok(i)
		day = day || t.shape == word && t.tag >= todayWord && t.tag <= weekdayWord
		past = past || r.goneToday(i, piece) && !r.oneOf(verb+1, "round", "around", "through", "over") || t.shape == word && (t.tag == yesterdayWord || r.oneOf(i, "already") || t.tag == lastWord && r.tok(i+1).tag == nightWord)
	}
	if past || !r.oneOf(verb, "finish", "finishes") {
		return past, day
	}
	for i := verb + 1; i < min(b, verb+longestPiece); i++ {
		n := r.tok(i + 1)
		if r.oneOf(i, "now") && (n.tag == inWord || n.tag == onWord) || r.oneOf(i, "put", "moved", "shifted") && r.oneOf(i-1, "i", "we") {
			return true, day
		}
	}
	return r.oneOf(verb-1, "is", "are", "has", "have") || r.oneOf(b+1, "now") && r.oneOf(b+2, "they", "theyre", "in", "on"), day
}

// subjectIn tells whether somebody, stock or a paddock's "is" stands in a run of
// tokens, so that a verb behind it is no order.
func (r *reader) subjectIn(a, b int) bool {
	for k := a; k < b; k++ {
		if _, j := r.mob(k); j > k || r.oneOf(k, "i", "we", "they", "is", "are", "it") {
			return true
		}
	}
	return false
}

// longestPiece is how far a day may stand from its verb (ours).
const longestPiece = 16

// goneToday tells whether a time of today is told that has gone by, however it
// is read: "this morning" in the afternoon, "at three o'clock" at nine at night.
func (r *reader) goneToday(i int, piece [2]int) bool {
	t := r.tok(i)
	if t.tag == thisWord && t.shape == word {
		return r.oneOf(i+1, "morning", "mornin", "morn", "am") && r.hour >= 12
	}
	if t.tag != atWord || t.shape != word || !r.hasTag(piece[0], piece[1], todayWord) {
		return false // "heifers go to 12 at 3" may be an order
	}
	k, ok := r.clock(i)
	if !ok || r.tok(i+1).tag == clockWord {
		return false
	}
	n, next := r.whole(i + 1)
	if next == i+1 || n < 1 || n > 12 {
		return false
	}
	switch r.tok(k - 1).text {
	case "am":
		return n%12 < r.hour
	default:
		return n%12+12 < r.hour
	}
}
