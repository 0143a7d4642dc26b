package parser

// Some words name a day in one breath and something else in the next: the sun
// shines, somebody sat down, the second go is no second of the month. They lose
// their part as a day before anything is read, so that nothing is logged under
// a day that nobody told.

// notDays takes such words for the remark that they are.
//
//	notDay = "sun" weather | "sat" where | "the" ordinal thing
func (r *reader) notDays(from, to int) {
	for i := from; i < to; i++ {
		t := r.tok(i)
		switch {
		case t.tag == weekdayWord && t.text == "sun" && r.sunTime(i):
			t.tag, r.tok(i+1).tag = clockWord, filler
		case t.tag == weekdayWord && t.text == "sun" && r.sunShines(i, from, to),
			t.tag == weekdayWord && t.text == "sat" && r.satDown(i):
			t.tag = remark
			if n := r.tok(i + 1); t.text == "sun" && n.tag == outWord {
				n.tag = filler
			}
		case t.tag == weekdayWord && t.text == "sat" && r.satThere(i):
			t.tag = unknown // asked about: the day, or what they did?
		case t.tag == ordinalWord && r.ofThing(i+1) && r.oneOf(i-1, "the", "a", "this", "my", "our"):
			t.tag = remark
			if r.oneOf(i+1, "time", "go", "try", "attempt") {
				r.tok(i + 1).tag = filler
			}
		case t.shape == number && isOrdinalMark(r.tok(i+1)) && r.ofThing(i+2):
			r.remake(t, word, "nth")
			t.tag, r.tok(i+1).tag = remark, filler
		case t.tag == weekdayWord && t.text == "mon" && r.oneOf(i+1, "the", "then", "lads", "boys") && (r.oneOf(i+1, "lads", "boys") || r.oneOf(i+2, "lads", "boys", "girls", "town", "team", "hoops", "gers", "scotland")):
			t.tag = remark // come on, lads
		case t.tag == monthName && t.text == "march" && r.marching(i):
			t.tag = unknown
		}
	}
}

// sunTime tells whether the hour is told by the sun: "at sun up", "after sun down".
func (r *reader) sunTime(i int) bool {
	return r.oneOf(i+1, "up", "down", "rise", "set") && r.tok(i+1).shape == word && r.oneOf(i-1, "at", "before", "after", "by", "til", "till", "until", "since", "near", "around", "about", "from", "nearly")
}

// sunShines tells whether "sun" is the weather.
func (r *reader) sunShines(i, from, to int) bool {
	n, b := r.tok(i+1), r.tok(i-1)
	k := i + 1
	be := r.oneOf(k, "is", "was", "has", "had", "came", "comes", "coming", "went", "got", "gets", "getting", "going")
	if be {
		k = r.over(k+1, "come", "been", "finally", "just", "now", "only", "well", "really", "very", "too", "so", "nice", "and")
	}
	switch {
	case n.shape == word && sunVerbs[n.text], r.oneOf(k, "all") && r.oneOf(k+1, "day", "week", "morning", "evening", "weekend"), r.oneOf(k, "till", "until", "til") && r.day(k+1).ok,
		be && r.tok(k).shape == word && (sunVerbs[r.tok(k).text] || r.oneOf(k, "out", "up", "down", "low", "high", "hot", "warm", "strong", "bright", "through", "round", "in") && !r.padAhead(k+1)),
		r.oneOf(k, "on", "in", "at") && r.oneOf(k+1, "my", "your", "our", "his", "her", "their", "me", "us") && n.shape == word,
		r.tok(k).tag == andWord && weatherNames[r.tok(k+1).text],
		b.tag == andWord && weatherNames[r.tok(i-2).text],
		b.shape == word && i > from && sunKinds[b.text] && n.tag != outWord && n.tag != inWord && n.shape != number:
		return true
	}
	if !r.oneOf(k, "out", "up") || b.shape == word && !r.oneOf(i-1, "with", "now", "when", "as", "and", "while", "because", "but", "so") {
		return false
	}
	for from < i {
		if end := r.sentenceEnd(from, i); end < i {
			from = end + 1
			continue
		}
		break
	}
	to = r.sentenceEnd(i, to)
	for j := from; j < to; j++ {
		if t := r.tok(j); j != i && t.shape == word && (t.tag == weekdayWord || t.tag == yesterdayWord || t.tag == todayWord && j > i) {
			return false // "in fri, sun out" is a turn
		}
	}
	return !r.padAhead(k+1) && r.tok(k+1).tag != ofWord
}

// satDown tells whether somebody sat, and no stock: "sat down for tea".
func (r *reader) satDown(i int) bool {
	n := r.tok(i + 1)
	if n.shape != word || r.stockBefore(i) {
		return false
	}
	switch {
	case r.oneOf(i+1, "down", "around", "about", "nav", "tight", "idle", "here", "there", "through"):
		return n.tag != hedgeWord || r.tok(i+2).shape != number
	case r.oneOf(i+1, "out"):
		return r.oneOf(i+2, "the", "that", "it", "there", "here") && !r.padAhead(i+2)
	}
	return r.oneOf(i-1, "we", "he", "she", "who") && r.oneOf(i+1, "in", "on", "at", "with", "by", "under", "up", "back", "for")
}

// satThere tells whether stock sat somewhere: "cows sat down in 12".
func (r *reader) satThere(i int) bool {
	if !r.stockBefore(i) || r.tok(i+1).shape != word {
		return false
	}
	if r.oneOf(i+1, "down", "around", "about", "here", "there", "chewing", "idle") {
		return true
	}
	for k := i + 1; k < i+9; k++ {
		if r.oneOf(k, "day", "night", "chewing", "cudding", "sun", "shade", "hours", "looking") && r.tok(k).shape == word && !r.endsSentence(k-1) {
			return true
		}
	}
	return false
}

// stockBefore tells whether stock, or a word for them, stand right before a token.
func (r *reader) stockBefore(i int) bool {
	return r.beast(i-1) || r.tok(i-1).tag == looseMob || r.oneOf(i-1, "they", "stock", "theyve", "girls", "ladies", "just") && r.oneOf(i-1, "they", "theyve", "stock", "girls", "ladies")
}

// marching tells whether "march" opens an order: "march 3 heifers into 12". A
// March not long past may be the month.
func (r *reader) marching(i int) bool {
	if !r.startsPiece(i) || r.tok(i+1).shape != number {
		return false
	}
	_, k := r.mob(i + 2)
	m := r.monthDay(i)
	return k > i+2 && (!m.ok || m.day < r.today-60)
}

// startsPiece tells whether a token is the first of a message or stands behind a
// mark.
func (r *reader) startsPiece(i int) bool {
	return i == 0 || r.tok(i-1).shape == mark || r.tok(i-1).shape == newline
}

// ofThing tells whether what stands behind an ordinal is what it counts, so that
// it is no day of the month: "the third time", "the 2nd cut", "the first week".
func (r *reader) ofThing(i int) bool {
	t := r.tok(i)
	return t.shape == word && (countedThings[t.text] || t.tag == leafUnit || t.tag == tillerUnit)
}

var (
	sunVerbs = wordSet(`shining shines shone shine blazing beating burning burnt splitting splits roasting baking beaming belting cracking rising setting cream glasses hat burn stroke lotion bathing blazed melting warming warmed
		dried drying dries hit hits helped helping forecast promised due`)
	sunKinds = wordSet(`full no hot little much bit lovely scorching glorious bright low winter spring summer autumn evening warm baking roasting blazing strong more any enough weak proper afternoon midday`)
	// countedThings are what an ordinal counts.
	countedThings = wordSet(`time times go goes round rounds rotation cut cuts crop grazing graze milking walk count leaf one ones two three four half week weeks weekend month year season break strip
		feed feeding try attempt lot bit batch load bale dose application pass pull run lap look shower frost calf mob bunch group gate fence row leg stage visit trip
		part third quarter place best worst thing person lad fella spray topping`)
)

// dayElsewhere tells whether the day of a statement was told in a piece of the
// sentence that speaks of something else: "12 2 2.5 2, vet monday", "heifers into
// 12, see you sunday".
func (r *reader) dayElsewhere(c *clause) bool {
	at := c.days.next - 1
	if !c.days.ok || c.days.day == r.today || at <= c.from || at >= c.to || r.tok(at).tag != weekdayWord || r.asking {
		return false
	}
	a, b := at, at+1
	for a > c.from && !r.commaAt(a-1) {
		a--
	}
	for b < c.to && !r.commaAt(b) {
		b++
	}
	if a == c.from {
		return false
	}
	strange := false
	for i := a; i < b; i++ {
		t := r.tok(i)
		if c.names(i) || t.shape == number && i != at || t.shape == part || ownDayWords[t.text] {
			return false
		}
		if _, k := r.mob(i); k > i {
			return false
		}
		if e := wordEffects[t.tag]; t.shape == word && e.acts != 0 {
			return false
		}
		strange = strange || t.shape == word && (t.tag == unknown && !smallTalk[t.text] && !(r.oneOf(i, "on")) || eventWords[t.text])
	}
	return strange
}

// commaAt tells whether a comma, a dash or a bracket stands at a token.
func (r *reader) commaAt(i int) bool {
	t := r.tok(i)
	return t.shape == mark && (t.text == "," || t.text == "-" || t.text == "(" || t.text == "." || t.text == ";") || t.shape == newline
}

// ownDayWords say that a day is the report's own.
var ownDayWords = wordSet(`counted count counts did done walked walk was were is from sent send texted forgot forgotten late meant this that these those it them same since taken pulled measured scored
	logged written wrote put happened again still only as of evening morning both all each before after`)
