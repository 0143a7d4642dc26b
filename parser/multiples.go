package parser

import "leafround/core/entry"

// multiple reads how many tillers had a score: "five 2s and three 2.5s", "3
// tillers at 2, 2 at 2.5 and one at 3". A bare number "at" a score is a paddock
// with its average unless a multiple stands before it.
//
//	multiple = whole score "s" | whole [ tillers ] ( "at" | "of" | "on" | "were" ) score
func (r *reader) multiple(t *tally, i int) (int, bool) {
	if j := r.over(i, "the", "last", "other"); t.multiples && j > i {
		if n, k := r.whole(j); k > j && n < 31 {
			if a, ok := r.value(r.over(k, "at", "were", "was")); ok && a.value <= 6 && !r.tok(k).glued {
				t.tillersOf(n, a)
				return a.next, true // "and the last two 3"
			}
		}
		return i, false
	}
	n, k := r.whole(i)
	if k == i || n < 1 || n > 30 || r.tok(i).decimal {
		return i, false
	}
	told := r.tok(i).tag == numberWord
	if a, ok := r.value(k); ok && a.value <= 6 && !r.tok(k).glued {
		if s := r.tok(a.next); s.text == "s" && s.glued && s.shape == word {
			t.tillersOf(n, a)
			return a.next + 1, true
		}
		return i, false
	}
	if r.tok(k).tag == tillerUnit {
		told = true
		k++
	} else if r.oneOf(k, "of") && r.oneOf(k+1, "them", "those", "these") {
		told = true
		k += 2
	}
	all := len(t.said) == 0 && r.multiplesOf(i)
	told = told || all
	if !told && !t.multiples || !told && !t.multiples && r.bears(r.tok(i).text) && n > 4 {
		return i, false
	}
	if !r.oneOf(k, "at", "on", "of", "were", "was", "are", "had", "scored") {
		return i, false
	}
	k = r.over(k+1, "at", "on", "about", "around", "a")
	a, ok := r.value(k)
	if !ok || a.value > 6 || r.unitAhead(a.next) || r.leafyRange(a.next) {
		return i, false
	}
	if r.tok(k-1).tag == ofWord && !a.decimal || n == 1 && len(t.said) == 0 && !r.isScore(a.next) && !r.multipleAhead(a.next) {
		return i, false
	}
	if len(t.said) == 0 && !all && !r.multipleAhead(a.next) {
		return i, false // "three at 2.5" alone may be a paddock's average
	}
	t.tillersOf(n, a)
	next := a.next
	if s := r.tok(next); s.text == "s" && s.glued || r.leafy(next) {
		next++
	}
	return next, true
}

// multiplesOf tells whether bare numbers "at" scores are multiples for what stands
// before them: the paddock that opens the clause, which has no score else, or as
// many tillers as they come to.
func (r *reader) multiplesOf(i int) bool {
	sum, n, k := 0, 0, i
	for {
		m, j := r.whole(k)
		if j == k || m < 1 || m > 30 || r.tok(j).tag != atWord && !r.oneOf(j, "were", "was", "are") {
			break
		}
		a, ok := r.value(r.over(j+1, "at", "about", "around"))
		if !ok || a.value > 6 {
			break
		}
		sum, n = sum+m, n+1
		k = r.over(a.next, ",", "and", "&", "plus")
	}
	if n < 2 {
		return false
	}
	b := i - 1
	for b > 0 && r.oneOf(b, ":", "-", ",", "=") {
		b--
	}
	first := r.opening
	if r.tok(first).tag == padMark {
		first++
	}
	if p, ok := r.longest(first); ok && p.known && p.next == b+1 && b < i-1 {
		return true
	}
	for k := max(0, i-8); k < i; k++ {
		if m, j := r.whole(k); j > k && m == sum && (r.tok(j).tag == tillerUnit || r.oneOf(j, "of") && r.oneOf(j+1, "them") || r.oneOf(k-1, "pulled", "took", "counted", "did")) {
			return true
		}
	}
	return false
}

// leafyRange tells whether a score goes on as a range.
func (r *reader) leafyRange(i int) bool {
	_, is := r.scoreRange(i)
	return is
}

// multipleAhead tells whether another multiple follows a score.
func (r *reader) multipleAhead(i int) bool {
	for r.leafy(i) {
		i++
	}
	i = r.over(i, ",", "and", "&", "plus", "then")
	n, k := r.whole(i)
	if k == i || n < 1 || n > 30 {
		return false
	}
	if r.tok(k).tag == tillerUnit {
		k++
	}
	if !r.oneOf(k, "at", "on", "of", "were", "was", "are", "had", "scored") {
		return false
	}
	a, ok := r.value(r.over(k+1, "at", "on", "about", "around", "a"))
	return ok && a.value <= 6 && (r.tok(i).tag == numberWord || !r.bears(r.tok(i).text) || n < 5)
}

// tillersOf adds tillers of one score.
func (t *tally) tillersOf(n int, a amount) {
	t.decimal = t.decimal || a.decimal
	t.multiples = true
	for range n {
		t.said = append(t.said, entry.Tiller{Score: entry.LeafStage(a.value)})
	}
}
