package parser

// When a number or a word that a paddock bears is none.

// notAPad tells whether a bare number is plainly something else: an amount, an
// hour, a herd.
func (r *reader) notAPad(i int, p place) bool {
	t := r.tok(i)
	if t.shape != number || p.next > i+1 {
		return t.shape == word && p.next == i+1 && r.nameIsWord(i)
	}
	if _, ok := r.clock(i); ok {
		return true
	}
	if r.day(i).ok || r.soManyOf(i) {
		return true
	}
	if _, _, ok := r.balesAt(i); ok && r.tok(i-1).tag != padMark {
		return true
	}
	if u := r.tok(i + 1); u.shape == part || u.text == "+" && u.glued && r.tok(i+2).glued && r.tok(i+2).shape == number {
		return true
	}
	if b := r.tok(i - 1); i > 0 && b.shape == word && numberedThings[b.text] {
		a := r.tok(i - 2)
		return b.text != "number" || i > 1 && (numberedThings[a.text] || a.tag == mobWord || a.tag == looseMob)
	}
	if s, e := r.tok(i+1), r.tok(i+2); s.text == "-" && s.glued && e.glued && allDigits(e) && e.value <= t.value {
		return true // 23-11: no range
	}
	if s, b := r.tok(i-1), r.tok(i-2); s.text == "-" && s.glued && t.glued && b.shape == number {
		return true
	}
	if b := r.tok(i - 1); i > 1 && b.tag == atWord && b.shape == word && !lookWords[r.tok(i-2).text] || r.tok(i+1).text == "bales" {
		return true // at 6
	}
	if w := r.tok(i - 2); r.oneOf(i-1, "by", "before") && !(r.oneOf(i-2, "long") && r.oneOf(i+1, "is", "will", "can", "gets", "comes")) || t.value <= 12 && r.oneOf(i-1, "around", "about", "bout", "circa") && i-2 >= r.opening && (w.shape == number || w.shape == word && !directions[w.tag] && w.tag != whWord && !r.oneOf(i-2, "me", "us", "know", "ask")) {
		return true // done by 9, out of it around 3
	}
	if r.tok(i+1).tag == leftWord && r.oneOf(i+2, "behind") {
		return true // "4 left behind"
	}
	if b := r.tok(i - 1); i > 0 && (b.text == "-" && t.glued && !b.glued || b.text == "$") {
		return true
	}
	if b := r.tok(i - 1); (b.tag == inWord || b.tag == intoWord) && b.shape == word && r.tok(i-2).shape == number && r.bears(t.text) && r.tok(i-1).start > 0 {
		return false // "out 12 in 13 milkers"
	}
	if u := r.tok(i + 1); r.prefixed && r.way != roleNone && (u.tag == mobWord || u.tag == looseMob) {
		return false // "12 > 13 milkers"
	}
	if j := r.over(i+1, "of", "the", "our", "my"); !r.prefixed || j > i+1 {
		if _, k := r.mob(j); k > j {
			return !(r.way != roleNone && j == i+1 && r.herded && r.heads(k)) // 8 young stock, 20 of the heifers
		}
	}
	if r.headsScores(i) {
		return false // "12 lvs: 2.5 2 2"
	}
	if u := r.tok(i + 1); u.tag == leafUnit && u.shape == word || u.text == "nights" || (u.text == "min" || u.text == "mins") && r.oneOf(i-1, "in", "after", "about", "another", "for") || u.text == "ish" && u.glued {
		return true // 2 leaf stage
	}
	if u, v, w := r.tok(i+1), r.tok(i+2), r.tok(i+3); u.tag == ofWord && r.oneOf(i+2, "them", "em", "us", "those", "these") ||
		u.tag == outWord && v.tag == ofWord && w.shape == number && w.value > t.value && i > 1 && r.tok(i-1).text == "," {
		return true // 8 of them, ", 8 out of 10"
	}
	if u := r.tok(i + 1); u.tag == troubleWord && u.text[len(u.text)-1] == 's' {
		return true // 3 reels
	}
	return r.unitAhead(i+1) && r.tok(i+1).text != ":"
}

// headsScores tells whether a number with "leaves" behind it is the paddock of
// the scores that follow, being more leaves than any grass carries.
func (r *reader) headsScores(i int) bool {
	t, u := r.tok(i), r.tok(i+1)
	if t.value < 7 || u.shape != word || u.glued || u.tag != leafUnit || !r.bears(t.text) {
		return false
	}
	n := 0
	for k := r.intro(i + 1); n < 40; n++ {
		a, ok := r.value(k)
		if !ok || a.value > 5 {
			break
		}
		k = r.over(a.next, ",", ";", "/")
	}
	return n > 0
}

// heads tells whether a direction follows a mob: "milkers in 12 heifers in 13".
func (r *reader) heads(i int) bool {
	t := r.tok(i)
	return t.shape == word && (t.tag == inWord || t.tag == intoWord || t.tag == outWord || t.tag == offWord || t.tag == onWord || t.tag == toWord)
}

// nameIsWord tells whether a paddock whose name is a common word is used as
// that word: "back in 5", "top of the morning".
func (r *reader) nameIsWord(i int) bool {
	t, u := r.tok(i), r.tok(i+1)
	if t.tag == unknown {
		return false
	}
	if i > 0 && (r.tok(i-1).tag == padMark || r.tok(i-1).text == "the" || r.tok(i-1).tag == inWord || r.tok(i-1).tag == intoWord) {
		return u.tag == ofWord
	}
	switch u.tag {
	case ofWord, inWord, intoWord, atWord, onWord, fromWord, toWord:
		return t.tag == filler || t.tag == topWord && u.tag == ofWord
	}
	return false
}

// numberedThings are what else bears a number on a farm.
var numberedThings = wordSet(`gate gates tank tanks trough troughs fence tag tags cow bull calf heifer ewe ram row rows bay pump page route unit
	highway sh silo vat pen pens stall lot batch line break strip channel trailer door phone ext extension room flight ring call text
	no day days number code version part step rule page chapter size grade class level stage shed culvert bore valve hydrant reel`)
