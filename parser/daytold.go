package parser

import "leafround/core/entry"

// shareDay gives statements before the only day told in a sentence that day.
func shareDay(list []clause) {
	for n := len(list) - 2; n >= 0; n-- {
		c, next := &list[n], &list[n+1]
		if c.sentence != next.sentence || c.days.ok || !next.days.ok || c.family() != next.family() || c.family() == famGraze && next.future {
			continue
		}
		c.days, c.future = next.days, next.future
		c.guard |= next.guard & guardFuture
	}
}

// day gives the statement's day, today unless told.
func (r *reader) dayOf(c *clause) entry.Date {
	if c.days.ok {
		return c.days.day
	}
	return r.today
}

// hourOfToday tells whether an hour or a meal of today stands at i: "since
// smoko", "since 6am", "since this morning".
func (r *reader) hourOfToday(i int) bool {
	i = r.over(i, "the", "am", "pm", "morning")
	if _, ok := r.clock(i); ok {
		return true
	}
	m := r.day(i)
	return m.ok && m.day == r.today && r.tok(i).tag != weekdayWord || r.oneOf(i, "smoko", "lunch", "breakfast", "brekkie", "tea", "dinner", "milking")
}
