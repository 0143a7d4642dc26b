package parser

import "strings"

// A number behind scores may count something else: "12 2 2.5 2, 2 rails broken".

// countsThing tells whether a whole number counts what the next word names: minutes or
// people, and anything at all behind a comma where the scores before it stand without.
func (r *reader) countsThing(i int, a amount) bool {
	if r.halfOf(i, a.next) || !a.decimal && (r.oneOf(a.next, "min", "mins", "staff", "ml", "sec", "secs", "quid") || r.oneOf(a.next, "of") && r.oneOf(a.next+1, "us", "my", "our")) {
		return true
	}
	switch {
	case i > 0 && r.tok(i).glued && r.tok(i-1).text != "" && strings.Contains("$€£", r.tok(i-1).text), a.value == 0 && r.oneOf(a.next, "rain"):
		return true
	case r.tok(a.next).text == "-" && r.oneOf(a.next+1, "thirds", "third", "quarters") && r.oneOf(a.next+2, "of"):
		return true // "two-thirds of the herd lying"
	}
	if a.decimal || i < 3 || r.tok(i-1).text != "," || !r.countable(a.next) && !r.ofOther(a.next) {
		return false
	}
	last, before := r.tok(i-2), r.tok(i-3)
	return last.shape == number && (before.shape == number || before.shape == part)
}

// thingPart steps over so many of something behind scores and a comma, up to the next
// mark, where nothing that is done to a paddock is said of it: "2 rails broken", "3
// rabbits in there".
//
//	thing = "," whole word { word }
func (r *reader) thingPart(c *clause, i int) int {
	a, ok := r.value(i)
	if !ok || a.decimal || i < 3 || r.tok(i-1).text != "," || !r.countable(a.next) || !r.countsThing(i, a) {
		return i
	}
	k := a.next
	for ; !r.endsPiece(k); k++ {
		t := r.tok(k)
		if _, j := r.mob(k); j > k || k > a.next+longestTalk || r.padAhead(k) || t.shape != word {
			return i
		}
		switch t.tag {
		case unknown, filler, remark, troubleWord, onWord, ofWord, inWord, atWord:
		default:
			return i
		}
	}
	c.remarks++
	return k
}

// halfOf tells whether a half behind scores is of something else: "half asleep", "half
// the fence is down", "two-thirds of the herd".
func (r *reader) halfOf(i, next int) bool {
	if i == 0 || r.tok(i).tag != partWord || r.tok(i).shape != word {
		return false
	}
	n := r.tok(next)
	return n.shape == number && r.oneOf(i, "half") && n.value > 1 || n.shape == word && (n.tag == unknown || n.tag == dampWord || n.tag == troubleWord || r.oneOf(next, "the", "my", "his") && r.tok(next+1).tag != leafUnit)
}

// ofOther tells whether a word behind a number and a comma makes it none of the scores
// before: "4 out of 5", "1 up", "2 down at half time", "1 wet sock".
func (r *reader) ofOther(i int) bool {
	return r.oneOf(i, "up", "down", "more", "left", "wet", "rain", "dogs", "dog", "be", "counted") || r.oneOf(i, "out") && r.oneOf(i+1, "of")
}

// countable tells whether a word behind a number may be what it counts.
func (r *reader) countable(i int) bool {
	t := r.tok(i)
	return t.shape == word && !t.glued && (t.tag == unknown || t.tag == troubleWord)
}

// thingOrScore asks of a whole number behind scores that the next word may be counted
// by: "12 2 2.5 2 2 rails broken".
func (r *reader) thingOrScore(t *tally, i, next int) {
	n := r.tok(next)
	if uncounted[n.text] {
		return
	}
	if len(t.said) < 2 || r.tok(i).decimal || next != i+1 || !r.countable(next) || !(strings.HasSuffix(n.text, "s") && !strings.HasSuffix(n.text, "ss") && len(n.text) > 3 || n.tag == troubleWord && r.tok(i).value == 1) {
		return
	}
	t.unsure("Is the %s a score, or does it count the %s? Please send each on a line of its own.", r.tok(i).text, n.text)
}

// uncounted end in s and are counted by no number behind scores.
var uncounted = wordSet(`thats its hes shes lets whats heres theres wheres whos this was has does perhaps always sometimes thanks cheers
	hands feet fingers socks ears toes knees boots guess yes us regards apologies seems looks feels needs`)
