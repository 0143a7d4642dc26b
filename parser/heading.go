package parser

// heading is a line of its own that the lines after it belong under: a
// paddock's name, or a day.
type heading struct {
	clause
	loose bool // nothing has used it yet
}

// heads tells whether a clause can be a heading.
func (c *clause) heads() bool {
	return !c.says() && c.guard == 0 && len(c.nums) == 0 && (c.bare || c.strange == 1 && c.strangeW == "did" && len(c.pads) == 1 || c.colon && c.strange == 0 && len(c.pads) == 1 && len(c.mobs) == 0 && (c.pads[0].role == roleNone || c.pads[0].role == roleAt) || c.days.ok && (len(c.pads) == 0 || c.pads[0].role == roleNone && len(c.pads) == 1))
}

// take makes a clause the heading; a day stays when a paddock is added.
func (h *heading) take(c *clause) {
	days, future := h.days, h.future
	h.clause, h.loose = *c, true
	if !c.days.ok && days.ok {
		h.days, h.future = days, future
	}
}

// under takes what the heading above told; own tells that its day comes behind it.
func (c *clause) under(h *heading, before []clause, own bool) {
	if !c.says() {
		return
	}
	goesOn := false
	if n := len(before); n > 0 && before[n-1].days.ok && len(c.mobs) == 0 {
		goesOn = before[n-1].sentence == c.sentence && len(c.pads) == 0 || // "sprayed 3 on 10/1, keep off until 10/15"
			c.resid != nil && before[n-1].family() == famGraze // "out of 22 this evening. Residual in 22 was 1550"
	}
	if !c.days.ok && h.days.ok && !goesOn && !own {
		c.days, c.future = h.days, h.future
		h.loose = h.loose && len(h.pads) > 0
	}
	if len(c.pads) == 0 && len(h.pads) > 0 && c.family() != famRain && c.family() != famTemp {
		c.pads, h.pads, h.loose = h.pads, nil, false
		if h.doubt != "" {
			c.unsure(h.doubt) // "kauri 7 on monday: 2 2.5 2"
		}
	}
	if len(c.mobs) == 0 {
		c.mobs = h.mobs
	}
}

// standsAlone tells whether a clause is all of its sentence, up to a colon. The
// day of a walk may have talk around it: "walked everything this morning, here
// goes".
func (r *reader) standsAlone(list []clause, n int) bool {
	c := &list[n]
	day := c.days.ok && len(c.pads) == 0 && r.ofCounts(c)
	idle := func(d *clause) bool {
		if !day && c.days.ok && len(c.pads) == 0 && c.strange+c.remarks == 0 && r.belated(d) {
			day = true // "Belated, 28/10."
		}
		return day && d.idle()
	}
	for k := n - 1; k >= 0 && list[k].sentence == c.sentence; k-- {
		if !idle(&list[k]) {
			return false
		}
	}
	for k := n + 1; k < len(list) && list[k].sentence == c.sentence && !list[k-1].colon; k++ {
		if !idle(&list[k]) {
			return false
		}
	}
	return true
}

// ofCounts tells whether a clause with a day says that what follows was counted
// on it: "these are Monday's", "from Monday", "yesterday's numbers". No other word
// may stand in it that nobody knows: "these are for Friday's meeting".
func (r *reader) ofCounts(c *clause) bool {
	if r.walks(c.from, c.to) {
		return true
	}
	for _, i := range c.strays {
		if !dayMarks[r.tok(i).text] {
			return false
		}
	}
	for i := c.from; i < c.to; i++ {
		if dayMarks[r.tok(i).text] && (!r.oneOf(i, "from", "for") || r.when(i+1).ok) {
			return true
		}
	}
	return false
}

// dayMarks stand with the day of the counts that follow.
var dayMarks = wordSet(`these those late belated belatedly numbers figures results readings rounds round from for catching backdated backdate data tillers did done tallies tally`)

// belated tells whether a clause says that what follows comes late.
func (r *reader) belated(c *clause) bool {
	for i := c.from; i < c.to; i++ {
		if r.oneOf(i, "belated", "belatedly", "late", "forgot", "forgotten", "catching", "catch", "backdated", "overdue", "tardy", "these", "those", "numbers", "figures") || walkWords[r.tok(i).text] {
			return true
		}
	}
	return false
}

// headsDay tells whether a clause can give its day to the counts under it: it
// is nothing but the day, or says that they were counted on it. "Monday was a
// shocker" tells of the day alone.
func (r *reader) headsDay(c *clause, behind []clause) bool {
	if len(c.pads) > 0 || !c.days.ok || c.days.day == r.today || c.strange == 0 && c.remarks == 0 || r.ofCounts(c) {
		return true
	}
	for n := range behind {
		if behind[n].count != nil {
			return false
		}
	}
	return true
}

// walks tells whether a word in a run of tokens tells of a leaf walk.
func (r *reader) walks(from, to int) bool {
	for i := from; i < to; i++ {
		if walkWords[r.tok(i).text] {
			return true
		}
	}
	return false
}

// idle tells whether a clause is nothing but words that say nothing.
func (c *clause) idle() bool { return c.guard&^guardNeg == 0 && c.wordy() }

// wordy tells whether a clause holds nothing but words: no paddock, no herd, no
// number, no day.
func (c *clause) wordy() bool {
	return !c.says() && len(c.pads) == 0 && len(c.mobs) == 0 && len(c.nums) == 0 && !c.days.ok &&
		c.head == 0 && c.share == 0 && c.until == 0 && c.spell == 0 && !c.event && !c.trouble
}

// headsList tells whether a clause is a line that says what was done in the
// paddocks on the lines under it, and lays that on them: "grazed so far this
// week", "5 Mon", "6 Tues". A line without a day of its own takes the day of
// the heading, or its doubt which one that was.
func (r *reader) headsList(list []clause, n int) bool {
	c := &list[n]
	done := c.acts == actGrazed || c.acts == actTopped
	if !done || len(c.pads) > 0 || c.guard != 0 || len(c.nums) > 0 || c.resid != nil || c.count != nil || c.share != 0 || c.trouble || c.event ||
		c.until != 0 || c.spell != 0 || c.strange > 1 || c.strange == 1 && c.strangeW != "week" || !r.standsAlone(list, n) {
		return false
	}
	if n+1 == len(list) || list[n+1].sentence == c.sentence || !list[n+1].listed() || !r.follows(c, &list[n+1]) {
		return false
	}
	for k := n + 1; k < len(list) && list[k].listed() && r.follows(&list[k-1], &list[k]); k++ {
		d := &list[k]
		d.acts, d.colon, d.bare = c.acts, false, false
		if len(d.mobs) == 0 {
			d.mobs = c.mobs
		}
		if !d.days.ok {
			d.days, d.future = c.days, c.future
			d.strange, d.strangeW = c.strange, c.strangeW
		}
	}
	return true
}

// follows tells whether nothing but marks and line breaks parts two clauses.
func (r *reader) follows(c, d *clause) bool {
	for i := c.to; i < d.from; i++ {
		if t := r.tok(i); t.shape != newline && t.shape != mark {
			return false
		}
	}
	return true
}

// listed tells whether a clause holds paddocks, with a day or without, and
// nothing else.
func (c *clause) listed() bool {
	return !c.says() && len(c.pads) > 0 && c.pads[0].role == roleNone && c.guard == 0 && c.strange == 0 && len(c.nums) == 0 && c.acts == 0 &&
		!c.trouble && !c.event && c.until == 0 && c.spell == 0
}

// shares gives the paddocks before a grazing what was done in it, where each is
// told with its own part or its own day: "whole of 12 and half of 18 grazed", "fri
// p4, sat p5, sun p6 all grazed".
func (r *reader) shares(list []clause) {
	for n := len(list) - 2; n >= 0; n-- {
		c, d := &list[n], &list[n+1]
		if c.sentence != d.sentence || !c.listed() || c.days.ok && !d.days.ok || c.colon || d.acts != actGrazed || len(d.pads) == 0 || d.pads[0].role != roleNone || d.count != nil {
			continue
		}
		if c.share == 0 && d.share == 0 && r.tok(c.pads[0].at-1).tag != ofWord && !(c.days.ok && d.days.ok && d.count == nil) {
			continue
		}
		c.acts, c.guard = d.acts, d.guard
		if !c.days.ok {
			c.days, c.future = d.days, d.future
		}
		if len(c.mobs) == 0 {
			c.mobs = d.mobs
		}
	}
}
