package parser

import (
	"strings"

	"leafround/core/entry"
)

// guarded settles statements that must not be taken at their word.
func (r *reader) guarded(c *clause, entries []entry.Entry, doubt string) (outcome, bool) {
	g := c.guard
	if g&guardHear != 0 && c.family() == famHold && (c.spell != 0 || c.until != 0) && r.labelled(c) {
		g &^= guardHear // what the label says, the sender tells
		if g == 0 {
			return outcome{}, false
		}
	}
	if g == 0 || g == guardNeg && c.kept && c.family() == famHold {
		return outcome{}, false
	}
	if g&^(guardHear|guardNeg|guardPlan) == 0 && c.count != nil && c.count.doubt != "" && len(c.pads) == 1 && c.pads[0].known && len(c.count.said) > 0 {
		return outcome{ask: &entry.Ask{Reason: c.count.doubt}}, true
	}
	switch {
	case g&^c.tail == 0 && g&^(guardCond|guardPlan|guardWish) == 0 && len(entries) > 0 && doubt == "" && c.family() != famCount:
		return outcome{ask: r.confirm("Is that done?", entries)}, true
	case g&guardAsk != 0:
		return r.askedAbout(c), true
	case g&guardJoke != 0 && c.count != nil && g == guardJoke:
		return outcome{}, false
	case g == guardJoke && len(entries) > 0 && doubt == "" && c.family() == famGraze && mobsOf(c)[0] != "":
		return outcome{ask: r.confirm("A joke, or is that so?", entries)}, true
	case g&(guardJoke|guardWish|guardCond) != 0:
		return outcome{talk: true}, true
	case g&guardFuture != 0 && (c.family() == famGraze || c.family() == famCount || c.family() == famCut || c.family() == famHold || c.family() == famCanopy):
		if len(c.pads) == 0 {
			return outcome{talk: true}, true
		}
		return outcome{ask: &entry.Ask{Reason: notYet + ", so I log nothing. Tell me when it is done.",
			Options: doneOption(c, entries, r.today)}}, true
	case g == guardPlan && r.onlyPerhaps(c):
		if doubt != "" {
			return outcome{ask: &entry.Ask{Reason: doubt}}, true
		}
		return outcome{ask: r.confirm("Is that so? I log only what somebody knows.", entries)}, true
	case g&(guardPlan|guardFuture) != 0:
		return outcome{talk: true}, true
	case g&guardHear != 0:
		if len(entries) == 0 && c.count != nil && len(c.count.said) > 1 {
			return outcome{ask: &entry.Ask{Reason: r.whose(c)}}, true
		}
		if len(entries) == 0 {
			return outcome{talk: true}, true
		}
		if o, ok := r.eitherOr(c); ok {
			return o, true
		}
		return outcome{ask: r.confirm("Is that so? I log only what somebody knows.", entries)}, true
	case g&guardNeg != 0:
		return r.denied(c), true
	}
	_ = doubt
	return outcome{}, false
}

const notYet = "That has not happened yet"

// labelled tells whether a hold's days are told from its label.
func (r *reader) labelled(c *clause) bool {
	for i := c.from; i < c.to; i++ {
		if r.sprayerSays(c, i) {
			return true
		}
		if r.oneOf(i, "label", "labels", "tin", "drum", "jug", "bottle", "container", "packet", "bag", "boss", "rep", "manager") && r.hasTag(i, min(i+6, c.to), hearWord) {
			return true
		}
	}
	return false
}

// doneOption offers to log now what was told of today as still to come.
func doneOption(c *clause, entries []entry.Entry, today entry.Date) []entry.Option {
	if len(entries) == 0 || c.days.day != today {
		return nil
	}
	return []entry.Option{{Label: "It is done: " + sayAll(entries, today), Entries: entries}}
}

// denied keeps a denial about a paddock as a note.
func (r *reader) denied(c *clause) outcome {
	if len(c.pads) == 0 || !c.pads[0].known || r.anyThing(c.pads[0]) && len(c.mobs) == 0 {
		return outcome{talk: true}
	}
	if c.family() == famHold && c.acts&(actHold|actWet|actShut) != 0 && c.count == nil && c.until == 0 {
		name := c.pads[0].name
		return outcome{ask: &entry.Ask{Reason: "Is " + name + " no longer held?", Options: []entry.Option{{Label: "Yes, it may be grazed",
			Entries: []entry.Entry{entry.Release{Paddock: name, Date: r.dayOf(c)}}}}}}
	}
	if r.tok(c.from).text == "no" && mobsOf(c)[0] != "" && c.acts&^actIn == 0 && c.count == nil {
		return r.ruleOrNot(c)
	}
	return outcome{entries: []entry.Entry{r.noteOf(c)}}
}

// ruleOrNot asks about "no heifers on 12": a rule, or how things stand?
func (r *reader) ruleOrNot(c *clause) outcome {
	mob, names := mobsOf(c)[0], knownNames(c.pads)
	return outcome{ask: &entry.Ask{Reason: "Is that a rule, or are they just not there now?", Options: []entry.Option{
		{Label: "A rule", Entries: []entry.Entry{entry.Setup{What: entry.SetBar, Mob: mob, Names: names}}},
		{Label: "Not there now", Entries: []entry.Entry{r.noteOf(c)}}}}}
}

// remember reads what is told as a note: "note: gate in hill needs rehanging".
//
//	note = ( "note" | "nb" | "memo" ) [ ":" ] text
func (r *reader) remember(from, to int) (outcome, bool) {
	i := from
	if r.oneOf(i, "add", "make", "take") && r.oneOf(i+1, "a", "note") {
		i++
	}
	if r.oneOf(i, "a") {
		i++
	}
	if r.tok(i).tag != noteWord || r.tok(i).shape != word {
		return outcome{}, false
	}
	i++
	for r.oneOf(i, ":", "-", ",", "that", "to", "self") && i < to {
		i++
	}
	if i >= to {
		return outcome{ask: &entry.Ask{Reason: "What should I note?"}}, true
	}
	n := entry.Note{Text: strings.TrimSpace(r.text[r.toks[i].start:])}
	for k := i; k < to && n.Paddock == ""; k++ {
		if name, ok := r.alarmPlace(k); ok {
			n.Paddock = name
		}
	}
	if p, ok := r.onePad(i, false); ok && p.known && n.Paddock == "" {
		n.Paddock = p.name
	}
	return outcome{entries: []entry.Entry{n}}, true
}

// noteOf keeps the whole message as a note.
func (r *reader) noteOf(c *clause) entry.Note {
	n := entry.Note{Text: strings.TrimSpace(r.text)}
	if len(c.pads) > 0 && c.pads[0].known {
		n.Paddock = c.pads[0].name
	}
	if len(c.mobs) > 0 {
		n.Mob = c.mobs[0]
	}
	return n
}

// askedAbout meets a question about what happened: nothing is logged, and the
// paddock's history is offered. It may be meant for a colleague.
func (r *reader) askedAbout(c *clause) outcome {
	if len(c.pads) == 0 || !c.pads[0].known || !c.says() && len(c.mobs) == 0 && !r.hasText(c.from, c.to, "counted") && !r.hasText(c.from, c.to, "count") && !r.hasText(c.from, c.to, "walked") {
		return outcome{talk: true}
	}
	name := c.pads[0].name
	if r.asksAhead(c) {
		return outcome{question: &entry.Question{About: entry.AskPaddock, Paddock: name}}
	}
	return outcome{ask: &entry.Ask{Reason: "I log nothing from a question. Shall I show what is logged for " + name + "?",
		Options: []entry.Option{
			{Label: "What is logged for " + name, Question: &entry.Question{About: entry.AskHistory, Paddock: name}},
			{Label: "How " + name + " stands", Question: &entry.Question{About: entry.AskPaddock, Paddock: name}}}}}
}

// asksAhead tells whether a question is of what may be, not of what
// happened: "can I put the milkers in 12 tomorrow".
func (r *reader) asksAhead(c *clause) bool {
	at := r.firstWord(c)
	if len(c.pads) != 1 || c.count != nil && len(c.count.said) > 1 {
		return false
	}
	for i := c.from; i < c.to; i++ {
		if r.oneOf(i, "did", "was", "were", "has", "have", "had", "been", "went", "got", "worry") {
			return false
		}
	}
	if !r.oneOf(at, "can", "could", "should", "may", "shall", "would") || c.family() != famGraze && c.acts != 0 {
		return false
	}
	_, k := r.mob(r.over(at+1, "the", "our"))
	return r.oneOf(at+1, "i", "we") || k > r.over(at+1, "the", "our") || c.names(r.over(at+1, "the"))
}
