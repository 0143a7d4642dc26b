package parser

import "leafround/core/entry"

// What plainly is of stock or of a share of a paddock, but in words that say no
// more than that, is asked about rather than passed over.

// stockThere asks about stock and a paddock that stand together in words which
// nobody understands, rather than pass them over: "gave the heifers another bite
// of 7".
func (r *reader) stockThere(c *clause) outcome {
	if c.guard != 0 || len(c.pads) != 1 || !c.pads[0].known || len(c.mobs) != 1 || len(c.nums) > 0 || c.count != nil || c.near || r.asking || r.anyPaddock || r.hasTag(c.from, c.to, forWord) {
		return outcome{talk: true}
	}
	return outcome{ask: &entry.Ask{Reason: "What about the stock in " + c.pads[0].name + "? Please say which went in or out, such as: milkers into " + c.pads[0].name}}
}

// dayAndNight asks about a day and a night paddock, told without a verb: they may
// be today's or the rule.
//
//	day-and-night = ( "day" | "night" ) paddock { [ "," ] ( "day" | "night" ) paddock }
func (r *reader) dayAndNight(c *clause) (outcome, bool) {
	if c.guard != 0 || len(c.pads) == 0 || len(c.nums) > 0 || c.count != nil || c.acts != 0 || c.strange > len(c.pads) || r.asking {
		return outcome{}, false
	}
	for _, p := range c.pads {
		if !p.known || !p.marked || !r.oneOf(p.at-1, "day", "night", "nite", "days", "nights") {
			return outcome{}, false
		}
	}
	return outcome{ask: &entry.Ask{Reason: "Are the stock in " + c.pads[0].name + " now? Please say which went in and when, such as: milkers into " + c.pads[0].name + " tonight"}}, true
}

// shareAlone asks about a share of a paddock of which nothing is said: "half of 9
// this arvo", "had two thirds of 8".
func (r *reader) shareAlone(c *clause) (outcome, bool) {
	if c.guard != 0 || c.share <= 0 || len(c.pads) != 1 || !c.pads[0].known || c.strange > 0 || len(c.nums) > 0 || c.trouble || r.asking || c.future || r.anyPaddock || r.hasText(c.from, c.to, "is") || r.hasText(c.from, c.to, "has") {
		return outcome{}, false
	}
	done := []entry.Entry{entry.Graze{Paddock: c.pads[0].name, Date: r.dayOf(c), Event: entry.Grazed, Part: c.share}}
	return outcome{ask: r.confirm("Is that part of "+c.pads[0].name+" grazed?", done)}, true
}
