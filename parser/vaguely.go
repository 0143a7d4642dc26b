package parser

// A score told vaguely is asked about: "mostly 2-2.5", "2 and a bit", "just
// over 2", "not quite 2".

// vaguely reads a score that words around it leave open, behind its paddock.
//
//	vaguely = { vague-word } [ "over" | "under" | "between" | "quite" ] score [ ( "-" | "to" | "and" ) score ]
func (r *reader) vaguely(i int) (t tally, next int) {
	k := r.over(i, "is", "was", "at", "about", ":", "its", "still", "looks", "looking", "on", "averaging")
	from := k
	k = r.over(k, "just", "a", "bit", "wee", "little", "tad", "touch", "shade", "fraction", "smidge", "somewhere", "anywhere", "mostly", "mainly", "generally", "not", "quite", "well", "slightly")
	open := r.oneOf(k-1, "quite") && k-2 >= from && r.oneOf(k-2, "not")
	switch {
	case r.tok(k).shape == word && r.oneOf(k, "over", "under", "above", "below", "between", "nearly", "almost", "past"):
		open = true
		k++
	}
	a, ok := r.value(k)
	if !ok || k == from || a.value > 5 || !r.isScore(k) {
		return t, i
	}
	next = a.next
	if j, ranged := r.scoreRange(next); ranged {
		open, next = true, j
	} else if r.oneOf(k-1, "between") && r.tok(next).tag == andWord && r.isScore(next+1) {
		b, _ := r.value(next + 1)
		next = b.next
	}
	if !open {
		return t, i
	}
	if u := r.tok(next); u.tag == leafUnit {
		next++
	} else if u.shape == number || u.tag == ofWord || u.tag == padMark {
		return t, i
	}
	t, _ = r.scores(k)
	t.doubt = ""
	t.unsure("What score shall I log? Please send one number.")
	return t, next
}

// andABit steps over "and a bit" behind a score.
func (r *reader) andABit(i int) int {
	if r.tok(i).tag != andWord && r.tok(i).tag != plusWord {
		return i
	}
	k := r.over(i+1, "a", "wee", "little", "tiny", "good")
	if k > i+1 && r.oneOf(k, "bit", "touch", "smidge", "smidgen", "tad", "fraction", "shade") {
		return k + 1
	}
	return i
}

// oneAt reads "one at 3", "two at 2.5", "one 3" behind other scores: so many
// tillers of that score; "but its oldest leaf has gone brown" behind it marks
// those tillers alone.
//
//	one-at = ( "one" | "two" | … ) ( "at" | "of" ) score [ { word } yellowing ]
func (r *reader) oneAt(t *tally, i int) (int, bool) {
	if r.tok(i).shape != word || len(t.said) == 0 {
		return i, false
	}
	k := r.over(i, "another", "the", "other")
	n, j := r.whole(k)
	switch {
	case j > k && r.tok(k).tag == numberWord && n >= 1 && n <= 10:
		k = j
	case k > i && r.oneOf(k-1, "another") || r.oneOf(k, "a"):
		n, k = 1, r.over(k, "a")
	default:
		return i, false
	}
	at := r.oneOf(k, "at") || r.oneOf(k, "was", "were", "is", "are") && r.oneOf(k+1, "at", "a")
	if at {
		k = r.over(k, "was", "were", "is", "are", "at", "about", "a")
	}
	if s := r.tok(k); s.shape != number && s.shape != part || !r.isScore(k) || !at && (r.tok(i).tag != numberWord || r.tok(k).decimal && n > 1 || !r.figures(i)) {
		return i, false
	}
	a, _ := r.value(k)
	if a.value > 5 {
		return i, false
	}
	next := a.next
	from := len(t.said)
	if n > 1 && r.tok(next).text == "s" && r.tok(next).glued {
		next++
	}
	var one tally
	r.tiller(&one, k)
	if len(one.said) != 1 {
		return i, false
	}
	for range n {
		t.said = append(t.said, one.said[0])
	}
	t.decimal = t.decimal || a.decimal
	j = next
	for last := j + longestRun; j < last; j++ {
		u := r.tok(j)
		if u.tag == yellowWord && u.shape == word {
			for m := from; m < len(t.said); m++ {
				t.said[m].Floor = true
			}
			t.marked = true
			for j++; r.tok(j).shape == word && (yellowOutro[r.tok(j).text] || r.tok(j).tag == leafWord || r.tok(j).tag == leafUnit || r.tok(j).tag == yellowWord); {
				j++
			}
			return j, true
		}
		if u.text == "," && j == next || u.shape == word && (u.tag == butWord || u.tag == leafWord || u.tag == leafUnit || u.tag == withWord || u.tag == andWord && j == next || yellowIntro[u.text] || r.oneOf(j, "its", "his", "that", "which", "whose", "s", "though", "gone", "got")) {
			continue
		}
		break
	}
	return next, true
}

// figures tells whether the scores before token i are told in figures.
func (r *reader) figures(i int) bool {
	k := i - 1
	for k > 0 && (r.joins(k) || r.tok(k).tag == andWord) {
		k--
	}
	return r.tok(k).shape == number || r.tok(k).shape == part
}

// vaguePart steps over a part of the tillers whose number is not told: "half of
// them", "a few", "one or two".
func (r *reader) vaguePart(i int) int {
	if n, k := r.whole(i); k == i+1 && n >= 1 && n < 6 && r.oneOf(k, "or") && r.tok(i).shape == word {
		if m, k2 := r.whole(k + 1); k2 > k+1 && m == n+1 {
			return k2
		}
	}
	k := r.over(i, "about", "maybe", "roughly", "nearly", "a", "the", "good")
	if r.oneOf(k, "most", "half", "few", "several", "many", "plenty", "lots", "lot", "majority", "quarter", "third", "handful") {
		return r.over(k+1, "of", "them", "those", "the")
	}
	return i
}

// vagueBefore tells whether such a part was told right before a token.
func (r *reader) vagueBefore(i int) bool {
	for k := i - 1; k > i-4 && k > 0 && r.tok(k).shape == word; k-- {
		if r.oneOf(k, "most", "half", "few", "several", "many", "plenty", "lots", "majority", "quarter", "third", "handful") {
			return true
		}
	}
	return false
}
