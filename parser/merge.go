package parser

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
	case c.has(actRelease | actDry), c.has(actHoldOff) && c.has(actSpray|actFert|actEff|actSilage|actHay):
		return famRelease
	case c.has(actRain):
		return famRain
	case c.has(actTemp):
		return famTemp
	case c.has(actsHold):
		return famHold
	case c.has(actsCut) && c.acts&actsCut&^(actSilage|actHay) == 0 && len(c.mobs) > 0 && c.has(actIn|actMoved) && !c.has(actOut):
		return famGraze // "milkers in 12 with silage"
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
// neighbours ("12 grazed yesterday, 13 today"; "p11 3lf, canopy shut") or from
// the heading above it.
func (r *reader) merge(list []clause) ([]clause, heading) {
	out := r.stated[:0]
	defer func() { r.stated = out }()
	var head heading
	list = r.eachOf(introduced(eachBefore(r.padsBehind(list))))
	r.shares(list)
	r.namedAbove(list)
	for n := range list {
		c := &list[n]
		if r.headsList(list, n) {
			continue
		}
		alone := r.standsAlone(list, n)
		if c.heads() && alone && r.headsDay(c, list[n+1:]) && (len(c.pads) == 1 || n < len(list)-1 || len(out) == 0) {
			head.take(c)
			continue
		}
		own := n+1 < len(list) && list[n+1].sentence == c.sentence && list[n+1].days.ok && len(list[n+1].pads) == 0 && list[n+1].family() == c.family()
		c.under(&head, out, own)
		if len(out) > 0 && r.listBehind(list, n) {
			out = append(out, *c)
			continue
		}
		if len(out) > 0 && out[len(out)-1].chatter() && c.says() && out[len(out)-1].sentence == c.sentence && (len(c.pads) > 0 || c.family() == famRain || c.family() == famTemp) {
			c.remarks++
			c.now = c.now || out[len(out)-1].now
			out[len(out)-1] = *c
			continue
		}
		if n := len(out); n > 0 && (c.gathers(&out[n-1]) || c.carried(&out[n-1])) {
			out[n-1].remarks++
			continue
		}
		if n := len(out); n > 0 && out[n-1].says() && c.happens() {
			out[n-1].remarks++
			continue // "no stock in yards till friday, concrete going down"
		}
		if k := len(out); k > 0 && out[k-1].says() && out[k-1].sentence == c.sentence && r.fineThere(list, n, &out[k-1]) {
			out[k-1].remarks++
			continue // "2 and 3 too wet, 4 is grand"
		}
		if n := len(out); n > 0 && r.notYetIn(&out[n-1], c) {
			out[n-1].remarks++
			continue
		}
		if n := len(out); n > 0 && (out[n-1].freed(c) || out[n-1].spokenOf(c)) {
			continue
		}
		if r.leftInEach(out, c) || r.leftBehind(out, c) || r.mobOfAll(out, c) {
			continue
		}
		if n := len(out); n > 0 && c.tillers && c.count == nil && len(c.pads) == 0 && out[n-1].count != nil {
			out[n-1].count.unsure("How many tillers were yellowing or set aside? Please put it beside the scores.")
		}
		if len(out) > 0 && r.doneCounting(&out[len(out)-1], c) {
			out[len(out)-1].dayOfCount(c)
			continue
		}
		if n := len(out); n > 0 && c.onlyTillers() && out[n-1].count != nil && out[n-1].count.n == 0 {
			out[n-1].count.n = c.count.n
			continue // "West 80 about 2.25. Ten tillers."
		}
		if n := len(out); n > 0 && r.overNotShut(&out[n-1], c) {
			continue
		}
		if r.besideThePoint(c) {
			continue
		}
		if n := len(out); n > 0 && r.opensAfterAll(&out[n-1], c) {
			out[n-1] = *c
			continue
		}
		if len(out) > 0 && r.talksOn(&out[len(out)-1], c) {
			out[len(out)-1].remarks++
			continue
		}
		if len(out) > 0 && out[len(out)-1].absorbs(c) {
			out[len(out)-1].absorb(c)
			continue
		}
		if len(out) > 0 {
			last := &out[len(out)-1]
			if c.herdless(last) && (c.strange+c.remarks > 0 || last.count == nil || c.acts == actOut|actDone && c.to-c.from > 1) {
				continue // "p12 2 2.5 2. Came in for lunch"
			}
			if c.herdless(last) {
				c.unsure("Is that about stock? Please say which went in or out, such as: milkers into 12")
			}
			if c.family() == famRain && last.family() == famRain && c.sentence == last.sentence && !c.more && !(c.days.ok && (last.days.ok || r.fallenBy(last, c))) && !c.series {
				c.unsure("Is that one day's rain? Please send the rain of each day, such as: rain 12mm yesterday")
			}
			if last.count != nil && r.extremes(c) {
				c.unsure(leastOfScores)
			}
			r.bothIn(out, c)
			r.leftHowMuch(last, c)
			if c.sentence == last.sentence && len(last.pads) > 0 && len(c.pads) == 1 && !c.pads[0].marked && c.count == nil {
				c.pads[0] = r.sameStem(last.pads, c.pads[0], c.pads[0].at) // "river 1 done yesterday, 2 today"
			}
			r.inherit(c, last)
		}
		out = append(out, *c)
	}
	for n := 1; n < len(out); n++ {
		c, d := &out[n-1], &out[n]
		c.left = c.family() == famGraze && d.family() == famGraze && d.has(actOut) && !d.has(actIn) && len(c.pads) > 0 && len(d.pads) > 0 && c.pads[0].name == d.pads[0].name
	}
	r.shareDay(out)
	shareTillers(out)
	return out, head
}

// chatter tells whether a clause is nothing but talk: "forgot to tell you".
func (c *clause) chatter() bool {
	return !c.says() && c.strange > 0 && c.guard == 0 && len(c.pads) == 0 && len(c.mobs) == 0 && len(c.nums) == 0 && !c.days.ok && c.head == 0 && c.share == 0 && c.until == 0
}

// happens tells whether a clause says no more than that something nobody knows
// is going on.
func (c *clause) happens() bool {
	return c.has(actGoing) && c.acts&^(actGoing|actMoved) == 0 && c.strange > 0 && c.guard == 0 && !c.stock && len(c.pads)+len(c.mobs)+len(c.nums) == 0 && !c.days.ok && c.head == 0
}

// only tells whether stock went one way at every paddock of a clause.
func (c *clause) only(way role) bool {
	for _, p := range c.pads {
		if p.role != way {
			return false
		}
	}
	return len(c.pads) > 0
}

// continues tells whether the next sentence goes on with the statement: "12
// grazed. Left 1500." or "Yesterday."
func (c *clause) continues(d *clause) bool {
	if c.awaits() && d.count != nil && len(d.count.said) > 0 && len(d.pads) == 0 && len(d.mobs) == 0 && d.guard == 0 {
		return true // "12, 8 tillers." and the scores below
	}
	if c.has(actDamp) && !c.says() && len(c.pads) > 0 && d.acts == actHold && len(d.pads)+len(d.mobs) == 0 && d.guard|c.guard == 0 {
		return true // "19 and 20 wet as. keep off"
	}
	if !c.says() || len(d.pads) > 0 || len(d.mobs) > 0 || d.guard != c.guard || d.strange > 0 {
		return false
	}
	if !d.says() {
		return d.until != 0 || d.spell != 0 || d.share != 0 || d.days.ok && !c.days.ok
	}
	if d.acts&^(actOut|actMoved) == 0 && d.acts != 0 && c.family() == famGraze && c.has(actGrazed) && !d.days.ok {
		return true // "12 grazed. Came out clean"
	}
	only := d.acts&^actPlace == 0 && d.resid != nil
	return only && c.family() == famGraze || d.family() == c.family() && c.family() == famHold && (d.until != 0 || d.spell != 0 || d.acts == actHold)
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
	if c.says() && !d.says() && len(d.pads) == 0 && len(d.mobs) == 0 && len(d.nums) == 0 && !d.days.ok && !(c.family() == famHold && d.endless) {
		c.remarks += d.strange
		return
	}
	c.strange += d.strange
}
