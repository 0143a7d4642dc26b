package parser

import (
	"fmt"

	"leafround/core/entry"
)

// What a statement with scores comes to.

// counts gives the count of one paddock, and its canopy where that was told.
func (r *reader) counts(c *clause) ([]entry.Entry, string) {
	if len(c.pads) == 0 {
		if (c.strange > 0 || c.trouble) && len(c.count.said) < 3 && !(c.count.decimal && c.count.n > 1) {
			return nil, ""
		}
		if r.Recent != "" && c.count.doubt == "" && r.nothingElse(c) {
			r.understood = append(r.understood, "took the scores as "+r.Recent+"'s")
			c.pads = []place{{name: r.Recent, known: true}}
		} else {
			if c.count.doubt != "" {
				return nil, c.count.doubt
			}
			return nil, r.whose(c)
		}
	}
	if c.share > 0 && len(c.count.said) < 2 && c.acts == 0 {
		return nil, "Is that a leaf count of a part of it? Please send one number for each tiller, or the average of the whole paddock."
	}
	if c.has(actsGraze | actOrder | actGoing | actPlace) {
		if c.has(actsGraze&^actIn|actOrder|actGoing) || c.resid != nil {
			return nil, "Is that a leaf count, a grazing, or both? Please send them apart."
		}
	}
	if c.resid != nil {
		return nil, "Is that a leaf count, what stock left, or both? Please send them apart."
	}
	if len(c.mobs) > 0 && len(c.count.said) == 1 && !c.count.decimal {
		return nil, "Is that a leaf count, a grazing, or both? Please send them apart."
	}
	if c.head > 0 {
		return nil, "Is that a leaf count, or a number of animals?"
	}
	if c.until != 0 && c.acts == 0 {
		return nil, "Which day were those scores counted on?"
	}
	if c.shared {
		return r.sharedCounts(c)
	}
	if len(c.pads) == 2 && r.fromTo(c.pads) && len(c.count.said) == 1 && (r.hasTag(c.from, c.to, allWord) || r.hasTag(c.from, c.to, eachWord)) {
		c.pads = r.spread(c.pads)
		return r.sharedCounts(c)
	}
	if p := c.pads[0]; c.count.doubt == "" && r.mayBeScore(c, p) {
		return nil, "Is the " + p.name + " there the paddock or a score? Please send “p" + p.name + "” before the scores."
	}
	if len(c.pads) > 1 {
		return nil, fmt.Sprintf("Are those scores from %s or %s?", c.pads[0].name, c.pads[1].name)
	}
	if c.count.doubt != "" && c.count.garbled {
		return nil, c.count.doubt
	}
	if r.listOfPads(c) {
		return nil, "Are those paddocks or scores? Please send each paddock with its scores on a line of its own."
	}
	if len(c.count.said) == 0 {
		return nil, "What were the scores? Every tiller of that list was set aside."
	}
	n, doubt := r.countOf(c.pads[0], c.count, r.dayOf(c))
	if doubt != "" {
		return nil, doubt
	}
	list := []entry.Entry{n}
	if c.has(actCanopy) || c.has(actClosed) {
		list = append(list, entry.Canopy{Paddock: n.Paddock, Date: n.Date})
	}
	return list, ""
}

// nothingElse tells whether no word stands beside the scores that may be a
// paddock's name: words that nobody knows, and those that places are named by.
func (r *reader) nothingElse(c *clause) bool {
	for i := c.from; i < c.to; i++ {
		if t := r.tok(i); t.shape == word && (t.tag == topWord || t.tag == acreUnit || t.tag == haUnit || placeWords[t.text]) {
			return false
		}
	}
	return c.strange == 0
}

// whose asks which paddock scores are from; the one named within the hour is
// offered where it may be.
func (r *reader) whose(c *clause) string {
	const why = "Which paddock are those scores from?"
	for i := c.from; i < c.to && r.Recent != ""; i++ {
		if r.isScore(i) {
			r.offerScores(why, r.Recent, i)
			break
		}
	}
	return why
}

// mayBeScore tells whether a bare number of 4 or less, taken for the paddock of
// scores, may be one of them: words stand between, or it comes behind scores.
func (r *reader) mayBeScore(c *clause, p place) bool {
	if t := r.tok(p.at); p.marked || p.next != p.at+1 || t.shape != number || t.value > 4 || !c.names(p.at) || r.marked(p.next, p.next+1) && !(r.tok(p.next).text == "," && r.oneOf(p.at-1, "got", "get", "it", "had")) {
		return false
	}
	for i := c.from; i < p.at; i++ {
		if r.isScore(i) {
			return true
		}
	}
	if r.oneOf(p.at-1, "got", "get", "it", "had") && r.tok(p.next).text == "," {
		return true // "I got 2, 2.5, 2"
	}
	return c.strange > 0 || c.remarks > 0 || placeWords[r.tok(p.next).text]
}

// sharedCounts gives the same average for each of several paddocks.
func (r *reader) sharedCounts(c *clause) ([]entry.Entry, string) {
	var list []entry.Entry
	for _, p := range c.pads {
		n, doubt := r.countOf(p, c.count, r.dayOf(c))
		if doubt != "" {
			return nil, doubt
		}
		list = append(list, n)
	}
	return list, ""
}
