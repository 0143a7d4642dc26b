package parser

import (
	"strings"

	"leafround/core/entry"
)

// firmCount sees to it that a list of scores behind its paddock, which opens a
// message, is not lost to what is said behind it: "12 2.5 2.5 2.5 looks good to
// go", "12 2.5 2.5 2.5 next?". What follows is read by itself, with the paddock
// where it names none; a plan or talk is dropped, a question answered beside it.
// What could doubt the scores leaves the message as it was read.
//
//	message = paddock scores rest
func (r *reader) firmCount(from, to int, o outcome) outcome {
	if r.retry || to-from > longTalk || len(r.text) > longestTry || o.question != nil && len(o.entries) > 0 || countIn(o.entries) || alarmIn(o.entries) {
		return o
	}
	k := r.scoresEnd(from, to)
	if k <= from || k >= to {
		return o
	}
	rest := r.over(k, ",", ".", "-", "and", "but", "so")
	if rest >= to || r.doubts(k, to) {
		return o
	}
	c := r.Context
	c.Recent = ""
	got := r.readAgain(r.source(from, k), c)
	if !plainly(got) || len(got.Entries) != 1 || !countIn(got.Entries) {
		return o
	}
	name := got.Entries[0].(entry.Count).Paddock
	behind := r.readAgain(r.text[r.toks[rest].start:], c)
	switch {
	case behind.Question != nil:
		return outcome{entries: got.Entries, question: behind.Question}
	case plainly(behind):
		return outcome{entries: append(got.Entries, behind.Entries...), question: behind.Also}
	case behind.Ask != nil && !strings.HasPrefix(behind.Ask.Reason, notYet) && r.namesPad(rest):
		return o
	}
	if !r.namesPad(rest) {
		switch of := r.readAgain("paddock "+name+" "+r.text[r.toks[rest].start:], c); {
		case plainly(of):
			return outcome{entries: append(got.Entries, of.Entries...), question: of.Also}
		case of.Ask != nil && !strings.HasPrefix(of.Ask.Reason, notYet):
			return o
		}
	}
	return outcome{entries: got.Entries}
}

// scoresEnd gives the token behind a firm list of scores that follows a paddock
// at a token: three or more, or two with a point among them.
func (r *reader) scoresEnd(i, to int) int {
	was := r.opening
	r.opening = i
	defer func() { r.opening = was }()
	p, ok := r.onePad(i, false)
	if !ok || !p.known || r.listedPads(p, i) {
		return i
	}
	t, k := r.lookAtScores(r.intro(p.next))
	if t.doubt != "" || len(t.said) < 3 && (len(t.said) < 2 || !t.decimal) || k > to || r.tok(k).shape == number || r.tok(k).shape == part || r.tok(k).text == "?" {
		return i
	}
	return k
}

// doubts tells whether a word behind scores may doubt, mend or deny them.
func (r *reader) doubts(from, to int) bool {
	if at := r.over(from, ","); r.unitAhead(from) || r.when(at).ok || r.oneOf(at, "on", "for") && r.when(at+1).ok {
		return true
	}
	for i := from; i < to; i++ {
		t := r.tok(i)
		if t.tag == lastWord && r.tok(i+1).shape == word && (r.tok(i+1).tag == weekUnit || r.tok(i+1).tag == monthUnit || times[r.tok(i+1).text]) || t.tag == agoWord && t.shape == word {
			return true
		}
		if t.shape == number && !(r.tok(i+1).tag == hourUnit || r.tok(i-1).tag == atWord) && !r.bears(t.text) || t.shape == part || t.shape == broken {
			return true
		}
		if t.shape == word && (t.tag == hearWord || t.tag == wishWord || t.tag == jokeWord || t.tag == condWord || t.tag == yellowWord || t.tag == reproWord || t.tag == daughterWord || t.tag == remnantWord ||
			t.tag == butWord && i == from || t.tag == hedgeWord || t.tag == averageWord || t.tag == tillerUnit || takesBack[t.text] && t.text != "yet" || len(t.text) == 1 && t.tag == unknown) {
			return true
		}
		if r.oneOf(i, "or") && r.padAhead(i+1) {
			return true // "or 13?"
		}
		if d, _, ok := r.idiomAt(i); ok && d.guard&(guardHear|guardWish|guardJoke) != 0 {
			return true
		}
	}
	return false
}

// countIn tells whether a count is among some entries.
func countIn(list []entry.Entry) bool {
	for _, e := range list {
		if e.Kind() == entry.KindCount {
			return true
		}
	}
	return false
}

// alarmIn tells whether an alarm is among some entries.
func alarmIn(list []entry.Entry) bool {
	for _, e := range list {
		if n, ok := e.(entry.Note); ok && n.Alarm != "" {
			return true
		}
	}
	return false
}
