package parser

import "strings"

// core is what a clause states, as far as it has been read: a word that changes
// it carried a meaning.
type core struct {
	acts             act
	pads, mobs, head int
	days, until      bool
	spell            int
	mm               float64
	temps            int
	resid, count     bool
	share            float64
}

func (c *clause) core() core {
	return core{c.acts, len(c.pads), len(c.mobs), c.head, c.days.ok, c.until != 0, c.spell, c.mm, len(c.temps), c.resid != nil, c.count != nil, c.share}
}

// easeTail takes unknown words behind a complete statement for the remark that
// they are: "topped 4 with the new yoke", "bog dried out grand". A word that
// may be a verb, a number, a name behind a preposition, or what a bare number
// counts ("out of 12 bottles"), stays in doubt.
func (r *reader) easeTail(c *clause) {
	if !c.says() || c.count != nil || len(c.strays) == 0 || len(c.strays) != c.strange || len(c.nums) > 0 || c.lost != "" {
		return
	}
	f := c.family()
	if len(c.pads) == 0 && f != famRain && f != famTemp {
		return
	}
	if f == famRain && !r.hasTag(c.from, c.to, rainWord) && !r.hasTag(c.from, c.to, gaugeWord) || r.timeUntold(c) {
		return
	}
	for _, i := range c.strays {
		t := r.tok(i)
		if i < c.told && f != famRain || t.shape != word || mayBeVerb(t.text) || directions[r.tok(i-1).tag] && r.tok(i-1).shape == word && r.tok(i-1).tag != ofWord {
			return
		}
		if n := len(c.pads); n > 0 && i == c.pads[n-1].next && !c.pads[n-1].marked && r.tok(i-1).shape == number {
			return
		}
	}
	if f == famGraze && len(c.mobs) == 0 && !c.has(actGrazed) && c.resid == nil && !r.stockSaid(c, c.to) {
		return
	}
	c.remarks += c.strange
	c.strange, c.strays = 0, nil
}

// timeUntold tells whether a clause speaks of a time that was not read as a day:
// "last week", "before the flood", "yesterday or the day before".
func (r *reader) timeUntold(c *clause) bool {
	for i := c.told; i < c.to; i++ {
		t := r.tok(i)
		switch {
		case t.shape != word:
		case t.tag == dayUnit, t.tag == weekUnit, t.tag == monthUnit, t.tag == hourUnit, t.tag == nightWord, t.tag == agoWord, t.tag == untilWord,
			t.tag == sinceWord, t.tag == monthName, t.tag == weekdayWord, t.tag == lastWord, times[t.text]:
			return true
		}
	}
	return false
}

// times are words of time that name no day.
var times = wordSet(`before after or recently lately christmas easter xmas boxing season year years weekend weekends fortnight fortnights lately earlier
	mid spring summer autumn winter fall ages when while during sometime someday soon other nights until tween between beginning start`)

// mayBeVerb tells whether an unknown word looks like a verb, which could turn
// the statement into another.
func mayBeVerb(w string) bool {
	return strings.HasSuffix(w, "ed") && !strings.HasSuffix(w, "weed") && !strings.HasSuffix(w, "seed") || strings.HasSuffix(w, "ing") || strings.HasSuffix(w, "nt") || verbs[w]
}

// verbs are irregular past tenses and orders that may stand behind a statement.
var verbs = wordSet(`bought brought rang sent found lost broke saw knew wrote drew ran fell flew froze got hid hit kept knew laid lay let lit lost made met
	paid rode rose sank sat sold sang slept slid spent split stood stole struck swam swept swung told threw tore woke wore won bit blew caught chose
	dug dealt drank fought forgot gave hung hurt led left lent meant read sought shook shot shone sprang stung swore taught thought undid wound
	buy order ring send find fix check call book ask tell wait hurry asap pronto immediately urgently swap cancel ignore delete stop start watch see`)

// adverb tells whether an unknown word tells how something was done, and no
// more: "badly", "properly". How much of it was done is told by some of them.
func (r *reader) adverb(i int) bool {
	t := r.tok(i)
	return t.shape == word && t.tag == unknown && (len(t.text) > 5 && strings.HasSuffix(t.text, "ly") || r.oneOf(i, "badly", "fully", "sadly")) && !noAdverbs[t.text] && !times[t.text] &&
		(r.text[t.start] < 'A' || r.text[t.start] > 'Z' || t.start == 0)
}

// noAdverbs end so and are none, or tell how much, how often or how surely.
var noAdverbs = wordSet(`partly mostly largely partially mainly daily weekly monthly yearly hourly nightly likely unlikely supply reply family apply multiply
	assembly butterfly firefly horsefly dragonfly recently previously formerly originally shortly eventually lately jubilee rally bully holly ally only early possibly orderly anomaly monopoly`)

// nameOfSomebody tells whether an unknown word is a person's name: written with
// a capital inside a sentence that is not all capitals, and no place's.
func (r *reader) nameOfSomebody(c *clause, i int) bool {
	t := r.tok(i)
	if t.shape != word || t.tag != unknown || len(t.text) < 2 || r.anyPaddock {
		return false
	}
	raw := r.text[t.start:t.end]
	if raw[0] < 'A' || raw[0] > 'Z' || raw[1] < 'a' || raw[1] > 'z' {
		return false
	}
	b, n := r.tok(i-1), r.tok(i+1)
	if b.shape == word && (directions[b.tag] || b.tag == padMark || b.text == "the" || b.tag == grazedWord) || b.text == "→" || n.tag == padMark || n.shape == number {
		return false
	}
	if opens := i == 0 || b.shape == newline || b.shape == mark && b.text != "," && b.text != "-"; opens {
		return r.oneOf(i+1, "has", "had", "is", "put", "cut", "moved", "took", "shifted", "here", "did", "and", "just", "says")
	}
	return !r.joins(i-1) || r.tok(i+1).shape == end || r.tok(i+1).shape == mark || r.tok(i+1).shape == newline
}
