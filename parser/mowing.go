package parser

// mowing reads words that mean that grass was cut where hay or silage is named
// with them: "knocked down 14 for hay", "dropped 8 for silage", "hay is down in
// 11", and "ran the topper over 5".
//
//	mowing = ( "knocked" | "dropped" | … ) { word } "for" ( hay | silage ) | ( hay | silage ) { "is" | "now" } "down" [ "in" place ]
func (r *reader) mowing(c *clause, i int) int {
	t := r.tok(i)
	switch {
	case t.shape != word:
	case fellVerbs[t.text]:
		for k := i + 1; k < i+9; k++ {
			u := r.tok(k)
			if u.shape == end || u.shape == newline || u.text == "." {
				return i
			}
			if u.shape == word && (u.tag == hayWord || u.tag == silageWord) {
				if r.tok(k-1).tag != forWord && r.tok(k-1).tag != intoWord {
					return i // "dropped hay in 12"
				}
				c.acts |= actMow
				return r.over(i+1, "down", "over")
			}
		}
	case r.oneOf(i, "ran", "run", "took") && toppers[r.tok(r.over(i+1, "the", "a", "old", "new", "our", "brush", "bush")).text]:
		return i + 1
	case toppers[t.text] && r.oneOf(r.back(i-1, "the", "a", "old", "new", "our", "brush", "bush"), "ran", "put", "took", "run"):
		if k := r.over(i+1, "back"); r.oneOf(k, "over", "round", "around", "through", "across", "on", "in") && r.padAhead(k+1) {
			c.acts |= actTopped
			return k + 1
		}
	case r.oneOf(i, "down") && c.has(actSilage|actHay) && !r.oneOf(i+1, "to", "by", "from"):
		b := r.tok(r.back(i-1, "is", "are", "all", "now", "already", "was", "finally", "it", "its"))
		ahead := (r.tok(i+1).tag == inWord || r.tok(i+1).tag == atWord || r.tok(i+1).tag == onWord) && r.padAhead(i+2) && !(r.anyPaddock && elsewhere[r.tok(r.over(i+2, "the")).text])
		if b.tag != hayWord && b.tag != silageWord && b.tag != cutWord || len(c.pads) == 0 && !ahead || !ahead && r.tok(i-1) == b && b.text != "hays" {
			return i
		}
		c.acts |= actCut
		return i + 1
	}
	return i
}

// toppers are what a paddock is topped with.
var toppers = wordSet(`topper mulcher slasher mower hog toppers`)

// fellVerbs may tell that grass was cut.
var fellVerbs = wordSet(`knocked dropped laid felled flattened downed chopped`)

// back steps back over some words.
func (r *reader) back(i int, words ...string) int {
	for i > 0 && r.oneOf(i, words...) {
		i--
	}
	return i
}

// cuttingNoun tells whether "cutting" names the cut rather than the work: "first
// cutting of hay is down". The cut itself must be told beside it.
func (r *reader) cuttingNoun(i int) bool {
	if !r.oneOf(i, "cutting") {
		return false
	}
	b := r.tok(i - 1)
	if b.tag != ordinalWord && !isOrdinalMark(b) && !r.oneOf(i-1, "last", "final") && r.tok(i+1).tag != ofWord {
		return false
	}
	for k := i + 1; k < i+16; k++ {
		t := r.tok(k)
		if t.shape == newline || t.text == "." || t.text == "!" {
			return false
		}
		if t.shape == word && (t.tag == cutWord || t.tag == mowWord || t.tag == baleWord || r.oneOf(k, "down", "made", "wrapped", "done")) {
			return true
		}
	}
	return false
}

// carried tells whether a clause behind a lifted hold tells no more than that the
// bales are away: "take the hay hold off hill, bales are in".
func (c *clause) carried(last *clause) bool {
	return last.family() == famRelease && c.has(actBale) && c.acts&^(actBale|actSilage|actHay|actIn|actPlace|actGoing|actOut|actDone) == 0 && c.count == nil && c.guard == 0 && len(c.pads)+len(c.mobs)+len(c.nums) == 0
}

// gathers tells whether a clause tells no more than that what was cut has been
// baled or wrapped: "mowed 12 for silage yesterday, baled today".
func (c *clause) gathers(last *clause) bool {
	return c.acts&(actBale|actSilage|actHay) != 0 && c.acts&^(actBale|actSilage|actHay) == 0 && c.count == nil && c.guard == 0 && len(c.pads)+len(c.mobs)+len(c.nums) == 0 && c.days.ok &&
		last.family() == famCut && last.guard == 0 && last.has(actCut|actMow) && last.has(actSilage|actHay) && len(last.pads) > 0 && c.days.day >= last.days.day
}

// makingAhead tells whether a clause behind a mowing tells how the hay or silage
// is to be made: "baler's coming when it's had a turn or two".
func (r *reader) makingAhead(last, c *clause) bool {
	if last.family() != famCut || !last.has(actCut|actMow) || last.guard != 0 || r.asking || len(c.pads)+len(c.mobs) > 0 || c.count != nil || c.stock {
		return false
	}
	if at := r.firstWord(c); r.oneOf(at, "not", "wont", "cant", "havent", "hasnt", "isnt", "didnt") && c.guard&guardNeg != 0 && c.guard&^(guardNeg|guardPlan|guardFuture) == 0 {
		return makingWords[r.tok(r.over(at+1, "be", "been", "get", "it", "yet", "going", "to")).text] && c.acts&^(actBale|actSilage|actHay|actGoing) == 0 // "not raking it till Friday"
	}
	if at := r.over(r.firstWord(c), "heavy", "light", "good", "big", "great", "nice", "crop", ","); c.guard&^(guardPlan|guardFuture) == 0 && r.oneOf(at, "wrapping", "baling", "raking", "rowing", "tedding", "carting", "stacking") && c.acts&^(actBale|actSilage|actHay|actGoing) == 0 && len(c.nums) == 0 {
		return true // "wrapping it this arvo"
	}
	if at := r.firstWord(c); c.guard&^(guardPlan|guardFuture) == 0 && c.guard != 0 && r.oneOf(at, "should", "will", "hopefully", "itll") && r.oneOf(r.over(at+1, "should", "will", "all", "get", "be"), "baled", "wrapped", "raked", "tedded", "turned", "carted", "rowed", "stacked") {
		return c.acts&^(actBale|actSilage|actHay) == 0 // "should be baled by Friday"
	}
	if c.guard&(guardCond|guardAsk) == 0 || c.guard&^(guardPlan|guardCond|guardAsk|guardFuture) != 0 || c.until != 0 ||
		c.acts&^(actBale|actSilage|actHay|actGoing|actMoved|actOrder|actDry|actDamp|actOut|actDone) != 0 {
		return false
	}
	for i := r.firstWord(c); i < c.to; i++ {
		if makingWords[r.tok(i).text] {
			return !r.oneOf(r.firstWord(c), "if", "unless")
		}
	}
	return false
}

// makingWords are of the work between mowing and the stack.
var makingWords = wordSet(`baler balers bale bales baling baled rake raking raked ted tedding tedder turn turned turning wrap wrapped wrapper wrapping cart carting
	wilted wilts contractor contractors rowed row loader stack stacking trucks`)

// jobDone tells whether cutting or topping is told to be over: "got round to
// topping 12", "finished topping 12".
func (r *reader) jobDone(c *clause, i int) bool {
	if r.oneOf(i, "mowing", "mow", "baling") {
		return false
	}
	if r.tok(i-1).tag == doneWord && i-1 >= c.from && r.tok(i-1).shape == word {
		return true
	}
	return i-3 >= c.from && r.tok(i-1).tag == toWord && r.oneOf(i-2, "round", "around") && r.oneOf(i-3, "got", "gotten")
}

// gotRoundTo steps over "got round" before "to topping".
func (r *reader) gotRoundTo(c *clause, i int) int {
	if c.guard != 0 || !r.oneOf(i+1, "round", "around") || r.tok(i+2).tag != toWord || r.tok(i+3).tag != cuttingWord {
		return i
	}
	c.remarks++
	return i + 3
}
