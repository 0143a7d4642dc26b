package parser

import (
	"strconv"
	"strings"

	"leafround/core/entry"
)

// holdReasons gives the reasons that acts stand for, in the order of the
// contract.
func holdReasons(c *clause) []entry.Reason {
	var list []entry.Reason
	add := func(a act, reason entry.Reason) {
		if c.has(a) {
			list = append(list, reason)
		}
	}
	add(actSilage, entry.HoldSilage)
	add(actHay, entry.HoldHay)
	add(actSpray, entry.HoldSpray)
	add(actFert, entry.HoldFertiliser)
	add(actEff, entry.HoldEffluent)
	if c.has(actSow) && !c.has(actCrop) {
		list = append(list, entry.HoldResown)
	}
	add(actWet, entry.HoldWet)
	if c.has(actDamp) && c.has(actHold) && !c.has(actWet) {
		list = append(list, entry.HoldWet) // "wet, keep the cows off"
	}
	add(actCrop, entry.HoldCrop)
	if len(list) == 0 {
		list = append(list, entry.HoldOther)
	}
	return list
}

// holds takes each paddock out of the round for each reason told.
func (r *reader) holds(c *clause) ([]entry.Entry, string) {
	if len(c.pads) == 0 {
		if c.has(actSpray|actFert|actEff) && c.guard == 0 && r.everything(c, c.to) {
			return nil, "Which paddocks was that? Please name them."
		}
		if c.has(actSpray|actFert|actEff|actSow|actShut) && c.guard == 0 && c.strange == 0 {
			return nil, "Which paddock was that?"
		}
		return nil, ""
	}
	if c.has(actShut) && c.has(actCanopy) {
		return nil, "Is the canopy closed, or is it shut up?"
	}
	if why := r.perhapsOver(c); why != "" {
		return nil, why
	}
	if t := r.tok(c.from); r.oneOf(c.from, "spray", "sow", "resow", "reseed", "regrass", "crop") && t.shape == word && c.pads[0].at == c.from+1 && !c.days.ok && c.until == 0 && c.spell == 0 {
		return nil, "Is that done, or still to do? Please tell me when it is done."
	}
	if c.acts == actHold && r.oneOf(r.firstWord(c), "nothing") && r.oneOf(r.firstWord(c)+1, "in") && c.until == 0 && c.spell == 0 && !r.hasTag(c.from, c.to, untilWord) {
		return nil, "Is " + c.pads[0].name + " to be left, or just empty? Please say “keep out of " + c.pads[0].name + "” where it is to be left."
	}
	h := entry.Hold{Date: r.dayOf(c), Until: c.until}
	if c.spell > 0 {
		h.Until = h.Date.Add(c.spell)
	}
	var list []entry.Entry
	for _, p := range r.spread(c.pads) {
		for _, h.Reason = range holdReasons(c) {
			h.Paddock = p.name
			list = append(list, h)
		}
	}
	return list, ""
}

// limitDropped tells whether a statement tells until when something is so, but
// nothing to log, behind a hold without its end in the same sentence: "sprayed 17,
// the girls won't see it till the 5th".
func limitDropped(list []clause, n int) bool {
	c := &list[n]
	if n == 0 || c.until == 0 && c.spell == 0 || c.says() && c.guard == 0 || len(c.pads) > 1 {
		return false
	}
	last := &list[n-1]
	next := c.sentence == last.sentence+1 && len(c.pads)+len(c.mobs) == 0 && c.head == 0 && c.guard&(guardAsk|guardWish) == 0 // "urea on 6. Won't be fit for ten days"
	return (last.sentence == c.sentence || next) && last.family() == famHold && last.guard == 0 && last.until == 0 && last.spell == 0 && len(last.pads) > 0 && !last.has(actWet)
}

// perhapsOver asks where a hold is told with a word that ends one: "12 spray ok
// now", "hold off 12".
func (r *reader) perhapsOver(c *clause) string {
	over := false
	for i := c.from; i < c.to && !over; i++ {
		over = c.spell > 0 && r.oneOf(i, "had", "done", "served") && r.oneOf(i+1, "its", "their", "the", "his") // "had its 21 days"
	}
	if !over && (c.until != 0 || c.spell != 0) {
		return ""
	}
	over = over || c.has(actHoldOff) && !c.has(actRelease)
	for i := c.from; i < c.to && !over; i++ {
		over = c.has(actSpray|actFert|actEff|actHold) && endWords[r.tok(i).text] && !c.names(i) && !(r.oneOf(i, "over") && r.padAhead(i+1))
	}
	if !over {
		return ""
	}
	return "Does that hold begin, or is it over? Please say “ok to graze” where it is over."
}

// endWords may tell that a hold is over.
var endWords = wordSet(`ok okay end ended over finished expired clear cleared lifted passed done past ended fine good gone safe`)

// fromTo tells whether two paddocks are told with "to" between them.
func (r *reader) fromTo(pads []place) bool {
	p, q := pads[0], pads[1]
	return p.role == roleOut && q.role == roleIn || r.oneOf(p.next, "to", "thru", "through") && q.at > p.next && q.at <= p.next+2
}

// spread reads "6 to 9" and "top 1 to top 3" among holds as every paddock of
// those numbers.
func (r *reader) spread(pads []place) []place {
	if len(pads) != 2 || !r.fromTo(pads) {
		return pads
	}
	stem, first, ok := numbered(pads[0].name)
	other, last, ok2 := numbered(pads[1].name)
	if !ok || !ok2 || foldOf(stem) != foldOf(other) && other != "" || last-first > 60 {
		return pads
	}
	var list []place
	for n := first; n <= last; n++ {
		if name, known := r.book.has(foldOf(stem + strconv.Itoa(n))); known {
			list = append(list, place{name: name, known: true})
		} else if r.anyPaddock {
			list = append(list, place{name: stem + strconv.Itoa(n), known: true})
		}
	}
	if len(list) < 2 {
		return pads
	}
	return list
}

// numbered parts a name that ends in a number.
func numbered(name string) (stem string, n int, ok bool) {
	stem = strings.TrimRight(name, "0123456789")
	n, err := strconv.Atoi(name[len(stem):])
	return stem, n, err == nil
}

// releases lifts holds of each paddock.
func (r *reader) releases(c *clause) ([]entry.Entry, string) {
	if len(c.pads) == 0 {
		return nil, ""
	}
	reason := entry.Reason("")
	switch {
	case c.has(actSpray):
		reason = entry.HoldSpray
	case c.has(actEff):
		reason = entry.HoldEffluent
	case c.has(actFert):
		reason = entry.HoldFertiliser
	case c.has(actDry | actWet):
		reason = entry.HoldWet
	case c.has(actSilage):
		reason = entry.HoldSilage
	case c.has(actHay):
		reason = entry.HoldHay
	case c.has(actCrop):
		reason = entry.HoldCrop
	case c.has(actSow):
		reason = entry.HoldResown
	}
	if reason == "" {
		reason = r.noLongerFor(c)
	}
	if reason == "" && r.hasText(min(c.from, c.pads[0].at), c.to, "dry") {
		reason = entry.HoldWet // "north's dry, good to go again"
	}
	if at := r.firstWord(c); r.please && r.oneOf(at, "open", "unlock", "release", "lift") && !c.has(actDry) && !r.hasText(c.from, c.to, "hold") && !r.hasText(c.from, c.to, "holds") {
		return nil, "Is that done, or still to do? Please tell me when " + c.pads[0].name + " may be grazed."
	}
	if c.has(actDry) && r.hasText(c.from, c.to, "drying") {
		return nil, "Is " + c.pads[0].name + " dry enough to graze? Please say “dried out” when it is."
	}
	if c.until > r.today {
		return nil, "Do you mean that it may be grazed from that day on? Then tell me why it is held, and until when."
	}
	day := r.dayOf(c)
	if c.days.ok && reason != "" && r.releasedAfter(c.days.next, c.to) {
		day = r.today
	}
	var list []entry.Entry
	for _, p := range r.spread(c.pads) {
		list = append(list, entry.Release{Paddock: p.name, Date: day, Reason: reason})
	}
	return list, ""
}

// releasedAfter tells whether a paddock is said to be fit behind the day of what it was
// held for: "sprayed 12 on the 3rd, can be grazed again".
func (r *reader) releasedAfter(i, to int) bool {
	for i < to && r.tok(i).tag != andWord && r.tok(i).shape != mark && !r.oneOf(i, "but", "so") {
		i++
	}
	for ; i < to; i++ {
		if d, _, ok := r.idiomAt(i); ok && d.acts&actRelease != 0 {
			return true
		}
		if t := r.tok(i); t.tag == openWord || t.tag == releaseWord {
			return true
		}
	}
	return false
}

// sprayerSays tells whether a word says that who sprayed or spread tells how
// long stock stay out: "the boy sprayed 9 and he says nothing goes in till
// Friday". That it was done is no hearsay.
func (r *reader) sprayerSays(c *clause, i int) bool {
	if !r.oneOf(i, "says", "say", "said", "sez") || !r.oneOf(i-1, "he", "she") && r.tok(i-1).tag != andWord && r.tok(i-1).text != "," {
		return false
	}
	if n := r.tok(i + 1); n.shape != number && n.tag != numberWord && n.tag != negWord && n.tag != untilWord && !r.oneOf(i+1, "keep", "stay", "leave", "to", "stock", "it", "its", "we", "another") {
		return false // "9 sprayed, says Dave"
	}
	done := false
	for k := c.from; k < c.to; k++ {
		t := r.tok(k)
		if t.shape != word {
			continue
		}
		switch t.tag {
		case sprayWord, fertWord, effWord:
			if k > i {
				return false
			}
			done = true
		case hearWord, wishWord, condWord:
			if k != i {
				return false
			}
		}
		if d, _, ok := r.idiomAt(k); ok && d.guard&guardHear != 0 {
			return false
		}
	}
	return done
}

// noLongerFor gives what a paddock that is free again was held for: "unlock 28,
// it's not for silage any more".
func (r *reader) noLongerFor(c *clause) entry.Reason {
	end := r.sentenceEnd(c.to, min(len(r.toks), c.to+longestPiece))
	for i := c.to; i < end; i++ {
		if r.tok(i).tag != notWord && r.tok(i).tag != negWord || r.tok(i+1).tag != forWord {
			continue
		}
		switch r.tok(i + 2).tag {
		case silageWord:
			return entry.HoldSilage
		case hayWord:
			return entry.HoldHay
		}
	}
	return ""
}

// noLongerShut makes a release of "isn't shut for silage any more": it was shut
// and is no longer. What a label or the law keeps shut ends in no such way.
func (r *reader) noLongerShut(c *clause) {
	if c.guard != guardNeg || !c.has(actShut|actHold) || !c.has(actSilage|actHay) || c.acts&^(actShut|actHold|actSilage|actHay) != 0 || len(c.mobs) > 0 || c.until != 0 || c.spell != 0 || c.trouble {
		return
	}
	for i := c.from; i < c.to; i++ {
		if r.oneOf(i, "anymore", "longer") || r.oneOf(i, "any") && r.oneOf(i+1, "more") {
			c.acts, c.guard = actRelease|c.acts&(actSilage|actHay), 0
			return
		}
	}
}
