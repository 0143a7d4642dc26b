package parser

import (
	"strings"
)

// wrongNumber reads "west 60" where there are a West 40 and a West 80 alone,
// and "N2" where there is an N3: it is a paddock that nobody knows, never one
// of those, nor paddock 2. A small number may be the first score of a list.
func (r *reader) wrongNumber(i int) (place, bool) {
	t, n := r.tok(i), r.tok(i+1)
	if r.anyPaddock || t.shape != word || n.shape != number || n.decimal || t.names < 2 || r.unitAhead(i+2) && r.tok(i+2).text != ":" {
		return place{}, false
	}
	if n.value < 5 && !n.glued && r.isScore(i+2) && r.tok(i+2).text != ":" {
		return place{}, false
	}
	return place{name: r.source(i, i+2), next: i + 2}, true
}

// halfName reads the first word of longer names alone before scores, and a
// number of acres that opens a list of scores: "top 2.5 2" where there are a
// Top Flat and a Top Hill, "40 acre 2 2.5". They are asked about.
func (r *reader) halfName(i int) (place, bool) {
	if r.anyPaddock {
		return place{}, false
	}
	t := r.tok(i)
	if b := r.tok(i - 1); i > 0 && (b.tag == intoWord || b.tag == inWord || b.tag == toWord || b.tag == fromWord) && t.shape == word &&
		t.names > 1 && !elsewhere[t.text] && t.tag != mobWord && t.tag != looseMob && (r.tok(i+1).shape == end || r.tok(i+1).shape == mark) {
		return place{name: r.source(i, i+1), next: i + 1}, true // "milkers into top"
	}
	if i != r.opening {
		return place{}, false
	}
	if t.shape == word && t.names > 1 && r.scoresBehind(i+1) {
		return place{name: r.source(i, i+1), next: i + 1}, true
	}
	if k, ok := r.shortName(i); ok && r.scoresBehind(k) {
		return place{name: r.source(i, k), next: k}, true
	}
	if k, ok := r.acreName(i); ok {
		return place{name: r.source(i, k), next: k}, true
	}
	return place{}, false
}

// scoresBehind tells whether a score with a point, or two, stand at i.
func (r *reader) scoresBehind(i int) bool {
	k := r.intro(i)
	a, ok := r.value(k)
	return ok && r.isScore(k) && a.value <= 5 && (a.decimal || r.isScore(a.next))
}

// shortName reads a number glued to letters that may be short for a longer
// name: the w80 of West 80.
func (r *reader) shortName(i int) (next int, ok bool) {
	t, n := r.tok(i), r.tok(i+1)
	if t.shape != word || len(t.text) > 4 || t.tag != unknown && t.tag != withWord || n.shape != number || n.decimal || !n.glued {
		return i, false
	}
	for k, name := range r.book.names {
		if shortFor(t.text, n.text, r.book.folds[k], name.Name) {
			return i + 2, true
		}
	}
	return i, false
}

// shortFor tells whether letters begin a name, or are the first of its words,
// and the number ends it.
func shortFor(letters, digits, fold, name string) bool {
	stem, ok := strings.CutSuffix(fold, digits)
	if !ok || stem == "" || isDigit(stem[len(stem)-1]) {
		return false
	}
	var first strings.Builder
	for _, w := range strings.Fields(strings.ToLower(name)) {
		first.WriteByte(w[0])
	}
	initials, _ := strings.CutSuffix(first.String(), digits[:1])
	return stem != letters && (strings.HasPrefix(stem, letters) || initials == letters)
}

// acreName sees a number of acres or hectares with scores behind it.
func (r *reader) acreName(i int) (int, bool) {
	t, u := r.tok(i), r.tok(i+1)
	whole := t.shape == number && !t.decimal || t.shape == word && t.tag == numberWord
	if i != r.opening || !whole || u.shape != word || u.tag != acreUnit && u.tag != haUnit {
		return i, false
	}
	k := r.intro(i + 2)
	return i + 2, r.isScore(k) && r.tok(k).value <= 5
}

// nameTags are parts of speech that may name a paddock behind its mark, where
// there is no register.
var nameTags = map[tag]bool{looseMob: true, mobWord: true, remark: true, cropWord: true, troubleWord: true, grassWord: true, topWord: true, soilWord: true}

// wildPad reads a name that no register holds: any name where there is no
// register, else a known name with a typing error.
func (r *reader) wildPad(i int, loose bool) (place, bool) {
	if !r.anyPaddock {
		return r.misspelt(i)
	}
	t := r.tok(i)
	if t.shape == number && !t.decimal && len(t.text) < 4 && t.text[0] != '0' {
		if u := r.tok(i + 1); u.glued && u.shape == word && len(u.text) == 1 && u.tag != timesWord && u.tag != dayUnit && (!r.tok(i+2).glued || r.tok(i+2).shape == mark) {
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
	ridge valley bank meadow bay point cliff beach lake pond spring lower upper`)

// notNames are verbs and small words that no paddock is called by.
var notNames = wordSet(`can could someone somebody whoever skin brew brews kettle anything anyone nothing something everything let keep keeping saving reserving stockpiling deferring another lot pumped irrigated tankered injected broadcast chucked flicked
	threw hauled finish knocked dropped works sale sales saleyards market factory grazier vet truck trucks abattoir meatworks slaughter yards yard feedpad home
	agistment milking town hospital twice thrice drenched soaked everyone everyones everybody everybodys
	man notch marks job missed march sat sun mon nth first second third fourth fifth swimming sold kettle telly lights radio`)

// wildName reads words that may name a paddock where there is no register.
func (r *reader) wildName(i int, loose bool) (place, bool) {
	n, sure := 0, false
	for n < 3 {
		t := r.tok(i + n)
		if t.shape != word || t.tag == padMark || notNames[t.text] {
			break
		}
		if illWords[t.text] && t.tag == unknown || hurtWords[t.text] {
			break // "no, bloat today" names no paddock, nor does an ambulance
		}
		if u := r.tok(i + 1); t.text == "back" && n == 0 && u.shape == word && (u.tag == outWord || u.tag == intoWord || u.tag == toWord || u.tag == fromWord || u.tag == atWord) {
			break // "back out friday"
		}
		if _, k := r.mob(i + n); k > i+n && r.tok(k).tag != padMark {
			break // young stock
		}
		if placeWords[t.text] || t.tag == topWord && n == 0 {
			sure = sure || t.tag != topWord || placeWords[r.tok(i+1).text] || r.tok(i+1).shape == number
		} else if n > 0 && t.text == "acre" && r.tok(i+n-1).shape == word {
			sure = true // Long Acre
		} else if n == 0 && r.oneOf(i, "old", "new") && placeWords[r.tok(i+1).text] {
			sure = true
		} else if t.tag == unknown && len(t.text) > 1 || n == 0 && (t.tag == looseMob || t.tag == mobWord) && r.tok(i+1).tag == padMark && len(r.tok(i+1).text) > 2 {
			sure = true
		} else {
			break
		}
		n++
	}
	if n == 0 || !sure || r.namesIllness(i, i+n) {
		return place{}, false
	}
	if m := r.tok(i + n); m.shape == word && m.tag == padMark && len(m.text) > 4 && isCapital(r.text[m.start]) && isCapital(r.text[r.tok(i).start]) && !isCapital(r.text[m.start+1]) {
		n++ // "Parlour Field" is a name
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

func isCapital(b byte) bool { return b >= 'A' && b <= 'Z' }

// startsClause tells whether a token opens its clause.
func (r *reader) startsClause(i int) bool { return i == r.opening }

// misspelt reads a register's name with a typing error in one of its words.
func (r *reader) misspelt(i int) (place, bool) {
	for k := i; k < i+3; k++ {
		t := r.tok(k)
		if t.shape != word {
			break
		}
		if t.tag != unknown || t.right || commonWords[t.text] {
			continue
		}
		fix, ok := r.book.near.nearest(t.text)
		if !ok {
			t.right = true
			continue
		}
		was := t.text
		r.reword(t, fix)
		p, found := r.longest(i)
		r.reword(t, was)
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
