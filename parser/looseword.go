package parser

import "maps"

func joinSets(sets ...map[string]bool) map[string]bool {
	all := map[string]bool{}
	for _, s := range sets {
		maps.Copy(all, s)
	}
	return all
}

// looseWord reads words whose part depends on what stands around them.
func (r *reader) looseWord(c *clause, i int) int {
	t := r.tok(i)
	if t.text == "did" && len(c.mobs) > 0 && len(c.pads) == 0 && (r.padAhead(i+1) || r.partHere(i+1)) {
		c.acts |= actGrazed
		return i + 1 // "milkers did 19"
	}
	if n, k := r.whole(i + 1); t.text == "did" && k > i+1 && n > 1 && r.tok(k).tag == tillerUnit {
		c.remarks++
		return i + 1 // "did 12 tillers in 7"
	}
	opens := looseOpeners[t.text]
	if opens || c.has(actSpray) {
		for _, read := range looseReaders {
			if k := read(r, c, i); k > i {
				return k
			}
		}
	}
	if t.text == "before" && (c.spell != 0 || c.until != 0) && (c.has(actsHold) || c.acts == 0 && len(c.pads) == 0) && r.oneOf(i+1, "anything", "any", "stock", "you", "u", "we", "they", "cows", "it", "grazing", "animals", "youre", "your") {
		for r.tok(i).shape == word {
			i++ // "14 days before anything goes back in"
		}
		return i
	}
	if t.text == "r" && len(c.mobs) > 0 && c.count == nil {
		return i + 1 // "bulls r in 33"
	}
	if r.oneOf(i, "instead", "rather") && (r.tok(i+1).tag == ofWord || r.oneOf(i+1, "than")) {
		if k := r.insteadOf(c, i); k > i {
			return k
		}
	}
	if r.oneOf(i, "home") && r.tok(i-1).tag != wentWord && (r.tok(i+1).tag == toWord || r.tok(i+1).tag == intoWord) && r.padAhead(i+2) && r.herdBetween(c.from, i) {
		c.remarks++
		return i + 1 // "brought them home to 2 from 20"
	}
	if r.oneOf(i, "home", "inside") && (r.tok(i+1).tag == offWord || r.tok(i+1).tag == fromWord || r.tok(i+1).tag == outWord) || opens && r.spreadTool(c, i) {
		c.remarks++
		return i + 1
	}
	if k := r.worked(c, i); k > i {
		return k
	}
	switch t.tag {
	case inWord, onWord:
		if t.text == "onto" && r.padAhead(i+1) && c.acts&^(actsGraze|actOrder|actGoing|actPlace) == 0 {
			r.prefix(c, roleIn)
			return i + 1
		}
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
		if k := r.joinedThem(c, i); k > i {
			return k
		}
		if k := r.product(i + 1); c.has(actSpray|actFert|actSow) && k > i+1 {
			return k
		}
		if c.has(actsCut | actSpray | actFert | actEff | actSow) {
			return r.tool(c, i+1)
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
	case filler:
		if t.text == "yet" && c.has(actHold) {
			c.guard |= guardNeg // "don't put anyone in 14 yet"
		}
		c.there = c.there || r.oneOf(i, "there", "it", "its", "that", "here")
		c.now = c.now || t.text == "now" || t.text == "currently"
		return i + 1
	case courtesy, ofWord, atWord, daytimeWord, clockWord, hedgeWord, averageWord, okWord, againWord, allWord,
		onlyWord, eachWord, readyWord, auxWord, thisWord, nightWord, sinceWord, looseMob, leafWord, ordinalWord:
		return i + 1
	case yellowWord, reproWord, daughterWord, remnantWord:
		c.tillers = c.tillers || c.count == nil && c.guard == 0
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
