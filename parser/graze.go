package parser

import (
	"slices"

	"leafround/core/entry"
)

// grazings gives stock going in, coming out, or both.
func (r *reader) grazings(c *clause) ([]entry.Entry, string) {
	if len(c.pads) == 0 {
		return nil, r.grazingWhere(c)
	}
	if len(c.mobs) == 0 && c.has(actGrazed) && c.share == 0 && c.resid == nil && r.partToldVaguely(c) {
		return nil, "How much of " + c.pads[0].name + " is grazed? Please say, such as: half of 12 grazed"
	}
	if n := len(c.pads); n > 1 && len(c.mobs) == 0 && !c.stock && c.head == 0 && c.acts&^(actMoved|actIn) == 0 && r.tok(c.pads[0].at).shape == word && r.oneOf(c.pads[n-1].next, "is", "are", "was", "needs", "has", "got") {
		return nil, "" // "road into 12 is bad"
	}
	if r.fenceFor(c) {
		return nil, ""
	}
	if r.outSince(c) {
		c.days, c.spell = moment{day: r.today.Add(-c.spell), ok: true}, 0
	}
	if r.inSince(c) {
		c.days, c.spell = moment{day: r.today.Add(-c.spell), ok: true}, 0
	}
	if r.comeOn(c) {
		return nil, "Did they come out then, or are they to? Please tell me when the stock have moved."
	}
	if c.until != 0 || c.spell != 0 {
		return r.heldBack(c)
	}
	if c.someOf && c.share == 0 && (c.has(actGrazed) || c.has(actDone)) {
		return nil, "How much of the paddock was grazed? Please send a half, a quarter or the like."
	}
	if c.share > 0 && len(c.pads) > 1 && r.tok(c.pads[0].at-1).tag == ofWord && !r.hasTag(c.from, c.to, eachWord) && !r.hasText(c.from, c.to, "both") && c.has(actGrazed) && c.pads[1].at > 0 && r.joins(c.pads[1].at-1) {
		return nil, "Is that a part of each of them, or of " + c.pads[0].name + " alone?"
	}
	if c.backIn && len(c.mobs) == 0 {
		if r.tok(c.from).text == "back" {
			return nil, "" // "back in 5"
		}
		return nil, "Are stock back in it, or is it back in the round?"
	}
	if c.head > 0 && len(mobsOf(c)) > 1 {
		return nil, "Which of them went where? Please send one line for each mob."
	}
	if c.has(actPlace) && c.share > 0 && c.resid == nil && !c.has(actGrazed|actOut) {
		return nil, "Is that part grazed, or still to be grazed? Please say, such as: half of 12 grazed"
	}
	if c.still && !c.has(actOut|actGrazed|actMoved) || r.thereAlready(c) {
		const why = "Since when are they there? Please send the day that they went in, such as: heifers into 12 yesterday"
		if len(c.mobs) == 1 && len(c.pads) == 1 && c.pads[0].known {
			r.offer(why, c.from, c.to, c.mobs[0]+" into paddock "+c.pads[0].name, "They went in today")
		}
		return nil, why
	}
	ins, outs, all, doubt := r.ways(c)
	if doubt == "" {
		doubt = r.oddPad(c)
	}
	if doubt == "" {
		doubt = r.leftToDo(c)
	}
	if doubt != "" {
		return nil, doubt
	}
	if c.resid != nil && len(outs)+len(all) == 0 {
		return nil, "In which paddock was that left?"
	}
	if len(ins)+len(outs)+len(all) == 0 {
		return nil, ""
	}
	if r.please && !c.has(actGrazed|actOut) && (r.hasText(c.from, c.to, "put") || !c.has(actMoved)) {
		return nil, "Is that done, or still to do? Please tell me when the stock have moved."
	}
	if c.resid == nil && !c.has(actGrazed|actOut|actMoved) && !c.left && !r.putThere(c) && (r.hasText(c.from, c.to, "were") || r.hasText(c.from, c.to, "was") || r.hasText(c.from, c.to, "had")) && !c.has(actDone) {
		return nil, "Are they still there?"
	}
	if r.somebodyGoes(c) {
		return nil, "Is that stock, or somebody? Please say which went in, such as: milkers into " + c.pads[0].name
	}
	if c.has(actGrazed) && r.hasText(c.from, c.to, "being") {
		return nil, "Are stock still in there, or is it grazed? Please send it such as: milkers in 12, or: 12 grazed" // "12 being grazed"
	}
	if c.has(actOrder) {
		return nil, "Is that done, or still to do? Please tell me when the stock have moved."
	}
	if c.has(actGoing) && !r.nowThere(c) {
		return nil, "Are they there already? Please tell me when the stock have moved."
	}
	var list []entry.Entry
	for _, mob := range mobsOf(c) {
		g := entry.Graze{Date: r.dayOf(c), Mob: mob, Head: c.head, Part: c.share, Back: c.back}
		g.Moved = len(ins) > 0 && len(outs) > 0 && !slices.Equal(ins, outs)
		if slices.Equal(ins, outs) {
			list, ins = appendGrazes(list, g, ins, entry.In, nil), nil // "12 in and out"
		}
		list = appendGrazes(list, g, outs, entry.Out, c.resid)
		list = appendGrazes(list, g, all, entry.Grazed, c.resid)
		list = appendGrazes(list, g, ins, entry.In, nil)
	}
	return list, ""
}

// partToldVaguely tells whether "mostly" or the like stands beside a paddock, and is
// not its name.
func (r *reader) partToldVaguely(c *clause) bool {
	for i := c.from; i < c.to; i++ {
		if r.oneOf(i, "mostly", "largely", "partly") && !c.names(i) {
			return true
		}
	}
	return false
}

func appendGrazes(list []entry.Entry, g entry.Graze, names []string, e entry.GrazeEvent, resid *entry.Residual) []entry.Entry {
	for _, name := range names {
		g.Paddock, g.Event, g.Residual = name, e, resid
		if e == entry.In && g.Moved {
			g.Part = 0
		}
		list = append(list, g)
	}
	return list
}

// mobsOf gives the mobs named, or one without a name.
func mobsOf(c *clause) []string {
	var list []string
	for _, m := range c.mobs {
		if m != "" && !slices.Contains(list, m) {
			list = append(list, m)
		}
	}
	if len(list) == 0 {
		return []string{""}
	}
	return list
}

// grazingWhere asks for the paddock where stock plainly moved.
func (r *reader) grazingWhere(c *clause) string {
	if len(c.nums) > 0 && c.strange == len(c.nums) && c.guard == 0 && c.has(actGrazed) && !c.trouble {
		return r.noSuch(r.tok(c.nums[0]).text)
	}
	if c.stock && c.resid != nil && c.has(actOut) && c.guard == 0 {
		return "Which paddock did they come out of?" // "took them out of it, left 5cm"
	}
	if c.strange > 0 || c.guard != 0 {
		return ""
	}
	if c.resid != nil && c.resid.Unit == entry.Inches && c.acts == 0 && len(c.mobs) == 0 {
		const why = "Is that rain, or what stock left? For rain, please say so: rain 0.5 inch"
		r.offer(why, c.from, c.from, "rain", "")
		return why
	}
	if c.has(actMoved|actGrazed|actOut|actIn) && mobsOf(c)[0] != "" && !c.has(actOrder|actGoing) && !r.hasTag(c.from, c.to, atWord) {
		return "Which paddock was that?"
	}
	if c.resid != nil && c.has(actPlace|actGrazed|actOut) {
		return "Which paddock was that left in?"
	}
	return ""
}

// heldBack reads "12 out until Friday": a hold without a reason of its own.
func (r *reader) heldBack(c *clause) ([]entry.Entry, string) {
	if len(c.mobs) > 0 || c.has(actIn|actMoved|actGrazed) {
		return nil, "Do you mean that the paddock is out of the round until then, or that stock are there until then?"
	}
	c.acts |= actHold
	return r.holds(c)
}

// comeOn tells whether "they come out Friday" stands behind what else was told: it
// may be the Friday to come.
func (r *reader) comeOn(c *clause) bool {
	at := r.firstWord(c)
	return c.days.ok && c.days.weekday && !c.future && r.oneOf(at, "they", "he", "she") && r.oneOf(at+1, "come", "comes", "move", "go", "goes", "shift")
}

// outSince tells whether a number of days says how long ago stock came out:
// "steers been out of 12 two days now".
func (r *reader) outSince(c *clause) bool {
	return c.spell > 0 && c.spell <= 60 && c.until == 0 && !c.days.ok && mobsOf(c)[0] != "" && c.acts == actOut && c.only(roleOut) && c.guard == 0 && c.resid == nil &&
		r.hasText(c.from, c.to, "been") && !r.hasText(c.from, c.to, "for")
}

// inSince tells whether a number of days says how long ago stock went in: "heifers
// been in 12 three days".
func (r *reader) inSince(c *clause) bool {
	return c.spell > 0 && c.spell <= 60 && c.until == 0 && !c.days.ok && mobsOf(c)[0] != "" && c.acts == actIn && len(c.pads) == 1 && c.guard == 0 &&
		(r.hasText(c.from, c.to, "been") || c.now) && !r.hasText(c.from, c.to, "more") && !r.hasText(c.from, c.to, "another")
}

// ways sorts the paddocks of a grazing by where the stock went.
func (r *reader) ways(c *clause) (ins, outs, all []string, doubt string) {
	if c.has(actGrazed) && !c.has(actMoved|actOut|actIn) && len(c.pads) == 2 && c.pads[0].role == roleOut && c.pads[1].role == roleIn {
		if !r.hasTag(c.from, c.to, allWord) || len(c.mobs) > 0 {
			return nil, nil, nil, "Is that every paddock from " + c.pads[0].name + " to " + c.pads[1].name + ", or a move?"
		}
		c.pads = r.spread(c.pads)
	}
	mixed := slices.ContainsFunc(c.pads, func(p place) bool { return p.role == roleIn || p.role == roleOut })
	for _, p := range c.pads {
		switch {
		case p.role == roleIn:
			ins = append(ins, p.name)
		case p.role == roleOut:
			outs = append(outs, p.name)
		case c.has(actGrazed) && !mixed:
			all = append(all, p.name)
		case p.role == roleAt:
			ins, outs, doubt = r.at(c, p, mixed, ins, outs, doubt)
		case c.has(actIn) && c.has(actOut) && !mixed:
			ins, outs = append(ins, p.name), append(outs, p.name)
		case c.has(actIn) && !c.has(actOut):
			ins = append(ins, p.name)
		case c.has(actOut) && !c.has(actIn), c.has(actPlace), c.resid != nil && !c.has(actMoved):
			outs = append(outs, p.name)
		case c.has(actGrazed):
			all = append(all, p.name)
		default:
			doubt = "Did stock go into " + p.name + ", or come out of it?"
			r.offer(doubt, p.at, p.next, "into paddock "+p.name, "")
			r.offer(doubt, p.at, p.next, "out of paddock "+p.name, "")
		}
	}
	if c.has(actGrazed) && len(all) == 0 && len(ins) == 0 && len(outs) > 0 && !r.grazedTo(c) {
		all, outs = outs, nil // "12 grazed, cows out"
	}
	if c.has(actGrazed) && len(ins) > 0 && len(outs) == 0 && len(all) == 0 && !slices.ContainsFunc(c.pads, func(p place) bool { return p.role == roleIn }) {
		all, ins = ins, nil
	}
	return ins, outs, all, doubt
}

// grazedTo tells whether "grazed to 4cm" behind stock that came out tells no more
// than what they left: "ewes out of 12 this morning, grazed to 4cm".
func (r *reader) grazedTo(c *clause) bool {
	if c.resid == nil || len(c.mobs) == 0 {
		return false
	}
	for i := c.pads[0].next; i < c.to; i++ {
		if r.tok(i).tag == grazedWord {
			k := r.over(i+1, "right", "it", "down", "nicely", "well")
			return r.oneOf(k, "to") && r.tok(k+1).shape == number
		}
	}
	return false
}

// at settles "in 12" by what else was said.
func (r *reader) at(c *clause, p place, mixed bool, ins, outs []string, doubt string) ([]string, []string, string) {
	switch {
	case c.has(actGrazed):
		return ins, append(outs, p.name), doubt
	case c.has(actDone) && !mixed:
		return ins, append(outs, p.name), doubt
	case c.has(actPlace) && c.resid == nil && !mixed && len(c.mobs) > 0:
		return ins, outs, "Did they leave " + p.name + ", or are they still in it?"
	case (c.has(actPlace) || c.resid != nil && !c.has(actMoved)) && !mixed:
		return ins, append(outs, p.name), doubt
	case c.has(actOut) && !mixed && !c.has(actIn):
		return ins, outs, "Are the stock out of " + p.name + ", or out in it?"
	}
	return append(ins, p.name), outs, doubt
}

// nowThere tells whether "now" or "today" makes "putting them in 12" a fact.
func (r *reader) nowThere(*clause) bool { return false }
