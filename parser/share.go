package parser

// shareValue reads a part told in words: "three quarters of", "3 quarters
// grazed", "one third of". It is a part of a paddock only where "of" and no
// herd, hour or inch, or a grazing, stands behind it.
//
//	shareValue = count ( "quarters" | "thirds" | "half" )
func (r *reader) shareValue(c *clause, i int) int {
	n, k := r.whole(i)
	if k == i || n < 1 || n > 3 {
		return i
	}
	var of float64
	switch {
	case r.oneOf(k, "quarter", "quarters"):
		of = 4
	case r.oneOf(k, "third", "thirds"):
		of = 3
	case r.oneOf(k, "half") && n == 1:
		of = 2
	}
	if of == 0 || float64(n) >= of {
		return i
	}
	k++
	if r.tok(k).tag == grazedWord {
		c.share = float64(n) / of
		return k
	}
	if r.tok(k).tag != ofWord {
		return i
	}
	if j := r.over(k+1, "the", "my", "our"); r.tok(j).tag == mobWord || r.tok(j).tag == looseMob {
		c.unsure("Only a part of the mob? Please say which animals went where.")
		return k + 1
	}
	if !r.padAhead(k+1) && r.tok(k+1).tag != padMark {
		return i
	}
	c.share = float64(n) / of
	return r.ofThe(k)
}

// otherHalf gives "second half on fri" behind a grazing of the first half what
// that one told: the paddock, the mob and what happened.
func (c *clause) otherHalf(last *clause) {
	if c.says() || c.share == 0 || last.share == 0 || !c.days.ok || len(c.pads) > 0 || len(c.mobs) > 0 || last.family() != famGraze || last.guard != 0 || c.sentence != last.sentence || last.resid != nil {
		return
	}
	c.acts, c.mobs = last.acts, last.mobs
	c.pads = append([]place(nil), last.pads...)
}

// stillThere tells whether a clause tells since when stock are in its paddock,
// without naming them: "they've been in 12 since Saturday".
func (r *reader) stillThere(c *clause) bool {
	return len(c.pads) == 1 && c.pads[0].role == roleAt && c.days.ok && !c.future && c.guard == 0 && c.strange == 0 && !c.trouble && c.share == 0 &&
		len(c.nums) == 0 && r.oneOf(c.from, "theyve", "theyre", "they", "still") && r.tok(c.from).shape == word && r.hasTag(c.from, c.to, sinceWord)
}
