package parser

import (
	"leafround/core/entry"
)

// clause is one statement's parts, gathered in the order in which they came.
type clause struct {
	from, to int
	pads     []place
	mobs     []string
	head     int
	days     moment
	future   bool
	until    entry.Date
	spell    int // days told: for 21 days
	resid    *entry.Residual
	share    float64
	someOf   bool // a part of the paddock was told, but not how much
	acts     act
	count    *tally
	shared   bool    // the count is of each paddock
	lost     string  // a name behind a preposition that nobody knows
	event    bool    // something went wrong: got out, broke in
	sentence int     // which sentence of the message it stands in
	colon    bool    // a colon follows it
	kept     bool    // stock could not go in
	before   int     // strange words before the scores
	backIn   bool    // "back in": the stock, or the paddock into the round
	near     bool    // nearly, over
	tillers  bool    // it tells of yellowing or set-aside tillers, but of no scores
	lone     float64 // the one number that is all of the clause
	bare     bool    // a paddock's name is all that it holds
	series   bool    // it is one of several readings with their days
	owes     bool    // it denies a count, and no more
	owedThen bool    // it was owed on another day than today, or since one
	intro    bool    // it says whose scores follow, and no more
	number   int     // its one paddock is told by this number alone
	mm       float64
	more     bool // the rain was told as further rain
	temps    []float64
	low      *float64
	high     *float64
	where    entry.Thermometer
	guard    guard
	tail     guard  // guards that stand in talk behind it alone
	strange  int    // words and numbers that nobody could place
	strangeW string // the first of them
	remarks  int
	trouble  bool
	doubt    string // what must be asked
	back     bool   // back fence
	still    bool   // stock are said to be where they were
	sameDay  bool   // it was on the day told before
	now      bool   // "now" was said: it is so today
	stock    bool   // stock were spoken of as "they" or "the girls"
	pronoun  bool   // a word that stands for stock was found
	looked   int    // before this token such a word was looked for
	bareLow  bool   // the least was told without its unit
	bareHigh bool   // the most was
	heated   bool   // a reading was told in Fahrenheit
	tooHot   int    // readings without a unit that no air has in Celsius, in the United States
	let      bool   // stock were let in or out
	endless  bool   // "until" was told without a day
	there    bool   // its paddock was spoken of as "it" or "in there"
	left     bool   // a later clause tells that they came out again
	hour     bool   // an hour was told
	late     bool   // an hour of the afternoon or evening was told
	nums     []int  // bare numbers that found no place
	strays   []int  // words and marks that nobody could place
	told     int    // the token behind the last that carried a meaning
}

// has tells whether any of the acts was said.
func (c *clause) has(a act) bool { return c.acts&a != 0 }

// names tells whether a token belongs to a paddock's name.
func (c *clause) names(i int) bool {
	for n := range c.pads {
		if c.pads[n].at <= i && i < c.pads[n].next {
			return true
		}
	}
	return false
}

// says tells whether the clause states something by itself.
func (c *clause) says() bool { return c.acts&^actDamp != 0 || c.count != nil || c.resid != nil }

// blank tells whether nothing but fillers was found.
func (c *clause) blank() bool {
	return !c.says() && len(c.pads) == 0 && len(c.mobs) == 0 && !c.days.ok && c.guard == 0 && c.strange == 0 &&
		c.until == 0 && c.spell == 0 && c.head == 0 && c.share == 0 && len(c.nums) == 0 && !c.trouble
}

func (c *clause) unsure(why string) {
	if c.doubt == "" {
		c.doubt = why
	}
}

// clause reads the parts of one clause, up to a separator that parts it from
// the next.
//
//	clause = { when | limit | amount | paddocks | tally | herd | idiom | word }
func (r *reader) clause(c *clause, i, to int) {
	c.from = i
	r.cut = false
	for i < to {
		if r.apologised(c, i) {
			i++
			break
		}
		if r.partedBy(c, i, to) {
			i++
			break
		}
		was := c.core()
		if k := r.part(c, i, to); k > i {
			i = k
			if c.core() != was {
				c.told = i
			}
			continue
		}
		if r.cut && i > c.from {
			break
		}
		if k, parts := r.separator(c, i, to); parts {
			i = k
			break
		} else if k > i {
			i = k
			continue
		}
		r.stray(c, i)
		i++
	}
	c.to = i
	if len(c.nums) == 1 && c.strange == 1 && c.remarks == 0 && !c.says() && c.guard == 0 {
		c.lone = r.tok(c.nums[0]).value
	}
	c.bare = len(c.pads) == 1 && r.onlyName(c)
	if len(c.mobs) == 0 {
		c.lost = ""
	}
	if !c.has(actOut|actGrazed|actMoved|actsHold) && len(c.pads) > 0 && c.count == nil && c.guard == 0 && r.hasText(c.pads[0].next, c.to, "still") {
		c.still = true // "31 still has them in"
	}
	r.noLongerShut(c)
	r.imply(c)
	r.easeTail(c)
	c.stock = r.stockSaid(c, c.to)
	c.intro, c.owes = r.introduces(c), r.owes(c)
	c.owedThen = c.owes && c.days.ok && (c.days.day != r.today || r.hasTag(c.from, c.to, sinceWord))
	if c.intro {
		c.number = r.byNumber(c.pads[0])
	}
	r.lateOrLet(c)
	c.now = c.now || c.has(actTemp) && r.hasText(c.from, c.to, "is") // "6.5mm yest and soil temp is 11"
}

// imply adds what the words leave unsaid: a mob named in or to a paddock went
// in there, and so did stock where "in 12" is all that was sent. A paddock
// closed for silage is shut up.
func (r *reader) imply(c *clause) {
	if r.holdEnded(c) {
		c.acts = c.acts&^actHold | actRelease
		r.dropStrays(c, "clear", "free", "clean")
	}
	if c.has(actClosed) && (c.until != 0 || c.spell != 0) && !c.has(actCanopy) {
		c.acts |= actShut
	}
	if c.has(actClosed) && c.has(actSilage|actHay) && !c.has(actCut|actBale|actMow|actCanopy) {
		c.acts |= actShut
	}
	if fed := c.acts & (actSilage | actHay); fed != 0 && c.acts == fed && len(c.mobs) > 0 && len(c.pads) > 0 && c.pads[0].role == roleAt {
		c.acts |= actIn
		return
	}
	if c.acts&^actIn != 0 || c.count != nil || c.resid != nil || len(c.pads) == 0 || c.pads[0].role == roleNone {
		return
	}
	bare := c.strange == 0 && c.remarks == 0 && len(c.nums) == 0 && !c.trouble && c.share == 0
	switch {
	case len(c.mobs) > 0 || c.head > 0, r.stillThere(c):
		c.acts |= actIn
	case bare && len(c.pads) == 1 && c.pads[0].role == roleAt && c.until == 0 && c.spell == 0 && inOpeners[r.tok(c.from).text]:
		c.acts |= actIn
	}
}

// inOpeners may open a message that says no more than where the stock are.
var inOpeners = wordSet(`in now all both theyre they just everyone everybody were`)

// part reads one part of a clause; it gives i where there is none.
func (r *reader) part(c *clause, i, to int) int {
	t := r.tok(i)
	if t.shape == mark && onlyJoins(t.text[0]) {
		if k := r.tallyPart(c, i); k > i {
			return min(k, to)
		}
		return i
	}
	readers := partReaders
	if t.shape == word {
		readers = wordReaders
	}
	for _, read := range readers {
		if k := read(r, c, i); k > i {
			return min(k, to)
		}
		if r.cut && i > c.from {
			return i
		}
	}
	return i
}

// onlyJoins tells whether a mark opens no part but what belongs to scores.
func onlyJoins(b byte) bool {
	switch b {
	case ',', ';', '/', '+', '&', '(', ')', '?', '*', '|', ':', '=':
		return true
	}
	return false
}

// wordReaders are tried in order at each word of a clause.
var wordReaders = append([]func(*reader, *clause, int) int{
	(*reader).openingPart,
	(*reader).mayGoIn,
	(*reader).limitPart,
	(*reader).freeFrom,
	(*reader).jobAhead,
	(*reader).idiomPart,
}, partReaders[2:]...)

// partReaders are tried in order at each number and mark of a clause.
var partReaders = []func(*reader, *clause, int) int{
	(*reader).mayGoIn,
	(*reader).limitPart,
	(*reader).progressPart,
	(*reader).thingPart,
	(*reader).whenPart,
	(*reader).amountPart,
	(*reader).tillersAhead,
	(*reader).padsPart,
	(*reader).tallyPart,
	(*reader).herdPart,
	(*reader).wordPart,
}

// separator tells what stands between clauses. A comma, a dash or "and" parts
// two clauses only where the one before says something and the next would too.
func (r *reader) separator(c *clause, i, to int) (next int, parts bool) {
	t := r.tok(i)
	switch {
	case t.text == "after" && c.resid != nil && c.acts == 0 && r.herdAhead(i+1):
		return i + 1, false // "8 clicks after the cows in 12"
	case t.text == "after" && r.oneOf(i+1, "i", "we", "you", "they", "he", "she") && c.has(actsGraze) && !r.inThePast(&clause{from: i + 1, to: min(i+7, to)}):
		c.guard |= guardCond // "heifers into 12 after I fix the fence"
		return i + 1, false
	case t.tag == butWord, t.tag == thenWord:
		if t.text != "but" && t.tag == butWord && len(c.mobs) > 0 {
			c.unsure(someOfThem)
		}
		if t.tag == butWord && r.everything(c, i) {
			c.unsure(allBut)
		}
		if t.tag == butWord && c.count != nil {
			c.unsure("I cannot read scores with an exception. Please send one number for each tiller, or their average.")
		}
		return i + 1, c.says()
	case r.oneOf(i, "so", "cos", "coz", "because", "hence") && t.shape == word:
		return i + 1, c.says()
	case t.text == ":" && !c.blank():
		c.colon = true
		return i + 1, true
	case t.tag == andWord || t.text == "," || t.text == "&" || t.text == "-" || t.text == "(" || t.text == ")" || t.text == "+" || t.text == ":" || t.tag == plusWord || t.text == "/":
		return i + 1, !c.blank()
	case t.shape == mark:
		return i + 1, false
	}
	return i, false
}

// everything tells whether a clause speaks of all paddocks.
func (r *reader) everything(c *clause, to int) bool {
	for i := max(c.from, to-12); i < to; i++ {
		if t := r.tok(i); t.tag == allWord || r.oneOf(i, "everything", "everywhere", "whole", "rest") {
			return true
		}
	}
	return false
}

// directions are the words that a place follows.
var directions = map[tag]bool{inWord: true, intoWord: true, onWord: true, toWord: true, fromWord: true, outWord: true, offWord: true, ofWord: true}

// elsewhere are places that stock and people go to which are no paddocks.
var elsewhere = wordSet(`works shed town market sale sales factory hospital vet yard yards race lane woolshed cowshed dairy parlour barn house
	truck trucks agistment runoff grazier neighbours slaughter saleyards be get go them it there here milk calve calving lambing
	mating work home foot feet heat test board bed`)

// stray notes a word or number that found no place.
func (r *reader) stray(c *clause, i int) {
	t := r.tok(i)
	if t.shape == number || t.shape == part || t.shape == broken {
		c.nums = append(c.nums, i)
	}
	if c.strange == 0 {
		c.strangeW = t.text
	}
	if r.nameOfSomebody(c, i) || r.thisSeason(c, i) || r.adverb(i) {
		c.remarks++
		return
	}
	c.strays = append(c.strays, i)
	c.endless = c.endless || t.tag == untilWord && t.shape == word
	if b := r.tok(i - 1); i > c.from && c.lost == "" && directions[b.tag] && b.shape == word && !elsewhere[t.text] && t.shape != mark {
		c.lost = r.source(i, i+1)
	}
	c.strange++
}
