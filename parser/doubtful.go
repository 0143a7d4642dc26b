package parser

import (
	"fmt"

	"leafround/core/entry"
)

// What is asked where a statement holds what nobody could place.

// unresolved asks about paddocks that nobody knows.
func (r *reader) unresolved(c *clause) string {
	if len(c.pads) == 1 && c.count == nil && !c.pads[0].marked {
		i := c.pads[0].at
		if t := r.tok(i); t.shape == number && !t.decimal && t.value <= 31 && r.tok(i-1).tag == monthName && r.tok(i-2).shape == number && r.tok(i-3).tag != onWord && c.pads[0].next == i+1 {
			return "Which of the two is the day? Please send the paddock first, such as: p" + t.text + " " + r.source(i-2, i) // "grazed 5 oct 12"
		}
	}
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
