package parser

import (
	"fmt"
	"strconv"
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
	case len(c.pads) == 1 && c.pads[0].known && len(c.nums) == 1 && c.strange == 1 && len(c.mobs) == 0 && r.tok(c.nums[0]).value >= 800 && r.tok(c.nums[0]).value < 6000:
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

// unresolved asks about paddocks that nobody knows.
func (r *reader) unresolved(c *clause) string {
	for _, p := range c.pads {
		if !p.known {
			return r.noSuch(p.name)
		}
		if p.either != "" {
			return "Is that " + p.name + ", or " + p.either + "?"
		}
	}
	return ""
}

func (r *reader) noSuch(name string) string {
	reason := noSuchReason(name)
	r.offerNames(reason, name)
	return reason
}

const noSuchPaddock = "I know no paddock called"

func noSuchReason(name string) string {
	return fmt.Sprintf(noSuchPaddock+" %s. Which one do you mean?", name)
}

// strangely settles a statement with words that nobody could place: a count
// stands on its own feet, anything else is asked about.
func (r *reader) strangely(c *clause, entries []entry.Entry) outcome {
	for _, i := range c.strays {
		if c.count != nil && !c.days.ok && r.oneOf(i, "week", "month", "fortnight", "season", "weekend") && r.oneOf(i-1, "last", "other", "previous") {
			return outcome{ask: &entry.Ask{Reason: "Which day was that?"}} // "hill last week was 2 2 2"
		}
	}
	firm := c.count != nil && len(c.nums) == 0 && (len(c.count.said) > 1 || c.before == 0 && (len(c.pads) > 0 && c.pads[0].marked || c.count.decimal))
	if firm {
		r.understand(c)
		return outcome{entries: entries}
	}
	if c.family() == famGraze && len(c.mobs) == 0 && !c.has(actGrazed) && !(len(c.pads) > 0 && c.pads[0].marked) {
		return outcome{talk: true}
	}
	if o, ok := r.eitherOr(c); ok {
		return o
	}
	if r.oneOfText(&token{text: c.strangeW}, "week", "weeks", "weekend", "month", "fortnight", "season") && !c.days.ok {
		return outcome{ask: &entry.Ask{Reason: "Which day was that?"}}
	}
	if o, ok := r.slashedPair(c); ok {
		return o
	}
	if c.count != nil && len(c.nums) > 0 {
		return outcome{ask: &entry.Ask{Reason: fmt.Sprintf("I am not sure what “%s” belongs to. Please send each paddock with its scores on a line of its own.", r.tok(c.nums[0]).text)}}
	}
	return outcome{ask: r.confirm(fmt.Sprintf("I am not sure that I understand “%s”.", c.strangeW), entries)}
}

// eitherOr asks which of two paddocks is meant.
func (r *reader) eitherOr(c *clause) (outcome, bool) {
	if len(c.pads) < 2 || !r.hasText(c.from, c.to, "or") || c.count != nil {
		return outcome{}, false
	}
	reason := "Which one: " + c.pads[0].name + " or " + c.pads[1].name + "?"
	r.offerEither(reason, c)
	return outcome{ask: &entry.Ask{Reason: reason}}, true
}

// slashedPair asks about two numbers with a slash between them that are no day:
// two paddocks, or the day the other way round?
func (r *reader) slashedPair(c *clause) (outcome, bool) {
	for _, i := range c.nums {
		s, b := r.tok(i+1), r.tok(i+2)
		if s.text != "/" || !s.glued || !b.glued || b.shape != number {
			continue
		}
		pair := r.source(i, i+3)
		reason := "Is " + pair + " two paddocks, or a day?"
		if f := c.family(); f != famRain && f != famTemp {
			r.offer(reason, i, i+3, r.tok(i).text+" and "+b.text, "")
		}
		r.offer(reason, i, i+3, b.text+"/"+r.tok(i).text, "")
		return outcome{ask: &entry.Ask{Reason: reason}}, true
	}
	return outcome{}, false
}

// understand names what spelling was forgiven.
func (r *reader) understand(c *clause) {
	for _, p := range c.pads {
		if p.guess != "" {
			r.understood = append(r.understood, "read “"+p.guess+"” as "+p.name)
		}
	}
}

// optionsFor offers ways to understand an unclear statement: with each of the
// names that a number may stand for.
func (r *reader) optionsFor(c *clause) []entry.Option {
	var out []entry.Option
	for _, as := range []bool{true, false} {
		d := *c
		d.pads = append([]place(nil), c.pads...)
		found := false
		for n := range d.pads {
			if d.pads[n].either != "" && as {
				d.pads[n].name = d.pads[n].either
			}
			found = found || d.pads[n].either != ""
			d.pads[n].either = ""
		}
		if !found {
			return nil
		}
		list, doubt := r.entriesOf(&d)
		if doubt == "" && len(list) > 0 {
			out = append(out, entry.Option{Label: d.pads[len(d.pads)-1].name, Entries: list})
		}
	}
	return out
}
