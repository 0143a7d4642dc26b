package parser

import "strings"

// On a farm people too go up to the house, come in from the barn and put the
// quad in the shed. No stock are told of in such talk, and it is no grazing.

// peopleMoved tells whether a clause tells of people or things that moved, not
// of stock.
func (r *reader) peopleMoved(c *clause) bool {
	if c.trouble || c.event || c.guard&guardAsk != 0 || len(c.mobs) > 0 || c.head > 0 || c.resid != nil || c.has(actGrazed|actPlace) && !r.thingMoved(c) && (c.has(actGrazed) || !r.thingGoes(c)) || c.share > 0 || c.count != nil || len(c.pads) == 0 || r.anyBeast(c.from, c.to) {
		return false
	}
	if c.acts&^(actsGraze|actOrder|actGoing|actPlace) != 0 && !(c.acts&^(actsGraze|actShut|actPlace) == 0 && r.thingMoved(c)) {
		return r.storedIn(c)
	}
	if r.thingMoved(c) || r.thingGoes(c) || r.goesTo(c) {
		return true
	}
	p := c.pads[0]
	if p.marked || !r.indoors(p) {
		return r.anyPaddock && r.tookThemselves(c) && r.tok(p.at).shape == word && !p.marked
	}
	if r.tookThemselves(c) {
		return true
	}
	return r.oneOf(p.at-1, "the", "our") && !r.moverBefore(c, p.at)
}

// indoors tells whether a place is one that people go to: its name is a
// building's, told alone.
func (r *reader) indoors(p place) bool {
	return r.tok(p.at).shape == word && buildings[r.tok(p.at).text] && (p.next == p.at+1 || r.anyPaddock)
}

// anyThing tells whether a place is a word that may be anything, told by no
// register and no mark: "they're not on the nail".
func (r *reader) anyThing(p place) bool {
	t := r.tok(p.at)
	return r.anyPaddock && !p.marked && t.shape == word && t.tag == unknown && !placeWords[t.text] && p.next == p.at+1
}

// storedIn tells whether fertiliser, seed or spray was put into a building:
// "put the fert in the barn", "urea's in the shed".
func (r *reader) storedIn(c *clause) bool {
	p := c.pads[0]
	return c.acts&^(actsGraze|actFert|actSpray|actEff|actHay|actSilage) == 0 && c.has(actFert|actSpray|actHay|actSilage) && !p.marked && r.tok(p.at).shape == word && buildings[r.tok(p.at).text] &&
		r.oneOf(p.at-1, "the") && r.oneOf(p.at-2, "in", "into", "inside", "to", "at") && c.until == 0 && c.spell == 0
}

// theBuilding tells whether what was told may be of a building or of the road, not
// of the paddock that bears its name: "sprayed the barn", "road open again". No
// stock, scores or residual are told with it, and nothing that only a paddock
// has done to it.
func (r *reader) theBuilding(c *clause) bool {
	if len(c.pads) != 1 || len(c.mobs) > 0 || c.head > 0 || c.count != nil || c.resid != nil || c.share > 0 || c.stock && r.moverBefore(c, c.to) || c.acts&(actsCut|actCanopy|actSow|actCrop|actRain|actTemp) != 0 || r.hasTag(c.from, c.to, grazedWord) {
		return false
	}
	p := c.pads[0]
	t := r.tok(p.at)
	if c.family() == famGraze && !c.stock && !r.oneOf(r.firstWord(c), "we", "weve") && r.tookThemselves(c) {
		return true // "dad went into Hill this morning"
	}
	owned := strings.Contains(r.source(p.at, p.at+1), "'")
	if p.marked || t.shape != word || c.until != 0 && c.has(actSpray) || p.next > p.at+1 && !r.anyPaddock || r.hasTag(c.from, c.to, putWord) {
		return false
	}
	the := r.oneOf(p.at-1, "the", "our") && p.at > 0
	switch {
	case r.oneOf(p.at, "roads") && owned, roadWords[t.text]:
		return the || r.anyPaddock && c.until == 0
	case buildings[t.text] || owned && buildings[strings.TrimSuffix(t.text, "s")]:
		return the || owned || p.next < c.to && r.tok(p.next).shape == word && fittings[r.tok(p.next).text]
	}
	return false
}

// moverBefore tells whether a word that somebody moves stock with, or a word for
// stock, stands before a place.
func (r *reader) moverBefore(c *clause, to int) bool {
	for i := c.from; i < to; i++ {
		t := r.tok(i)
		if t.shape == word && (t.tag == putWord && !r.heldFast(i) || t.tag == movedWord || t.tag == moveWord || t.tag == movingWord || r.oneOf(i, "let", "them", "em", "they", "theyre", "theyve", "stock", "animals", "girls", "ladies", "took")) && !r.oneOf(i, "drove") {
			return true
		}
	}
	return false
}

// heldFast tells whether "stuck" says that somebody or something got no further, not
// that stock were stuck into a paddock: "stuck again".
func (r *reader) heldFast(i int) bool {
	_, k := r.mob(r.over(i+1, "the", "all", "my", "our"))
	return r.oneOf(i, "stuck") && k == r.over(i+1, "the", "all", "my", "our") && !stockPronouns[r.tok(k).text]
}

// tookThemselves tells whether somebody went somewhere by themselves: "I've been
// up to", "dad went into", "just got back to", "came in from … drenched".
func (r *reader) tookThemselves(c *clause) bool {
	to := c.pads[0].at
	for i := c.from; i < to; i++ {
		t := r.tok(i)
		if t.shape != word || !goers[t.text] {
			continue
		}
		k := r.over(i+1, "have", "has", "had", "just", "all", "is", "are", "was", "only", "already", "then", "both")
		if u := r.tok(k); u.tag == wentWord && u.text != "come" || r.oneOf(k, "been", "ran", "walked", "drove", "nipped", "popped", "rode", "cycled", "headed", "ran", "wandered", "strolled", "legged", "dashed", "got", "called", "moved") && !r.herdBetween(k+1, to) && (k+1 >= to || r.tok(k+1).shape != word || directions[r.tok(k+1).tag] || r.oneOf(k+1, "up", "down", "back", "over", "across", "round", "out")) {
			return true
		}
	}
	return false
}

// herdBetween tells whether stock are spoken of in a run of tokens.
func (r *reader) herdBetween(from, to int) bool {
	for i := from; i < to; i++ {
		if r.beast(i) || r.tok(i).tag == looseMob || stockPronouns[r.tok(i).text] && !r.oneOf(i, "lads", "all") {
			return true
		}
	}
	return false
}

// thingMoved tells whether what was put, moved, left or shut somewhere is a thing,
// a machine or a dog: "put the quad in the barn", "left the keys in 12".
func (r *reader) thingMoved(c *clause) bool {
	for i := c.from; i < c.to; i++ {
		t := r.tok(i)
		if t.shape != word || t.tag != putWord && t.tag != movedWord && t.tag != leftWord && t.tag != shutWord && t.tag != wentWord && t.tag != lockWord && !r.oneOf(i, "took", "parked", "dropped") {
			continue
		}
		k := r.over(i+1, "the", "my", "your", "his", "her", "our", "a", "up", "away", "both", "old", "two", "big", "new", "wee", "red", "blue", "farm")
		u := r.tok(k)
		if k > i+1 && u.shape == word && (vehicleWords[u.text] || goods[u.text]) {
			return !strings.HasPrefix(u.text, "bull") && !r.herdBetween(k+1, c.to)
		}
	}
	return false
}

// thingGoes tells whether a machine, a dog or somebody from outside is what goes in
// or comes out: "tractor into 12", "dog out of 12".
func (r *reader) thingGoes(c *clause) bool {
	if c.stock || r.moverBefore(c, c.to) || c.acts&^actsGraze != 0 {
		return false
	}
	for i := c.from; i < c.to; i++ {
		if t := r.tok(i); t.shape == word && (i < c.pads[0].at || r.anyPaddock && !c.pads[0].marked && c.names(i)) &&
			(vehicleWords[t.text] || r.oneOf(i, "it") && r.oneOf(i-1, "got", "pulled", "dragged", "towed", "fished") || goods[t.text] || visitors[t.text] || r.anyPaddock && household[t.text]) {
			return true
		}
	}
	return false
}

// anyWord tells whether stock are said to be at a place that may be anything: no
// register knows it, it is no word for a place, no name by its capital, and the
// words beside it speak of no stock: "in bits", "vet monday".
func (r *reader) anyWord(c *clause) (place, bool) {
	if !r.anyPaddock || c.family() != famGraze || c.has(actGrazed) || c.resid != nil || c.share > 0 || r.herdBetween(c.from, c.to) || r.anyBeast(c.from, c.to) {
		return place{}, false
	}
	for _, p := range c.pads {
		plain := !p.marked && !strings.ContainsAny(p.name, "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789")
		for i := p.at; i < p.next && plain; i++ {
			t := r.tok(i)
			plain = t.shape == word && t.tag == unknown && !placeWords[t.text]
		}
		if plain {
			return p, true
		}
	}
	return place{}, false
}

// somebodyGoes tells whether a message may tell of the sender's own way, with no
// errand told: "went to 12". It is asked about.
func (r *reader) somebodyGoes(c *clause) bool {
	if c.from > 1 || len(c.mobs) > 0 || c.head > 0 || c.stock || c.pronoun || c.has(actGrazed|actOut) || len(c.pads) != 1 || c.resid != nil {
		return false
	}
	at := r.over(r.firstWord(c), "i", "we", "just", "ive")
	return r.oneOf(at, "went", "been", "gone") && r.tok(at+1).tag == toWord
}

// goesTo tells whether somebody goes to a paddock to do something there: "off to
// count 12", "went out to 12 for a look", "drove to 12 and back".
func (r *reader) goesTo(c *clause) bool {
	if c.stock || r.herdBetween(c.from, c.to) {
		return false
	}
	drove := false
	for i := c.from; i < c.to; i++ {
		switch {
		case r.tok(i).shape != word:
		case r.oneOf(i, "off", "away", "out", "over", "down", "up", "back") && r.oneOf(i+1, "to") && (chores[r.tok(i+2).text] || r.oneOf(i, "off", "away") && i == r.firstWord(c)):
			return true
		case r.oneOf(i, "to") && chores[r.tok(i+1).text] && r.tok(i+1).shape == word:
			return true
		case r.oneOf(i, "for") && r.oneOf(i+1, "a", "another") && chores[r.tok(r.over(i+2, "quick", "wee", "good", "bit", "of", "a", "proper", "closer")).text]:
			return true
		case r.oneOf(i, "and") && r.oneOf(i+1, "back") && i > c.pads[0].at && (i+2 >= c.to || r.tok(i+2).shape != word):
			return true
		case r.oneOf(i, "drove", "ran") && (directions[r.tok(i+1).tag] || r.oneOf(i+1, "over", "up", "down", "back", "round", "around")):
			drove = r.oneOf(i, "drove")
		}
	}
	return drove
}

var (
	// chores are what people go to a paddock for.
	chores = wordSet(`count check look see fix walk mend fence measure find get fetch collect fill help meet do nosy swim spin drive nosey gander squint squiz peek dig plant pick inspect`)
	// household are things of every day, where any name may be a paddock.
	household = wordSet(`bins bin washing dinner dinners milk diesel petrol twine fags bread beer cake kettle telly lights jeep jeeps work bits bed meeting kids match town mart bag bags money luck time stock puff breath`)
	// visitors are no stock.
	visitors = wordSet(`contractor contractors vet vets agronomist rep surveyor fencer shearer shearers scanner digger drill drone topper mower harvester chopper combine plumber electrician postman kids children lodgers campers walkers hikers hunters cyclists`)

	// roadWords are shut, open and flooded, but seldom grazed.
	roadWords = wordSet(`road lane track bridge`)
	goers     = wordSet(`i ive we weve he hes she shes dad mum who you youve somebody someone everybody everyones nobody boss vet kids wife missus himself herself postman grandad granny nana`)
	buildings = wordSet(`house barn shed yard yards woolshed cowshed dairy parlour chapel church school hall mill pub shop town hospital kitchen office cottage garage workshop stable stables bothy quarters surgery clinic`)
	// fittings are parts of a building.
	fittings = wordSet(`door doors roof light lights wall walls window windows floor key keys loft lock dance cat side`)
	// goods are things that are put somewhere and do not graze.
	goods = wordSet(`keys key phone dog dogs pup pups jacket coat hat boots gloves flask lunch torch saw chainsaw spanner spanners tools toolbox hammer drill ladder rope ropes rug rugs barrow wheelbarrow mower mowers sprayer spreader
		plough harrow harrows roller tedder baler drum drums bags bucket buckets hose pipe posts post wire reel reels stakes standards strainers energiser battery batteries car van pickup jeep gun rifle parcel parcels mail post feed nuts straw
		wood firewood timber sheet sheets tarp gates kids children cat cats chickens hens shopping pump generator trailer quad bikes`)
)
