package parser

import (
	"leafround/core/entry"
)

// again reads "same again in 13": the sender's latest entries, elsewhere.
//
//	again = ( "same" [ "again" ] | "ditto" ) [ "in" | "for" ] paddocks | paddocks ( "same" [ "again" ] | "too" | "as" "well" )
func (r *reader) again(from, to int) (outcome, bool) {
	i := from
	for r.oneOf(i, "and") {
		i++
	}
	lead := r.oneOf(i, "same", "ditto", "likewise")
	if lead {
		i++
		for r.oneOf(i, "again", "in", "for", "on", "thing", "as", "here", "there", "now", "at", "with", "the", "goes", "story") {
			i++
		}
	}
	if lead && i == to {
		return outcome{ask: &entry.Ask{Reason: "The same again in which paddock?"}}, true
	}
	p, ok := r.onePad(i, lead)
	if !ok {
		return outcome{}, false
	}
	list, k := r.padList(p, i, false)
	tail := k
	for r.oneOf(tail, "same", "again", "too", "aswell", "as", "well", "also", "ditto", "likewise", "here") {
		tail++
	}
	if tail != to || !lead && tail == k {
		return outcome{}, false
	}
	return r.repeated(list)
}

// repeated gives the sender's latest entries in each of the paddocks.
func (r *reader) repeated(list []place) (outcome, bool) {
	var out []entry.Entry
	for _, one := range list {
		if !one.known {
			return outcome{ask: &entry.Ask{Reason: r.noSuch(one.name)}}, true
		}
		out = append(out, r.elsewhere(one.name)...)
	}
	if len(out) == 0 {
		return outcome{ask: &entry.Ask{Reason: "The same as what? I have nothing of yours to repeat."}}, true
	}
	r.understood = append(r.understood, "took “same again” from your last message")
	return outcome{entries: out}, true
}

// elsewhere gives the sender's latest entries, today and in another paddock.
func (r *reader) elsewhere(name string) []entry.Entry {
	var out []entry.Entry
	for _, e := range r.Last {
		switch v := e.(type) {
		case entry.Count:
			v.Paddock, v.Date = name, r.today
			out = append(out, v)
		case entry.Graze:
			v.Paddock, v.Date = name, r.today
			out = append(out, v)
		case entry.Cut:
			v.Paddock, v.Date = name, r.today
			out = append(out, v)
		case entry.Canopy:
			v.Paddock, v.Date = name, r.today
			out = append(out, v)
		case entry.Hold:
			if !v.Until.IsZero() {
				v.Until = r.today.Add(v.Until.Sub(v.Date))
			}
			v.Paddock, v.Date = name, r.today
			out = append(out, v)
		case entry.Release:
			v.Paddock, v.Date = name, r.today
			out = append(out, v)
		}
	}
	return out
}
