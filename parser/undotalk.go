package parser

import "leafround/core/entry"

// Who takes a message back says why before it, and what comes in its place
// behind it: "sorry, I sent that one too early, can you delete it and I will do
// it again after lunch".

// sentWrong steps over words that the sender's own message was sent wrongly, up
// to where it is taken back.
//
//	sentWrong = { word } ( "early" | "soon" | "wrong" | "mistake" | … ) { word } [ "," | "and" | "so" ] undo
func (r *reader) sentWrong(from, to int) int {
	own, wrong := false, false
	for i := from; i < min(to, from+longestWhy); i++ {
		t := r.tok(i)
		if t.shape != word {
			if t.shape != mark || t.text == "?" {
				return from
			}
			continue
		}
		if own && wrong && (r.joins(i-1) || r.oneOf(i-1, "so", ".")) {
			if is, _ := r.undo(i); is {
				return i
			}
		}
		if _, k := r.mob(i); k > i || t.tag == numberWord && !r.oneOf(i, "one") || r.padAhead(i) {
			return from
		}
		own = own || saidWords[t.text] && r.oneOf(i-1, "i", "ive", "just", "sorry") || r.oneOf(i, "last") && r.oneOf(i+1, "one", "message", "msg", "text", "entry", "count")
		own = own || r.oneOf(i, "sent") && r.oneOf(i+1, "that", "it", "this")
		wrong = wrong || r.oneOf(i, "early", "soon", "wrong", "mistake", "rubbish", "nonsense", "accident", "incorrect")
	}
	return from
}

// longestWhy is how many tokens a reason before an undo can have (ours).
const longestWhy = 30

// willRedo tells whether nothing but the sender's word that it comes anew
// stands behind an undo: "and i will go back down and do it again".
//
//	willRedo = [ "," | "and" ] [ "i" | "we" ] ( "will" | "ill" ) { word } ( "do" | "send" | "count" | … ) { word }
func (r *reader) willRedo(i, to int) bool {
	k := r.over(i, ",", "-", ".", "and", "so", "please", "i", "we", "then")
	if k == i || !r.oneOf(k, "will", "ill", "gonna", "shall") {
		return false
	}
	end, ok := r.onlyTalk(k)
	if !ok || end < to {
		return false
	}
	for ; k < end; k++ {
		if r.oneOf(k, "do", "redo", "send", "resend", "count", "recount", "try", "text", "start", "fix", "type") {
			return true
		}
	}
	return false
}

// undoAndWhat asks what is meant where an undo is followed by words of paddocks or
// stock that tell nothing to log: "scrap that, heifers not in 13 yet".
func (r *reader) undoAndWhat(i, to int) (outcome, bool) {
	for k := i; k < to; k++ {
		if _, j := r.mob(k); (j > k || r.padAhead(k)) && (r.hasTag(i, to, negWord) || r.hasTag(i, to, notWord)) {
			return outcome{ask: &entry.Ask{Reason: "Shall I take back your latest entry?", Options: []entry.Option{{Label: "Yes, take it back", Entries: []entry.Entry{entry.Undo{}}}}}}, true
		}
	}
	return outcome{}, false
}
