package parser

import (
	"strings"

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
	settle(out, r.mendAsked(from, to, r.firstReport(from, to, r.firmCount(from, to, r.sentences(from, to)))))
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
		asked := r.tok(k).text == "?"
		a, b := r.trim(i, k)
		i = k + 1
		if a >= b {
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

// statements gives the meaning of each statement and joins them; where there is
// none, the question stands alone.
func (r *reader) statements(list []clause, all outcome, whole *entry.Question) outcome {
	list, head := r.merge(list)
	says := 0
	counted := false
	for n := range list {
		if list[n].says() {
			says++
		}
		counted = counted || list[n].count != nil
	}
	var notes []entry.Entry
	for n := range list {
		st := &list[n]
		if says > 0 && r.toldBelow(list, n) {
			continue
		}
		if says > 0 && r.notReached(st, counted) {
			continue
		}
		if says > 0 && !st.says() && len(st.pads) > 0 && !st.trouble && !st.event && len(st.mobs) == 0 {
			join(&all, outcome{ask: &entry.Ask{Reason: "What about " + st.pads[0].name + "? I cannot tell what that belongs to. Please send it apart."}})
			continue
		}
		if says > 0 && !st.says() && (st.days.ok || st.until != 0) && len(st.pads) == 0 && (st.guard&^guardFuture == 0 || st.guard&^(guardPlan|guardNeg) == 0 && r.owedThese(st)) {
			join(&all, outcome{ask: &entry.Ask{Reason: "Which day do you mean?"}})
			continue
		}
		if says > 0 && limitDropped(list, n) {
			join(&all, outcome{ask: &entry.Ask{Reason: "Until which day is it out of the round? Please send that with the paddock, such as: 12 sprayed, out until 5 Dec"}})
			continue
		}
		if says > 1 && r.dayDropped(list, st) {
			join(&all, outcome{ask: &entry.Ask{Reason: "Which day do you mean?"}})
			continue
		}
		o := r.meaning(st)
		if o.ask != nil && len(st.pads) == 1 && st.pads[0].known {
			o.ask.Paddock = st.pads[0].name
		}
		if (o.talk || onlyANote(o.entries)) && says > 1 && (st.count != nil || len(st.nums) > 0) {
			o = outcome{ask: &entry.Ask{Reason: "I understand only a part of that. Please send the scores again, without the rest."}}
		}
		switch {
		case !onlyANote(o.entries):
		case (st.trouble || st.event) && saysElsewhere(list, n):
			o.entries = []entry.Entry{r.ownNote(st, o.entries[0])}
		default:
			notes, o.entries = append(notes, o.entries...), nil
		}
		join(&all, o)
	}
	all.entries = tidy(all.entries)
	return r.close(all, notes, head, whole)
}

// dayDropped tells whether a sentence with a day tells of no stock and no
// paddock, so that nothing would come of it, while a count without a day stands
// beside it: "yesterday's, the battery went flat. 8: 2 2.25 2".
func (r *reader) dayDropped(list []clause, st *clause) bool {
	if !st.days.ok || st.family() != famGraze || st.guard != 0 || len(st.pads) > 0 || len(st.mobs) > 0 || st.head > 0 || st.stock || st.resid != nil {
		return false
	}
	for n := range list {
		if d := &list[n]; d.sentence > st.sentence && d.count != nil && !d.days.ok {
			return true
		}
	}
	return false
}

// owedThese tells whether a clause says that what follows should have come on
// another day: "should have sent these Sunday".
func (r *reader) owedThese(c *clause) bool {
	return c.days.ok && c.days.day != r.today && (r.hasText(c.from, c.to, "these") || r.hasText(c.from, c.to, "those"))
}

// saysElsewhere tells whether another sentence of the message states something.
func saysElsewhere(list []clause, n int) bool {
	for k := range list {
		if list[k].sentence != list[n].sentence && list[k].says() && list[k].guard == 0 {
			return true
		}
	}
	return false
}

// ownNote gives the note of a sentence beside other statements: that sentence
// alone, not the whole message.
func (r *reader) ownNote(c *clause, e entry.Entry) entry.Entry {
	n, ok := e.(entry.Note)
	if ok {
		n.Text = strings.TrimSpace(r.source(c.from, max(c.to, r.sentenceEnd(c.from, len(r.toks)))))
	}
	return n
}

// close settles what is left: a heading that nothing used, a note beside
// entries, a question beside nothing.
func (r *reader) close(all outcome, notes []entry.Entry, head heading, whole *entry.Question) outcome {
	r.ofWhatItSays(&all)
	r.ofWhoItSays(&all)
	if all.ask == nil && outBeforeIn(all.entries) {
		all.ask = &entry.Ask{Reason: "Which day do you mean? They cannot come out before they went in."}
	}
	if len(all.entries) == 0 && all.ask == nil {
		if whole != nil {
			all.question = whole
		}
		if all.question == nil && len(notes) > 0 {
			all.entries = notes[:1]
		}
		if all.question == nil && len(notes) == 0 && head.loose {
			return r.leftover(&head.clause)
		}
		return all
	}
	if head.loose && len(head.pads) > 0 && all.ask == nil {
		all.ask = &entry.Ask{Reason: "I am not sure what “" + r.source(head.from, head.to) + "” belongs to. Please send it again in one line."}
	}
	return all
}

// onlyANote tells whether nothing but a note came out of a statement.
func onlyANote(list []entry.Entry) bool {
	return len(list) == 1 && list[0].Kind() == entry.KindNote
}

// join adds what a further statement came to.
func join(all *outcome, o outcome) {
	all.entries = append(all.entries, o.entries...)
	if all.question == nil {
		all.question = o.question
	}
	if all.ask != nil && o.ask != nil && wentIn(all.ask) && wentIn(o.ask) && len(all.ask.Options[0].Entries) < mostOptions {
		all.ask.Options[0].Entries = append(all.ask.Options[0].Entries, o.ask.Options[0].Entries...)
		all.ask.Reason, all.ask.Options[0].Label = "Did they go in there?", "Yes: "+whoWhere(all.ask.Options[0].Entries)
	}
	if all.ask == nil {
		all.ask = o.ask
	}
}

// whoWhere names each herd with where it went.
func whoWhere(list []entry.Entry) string {
	var parts []string
	for _, e := range list {
		if g, ok := e.(entry.Graze); ok {
			parts = append(parts, g.Mob+" into "+g.Paddock)
		}
	}
	return strings.Join(parts, ", ")
}

// wentIn tells whether an ask is whether one herd went into a paddock.
func wentIn(a *entry.Ask) bool {
	return len(a.Options) == 1 && strings.HasPrefix(a.Reason, "Did they go in")
}

// sentenceEnd gives the token that ends the sentence from i.
func (r *reader) sentenceEnd(i, to int) int {
	for k := i; k < to; k++ {
		t := r.tok(k)
		switch {
		case t.shape == newline, t.text == "!" && t.shape == mark, t.text == "?":
			return k
		case t.text == ";":
			if !(r.isScore(k+1) && (r.tok(k-1).shape == number || r.tok(k-1).shape == part)) {
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
