package parser

// freeFrom reads when a paddock that is held may be grazed again, in other words
// than "until": "ok to graze again from the 28th", "clear for cows 8 Dec", "can
// go back in on the 9th", "grazing from the 5th".
//
//	freeFrom = ( "ok" | "clear" | "can" | "grazing" | … ) { "to" | "graze" | "again" | "for" | stock | … } [ "from" | "on" ] day
func (r *reader) freeFrom(c *clause, i int) int {
	t := r.tok(i)
	if t.shape != word || !freeOpeners[t.text] || c.count != nil || c.guard&^guardNeg != 0 || mobsOf(c)[0] != "" || c.until != 0 {
		return i
	}
	k, says := i+1, !r.oneOf(i, "can", "grazing", "back", "good", "right", "open", "free")
	for ; k < i+12; k++ {
		u := r.tok(k)
		_, j := r.mob(k)
		switch {
		case u.shape != word:
		case j > k && r.tok(k-1).tag == forWord || r.oneOf(k, "the", "be", "on", "after"):
			continue
		case freeWords[u.text]:
			says = says || u.tag == grazeWord || u.tag == grazedWord || u.tag == grazingWord || r.oneOf(k, "again", "back", "cows", "stock", "go")
			continue
		case u.tag == fromWord:
			says = true
			continue
		}
		break
	}
	if k == i+1 && !r.oneOf(i, "ok", "okay", "clear", "safe", "grazable") || !says {
		return i
	}
	r.ahead = true
	m := r.day(k)
	r.ahead = false
	if !m.ok || m.day <= r.today || m.vague {
		return i
	}
	if !r.heldBefore(c, i) {
		return i
	}
	c.until, c.acts = m.day, c.acts|actRelease
	return r.daytime(m).next
}

// heldBefore tells whether the message has spoken of a spread, a spray or
// another hold before a token.
func (r *reader) heldBefore(c *clause, to int) bool {
	if c.has(actsHold) {
		return true
	}
	for ; r.heldSeen < to && !r.heldSaid; r.heldSeen++ {
		t := r.tok(r.heldSeen)
		d, _, ok := r.idiomAt(r.heldSeen)
		r.heldSaid = ok && d.acts&actsHold != 0 || t.shape == word && (t.tag >= sprayWord && t.tag <= wetWord || t.tag == holdWord || t.tag == shutWord || t.tag == cropWord)
	}
	return r.heldSaid && r.heldSeen <= to
}

var (
	freeOpeners = wordSet(`ok okay clear safe fit right good can could may grazing graze grazable grazeable available open free back stock cows`)
	freeWords   = wordSet(`to graze grazed grazing be go going come again for the cows stock them they in into back use feed round rotation at bite turn put we cattle sheep`)
)

// freed lays such a day on the hold told in the sentence before.
func (c *clause) freed(d *clause) bool {
	if c.family() != famHold || c.until != 0 || c.guard != 0 || d.guard != 0 || d.acts&^(actRelease|actIn|actMoved) != 0 || !d.has(actRelease) || d.until == 0 ||
		len(d.nums) > 0 || d.count != nil || d.resid != nil || mobsOf(d)[0] != "" || len(d.pads) > 0 || d.sentence > c.sentence+1 {
		return false
	}
	c.until = d.until
	c.remarks += d.remarks + d.strange
	return true
}
