package parser

import "leafround/core/entry"

// family groups the acts that can stand in one statement.
type family uint8

const (
	famNone family = iota
	famCount
	famGraze
	famCut
	famCanopy
	famHold
	famRelease
	famRain
	famTemp
)

// family gives what a clause is about.
func (c *clause) family() family {
	switch {
	case c.has(actRelease) && (c.until != 0 || c.spell != 0) && c.has(actsHold):
		return famHold
	case c.has(actRelease | actDry):
		return famRelease
	case c.has(actRain):
		return famRain
	case c.has(actTemp):
		return famTemp
	case c.has(actsHold):
		return famHold
	case c.has(actsCut):
		return famCut
	case c.count != nil:
		return famCount
	case c.has(actCanopy | actClosed):
		return famCanopy
	case c.has(actsGraze|actPlace|actOrder|actGoing) || c.resid != nil:
		return famGraze
	}
	return famNone
}

// merge joins clauses into statements: what a clause lacks it takes from its
// neighbours ("12 grazed yesterday, 13 today"; "p11 3lf, canopy shut").
func (r *reader) merge(list []clause, carry *clause) []clause {
	var out []clause
	for n := range list {
		c := list[n]
		c.takeCarry(carry)
		if len(out) == 0 {
			out = append(out, c)
			continue
		}
		last := &out[len(out)-1]
		if last.absorbs(&c) {
			last.absorb(&c)
			continue
		}
		c.inherit(last)
		out = append(out, c)
	}
	shareDay(out)
	out = keepCarry(out, carry)
	return out
}

// takeCarry takes what a heading of an earlier line told.
func (c *clause) takeCarry(carry *clause) {
	if carry == nil || !c.says() {
		return
	}
	if !c.days.ok && carry.days.ok {
		c.days, c.future = carry.days, carry.future
		carry.loose = false
	}
	if len(c.pads) == 0 && len(carry.pads) > 0 && c.family() != famRain && c.family() != famTemp {
		c.pads = carry.pads
		carry.loose = false
		if c.count != nil {
			carry.pads = nil
		}
	}
	if len(c.mobs) == 0 {
		c.mobs = carry.mobs
	}
}

// absorbs tells whether a clause belongs to the statement before it.
func (c *clause) absorbs(d *clause) bool {
	if !d.says() {
		if len(d.pads) > 0 {
			return len(c.pads) == 0 || !c.says()
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
	switch {
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
	if d.count != nil && c.count == nil {
		c.count = d.count
	}
	if d.has(actRain) {
		c.mm = d.mm
	}
	c.temps = append(c.temps, d.temps...)
	if d.low != nil {
		c.low = d.low
	}
	if d.high != nil {
		c.high = d.high
	}
	if c.where == "" {
		c.where = d.where
	}
	c.acts |= d.acts
	c.guard |= d.guard
	c.remarks += d.remarks
	c.trouble = c.trouble || d.trouble
	c.back = c.back || d.back
	if d.doubt != "" {
		c.unsure(d.doubt)
	}
	c.nums = append(c.nums, d.nums...)
	c.soften(d)
}

// soften counts another clause's strange words: where that clause is nothing
// but talk, it is a remark.
func (c *clause) soften(d *clause) {
	if d.strange == 0 {
		return
	}
	if c.strange == 0 {
		c.strangeW = d.strangeW
	}
	if c.says() && !d.says() && len(d.pads) == 0 && len(d.mobs) == 0 && len(d.nums) == 0 && !d.days.ok {
		c.remarks += d.strange
		return
	}
	c.strange += d.strange
}

// inherit takes from the statement before what a new one leaves out.
func (c *clause) inherit(last *clause) {
	if !c.says() && len(c.pads) > 0 && last.count == nil {
		c.acts = last.acts
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
		if c.resid == nil {
			c.resid = nil
		}
	}
	if c.says() && len(c.pads) == 0 && c.family() != famRain && c.family() != famTemp {
		c.pads = append([]place(nil), last.pads...)
		for n := range c.pads {
			c.pads[n].role = roleNone
		}
	}
	if c.family() == famGraze && last.family() == famGraze && len(c.mobs) == 0 {
		c.mobs = last.mobs
	}
	if !c.days.ok && last.days.ok {
		c.days, c.future = last.days, last.future
	}
	c.guard |= last.guard &^ (guardNeg | guardFuture)
	if last.future && c.future {
		c.guard |= guardFuture
	}
}

// shareDay gives statements before the only day told in a sentence that day.
func shareDay(list []clause) {
	for n := len(list) - 2; n >= 0; n-- {
		c, next := &list[n], &list[n+1]
		if c.days.ok || !next.days.ok || c.family() != next.family() || c.family() == famGraze && next.future {
			continue
		}
		c.days, c.future = next.days, next.future
		c.guard |= next.guard & guardFuture
	}
}

// keepCarry keeps a heading ("walked it fri:", "12") for the lines that follow.
func keepCarry(list []clause, carry *clause) []clause {
	if carry == nil || len(list) == 0 {
		return list
	}
	last := list[len(list)-1]
	if !last.says() && (len(last.pads) == 1 || last.days.ok) && last.guard == 0 {
		if last.days.ok {
			carry.days, carry.future = last.days, last.future
		}
		carry.pads, carry.loose = last.pads, true
		carry.to, carry.from, carry.strange = last.to, last.from, last.strange
		return list[:len(list)-1]
	}
	if last.says() {
		carry.pads = nil
	}
	return list
}

// day gives the statement's day, today unless told.
func (r *reader) dayOf(c *clause) entry.Date {
	if c.days.ok {
		return c.days.day
	}
	return r.today
}
