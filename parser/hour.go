package parser

// halfHour reads an hour told by its half or quarter, or by minutes: "half 5",
// "half past five", "quarter to 6", "20 past 4". "Half 5" alone may be a half
// of paddock 5: a word of time must stand before it.
//
//	halfHour = ( "half" | "quarter" | minutes ) [ "past" | "to" | "after" ] hour [ "am" | "pm" ]
func (r *reader) halfHour(i int, at bool) int {
	t := r.tok(i)
	k := i
	if t.text == "a" {
		k++
	}
	minutes, _ := r.whole(k)
	switch {
	case r.tok(k).shape == word && r.oneOf(k, "half", "quarter"):
	case (minutes == 5 || minutes == 10 || minutes == 20 || minutes == 25) && r.oneOf(k+1, "past", "to") && (at || r.oneOf(i-1, "by", "about", "around")):
	default:
		return i
	}
	half := r.oneOf(k, "half")
	k++
	past := r.oneOf(k, "past", "after") || r.oneOf(k, "to", "til", "till") && !half
	if past {
		k++
	}
	b := r.tok(i - 1)
	if n := r.tok(k + 1); !past && half && r.oneOf(k+1, "milking", "start") && n.shape == word {
		return k + 1
	}
	if n, next := r.whole(k); !past && half && next > k && n >= 1 && n <= 12 && i > 0 && b.tag != ofWord && b.tag != intoWord && b.tag != inWord && b.text != "the" {
		u := r.tok(next)
		if u.tag == daytimeWord || u.tag == thisWord && r.tok(next+1).tag == daytimeWord || u.tag == yesterdayWord || r.tok(k).tag == numberWord && (u.shape == end || u.shape == mark || u.tag == leftWord || u.tag == andWord || u.tag == todayWord) {
			return next
		}
	}
	if !past && (!half || !at && !(b.shape == word && r.oneOf(i-1, "by", "about", "around", "bout", "since", "before", "after", "til", "till", "until", "roughly"))) {
		return i
	}
	n, next := r.whole(k)
	if next == k || n < 1 || n > 12 || r.unitAhead(next) {
		return i
	}
	if r.oneOf(next, "ish", "oclock") {
		next++
	}
	if u := r.tok(next); u.text == "am" || u.text == "pm" {
		next++
	}
	return next
}

// aboutHour steps over "about 4", "around 3ish" right behind where stock went in
// or came out: it is when that was.
//
//	aboutHour = ( "about" | "around" | … ) hour [ "ish" | "oclock" ] [ "am" | "pm" ]
func (r *reader) aboutHour(c *clause, i int) int {
	n := len(c.pads)
	if n == 0 || c.pads[n-1].role != roleIn && c.pads[n-1].role != roleOut && c.pads[n-1].role != roleAt || len(c.mobs) == 0 && !c.stock || c.acts&^(actIn|actOut|actMoved) != 0 || c.acts == 0 || c.count != nil || c.hour {
		return i
	}
	if c.pads[n-1].next != i && !(c.days.ok && c.days.next == i) {
		return i
	}
	k := r.over(i, "at", "about", "around", "bout", "roughly", "circa", "round", "abt", "a", "bit", "little", "shortly", "just", "well", "after", "before", "since", "half", "gone")
	h, next := r.whole(k)
	if next == k || h < 1 || h > 12 || r.tok(k).decimal || r.unitAhead(next) {
		return i
	}
	next = r.over(next, "ish", "oclock")
	switch t := r.tok(next); {
	case t.shape == end, t.shape == newline, t.text == ",", t.text == "." && !r.tok(next+1).glued, t.text == "!", t.text == ";", t.text == "-" && !t.glued, t.tag == andWord, t.tag == thenWord, t.tag == daytimeWord, t.tag == thisWord,
		t.tag == todayWord, t.tag == yesterdayWord, t.tag == onWord && r.day(next+1).ok, t.tag == butWord, t.tag == leftWord:
		c.hour = true
		return next
	}
	return i
}
