package parser

import "leafround/core/entry"

// lostCount asks about scores that stand behind a paddock's name and its talk
// where nothing was understood: "counted 22 with the dog in tow 2 1.5 2 2.5 2".
// A count is never passed over for the words between.
//
//	lost = [ word ] place { word } score score score { score }
func (r *reader) lostCount(from, to int, o outcome) outcome {
	if o.ask != nil || o.question != nil || len(o.entries) > 0 && !onlyANote(o.entries) || len(o.entries) > 0 && alarmIn(o.entries) {
		return o
	}
	for i := from; i < to; {
		end := r.sentenceEnd(i, to)
		if p, ok := r.padFirst(i, end); ok && r.tok(end).text != "?" && r.runOfScores(p.next, end) {
			return outcome{ask: &entry.Ask{Reason: "Are those leaf counts of " + p.name + "? Please send the paddock and its scores without the words between."}}
		}
		i = end + 1
	}
	return o
}

// padFirst gives the paddock that a sentence begins with, a word before it or none.
func (r *reader) padFirst(from, to int) (place, bool) {
	for i := from; i < min(from+2, to); i++ {
		if p, ok := r.onePad(i, false); ok && p.known && !r.anyPaddock {
			return p, true
		}
	}
	return place{}, false
}

// runOfScores tells whether three scores stand side by side, one of them no
// whole number: times, sums of money and telephone numbers are other lists.
func (r *reader) runOfScores(from, to int) bool {
	n, parts := 0, 0
	for i := from; i < to; i++ {
		t := r.tok(i)
		switch {
		case (t.shape == number || t.shape == part) && !t.glued && t.value <= 5:
			n++
			if t.decimal || t.shape == part {
				parts++
			}
			if n >= 3 && parts > 0 {
				return true
			}
		case t.shape == mark && (t.text == "," || t.text == ";"):
		default:
			n, parts = 0, 0
		}
	}
	return false
}
