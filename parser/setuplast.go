package parser

import "leafround/core/entry"

// manySetups reads settings of one kind told in a row.
func (r *reader) manySetups(from, to int) (outcome, bool) {
	if o, ok := r.lastGrazed(from, to); ok {
		return o, true
	}
	return r.mobsList(from, to)
}

// lastGrazed reads when paddocks were last grazed, before the log begins.
//
//	last-grazed = [ "last" "grazed" ":" ] { places [ "was" ] [ "last" "grazed" ] [ "on" ] day [ "," | "and" ] }
func (r *reader) lastGrazed(from, to int) (outcome, bool) {
	i, headed := from, false
	if k, ok := r.run(from, "last", "grazed"); ok {
		i, headed = r.over(k, ":", "-"), true
		if i == k {
			return outcome{}, false // "last grazed 12"
		}
	}
	var out outcome
	for i < to {
		p, ok := r.onePad(i, true)
		if !ok {
			return outcome{}, false
		}
		list, k := r.padList(p, i, true)
		k = r.over(k, "was", "were", "got", ":", "-")
		if j, said := r.run(k, "last", "grazed"); said {
			k = j
		} else if j, said := r.run(k, "last", "eaten"); said {
			k = j
		} else if !headed {
			return outcome{}, false
		}
		m := r.when(k)
		if !m.ok {
			out.ask = &entry.Ask{Reason: "On which day was it last grazed?"}
			return out, true
		}
		r.addLast(&out, list, m.day)
		i = r.over(m.next, ",", "and", "&", ";")
		if i == m.next && i < to {
			return outcome{}, false
		}
	}
	return out, len(out.entries) > 0 || out.ask != nil
}

// addLast adds a last grazing for each paddock of a list.
func (r *reader) addLast(out *outcome, list []place, day entry.Date) {
	for _, p := range list {
		switch {
		case !p.known:
			out.ask = &entry.Ask{Reason: r.noSuch(p.name)}
		case p.either != "":
			out.ask = &entry.Ask{Reason: "Is that " + p.name + ", or " + p.either + "?"}
		case day > r.today:
			out.ask = &entry.Ask{Reason: "That day has not come yet. On which day was it last grazed?"}
		}
		out.entries = append(out.entries, entry.Setup{What: entry.SetLastGrazed, Paddock: p.name, Date: day})
	}
}

// mobsList reads several mobs with their heads.
//
//	mobs = "mobs" [ ":" ] { mob whole [ "head" ] [ "," | "and" ] }
func (r *reader) mobsList(from, to int) (outcome, bool) {
	if !r.oneOf(from, "mobs", "herds") {
		return outcome{}, false
	}
	var out outcome
	for i := r.over(from+1, ":", "-"); i < to; {
		name, k := r.mob(i)
		if k == i || name == "" {
			return outcome{}, false
		}
		s := entry.Setup{What: entry.SetMob, Mob: name}
		if n, j := r.whole(r.over(k, ":", "=", "-")); j > r.over(k, ":", "=", "-") && n > 0 {
			s.Head, k = n, r.over(j, "head", "hd", "cows")
		}
		out.entries = append(out.entries, s)
		i = r.over(k, ",", "and", "&", ";")
		if i == k && i < to {
			return outcome{}, false
		}
	}
	return out, len(out.entries) > 0
}

// setManager makes somebody a manager, or no longer.
//
//	manager = name "is" [ "now" ] [ "no" "longer" | "not" ] [ "a" | "the" ] "manager"
func (r *reader) setManager(from, to int) (s entry.Setup, why string, ok bool) {
	if r.tok(to-1).text != "manager" || to-from < 3 || to-from > 7 || r.oneOf(from, "who", "whos", "is", "which", "what") {
		return s, "", false
	}
	k := from
	for k < to && !r.oneOf(k, "is", "isnt") {
		k++
	}
	if k == from || k-from > 2 {
		return s, "", false
	}
	s = entry.Setup{What: entry.SetManager, Name: r.source(from, k), Off: r.oneOf(k, "isnt")}
	i := r.over(k+1, "now")
	if j, no := r.run(i, "no", "longer"); no {
		s.Off, i = true, j
	} else if r.oneOf(i, "not") {
		s.Off, i = true, i+1
	}
	i = r.over(i, "a", "the", "our", "also")
	return s, "", i == to-1
}
