package parser

import (
	"fmt"

	"leafround/core/entry"
)

// meaning gives what a statement says as entries, or what must be asked. A
// plan, a denial, a wish, hearsay or a joke never becomes an entry of what it
// talks about.
func (r *reader) meaning(c *clause) outcome {
	if c.lost != "" && len(c.mobs) > 0 && c.guard&^guardFuture == 0 && (c.family() == famGraze || !c.says()) && !r.anyPaddock {
		return outcome{ask: &entry.Ask{Reason: r.noSuch(c.lost)}}
	}
	if !c.says() {
		return r.noVerb(c)
	}
	if r.peopleMoved(c) {
		return outcome{talk: true}
	}
	counted := c.count != nil && !c.event && (len(c.count.said) > 1 || c.count.decimal) && len(c.pads) > 0
	if (c.event || c.trouble) && !counted && (c.family() == famGraze || r.brokenThere(c) || c.family() == famRelease || c.family() == famCanopy || c.acts&^(actShut|actCut|actIn) == 0) && !c.has(actGrazed) && (len(c.mobs) == 0 || c.event || c.family() == famRelease) {
		c.acts, c.resid = 0, nil
		return r.noVerb(c)
	}
	if c.has(actGrazed|actOut|actMoved) && c.has(actsHold|actsCut) && c.count == nil && c.until == 0 && c.spell == 0 && c.family() != famGraze && r.tangled(c) {
		return outcome{ask: &entry.Ask{Reason: "Is that a grazing, or is the paddock shut, or both? Please send them apart."}}
	}
	if c.near && !r.nearHarmless(c) {
		if c.count == nil || len(c.pads) == 0 {
			return outcome{talk: true}
		}
		c.unsure("What score shall I log? Please send one number.")
	}
	entries, doubt := r.entriesOf(c)
	if entries == nil && doubt == "" {
		return r.noVerb(c)
	}
	if o, guarded := r.guarded(c, entries, doubt); guarded {
		return o
	}
	if doubt == "" {
		doubt = c.doubt
	}
	if doubt == "" {
		doubt = r.unresolved(c)
	}
	if doubt == "" && r.dayElsewhere(c) {
		doubt = "Which day do you mean?"
	}
	if doubt != "" {
		return outcome{ask: &entry.Ask{Reason: doubt, Options: r.optionsFor(c)}}
	}
	if c.strange > 0 || len(c.nums) > 0 {
		return r.strangely(c, entries)
	}
	if r.comesLater(c) {
		return outcome{ask: r.confirm("Is that done, or still to do?", entries)}
	}
	if p, ok := r.anyWord(c); ok {
		return outcome{ask: r.confirm("Is “"+p.name+"” a paddock?", entries)}
	}
	if r.theBuilding(c) {
		return outcome{ask: r.confirm("Is that the paddock "+c.pads[0].name+"?", entries)}
	}
	r.understand(c)
	return outcome{entries: entries}
}

// brokenThere tells whether the effluent or spray of a clause is that of a thing
// which is broken: "pump for the effluent in 9 is broken".
func (r *reader) brokenThere(c *clause) bool {
	if c.event && c.acts&^(actEff|actSpray|actFert) == 0 && c.until == 0 && c.spell == 0 {
		return true // "ran out of urea on 12", "slurry tanker stuck in 5"
	}
	if !c.trouble || c.acts&^(actEff|actSpray|actFert) != 0 || c.until != 0 || c.spell != 0 {
		return false
	}
	for i := c.from; i < c.to; i++ {
		if r.oneOf(i, "broken", "burst", "leak", "leaks", "leaking", "blocked", "pump", "hydrant") && !c.names(i) {
			return true
		}
	}
	return false
}

// nearHarmless tells whether "over", "past" and the like say nothing about
// the scores or the event: with scores told one by one they are a remark.
func (r *reader) nearHarmless(c *clause) bool {
	if c.count != nil {
		return len(c.count.said) > 1
	}
	for i := c.from; i < c.to; i++ {
		if r.oneOf(i, "nearly", "almost", "approaching") {
			return false
		}
	}
	return true
}

// tangled tells whether a clause says in one breath that stock grazed and that
// the paddock is held or cut.
func (r *reader) tangled(c *clause) bool {
	if len(c.pads) > 1 && c.has(actIn|actMoved) && !c.has(actSpray|actFert|actEff|actShut) {
		return true
	}
	return c.has(actGrazed) || len(c.mobs) > 0 && c.has(actsHold&^actHold|actCut|actTopped)
}

// entriesOf gives a statement's entries by what it is about.
func (r *reader) entriesOf(c *clause) ([]entry.Entry, string) {
	if list, doubt, ok := r.countBeside(c); ok {
		return list, doubt
	}
	switch c.family() {
	case famCount:
		return r.counts(c)
	case famGraze:
		return r.grazings(c)
	case famCut:
		return r.cuts(c)
	case famCanopy:
		return r.canopies(c)
	case famHold:
		return r.holds(c)
	case famRelease:
		return r.releases(c)
	case famRain:
		return r.rainsAnd(c)
	case famTemp:
		return r.temperatures(c)
	}
	return nil, ""
}

// cuts gives a silage or hay cut, or a topping, for each paddock.
func (r *reader) cuts(c *clause) ([]entry.Entry, string) {
	what := entry.CutKind("")
	switch {
	case c.has(actTopped) || c.has(actMow) && !c.has(actSilage|actHay):
		what = entry.Topped
	case c.has(actSilage) && c.has(actHay):
	case c.has(actSilage):
		what = entry.Silage
	case c.has(actHay):
		what = entry.Hay
	}
	if len(c.pads) == 0 {
		if c.acts&(actCut|actTopped|actMow) == 0 || c.strange > 0 || c.trouble || c.guard != 0 || c.until != 0 {
			return nil, ""
		}
		return nil, "Which paddock was cut?"
	}
	if c.has(actMow) && what == entry.Topped && !c.has(actTopped) {
		return nil, "Was it mown for silage or hay, or topped?"
	}
	if c.has(actGoing) {
		return nil, "Is it done? Please tell me when it is, and whether it was cut for silage or hay, or topped."
	}
	if what == "" {
		return nil, "Was it cut for silage or hay, or topped?"
	}
	if what != entry.Topped && (!c.has(actCut|actBale|actMow) && !r.hasTag(c.from, c.to, offWord) && !r.finished(c) || r.fed(c)) {
		return nil, fmt.Sprintf("Was it cut for %s, or shut up for %s?", what, what)
	}
	if c.share > 0 && c.share < 1 || c.someOf {
		return nil, "Was only a part of it cut? I log a cut for all of a paddock: please say so where it was."
	}
	var list []entry.Entry
	for _, p := range r.spread(c.pads) {
		list = append(list, entry.Cut{Paddock: p.name, Date: r.dayOf(c), What: what})
	}
	return list, ""
}

// fed tells whether hay or silage was fed out there rather than made.
func (r *reader) fed(c *clause) bool {
	for i := c.from; i < c.to; i++ {
		if !c.names(i) && r.oneOf(i, "fed", "feed", "feeding", "put", "putting", "giving", "gave", "rolled", "out", "to") && r.tok(i).shape == word && !(r.oneOf(i, "to") && r.oneOf(i-1, "round", "around")) {
			return true
		}
	}
	return false
}

// finished tells whether a word in the clause says that silage or hay was made.
func (r *reader) finished(c *clause) bool {
	for i := c.from; i < c.to; i++ {
		if c.names(i) {
			continue
		}
		switch r.tok(i).text {
		case "made", "silaged", "ensiled", "wrapped", "hayed", "done", "took", "taken", "today", "yesterday", "carted", "baleage":
			return r.tok(i).text != "baleage"
		}
	}
	return false
}

// canopies gives the closed canopy of each paddock; "closed" alone is unclear.
func (r *reader) canopies(c *clause) ([]entry.Entry, string) {
	if len(c.pads) == 0 {
		if c.has(actCanopy) && c.guard == 0 && c.strange == 0 {
			return nil, "In which paddock has the canopy closed?"
		}
		return nil, ""
	}
	for i := c.from; i < c.to; i++ {
		if r.oneOf(i, "closing", "close") {
			return nil, "Is the canopy closed, with no bare ground to be seen, or only nearly?"
		}
	}
	if c.has(actClosed) && !c.has(actCanopy) {
		return nil, r.closedHow(c)
	}
	var list []entry.Entry
	for _, p := range r.spread(c.pads) {
		list = append(list, entry.Canopy{Paddock: p.name, Date: r.dayOf(c)})
	}
	return list, ""
}

// closedHow asks what "closed" means, with both ways to mean it.
func (r *reader) closedHow(c *clause) string {
	const why = "Does “closed” mean that the canopy has closed, or that it is shut up?"
	for i := c.from; i < c.to; i++ {
		if t := r.tok(i); (t.tag == closedWord || t.tag == closeWord) && !c.names(i) {
			r.offer(why, i, i+1, "canopy closed", "Canopy closed")
			r.offer(why, i, i+1, "shut up", "Shut up")
		}
	}
	return why
}
