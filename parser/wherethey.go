package parser

// thereAlready tells whether a clause only speaks of stock where they are: "the
// heifers in 12 look hungry", "checked the heifers in 12". When they went in is
// another matter.
//
//	there = looked-verb [ "on" | "at" ] mob "in" place | mob "in" place state-verb
func (r *reader) thereAlready(c *clause) bool {
	if c.acts != actIn || len(c.mobs) != 1 || len(c.pads) != 1 || c.pads[0].role != roleAt || c.days.ok && c.days.day != r.today || c.hour || c.now {
		return false
	}
	for i := c.from; i < c.pads[0].at; i++ {
		if t := r.tok(i); t.shape == word && lookedVerbs[t.text] {
			return true
		}
		if _, k := r.mob(i); k > i {
			break
		}
	}
	n := r.tok(c.pads[0].next)
	return n.shape == word && stateVerbs[n.text]
}

var (
	lookedVerbs = wordSet(`checked checking check saw seen see counted counting inspected visited watched fed feeding drenched drenching dosed weighed weighing drafted
		treated vaccinated tagged dagged dipped shore crutched scanned milked jabbed sprayed washed shouted for with`)
	stateVerbs = wordSet(`look looks looked looking seem seems need needs want wants bawling bawl roaring roar hungry starving restless unsettled walking
		pacing complaining waiting`)
)

// soManyOf tells whether a number is one of "7 out of 10", which is of no paddock.
func (r *reader) soManyOf(i int) bool {
	first := i
	if r.oneOf(i-1, "of") && r.oneOf(i-2, "out") {
		first = i - 3
	}
	a, b := r.tok(first), r.tok(first+3)
	return first == r.opening && a.shape == number && b.shape == number && r.oneOf(first+1, "out") && r.oneOf(first+2, "of") && a.value <= b.value
}

// fenceFor tells whether a thing was moved for stock, not the stock: "shifted the
// fence for the heifers in 12".
func (r *reader) fenceFor(c *clause) bool {
	if len(c.mobs) > 1 || len(c.pads) == 0 || !c.has(actMoved|actOrder|actGoing) {
		return false
	}
	for i := c.from; i < c.pads[0].at; i++ {
		if t := r.tok(i); t.shape == word && (t.tag == troubleWord || vehicleWords[t.text] || goods[t.text]) {
			return r.hasText(i+1, c.to, "for")
		}
	}
	return false
}

// joinedThem steps over those that others were put in with: they stand where they
// stood. "put the dry mob in with the milkers in 10".
//
//	joined = ( "in" | "back" | "up" | … ) "with" ( "the" | "our" | … ) mob place
func (r *reader) joinedThem(c *clause, i int) int {
	if len(c.pads) > 0 || !r.oneOf(i-1, "in", "back", "up", "together", "are", "is", "out") || len(c.mobs) == 0 && !r.herdBetween(max(c.from, i-60), i) {
		return i
	}
	j := r.over(i+1, "the", "our", "other", "rest", "of")
	_, k := r.mob(j)
	if j == i+1 || k == j || !r.oneOf(k, "in", "on", "at", "down", "up", "over") {
		return i
	}
	c.remarks++
	return k
}
