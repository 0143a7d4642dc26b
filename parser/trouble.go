package parser

// Fences, power, water and trees in a paddock are worth a note.

// troubleBetween tells whether trouble is told at the boundary of two paddocks:
// "fence down between 6 and 7".
func (r *reader) troubleBetween(c *clause) bool {
	return c.trouble && len(c.pads) == 2 && c.pads[0].known && c.pads[1].known && r.beside(c.pads[0].at-1)
}

// troubleDenied tells whether trouble in a paddock is told with a denial, or as
// what needs doing: "no water in 12", "gate in 12 needs fixing", "wants fixing".
func (r *reader) troubleDenied(c *clause) bool {
	if c.guard != guardNeg && (c.guard&^guardNeg != guardPlan || !r.hasText(c.from, c.to, "needs") && !r.hasText(c.from, c.to, "wants")) || !c.trouble || len(c.mobs) > 0 {
		return false
	}
	return len(c.pads) == 1 && c.pads[0].known && r.names(c) || r.troubleBetween(c)
}

// names tells whether a clause plainly names its paddock, rather than holding a
// number: "trough leaking in 12", not "picked up 3 reels".
func (r *reader) names(c *clause) bool {
	p := c.pads[0]
	return p.role != roleNone || p.marked || p.at == c.from || r.tok(p.at).shape == word || r.beside(p.at-1)
}

// beside tells whether a word of place stands before a paddock: "along 10", "on
// the west side of 6".
func (r *reader) beside(i int) bool {
	if r.oneOf(i, "the") {
		i--
	}
	t := r.tok(i)
	return t.tag == atWord || besideWords[t.text] || t.tag == ofWord && (r.tok(i-1).tag == remark || sideWords[r.tok(i-1).text])
}

var (
	besideWords = wordSet(`along by beside near behind between around round across past under outside through opposite above below alongside bordering against over up down towards onto adjoining`)
	sideWords   = wordSet(`side end corner edge top bottom front back boundary half middle entrance mouth`)
)
