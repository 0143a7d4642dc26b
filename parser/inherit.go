package parser

import "leafround/core/entry"

// What a clause takes from the one before it.

// inherit takes from the statement before what a new one leaves out.
func (r *reader) inherit(c, last *clause) {
	c.otherHalf(last)
	if f := last.family(); !c.says() && !c.still && !r.driedThere(c) && !c.has(actDamp) && !walkWords[r.tok(c.from).text] && len(c.pads) > 0 && last.count == nil && f != famRain && f != famTemp && c.sentence == last.sentence {
		c.acts = last.acts
		if c.only(roleAt) && f == famGraze && last.has(actOut) && last.only(roleOut) {
			c.goesIn() // "milkers off 30 at 1500, on 31"
		}
		c.residLike(last)
		for n := range c.pads {
			if c.pads[n].role == roleNone && len(last.pads) > 0 {
				c.pads[n].role = last.pads[0].role
			}
		}
		if len(c.mobs) == 0 {
			c.mobs = last.mobs
		}
		if c.until == 0 && c.spell == 0 {
			c.until, c.spell = last.until, last.spell
		}
	}
	if c.says() && len(c.pads) == 0 && c.count == nil && c.family() != famRain && c.family() != famTemp {
		c.pads = append([]place(nil), last.pads...)
		for n := range c.pads {
			c.pads[n].role = roleNone
		}
	}
	denied := last.family() == famNone && last.guard&guardNeg != 0 // "milkers didn't go in 12, went in 13"
	if c.family() == famGraze && (last.family() == famGraze || denied) && len(c.mobs) == 0 && (c.sentence == last.sentence || c.now || c.stock || last.has(actOut) && !c.has(actOut|actGrazed) && len(c.pads) == 1 && c.pads[0].role != roleOut && c.resid == nil) {
		if !r.grazedElsewhere(c, last) {
			c.mobs = last.mobs
		}
	}
	if c.sameDay && !c.days.ok && last.days.ok {
		c.days, c.future = last.days, last.future
	}
	if c.sentence != last.sentence {
		return
	}
	if last.owes {
		if last.owedThen && !c.days.ok {
			c.unsure("Which day was that?")
		}
		return
	}
	if !c.days.ok && last.days.ok && !c.now && !c.still {
		c.days, c.future = last.days, last.future
	}
	c.guard |= last.guard &^ (guardNeg | guardFuture)
	if last.future && c.future {
		c.guard |= guardFuture
	}
}

// grazedElsewhere tells whether a clause says of other paddocks that they were grazed,
// where the one before tells of stock that go in or out: it may not be they who
// grazed there. "milkers 18 to 21, 6b grazed yesterday".
func (r *reader) grazedElsewhere(c, last *clause) bool {
	return len(c.pads) > 0 && c.has(actGrazed) && !c.has(actIn|actOut|actMoved) && !last.has(actGrazed) && c.only(roleNone) && !c.stock && !c.pronoun
}

// listBehind tells whether a clause that opens a sentence names no paddock because
// those it is about come behind a mark: "12 2 2.5 2. Canopy's closed, 6 and 13",
// "heifers into hill. Shut for silage: 8, 9". A day or "too" behind a comma would
// make them further ones.
func (r *reader) listBehind(list []clause, n int) bool {
	if n == 0 || n+1 >= len(list) || list[n+1].sentence != list[n].sentence {
		return false
	}
	c, d := &list[n], &list[n+1]
	if t := r.tok(c.to - 1); (c.colon || t.text == "-" && !t.glued && c.to-c.from == 2 && list[n-1].sentence < c.sentence) && c.says() && c.count == nil && len(c.pads)+len(c.mobs) == 0 && c.guard == 0 && !d.says() && len(d.pads) > 0 && d.guard == 0 {
		return true // "heifers into hill. shut for silage: 8, 9"
	} else if f := c.family(); f == famHold && f == d.family() && len(c.pads)+len(c.mobs) == 0 && !c.days.ok && c.until == 0 && c.spell == 0 && c.guard == 0 && len(d.pads) > 0 && (t.tag == andWord || t.text == "&") && c.to-c.from <= 2 && c.acts&^(actFert|actEff) == 0 {
		return true // "12 2 2.5 2 then effluent and urea on 13"
	}
	if list[n-1].sentence == c.sentence && (list[n-1].count != nil || list[n-1].family() == famNone) {
		return false
	}
	return c.family() == famCanopy && len(c.pads)+len(c.mobs) == 0 && c.count == nil && !c.days.ok && c.guard == 0 &&
		!d.says() && len(d.pads) > 0 && len(d.mobs) == 0 && !d.days.ok && d.guard == 0 && !r.hasText(d.from, d.to, "too") && !r.hasText(d.from, d.to, "also") && !r.hasText(d.from, d.to, "well")
}

// residLike takes the one number of a paddock behind another's residual for its
// own: "out p4 mon arvo resid 1450, p5 tues 1600".
func (c *clause) residLike(last *clause) {
	if last.resid == nil || last.resid.Unit != entry.KgDMPerHa || c.resid != nil || !leftCover(c.lone) {
		return
	}
	c.resid = &entry.Residual{Value: c.lone, Unit: entry.KgDMPerHa}
	c.nums, c.strange, c.strays = nil, 0, nil
}

// shareTillers gives averages before "10 tillers each" that number too.
func shareTillers(list []clause) {
	for n := len(list) - 2; n >= 0; n-- {
		c, next := &list[n], &list[n+1]
		if c.sentence == next.sentence && c.count != nil && next.count != nil && next.count.each && c.count.n == 0 && len(c.count.said) == 1 {
			c.count.n, c.count.each = next.count.n, true
		}
	}
}

// onlyTillers tells whether a clause says how many tillers were pulled, and no
// more.
func (c *clause) onlyTillers() bool {
	return c.count != nil && c.count.empty() && c.count.n > 0 && c.count.doubt == "" && len(c.pads) == 0 && c.acts == 0 && c.strange == 0 && len(c.mobs) == 0
}

// herdless tells whether a sentence behind a leaf count speaks of going in or
// out, but of no stock and no paddock: it may be the counter who does.
func (c *clause) herdless(last *clause) bool {
	if last.family() == famGraze && c.sentence != last.sentence && c.acts == actOut|actDone && len(c.pads) == 0 && len(c.mobs) == 0 && !c.stock && c.resid == nil && (!c.days.ok || c.days == last.days) && (last.has(actOut|actGrazed) || c.to-c.from > 1) {
		return true // "now in 6. Job done."
	}
	if f := last.family(); (f == famCut || f == famHold) && c.has(actDone) && !c.has(actIn|actMoved) && len(c.pads) == 0 && len(c.mobs) == 0 && !c.stock {
		return true // "1 mown for silage, finished by 8pm"
	}
	return last.count != nil && (c.sentence != last.sentence || c.strange+c.remarks > 0) && c.count == nil && c.family() == famGraze && c.resid == nil &&
		!c.has(actGrazed) && len(c.pads) == 0 && len(c.mobs) == 0 && c.head == 0 && !c.stock
}

// absorbs tells whether a clause belongs to the statement before it.
func (c *clause) absorbs(d *clause) bool {
	if c.sentence != d.sentence {
		return c.continues(d)
	}
	if c.owes && d.says() || c.series && d.series {
		return false
	}
	if !d.says() {
		if !c.says() && len(c.pads) > 0 && len(c.mobs) > 0 && len(d.pads) > 0 && len(d.mobs) > 0 {
			return false // "milkers 12, heifers 13"
		}
		if f := c.family(); (f == famRain || f == famTemp) && (len(d.pads) > 0 || len(d.nums) > 0) {
			return false
		}
		if len(d.pads) > 0 {
			return len(c.pads) == 0 || !c.says()
		}
		if c.share > 0 && d.share > 0 && d.days.ok {
			return false
		}
		return !(d.days.ok && c.days.ok && c.days.day != d.days.day)
	}
	if !c.says() {
		return !(len(c.pads) > 0 && len(d.pads) > 0)
	}
	if len(d.pads) > 0 {
		return len(c.pads) == 0 && c.family() == d.family() && c.count == nil
	}
	if d.days.ok && c.days.ok && c.days.day != d.days.day {
		return false
	}
	f, g := c.family(), d.family()
	if f == famRain && g == famRain && c.mm > 0 && d.mm > 0 {
		return false // "6mm yesterday, another 4mm last night"
	}
	if f == famTemp && g == famTemp && c.apartFrom(d) {
		return false // "soil 11, air 18"
	}
	switch {
	case f == famGraze && g == famGraze && c.acts&actsGraze != 0 && (d.has(actIn) && !c.has(actIn) || d.has(actOut) && !c.has(actOut)) && len(c.pads) > 0 && c.pads[0].role != roleNone:
		return false // "milkers out of 12, heifers in"
	case (f == famHold && g == famCut || f == famCut && g == famHold) && (c.acts|d.acts)&(actSpray|actFert|actEff|actSow|actCrop|actWet|actTopped|actMow) != 0:
		return false
	case f == g, f == famGraze && d.resid != nil && !d.has(actsGraze), f == famRelease && g == famHold, f == famHold && g == famRelease,
		f == famCount && g == famCanopy, f == famHold && g == famCut, f == famCut && g == famHold:
		return true
	case g == famGraze && d.acts&^actPlace == 0 && d.resid == nil:
		return true
	case f == famHold && g == famGraze && (d.until != 0 || d.spell != 0) && !d.has(actIn|actMoved|actGrazed):
		return true
	case g == famNone:
		return true
	}
	return false
}

// absorb adds a clause's parts to the statement before it.
func (c *clause) absorb(d *clause) {
	c.to = d.to
	c.pads = append(c.pads, d.pads...)
	c.mobs = append(c.mobs, d.mobs...)
	c.head = max(c.head, d.head)
	c.still = c.still || d.still
	if d.days.ok {
		c.days, c.future = d.days, d.future
	}
	if d.until != 0 {
		c.until = d.until
	}
	c.spell = max(c.spell, d.spell)
	if d.resid != nil {
		c.resid = d.resid
	}
	if d.share != 0 {
		c.share = d.share
	}
	c.someOf = c.someOf || d.someOf
	waits := c.awaits()
	if d.count != nil && waits {
		d.count.n, d.count.skipped = max(d.count.n, c.count.n), both(d.count.skipped, c.count.skipped)
		c.count = nil
	}
	if d.count != nil && c.count != nil {
		c.unsure("Those are two lists of scores. Please send each with its paddock.")
	}
	if d.count != nil && c.count == nil {
		if c.strange > 0 && len(c.pads) > 0 && len(d.pads) == 0 && !waits && !(c.intro && c.fits(d)) && !d.awaits() {
			c.unsure("Is that a leaf count of " + c.pads[0].name + "?")
		}
		c.count = d.count
	}
	if d.has(actRain) {
		if c.mm > 0 && d.mm > 0 && (c.mm > 1.06*d.mm || d.mm > 1.06*c.mm) {
			c.unsure("Are those two amounts of rain? Please send each with its day, such as: rain sat 12mm, sun 8mm")
		}
		c.mm = d.mm
	}
	c.temps = append(c.temps, d.temps...)
	if c.low != nil && d.low != nil && *c.low != *d.low || c.high != nil && d.high != nil && *c.high != *d.high {
		c.unsure(whichIsWhich)
	}
	if d.low != nil {
		c.low = d.low
	}
	if d.high != nil {
		c.high = d.high
	}
	c.tooHot += d.tooHot
	c.heated = c.heated || d.heated
	c.bareLow, c.bareHigh = c.bareLow || d.bareLow, c.bareHigh || d.bareHigh
	if c.where == "" {
		c.where = d.where
	}
	c.acts |= d.acts
	if !d.says() && len(d.pads)+len(d.mobs) == 0 {
		c.tail |= d.guard &^ c.guard
	}
	c.guard |= d.guard
	c.remarks += d.remarks
	c.trouble = c.trouble || d.trouble
	c.back = c.back || d.back
	c.kept = c.kept || d.kept
	if d.doubt != "" {
		c.unsure(d.doubt)
	}
	if v := d.lone; leftCover(v) && c.family() == famGraze && c.resid == nil {
		c.resid = &entry.Residual{Value: v, Unit: entry.KgDMPerHa}
		return
	}
	c.nums = append(c.nums, d.nums...)
	c.soften(d)
}
