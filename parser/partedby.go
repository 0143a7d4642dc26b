package parser

// partedBy tells whether the word at i parts two statements with no mark between
// them: "heifers in barn then fertilized west 80", "12 2 2.5 2 also topped 8". Where
// the first has said nothing yet, the word belongs to what it will say: "12 and 13
// also grazed".
func (r *reader) partedBy(c *clause, i, to int) bool {
	t := r.tok(i)
	if i == c.from || i+1 >= to || t.shape != word || t.text != "also" && t.text != "then" {
		return false
	}
	if _, n := r.alsoTillers(i); n > i || r.setAside(i+1) {
		return false
	}
	if c.says() || len(c.pads) == 0 && (c.until != 0 || c.spell != 0) {
		return true
	}
	if len(c.pads) == 0 && (len(c.mobs) > 0 || c.head > 0) && c.acts == 0 && c.from > 0 && r.tok(c.from-1).text == "," && (c.head > 0 || r.newsAhead(i+1)) {
		return true // "12 grazed, 25 heifers also air temp 12"
	}
	if len(c.pads) == 0 {
		p, ok := r.onePad(i+1, false)
		return len(c.mobs) > 0 && c.acts == 0 && ok && r.itsOwn(p.next) // "grazed p2 this morning, heifers then p3: 2 2.5"
	}
	if t := r.tok(i - 1); t.shape == word && (t.tag == okWord || fineWords[t.text]) {
		return true // "2 too wet, 4 grand also took the hold off 5"
	}
	first := c.pads[0].role
	herd := len(c.mobs) > 0 || c.head > 0 || len(c.pads) > 1 && first != roleNone && c.pads[1].role != first
	bare := (first == roleAt || first == roleIn) && c.acts == 0 && c.strange+c.remarks == 0 && (r.newsAhead(i+1) || r.staysAhead(i+1, to)) // "out 2, in 8 then resown 6"
	there := bare || first != roleNone && (r.stockSaid(c, i) || r.oneOf(c.from, "now"))                                                    // "now they are in 1"
	if c.guard != 0 || !herd && !there && !(first != roleNone && r.herdAhead(i+1)) {
		return false
	}
	return r.newsAhead(i+1) || t.text == "also" && r.tok(i+1).shape == word && r.verbLike(i+1) && r.padSoon(i+2, to) || r.herdAhead(i+1) && r.padSoon(i+1, to)
}

// newsAhead tells whether a verb follows, or a state, that is none of stock that
// move on.
func (r *reader) newsAhead(i int) bool {
	d, _, ok := r.idiomAt(i)
	if r.oneOf(i, "grazed", "finished", "half") && r.padSoon(i+1, i+4) {
		return true
	}
	if ok && (d.none || d.acts&actsGraze != 0) || r.oneOf(i, "in", "out", "off", "moved", "done", "shifted", "back", "grazed", "grazing") {
		return false
	}
	return ok && d.acts&^(actPlace|actDone) != 0 || r.eventAhead(i)
}

// verbLike tells whether a word is a verb of the past that is none of stock that
// move: "also lifted the hold on 12".
func (r *reader) verbLike(i int) bool {
	t := r.tok(i).text
	return len(t) > 4 && t[len(t)-2:] == "ed" && !r.oneOf(i, "moved", "shifted", "need", "turned", "rotated")
}

// staysAhead tells whether words follow up to a paddock that do not tell where stock
// go: "then got around to topping 12".
func (r *reader) staysAhead(i, to int) bool {
	if r.tok(i).shape != word || r.herdAhead(i) {
		return false
	}
	for k := i; k < min(to, i+6) && r.tok(k).shape == word; k++ {
		switch r.tok(k).tag {
		case inWord, intoWord, outWord, offWord, movedWord, putWord:
			return false
		case toppedWord, cutWord, mowWord, sprayWord, fertWord, effWord, sowWord:
			return r.padSoon(k+1, to)
		}
	}
	return false
}

// padSoon tells whether a paddock is named in the next few words.
func (r *reader) padSoon(i, to int) bool {
	for k := i; k < min(to, i+8) && r.tok(k).shape != mark && r.tok(k).shape != newline; k++ {
		if p, ok := r.onePad(k, false); ok && p.known {
			return true
		}
	}
	return false
}
