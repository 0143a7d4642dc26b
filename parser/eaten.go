package parser

// Stock may be said to have eaten a paddock, or a part of it, in many ways:
// "milkers got through three quarters of 24", "steers only took half of creek
// bottom", "heifers knocked 16 down".

// eaten reads a verb of eating between stock and what they grazed. Verbs that
// are said of other things too want a part ("of") behind them, or a day's turn.
//
//	eaten = verb [ particle ] [ hedge ] ( share "of" place | place )
func (r *reader) eaten(c *clause, i int) int {
	t := r.tok(i)
	if t.shape != word || !eatVerbs[t.text] && !tookVerbs[t.text] || len(c.pads) > 0 || c.acts&^actGrazed != 0 || c.count != nil || c.guard&^guardFuture != 0 {
		return i
	}
	if !r.stockNamed(c, i) {
		return i
	}
	k := i + 1
	for r.tok(k).shape == word && eatParticles[r.tok(k).text] || r.tok(k).tag == hedgeWord {
		k++
	}
	part := r.partOf(k) || r.partHere(k)
	if t.text == "got" && !r.oneOf(i+1, "through", "over") {
		if !part {
			return i
		}
		c.unsure("Are they in it now, or is that grazed? Please say “in” or “grazed”.") // "dries got the back half of 30"
	}
	switch {
	case part:
	case !r.padAhead(k), r.hasTag(k, k+3, troubleWord):
		return i
	case t.text == "had":
		if !r.turnTold(c, k) {
			return i
		}
	case !eatVerbs[t.text] && t.text != "got":
		return i
	case r.oneOf(k-1, "into", "to"):
		return i
	}
	if r.anyPaddock {
		r.way = roleAt // any name may follow
	}
	c.acts |= actGrazed
	return k
}

// partOf tells whether a part of a paddock is told at a token: "half of 12",
// "most of 12" is none.
func (r *reader) partOf(i int) bool {
	var c clause
	for k := i; k < i+3; k++ {
		if r.oneOf(k, "the", "a", "an", "other", "first", "last", "top", "bottom", "front", "back") {
			continue
		}
		next := r.sharePart(&c, k)
		return next > k && c.share > 0 && c.doubt == "" && r.padAhead(next)
	}
	return false
}

// partDone reads "finished the far end of 12" behind stock: all of it is not
// said to be grazed.
func (r *reader) partDone(c *clause, i int) int {
	if c.acts&^actGrazed != 0 || c.count != nil || len(c.pads) > 0 || !r.partHere(i+1) || len(c.mobs) == 0 && !r.stockNamed(c, i) {
		return i
	}
	c.acts |= actGrazed
	return i + 1
}

// partHere tells whether a part of a paddock is told by where it lies: "the top
// end of 12".
func (r *reader) partHere(i int) bool {
	_, k := r.partAhead(i)
	return k > i
}

// turnTold tells whether "had 13" was a turn on a paddock rather than so many
// of something: it names the paddock by more than a number, or a day or a night
// stands with it, and the stock are none that may have had young.
func (r *reader) turnTold(c *clause, i int) bool {
	p, ok := r.onePad(r.over(i, "the", "our"), true)
	if !ok || !p.known {
		return false
	}
	for k := p.next; k < p.next+4; k++ {
		if r.oneOf(k, "for") && r.oneOf(k+1, "the", "a") && (r.tok(k+2).tag == dayUnit || r.tok(k+2).tag == nightWord || r.tok(k+2).tag == daytimeWord) {
			return true
		}
	}
	if r.byNumber(p) == 0 {
		return true
	}
	if m := mobsOf(c)[0]; m == "" || mayBirth[m] {
		return false
	}
	return c.days.ok || r.when(p.next).ok || r.oneOf(p.next, "overnight")
}

// mayBirth are mobs of which "had 3" may tell of young.
var mayBirth = wordSet(`heifers ewes springers dries hinds goats pairs hoggets`)

var (
	eatVerbs = wordSet(`cleaned chewed knocked nibbled smashed hammered demolished polished flogged ripped mowed munched chomped browsed stripped scoffed
		hoovered devoured skinned trimmed ploughed plowed walloped whacked nailed chowed`)
	tookVerbs    = wordSet(`took taken used did had got covered finished gone went worked`)
	eatParticles = wordSet(`through over off down out up back about roughly only just around nearly all right`)
)
