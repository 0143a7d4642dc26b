package parser

import (
	"strings"

	"leafround/core/entry"
)

// How the statements of a message are joined to what it comes to.

// statements gives the meaning of each statement and joins them; where there is
// none, the question stands alone.
func (r *reader) statements(list []clause, all outcome, whole *entry.Question) outcome {
	list, head := r.merge(list)
	says := 0
	counted := false
	for n := range list {
		if list[n].says() {
			says++
		}
		counted = counted || list[n].count != nil
	}
	var notes []entry.Entry
	for n := range list {
		st := &list[n]
		if says > 0 && r.toldBelow(list, n) {
			continue
		}
		if says > 0 && r.notReached(st, counted) {
			continue
		}
		if says > 0 && !st.says() && len(st.pads) > 0 && !st.trouble && !st.event && len(st.mobs) == 0 {
			join(&all, outcome{ask: &entry.Ask{Reason: "What about " + st.pads[0].name + "? I cannot tell what that belongs to. Please send it apart."}})
			continue
		}
		if says > 0 && !st.says() && (st.days.ok || st.until != 0) && len(st.pads) == 0 && (st.guard&^guardFuture == 0 || st.guard&^(guardPlan|guardNeg) == 0 && r.owedThese(st)) {
			join(&all, outcome{ask: &entry.Ask{Reason: "Which day do you mean?"}})
			continue
		}
		if says > 0 && limitDropped(list, n) {
			join(&all, outcome{ask: &entry.Ask{Reason: "Until which day is it out of the round? Please send that with the paddock, such as: 12 sprayed, out until 5 Dec"}})
			continue
		}
		if says > 1 && r.dayDropped(list, st) {
			join(&all, outcome{ask: &entry.Ask{Reason: "Which day do you mean?"}})
			continue
		}
		o := r.meaning(st)
		if o.ask != nil && len(st.pads) == 1 && st.pads[0].known {
			o.ask.Paddock = st.pads[0].name
		}
		if (o.talk || onlyANote(o.entries)) && says > 1 && (st.count != nil || len(st.nums) > 0) {
			o = outcome{ask: &entry.Ask{Reason: "I understand only a part of that. Please send the scores again, without the rest."}}
		}
		switch {
		case !onlyANote(o.entries):
		case (st.trouble || st.event) && saysElsewhere(list, n):
			o.entries = []entry.Entry{r.ownNote(st, o.entries[0])}
		default:
			notes, o.entries = append(notes, o.entries...), nil
		}
		join(&all, o)
	}
	all.entries = tidy(all.entries)
	return r.close(all, notes, head, whole)
}

// dayDropped tells whether a sentence with a day tells of no stock and no
// paddock, so that nothing would come of it, while a count without a day stands
// beside it: "yesterday's, the battery went flat. 8: 2 2.25 2".
func (r *reader) dayDropped(list []clause, st *clause) bool {
	if !st.days.ok || st.family() != famGraze || st.guard != 0 || len(st.pads) > 0 || len(st.mobs) > 0 || st.head > 0 || st.stock || st.resid != nil {
		return false
	}
	for n := range list {
		if d := &list[n]; d.sentence > st.sentence && d.count != nil && !d.days.ok {
			return true
		}
	}
	return false
}

// owedThese tells whether a clause says that what follows should have come on
// another day: "should have sent these Sunday".
func (r *reader) owedThese(c *clause) bool {
	return c.days.ok && c.days.day != r.today && (r.hasText(c.from, c.to, "these") || r.hasText(c.from, c.to, "those"))
}

// saysElsewhere tells whether another sentence of the message states something.
func saysElsewhere(list []clause, n int) bool {
	for k := range list {
		if list[k].sentence != list[n].sentence && list[k].says() && list[k].guard == 0 {
			return true
		}
	}
	return false
}

// ownNote gives the note of a sentence beside other statements: that sentence
// alone, not the whole message.
func (r *reader) ownNote(c *clause, e entry.Entry) entry.Entry {
	n, ok := e.(entry.Note)
	if ok {
		n.Text = strings.TrimSpace(r.source(c.from, max(c.to, r.sentenceEnd(c.from, len(r.toks)))))
	}
	return n
}

// close settles what is left: a heading that nothing used, a note beside
// entries, a question beside nothing.
func (r *reader) close(all outcome, notes []entry.Entry, head heading, whole *entry.Question) outcome {
	r.ofWhatItSays(&all)
	r.ofWhoItSays(&all)
	if all.ask == nil && outBeforeIn(all.entries) {
		all.ask = &entry.Ask{Reason: "Which day do you mean? They cannot come out before they went in."}
	}
	if len(all.entries) == 0 && all.ask == nil {
		if whole != nil {
			all.question = whole
		}
		if all.question == nil && len(notes) > 0 {
			all.entries = notes[:1]
		}
		if all.question == nil && len(notes) == 0 && head.loose {
			return r.leftover(&head.clause)
		}
		return all
	}
	if head.loose && len(head.pads) > 0 && all.ask == nil {
		all.ask = &entry.Ask{Reason: "I am not sure what “" + r.source(head.from, head.to) + "” belongs to. Please send it again in one line."}
	}
	return all
}

// onlyANote tells whether nothing but a note came out of a statement.
func onlyANote(list []entry.Entry) bool {
	return len(list) == 1 && list[0].Kind() == entry.KindNote
}

// join adds what a further statement came to.
func join(all *outcome, o outcome) {
	all.entries = append(all.entries, o.entries...)
	if all.question == nil {
		all.question = o.question
	}
	if all.ask != nil && o.ask != nil && wentIn(all.ask) && wentIn(o.ask) && len(all.ask.Options[0].Entries) < mostOptions {
		all.ask.Options[0].Entries = append(all.ask.Options[0].Entries, o.ask.Options[0].Entries...)
		all.ask.Reason, all.ask.Options[0].Label = "Did they go in there?", "Yes: "+whoWhere(all.ask.Options[0].Entries)
	}
	if all.ask == nil {
		all.ask = o.ask
	}
}

// whoWhere names each herd with where it went.
func whoWhere(list []entry.Entry) string {
	var parts []string
	for _, e := range list {
		if g, ok := e.(entry.Graze); ok {
			parts = append(parts, g.Mob+" into "+g.Paddock)
		}
	}
	return strings.Join(parts, ", ")
}

// wentIn tells whether an ask is whether one herd went into a paddock.
func wentIn(a *entry.Ask) bool {
	return len(a.Options) == 1 && strings.HasPrefix(a.Reason, "Did they go in")
}
