package parser

// padsBehind gives a statement that opens a sentence the paddocks that stand bare behind
// it at the sentence's end, in place of those of the sentence before:
//
//	padsBehind = act [ day ] { "," paddock }
//
// "p11 grazed. spray off on the 3rd, 12" says nothing of a spray on 11.
func (r *reader) padsBehind(list []clause) []clause {
	for n := 1; n+1 < len(list); n++ {
		c := &list[n]
		if c.sentence == list[n-1].sentence || !c.says() || c.guard != 0 || c.count != nil || len(c.pads)+len(c.mobs)+len(c.nums) > 0 || c.resid != nil || c.share != 0 || c.trouble || c.event || c.strange > 0 {
			continue
		}
		k := n + 1
		for k < len(list) && list[k].sentence == c.sentence && r.onlyNames(&list[k]) {
			k++
		}
		if k == n+1 || k < len(list) && list[k].sentence == c.sentence || list[k-1].colon {
			continue
		}
		for d := n + 1; d < k; d++ {
			c.pads = append(c.pads[:len(c.pads):len(c.pads)], list[d].pads...)
		}
		c.to = list[k-1].to
		list = append(list[:n+1:n+1], list[k:]...)
	}
	return list
}

// onlyNames tells whether names of paddocks are all that a clause holds.
func (r *reader) onlyNames(c *clause) bool {
	i := c.from
	for n := range c.pads {
		for i < c.pads[n].at && (r.tok(i).shape == mark || r.tok(i).tag == andWord) {
			i++
		}
		if i != c.pads[n].at || c.pads[n].next <= i {
			return false
		}
		i = c.pads[n].next
	}
	for i < c.to && r.tok(i).shape == mark {
		i++
	}
	return len(c.pads) > 0 && i >= c.to && c.acts == 0 && c.count == nil
}
