package parser

// What people tell beside a report of the way that they went, the gate that they
// shut, who wrote it down and what others think of it: none of it changes what
// is reported.

// wentRound steps over "went round after breakfast": whoever counts goes round,
// where no stock are told of and scores follow.
func (r *reader) wentRound(c *clause, i int) int {
	if !r.oneOf(i, "went") || !r.oneOf(i+1, "round", "around", "walking", "counting", "out") || len(c.mobs) > 0 || c.head > 0 || c.says() {
		return i
	}
	for k := c.from; k < i; k++ {
		if r.beast(k) || r.oneOf(k, "they", "them") {
			return i
		}
	}
	k := i + 2
	if t := r.tok(k); t.tag == toWord || t.tag == ofWord || t.tag == intoWord || r.padAhead(k) && r.oneOf(i+1, "out") {
		return i
	}
	for n := k; n < min(len(r.toks), k+longestPiece) && !r.endsSentence(n); n++ {
		if p, ok := r.onePad(n, false); ok && p.known && r.isScore(p.next) && r.tok(p.next).decimal {
			return k
		}
	}
	return i
}

// drovePast steps over "drove past", "walked by": somebody looked into a paddock.
func (r *reader) drovePast(c *clause, i int) int {
	if !r.oneOf(i, "drove", "drive", "driving", "walked", "cycled", "rode") || len(c.mobs) > 0 || c.head > 0 || c.says() {
		return i
	}
	if k := r.over(i+1, "right", "just"); r.oneOf(k, "past", "by", "alongside") && r.padAhead(r.over(k+1, "the")) {
		return k + 1
	}
	return i
}

// gapClosed steps over "and closed the gap behind them": how a move ended.
//
//	gap = ( "closed" | "shut" | … ) [ "up" ] [ "the" ] ( "gap" | "gate" | "wire" | … ) [ "behind" | "after" ] [ "them" ]
func (r *reader) gapClosed(c *clause, i int) int {
	if !r.oneOf(i, "closed", "shut", "chained", "tied", "pulled", "latched", "bolted", "closing", "shutting") || !c.has(actsGraze) && !r.movedBefore(c, i) {
		return i
	}
	k := r.over(i+1, "up", "over", "across")
	j := r.over(k, "the", "a", "that")
	if !r.oneOf(j, "gap", "gaps", "gate", "gates", "gateway", "wire", "reel", "tape", "rails", "slip", "bars", "hurdle", "fence") {
		return i
	}
	j = r.over(j+1, "rails", "rail", "up", "again", "well", "tight", "properly")
	if r.oneOf(j, "behind", "after") {
		return r.over(j+1, "them", "him", "her", "me", "us", "stock", "cows", "the", "lot", "it")
	}
	if t := r.tok(j); t.shape == end || r.endsSentence(j) || t.text == "," {
		return j
	}
	return i
}

// movedBefore tells whether stock were moved in this sentence before a token.
func (r *reader) movedBefore(c *clause, i int) bool {
	for k := i - 1; k >= 0 && !r.endsSentence(k) && k > i-longestPiece; k-- {
		switch t := r.tok(k); {
		case t.shape == word && (t.tag == putWord || t.tag == movedWord || t.tag == intoWord || t.tag == wentWord || t.text == "took"):
			return r.tok(i-1).tag == andWord || r.tok(i-1).text == ","
		}
	}
	return false
}

// unwritten steps over "nobody wrote it up so here it is" and "so nobody needs to
// ask": what was or need not be done with the report itself.
//
//	unwritten = ( "nobody" | "no" "one" ) ( written [ "it" | "that" ] | "needs" "to" asked ) { word }
func (r *reader) unwritten(c *clause, i int) int {
	k := i + 1
	switch {
	case r.oneOf(i, "nobody", "noone"):
	case r.oneOf(i, "no") && r.oneOf(i+1, "one"):
		k++
	default:
		return i
	}
	k = r.over(k, "has", "had", "else", "ever")
	switch {
	case r.oneOf(k, "wrote", "written", "logged", "texted", "sent", "entered", "recorded", "noted", "put", "posted"):
		j := r.over(k+1, "it", "that", "this", "them")
		if j == k+1 || r.tok(j).tag == inWord && r.padAhead(j+1) {
			return i
		}
		k = j
	case r.oneOf(k, "needs", "need", "has", "have") && r.oneOf(k+1, "to") && r.oneOf(k+2, "ask", "worry", "wonder", "ring", "text", "check", "guess", "look"):
		k += 3
	default:
		return i
	}
	return r.talkFrom(i, k)
}

// opinion steps over what others think of a paddock whose tillers were told:
// ", somebody said it was ready but I don't think so".
//
//	opinion = who ( "said" | "reckons" | … ) ( "it" | "theyre" ) [ "was" ] { word } judged [ "but" { word } ]
func (r *reader) opinion(c *clause, i int) int {
	b := r.tok(i - 2)
	if r.tok(i-1).text != "," || b.shape != number && b.shape != part || !r.oneOf(i, "somebody", "someone", "everyone", "everybody", "dad", "mum", "boss", "he", "she", "they", "neighbour", "lads", "people") {
		return i
	}
	if !r.oneOf(i+1, "said", "says", "reckons", "reckoned", "thinks", "thought", "told", "say") {
		return i
	}
	k := r.over(i+2, "me", "us", "that")
	if !r.oneOf(k, "it", "its", "theyre", "they") {
		return i
	}
	k = r.over(k+1, "was", "is", "were", "are", "looks", "looked", "nearly", "almost", "about", "getting", "well", "not", "far", "too", "plenty", "a", "bit")
	if !r.oneOf(k, "ready", "ripe", "good", "fit", "late", "early", "overgrown", "enough", "grand", "fine", "gone", "past") {
		return i
	}
	k = r.over(k+1, "over", "enough", "to", "graze", "now", "go", "for", "it", "yet", "already")
	if r.oneOf(k, ",") {
		k++
	}
	if r.oneOf(k, "but") {
		return r.talkFrom(i, k)
	}
	if r.tok(k).shape == end || r.endsSentence(k) {
		return k
	}
	return i
}

// whereItFell steps over "where a tree came down" behind what is wrong in a
// paddock: it asks nothing.
//
//	where = "where" ( "a" | "the" | "that" ) word verb { word }
func (r *reader) whereItFell(c *clause, i int) int {
	if !r.oneOf(i, "where") || !c.trouble || len(c.pads) != 1 || !r.oneOf(i+1, "a", "the", "that", "some", "one", "we", "they", "it") {
		return i
	}
	for k := i + 1; k < i+6; k++ {
		if r.oneOf(k, "came", "fell", "broke", "snapped", "rubbed", "pushed", "got", "blew", "rotted", "rusted", "went", "hit", "crossed", "crosses", "meets", "used") {
			for k++; r.tok(k).shape == word && !r.padAhead(k) && !r.joins(k); {
				k++
			}
			return k
		}
	}
	return i
}

// noGrassLeft steps over ", before was already no grass there" behind a move: why
// the stock went.
//
//	noGrass = ( "before" | "there" ) [ "there" | "it" ] "was" [ "already" ] ( "no" | "little" ) [ "more" ] ( "grass" | "feed" ) [ "there" | "left" ]
func (r *reader) noGrassLeft(c *clause, i int) int {
	if !r.oneOf(i, "before", "there") || !r.joins(i-1) && !r.endsSentence(i-1) || !c.has(actsGraze) && !r.movedBefore(c, i) && r.tok(i-1).text != "," {
		return i
	}
	k := r.over(i+1, "there", "it")
	if !r.oneOf(k, "was", "is") {
		return i
	}
	k = r.over(k+1, "already", "nearly", "almost", "just")
	if !r.oneOf(k, "no", "not", "little", "hardly") {
		return i
	}
	k = r.over(k+1, "more", "any", "much", "enough")
	if !r.oneOf(k, "grass", "feed", "cover", "eating") {
		return i
	}
	k = r.over(k+1, "there", "left", "in", "it", "anymore", "more", "for", "them")
	if r.tok(k).shape != end && !r.endsSentence(k) && !r.joins(k) {
		return i
	}
	return k
}
