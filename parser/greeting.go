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

func (r *reader) greeting(i, to int) int {
	t := r.tok(i)
	if t.shape != word {
		return i
	}
	marked := func(k int) bool {
		m := r.tok(k)
		return k < to && (m.shape == newline || m.shape == mark && (m.text == "," || m.text == "." || m.text == "!" || m.text == ":" || m.text == "-" && !r.negative(k)))
	}
	k := r.over(i, "good", "top", "of", "the")
	if r.oneOf(k, "morning", "mornin", "evening", "afternoon", "arvo", "day") {
		if j := r.over(k+1, "all", "team", "everyone", "lads", "guys", "folks", "boss", "there", "mate", "to", "you", "crew", "gang", "people", "yall", "again", "girls", "ladies"); marked(j) && (k > i || j > k+1 || r.tok(j).text == ",") && r.tok(j).text != ":" {
			return j + 1
		}
		return i
	}
	switch {
	case r.oneOf(i, "fyi", "btw", "psa"):
		return r.over(i+1, ",", "-", ":")
	case r.oneOf(i, "ok", "okay", "right", "righto", "alright", "well", "now") && r.oneOf(i+1, "so", "then", "well", "now", "folks", "team", "lads", "all", "everyone") && (r.oneOf(i+1, "so") || marked(i+2)):
		return r.over(i+2, ",", "-")
	case r.oneOf(i, "right", "ok", "okay", "righto", "alright", "well", "so") && r.tok(i+1).text == ",":
		return i + 2
	case r.oneOf(i, "update") && r.tok(i+1).text == ":":
		return i + 2
	case r.oneOf(i, "quick") && r.oneOf(i+1, "one", "update", "note", "heads", "message", "msg"), r.oneOf(i, "heads") && r.oneOf(i+1, "up"), r.oneOf(i, "just") && r.oneOf(i+1, "a") && r.oneOf(i+2, "quick"):
		j := r.over(i+1, "a", "quick", "one", "update", "note", "heads", "up", "message", "msg", "for", "you", "all", "everyone")
		if marked(j) {
			return j + 1
		}
	case r.oneOf(i, "hey", "hi", "hello", "yo", "gday", "all", "team", "lads") && r.oneOf(i+1, "team", "all", "everyone", "lads", "guys", "folks", "boss", "there", "mate", "crew", "gang") && marked(i+2) && r.tok(i+2).text != ":":
		return i + 3
	case r.oneOf(i, "team", "lads", "everyone", "guys", "folks", "boss") && marked(i+1) && r.tok(i+1).text != ":":
		return i + 2
	case r.oneOf(i+1, "here") && marked(i+2) && r.tok(i+2).text != ":" && t.tag == unknown && capital(r.source(i, i+1)):
		if _, ok := r.longest(i); !ok {
			return i + 3
		}
	}
	return i
}

// capital tells whether a word begins with a capital letter.
func capital(s string) bool { return s != "" && s[0] >= 'A' && s[0] <= 'Z' }

// apologyIn tells whether the sender says sorry between two tokens.
func (r *reader) apologyIn(from, to int) bool {
	for i := from; i < to; i++ {
		if t := r.tok(i); t.shape == word && apologies[t.text] || t.text == "*" {
			return true
		}
	}
	return false
}
