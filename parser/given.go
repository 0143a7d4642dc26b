package parser

// given reads stock that were given a paddock: "gave the heifers 12", "gave 12
// to the milkers", "they got 13 this morning". They went in.
//
//	given = "gave" stock place | "gave" place "to" stock | stock "got" place day
func (r *reader) given(c *clause, i int) int {
	if len(c.pads) > 0 || c.acts != 0 || c.count != nil || c.guard&^guardFuture != 0 {
		return i
	}
	switch {
	case r.oneOf(i, "gave", "given"):
		if k := r.stockOrThem(i + 1); k > i+1 {
			if r.placeAlone(k) && (r.stockAt(i+1) > i+1 || r.turnTold(c, k)) {
				r.takeMob(c, i+1)
				return r.wentTo(c, k)
			}
			return i
		}
		p, ok := r.onePad(r.over(i+1, "the"), true)
		if ok && p.known && r.tok(p.next).tag == toWord && r.stockOrThem(p.next+1) > p.next+1 {
			return r.wentTo(c, i+1)
		}
	case r.oneOf(i, "got"):
		if r.stockNamed(c, i) && r.placeAlone(i+1) && r.turnTold(c, i+1) {
			return r.wentTo(c, i+1)
		}
	}
	return i
}

// wentTo says that stock went to the place that follows.
func (r *reader) wentTo(c *clause, i int) int {
	c.acts |= actIn
	r.way = roleIn
	return i
}

// stockOrThem steps over stock, by their name or as "them".
func (r *reader) stockOrThem(i int) int {
	if k := r.stockAt(i); k > i {
		return k
	}
	return r.over(i, "the", "them", "em", "girls", "ladies", "boys")
}

// takeMob keeps the mob that is named among some stock.
func (r *reader) takeMob(c *clause, i int) {
	if name, k := r.mob(r.over(i, "the", "our", "my", "all")); k > i && name != "" {
		c.mobs, r.herded = append(c.mobs, name), true
	}
}

// placeAlone tells whether a known paddock stands at a token, and no amount of
// something else.
func (r *reader) placeAlone(i int) bool {
	p, ok := r.onePad(r.over(i, "the"), true)
	if !ok || !p.known || r.unitAhead(p.next) {
		return false
	}
	n := r.tok(p.next)
	return n.tag != eachWord && (n.shape != word || n.tag != unknown || r.when(p.next).ok)
}
