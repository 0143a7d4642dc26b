package parser

// turnedOut tells whether the "out" at i is where stock were turned to, not
// where they came from: "turned the pairs out on north", "put them out in 6".
func (r *reader) turnedOut(c *clause, i int) bool {
	n := r.tok(i + 1)
	if n.tag == ofWord {
		return false
	}
	for k := i - 2; k >= c.from && k > i-6; k-- {
		t := r.tok(k)
		if t.shape != word || t.tag != putWord && t.text != "let" {
			continue
		}
		j := k + 1
		if _, next := r.whole(j); next > j {
			j = r.over(next, "of")
		}
		return r.stockAt(j) == i && (t.text == "turned" || n.tag == onWord || n.tag == inWord || n.tag == intoWord || n.tag == toWord)
	}
	return false
}

// letPart reads "let" where stock were let in or out: "let the cows into road 1
// after milking". Anything else may be let, and is no business of ours.
//
//	let = "let" [ "the" | "our" ] ( herd | "them" ) direction | herd [ "were" ] "let" [ "out" | "back" ] direction
func (r *reader) letPart(c *clause, i int) int {
	if !r.oneOf(i, "let") || r.tok(i).shape != word {
		return i
	}
	if b := r.tok(r.back(i-1, "were", "was", "got", "been")); len(c.mobs) > 0 || b.tag == looseMob {
		if k := r.over(i+1, "out", "back"); r.tok(k).shape == word && directions[r.tok(k).tag] && r.tok(k).tag != ofWord && c.guard == 0 {
			c.stock = true
			return k // "cows let out to hill this morning"
		}
	}
	k := r.stockAt(i + 1)
	if t := r.tok(k); k > i+1 && t.shape == word && (directions[t.tag] && t.tag != ofWord || r.oneOf(k, "back", "through")) {
		c.let = true
		return i + 1
	}
	return i
}

// lateOrLet settles what the hour decides: what is told before noon of the
// afternoon has not happened yet, and "let the heifers into 12" without a day
// or an hour may be an order.
func (r *reader) lateOrLet(c *clause) {
	if c.late && r.hour < 12 && (!c.days.ok || c.days.day == r.today) {
		c.future = true
		c.guard |= guardFuture
	}
	if c.let && !c.days.ok && !c.hour {
		if c.strange == 0 {
			c.strangeW = "let"
		}
		c.strange++
	}
}

// stockAt steps over stock of any name; it gives i where there is none.
func (r *reader) stockAt(i int) int {
	j := r.over(i, "the", "our", "my", "all", "those", "any")
	if _, k := r.mob(j); k > j {
		return k
	}
	if r.oneOf(j, "them", "em", "stock", "animals", "everything", "everyone", "anything") {
		return j + 1
	}
	return i
}

// keepPart reads where stock are kept: out of a paddock, which is held, or a
// paddock held for hay, silage or a day. A mob of a name kept out of one may go
// to the others' turn: that is asked.
//
//	keep = "keep" stock ( "out" | "off" ) [ "of" ] | ( "holding" | "keeping" | "saving" ) paddocks
func (r *reader) keepPart(c *clause, i int) int {
	switch t := r.tok(i); {
	case t.shape != word:
	case t.text == "keep":
		k := r.stockAt(i + 1)
		if name, _ := r.mob(r.over(i+1, "the", "our", "my", "all", "any")); k == i+1 || name != "" || !r.oneOf(k, "out", "off", "outa", "away") {
			return i
		}
		c.acts |= actHold
		k = r.over(k+1, "of", "from")
		r.heldAt(k)
		return k
	case i == r.opening && r.oneOf(i, "stockpiling", "stockpiled", "deferring", "deferred") && r.padAhead(r.over(i+1, "back", "over")):
		c.acts |= actHold
		r.heldAt(r.over(i+1, "back", "over"))
		return i + 1
	case i == r.opening && r.oneOf(i, "resting", "spelling", "holding", "keeping", "saving", "reserving") && r.padAhead(r.over(i+1, "back", "over")):
		if r.savedFor(i) {
			c.acts |= actHold
			r.heldAt(r.over(i+1, "back", "over"))
			return i + 1
		}
	}
	return i
}

// heldAt lets the paddock that is held have a name of no register.
func (r *reader) heldAt(i int) {
	if r.padAhead(i) {
		r.way = roleAt
	}
}

// savedFor tells whether what is held is held for hay, silage or until a day.
func (r *reader) savedFor(i int) bool {
	for k := i + 1; k < i+16; k++ {
		t := r.tok(k)
		if t.shape == newline || t.shape == end {
			return false
		}
		if t.tag == untilWord || t.tag == hayWord || t.tag == silageWord {
			return true
		}
	}
	return false
}
