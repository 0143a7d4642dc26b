package parser

import "leafround/core/entry"

// aside reads a tiller that was pulled but set aside: each such word is a
// tiller of its own, not a mark on the score before it.
//
//	aside = [ count ] [ "with" | "were" | "had" ] set-aside-word [ "x" whole ]
func (r *reader) aside(t *tally, i int) (int, bool) {
	n, j := r.asideCount(t, i)
	into, k := r.asideWord(&t.skipped, j)
	if into == nil || j == i && r.kiss(0, i) {
		return i, false
	}
	if j == i && r.tok(i).text == "daughters" && i > 0 && r.tok(i-1).shape == word && len(t.said) > 0 {
		t.unsure("How many were daughters? Please put the number beside the scores.")
	}
	if x := r.tok(k); n == 1 && x.tag == timesWord && r.tok(k+1).glued && r.tok(k+1).shape == number {
		n, k = int(min(r.tok(k+1).value, 60)), k+2
	}
	*into += n
	return r.leftOut(k), true
}

// leftOut steps over what was done with such tillers: "2 daughter tillers left
// out", "1 with no remnant removed".
func (r *reader) leftOut(i int) int {
	k := r.over(i, "tillers", "tiller", "ones", "one", "were", "was", "all", ",", "so", "but", "and", "which", "that", "i", "we", "have", "ive")
	switch {
	case r.oneOf(k, "left", "thrown", "threw", "chucked", "taken", "took", "pulled", "leaving") && r.oneOf(r.over(k+1, "them", "it"), "out", "off", "aside", "away"):
		return r.over(k+1, "them", "it") + 1
	case r.oneOf(k, "didnt", "did", "dont", "havent") && r.oneOf(r.over(k+1, "not"), "count", "counted", "include", "score"):
		return r.over(k+1, "not", "count", "counted", "include", "score", "them", "those", "it", "these")
	case r.oneOf(i, "off", "out", "aside") && (r.oneOf(i+1, "as", "too", "also", "then", "and") || r.tok(i+1).shape == mark || r.tok(i+1).shape == end) && !r.oneOf(i-1, "heading", "headed"):
		return i + 1 // "pulled two daughters off as well"
	case r.oneOf(k, "removed", "excluded", "ignored", "discarded", "tossed", "skipped", "binned", "dropped", "not") && !r.isScore(k+1):
		return r.over(k+1, "counted", "included")
	}
	return r.asideOutro(i)
}

// asideWord reads the word itself and gives what it adds to.
func (r *reader) asideWord(s *entry.Skipped, i int) (*int, int) {
	t := r.tok(i)
	switch t.tag {
	case reproWord:
		if r.onTheWay(i) {
			return nil, i
		}
		if r.tok(i+1).tag == reproWord { // "seedhead nodes" is one tiller
			return &s.Reproductive, i + 1
		}
		return &s.Reproductive, i + 1
	case daughterWord:
		if r.tok(i+1).tag == tillerUnit {
			return &s.Daughter, i + 2
		}
		return &s.Daughter, i + 1
	case timesWord:
		if n := r.tok(i + 1); n.glued && n.shape == number {
			return nil, i
		}
		return &s.Other, i + 1
	case negWord:
		if r.tok(i+1).tag == remnantWord && (t.text == "no" || t.text == "without") {
			return &s.NoRemnant, i + 2
		}
	}
	return nil, i
}

// asideCount reads how many are set aside, where the words around leave no
// doubt that it is not a score: "3 with nodes", "2 were heading", "two repro".
func (r *reader) asideCount(t *tally, i int) (n, next int) {
	a := r.tok(i)
	if r.oneOf(i, "a", "an", "another") {
		if n, k := r.whole(i + 1); r.oneOf(i, "another") && k > i+1 && n <= 30 && !r.tok(i+1).decimal {
			return n, r.over(k, "had", "were", "was", "with", "tillers")
		}
		if r.oneOf(i+1, "couple", "pair") {
			return 2, r.over(i+2, "of")
		}
		return 1, i + 1
	}
	if r.oneOf(i, "couple", "pair") {
		return 2, r.over(i+1, "of")
	}
	if a.shape != number && a.tag != numberWord || a.decimal || a.value > 60 || a.tag == numberWord && a.sense > 20 {
		return 1, i
	}
	v := int(a.value)
	if a.tag == numberWord {
		v = int(a.sense)
	}
	j := i + 1
	for tied, last := false, i+longestRun; ; j++ {
		if k := r.thrownFor(j); k > j {
			return v, k
		}
		u := r.tok(j)
		switch {
		case j > last:
		case u.tag == withWord, u.text == "were", u.text == "had", u.text == "was", u.text == "are", u.text == "is", u.text == "of", u.text == "have":
			tied = true
			continue
		case u.text == "them", u.text == "those", u.text == "the", u.text == "more", u.text == "other", u.text == "others", u.text == "extra", u.tag == tillerUnit, u.text == "pulled":
			continue
		}
		if tied || a.tag == numberWord || r.tok(j-1).tag == tillerUnit {
			return v, j
		}
		return r.looseCount(t, i, v)
	}
}

// thrownFor steps over what was done with a tiller set aside, up to why: "one I
// threw out for nodes".
func (r *reader) thrownFor(i int) int {
	k := r.over(i, "that", "i", "we", "more")
	if k == i || !r.oneOf(k, "threw", "chucked", "tossed", "left", "put", "set", "dropped", "binned", "discarded", "pulled", "took") {
		return i
	}
	k = r.over(k+1, "it", "out", "aside", "away", "off")
	k = r.over(k, "for", "with", "because", "as", "of", "it", "had", "having", "was", "showing", "the", "a")
	if t := r.tok(k); t.tag != reproWord && t.tag != daughterWord || r.onTheWay(k) {
		return i
	}
	return k
}

// setAside tells whether it is told at i, in words or with a verb, how many
// tillers were set aside: "two more had no remnant", "1 was heading".
func (r *reader) setAside(i int) bool {
	var t tally
	_, j := r.asideCount(&t, i)
	into, _ := r.asideWord(&t.skipped, j)
	if into == nil {
		_, ok := r.asideTold(&t, i)
		return ok
	}
	return !r.tok(i).glued && (r.tok(i).shape == word || j > i+1)
}

// looseCount settles "2 repro": in a spaced list the 2 is a score; behind a
// comma, "and" or a bracket, or with a plural, it may be how many: ask.
func (r *reader) looseCount(t *tally, i, v int) (n, next int) {
	w, before := r.tok(i+1), r.tok(i-1)
	if w.tag == timesWord && w.glued && (r.tok(i+2).tag == reproWord || r.tok(i+2).tag == daughterWord) {
		return v, i + 2 // 2x repro
	}
	if w.tag != reproWord && w.tag != daughterWord && !(w.text == "no" && r.tok(i+2).tag == remnantWord) {
		return 1, i
	}
	switch {
	case i > 0 && (before.text == "(" || before.text == ";" || before.tag == plusWord || r.tok(i+2).tag == tillerUnit && before.text == ","):
		return v, i + 1
	case i > 0 && (before.text == "," || before.tag == andWord) && !r.listOfCommas(i):
		return v, i + 1
	case w.text == "daughters" && v != 1 || w.text == "seedheads" && v != 1:
		t.unsure("Is “%s %s” a score of %s and one set aside, or %s set aside?", r.tok(i).text, w.text, r.tok(i).text, r.tok(i).text)
	}
	return 1, i
}

// listOfCommas tells whether the scores before i are parted by commas too.
func (r *reader) listOfCommas(i int) bool {
	return r.tok(i-1).text == "," && r.tok(i-2).shape == number && r.tok(i-3).text == ","
}

// longestRun is how many small words in a row are stepped over to see what
// stands behind them (ours): it holds the time that a message of nothing else
// takes.
const longestRun = 10

// over steps over some words.
func (r *reader) over(i int, words ...string) int {
	for last := i + longestRun; i < last && r.oneOf(i, words...); {
		i++
	}
	return i
}
