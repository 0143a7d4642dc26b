package parser

// eachOf gives one score that is told of each to the paddocks named before it:
// "had a squiz at 15 and 16 on the way past, about 2 leaves in each".
func (r *reader) eachOf(list []clause) []clause {
	for n := range list {
		if c := &list[n]; len(c.pads) > 1 && c.count != nil && len(c.count.said) == 1 && c.count.doubt == "" && c.acts == 0 && len(c.mobs) == 0 && len(c.nums) == 0 && !c.shared && r.saysEach(c) {
			c.shared, c.strange, c.strays = true, 0, nil
		}
	}
	var given []bool // clauses that gave their paddocks to the one behind
	for n := 1; n < len(list); n++ {
		if c, last := &list[n], &list[n-1]; r.eachBehind(c, last) {
			c.takeEach(last)
			if given == nil {
				given = make([]bool, len(list))
			}
			given[n-1] = true
		}
	}
	if given == nil {
		return list
	}
	var kept []clause
	for n := range list {
		if !given[n] {
			kept = append(kept, list[n])
		}
	}
	return kept
}

// eachBehind tells whether a clause tells one score of each paddock that the
// clause before it names, and says no more of them.
func (r *reader) eachBehind(c, last *clause) bool {
	if c.count == nil || len(c.count.said) != 1 || c.count.doubt != "" || c.guard != 0 || len(c.mobs) > 0 || c.acts != 0 || c.shared || len(c.nums) > 0 || !r.saysEach(c) {
		return false
	}
	if len(c.pads) > 0 && c.pads[0].at > c.from+1 || last.says() || last.guard != 0 || len(last.mobs) > 0 || len(last.nums) > 0 || last.count != nil || last.trouble || last.event || c.sentence-last.sentence > 1 ||
		len(c.pads) > 0 && (c.sentence != last.sentence || !r.joins(last.to-1)) || len(last.pads)+len(c.pads) < 2 || len(last.pads) == 0 || last.days.ok && c.days.ok {
		return false
	}
	for _, list := range [][]place{last.pads, c.pads} {
		for _, p := range list {
			if !p.known || p.either != "" {
				return false
			}
		}
	}
	return true
}

// takeEach takes the paddocks and the day of the clause before.
func (c *clause) takeEach(last *clause) {
	c.pads = append(last.pads[:len(last.pads):len(last.pads)], c.pads...)
	for k := range c.pads {
		c.pads[k].role = roleNone
	}
	c.shared, c.from = true, last.from
	if last.days.ok {
		c.days, c.future = last.days, last.future
	}
	c.strange, c.strays = 0, nil
}

// saysEach tells whether a clause speaks of each of several.
func (r *reader) saysEach(c *clause) bool {
	for i := c.from; i < c.to; i++ {
		if t := r.tok(i); t.shape == word && (t.tag == eachWord || r.oneOf(i, "both")) {
			return true
		}
	}
	return false
}
