package parser

import (
	"fmt"
	"slices"

	"leafround/core/entry"
)

// countOf makes the count entry of a tally, or says what must be asked.
func (r *reader) countOf(p place, t *tally, day entry.Date) (entry.Count, string) {
	if t.doubt != "" {
		return entry.Count{}, t.doubt
	}
	if why := r.outOfRange(p, t); why != "" {
		return entry.Count{}, why
	}
	if t.n > mostTillers {
		return entry.Count{}, fmt.Sprintf("%d tillers are more than anybody counts. Please send the scores again.", t.n)
	}
	if len(t.said) == 1 && t.skipped.Total() > 0 && t.n > 1+t.skipped.Total() {
		return entry.Count{}, fmt.Sprintf("Is %g the average of the tillers that were left? Please send it with their number alone, such as: %s avg 2.25 of 6 tillers.", float64(t.said[0].Stage(r.rule)), p.name)
	}
	c := scored(t, r.rule)
	c.Paddock, c.Date, c.Skipped = p.name, day, t.skipped
	if t.n > 0 && len(t.said) > 1 && t.n != len(t.said) && t.n != len(t.said)+t.skipped.Total() {
		return c, fmt.Sprintf("You say %d tillers, but I read %d scores. Please send them again.", t.n, len(t.said))
	}
	return c, ""
}

// outOfRange says so where a score cannot be: more than one leaf above what the
// grass carries.
func (r *reader) outOfRange(p place, t *tally) string {
	top := r.book.live(p.name) + 1
	for _, s := range t.said {
		if v := s.Stage(entry.RemnantBySize); v > top {
			why := fmt.Sprintf("A score of %g is more leaves than that grass carries. Is a point missing? Please send the scores again.", float64(v))
			r.offerPoints(why, p)
			return why
		}
	}
	return ""
}

// scored gives the tally's figures as a count by a rule.
func scored(t *tally, rule entry.RemnantRule) entry.Count {
	said := slices.Clone(t.said)
	past := floors(said, t.yellow)
	if len(said) == 1 && t.skipped.Total() == 0 && !t.parts {
		switch {
		case t.yellow == everyTiller && t.n > 0:
			past = t.n
		case t.yellow > 0 && t.n > 0:
			past = min(t.yellow, t.n)
		}
		return entry.Count{Mean: said[0].Stage(rule), N: t.n, Past: past}
	}
	c := entry.Count{Said: said}.Scored(rule)
	if !t.parts && past == 0 {
		c.Said = nil
	}
	return c
}

// floors marks the tillers whose score is a floor and gives how many. Where
// yellowing was told of the paddock, it is the tillers at 3 or above, which
// carry all their leaves, or else all of them; where a number was told, the
// highest scores (ours).
func floors(said []entry.Tiller, yellow int) int {
	n := 0
	mark := func(from entry.LeafStage, most int) {
		for i := range said {
			if !said[i].Floor && most > 0 && said[i].Stage(entry.RemnantBySize) >= from {
				said[i].Floor = true
				most--
			}
		}
	}
	switch {
	case yellow == everyTiller:
		mark(-1, len(said))
	case yellow == -1:
		mark(3, len(said))
		if !slices.ContainsFunc(said, func(t entry.Tiller) bool { return t.Floor }) {
			mark(-1, len(said))
		}
	case yellow > 0:
		for left := yellow; left > 0; left-- {
			markHighest(said)
		}
	}
	for _, t := range said {
		if t.Floor {
			n++
		}
	}
	return n
}

// markHighest makes the highest score that is no floor yet one.
func markHighest(said []entry.Tiller) {
	best := -1
	for i, t := range said {
		if !t.Floor && (best < 0 || t.Stage(entry.RemnantBySize) > said[best].Stage(entry.RemnantBySize)) {
			best = i
		}
	}
	if best >= 0 {
		said[best].Floor = true
	}
}

// both gives the tillers set aside in two parts of one count.
func both(a, b entry.Skipped) entry.Skipped {
	a.Reproductive += b.Reproductive
	a.Daughter += b.Daughter
	a.NoRemnant += b.NoRemnant
	a.Other += b.Other
	return a
}
