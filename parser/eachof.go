package parser

// eachOf gives one score that is told of each to the paddocks named before it:
// "had a squiz at 15 and 16 on the way past, about 2 leaves in each".
func (r *reader) eachOf(list []clause) []clause {
	for n := range list {
		if c := &list[n]; len(c.pads) > 1 && c.count != nil && len(c.count.said) == 1 && c.count.doubt == "" && c.acts == 0 && len(c.mobs) == 0 && len(c.nums) == 0 && !c.shared && r.saysEach(c) {
			c.shared, c.strange, c.strays = true, 0, nil
		}
	}
	for n := 1; n < len(list); n++ {
		c, last := &list[n], &list[n-1]
		if c.count == nil || len(c.count.said) != 1 || c.count.doubt != "" || c.guard != 0 || len(c.mobs) > 0 || c.acts != 0 || c.shared || len(c.nums) > 0 || !r.saysEach(c) {
			continue
		}
		if len(c.pads) > 0 && c.pads[0].at > c.from+1 || last.says() || last.guard != 0 || len(last.mobs) > 0 || len(last.nums) > 0 || last.count != nil || last.trouble || last.event || c.sentence-last.sentence > 1 ||
			len(c.pads) > 0 && (c.sentence != last.sentence || !r.joins(last.to-1)) || len(last.pads)+len(c.pads) < 2 || len(last.pads) == 0 || last.days.ok && c.days.ok {
			continue
		}
		known := true
		for _, p := range append(last.pads[:len(last.pads):len(last.pads)], c.pads...) {
			known = known && p.known && p.either == ""
		}
		if !known {
			continue
		}
		c.pads = append(last.pads[:len(last.pads):len(last.pads)], c.pads...)
		for k := range c.pads {
			c.pads[k].role = roleNone
		}
		c.shared, c.from = true, last.from
		if last.days.ok {
			c.days, c.future = last.days, last.future
		}
		c.strange, c.strays = 0, nil
		return r.eachOf(append(list[:n-1:n-1], list[n:]...))
	}
	return list
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
