package parser

import (
	"fmt"
	"strings"

	"leafround/core/entry"
)

// longestLabel is as many characters as a button shows on a small phone (ours).
const longestLabel = 60

// say tells in plain words what an entry logs, with paddock, mob and day, so
// that nobody says yes without having read what to: "milkers into 8 today".
func say(e entry.Entry, today entry.Date) string {
	switch v := e.(type) {
	case entry.Count:
		return sayCount(v) + sayDay(v.Date, today)
	case entry.Graze:
		return sayGraze(v, today)
	case entry.Cut:
		return v.Paddock + map[entry.CutKind]string{entry.Silage: " cut for silage", entry.Hay: " cut for hay", entry.Topped: " topped"}[v.What] + sayDay(v.Date, today)
	case entry.Canopy:
		return v.Paddock + " canopy closed" + sayDay(v.Date, today)
	case entry.Hold:
		return sayHold(v, today)
	case entry.Release:
		if v.Reason != "" {
			return fmt.Sprintf("%s hold of %s lifted%s", v.Reason, v.Paddock, sayDay(v.Date, today))
		}
		return v.Paddock + " may be grazed again" + sayDay(v.Date, today)
	case entry.Rain:
		return fmt.Sprintf("%.4g mm of rain%s", v.Mm, sayDay(v.Date, today))
	case entry.Temperature:
		return sayTemperature(v, today)
	case entry.Note:
		return "a note: " + v.Text
	}
	return Print(e)
}

// sayDay writes the day behind what happened on it.
func sayDay(d, today entry.Date) string {
	switch d {
	case today:
		return " today"
	case today - 1:
		return " yesterday"
	}
	layout := " on 2 January"
	if d.Time().Year() != today.Time().Year() {
		layout += " 2006"
	}
	return d.Time().Format(layout)
}

// sayCount writes the scores one by one, or their average.
func sayCount(c entry.Count) string {
	name := c.Paddock
	if name != "" && isDigit(name[0]) {
		name = "Paddock " + name
	}
	if len(c.Tillers) == 0 {
		return fmt.Sprintf("%s: %.3g leaves", name, float64(c.Mean))
	}
	list := make([]string, len(c.Tillers))
	for i, t := range c.Tillers {
		list[i] = fmt.Sprintf("%.3g", float64(t))
	}
	s := name + ": " + strings.Join(list, ", ")
	if n := c.Skipped.Total(); n > 0 {
		s += fmt.Sprintf(", %d set aside", n)
	}
	return s
}

func sayGraze(g entry.Graze, today entry.Date) string {
	who := g.Mob
	if who == "" {
		who = "stock"
	}
	if g.Head > 0 {
		who = fmt.Sprintf("%d %s", g.Head, who)
	}
	s := who + map[entry.GrazeEvent]string{entry.In: " into ", entry.Out: " out of ", entry.Grazed: " grazed "}[g.Event] + g.Paddock
	if g.Part > 0 {
		s += fmt.Sprintf(" (%.0f %%)", g.Part*100)
	}
	s += sayDay(g.Date, today)
	if g.Residual != nil {
		s += fmt.Sprintf(", %.4g %s left", g.Residual.Value, unitWord(g.Residual.Unit))
	}
	return s
}

func sayHold(h entry.Hold, today entry.Date) string {
	s := h.Paddock + " " + holdWords[h.Reason] + sayDay(h.Date, today)
	if !h.Until.IsZero() {
		s += ", until" + strings.TrimPrefix(sayDay(h.Until, today), " on")
	}
	return s
}

func sayTemperature(t entry.Temperature, today entry.Date) string {
	s := string(t.Where)
	if t.Celsius != nil {
		s += fmt.Sprintf(" %.3g °C", float64(*t.Celsius))
	}
	if t.Min != nil {
		s += fmt.Sprintf(" least %.3g °C", float64(*t.Min))
	}
	if t.Max != nil {
		s += fmt.Sprintf(" most %.3g °C", float64(*t.Max))
	}
	return s + sayDay(t.Date, today)
}

// sayAll tells what several entries log, those that differ by their paddock
// alone in one.
func sayAll(list []entry.Entry, today entry.Date) string {
	var parts []string
	for _, e := range list {
		if s := say(e, today); len(parts) == 0 || parts[len(parts)-1] != s {
			parts = append(parts, s)
		}
	}
	return strings.Join(parts, "; ")
}

// labelOf makes a button's label of entries.
func labelOf(list []entry.Entry, today entry.Date) string {
	s := sayAll(list, today)
	if list[0].Kind() == entry.KindCount {
		s = strings.ReplaceAll(s, " today", "") // scores are today's unless told
	}
	runes := []rune(s)
	if len(runes) == 0 {
		return ""
	}
	if len(runes) > longestLabel {
		runes = append(runes[:longestLabel-1], '…')
	}
	return strings.ToUpper(string(runes[:1])) + string(runes[1:])
}

// confirm asks whether to log entries, and says what they are.
func (r *reader) confirm(why string, list []entry.Entry) *entry.Ask {
	return &entry.Ask{Reason: why + " Log: " + sayAll(list, r.today) + "?",
		Options: []entry.Option{{Label: "Yes, log it", Entries: list}}}
}
