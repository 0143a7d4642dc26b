package parser

import (
	"leafround/core/entry"
)

// tallyTail reads what stands behind scores: how many tillers, an average,
// yellowing, tillers set aside.
//
//	tail = "n" "=" whole | [ "from" | "over" | "of" ] whole "tillers" | average value | [ count ] yellowing | aside
func (r *reader) tallyTail(c *clause, i int) int {
	t := c.count
	if u := r.tok(i); u.shape == word && len(u.text) == 1 && (u.tag == unknown || u.glued) && u.text != "i" && len(t.said) > 0 {
		t.unsure("What does “%s” mean among the scores? Please say repro, daughter, no remnant or x for a tiller set aside.", u.text)
		return i + 1
	}
	if k := r.tillersTold(t, i); k > i {
		return k
	}
	if j := r.over(i, ",", "and"); t.n > 0 && len(t.said) == 1 {
		if k, ok := r.asideTold(t, j); ok && k > j {
			return k // "2.25 from 8 tillers, chucked 2 daughters"
		}
	}
	if k := r.yellowTail(t, i); k > i {
		return k
	}
	u := r.tok(i)
	if u.tag == leafUnit || u.text == "stage" || u.tag == averageWord && !r.isScore(i+1) || u.text == "ish" {
		return i + 1
	}
	if (u.tag == averageWord || u.text == "=") && len(t.said) > 1 {
		if k := r.statedMean(t, i+1); k > i {
			return k
		}
	}
	if u.tag == plusWord && len(t.said) > 0 && (r.tok(i+1).shape == end || r.tok(i+1).shape == newline || r.endsSentence(i+1) && !r.tok(i+2).glued) {
		t.said[len(t.said)-1].Floor = true // "3 plus"
		return i + 1
	}
	if (u.tag == eachWord || r.oneOf(i, "in") && r.tok(i+1).tag == eachWord) && t.n > 0 {
		t.each = true
		return r.over(i+1, "each")
	}
	if t.n > 0 && len(t.said) == 0 {
		if k := r.everyPaddock(i); k > i {
			t.each = true
			return k
		}
	}
	if u.tag == eachWord || u.text == "per" && r.tok(i+1).tag == tillerUnit {
		return i + 1
	}
	if u.text == "-" {
		if n, k := r.whole(i + 1); k > i+1 && n > 0 && r.tok(k).tag == tillerUnit {
			return r.tillersTold(t, i+1)
		}
	}
	if u.text == "," && r.tok(i+1).tag == withWord {
		if k, ok := r.aside(t, i+2); ok {
			return k
		}
	}
	if u.text == "," || u.text == "(" || u.text == "." || u.text == "-" && !u.glued || u.tag == andWord || u.tag == plusWord || u.tag == withWord {
		if k, ok := r.aside(t, r.over(i+1, "also", "and", "plus", "pulled", "took", "threw", "chucked", "had", "got", "found")); ok {
			return k
		}
		if k, ok := r.asideTold(t, i+1); ok && len(t.said) > 0 {
			return k
		}
		if k, ok := r.oneAt(t, i+1); ok {
			return k
		}
		if k := r.tillersTold(t, i+1); k > i+1 {
			return k
		}
		if k := r.yellowTail(t, i+1); k > i+1 {
			return k
		}
		return i
	}
	if u.shape == number && len(t.said) > 0 && !r.isScore(i) {
		return i
	}
	if k, ok := r.aside(t, i); ok {
		return k
	}
	return i
}

// tillersTold reads how many tillers stand behind an average.
func (r *reader) tillersTold(t *tally, i int) int {
	j := i
	u := r.tok(j)
	if n, k := r.alsoTillers(i); k > i && len(t.said) == 1 {
		t.n = n
		return k
	}
	if k := r.over(i, ",", "(", "-"); len(t.said) == 1 && t.n == 0 && r.oneOf(k, "counted", "pulled", "took", "sampled", "measured") {
		if n, next := r.whole(k + 1); next > k+1 && n > 1 && n < 60 {
			next = r.over(next, "tillers", "tiller", "of", "them", ")")
			if e := r.tok(next); e.shape == end || e.shape == newline || e.shape == mark && e.text != ":" && e.text != "/" {
				t.n = n // "2.25 leaves on average, counted 8"
				return next
			}
		}
	}
	if n := r.tok(j + 1); u.text == "(" && len(t.said) == 1 && t.decimal && n.shape == number && !n.decimal && n.value > 3 && r.tok(j+2).text == ")" && t.n == 0 {
		t.n = int(n.value) // "avg 2.4 (8)"
		return j + 3
	}
	if u.text == "n" && r.tok(j+1).text == "=" {
		if n, k := r.whole(j + 2); k > j+2 {
			t.n = n
			return k
		}
	}
	if k := r.onlySo(t, i); k > i {
		return k
	}
	prefixed := false
	for j < i+longestRun && (u.tag == fromWord || u.text == "over" || u.tag == ofWord || u.tag == onlyWord || u.text == "(" || u.text == "across" || u.text == "off" || u.text == "on" || u.text == "based" || u.text == "out" || u.text == "just") {
		prefixed = prefixed || u.tag == fromWord || u.text == "over" || u.text == "of" || u.text == "across" || u.text == "off" && j == i && r.tok(i-1).shape == number
		j++
		u = r.tok(j)
	}
	n, k := r.whole(j)
	if k == j || n > 200 || n < 1 {
		return i
	}
	if r.tok(k).tag == tillerUnit {
		t.n = n
		return k + 1
	}
	if prefixed && len(t.said) == 1 && !r.unitAhead(k) {
		t.n = n
		return k
	}
	return i
}

// alsoTillers reads "also eight" of the tillers of a paddock, where as many were
// told of one before: without that the number may be a paddock.
//
//	alsoTillers = "also" whole
func (r *reader) alsoTillers(i int) (n, next int) {
	if !r.oneOf(i, "also") {
		return 0, i
	}
	n, k := r.whole(i + 1)
	if u := r.tok(k); k == i+1 || n < 5 || n > 100 || u.shape != mark && u.shape != end && u.shape != newline {
		return 0, i
	}
	for j := i - 1; j > 0; j-- {
		if r.tok(j).tag != tillerUnit {
			continue
		}
		if m, next := r.whole(j - 1); next == j && m == n {
			return n, k
		}
	}
	return 0, i
}

// everyPaddock reads "per paddock", "in each of them" behind a number of tillers.
func (r *reader) everyPaddock(i int) int {
	switch {
	case r.oneOf(i, "everywhere"), r.oneOf(i, "throughout"):
		return i + 1
	case r.oneOf(i, "per", "a", "every", "each") && r.tok(i+1).tag == padMark && r.tok(i+2).shape != number:
		return i + 2
	case r.oneOf(i, "in", "for", "from", "out") && (r.oneOf(i+1, "each", "every", "all")):
		return r.over(i+2, "of", "them", "those", "these", "the", "one", "paddock", "paddocks", "field", "pdk", "pdks")
	}
	return i
}

// onlySo reads "only looked at 4" behind an average.
func (r *reader) onlySo(t *tally, i int) int {
	if r.tok(i).tag != onlyWord || len(t.said) != 1 {
		return i
	}
	j := r.over(i+1, "looked", "did", "counted", "pulled", "got", "managed", "checked", "had", "time", "at", "for", "to", "do")
	n, k := r.whole(j)
	if t := r.tok(k); j == i+1 || k == j || n < 1 || n > 60 || t.shape != end && t.shape != mark && t.shape != newline {
		return i
	}
	t.n = n
	return k
}

// statedMean reads the average told beside the scores and checks it.
func (r *reader) statedMean(t *tally, i int) int {
	k := r.intro(i)
	a, ok := r.value(k)
	if !ok || r.unitAhead(a.next) {
		return i
	}
	if len(t.said) > 1 {
		mean := scored(t, entry.RemnantBySize).Mean
		if d := float64(mean) - a.value; d > 0.13 || d < -0.13 {
			t.unsure("Those scores average %.2f, not %g. Which is right?", float64(mean), a.value)
		}
	}
	return a.next
}
