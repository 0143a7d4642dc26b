package parser

import (
	"fmt"
	"strings"

	"leafround/core/entry"
)

// setRename gives a paddock, a mob or the farm another name.
//
//	rename = "rename" ( place | "mob" mob | "farm" ) "to" name | place "is" "now" "called" name
func (r *reader) setRename(from, to int) (s entry.Setup, why string, ok bool) {
	s.What = entry.SetRename
	i := from
	if !r.oneOf(i, "rename") {
		return r.nowCalled(from, to)
	}
	i++
	for r.oneOf(i, "the", "our") {
		i++
	}
	switch {
	case r.oneOf(i, "farm"):
		i++
	case r.oneOf(i, "mob") && r.tok(i+1).shape == word:
		s.Mob, i = r.mobName(i + 1)
	default:
		p, isPad := r.onePad(i, true)
		if name, k := r.mob(i); !isPad && k > i && name != "" {
			s.Mob, i = name, k
			break
		}
		if !isPad || !p.known {
			return s, "Which paddock or mob shall I rename? For instance: rename 12 to Bottom Hill", true
		}
		s.Paddock, i = p.name, p.next
	}
	if !r.oneOf(i, "to", "as") || i+1 >= to {
		return s, "What is the new name? For instance: rename 12 to Bottom Hill", true
	}
	s.To = r.newName(i+1, to)
	return s, "", true
}

// nowCalled reads "12 is now called Bottom Hill".
func (r *reader) nowCalled(from, to int) (s entry.Setup, why string, ok bool) {
	p, isPad := r.onePad(from, true)
	if !isPad || !p.known {
		return s, "", false
	}
	for _, w := range [][]string{{"is", "now", "called"}, {"is", "called"}, {"is", "now", "named"}} {
		if k, found := r.run(p.next, w...); found && k < to {
			return entry.Setup{What: entry.SetRename, Paddock: p.name, To: r.newName(k, to)}, "", true
		}
	}
	return s, "", false
}

// newName gives a name as typed, a paddock's mark and quotes left off.
func (r *reader) newName(i, to int) string {
	if r.tok(i).tag == padMark && i+1 < to {
		i++
	}
	return strings.Trim(strings.TrimSpace(r.source(i, to)), `"'.`)
}

// mobName reads a mob's name, known or new.
func (r *reader) mobName(i int) (string, int) {
	if name, k := r.mob(i); k > i && name != "" {
		return name, k
	}
	return r.tok(i).text, i + 1
}

// setRetire takes a paddock off the farm.
//
//	retire = "retire" place
func (r *reader) setRetire(from, to int) (s entry.Setup, why string, ok bool) {
	if !r.oneOf(from, "retire") {
		return s, "", false
	}
	p, isPad := r.onePad(from+1, true)
	if !isPad || !p.known || p.next != to {
		return s, "Which paddock shall I retire? For instance: retire 12", true
	}
	return entry.Setup{What: entry.SetRetire, Paddock: p.name}, "", true
}

// setSplit makes two or more paddocks of one.
//
//	split = "split" place "into" name [ area ] { ( "," | "and" ) name [ area ] }
func (r *reader) setSplit(from, to int) (s entry.Setup, why string, ok bool) {
	if !r.oneOf(from, "split", "divide") {
		return s, "", false
	}
	const form = "Into which paddocks? For instance: split 12 into 12A 1.5 and 12B 1.4"
	p, isPad := r.onePad(from+1, true)
	if !isPad || !p.known || !r.oneOf(p.next, "into", "in", "to") {
		return s, form, isPad
	}
	s = entry.Setup{What: entry.SetSplit, Paddock: p.name}
	for i := p.next + 1; i < to; {
		k := i
		for k < to && !r.oneOf(k, ",", "and", "&", "+") && r.tok(k).shape != newline {
			k++
		}
		if k > i {
			s.Paddocks = append(s.Paddocks, r.splitPart(i, k))
		}
		i = k + 1
	}
	if len(s.Paddocks) < 2 {
		return s, form, true
	}
	return s, "", true
}

// splitPart reads one part of a split: its area only where it is told.
func (r *reader) splitPart(from, to int) entry.Plot {
	last := r.tok(to - 1)
	told := last.tag == haUnit || last.tag == acreUnit || last.decimal || last.shape == number && to-from > 1 && !last.glued && r.tok(to-2).shape == number
	if told || last.shape == number && to-from > 2 && !last.glued {
		if p, bad := r.plot(from, to); bad == "" {
			return p
		}
	}
	return entry.Plot{Name: r.newName(from, to)}
}

// setMerge makes one paddock of several, or one mob.
//
//	merge = ( "merge" | "join" ) ( places | mobs ) ( "into" | "as" ) name
func (r *reader) setMerge(from, to int) (s entry.Setup, why string, ok bool) {
	if !r.oneOf(from, "merge", "join", "combine") {
		return s, "", false
	}
	if names, k := r.mobList(from + 1); len(names) > 0 {
		s = entry.Setup{What: entry.SetMerged, Names: names}
		if !r.oneOf(k, "into", "as", "with", "to") || k+1 >= to {
			return s, "Under which name do they run together? For instance: merge heifers and dries into milkers", true
		}
		s.To, _ = r.mobName(r.over(k+1, "the"))
		return s, "", true
	}
	p, isPad := r.onePad(from+1, true)
	if !isPad || !p.known {
		return s, "", false
	}
	list, k := r.padList(p, from+1, true)
	if len(list) < 2 || !r.oneOf(k, "into", "as", "to") || k+1 >= to {
		return s, "Into what? For instance: merge 12 and 13 into Big Flat", true
	}
	s = entry.Setup{What: entry.SetMerge, To: r.newName(k+1, to), Names: knownNames(list)}
	return s, "", true
}

func knownNames(list []place) []string {
	var out []string
	for _, p := range list {
		if p.known {
			out = append(out, p.name)
		}
	}
	return out
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
	names, end := r.placesTo(k)
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

// placesTo reads a list of known paddocks.
func (r *reader) placesTo(i int) (names []string, next int) {
	p, ok := r.onePad(i, true)
	if !ok {
		return nil, i
	}
	list, k := r.padList(p, i, true)
	return knownNames(list), k
}

// setBar keeps a mob out of paddocks.
//
//	bar = "bar" mob "from" places | mob "not" "allowed" ( "in" | "on" ) places
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
		if !found {
			return s, "", false
		}
		k = k2
	}
	names, end := r.placesTo(r.over(k, "from", "in", "on", "the", "into"))
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
//	away = mob [ "are" ] ( "away" | "gone" "away" ) [ "grazing" ] | mob [ "are" ] ( "home" | "back" "home" )
func (r *reader) setAway(from, to int) (s entry.Setup, why string, ok bool) {
	name, k := r.mob(r.over(from, "the"))
	if name == "" {
		return s, "", false
	}
	k = r.over(k, "are", "have", "gone", "now", "is", "went", "all", "sent", "come", "came")
	what := entry.What("")
	switch {
	case r.oneOf(k, "away"):
		what, k = entry.SetAway, r.over(k+1, "grazing", "now", "today", "from", "the", "farm", "for", "winter", "on", "agistment", "at", "grazier")
	case r.oneOf(k, "home"), r.oneOf(k, "back") && r.oneOf(k+1, "home"):
		what, k = entry.SetBack, r.over(k, "back", "home", "now", "today", "again", "from", "grazing")
	}
	if what == "" || k != to {
		return s, "", false
	}
	return entry.Setup{What: what, Mob: name}, "", true
}

// setQuiet says whether the bot acknowledges by a reaction, and where the
// summary goes.
//
//	quiet = "quiet" [ "on" | "off" ] | "summary" "here"
func (r *reader) setQuiet(from, to int) (s entry.Setup, why string, ok bool) {
	if k, found := r.run(from, "summary", "here"); found && k == to {
		return entry.Setup{What: entry.SetTopic}, "", true
	}
	i := r.over(from, "be", "go")
	if !r.oneOf(i, "quiet") {
		return s, "", false
	}
	switch {
	case i+1 == to, r.oneOf(i+1, "on") && i+2 == to:
		return entry.Setup{What: entry.SetQuiet, Yes: true}, "", true
	case r.oneOf(i+1, "off") && i+2 == to:
		return entry.Setup{What: entry.SetQuiet}, "", true
	}
	return s, "", false
}

// setUnits chooses acres or hectares for the replies.
//
//	units = ( "use" | "units" | "show" ) [ "in" ] ( "acres" | "hectares" )
func (r *reader) setUnits(from, to int) (s entry.Setup, why string, ok bool) {
	if !r.oneOf(from, "use", "units", "unit", "show") {
		return s, "", false
	}
	i := r.over(from+1, "in", "are", "to", "areas", "me", ":")
	if i+1 != to {
		return s, "", false
	}
	switch r.tok(i).tag {
	case acreUnit:
		return entry.Setup{What: entry.SetUnits, Unit: "acres"}, "", true
	case haUnit:
		return entry.Setup{What: entry.SetUnits, Unit: "hectares"}, "", true
	}
	return s, "", false
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

// setRemnant chooses how the remnant leaf counts.
//
//	remnant = [ "count" ] "remnant" [ "as" | "is" ] "half" | [ "count" ] "remnant" "by" "size"
func (r *reader) setRemnant(from, to int) (s entry.Setup, why string, ok bool) {
	i := r.over(from, "count", "the", "set")
	if r.tok(i).tag != remnantWord {
		return s, "", false
	}
	i = r.over(i+1, "as", "is", "counts", "count", "a", "leaf", "=", ":")
	switch {
	case r.oneOf(i, "half") && r.over(i+1, "a", "leaf") == to:
		return entry.Setup{What: entry.SetRemnant, Rule: entry.RemnantHalf}, "", true
	case r.oneOf(i, "by") && r.oneOf(i+1, "size", "length") && i+2 == to:
		return entry.Setup{What: entry.SetRemnant, Rule: entry.RemnantBySize}, "", true
	}
	return s, "", false
}

// setHoldDays sets the farm's own days for a hold.
//
//	hold-days = reason ( "hold" | "holds" | "withholding" ) [ "is" ] whole "days"
func (r *reader) setHoldDays(from, to int) (s entry.Setup, why string, ok bool) {
	reasons := map[tag]entry.Reason{fertWord: entry.HoldFertiliser, effWord: entry.HoldEffluent, sprayWord: entry.HoldSpray}
	i := r.over(from, "our", "the", "set", "all")
	reason, found := reasons[r.tok(i).tag]
	if !found {
		return s, "", false
	}
	j := r.over(i+1, "hold", "holds", "withholding", "period", "days")
	if j == i+1 {
		return s, "", false
	}
	j = r.over(j, "is", "are", "for", "to", "of", "=", ":", "always", "at")
	n, k := r.whole(j)
	if k == j || r.tok(k).tag != dayUnit && r.tok(k).tag != weekUnit || k+1 != to {
		return s, "", false
	}
	n *= unitDays(r.tok(k))
	if n < 1 || n > 400 {
		return s, fmt.Sprintf("How many days does that hold last on your farm? For instance: %s hold 21 days", reason), true
	}
	return entry.Setup{What: entry.SetHoldDays, Reason: reason, Days: n}, "", true
}
