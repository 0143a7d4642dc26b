package parser

import (
	"strconv"
	"strings"
)

// padList reads further paddocks behind the first; busy tells that a verb or a
// preposition stands before, so that a verb behind a later paddock is its own.
func (r *reader) padList(first place, i int, busy bool) ([]place, int) {
	if list, k := r.padRange(first, i); k > 0 {
		return list, k
	}
	list := []place{first}
	next := first.next
	var joints joints
	for {
		j := next
		if len(list) > mostPads {
			return list, next
		}
		for j < next+longestRun && r.joins(j) {
			joints.add(len(list), r.tok(j))
			j++
		}
		if j == next && !(r.tok(j).shape == number && !r.tok(j).glued && allDigits(r.tok(first.next-1)) && r.tok(j).value > 4) {
			return r.withoutOthers(list, next, busy, &joints)
		}
		if p, ok := r.otherLetter(list[len(list)-1], j); ok {
			list, next = append(list, p), p.next
			continue
		}
		p, ok := r.onePad(j, false)
		if !ok || r.itsOwn(p.next) && !r.nextInList(p.next, busy) {
			return r.withoutOthers(list, next, busy && !ok, &joints)
		}
		if busy && r.ownVerb(p.next) {
			var k int
			k, r.tied = joints.cut(len(list)+1, r.way == roleIn || r.way == roleAt)
			return list[:k], list[k-1].next // "in north and 5, 6 and 7 grazed"
		}
		if more, k := r.padRange(p, j); k > 0 {
			list, next = append(list, more...), k
			continue
		}
		list, next = append(list, r.sameStem(list, p, j)), p.next
	}
}

// nextInList tells whether the number behind a paddock of a list and a comma is the
// next of them, and no score: "out of 7, 18, 4", "19, river 2, 7, 3 too wet".
func (r *reader) nextInList(i int, busy bool) bool {
	t := r.tok(i + 1)
	if !r.joins(i) || !allDigits(t) || r.tok(i).glued && t.glued || !r.anyPaddock && !r.bears(t.text) {
		return false
	}
	n, k := r.padRun(i + 1)
	m := r.tok(k)
	if busy && n > 1 && m.text == ":" && r.isScore(k+1) {
		return true // "grazed 16, 13, 4, river 2: 1.75 2"
	}
	if r.isScore(k) {
		r.tied = busy && n == 1 && !r.joins(k-1) // "out of 4 and house, 2 2.25 3"
		return busy && n > 1
	}
	return r.runsVerb(k) || busy && (m.shape == end || m.shape == newline || m.shape == mark && m.text != ":" || m.tag == thenWord || m.tag == andWord || m.text == "also")
}

// withoutOthers leaves of a list those before the ones whose verb follows: "in
// north, p1-p3 all grazed".
func (r *reader) withoutOthers(list []place, next int, busy bool, j *joints) ([]place, int) {
	k := r.over(next, "all", "both", "were", "was", "are", "been", "have")
	if !busy || len(list) < 2 || !(k > next && r.ownVerb(k)) && !(len(list) > 2 && r.ownVerb(next)) {
		return list, next
	}
	var n int
	n, r.tied = j.cut(len(list), r.way == roleIn || r.way == roleAt)
	return list[:n], list[n-1].next
}

// joints are what stands before each of the first paddocks of a list: nothing, a
// comma, or "and".
type joints [16]byte

func (j *joints) add(n int, t *token) {
	switch {
	case n >= len(j):
	case t.text == "," || t.text == "/":
		j[n] = max(j[n], 1)
	default:
		j[n] = 2
	}
}

// cut gives how many of a list of n paddocks belong to what stands before it, where
// what stands behind it has a verb of its own: each half shall be one paddock, or a
// list that "and" closes, as far as may be; tied tells that it may be parted in
// another way. Stock that go in go into a single one.
func (j *joints) cut(n int, single bool) (first int, tied bool) {
	n = min(n, len(j))
	if single && j[1] != 0 && j.closed(1, n) > 0 {
		return 1, false
	}
	best, found := n-1, 0
	for k := n - 1; k > 0; k-- {
		if j[k] == 0 {
			continue
		}
		if s := j.closed(0, k) + j.closed(k, n); j.closed(0, k) > 0 && j.closed(k, n) > 0 && s >= found {
			best, found, tied = k, s, found > 2
		} else if s > 2 && j.closed(0, k) > 0 && j.closed(k, n) > 0 {
			tied = true
		}
	}
	return max(best, 1), tied
}

// closed tells how well a part of a list stands by itself: 2 where it is one paddock
// or "and" stands before its last, 1 where commas alone part it, 0 where "and" stands
// within.
func (j *joints) closed(from, to int) int {
	for k := from + 1; k < to-1; k++ {
		if j[k] == 2 {
			return 0
		}
	}
	if to-from == 1 || j[to-1] == 2 {
		return 2
	}
	return 1
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
	if r.oneOf(i, "also", "then") {
		return false
	}
	if r.eventAhead(i) || r.stateAhead(i) || r.tok(i).tag == leftWord {
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
	if n := r.tok(i + 1); t.text == "n" && n.glued && n.shape == number && r.book.first["n"] > 1 {
		return false // N3 where there are such names
	}
	return t.text == "," || t.text == "&" || t.text == "+" || t.text == "/" || t.tag == andWord || t.tag == plusWord
}

// padRange reads p6-p9: every paddock of that number. One that begins or ends
// with a number that no paddock bears is asked about whole.
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
	if u := r.tok(j + 1); u.text == "." || r.unitAhead(j+1) && u.text != ":" || s.text == "-" && !s.glued && !last.glued && u.text == ":" && r.isScore(j+2) && !r.tok(first.next-2).glued && busyWords[r.tok(first.next-2).tag] {
		return nil, 0 // "heifers in 4 - 21: 2 2.5"
	}
	stem := strings.TrimRight(first.name, "0123456789")
	var list []place
	had := 0
	for n := int(from.value); n <= int(last.value); n++ {
		name := stem + strconv.Itoa(n)
		if bears, ok := r.book.has(foldOf(name)); ok {
			list = append(list, place{name: bears, known: true, marked: true})
			had++
		} else if r.anyPaddock {
			list = append(list, place{name: name, known: true, marked: true})
			had++
		} else if n == int(last.value) || n == int(from.value) {
			list = append(list, place{name: name, marked: true, at: i}) // no such paddock: its ends must exist
		}
	}
	if had < 2 {
		return nil, 0
	}
	list[len(list)-1].next = j + 1
	return list, j + 1
}

// busyWords before a paddock leave no room for a range whose scores follow.
var busyWords = map[tag]bool{inWord: true, intoWord: true, outWord: true, offWord: true, ofWord: true, toWord: true, fromWord: true}

// otherLetter reads a letter alone behind a paddock of a number and a letter:
// the B of "6A and B".
func (r *reader) otherLetter(last place, i int) (place, bool) {
	t := r.tok(i)
	stem := strings.TrimRight(foldOf(last.name), "abcdefgh")
	if t.shape != word || len(t.text) != 1 || t.text[0] < 'b' || t.text[0] > 'h' || r.tok(i+1).glued || stem == "" || len(stem) != len(foldOf(last.name))-1 || r.tok(last.next-2).shape != number {
		return place{}, false
	}
	name, ok := r.book.has(stem + t.text)
	return place{name: name, known: ok, at: i, next: i + 1, role: last.role}, ok
}
