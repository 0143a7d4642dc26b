package parser

import "leafround/core/entry"

// shareDay gives statements before the only day told in a sentence that day.
func (r *reader) shareDay(list []clause) {
	for n := len(list) - 2; n >= 0; n-- {
		c, next := &list[n], &list[n+1]
		if c.sentence != next.sentence || c.days.ok || !next.days.ok || c.family() != next.family() || c.family() == famGraze && next.future {
			continue
		}
		if c.family() == famRain && (c.now || r.fallenBy(c, next)) {
			continue
		}
		if c.guard == 0 && next.guard&^guardFuture != 0 {
			if (c.family() == famRain || c.family() == famTemp) && !next.future {
				c.unsure("Which day was that?")
			}
			continue
		}
		c.days, c.future = next.days, next.future
		c.guard |= next.guard & guardFuture
	}
}

// fallenBy tells whether rain without a day was told to be in the gauge by now,
// while the next was of a day gone by: "8 mm overnight, and we had 11 on sunday".
func (r *reader) fallenBy(c, next *clause) bool {
	return c.family() == famRain && next.days.ok && next.days.day < r.today && next.guard == 0 &&
		(c.now || r.hasText(c.from, c.to, "overnight") || r.hasText(c.from, c.to, "now") || r.hasText(c.from, c.to, "just") || r.hasText(c.from, c.to, "here"))
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
