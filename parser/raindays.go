package parser

// dayBefore reads "the day before", "the night before" behind rain that came
// before: the day before the one told last, or before today.
func (r *reader) dayBefore(c *clause, i int) moment {
	if !c.has(actRain) || !r.rained || !r.oneOf(i, "the") || !r.oneOf(i+1, "day", "night") || !r.oneOf(i+2, "before") {
		return moment{}
	}
	if t := r.tok(i + 3); t.shape != end && t.shape != newline && t.shape != mark {
		return moment{}
	}
	day := r.today
	for k := i - 1; k >= 0 && k > i-longestPiece && !r.endsSentence(k); k-- {
		if m := r.when(k); m.ok {
			day = m.day
			break
		}
	}
	return moment{day: day.Add(-1), next: i + 3, ok: day <= r.today}
}

// emptiedRain steps over "emptied" and "tipped out" before an amount of rain.
func (r *reader) emptiedRain(c *clause, i int) int {
	k := r.over(i+1, "out", "about", "another")
	if _, j, ok := r.plain(k); !ok || r.tok(j).tag != mmUnit {
		return i
	}
	c.remarks++
	return k
}

// nextDaysRain reads a number of its own day behind rain that has its day too:
// "9mm Tuesday and 4 on Wednesday". Nothing else may follow it.
//
//	rain-of-day = day ( "and" | "," ) number [ "on" ] day ( end | "in" gauge )
func (r *reader) nextDaysRain(c *clause, i int) int {
	if b := r.tok(i - 2); !r.rained && !c.has(actRain) || !r.joins(i-1) || b.shape != word || b.tag != weekdayWord && b.tag != yesterdayWord || r.tok(i).shape != number {
		return i
	}
	v, k, ok := r.plain(i)
	m := r.when(k)
	if !ok || v < 0 || r.unitAhead(k) || !m.ok || m.day > r.today || m.next == k {
		return i
	}
	if t := r.tok(m.next); t.shape != end && t.shape != newline && t.shape != mark && t.tag != thenWord && t.tag != andWord && t.tag != plusWord && t.text != "also" && !(r.oneOf(m.next, "from", "in", "by", "off") && r.tok(r.over(m.next+1, "the", "our")).tag == gaugeWord) {
		return i
	}
	return r.furtherRain(c, v, i, k)
}
