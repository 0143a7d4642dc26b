package parser

// whenPart reads a day or an hour.
func (r *reader) whenPart(c *clause, i int) int {
	if r.tok(i).tag == forWord && r.oneOf(i+2, "st", "nd", "rd") && r.oneOf(i+3, "cut", "crop") {
		return i // "for 2nd cut"
	}
	m := r.when(i)
	if !m.ok {
		m = r.dayBefore(c, i)
	}
	if !m.ok {
		if k, ok := r.clock(i); ok {
			c.hour = true
			return k
		}
		return r.noSuchDay(c, i)
	}
	if m.day > r.today || m.vague || m.weekday && c.guard == 0 && r.oneOf(i-1, "by") {
		c.future = true
		c.guard |= guardFuture
	}
	if c.days.ok && c.days.day != m.day {
		c.unsure("Which day do you mean?")
	}
	c.days = m
	return m.next
}

// noSuchDay asks about a day that cannot be, such as 3/13 where the day comes
// first, with the day that it is the other way round.
func (r *reader) noSuchDay(c *clause, i int) int {
	a, s, b := r.tok(i), r.tok(i+1), r.tok(i+2)
	if a.shape != number || a.decimal || s.text != "/" || !s.glued || b.shape != number || b.decimal || !b.glued || len(a.text) > 2 || len(b.text) > 2 {
		return i
	}
	month, day := b.value, a.value
	if r.monthFirst {
		month, day = a.value, b.value
	}
	if month < 13 || month > 31 || day > 12 || r.tok(i-1).tag != onWord && r.tok(i+3).tag != padMark {
		return i
	}
	why := "Which day is " + r.source(i, i+3) + "? Here the day comes before the month."
	if r.monthFirst {
		why = "Which day is " + r.source(i, i+3) + "? Here the month comes before the day."
	}
	c.unsure(why)
	r.offer(why, i, i+3, b.text+"/"+a.text, "")
	return i + 3
}

// limitPart reads how long a hold lasts.
//
//	limit = ( "until" | "again" "from" | "from" ) day | [ "for" ] count ( "days" | "weeks" )
func (r *reader) limitPart(c *clause, i int) int {
	t := r.tok(i)
	j := i
	switch {
	case t.tag == untilWord:
		j++
	case t.tag == againWord && (r.tok(i+1).tag == fromWord || r.tok(i+1).tag == onWord):
		j += 2
	case t.tag == fromWord:
		j++
	case t.tag == toWord && (c.until != 0 || c.has(actsHold)):
		j++
	case t.text == "back" && (r.tok(i+1).tag == inWord || r.tok(i+1).tag == onWord):
		j += 2
		for j < i+longestRun && (r.tok(j).tag == onWord || r.tok(j).tag == fromWord || r.oneOf(j, "the") && r.oneOf(j+1, "round", "rotation") || r.oneOf(j, "round", "rotation")) {
			j++
		}
	case (t.tag == okWord || r.oneOf(i, "ok", "okay", "good", "clear", "safe", "fit")) && r.tok(i+1).tag == againWord && (r.tok(i+2).tag == fromWord || r.tok(i+2).tag == onWord):
		j += 3
	case t.text == "before" && (c.has(actHold|actsHold) || c.guard&guardNeg != 0 && c.acts == 0 && len(c.pads) == 0 && r.heldBefore(c, i)):
		j++
	case t.tag == notWord && r.tok(i+1).text == "before", t.text == "no" && r.tok(i+1).text == "grazing" && r.tok(i+2).tag == untilWord:
		j += 2
		if r.tok(j).tag == untilWord {
			j++
		}
	default:
		return r.spellPart(c, i)
	}
	if k := r.untilDry(j); t.tag == untilWord && k > j && c.has(actWet) {
		c.remarks++
		return k // "too wet until it dries out"
	}
	r.ahead = true
	m := r.day(j)
	r.ahead = false
	if !m.ok && t.tag == untilWord && r.oneOf(j, "next") && (r.oneOf(j+1, "week", "month", "year", "season", "round")) {
		c.unsure("Until which day shall I keep it out of the round?")
		c.guard &^= guardPlan
		return j + 2
	}
	if !m.ok {
		return i
	}
	m = r.daytime(m)
	if m.day <= r.today && t.tag == fromWord {
		c.days = m
		return m.next
	}
	if t.text == "back" && c.count != nil {
		return r.whenPart(c, j) // "2 2.5 2 back on 5/4"
	}
	if t.tag == fromWord && r.onlyCounts() {
		return r.whenPart(c, j) // "counts from Friday": the one past
	}
	if c.until != 0 && c.until != m.day || t.tag == fromWord && c.has(actShut|actHold) {
		c.unsure("Does the hold begin on that day, or is it over then? Please say “until” and the first day on which it may be grazed.")
	}
	c.until = m.day
	return m.next
}

// untilDry steps over "it dries out", "it's dry", "things dry up".
func (r *reader) untilDry(i int) int {
	k := r.over(i, "it", "its", "the", "ground", "paddock", "things", "that", "has", "is", "s", "weather")
	if k == i || !r.oneOf(k, "dries", "dry", "dried", "drains", "drained", "improves", "clears", "firms", "firmed") {
		return i
	}
	return r.over(k+1, "out", "up", "off", "a", "bit", "properly", "enough")
}

// onlyCounts tells whether a message holds nothing but leaf counts: no word of
// stock that move nor of a paddock that is held.
func (r *reader) onlyCounts() bool {
	for i := range r.toks {
		if t := r.tok(i); t.shape == word && (t.tag >= inWord && t.tag <= offWord && t.tag != onWord && t.tag != toWord && t.tag != fromWord ||
			t.tag >= putWord && t.tag <= grazingWord || t.tag >= untilWord && t.tag <= againWord || t.tag >= closedWord && t.tag <= cropWord) {
			return false
		}
	}
	return true
}

// spellPart reads "for 21 days", "21 days", "3 weeks".
func (r *reader) spellPart(c *clause, i int) int {
	j := i
	if r.oneOf(i-1, "after") && r.tok(i-1).shape == word {
		if k := r.spellBefore(c, i); k > i {
			return k
		}
	}
	if r.tok(j).tag == forWord {
		j++
	}
	if r.tok(j).text == "another" || r.tok(j).text == "about" {
		j++
	}
	n, k := r.whole(j)
	if k == j && r.oneOf(j-1, "another", "a") && unitDays(r.tok(j)) > 1 || r.oneOf(j, "a") && unitDays(r.tok(j+1)) > 1 {
		n, k = 1, r.over(j, "a") // "for another fortnight"
	}
	if n == 0 {
		return i
	}
	per := unitDays(r.tok(k))
	if per == 0 || n < 1 || n > 400 || r.tok(k+1).tag == agoWord {
		return i
	}
	if r.tok(k+1).tag == leftWord && r.tok(i).tag != forWord && !c.has(actsHold) && c.until == 0 {
		c.unsure("How long is that: until the stock must move, or until it may be grazed again? Please say which.") // "12 has 2 days left"
	}
	c.spell = n * per
	return r.daysByStock(c, r.restWords(k+1))
}

// spellBefore steps over "after a week of humming" behind a hold: how long
// something went on before it, and no limit to it.
func (r *reader) spellBefore(c *clause, i int) int {
	n, k := r.whole(i)
	if r.oneOf(i, "a") {
		n, k = 1, i+1
	}
	if n < 1 || unitDays(r.tok(k)) == 0 || !r.oneOf(k+1, "of") || r.tok(k+2).shape != word {
		return i
	}
	c.remarks++
	return k + 3
}

// daysByStock asks where the days differ with the stock: "10 days for cows and
// 20 for lambs".
func (r *reader) daysByStock(c *clause, i int) int {
	_, k := r.mob(r.over(i, "for", "the"))
	if r.tok(i).tag != forWord || k == i || !r.joins(k) {
		return i
	}
	_, j := r.whole(k + 1)
	if j == k+1 {
		return i
	}
	j = r.over(j, "days", "day", "d")
	_, last := r.mob(r.over(j, "for", "the"))
	if r.tok(j).tag != forWord || last <= j {
		return i
	}
	c.unsure("Those days differ with the stock. Until which day shall I keep the paddock out of the round?")
	return last
}

// restWords steps over what the days told are of: "7 day grazing restriction",
// "14 days withholding".
func (r *reader) restWords(i int) int {
	k := i
	if t := r.tok(k); t.tag == grazingWord || t.text == "stock" {
		k++
	}
	n := k
	for r.tok(k).tag == holdWord || restTails[r.tok(k).text] {
		k++
	}
	if k == n {
		return i
	}
	return k
}

var restTails = wordSet(`restriction restrictions interval period standdown wait waiting rest exclusion withdrawal ban`)

// whole reads a whole number in digits or words; next is i where there is none.
func (r *reader) whole(i int) (n, next int) {
	t := r.tok(i)
	switch {
	case t.shape == number && !t.decimal && t.value < 1e6:
		return int(t.value), i + 1
	case t.tag == numberWord:
		return int(t.sense), i + 1
	case t.text == "a" && r.tok(i+1).tag == weekUnit:
		return 1, i + 1
	}
	return 0, i
}
