package parser

import (
	"strconv"
	"strings"
)

// padsPart reads paddocks, and the scores behind a single one.
//
//	paddocks = place { ( "," | "and" | "&" | "+" | "/" ) place } | whole "-" whole
func (r *reader) padsPart(c *clause, i int) int {
	j := i
	if r.tok(j).text == "the" {
		j++
	}
	if r.headed && c.count == nil && len(c.pads) == 0 && r.tok(j).shape == number && r.isScore(j) && r.tok(j).value <= 5 && r.tok(j+1).text != ":" {
		return i
	}
	if r.scoresHere(c, j) {
		return i
	}
	one, ok := r.onePad(j, r.way != roleNone)
	if !ok {
		return i
	}
	if c.count == nil || len(c.pads) == 0 {
		if k, ok := r.target(c, one, j); ok {
			return k
		}
	}
	if c.count != nil && len(c.pads) > 0 {
		r.cut = !c.count.empty() || one.marked
		return i
	}
	if len(c.pads) > 0 && r.way == roleNone && r.ownVerb(one.next) && (c.has(actGrazed) || c.pads[len(c.pads)-1].role != roleNone || c.acts&^(actSilage|actHay) != 0 && r.joinedBefore(i)) {
		r.cut = true
		return i
	}
	list, k := r.padList(one, j, r.way != roleNone || c.acts&^(actSilage|actHay) != 0)
	if c.count == nil && len(c.pads) == 0 && len(list) > 1 {
		if k, ok := r.sharedTarget(c, list, k); ok {
			return k
		}
	}
	for n := range list {
		list[n].role = r.way
	}
	r.way = roleNone
	c.pads = append(c.pads, list...)
	return k
}

// scoresHere tells whether the bare number at i begins the scores of the one
// paddock named before: "12 yesterday 2 2.5 2".
func (r *reader) scoresHere(c *clause, i int) bool {
	t := r.tok(i)
	if len(c.pads) != 1 || c.strange > 0 || c.pads[0].role != roleNone || c.acts != 0 || c.count != nil && !c.count.empty() || c.pads[0].next == i || r.way != roleNone ||
		t.shape != number || t.value > 5 || !r.isScore(i) || r.joins(i-1) {
		return false
	}
	list, _ := r.scores(i)
	return (len(list.said) > 1 || list.decimal) && list.doubt == ""
}

// joinedBefore tells whether a comma or "and" stands before a token.
func (r *reader) joinedBefore(i int) bool { return i > 0 && r.joins(i-1) }

// onePad reads one paddock; loose allows a name that is not in the register
// where a preposition announces one.
//
//	place = [ "p" | "pdk" | "paddock" | "field" | "#" ] name | name "paddock"
func (r *reader) onePad(i int, loose bool) (place, bool) {
	t := r.tok(i)
	if t.tag == padMark && t.shape == word || t.text == "#" {
		return r.markedPad(i)
	}
	p, ok := r.longest(i)
	if !ok {
		p, ok = r.wildPad(i, loose)
	}
	if !ok {
		p, ok = r.wrongNumber(i)
	}
	if b := r.tok(i - 1); !ok && t.tag == numberWord && t.sense > 0 && i > 0 && (b.tag == inWord || b.tag == intoWord || b.tag == toWord || b.tag == fromWord || b.tag == ofWord || b.tag == offWord) && !r.unitAhead(i+1) {
		if p, ok := r.wordNumber(i); ok && p.known {
			p.marked = false
			return p, true
		}
	}
	if !ok || r.notAPad(i, p) {
		return place{}, false
	}
	if m := r.tok(p.next); m.tag == padMark && len(m.text) > 1 && (r.tok(p.next+1).shape != number || t.shape == word && r.isScore(p.next+1) && r.isScore(p.next+2)) {
		p.next++
		p.marked = true
	}
	p.at = i
	return p, true
}

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
	if r.day(i).ok {
		return true
	}
	if u := r.tok(i + 1); u.shape == part || u.text == "+" && u.glued && r.tok(i+2).glued && r.tok(i+2).shape == number {
		return true
	}
	if b := r.tok(i - 1); i > 0 && b.shape == word && numberedThings[b.text] {
		return true
	}
	if s, e := r.tok(i+1), r.tok(i+2); s.text == "-" && s.glued && e.glued && e.shape == number && e.value <= t.value {
		return true // 23-11: no range
	}
	if s, b := r.tok(i-1), r.tok(i-2); s.text == "-" && s.glued && t.glued && b.shape == number {
		return true
	}
	if b := r.tok(i - 1); i > 0 && b.tag == atWord && b.shape == word || r.tok(i+1).text == "bales" {
		return true // at 6
	}
	if b := r.tok(i - 1); i > 0 && (b.text == "-" && t.glued && !b.glued || b.text == "$") {
		return true
	}
	if u := r.tok(i + 1); r.prefixed && r.way != roleNone && (u.tag == mobWord || u.tag == looseMob) {
		return false // "12 > 13 milkers"
	}
	if _, k := r.mob(i + 1); k > i+1 {
		return true // 8 young stock
	}
	if u := r.tok(i + 1); u.tag == leafUnit && u.shape == word {
		return true // 2 leaf stage
	}
	if u := r.tok(i + 1); u.tag == troubleWord && u.text[len(u.text)-1] == 's' {
		return true // 3 reels
	}
	return r.unitAhead(i+1) && r.tok(i+1).text != ":"
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
	no number code version part step rule page chapter size grade class cows level stage shed culvert bore valve hydrant reel`)

// wrongNumber reads "west 60" where there are a West 40 and a West 80 alone:
// it is a paddock that nobody knows, never one of those.
func (r *reader) wrongNumber(i int) (place, bool) {
	t, n := r.tok(i), r.tok(i+1)
	if r.anyPaddock || t.shape != word || n.shape != number || n.decimal || n.value < 5 || r.book.first[t.text] < 2 || r.unitAhead(i+2) {
		return place{}, false
	}
	return place{name: r.source(i, i+2), next: i + 2}, true
}

// markedPad reads a name behind "p" or "paddock".
func (r *reader) markedPad(i int) (place, bool) {
	j := i + 1
	if r.tok(j).text == "#" || r.tok(j).text == "." && r.tok(j).glued || r.tok(j).text == "no" && r.tok(j+1).shape == number {
		j++
	}
	if r.tok(j).tag == numberWord {
		return r.wordNumber(j)
	}
	p, ok := r.longest(j)
	if !ok {
		p, ok = r.wildPad(j, true)
	}
	if t := r.tok(j); !ok && r.anyPaddock && t.shape == word && nameTags[t.tag] && len(t.text) > 1 {
		p, ok = place{name: r.source(j, j+1), known: true, next: j + 1}, true
	}
	if !ok && r.tok(j).shape == number && !r.tok(j).decimal {
		p, ok = place{name: r.tok(j).text, next: j + 1}, true
		if u := r.tok(j + 1); u.glued && u.shape == word && len(u.text) == 1 {
			p = place{name: r.tok(j).text + u.text, next: j + 2}
		}
	}
	p.marked, p.at = true, i
	return p, ok
}

// nameTags are parts of speech that may name a paddock behind its mark, where
// there is no register.
var nameTags = map[tag]bool{looseMob: true, mobWord: true, remark: true, cropWord: true, troubleWord: true, grassWord: true, topWord: true, soilWord: true}

// wordNumber reads "paddock twelve".
func (r *reader) wordNumber(j int) (place, bool) {
	n := strconv.Itoa(int(r.tok(j).sense))
	name, ok := r.book.has(n)
	if !ok {
		name = n
	}
	return place{name: name, known: ok || r.anyPaddock, marked: true, next: j + 1}, true
}

// padList reads further paddocks behind the first; busy tells that a verb or a
// preposition stands before, so that a verb behind a later paddock is its own.
func (r *reader) padList(first place, i int, busy bool) ([]place, int) {
	if list, k := r.padRange(first, i); k > 0 {
		return list, k
	}
	list := []place{first}
	next := first.next
	for {
		j := next
		for r.joins(j) {
			j++
		}
		if j == next && !(r.tok(j).shape == number && !r.tok(j).glued && allDigits(r.tok(first.next-1)) && r.tok(j).value > 4) {
			return list, next
		}
		p, ok := r.onePad(j, false)
		if !ok || r.itsOwn(p.next) || busy && r.ownVerb(p.next) {
			return list, next
		}
		if more, k := r.padRange(p, j); k > 0 {
			list, next = append(list, more...), k
			continue
		}
		list, next = append(list, r.sameStem(list, p, j)), p.next
	}
}

// sameStem sees that the 2 of "River 1 and 2" may be River 2.
func (r *reader) sameStem(list []place, p place, i int) place {
	stem := strings.TrimRight(list[len(list)-1].name, "0123456789")
	if list[len(list)-1].either != "" {
		stem = strings.TrimRight(list[len(list)-1].either, "0123456789")
	}
	if r.tok(i).shape != number || p.next > i+1 || stem == "" || stem == list[len(list)-1].name {
		return p
	}
	if name, ok := r.book.has(foldOf(stem + r.tok(i).text)); ok {
		p.either = name
	}
	return p
}

// ownVerb tells whether a verb follows a paddock: "in 14, 13 left at 1550".
func (r *reader) ownVerb(i int) bool {
	if r.eventAhead(i) || r.tok(i).tag == leftWord {
		return true
	}
	v, k, ok := r.plain(r.over(i, "at", "is", "was", "on"))
	if !ok || v <= 0 {
		return false
	}
	unit, _ := r.residualUnit(k, true)
	return unit != ""
}

// itsOwn tells whether scores follow a paddock, which makes it a statement of
// its own.
func (r *reader) itsOwn(i int) bool {
	k := r.intro(i)
	for j := i; j < k; j++ {
		if r.oneOf(j, "both", "all", "each") {
			return false
		}
	}
	return k < len(r.toks) && r.isScore(k) && r.tok(k).value < 5 && !r.joins(k)
}

func allDigits(t *token) bool { return t.shape == number && !t.decimal }

// joins tells whether a token joins two paddocks of one list.
func (r *reader) joins(i int) bool {
	t := r.tok(i)
	return t.text == "," || t.text == "&" || t.text == "+" || t.text == "/" || t.tag == andWord || t.tag == plusWord
}

// padRange reads p6-p9: every paddock of that number.
func (r *reader) padRange(first place, i int) ([]place, int) {
	s := r.tok(first.next)
	if s.text != "-" && s.text != "through" && s.text != "thru" {
		return nil, 0
	}
	from := r.tok(first.next - 1)
	j := first.next + 1
	if r.tok(j).tag == padMark {
		j++
	}
	last := r.tok(j)
	if from.shape != number || last.shape != number || from.decimal || last.decimal || last.value <= from.value || last.value-from.value > 60 || from.value < 1 || last.value > 999 {
		return nil, 0
	}
	if u := r.tok(j + 1); u.text == "." || r.unitAhead(j+1) && u.text != ":" {
		return nil, 0
	}
	stem := strings.TrimRight(first.name, "0123456789")
	var list []place
	for n := int(from.value); n <= int(last.value); n++ {
		name := stem + strconv.Itoa(n)
		if had, ok := r.book.has(foldOf(name)); ok {
			list = append(list, place{name: had, known: true, marked: true})
		} else if r.anyPaddock {
			list = append(list, place{name: name, known: true, marked: true})
		}
	}
	if len(list) < 2 {
		return nil, 0
	}
	list[len(list)-1].next = j + 1
	return list, j + 1
}

// wildPad reads a name that no register holds: any name where there is no
// register, else a known name with a typing error.
func (r *reader) wildPad(i int, loose bool) (place, bool) {
	if !r.anyPaddock {
		return r.misspelt(i)
	}
	t := r.tok(i)
	if t.shape == number && !t.decimal && len(t.text) < 4 && t.text[0] != '0' {
		if u := r.tok(i + 1); u.glued && u.shape == word && len(u.text) == 1 && u.tag != timesWord && u.tag != dayUnit && !r.tok(i+2).glued {
			return place{name: r.source(i, i+2), known: true, next: i + 2}, true
		}
		return place{name: t.text, known: true, next: i + 1}, true
	}
	return r.wildName(i, loose)
}

// placeWords are words that name a place by themselves where there is no
// register.
var placeWords = wordSet(`river flat road back front house hill dam creek bush gully swamp orchard bog barn north south east west
	corner bottom far near long big triangle island lane track woolshed shed cowshed pines willows school church chapel well mill bridge terrace
	ridge valley bank meadow bay point cliff beach lake pond spring`)

// wildName reads words that may name a paddock where there is no register.
func (r *reader) wildName(i int, loose bool) (place, bool) {
	n, sure := 0, false
	for n < 3 {
		t := r.tok(i + n)
		if t.shape != word || t.tag == padMark {
			break
		}
		if placeWords[t.text] || t.tag == topWord && n == 0 {
			sure = sure || t.tag != topWord || placeWords[r.tok(i+1).text] || r.tok(i+1).shape == number
		} else if t.tag == unknown && len(t.text) > 1 || n == 0 && (t.tag == looseMob || t.tag == mobWord) && r.tok(i+1).tag == padMark && len(r.tok(i+1).text) > 2 {
			sure = true
		} else {
			break
		}
		n++
	}
	if n == 0 || !sure {
		return place{}, false
	}
	marked := r.tok(i+n).tag == padMark
	if !loose && !marked && !r.startsClause(i) && !(i > 0 && r.joins(i-1)) {
		return place{}, false
	}
	next := i + n
	if u := r.tok(next); u.shape == number && !u.decimal && len(u.text) < 3 && (r.tok(next+1).text == ":" || !r.unitAhead(next+1)) {
		v := r.tok(next + 1)
		if !u.glued && v.text != ":" && u.value > 0 && u.value <= 4 && r.isScore(next+1) {
			return place{name: r.source(i, next+1), known: true, marked: marked, next: next + 1, shorter: r.source(i, next)}, true
		}
		if u.glued || v.text == ":" || !r.isScore(next+1) && (u.value > 4 || !loose && v.tag != unknown) || u.value > 4 || loose && !r.isScore(next+1) {
			next++
		}
	}
	return place{name: r.source(i, next), known: true, marked: marked, next: next}, true
}

// startsClause tells whether a token opens its clause.
func (r *reader) startsClause(i int) bool { return i == r.opening }

// misspelt reads a register's name with a typing error in one of its words.
func (r *reader) misspelt(i int) (place, bool) {
	for k := i; k < i+3; k++ {
		t := r.tok(k)
		if t.shape != word {
			break
		}
		if t.tag != unknown || commonWords[t.text] {
			continue
		}
		fix, ok := r.book.near.nearest(t.text)
		if !ok {
			continue
		}
		was := t.text
		r.toks[k].text = fix
		p, found := r.longest(i)
		r.toks[k].text = was
		if found && p.next > k {
			p.guess = was
			return p, true
		}
	}
	return place{}, false
}

func wordSet(s string) map[string]bool {
	m := map[string]bool{}
	for _, w := range strings.Fields(s) {
		m[w] = true
	}
	return m
}
