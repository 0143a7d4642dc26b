package parser

import "strings"

// effect is what an idiom or a word does to its clause.
type effect struct {
	acts  act
	guard guard
	kept  bool // stock were kept out: couldn't go in
	event bool // something went wrong, worth a note: got out, broke in
	still bool // stock are where they were
	none  bool // it only keeps its words from being read singly
	late  bool // an hour of the afternoon or evening
}

// idiom is one expression: the words behind its first, and what it does.
type idiom struct {
	rest []string
	effect
}

// idioms holds the expressions by their first word, longest first.
var idioms = buildIdioms()

func buildIdioms() map[string][]idiom {
	by := map[string][]idiom{}
	for e, table := range idiomTable {
		for _, text := range strings.Split(table, ";") {
			w := strings.Fields(text)
			if len(w) > 1 {
				by[w[0]] = append(by[w[0]], idiom{w[1:], e})
			}
		}
	}
	for first, list := range by {
		for i := 1; i < len(list); i++ {
			for j := i; j > 0 && len(list[j].rest) > len(list[j-1].rest); j-- {
				list[j], list[j-1] = list[j-1], list[j]
			}
		}
		by[first] = list
	}
	return by
}

// idiomAt gives the longest idiom at a token.
func (r *reader) idiomAt(i int) (idiom, int, bool) {
	t := r.tok(i)
	if t.shape != word {
		return idiom{}, i, false
	}
	for _, d := range idioms[t.text] {
		n := 0
		for n < len(d.rest) && r.tok(i+1+n).text == d.rest[n] {
			n++
		}
		if n == len(d.rest) {
			return d, i + 1 + n, true
		}
	}
	return idiom{}, i, false
}

// idiomPart lays an idiom's effect on its clause.
func (r *reader) idiomPart(c *clause, i int) int {
	if r.oneOf(i, "too") && r.tooMuchTo(i+1) {
		c.guard |= guardNeg
		return i + 2 // "too wet to spray"
	}
	if k := r.noStock(c, i); k > i {
		c.acts |= actHold
		return k
	}
	if k := r.cameTo(i); k > i && (r.headed || c.awaits()) && len(c.mobs) == 0 && c.acts == 0 {
		c.remarks++ // "ten tillers in 7 and they came out 2.35"
		return k
	}
	d, k, ok := r.idiomAt(i)
	if !ok {
		return i
	}
	if r.oneOf(i, "got") && r.oneOf(i+1, "to") && k == i+2 && r.tok(k).tag == padMark && r.padAhead(k) && len(c.mobs) == 0 {
		c.remarks++
		return i + 1 // "finally got to p25"
	}
	if r.oneOf(i, "out") && r.oneOf(i+1, "of") && c.awaits() && len(c.mobs) == 0 && len(c.pads) == 0 && c.acts == 0 {
		return k // "10 tillers out of 7"
	}
	if p, is := r.longest(i); is && p.next > i+1 {
		return i // a paddock's name wins over an idiom
	}
	if t := r.tok(i); t.text == "up" && r.tok(k-1).tag == toWord && r.padAhead(k) {
		return i // "hoggets up to hill"
	}
	if p, is := r.longest(k - 1); d.event && is && p.next >= k {
		return i
	}
	if i == r.opening && r.oneOf(i, "hold", "hang") && r.oneOf(i+1, "up") && k == i+2 {
		c.remarks++ // "hold up, 12 is too wet"
		return k
	}
	if _, vet := r.has(0, i, wordSetVet); vet && r.oneOf(i, "all") && r.oneOf(i+1, "clear") && len(c.pads) == 0 {
		c.remarks++ // "vet looked at the cows in 12, all clear"
		return k
	}
	c.guard |= d.guard
	c.acts |= d.acts
	if d.none {
		c.remarks++
	}
	c.late = c.late || d.late
	c.hour = c.hour || d.late || d.none && r.oneOf(k-1, "milking", "lunch", "breakfast", "tea", "smoko")
	c.event = c.event || d.event
	c.still = c.still || d.still
	c.sameDay = c.sameDay || d.none && r.oneOf(k-1, "day") && r.oneOf(k-2, "same")
	if t := r.tok(i); t.text == "back" && d.acts == actIn {
		c.backIn = true
	}
	c.kept = c.kept || d.kept
	if d.acts&(actIn|actOut) != 0 {
		r.direct(c, d.acts)
	}
	return k
}

// wordPart reads a single word of the lexicon.
func (r *reader) wordPart(c *clause, i int) int {
	t := r.tok(i)
	if t.shape == arrow {
		r.prefix(c, roleIn)
		c.acts |= actMoved
		return i + 1
	}
	if t.shape != word {
		return i
	}
	if r.oneOf(i, "finish") && c.acts == 0 && len(c.mobs) == 0 && r.countingSaid(c, i) && r.oneOf(i-1, "is", "are", "was", "count", "counts", "now") {
		c.remarks++
		return i + 1 // "paddock 24 count is finish"
	}
	if t.tag == doneWord && r.oneOf(i, "finished", "done", "completed") && r.oneOf(i+1, "mowing", "cutting", "mulching") && c.guard == 0 && r.tok(i+2).tag != silageWord && r.tok(i+2).tag != hayWord {
		c.acts |= map[bool]act{true: actMow, false: actCut}[r.oneOf(i+1, "mowing")]
		return i + 2
	}
	if t.tag == doneWord && r.tok(i+1).tag == cuttingWord && !r.oneOf(i+1, "cutting") {
		c.remarks++
		return i + 1
	}
	if t.tag == cuttingWord && c.guard == 0 && c.acts&^actIn == 0 && r.jobDone(c, i) {
		c.acts |= map[bool]act{true: actTopped, false: actCut}[r.oneOf(i, "topping", "mulching")]
		return i + 1
	}
	if r.countDone(c, i) || r.outside(c, i) || r.heldFast(i) && len(c.mobs) == 0 {
		c.remarks++
		return i + 1
	}
	if r.turns(c, i) || r.relative(c, i) {
		r.cut = true
		return i
	}
	if r.oneOf(i, "so", "cos", "coz", "because", "hence") && c.says() {
		return i
	}
	if r.oneOf(i, "hardly", "barely") && r.oneOf(i+1, "any", "anything") && c.count != nil && len(c.count.said) > 1 {
		c.remarks++
		return i + 2 // beside scores it is a remark
	}
	if r.onTheWay(i) {
		c.acts |= actGoing | actMoved
		return i + 1
	}
	if t.tag == cuttingWord && r.cuttingNoun(i) {
		c.remarks++
		return i + 1
	}
	if t.tag == outWord && r.turnedOut(c, i) {
		c.acts |= actIn
		r.direct(c, actIn)
		return i + 1
	}
	if e := wordEffects[t.tag]; e != (effect{}) {
		c.guard |= e.guard
		c.acts |= e.acts
		if e.acts&(actIn|actOut) != 0 {
			r.direct(c, e.acts)
		}
		return i + 1
	}
	return r.looseWord(c, i)
}

// noStock reads "no cows there till Friday" and "too wet, no animals in it": where
// an end is told or the paddock is held anyway, it is out of the round.
func (r *reader) noStock(c *clause, i int) int {
	if !r.oneOf(i, "no") {
		return i
	}
	k := r.over(i+1, "more")
	if _, j := r.mob(k); j > k {
		k = j
	} else if r.oneOf(k, "animals", "animal", "beasts", "body", "one", "stock") {
		k++
	} else {
		return i
	}
	k = r.over(k, "allowed", "to", "go", "in", "on", "into", "there", "it", "here", "that", "this", "for")
	if r.tok(k).tag == untilWord || r.oneOf(k-1, "for") && r.tok(k+1).tag == dayUnit || c.has(actsHold) && r.oneOf(k-1, "there", "it", "in") {
		return k
	}
	return i
}

// tooMuchTo tells whether "too wet" or "too windy" keeps somebody from a job: "too
// wet to spray 12". It was not done.
func (r *reader) tooMuchTo(i int) bool {
	for k := i; k < i+3; k++ {
		if t := r.tok(k); t.shape == word && (t.tag == toWord || t.tag == forWord) {
			switch r.tok(r.over(k+1, "the", "be", "get", "on", "and")).tag {
			case sprayWord, fertWord, effWord, sowWord, cutWord, silageWord, hayWord, baleWord, toppedWord, topWord, mowWord, cuttingWord, cropWord:
				return true
			}
		}
	}
	return false
}

// onTheWay tells whether "heading" means that somebody goes somewhere, not that
// a tiller shows its seedhead.
func (r *reader) onTheWay(i int) bool {
	u := r.tok(i + 1)
	return r.oneOf(i, "heading", "headed") && u.shape == word && (u.tag >= inWord && u.tag <= offWord && u.tag != onWord && u.tag != fromWord || r.oneOf(i+1, "back", "over", "home", "up", "down", "for", "towards"))
}

// wordEffects gives what words do to their clause.
var wordEffects = [256]effect{
	grazedWord: {acts: actGrazed}, grazingWord: {acts: actIn}, movedWord: {acts: actMoved},
	moveWord: {acts: actOrder | actMoved}, movingWord: {acts: actGoing | actMoved}, grazeWord: {guard: guardPlan},
	putWord: {acts: actMoved}, wentWord: {acts: actMoved}, doneWord: {acts: actOut | actDone}, outWord: {acts: actOut}, offWord: {acts: actOut},

	cutWord: {acts: actCut}, silageWord: {acts: actSilage}, hayWord: {acts: actHay}, baleWord: {acts: actBale},
	cuttingWord: {acts: actCut | actGoing},
	toppedWord:  {acts: actTopped}, mowWord: {acts: actMow},
	canopyWord: {acts: actCanopy}, closedWord: {acts: actClosed}, closeWord: {acts: actClosed}, shutWord: {acts: actShut},
	lockWord: {acts: actShut}, holdWord: {acts: actHold}, openWord: {acts: actRelease}, releaseWord: {acts: actRelease},
	sprayWord: {acts: actSpray}, fertWord: {acts: actFert}, effWord: {acts: actEff}, sowWord: {acts: actSow},
	wetWord: {acts: actWet}, dampWord: {acts: actDamp}, dryWord: {acts: actDry}, cropWord: {acts: actCrop},
	negWord: {guard: guardNeg}, notWord: {guard: guardNeg}, planWord: {guard: guardPlan}, condWord: {guard: guardCond},
	wishWord: {guard: guardWish}, hearWord: {guard: guardHear}, jokeWord: {guard: guardJoke}, whWord: {guard: guardAsk},
	tomorrowWord: {guard: guardFuture}, nextWord: {guard: guardPlan},
}

// product steps over the name of what was sprayed or spread: "with 2,4-D".
func (r *reader) product(i int) int {
	t := r.tok(i)
	if t.shape != word && t.shape != number || t.shape == word && t.tag != unknown {
		return i
	}
	i++
	for last := i + longestRun; i < last && r.tok(i).glued && (r.tok(i).shape != mark || r.tok(i+1).glued); {
		i++
	}
	return i
}

// tool steps over what a job was done with: "with the new topper".
func (r *reader) tool(c *clause, i int) int {
	k := r.over(i, "the", "a", "an", "our", "my", "his")
	if k == i {
		return i
	}
	for n := 0; n < 3; n++ {
		t := r.tok(k)
		if _, is := r.onePad(k, false); is || t.shape != word || t.tag != unknown && t.tag != remark && !r.oneOf(k, "neighbour", "neighbours", "neighbor", "neighbors") {
			break
		}
		k++
	}
	c.remarks++
	return k
}

// insteadOf reads "instead of 13" and asks: 13 is named, but not meant.
func (r *reader) insteadOf(c *clause, i int) int {
	p, ok := r.onePad(r.over(i+2, "in", "into", "the"), true)
	if !ok {
		return i
	}
	why := "Not " + p.name + "? Please send only what happened."
	c.unsure(why)
	r.offer(why, i, p.next, "", "")
	return p.next
}

// looseReaders read expressions that begin with a word of no part of its own.
var looseReaders = []func(*reader, *clause, int) int{
	(*reader).eaten,
	(*reader).given,
	(*reader).spreading,
	(*reader).sprayedFor,
	(*reader).mowing,
	(*reader).letPart,
	(*reader).keepPart,
	(*reader).entered,
}

// looseOpeners are the words that such expressions begin with; sprayedFor looks
// for others, but only behind a spraying.
var looseOpeners = joinSets(eatVerbs, tookVerbs, spreadVerbs, spreadTools, sources, toppers, fellVerbs,
	wordSet(`gave given entered enter ran run took down let keep stockpiling stockpiled deferring deferred resting spelling holding keeping saving reserving`))
