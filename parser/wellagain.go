package parser

// An illness that is over is no alarm any more, and no grazing either: it is noted.

// wellAgain tells whether animals were ill in a run of tokens that says that it is over:
// "heifer was bloated in 12, fine now". An alarm has been looked for before.
func (r *reader) wellAgain(from, to int) bool {
	if !r.recovered(from, to) && !(r.longAgo(from, to) && r.namesPadIn(from, to)) {
		return false
	}
	for a := from; a < to; {
		b := r.partEnd(a, to)
		if ill, _ := r.illIn(a, b); ill || r.signs(a, b, true) {
			return true
		}
		a = b + 1
	}
	return false
}

// isOver tells whether a sentence says that an illness is over, or years ago.
func (r *reader) isOver(from, to int) bool { return r.recovered(from, to) || r.longAgo(from, to) }

// recovered reads "fine now", "got up again", "came right".
func (r *reader) recovered(from, to int) bool {
	for i := from; i < to; i++ {
		switch {
		case r.oneOf(i, "recovered", "cured"),
			r.oneOf(i, "better", "fine", "grand", "ok", "okay", "good") && r.oneOf(i+1, "now", "again") && !r.stillIll(from, i),
			r.oneOf(i, "right") && r.oneOf(i+1, "again") && !r.stillIll(from, i),
			r.oneOf(i, "all") && r.oneOf(i+1, "right") && r.oneOf(i+2, "now", "again"),
			r.oneOf(i, "up") && r.oneOf(i+1, "again", "now") && (r.oneOf(i-1, "is", "shes", "back", "now", "got", "are") || r.tok(i-1).shape == mark),
			r.oneOf(i, "up") && r.oneOf(i+1, "and") && r.oneOf(i+2, "about", "around", "eating", "walking", "grazing", "away", "running"),
			r.oneOf(i, "came", "come") && r.oneOf(i+1, "right") && !r.oneOf(i+2, "away", "now", "over", "down", "up", "here", "in", "out", "quick", "to", "back"):
			return true
		}
	}
	return false
}

// stillIll tells whether what would be a recovery is denied or was one for a time:
// "doesnt look right again", "was ok now shes not".
func (r *reader) stillIll(from, i int) bool {
	for k := max(from, i-3); k < i; k++ {
		if t := r.tok(k); t.tag == notWord || t.tag == negWord || r.oneOf(k, "was", "were", "doesnt", "dont", "didnt", "wont", "isnt", "arent", "not", "never", "if", "hope", "hopefully") {
			return true
		}
	}
	return false
}

// longAgo reads "last season" and "two years ago".
func (r *reader) longAgo(from, to int) bool {
	for i := from; i < to; i++ {
		if r.oneOf(i, "last") && r.oneOf(i+1, "year", "season", "spring", "autumn", "winter", "summer", "month", "week") && !r.oneOf(i-1, "since", "from") ||
			r.oneOf(i, "years", "ages", "months") && r.oneOf(i+1, "ago") {
			return true
		}
	}
	return false
}
