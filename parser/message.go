package parser

import "leafround/core/entry"

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
	from, to := r.trim(0, len(r.toks))
	if from >= to {
		out.Ignored = true
		return
	}
	for _, read := range wholeReaders {
		if o, ok := read(r, from, to); ok {
			settle(out, o)
			return
		}
	}
	settle(out, r.sentences(from, to))
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
	for to > from && idle(r.tok(to-1)) && r.tok(to-1).text != "*" {
		to--
	}
	return from, to
}

// sentences reads one sentence after the other and joins what they came to.
func (r *reader) sentences(from, to int) outcome {
	var all outcome
	var carry clause
	for i := from; i < to; {
		k := r.sentenceEnd(i, to)
		asked := r.tok(k).text == "?"
		if k > i {
			o := r.sentence(i, k, asked, &carry)
			join(&all, o)
		}
		i = k + 1
	}
	if len(all.entries) == 0 && all.question == nil && all.ask == nil {
		return r.leftover(&carry)
	}
	if carry.loose && all.ask == nil && len(all.entries) > 0 {
		all.ask = &entry.Ask{Reason: "I am not sure what “" + r.source(carry.from, carry.to) + "” belongs to. Please send it again in one line."}
	}
	return all
}

// join adds what a further sentence came to.
func join(all *outcome, o outcome) {
	all.entries = append(all.entries, o.entries...)
	if all.question == nil {
		all.question = o.question
	}
	if all.ask == nil {
		all.ask = o.ask
	}
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
			if r.tok(k+1).glued && r.tok(k+1).shape != mark && r.tok(k-1).tag == padMark {
				continue
			}
			return k
		}
	}
	return to
}

// sentence reads the statements of one sentence, or its question.
func (r *reader) sentence(from, to int, asked bool, carry *clause) outcome {
	from, to = r.trim(from, to)
	if from >= to {
		return outcome{talk: true}
	}
	if q, k, ok := r.question(from, to, asked); ok {
		if k <= from {
			return outcome{question: q}
		}
		o := r.statements(from, k, false, carry)
		if len(o.entries) > 0 || o.ask != nil {
			o.question = q
			return o
		}
		if all, _, ok := r.wholeQuestion(from, to, asked); ok {
			q = all
		}
		return outcome{question: q}
	}
	return r.statements(from, to, asked || r.opensQuestion(from), carry)
}

// statements reads the clauses of a sentence, merges them into statements and
// gives the meaning of each.
func (r *reader) statements(from, to int, asked bool, carry *clause) outcome {
	list := r.merge(r.clauses(from, to), carry)
	var all outcome
	for n := range list {
		st := &list[n]
		if asked {
			st.guard |= guardAsk
		}
		o := r.meaning(st)
		join(&all, o)
	}
	return all
}

// clauses cuts a sentence into clauses.
func (r *reader) clauses(from, to int) []clause {
	list := make([]clause, 0, 4)
	for i := from; i < to; {
		r.way, r.opening = roleNone, i
		for r.tok(r.opening).tag == filler && r.tok(r.opening).shape == word && !placeWords[r.tok(r.opening).text] {
			r.opening++
		}
		c := r.clause(i, to)
		i = max(c.to, i+1)
		if !c.blank() || c.remarks > 0 {
			list = append(list, c)
		}
	}
	return list
}
