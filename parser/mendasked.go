package parser

import "leafround/core/entry"

// mendAsked asks what a message mends that plainly mends something, where it
// does not tell what: "oops wrong paddock", "that 3 should be 2".
func (r *reader) mendAsked(from, to int, o outcome) outcome {
	if r.retry || o.ask != nil || o.question != nil || len(o.entries) > 0 || to-from > 14 || r.hasText(from, to, "?") {
		return o
	}
	why, listed := "", r.scoresEnd(from, to) > from
	for i := from; i < to && why == ""; i++ {
		switch {
		case r.oneOf(i, "wrong"):
			switch k := r.over(i+1, "bloody", "damn", "the"); {
			case r.oneOf(k, "paddock", "pdk", "field", "number"):
				why = "Which paddock should it be? Please send it such as: should be 13"
			case r.oneOf(k, "day", "date"):
				why = "Which day should it be? Please send it such as: should be the 18th"
			case r.oneOf(k, "mob", "herd"):
				why = "Which mob should it be? Please send it such as: it was the heifers"
			case r.oneOf(k, "score", "scores", "figures", "numbers"):
				why = "Which scores should stand? Please send them such as: make it 2.5 2 2"
			}
		case !listed && (r.oneOf(i, "should") && r.oneOf(i+1, "be", "read", "say") || r.oneOf(i, "should") && r.oneOf(i+1, "have") && r.oneOf(i+2, "been", "read", "said") ||
			r.oneOf(i, "shouldve") && r.oneOf(i+1, "been", "read", "said") || r.oneOf(i, "was", "is") && r.oneOf(i+1, "actually")) && r.mendable(from, i) && r.mendable(i+2, min(i+4, to)):
			why = "What shall I mend? Please send it such as: 13 not 12, or: make it 2.5 2 2"
		case r.oneOf(i, "not") && i > from && i+1 < to && (r.oneOf(from, "sorry", "oops", "actually") || from > 0 || r.oneOf(i-1, ",")) && r.mobAt(r.over(i+1, "the")) && r.mendable(from, i):
			why = "What shall I mend? Please send it such as: heifers not milkers"
		}
	}
	if why == "" {
		return o
	}
	return outcome{ask: &entry.Ask{Reason: why}}
}

// mendable tells whether a number, a paddock, a mob or a day stands in a run of
// tokens: something that an entry may hold.
func (r *reader) mendable(from, to int) bool {
	for i := from; i < to; i++ {
		if t := r.tok(i); t.shape == number || t.tag == weekdayWord || t.tag == yesterdayWord || t.tag == todayWord || r.mobAt(i) {
			return true
		}
		if p, ok := r.longest(i); ok && p.known {
			return true
		}
	}
	return false
}

// mobAt tells whether a mob is named at a token.
func (r *reader) mobAt(i int) bool {
	_, k := r.mob(i)
	return k > i
}

// wrongToldOf meets a message that says no more than that something logged is
// wrong, or which of its scores: what shall be done is not told, so it asks.
//
//	wrongTold = "that" "was" "wrong" | "sent" "by" "mistake" | … | [ "the" ] ordinal ( "one" | "score" | "count" | … ) ( "was" | "should" ) { word } number
func (r *reader) wrongToldOf(i, to int) (outcome, bool) {
	for _, w := range wrongTold {
		k, ok := r.run(i, w...)
		for ok && k < to && (r.tok(k).shape == mark || r.tok(k).tag == courtesy || undoTails[r.tok(k).text]) {
			k++
		}
		if ok && k >= to && !r.asks(i, to) {
			return outcome{ask: &entry.Ask{Reason: "Shall I take back your latest entry?",
				Options: []entry.Option{{Label: "Yes, take it back", Entries: []entry.Entry{entry.Undo{}}}}}}, true
		}
	}
	k := r.over(i, "the", "my")
	if !r.oneOf(k, "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "last", "1st", "2nd", "3rd", "4th") || !r.oneOf(k+1, "one", "score", "tiller", "count", "number") ||
		!r.oneOf(k+2, "was", "should", "shouldve", "is") || r.asks(i, to) {
		return outcome{}, false
	}
	j := r.over(k+2, "was", "should", "shouldve", "is", "be", "been", "have", "read", "say", "said", "actually", "a")
	a, ok := r.value(j)
	if !ok || a.value > 5 || !(r.oneOf(k+2, "should", "shouldve") || r.oneOf(r.over(a.next, ","), "not")) {
		return outcome{}, false
	}
	end := a.next
	if n := r.over(end, ","); r.oneOf(n, "not") {
		if b, ok := r.value(r.over(n+1, "a")); ok {
			end = b.next
		}
	}
	if end < to {
		return outcome{}, false
	}
	return outcome{ask: &entry.Ask{Reason: "Which scores should stand? Please send all of them, such as: make it 2.5 2 2"}}, true
}

// asks tells whether a question mark stands in a run of tokens.
func (r *reader) asks(from, to int) bool { return r.hasText(from, to+1, "?") }

// wrongTold says that something is wrong, and no more.
var wrongTold = [][]string{
	{"that", "was", "wrong"}, {"thats", "wrong"}, {"that", "is", "wrong"}, {"thats", "not", "right"}, {"that", "was", "a", "mistake"}, {"thats", "a", "mistake"},
	{"sent", "by", "mistake"}, {"sent", "in", "error"}, {"sent", "that", "by", "mistake"}, {"didnt", "mean", "to", "send", "that"}, {"i", "didnt", "mean", "to", "send", "that"},
	{"disregard"}, {"disregard", "the", "above"}, {"ignore", "the", "above"}, {"wipe", "that"}, {"that", "was", "not", "right"}, {"that", "wasnt", "right"},
}
