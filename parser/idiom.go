package parser

import "strings"

// effect is what an idiom or a word does to its clause.
type effect struct {
	acts  act
	guard guard
	kept  bool // stock were kept out: couldn't go in
	event bool // something went wrong, worth a note: got out, broke in
	none  bool // it only keeps its words from being read singly
}

// idiomTable holds expressions of several words that mean something else than
// their words do one by one.
var idiomTable = map[effect]string{
	{acts: actShut}:               `shut up; shut off; locked up; lock up; locked in; closed up; close up; close off; closed off; shutting up; locking up; put up for`,
	{acts: actCanopy}:             `canopy closed; canopy has closed; canopy is closed; canopys closed; canopy shut; canopy is shut; canopy now closed; canopy closed over; closed over; canopy over; closed canopy; canopy full; full canopy; cant see dirt; cant see the dirt; cant see any dirt; cant see soil; cant see the soil; cant see any soil; cant see ground; cant see the ground; cant see any ground; cant see bare ground; cannot see dirt; cannot see soil; cannot see the ground; no dirt showing; no bare ground; no bare dirt; no soil showing; no ground showing; no bare soil; no dirt visible; no soil visible; covered over; grass closed over; canopy closure`,
	{acts: actWet}:                `way too wet; far too wet; much too wet; bit too wet; too wet; too wet to graze; too wet for cows; too wet for stock; too wet for grazing; too wet to go in; too wet yet; too wet for the cows; too wet for anything; too wet still; still too wet; under water; bit wet to graze; flooded out; pugged up; wet to graze`,
	{acts: actRelease}:            `ok to graze; okay to graze; fit to graze; good to graze; safe to graze; right to graze; clear to graze; ready to graze again; can be grazed; can be grazed again; can graze; can graze now; end of withholding; end of the withholding; end of hold; end of the hold; no longer sprayed; can graze again; ok to go; fine to graze; back in the round; back in round; back in the rotation; back in rotation; back into the round; back in the mix; available again; open again; opened up; open up; opened again; back on the list; free to graze; back in play; all clear; ok again; fit again; ok to use; ok to go in; grazable again; graze again; ok for grazing; hold is off; hold over; hold is over; hold lifted; hold is up; hold up; hold finished; hold done; holds off; withholding off; withholding finished; withholding over; withholding up; withholding done; withholding is up; withholding is over; withholding period up; withholding period over; withholding period is up; withholding period is over; withholding period done; withholding period finished; days are up; days up; days done; days are done; time is up; times up; stand down over; off hold; allowed again`,
	{acts: actRelease | actSpray}: `spray is off; sprays off; spray off`,
	{acts: actRelease | actEff}:   `effluent is off; effluent off; eff off; eff is off`,
	{acts: actRelease | actFert}:  `fert is off; fert off; urea is off`,
	{acts: actHold | actHoldOff}:  `hold off; holding off`,
	{acts: actHold}:               `hold off grazing; hold off on; holding off on; not to be grazed; nothing to go in; nothing to go into; nothing in; not to go in; dont put anything in; dont put anyone in; dont put stock in; dont put any stock in; dont let anything in; do not put stock in; dont go in; dont use; do not use; out of the round; out of round; out of the rotation; out of rotation; keep off; keep out; keep out of; stay out of; stay off; stay out; keep stock off; keep stock out; stock off; hands off; leave out; off limits; no go; no grazing; no stock; dont graze; do not graze; not to be grazed; withholding period; with holding; with hold; out of action; out of bounds; left out`,
	{acts: actDry}:                `dried out; dried up; dry enough; drained off; drying out`,
	{acts: actSow}:                `no till drilled; no tilled; frost seeded; over seeded; direct drilled; new grass sown; sown down; put in new grass; re sown; over sown; re seeded; under sown; stitched in; new pasture`,
	{acts: actCrop}:               `in crop; into crop; under crop; summer crop; winter crop`,
	{acts: actSpray}:              `sprayed out; sprayed off; spray on; spraying off; weed spray; weed sprayed`,
	{acts: actFert}:               `fert on; urea on; n on; lime on; top dressed; topdress; super on; fert spread`,
	{acts: actEff}:                `effluent on; slurry on; eff on; under effluent; dirty water; effluent pond; pond water; muck spread; spread muck; dung spread`,
	{acts: actOut | actDone}:      `finished grazing; done grazing; stopped grazing; finished off; all done; finished up; finished with; done with`,
	{guard: guardNeg, kept: true}: `couldnt graze; couldnt get in; couldnt go in; couldnt get into; couldnt use; didnt graze; didnt go in; didnt go into; cant graze; cant go in; cant get in; cant use; wont graze; havent grazed; havent been in; not going in; not gone in`,
	{acts: actOut}:                `out of; came out; come out; cleared out; came off; taken out; taken off; pulled out; pulled off; let out of`,
	{acts: actIn}:                 `back in; turned out; turned out in; turned out into; let into; let in; in on; back into; gone onto; put on; put in; put into; went into; went in; gone in; gone into; moved in; moved into; moved onto`,
	{acts: actGrazed}:             `not grazed well; not well grazed; break fed; strip grazed; breakfed; not grazed hard; grazed hard; not grazed evenly; cleaned up; eaten out; grazed out; grazed off; chewed down; been through; went through; cleaned out; grazed down; eaten down`,
	{acts: actTopped}:             `topped off; topped up; brush hogged; bush hogged; brushhogged; bushhogged; clipped`,
	{guard: guardPlan}:            `going to; about to; have to; has to; got to; yet to; to be; due to; due for; due in; go in; go into; need to; ready for; next week; next month; next round; lined up; aiming to; hope to; looking to; want to; tempted to; keen to; set to; have a look; booked in; booked for; planned for; to do; how about; what about; to graze; for tomorrow; pencilled in; to go`,
	{guard: guardHear}:            `next door; not sure; i think; sounds like; looks like; was told; were told; heard that; according to; over the road; down the road; no idea; dont know; dunno if; pretty sure; fairly sure; last year; last season; last autumn; last spring; last winter; last summer; used to; years ago; not certain; i dunno; last month; in theory; supposed to`,
	{guard: guardNeg}:             `not yet; no longer; not been; yet to be; to go yet; not in; still to; havent yet`,
	{event: true}:                 `on the road; out on the road; on the highway; on the driveway; in the garden; in the creek; in the drain; in the ditch; got out; got out again; broke out; broke into; broke in; got into; got in; got in with; got mixed; boxed up; mixed up; jumped out; jumped into; escaped from; fell out; getting out; left open; was open; gate open; still open; pushed through; pushed out; knocked over; fallen down; blown over; blew over; tipped over; ran out; run out; running out; gone missing; soil test; feed test; stuck in; bogged in`,
	{none: true}:                  `im off; im done; thats me done; thats us done; give or take; after am milking; after pm milking; before am milking; before pm milking; am milking; pm milking; in calf; in milk; in season; in heat; in lamb; in foal; not well; but not well; not properly; not evenly; not nicely; not hard; not tidy; not the best; not ideal; not the cleanest; didnt clean up; didnt clean it up; didnt clean up well; havent cleaned up; hasnt cleaned up; didnt eat it down; didnt eat it all; didnt eat much; didnt graze it well; didnt graze it down; didnt eat it well; didnt do a great job; for the day; for the night; for the week; for a day; for a couple of days; for a few days; this side; the other side; not cleaned up; not cleaned out; not very clean; not clean; not great; not bad; not too bad; not too flash; not flash; not pretty; not much left; not much; not a lot; not many; not far; not even; no worries; no problem; no dramas; no rush; no hurry; no stress; no clover; no sun; no wind; no weeds; no issues; no probs; no problems; no trouble; no signal; no reception; no service; no drama; no bother; house cow; house cows; cleaned up well; cleaned up nicely; cleaned up good; after milking; before milking; after lunch; before lunch; after breakfast; before breakfast; after smoko; before smoko; before brekkie; after brekkie; thats it for today; thats all for today; thats it; thats all; that is all; all for today; did it; did them; did that one; after tea; before tea; at milking; this time; on my way; on the way; a bit; had a look; good to go; no yellow; no yellowing; no seedheads; no seed heads; not yellowing; no sign of yellowing; as well; not uniform; not so good; looks good; looks great; looks well; looks like rain; looks like 2; in the rain; in the dark; in the drizzle; in the wet; in the wind; in the sun; in the end; at the moment; at present; by the way; for now; of course; as usual; on the quad; on the bike; per tiller; a tiller; of leaves; full leaves; new leaves; all up; all over; all round; right through; on average; in all; at the top; at the bottom; down the back; near the gate; by the gate; at the gate; at the back; at the front; good clover; feed wise; a few; going well; a good feed; to the boards; hit hard; thanks to; due to rain; after rain; after the rain; before the rain; since the rain; up to`,
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
	d, k, ok := r.idiomAt(i)
	if !ok {
		return i
	}
	if p, is := r.longest(i); is && p.next > i+1 {
		return i // a paddock's name wins over an idiom
	}
	if p, is := r.longest(k - 1); d.event && is && p.next >= k {
		return i
	}
	c.guard |= d.guard
	c.acts |= d.acts
	if d.none {
		c.remarks++
	}
	c.event = c.event || d.event
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
	if r.countDone(c, i) || r.outside(c, i) {
		c.remarks++
		return i + 1
	}
	if r.turns(c, i) {
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
	if e, ok := wordEffects[t.tag]; ok {
		c.guard |= e.guard
		c.acts |= e.acts
		if e.acts&(actIn|actOut) != 0 {
			r.direct(c, e.acts)
		}
		return i + 1
	}
	return r.looseWord(c, i)
}

// wordEffects gives what words do to their clause.
var wordEffects = map[tag]effect{
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
	for r.tok(i).glued && (r.tok(i).shape != mark || r.tok(i+1).glued) {
		i++
	}
	return i
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

// eventWords tell of something in a paddock that is worth a note, and no
// grazing: "calf born in 9", "heifers cycling in hill".
var eventWords = wordSet(`born bulling cycling lost missing vet calved lambed mated tagged`)

// looseWord reads words whose part depends on what stands around them.
func (r *reader) looseWord(c *clause, i int) int {
	t := r.tok(i)
	if t.text == "r" && len(c.mobs) > 0 && c.count == nil {
		return i + 1 // "bulls r in 33"
	}
	if r.oneOf(i, "instead", "rather") && (r.tok(i+1).tag == ofWord || r.oneOf(i+1, "than")) {
		if k := r.insteadOf(c, i); k > i {
			return k
		}
	}
	if eventWords[t.text] {
		c.event = true
		return i + 1
	}
	switch t.tag {
	case inWord, onWord:
		r.locate(c, i)
		return i + 1
	case leftWord:
		c.acts |= actPlace
		if r.padAhead(i + 1) {
			r.way = roleOut
		}
		return i + 1
	case toWord:
		r.prefix(c, roleIn)
		return i + 1
	case intoWord:
		c.acts |= actIn
		r.prefix(c, roleIn)
		return i + 1
	case fromWord:
		if _, ok := r.clock(i + 1); ok {
			return i + 1
		}
		r.prefix(c, roleOut)
		return i + 1
	case withWord:
		if c.has(actSpray | actFert) {
			return r.product(i + 1)
		}
		return i + 1
	case forWord:
		if c.has(actPlace) && r.padAhead(i+1) {
			r.prefix(c, roleIn)
		}
		return i + 1
	case lastWord:
		if r.tok(i+1).tag == grazedWord {
			c.unsure("On which day was it last grazed? Please send “12 last grazed 3 Nov”.")
		}
		return i + 1
	case padMark:
		if b := r.tok(i - 1); len(t.text) > 2 && i > c.from && b.shape == word && !directions[b.tag] && b.text != "the" && len(c.mobs) > 0 && len(c.pads) == 0 && c.lost == "" {
			c.lost = r.source(i-1, i+1) // "milkers to night paddock"
		}
		return i + 1
	case filler, courtesy, ofWord, atWord, daytimeWord, clockWord, hedgeWord, okWord, againWord, allWord,
		onlyWord, eachWord, readyWord, auxWord, thisWord, nightWord, sinceWord, looseMob, leafWord, ordinalWord:
		return i + 1
	case yellowWord, reproWord, daughterWord, remnantWord:
		if c.count != nil && len(c.count.said) > 1 {
			c.count.unsure("How many tillers were “%s”? Please put the word once for each, beside the scores.", t.text)
		}
		c.remarks++
		return i + 1
	case remark, gaugeWord, topWord:
		c.remarks++
		return i + 1
	case nearWord:
		c.near = true
		return i + 1
	case troubleWord:
		c.trouble = true
		return i + 1
	case rainWord:
		c.acts |= actRain
		return i + 1
	case tempWord, frostWord:
		c.acts |= actTemp
		return i + 1
	}
	return i
}
