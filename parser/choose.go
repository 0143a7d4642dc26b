package parser

import (
	"strings"

	"leafround/core/entry"
)

// NoneOfThese is what Choose gives for an answer that refuses every option.
const NoneOfThese = -1

// Choose reads an answer to an open ask: "2", "the second", "12", "none of
// these". It gives the option's index, or [NoneOfThese]; ok is false where the
// text is no answer to that ask. A number is a place in the list unless an
// option's label, or the paddock that it stands for, bears that number.
func Choose(text string, ask entry.Ask, c Context) (index int, ok bool) {
	r := newReader(text, c)
	r.room = &room{}
	r.scan()
	from, to := r.trim(0, len(r.toks))
	for r.oneOf(from, "the", "its", "it", "was", "i", "meant", "mean", "that", "is", "option", "number", "no") && to-from > 1 && !r.oneOf(from+1, "of") {
		from++
	}
	for to-1 > from && r.oneOf(to-1, "one", "option") {
		to--
	}
	if to <= from {
		return 0, false
	}
	if r.refuses(from, to) {
		return NoneOfThese, true
	}
	if i, ok := byLabel(foldOf(r.source(from, to)), ask.Options); ok {
		return i, true
	}
	if i, ok := byName(r, from, to, ask.Options); ok {
		return i, true
	}
	if i, ok := r.place(from, to, len(ask.Options)); ok {
		return i, true
	}
	if len(ask.Options) == 1 && to-from == 1 && r.oneOf(from, "yes", "yep", "yeah", "yup", "y", "ok", "correct", "right", "aye", "sure") {
		return 0, true
	}
	return 0, false
}

// refuses reads "none of these", "neither", "no".
func (r *reader) refuses(from, to int) bool {
	if r.oneOf(from, "none", "neither", "nothing") {
		return to-from <= 3
	}
	return to-from == 1 && r.oneOf(from, "no", "nope", "nah", "cancel")
}

// byLabel finds the one option whose label is the text.
func byLabel(folded string, options []entry.Option) (int, bool) {
	found, n := 0, 0
	for i, o := range options {
		if foldOf(o.Label) == folded {
			found, n = i, n+1
		}
	}
	return found, n == 1 && folded != ""
}

// byName finds the one option that stands for a paddock or mob of that name.
func byName(r *reader, from, to int, options []entry.Option) (int, bool) {
	want := ""
	if p, ok := r.onePad(from, true); ok && p.next == to {
		want = foldOf(p.name)
	} else {
		want = foldOf(r.source(from, to))
	}
	found, n := 0, 0
	for i, o := range options {
		if names(o)[want] {
			found, n = i, n+1
		}
	}
	return found, n == 1 && want != ""
}

// names gives the paddocks and mobs that an option stands for, folded.
func names(o entry.Option) map[string]bool {
	set := map[string]bool{}
	add := func(list ...string) {
		for _, s := range list {
			if s != "" {
				set[foldOf(s)] = true
			}
		}
	}
	if o.Question != nil {
		add(o.Question.Paddock, o.Question.Mob)
	}
	for _, e := range o.Entries {
		switch v := e.(type) {
		case entry.Count:
			add(v.Paddock)
		case entry.Graze:
			add(v.Paddock, v.Mob)
		case entry.Cut:
			add(v.Paddock, strings.ToLower(string(v.What)))
		case entry.Canopy:
			add(v.Paddock)
		case entry.Hold:
			add(v.Paddock, string(v.Reason))
		case entry.Release:
			add(v.Paddock)
		case entry.Temperature:
			add(string(v.Where))
		}
	}
	return set
}

// place reads a place in the list: "2", "two", "the second", "last".
func (r *reader) place(from, to, n int) (int, bool) {
	if to-from > 2 || n == 0 {
		return 0, false
	}
	t := r.tok(from)
	v := 0
	switch {
	case t.shape == number && !t.decimal && (to-from == 1 || isOrdinalMark(r.tok(from+1))):
		v = int(t.value)
	case to-from > 1:
		return 0, false
	case t.tag == numberWord, t.tag == ordinalWord:
		v = int(t.sense)
	case t.text == "last" || t.text == "latter":
		v = n
	case t.text == "former":
		v = 1
	}
	return v - 1, v >= 1 && v <= n
}
