package parser

// pairs sees a walk told as pairs of a paddock's number and its average behind
// a heading that says so, parted by commas or one a line: "walked it fri: 5
// 2.25, 6 2, 7 1.5". Each pair becomes a line of its own, and its number is
// plainly a paddock's, a small one too.
//
//	walk = heading ( ":" | "-" | newline ) pair ( "," | ";" | newline ) pair { ( "," | ";" | newline ) pair }
//	pair = whole value [ leaf-unit ]
func (r *reader) pairs(from, to int) {
	walk, tries := false, 0
	for k := from; k < to; k++ {
		t := r.tok(k)
		switch {
		case t.shape == word:
			if t.tag == planWord && !(t.text == "may" && (r.tok(k-1).shape == number || r.tok(k+1).shape == number)) || t.tag == tomorrowWord || t.tag == haUnit || t.tag == acreUnit || t.tag == whWord {
				return
			}
			walk = walk || t.tag == averageWord || walkWords[t.text]
			continue
		case t.text != ":" && t.text != "-" && t.shape != newline || !walk || r.tok(k+1).shape != number:
			continue
		}
		if end, ok := r.pairsFrom(k+1, to); ok {
			if t.text == "-" {
				r.remake(t, mark, ":")
			}
			r.splitPairs(k+1, end)
			return
		}
		if tries++; tries == 3 {
			return
		}
	}
}

// walkWords in a heading tell that what follows was counted.
var walkWords = wordSet(`walk walked walking count counts counted counting leaf leaves score scores scored`)

// pairsFrom tells whether nothing but such pairs stands in a run of tokens: of
// paddocks that differ, some average with a point, and some paddock whose number
// is too high for a score. Where nothing parts the pairs, each paddock's is:
// "14 2.25 15 2 16 1.75".
// Behind two of them something else may follow: it is given where.
func (r *reader) pairsFrom(i, to int) (end int, ok bool) {
	n, points, high, low, apart := 0, false, false, false, true
	start := i
	for i < to {
		t := r.tok(i)
		a, value := r.value(i + 1)
		switch {
		case t.shape == number && !t.decimal && (r.bears(t.text) || r.anyPaddock) && t.value <= 999 && n <= mostPads && value && r.isScore(i+1) && a.value <= 5 && !r.pairedBefore(start, i):
		case n > 1 && apart && (r.tok(i-1).shape == newline || r.tok(i-1).shape == mark):
			to = i // the next is none
			continue
		default:
			return i, r.unpair(start, to)
		}
		t.pair = true
		n, points, high, low = n+1, points || a.decimal, high || t.value > 4, low || t.value <= 5
		i = a.next
		for r.tok(i).tag == leafUnit && r.tok(i).shape == word {
			i++
		}
		if i >= to {
			break
		}
		s := r.tok(i)
		if n > 1 && apart && r.partsPairs(i) {
			to = i + 1
			break
		}
		if s.text != "," && s.text != ";" && s.shape != newline {
			if apart = false; s.shape != number || s.glued {
				return i, r.unpair(start, to)
			}
		}
		for r.tok(i).text == "," || r.tok(i).text == ";" || r.tok(i).shape == newline {
			i++
		}
	}
	if !points || !high || n < 2 || !apart && (low || n < 3) {
		return to, r.unpair(start, to)
	}
	return to, true
}

// pairedBefore tells whether the paddock at i has a pair before it.
func (r *reader) pairedBefore(from, i int) bool {
	for j := from; j < i; j++ {
		if r.tok(j).pair && r.tok(j).text == r.tok(i).text {
			return true
		}
	}
	return false
}

// partsPairs tells whether a word or mark parts a walk from what else is told.
func (r *reader) partsPairs(i int) bool {
	t := r.tok(i)
	if t.shape == mark {
		return t.text == "." && !r.tok(i+1).glued || (t.text == "-" || t.text == "&") && !t.glued
	}
	return (t.tag == andWord || t.tag == plusWord || t.tag == thenWord || r.oneOf(i, "also")) && r.tok(i+1).shape == word
}

// unpair takes the marks back that pairsFrom has set.
func (r *reader) unpair(from, to int) bool {
	for i := from; i < to; i++ {
		r.tok(i).pair = false
	}
	return false
}

// splitPairs makes each pair a line.
func (r *reader) splitPairs(from, to int) {
	for i := from; i < to; i++ {
		if t := r.tok(i); t.shape == mark && (t.text == "," || t.text == ";") || i == to-1 && r.partsPairs(i) {
			r.remake(t, newline, "\n")
		}
	}
}
