package parser

// Tillers whose oldest leaf is yellowing, told behind their scores.

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
