package parser

// greeted gives the first token behind a greeting, or words that only announce that a
// message follows: "morning all, 12 grazed", "ok so should be 13", "quick one - …",
// "Pat here, …".
//
//	greeting = ( "morning" | "evening" | … ) [ "all" | "team" | … ] mark | "fyi" | "ok" "so" | "quick" "one" mark | … | name "here" mark
func (r *reader) greeted(from, to int) int {
	for range 3 {
		k := r.greeting(from, to)
		if k == from || k >= to {
			return from
		}
		from, _ = r.trim(k, to)
	}
	return from
}

// greeting gives what is behind one such turn, or i where there is none.
func (r *reader) greeting(i, to int) int {
	t := r.tok(i)
	if t.shape != word {
		return i
	}
	marked := func(k int) bool {
		m := r.tok(k)
		return k < to && (m.shape == newline || m.shape == mark && (m.text == "," || m.text == "." || m.text == "!" || m.text == "-" && !r.negative(k)))
	}
	named := i
	for addressees[r.tok(named).text] {
		named++
	}
	if k := r.over(i, "good", "top", "of", "the"); r.oneOf(k, "morning", "mornin", "evening", "afternoon", "arvo", "day") {
		j := k + 1
		for addressees[r.tok(j).text] {
			j++
		}
		if marked(j) && (k > i || j > k+1 || r.tok(j).text == ",") {
			return j + 1
		}
		return i
	}
	lead := r.oneOf(i, "ok", "okay", "right", "righto", "alright", "well", "now", "so")
	switch {
	case r.oneOf(i, "fyi", "btw", "psa"):
		return r.over(i+1, ",", "-", ":")
	case lead && r.oneOf(i+1, "so"), lead && r.oneOf(i+1, "then", "well", "now") && marked(i+2):
		return r.over(i+2, ",", "-")
	case lead && r.tok(i+1).text == ",", r.oneOf(i, "update") && r.tok(i+1).text == ":":
		return i + 2
	case lead && addressees[r.tok(i+1).text] && marked(i+2), r.oneOf(i, "hey", "hi", "hello", "yo", "gday") && addressees[r.tok(i+1).text] && marked(i+2):
		return i + 3
	case named > i && marked(named):
		return named + 1
	case r.oneOf(i, "quick") && r.oneOf(i+1, "one", "update", "note", "heads", "message", "msg"), r.oneOf(i, "heads") && r.oneOf(i+1, "up"), r.oneOf(i, "just") && r.oneOf(i+1, "a") && r.oneOf(i+2, "quick"):
		j := r.over(i+1, "a", "quick", "one", "update", "note", "heads", "up", "message", "msg", "for", "you", "all", "everyone")
		if marked(j) || r.tok(j).text == ":" && j < to {
			return j + 1
		}
	case r.oneOf(i+1, "here") && marked(i+2) && t.tag == unknown && r.capital(i):
		if _, ok := r.longest(i); !ok {
			return i + 3
		}
	}
	return i
}

// addressees are who a message is for, in a greeting.
var addressees = wordSet(`all team everyone lads guys folks boss there mate to you crew gang people yall again girls ladies`)

// apologyIn tells whether the sender says sorry between two tokens.
func (r *reader) apologyIn(from, to int) bool {
	for i := from; i < to; i++ {
		if t := r.tok(i); t.shape == word && apologies[t.text] || t.text == "*" {
			return true
		}
	}
	return false
}
