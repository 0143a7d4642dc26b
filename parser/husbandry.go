package parser

// What is done with stock where they stand, or happens to them there, is worth a
// note and moves none of them: "ewes lambing in 9", "heifers scanned in 12".

// worked reads a word of work with stock, or of what happens to them: a remark where
// no paddock is named beside it, and a note where they stand in one.
func (r *reader) worked(c *clause, i int) int {
	t := r.tok(i)
	switch {
	case eventWords[t.text]:
		c.event = true
	case workVerbs[t.text] && !r.padInPiece(i+1):
		c.remarks++
	case (workVerbs[t.text] || workHere[t.text]) && !movingWork[t.text] && r.standIn(c, i):
		c.event = true
	default:
		return i
	}
	return i + 1
}

// standIn tells whether stock are named beside a word, in or at one paddock.
//
//	standIn = stock { word } work { word } ( "in" | "at" ) paddock | stock ( "in" | "at" ) paddock [ "are" ] work
func (r *reader) standIn(c *clause, i int) bool {
	if !r.anyBeast(max(c.from, i-8), i) && !r.anyBeast(i+1, i+3) || c.says() || c.count != nil {
		return false
	}
	at := func(k int) bool {
		return (r.oneOf(k, "in", "at") || r.tok(k).tag == onWord && r.oneOf(k, "on")) && r.padAhead(r.over(k+1, "the", "paddock", "p", "pdk", "field"))
	}
	if len(c.pads) > 0 {
		return len(c.pads) == 1 && at(r.back(c.pads[0].at-1, "the", "paddock", "p", "pdk", "field"))
	}
	for k := i + 1; k < i+8; k++ {
		switch t := r.tok(k); {
		case at(k):
			return true
		case t.shape == end, t.shape == newline, t.shape == mark, r.padAhead(k), t.tag == intoWord, t.tag == toWord, t.tag == outWord, t.tag == fromWord, t.tag == movedWord:
			return false
		}
	}
	return false
}

// eventWords tell of something in a paddock that is worth a note, and no
// grazing: "calf born in 9", "heifers cycling in hill".
var eventWords = wordSet(`born bulling cycling lost missing vet calved lambed mated tagged tailed castrated`)

// workVerbs tell of work with stock that moves none of them: "lambs weaned
// today". With a paddock in the same breath it is asked whether they are there.
var workVerbs = wordSet(`weaned drenched shorn crutched dagged dipped drafted weighed vaccinated docked dehorned dosed jabbed scanned`)

// padInPiece tells whether a paddock is named from a token to the next comma,
// "and" or end.
func (r *reader) padInPiece(i int) bool {
	for to := i + 12; i < to; i++ {
		t := r.tok(i)
		if t.shape == end || t.shape == newline || t.shape == mark || t.tag == andWord {
			return false
		}
		if r.padAhead(i) && !r.when(i).ok {
			return true
		}
	}
	return true
}

var (
	// workHere is said of stock where they stand alone; elsewhere it has meanings of its own.
	workHere = wordSet(`lambing calving kidding shearing crutching dagging dipping drenching tailing docking scanning serving checked inspected treated milked`)
	// movingWork often moves those that it is done with: "weaned in 9".
	movingWork = wordSet(`weaned drafted`)
)
