package parser

import (
	"cmp"

	"leafround/core/entry"
)

// mobName reads a mob's name, known or new.
func (r *reader) mobName(i int) (string, int) {
	if name, k := r.mob(i); k > i && name != "" {
		return name, k
	}
	return r.tok(i).text, i + 1
}

// mobList reads mobs joined by commas and "and".
func (r *reader) mobList(i int) (names []string, next int) {
	for {
		name, k := r.mob(r.over(i, "the"))
		if k == r.over(i, "the") || name == "" {
			return names, i
		}
		names = append(names, name)
		i = k
		if !r.joins(i) || func() bool { _, n := r.mob(r.over(i+1, "the")); return n == r.over(i+1, "the") }() {
			return names, i
		}
		i++
	}
}

// setOnly says where alone a mob may graze, or which mob alone a paddock takes.
//
//	only = mob "only" [ "graze" | "go" ] ( "on" | "in" ) places | "only" mob ( "on" | "in" ) places
func (r *reader) setOnly(from, to int) (s entry.Setup, why string, ok bool) {
	i := from
	first := r.oneOf(i, "only")
	if first {
		i++
	}
	name, k := r.mob(r.over(i, "the"))
	if name == "" {
		return s, "", false
	}
	k = r.over(k, "can", "may", "to", "are", "allowed")
	if !first {
		if !r.oneOf(k, "only") {
			return s, "", false
		}
		k++
	}
	k = r.over(k, "graze", "go", "grazing", "allowed", "can", "in", "on", "the")
	names, bad, end := r.placesTo(k)
	if bad != "" && end == to {
		return s, r.noSuch(bad), true
	}
	if len(names) == 0 || end != to {
		return s, "", false
	}
	if first {
		s.What = entry.SetPaddocks
		for _, n := range names {
			s.Paddocks = append(s.Paddocks, entry.Plot{Name: n, Mob: name})
		}
		return s, "", true
	}
	return entry.Setup{What: entry.SetOnly, Mob: name, Names: names}, "", true
}

// placesTo reads a list of paddocks; bad is the first of them that nobody knows.
func (r *reader) placesTo(i int) (names []string, bad string, next int) {
	p, ok := r.onePad(i, true)
	if !ok {
		return nil, "", i
	}
	list, k := r.padList(p, i, true)
	names, bad = knownNames(list), unknownOf(list)
	if r.tok(k).text == "or" { // "never on Hill or Back Creek"
		if more, worse, j := r.placesTo(k + 1); len(more) > 0 {
			return append(names, more...), cmp.Or(bad, worse), j
		}
	}
	return names, bad, k
}

// setBar keeps a mob out of paddocks.
//
//	bar = "bar" mob "from" places | mob ( "not" "allowed" | "never" ) ( "in" | "on" ) places
func (r *reader) setBar(from, to int) (s entry.Setup, why string, ok bool) {
	i := from
	barred := r.oneOf(i, "bar", "ban")
	if barred {
		i++
	}
	name, k := r.mob(r.over(i, "the"))
	if name == "" {
		return s, "", false
	}
	if !barred {
		j := r.over(k, "are")
		k2, found := r.run(j, "not", "allowed")
		if r.oneOf(k, "never") {
			k2, found = r.over(k+1, "go", "to"), true
		}
		if !found {
			return s, "", false
		}
		k = k2
	}
	names, bad, end := r.placesTo(r.over(k, "from", "in", "on", "the", "into"))
	if bad != "" && end == to {
		return s, r.noSuch(bad), true
	}
	if len(names) == 0 || end != to {
		return s, "", false
	}
	return entry.Setup{What: entry.SetBar, Mob: name, Names: names}, "", true
}

// setDaily says how much a mob is given a day.
//
//	daily = mob [ "get" | "eat" | "need" ] number ( "ha" | "acres" ) ( "a" | "per" | "/" ) "day"
func (r *reader) setDaily(from, to int) (s entry.Setup, why string, ok bool) {
	i := r.over(from, "set", "give", "the")
	name, k := r.mob(i)
	if k == i || name == "" {
		return s, "", false
	}
	k = r.over(k, "get", "eat", "need", "use", "are", "on", "to", "at", "take", "have", "is", "take", ":", "=")
	v, j, isNum := r.plain(k)
	if !isNum || v <= 0 || v > 500 {
		return s, "", false
	}
	ha := entry.Hectares(v)
	switch u := r.tok(j); {
	case u.tag == acreUnit && u.shape == word:
		ha = entry.Acres(v)
	case u.tag == haUnit && u.shape == word:
	default:
		return s, "", false
	}
	j = r.over(j+1, "a", "per", "/", "each", "every")
	if !r.oneOf(j, "day", "daily", "d") || j+1 != to {
		return s, "", false
	}
	return entry.Setup{What: entry.SetDaily, Mob: name, Ha: ha}, "", true
}

// setAway says that a mob leaves the round or comes home.
//
//	away = mob [ "are" ] ( "away" | "gone" "away" ) [ "grazing" ] | mob [ "are" ] ( "home" | "back" [ "home" ] )
func (r *reader) setAway(from, to int) (s entry.Setup, why string, ok bool) {
	name, k := r.mob(r.over(from, "the"))
	if name == "" {
		return s, "", false
	}
	k = r.over(k, "are", "have", "gone", "now", "is", "went", "all", "sent", "come", "came")
	what := entry.What("")
	switch {
	case r.oneOf(k, "away"):
		what, k = entry.SetAway, r.over(k+1, "grazing", "now", "today", "from", "the", "farm", "for", "winter", "on", "agistment", "at", "grazier",
			"crop", "kale", "swedes", "beet", "turnips", "off", "runoff", "to", "support", "block", "wintering")
	case r.oneOf(k, "home"), r.oneOf(k, "back") && (r.oneOf(k+1, "home") || k+1 == to):
		what, k = entry.SetBack, r.over(k, "back", "home", "now", "today", "again", "from", "grazing")
	}
	if what == "" || k != to {
		return s, "", false
	}
	return entry.Setup{What: what, Mob: name}, "", true
}

// setPin keeps a wish for the plan, or drops it.
//
//	pin = "pin" ( place "for" mob | mob ( "to" | "in" ) place | place ) [ "on" ] day | "unpin" ( place | mob )
func (r *reader) setPin(from, to int) (s entry.Setup, why string, ok bool) {
	if !r.oneOf(from, "pin", "unpin") {
		return s, "", false
	}
	s.What = entry.SetPin
	if r.oneOf(from, "unpin") {
		s.What = entry.SetUnpin
	}
	i := from + 1
	for i < to {
		i = r.over(i, "for", "to", "in", "into", "the", "on")
		if name, k := r.mob(i); k > i {
			s.Mob, i = name, k
			continue
		}
		r.ahead = true
		m := r.day(i)
		r.ahead = false
		if m.ok {
			s.Date, i = m.day, m.next
			continue
		}
		p, isPad := r.onePad(i, true)
		if !isPad || s.Paddock != "" {
			return s, pinForm, true
		}
		if !p.known {
			return s, r.noSuch(p.name), true
		}
		s.Paddock, i = p.name, p.next
	}
	if s.What == entry.SetUnpin {
		s.Date = 0 // a wish is dropped whole
		return s, "", s.Mob != "" || s.Paddock != ""
	}
	if s.Paddock == "" || s.Date == 0 {
		return s, pinForm, true
	}
	if s.Date < r.today {
		return s, "That day is past. " + pinForm, true
	}
	return s, "", true
}

const pinForm = "Which paddock, which mob and which day? For instance: pin 12 for heifers Friday"

// setBackFence says whether a mob runs behind a back fence.
//
//	back-fence = mob [ "are" | "run" ] "behind" "a" "back" "fence" | "back" "fence" ( "on" | "off" ) [ "for" ] mob
func (r *reader) setBackFence(from, to int) (s entry.Setup, why string, ok bool) {
	s = entry.Setup{What: entry.SetBackFence, Yes: true}
	if name, k := r.mob(r.over(from, "the")); name != "" {
		k = r.over(k, "are", "run", "running", "now", "is")
		if r.oneOf(k, "no", "without") {
			s.Yes = false
		}
		k = r.over(k, "behind", "a", "with", "no", "without", "not", "have", "has")
		if !r.oneOf(k, "back") || !r.oneOf(k+1, "fence") || k+2 != to {
			return s, "", false
		}
		s.Mob = name
		return s, "", true
	}
	k, found := r.run(from, "back", "fence")
	if !found {
		return s, "", false
	}
	s.Yes = !r.oneOf(k, "off", "down", "gone")
	k = r.over(k, "on", "off", "up", "down", "gone", "for", "behind", "the")
	name, end := r.mob(k)
	if name == "" || end != to {
		return s, "", false
	}
	s.Mob = name
	return s, "", true
}
