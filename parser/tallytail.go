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
	if u.tag == plusWord && len(t.said) > 0 && (r.tok(i+1).shape == end || r.tok(i+1).shape == newline) {
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

// yellowTail reads "yellowing at base", "2 yellowing", "oldest leaf dying".
func (r *reader) yellowTail(t *tally, i int) int {
	j := i
	if k := r.yellowOnes(t, i); k > i {
		return k
	}
	n, k := r.whole(j)
	switch u := r.tok(j); {
	case k > j && k > 0:
		j = k
	case u.tag == allWord, u.text == "both":
		n, j = everyTiller, j+1
		if _, k := r.whole(j); k > j {
			j = k // "all three"
		}
	case u.text == "some":
		n, j = 0, j+1
	case r.vaguePart(j) > j:
		n, j = 0, r.vaguePart(j)
	case u.text == "couple" || u.text == "a" && r.oneOf(j+1, "couple", "pair"):
		n, j = 2, r.over(j, "a", "couple", "pair")
	default:
		n = -2
	}
	for j < i+longestRun && r.tok(j).shape == word && (yellowIntro[r.tok(j).text] || r.tok(j).tag == leafWord || r.tok(j).tag == leafUnit || r.tok(j).tag == tillerUnit || r.tok(j).tag == withWord || r.tok(j).tag == ofWord) {
		j++
		if s := r.tok(j + 1); n > 0 && r.tok(j).shape == number && s.text == "s" && s.glued {
			j += 2 // "two of the 3s"
		}
	}
	if r.tok(j).tag != yellowWord {
		return i
	}
	j++
	if many, k := r.howManyBehind(j); k > j && n == -2 {
		if many > 0 && many != len(t.said) && len(t.said) > 1 && r.hasTag(j, k, allWord) {
			t.unsure("You say all %d, but I read %d scores. Please send them again.", many, len(t.said))
		}
		n, j = many, k
	}
	for last := j + longestRun; j < last && r.tok(j).shape == word && (yellowOutro[r.tok(j).text] || r.tok(j).tag == leafWord || r.tok(j).tag == leafUnit || r.tok(j).tag == yellowWord); {
		j++
	}
	switch {
	case n == -2 && r.vagueBefore(i):
		t.unsure("How many tillers had the oldest leaf yellowing?")
	case n == -2:
		t.yellow = -1
	case n == everyTiller:
		t.yellow = everyTiller
	case n == 0:
		t.unsure("How many tillers had the oldest leaf yellowing?")
	default:
		t.yellow = n
	}
	if n > 0 && n > len(t.said) && len(t.said) > 1 {
		t.unsure("There are fewer scores than the %d yellowing. Please send the scores again.", n)
	}
	return j
}

// yellowOnes reads which tillers yellow by their place in the list: "the last one
// has the oldest leaf yellow", "first two yellowing".
//
//	yellowOnes = [ "the" ] ( "first" | "last" ) [ whole | "one" ] [ "tiller" ] { … } yellowing
func (r *reader) yellowOnes(t *tally, i int) int {
	j := r.over(i, "the", "and", "with")
	last := r.oneOf(j, "last")
	if !last && !r.oneOf(j, "first") {
		return i
	}
	n := 1
	if m, k := r.whole(j + 1); k > j+1 && m > 0 {
		n, j = m, k-1
	}
	j = r.over(j+1, "one", "ones", "tiller", "tillers", "of", "them", "those")
	for end := j + longestRun; j < end && r.tok(j).shape == word && (yellowIntro[r.tok(j).text] || r.tok(j).tag == leafWord || r.tok(j).tag == leafUnit); {
		j++
	}
	if r.tok(j).tag != yellowWord {
		return i
	}
	for j++; r.tok(j).shape == word && (yellowOutro[r.tok(j).text] || r.tok(j).tag == leafWord || r.tok(j).tag == leafUnit); {
		j++
	}
	if n > len(t.said) {
		if len(t.said) > 0 {
			t.unsure("There are fewer scores than the %d yellowing. Please send the scores again.", n)
		}
		return j
	}
	from := 0
	if last {
		from = len(t.said) - n
	}
	for k := from; k < from+n; k++ {
		t.said[k].Floor = true
	}
	t.marked = true
	return j
}

// everyTiller is how many tillers are yellowing where that was said of all.
const everyTiller = -3

// howManyBehind reads "on two of them" behind a word of yellowing.
func (r *reader) howManyBehind(i int) (n, next int) {
	j := r.over(i, "off", "back", "at", "the", "base", "bottom")
	if !r.oneOf(j, "on", "in", "for") {
		return 0, i
	}
	n, k := r.whole(r.over(j+1, "about", "the", "only", "just"))
	switch {
	case r.oneOf(j+1, "all", "every", "both", "each", "everything"):
		n, k = everyTiller, j+2
		if m, last := r.whole(j + 2); last > k && m > 1 && r.oneOf(j+1, "all") {
			n, k = m, last // "on all 8"
		}
	case r.oneOf(r.over(j+1, "the", "whole"), "lot"):
		n, k = everyTiller, r.over(j+1, "the", "whole", "lot", "of", "them", "those")
	case r.oneOf(j+1, "them", "those") && r.oneOf(j+2, "all"):
		n, k = everyTiller, j+3
	case r.oneOf(r.over(j+1, "about", "only"), "some", "most", "few", "several", "half", "plenty", "many") || r.oneOf(j+1, "a") && r.oneOf(j+2, "few", "lot", "good"):
		n, k = 0, r.over(j+1, "about", "only", "a", "good", "some", "most", "few", "several", "half", "plenty", "many", "lot")
	case r.oneOf(j+1, "a") && r.oneOf(j+2, "couple", "pair"):
		n, k = 2, j+3
	case k <= j+1 || r.unitAhead(k) && r.tok(k).tag != tillerUnit:
		return 0, i
	}
	return n, r.over(k, "of", "them", "those", "the", "tillers", "tiller", "one")
}

// yellowAhead tells whether what follows says how many tillers yellow: it goes
// on with the scores before it.
func (r *reader) yellowAhead(i int) bool {
	if n, k := r.whole(i); k == i || n < 1 {
		if !r.oneOf(i, "all", "both", "some", "most", "half", "few", "several", "many", "plenty", "lots", "a", "first", "last", "the", "oldest", "older", "bottom", "lowest", "lower", "base", "old", "yellow", "yellowing") {
			return false
		}
	}
	return r.yellowTail(&tally{}, i) > i
}

var (
	yellowIntro = wordSet(`lower the them those were was is are the had have has going turning starting to gone a bit with and just its looking being now showing`)
	yellowOutro = wordSet(`underneath under off at the base a bit now leaf on out back and already down leaves in it up`)
)
