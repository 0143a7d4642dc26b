package parser

// column joins scores that were sent one a line, the first of them behind a
// paddock or below it: "p7 2", "2.5", "2". Two lines or more of one number
// each, some of them with a point, are no paddocks. What stands above them may
// be a sentence, and other lines may follow.
func (r *reader) column(from, to int) {
	lines, points := 0, false
	if r.oneOf(from, "paddocks", "fields", "add", "set", "new") {
		return // a register
	}
	for i := from; i < to; i++ {
		switch t := r.tok(i); {
		case t.shape == newline:
			lines++
		case t.tag == rainWord || t.tag == gaugeWord || t.tag == tempWord || t.tag == residWord:
			return
		case lines > 0 && r.aloneInLine(i, to):
			points = points || t.decimal
		}
	}
	if lines < 2 || !points {
		return
	}
	for i := from; i < to; i++ {
		if !r.aloneInLine(i, to) || i == from {
			continue
		}
		k := i // the last of them
		for r.aloneInLine(k+2, to) && r.tok(k+1).shape == newline {
			k += 2
		}
		if r.under(from, i-1, k > i) {
			for j := i + 1; j < k; j += 2 {
				r.comma(j)
			}
		}
		i = k
	}
}

// aloneInLine tells whether a token is a number of 5 or less that is all of its
// line.
func (r *reader) aloneInLine(i, to int) bool {
	t := r.tok(i)
	return i < to && t.shape == number && t.value <= 5 && (i == 0 || r.tok(i-1).shape == newline) && (i+1 == to || r.tok(i+1).shape == newline)
}

// under ties a column of scores to the line above it, which ends at the line
// break i, and tells whether they are a column. Many tells that there are two
// lines or more.
func (r *reader) under(from, i int, many bool) bool {
	a := i
	for a > from && r.tok(a-1).shape != newline {
		a--
	}
	head, named := r.onePad(a, false)
	switch {
	case named && head.next == i && (r.tok(a).shape == word || r.tok(a).value > 4):
		if !many {
			return false
		}
		r.remake(r.tok(i), mark, ":")
	case i-a > 1 && r.isScore(i-1) && r.tok(i-1).value <= 5 && !r.marksPad(i-2):
		if a == from && !many {
			return false
		}
		r.comma(i)
	default:
		return many && i-a > 1
	}
	return true
}

// marksPad tells whether a token makes the number behind it a paddock's.
func (r *reader) marksPad(i int) bool {
	return r.tok(i).tag == padMark || r.tok(i).text == "#"
}

// comma makes a token a comma.
func (r *reader) comma(i int) { r.remake(r.tok(i), mark, ",") }
