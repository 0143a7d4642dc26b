package parser

import (
	"time"

	"leafround/core/entry"
)

// isoDay reads 2026-11-03.
func (r *reader) isoDay(i int) moment {
	y, a, m, b, d := r.tok(i), r.tok(i+1), r.tok(i+2), r.tok(i+3), r.tok(i+4)
	if a.text != "-" || b.text != "-" || !m.glued || !d.glued || m.shape != number || d.shape != number {
		return moment{}
	}
	return r.exact(int(y.value), int(m.value), int(d.value), i+5)
}

// slashDay reads 3/11 and 3/11/26: day first, unless the zone is in the
// United States.
func (r *reader) slashDay(i int) moment {
	a, b := r.tok(i), r.tok(i+2)
	if b.shape != number || !b.glued || b.decimal {
		return moment{}
	}
	if u := r.tok(i + 3); u.tag == ofWord || u.tag == grazedWord || u.tag == leftWord || u.text == "done" || u.tag == inchUnit || u.tag == leafUnit || u.tag == tillerUnit || u.text == "an" || u.text == "grown" {
		return moment{} // 3/4 of it
	}
	if r.partListed(i) {
		return moment{}
	}
	d, m := int(a.value), int(b.value)
	if r.monthFirst {
		d, m = m, d
	}
	if s, y := r.tok(i+3), r.tok(i+4); s.text == "/" && s.glued && y.glued && y.shape == number {
		year := int(y.value)
		if year < 100 {
			year += 2000
		}
		return r.exact(year, m, d, i+5)
	}
	return r.dayMonth(d, m, i+3)
}

// partListed tells whether "1/2" opens a list of parts behind a colon: "12 on 7
// Nov: 1/2, 3/4, 1".
func (r *reader) partListed(i int) bool {
	a, b := r.tok(i), r.tok(i+2)
	if r.tok(i-1).text != ":" || i == 0 || a.value >= b.value || b.value > 4 {
		return false
	}
	k := r.over(i+3, ",", ";")
	n := r.tok(k)
	return n.shape == part || n.shape == number && n.value <= 5 && !r.day(k+3).ok && (n.decimal || r.tok(k+1).text == "/" || k > i+3 && r.isScore(k))
}

// monthDay reads Nov 3, November 3rd.
func (r *reader) monthDay(i int) moment { return r.monthDayOf(i, int(r.tok(i).sense)) }

// monthDayOf reads the day behind a month's name.
func (r *reader) monthDayOf(i, month int) moment {
	d := r.tok(i + 1)
	if d.shape != number || d.decimal || d.value > 31 {
		return moment{}
	}
	next := i + 2
	if isOrdinalMark(r.tok(next)) {
		next++
	}
	return r.dayMonth(int(d.value), month, next)
}

// ordinalDay reads the 3rd, 3rd Nov, 3rd of November.
func (r *reader) ordinalDay(i, n, next int) moment {
	j := next
	if r.tok(j).tag == ofWord {
		j++
	}
	if m := r.tok(j); m.tag == monthName {
		return r.dayMonth(n, int(m.sense), j+1)
	} else if m.text == "may" && r.isMonth(j) {
		return r.dayMonth(n, int(time.May), j+1)
	}
	if n < 1 || n > 31 || r.tok(i).tag == ordinalWord && r.tok(i-1).text != "the" || r.ofThing(j) {
		return moment{}
	}
	return moment{day: r.nearOrdinal(n), next: next, ok: true}
}

// nearOrdinal gives the latest such day of a month, or the next to come where
// the text looks ahead.
func (r *reader) nearOrdinal(n int) entry.Date {
	y, mo, _ := r.today.Time().Date()
	for k := 0; k < 14; k++ {
		step := -k
		if r.ahead {
			step = k
		}
		d := entry.NewDate(y, mo+time.Month(step), 1).Add(n - 1)
		if d.Time().Day() == n && (!r.ahead && d <= r.today || r.ahead && d > r.today) {
			return d
		}
	}
	return r.today
}

// dayMonth gives the latest such day past, or the next to come where the text
// looks ahead.
func (r *reader) dayMonth(d, m, next int) moment {
	if y := r.tok(next); y.shape == number && len(y.text) == 4 && y.value > 2000 && y.value < 2100 {
		return r.exact(int(y.value), m, d, next+1)
	}
	if m < 1 || m > 12 || d < 1 || d > 31 {
		return moment{}
	}
	year := r.today.Time().Year()
	for k := 0; k < 9; k++ {
		y := year - k + 1
		if r.ahead {
			y = year + k
		}
		at := entry.NewDate(y, time.Month(m), d)
		if at.Time().Day() == d && (!r.ahead && at <= r.today || r.ahead && at > r.today) {
			return moment{day: at, next: next, ok: true}
		}
	}
	return moment{}
}

// exact gives a day with its year told.
func (r *reader) exact(y, m, d, next int) moment {
	if m < 1 || m > 12 || d < 1 || d > 31 || y < 1970 || y > 2200 {
		return moment{}
	}
	at := entry.NewDate(y, time.Month(m), d)
	if at.Time().Day() != d {
		return moment{}
	}
	return moment{day: at, next: next, ok: true}
}
