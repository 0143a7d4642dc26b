package parser

// A paddock may be named in a sentence of its own before its scores: "counted
// 21 on 19/11, forgot to send it. 2 2 2.5", "15 lots of seed about. 2.5 3 2.5".

// introduces tells whether a clause does no more than say whose scores follow:
// it names one paddock, first of all or behind a word for counting, and states
// nothing.
func (r *reader) introduces(c *clause) bool {
	if len(c.pads) != 1 || !c.pads[0].known || c.pads[0].either != "" || c.says() || c.guard != 0 || c.trouble || c.event ||
		len(c.mobs) > 0 || len(c.nums) > 0 || c.head > 0 || c.share != 0 || c.until != 0 || c.spell != 0 || c.lost != "" || c.doubt != "" {
		return false
	}
	p := c.pads[0]
	bare := r.byNumber(p)
	if bare > 0 && bare <= 4 {
		return false // it may be a score, or how many
	}
	i := p.at - 1
	for i >= c.from && (r.tok(i).tag == remark && !introducers[r.tok(i).text] || r.tok(i).tag == inWord || r.tok(i).tag == onWord || r.tok(i).tag == ofWord || r.tok(i).tag == forWord || r.tok(i).tag == fromWord || r.tok(i).tag == toWord || r.oneOf(i, "the", "over", "across", "up", "down", "thru", "it", "back") || r.tok(i).tag == outWord && r.oneOf(i+1, "to") || (r.oneOf(i, "round", "around") && r.oneOf(i+1, "to")) || r.tok(i).shape == mark) {
		i--
	}
	if i >= c.from && introducers[r.tok(i).text] {
		return !r.please // "count 12 please"
	}
	for i >= c.from && (r.tok(i).tag == filler || r.tok(i).tag == courtesy) {
		i--
	}
	if i >= c.from {
		return false
	}
	t := r.tok(p.next)
	return bare == 0 || t.tag == filler || t.tag == remark || t.tag == negWord || t.tag == notWord || t.shape != word || r.day(p.next).ok
}

// byNumber gives the number that a paddock is told by where it is told by
// nothing else, and 0 where there is more: "p12", "Top 1", "9A".
func (r *reader) byNumber(p place) int {
	if t := r.tok(p.at); !p.marked && p.next == p.at+1 && t.shape == number {
		return int(t.value)
	}
	return 0
}

// didCount tells whether "did" tells of a count rather than asks: nothing but a
// paddock, or "it", and a day stand behind it up to the sentence's end or an
// "and".
func (r *reader) didCount(i int) bool {
	if n, k := r.whole(i); k > i && n > 4 && r.tok(k).tag == tillerUnit {
		return true // "did 8 tillers in 12"
	}
	if n, k := r.whole(i); k > i && n > 1 && (r.tok(k).tag == inWord || r.tok(k).tag == fromWord) && r.padAhead(k+1) && r.listOf(k, n) {
		return true // "did 4 in hill: 2 2.25 2 1.75"
	}
	if p, ok := r.onePad(i, false); ok {
		i = p.next
	} else if r.oneOf(i, "it", "them", "that", "those", "these") && r.when(i+1).ok {
		i++
	} else {
		return false
	}
	for m := r.when(i); m.ok; m = r.when(i) {
		i = m.next
	}
	t := r.tok(i)
	return t.shape == end || t.text == "." && t.shape == mark || t.shape == newline || t.text == "," && !r.padAhead(i+1) || t.tag == andWord && r.oneOf(i+1, "forgot", "forgotten", "it", "got", "sent", "didnt", "came", "then", "was", "counted", "scored")
}

// introducers stand before the paddock whose scores are to follow.
var introducers = wordSet(`count counts counted counting walk walked walking score scores scored tillers leaf measured checked sampled did round
	around through here heres sending send sent doing finally results took got made headed nipped popped had managed reckon make`)

// introduced makes one heading of each sentence that does no more than say
// whose scores follow in the next, so that they are filed there.
func introduced(list []clause) []clause {
	out := list[:0]
	for n := 0; n < len(list); {
		k := n + 1
		for k < len(list) && list[k].sentence == list[n].sentence && !list[k-1].colon {
			k++
		}
		if c, ok := introduction(list[n:k]); ok && k < len(list) && c.fits(&list[k]) {
			out = append(out, c)
		} else {
			out = append(out, list[n:k]...)
		}
		n = k
	}
	return out
}

// awaited tells whether an earlier clause of the sentence says whose scores
// follow, and none has followed yet.
func awaited(list []clause, sentence int) bool {
	colon := len(list) > 0 && list[len(list)-1].colon
	for n := len(list) - 1; n >= 0 && list[n].sentence == sentence; n-- {
		if c := &list[n]; c.intro {
			return c.remarks == 0 || c.days.ok || colon
		}
		if len(list[n].pads) > 0 || list[n].says() {
			return false
		}
	}
	return false
}

// introducedBefore tells whether the sentence before one does no more than say
// whose scores follow.
func introducedBefore(list []clause, sentence int) bool {
	n := len(list)
	if n == 0 || list[n-1].sentence >= sentence {
		return false
	}
	from := n - 1
	for from > 0 && list[from-1].sentence == list[n-1].sentence {
		from--
	}
	_, ok := introduction(list[from:])
	return ok
}

// introduction gives the clause that a sentence comes to where one paddock, a
// day and talk are all that it holds.
func introduction(sentence []clause) (clause, bool) {
	at := -1
	for n := range sentence {
		switch c := &sentence[n]; {
		case c.intro && at < 0:
			at = n
		case c.guard == guardNeg && c.wordy() && !c.stock:
		case len(c.pads) > 0 || len(c.mobs) > 0 || len(c.nums) > 0 || c.says() || c.guard != 0 || c.trouble || c.event:
			return clause{}, false
		}
	}
	if at < 0 {
		return clause{}, false
	}
	c := sentence[at]
	for n := range sentence {
		if d := &sentence[n]; d.days.ok && n != at {
			if c.days.ok && c.days.day != d.days.day {
				return clause{}, false
			}
			c.days, c.future = d.days, d.future
		}
	}
	c.strange, c.remarks, c.bare, c.to = 0, 0, true, sentence[len(sentence)-1].to
	c.pads[0].role = roleNone
	return c, true
}

// fits tells whether what follows an introduction are the scores that it
// announces: "counted 8. 2 2.5 …" with eight of them names no paddock.
func (c *clause) fits(d *clause) bool {
	if d.count == nil || len(d.pads) > 0 || len(d.mobs) > 0 || len(d.count.said) == 0 || len(d.count.said) == 1 && !d.count.decimal {
		return false
	}
	return c.number == 0 || c.number != len(d.count.said)+d.count.skipped.Total()
}

// awaits tells whether a clause announces how many scores are to come.
func (c *clause) awaits() bool {
	return c.count != nil && len(c.count.said) == 0 && !c.count.garbled && c.count.n > 0
}

// toldBelow tells whether a clause does no more than name paddocks that were
// counted, each of which has its scores elsewhere in the message: "I finish
// counting in 12 and 18. 12 have 2 2.5, 18 have 1.5 2".
func (r *reader) toldBelow(list []clause, n int) bool {
	c := &list[n]
	if c.says() || len(c.pads) == 0 || len(c.mobs) > 0 || c.head > 0 || len(c.nums) > 0 || c.guard != 0 || c.trouble || c.event || c.stock || c.lost != "" || c.days.ok || c.until != 0 || c.spell != 0 || c.share != 0 {
		return false
	}
	counted := false
	for i := c.from; i < c.to; i++ {
		counted = counted || introducers[r.tok(i).text]
	}
	for _, p := range c.pads {
		found := false
		for k := range list {
			d := &list[k]
			found = found || d.count != nil && d.guard == 0 && len(d.count.said) > 0 && len(d.pads) == 1 && d.pads[0].name == p.name
		}
		if !p.known || !found {
			return false
		}
	}
	return counted
}
