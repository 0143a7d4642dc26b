package parser

// How far somebody has come on the walk is told in numbers that are no scores: "12 2 2 2,
// one down five to go", "2 more to do", "1 of 6 done".

// progress steps over it; it gives i where there is none.
//
//	progress = whole ( "down" | "done" | … ) [ "," | "and" ] [ "only" | "just" | "still" ] ahead
//	         | whole ( "of" | "out" "of" | "/" ) whole ( "done" | "down" | … )
//	         | ahead
//	ahead    = whole [ "more" | "left" | "still" ] [ "paddocks" ] "to" ( "go" | "do" | … ) | whole "more" "paddocks" | whole "left" "to" "go"
func (r *reader) progress(i int) int {
	if !r.wholeTold(i) {
		return i
	}
	switch n := r.tok(i + 1); n.text {
	case "down", "done", "counted", "walked", "finished":
		k := i + 2
		if r.tok(k).text == "," || r.oneOf(k, "and") {
			k++
		}
		k = r.over(k, "only", "just", "still", "another")
		if at := r.walkAhead(k); at > k {
			return at
		}
		if r.wholeTold(k) && r.oneOf(k+1, "left", "more") && r.endsPiece(k+2) {
			return k + 2
		}
	case "of", "/", "out":
		k := r.over(i+2, "of", "the")
		if r.wholeTold(k) && r.oneOf(k+1, "done", "down", "walked", "counted", "finished") && r.tok(i).value <= r.tok(k).value && r.endsPiece(k+2) {
			return k + 2
		}
	}
	return r.walkAhead(i)
}

// walkAhead steps over how many paddocks are still to be walked.
func (r *reader) walkAhead(i int) int {
	if !r.wholeTold(i) {
		return i
	}
	k := r.over(i+1, "more", "left", "still")
	if r.oneOf(k, "paddocks", "paddock", "pdks", "pdk", "fields", "others") {
		k++
		if k > i+2 && r.endsPiece(k) {
			return k
		}
	}
	if r.tok(k).tag == toWord && r.oneOf(k+1, "go", "do", "count", "walk", "come") {
		k = r.over(k+2, "yet", "still", "now")
		if r.endsPiece(k) {
			return k
		}
	}
	return i
}

// wholeTold tells whether a token is a whole number.
func (r *reader) wholeTold(i int) bool {
	t := r.tok(i)
	return t.shape == number && !t.decimal || t.tag == numberWord || r.oneOf(i, "couple", "few")
}

// progressPart takes such talk behind a report, or before one in two halves, for what
// it is. "12 to go" by itself may be a plan.
func (r *reader) progressPart(c *clause, i int) int {
	k := r.progress(i)
	if k == i || !c.says() && r.tok(i-1).text != "," && !r.oneOf(i+1, "down", "done", "of") {
		return i
	}
	c.remarks++
	return k
}
