package parser

import (
	"slices"
	"strconv"
)

// mostPads is how many paddocks one message can name (ours).
const mostPads = 300

// padsPart reads paddocks, and the scores behind a single one.
//
//	paddocks = place { ( "," | "and" | "&" | "+" | "/" ) place } | whole "-" whole
func (r *reader) padsPart(c *clause, i int) int {
	j := i
	if share, k := r.partAhead(i); k > i && c.count == nil {
		j = k
		if share > 0 {
			c.share = share
		} else {
			c.someOf = true
		}
	}
	if r.tok(j).text == "the" {
		j++
	}
	if r.named > mostPads {
		return i
	}
	if r.headed && c.count == nil && len(c.pads) == 0 && r.tok(j).shape == number && r.isScore(j) && r.tok(j).value <= 5 && r.tok(j+1).text != ":" && !r.day(j+1).ok {
		return i
	}
	if len(c.pads) == 1 && c.count == nil && c.acts == 0 && r.way == roleNone && r.oneOf(j-1, "its", "is", "was", "were", "it") && r.listAt(j) {
		return i // "down on south it's 2 2.25 2.5"
	}
	if r.awaiting && c.count == nil && len(c.pads) == 0 && r.way == roleNone && r.listAt(j) {
		return i // "9A yesterday, 1, 1.5, 1"
	}
	if c.count != nil && !c.count.empty() && len(c.pads) == 0 && r.tok(j-1).tag == toWord && r.anyPaddock {
		return i // "2.5 2 3, soaked to the skin"
	}
	if r.scoresHere(c, j) || r.scoresOfRecent(c, j) {
		return i
	}
	if r.paired && len(c.pads) == 0 && r.pairAt(j) || c.awaits() && r.way == roleNone && r.tok(j).shape == number && r.isScore(j) && r.tok(j).value <= 5 {
		return i
	}
	one, ok := r.onePad(j, r.way != roleNone)
	if !ok {
		return i
	}
	if doubt, ok := r.unknownName(j); ok {
		c.unsure(doubt)
	}
	if r.pairPad(c, one, j) {
		return one.next
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
	if c.count != nil && !c.count.empty() && len(c.pads) == 0 && !one.marked && r.tok(j).shape == number && r.oneOf(j-1, "just", "only", "did", "got", "about", "all", "total") {
		c.unsure("Which paddock are those scores from?") // "1 1.5 1, just 6": how many there were
	}
	r.tied = false
	list, k := r.padList(one, j, r.way != roleNone || c.acts&^(actSilage|actHay) != 0)
	if r.tied {
		c.unsure("Which of those paddocks had which done? Please send each job on a line of its own.") // "topped 1 and 16, 10 and 13 sprayed"
	}
	if c.count == nil && len(c.pads) == 0 && len(list) > 1 {
		if k, ok := r.sharedTarget(c, list, k); ok {
			return k
		}
	}
	if t := r.tok(j); c.count != nil && len(c.pads) == 0 && t.shape == number && t.value <= 4 && !one.marked && one.next == j+1 && r.way == roleNone {
		c.unsure("Is that " + t.text + " the paddock or a score? Please send the paddock first, such as: p" + t.text + " 2 2.5 2")
	}
	for n := range list {
		list[n].role = r.way
	}
	r.way = roleNone
	c.pads = append(c.pads, list...)
	r.named += len(list)
	return k
}

// listAt tells whether a list of scores starts at i: two or more with a point
// among them, or more than three.
func (r *reader) listAt(i int) bool {
	t := r.tok(i)
	if t.shape != number && t.shape != part || t.value > 5 || !r.isScore(i) {
		return false
	}
	list, k := r.lookAtScores(i)
	return (len(list.said) > 1 && list.decimal || len(list.said) > 3) && list.doubt == "" && !r.eventAhead(k)
}

// scoresHere tells whether the bare number at i begins the scores of the one
// paddock named before: "12 yesterday 2 2.5 2".
func (r *reader) scoresHere(c *clause, i int) bool {
	t := r.tok(i)
	if len(c.pads) != 1 || c.strange > 0 || c.pads[0].role != roleNone || c.acts != 0 || c.count != nil && !c.count.empty() || c.pads[0].next == i || r.way != roleNone ||
		t.shape != number || t.value > 5 || !r.isScore(i) || r.joins(i-1) {
		return false
	}
	list, _ := r.lookAtScores(i)
	return (len(list.said) > 1 || list.decimal) && list.doubt == ""
}

// scoresOfRecent tells whether the bare number that opens a message begins the
// scores of the paddock that the sender named within the hour.
func (r *reader) scoresOfRecent(c *clause, i int) bool {
	t := r.tok(i)
	if r.Recent == "" || len(c.pads) > 0 || c.acts != 0 || t.shape != number || t.value > 4 || r.joins(i+1) && !r.isScore(i+2) {
		return false
	}
	if r.opening == i && !t.decimal && r.bears(t.text) && r.tok(i+1).shape == number && !r.tok(i+1).glued {
		return false // it may be that paddock
	}
	list, k := r.lookAtScores(i)
	return len(list.said) > 1 && list.doubt == "" && !r.eventAhead(k)
}

// joinedBefore tells whether a comma or "and" stands before a token.
func (r *reader) joinedBefore(i int) bool { return i > 0 && r.joins(i-1) }

// onePad reads one paddock; loose allows a name that is not in the register
// where a preposition announces one.
//
//	place = [ "p" | "pdk" | "paddock" | "field" | "pasture" | "#" ] name | name "paddock"
func (r *reader) onePad(i int, loose bool) (place, bool) {
	t := r.tok(i)
	if t.tag == padMark && t.shape == word || t.text == "#" || r.lotMark(i) {
		return r.markedPad(i)
	}
	if n := r.tok(i + 1); r.oneOf(i, "number", "numbers", "num") && n.shape == number && !n.decimal && !r.unitAhead(i+2) {
		if b := r.tok(i - 1); i == 0 || b.shape != word || !numberedThings[b.text] && b.tag != mobWord && b.tag != looseMob {
			return r.markedPad(i) // "in number 10"
		}
	}
	p, ok := r.longest(i)
	if !ok {
		p, ok = r.wildPad(i, loose)
	}
	if !ok && t.shape == word {
		p, ok = r.cutShortName(i)
	}
	if !ok {
		p, ok = r.wrongNumber(i)
	}
	if !ok {
		p, ok = r.halfName(i)
	}
	if b := r.tok(i - 1); !ok && t.tag == numberWord && t.sense > 0 && i > 0 && (b.tag == inWord || b.tag == intoWord || b.tag == toWord || b.tag == fromWord || b.tag == ofWord || b.tag == offWord) && !r.unitAhead(i+1) {
		if p, ok := r.wordNumber(i); ok && p.known {
			p.marked = false
			return p, true
		}
	}
	if !ok || r.notAPad(i, p) || r.partNamed(i, p) {
		return place{}, false
	}
	if s := r.tok(p.next); s.text == "s" && s.glued && t.shape == number {
		p.next++ // "16s too wet"
	} else if u := r.tok(p.next + 1); s.text == "'" && s.glued && u.text == "s" && u.glued && t.shape == number && r.tok(p.next+2).tag != holdWord && r.tok(p.next+2).tag != padMark {
		p.next += 2 // "12's a bit rough"
	}
	if q, s := r.tok(p.next), r.tok(p.next+1); q.text == "'" && q.glued && s.text == "s" && s.glued && t.shape == number && isStates[r.tok(p.next+2).tag] {
		p.next += 2 // "8's sprayed"
	}
	if r.markBehind(p.next, t.shape == word) {
		p.next++
		p.marked = true
	}
	p.marked = p.marked || t.pair
	p.at = i
	return p, true
}

// isStates are parts of speech behind "8's" that make it "8 is".
var isStates = map[tag]bool{sprayWord: true, wetWord: true, dampWord: true, dryWord: true, shutWord: true, closedWord: true, grazedWord: true, doneWord: true,
	toppedWord: true, cutWord: true, mowWord: true, sowWord: true, fertWord: true}

// markBehind tells whether the word behind a name marks it as a paddock's:
// "north pasture", "barn lot". A number behind the mark is a score of a named
// one where it has a point, is of leaves, or another score follows.
func (r *reader) markBehind(i int, named bool) bool {
	t := r.tok(i)
	if t.shape != word || t.tag != padMark && (t.text != "lot" || !named) || len(t.text) < 2 {
		return false
	}
	if r.tok(i+1).shape != number {
		return true
	}
	a, _ := r.value(i + 1)
	return named && r.isScore(i+1) && (a.decimal || r.isScore(a.next) || r.leafy(a.next) || r.tok(a.next).tag == timesWord && r.tok(a.next+1).glued)
}

// lotMark tells whether "lot" marks the number behind it as a paddock's: where
// stock go in or out of it, or scores follow. A lot may also be of stock.
func (r *reader) lotMark(i int) bool {
	if !r.oneOf(i, "lot") || r.tok(i).shape != word || r.tok(i+1).shape != number || r.tok(i+1).decimal {
		return false
	}
	switch b := r.tok(i - 1); {
	case i == r.opening:
		return r.isScore(r.intro(i+2)) && r.intro(i+2) > i+2
	case b.shape != word:
		return false
	case b.tag == inWord, b.tag == intoWord, b.tag == toWord, b.tag == fromWord, b.tag == offWord:
		return true
	case b.tag == ofWord:
		return r.tok(i-2).tag == outWord
	}
	return false
}

// markedPad reads a name behind "p" or "paddock".
func (r *reader) markedPad(i int) (place, bool) {
	if b := r.tok(i - 1); i > 0 && (i-1 == r.opening || i-2 == r.opening && r.tok(i-2).shape == word && (r.tok(i-2).tag == unknown && len(r.tok(i-2).text) > 2 || positions[r.tok(i-2).text]) && !mayBeVerb(r.tok(i-2).text)) && b.shape == word && (b.tag == topWord || placeWords[b.text] || (r.maybeName(b) || b.tag == acreUnit && i-2 == r.opening) && r.isScore(i+2)) && len(r.tok(i).text) > 2 && r.tok(i+1).shape == number && !r.bears(b.text) {
		return place{name: r.source(max(r.opening, i-2), i+1), marked: true, at: i, next: i + 1}, true // "back paddock 2 2.5": no paddock 2
	}
	j := i + 1
	if r.tok(j).text == "#" || r.tok(j).text == "." && r.tok(j).glued && (r.tok(j+1).glued || len(r.tok(i).text) < 5) || r.tok(j).text == "no" && r.tok(j+1).shape == number {
		j++
	}
	if r.tok(j).tag == numberWord {
		return r.wordNumber(j)
	}
	p, ok := r.longest(j)
	if !ok {
		p, ok = r.wildPad(j, true)
	}
	if t := r.tok(j); !ok && r.anyPaddock && t.shape == word && nameTags[t.tag] && len(t.text) > 1 && !notNames[t.text] && !walkWords[t.text] && !grassWords[t.text] && !hurtWords[t.text] && !illWords[t.text] && !r.namesIllness(j, j+1) {
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

// maybeName tells whether a word before "paddock" may be a part of its name:
// one that nobody knows.
func (r *reader) maybeName(t *token) bool {
	return (t.tag == unknown || t.tag == looseMob || t.tag == mobWord) && len(t.text) > 2 && !r.oneOfText(t, "did", "count", "counts", "score", "tally", "okay")
}

// oneOfText tells whether a token is one of some words.
func (r *reader) oneOfText(t *token, words ...string) bool { return slices.Contains(words, t.text) }

// wordNumber reads "paddock twelve".
func (r *reader) wordNumber(j int) (place, bool) {
	n := strconv.Itoa(int(r.tok(j).sense))
	name, ok := r.book.has(n)
	if !ok {
		name = n
	}
	return place{name: name, known: ok || r.anyPaddock && n != "0", marked: true, next: j + 1}, true
}
