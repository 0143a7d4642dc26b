package parser

import (
	"strconv"
	"strings"

	"leafround/core/entry"
)

// What a clause comes to that says nothing to log by itself.

// noVerb settles a clause that says nothing to log.
func (r *reader) noVerb(c *clause) outcome {
	switch {
	case c.guard&guardAsk != 0:
		return r.askedAbout(c)
	case r.troubleDenied(c):
		return outcome{entries: []entry.Entry{r.noteOf(c)}}
	case c.guard == guardHear && c.trouble && len(c.mobs) == 0 && len(c.pads) == 1 && c.pads[0].known && r.names(c):
		return outcome{entries: []entry.Entry{r.noteOf(c)}}
	case c.guard != 0:
		return outcome{talk: true}
	case r.troubleBetween(c):
		return outcome{entries: []entry.Entry{r.noteOf(c)}}
	case c.event && len(c.mobs) > 0 && (len(c.pads) == 0 || len(c.pads) > 1 && c.pads[0].known):
		return outcome{entries: []entry.Entry{r.noteOf(c)}}
	case (c.trouble || c.event) && len(c.pads) == 1 && c.pads[0].known && r.names(c):
		return outcome{entries: []entry.Entry{r.noteOf(c)}}
	case c.bare:
		return r.bareName(c)
	case len(c.pads) == 1 && c.pads[0].known && len(c.nums) == 1 && c.strange == 1 && len(c.mobs) == 0 && leftCover(r.tok(c.nums[0]).value):
		left := []entry.Entry{entry.Graze{Paddock: c.pads[0].name, Date: r.dayOf(c), Event: entry.Out, Residual: &entry.Residual{Value: r.tok(c.nums[0]).value, Unit: entry.KgDMPerHa}}}
		return outcome{ask: r.confirm("Is "+r.tok(c.nums[0]).text+" what stock left in "+c.pads[0].name+"?", left)}
	case len(c.pads) == 1 && c.pads[0].known && len(c.mobs) == 1 && c.strange == 0 && c.remarks == 0 && len(c.nums) == 0 && c.head == 0:
		return outcome{ask: &entry.Ask{Reason: "Did they go into " + c.pads[0].name + "?", Options: []entry.Option{{
			Label:   "Yes, into " + c.pads[0].name,
			Entries: []entry.Entry{entry.Graze{Paddock: c.pads[0].name, Date: r.dayOf(c), Event: entry.In, Mob: c.mobs[0]}}}}}}
	case len(c.pads) > 0 && c.pads[0].known && c.has(actDamp) && c.strange == 0:
		return outcome{ask: &entry.Ask{Reason: "Is " + c.pads[0].name + " too wet to graze?", Options: []entry.Option{{Label: "Yes, too wet",
			Entries: []entry.Entry{entry.Hold{Paddock: c.pads[0].name, Date: r.dayOf(c), Reason: entry.HoldWet}}}}}}
	case len(c.pads) == 1 && c.pads[0].known && c.remarks > 0 && c.strange == 0 && (r.hasText(c.from, c.to, "looks") || r.hasText(c.from, c.to, "looking") || r.stands(c)):
		return outcome{entries: []entry.Entry{r.noteOf(c)}}
	}
	if r.tellsOf(c) {
		return outcome{entries: []entry.Entry{r.noteOf(c)}}
	}
	if o, ok := r.dayAndNight(c); ok {
		return o
	}
	if o, ok := r.shareAlone(c); ok {
		return o
	}
	return r.stockThere(c)
}

// tellsOf tells whether a clause plainly tells something of the paddock that it
// begins with, whatever that is: "12 is a bog", "river flat ploughed". It is no
// number of something: "2 sugars please".
func (r *reader) tellsOf(c *clause) bool {
	if c.guard != 0 || len(c.pads) != 1 || !c.pads[0].known || c.pads[0].role != roleNone || len(c.nums) > 0 || c.strange == 0 || c.count != nil || r.anyPaddock {
		return false
	}
	p := c.pads[0]
	if p.marked {
		return true
	}
	if r.firstWord(c) != p.at {
		return false
	}
	n := r.tok(p.next)
	switch {
	case n.shape != word:
		return n.text == "-" || n.text == ":"
	case r.tok(p.at).shape == word, n.tag == filler, n.tag == remark:
		return true
	}
	return strings.HasSuffix(n.text, "ed") || strings.HasSuffix(n.text, "ing")
}

// onlyName tells whether a paddock's name is all that the clause holds.
func (r *reader) onlyName(c *clause) bool {
	for i := c.from; i < c.to; i++ {
		if t := r.tok(i); i >= c.pads[0].at && i < c.pads[0].next || t.shape == mark || t.tag == courtesy {
			continue
		}
		return false
	}
	return true
}

// bareName takes a paddock's name alone as a question about it.
func (r *reader) bareName(c *clause) outcome {
	p := c.pads[0]
	if !p.known {
		return outcome{ask: &entry.Ask{Reason: r.noSuch(p.name)}}
	}
	if v, err := strconv.Atoi(p.name); err == nil && v <= 4 && !p.marked {
		return outcome{ask: &entry.Ask{Reason: "Is that a score, or paddock " + p.name + "?",
			Options: []entry.Option{{Label: "Paddock " + p.name, Question: &entry.Question{About: entry.AskPaddock, Paddock: p.name}}}}}
	}
	r.understand(c)
	return outcome{question: &entry.Question{About: entry.AskPaddock, Paddock: p.name}}
}

// leftover settles a message that was nothing but a heading: a paddock's name
// or a day.
func (r *reader) leftover(carry *clause) outcome {
	if len(carry.pads) == 1 && !carry.days.ok && carry.strange == 0 {
		return r.bareName(carry)
	}
	return outcome{talk: true}
}
