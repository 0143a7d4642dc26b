package parser

import (
	"fmt"
	"slices"
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
	if s.To = r.newName(i+1, to); s.To == "" {
		return s, "What is the new name? For instance: rename 12 to Bottom Hill", true
	}
	return s, "", true
}

// nowCalled reads "12 is now called Bottom Hill".
func (r *reader) nowCalled(from, to int) (s entry.Setup, why string, ok bool) {
	p, isPad := r.onePad(from, true)
	if !isPad || !p.known {
		return s, "", false
	}
	for _, w := range [][]string{{"is", "now", "called"}, {"is", "called"}, {"is", "now", "named"}} {
		if k, found := r.run(p.next, w...); found && k < to && r.newName(k, to) != "" {
			return entry.Setup{What: entry.SetRename, Paddock: p.name, To: r.newName(k, to)}, "", true
		}
	}
	return s, "", false
}

// newName gives a name as typed, a paddock's mark, quotes and courtesy left off;
// "" where nothing but courtesy stands there.
func (r *reader) newName(i, to int) string {
	for i+1 < to && (r.tok(i).tag == padMark || r.tok(i).shape == mark) {
		i++
	}
	for to-1 > i && (r.tok(to-1).shape == mark || r.tok(to-1).shape == word && r.tok(to-1).tag == courtesy) {
		to--
	}
	if t := r.tok(i); to-i == 1 && t.shape == word && t.tag == courtesy {
		return ""
	}
	return r.source(i, to)
}

// setRetire takes a paddock off the farm.
//
//	retire = "retire" place
func (r *reader) setRetire(from, to int) (s entry.Setup, why string, ok bool) {
	removed := r.oneOf(from, "remove", "drop") && r.tok(from+1).tag == padMark
	if !r.oneOf(from, "retire") && !removed {
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
			part := r.splitPart(i, k)
			if !partName(part.Name) {
				return s, form, true
			}
			s.Paddocks = append(s.Paddocks, part)
		}
		i = k + 1
	}
	if len(s.Paddocks) < 2 {
		return s, form, true
	}
	return s, "", true
}

// partName tells whether a part of a split can bear a name: what joins parts and
// what ends a sentence stands in none.
func partName(name string) bool {
	return entry.FoldName(name) != "" && !strings.ContainsAny(name, "!?,;:") && !slices.ContainsFunc(strings.Fields(strings.ToLower(name)), func(w string) bool {
		return strings.Trim(w, ".-'") == "an"
	})
}

// splitPart reads one part of a split: its area only where it is told.
func (r *reader) splitPart(from, to int) entry.Plot {
	for to-from > 1 && r.tok(to-1).shape == mark {
		to--
	}
	last := r.tok(to - 1)
	told := last.tag == haUnit || last.tag == acreUnit || last.decimal || last.shape == number && to-from > 1 && !last.glued && r.tok(to-2).shape == number
	if told || last.shape == number && to-from > 2 && !last.glued {
		if p, _, bad := r.plot(from, to); bad == "" {
			return p
		}
	}
	return entry.Plot{Name: r.newName(from, to)}
}

// setMerge makes one paddock of several, or one mob.
//
//	merge = ( "merge" | "join" ) ( places | mobs ) ( "into" | "as" ) name
func (r *reader) setMerge(from, to int) (s entry.Setup, why string, ok bool) {
	if names, k := r.mobList(from); len(names) > 1 {
		j := r.over(k, "run", "running", "are", "now", "go")
		if !r.oneOf(j, "together") || !r.oneOf(j+1, "as") || j+2 >= to {
			return s, "", false
		}
		s = entry.Setup{What: entry.SetMerged, Names: names}
		s.To, _ = r.mobName(r.over(j+2, "the"))
		return s, "", hasLetter(s.To) && !illWords[s.To] && !hurtWords[s.To]
	}
	if !r.oneOf(from, "merge", "join", "combine") {
		return s, "", false
	}
	if names, k := r.mobList(from + 1); len(names) > 0 {
		s = entry.Setup{What: entry.SetMerged, Names: names}
		if !r.oneOf(k, "into", "as", "with", "to") || k+1 >= to {
			return s, "Under which name do they run together? For instance: merge heifers and dries into milkers", true
		}
		s.To, _ = r.mobName(r.over(k+1, "the"))
		if !hasLetter(s.To) || illWords[s.To] || hurtWords[s.To] {
			return s, "Under which name do they run together? For instance: merge heifers and dries into milkers", true
		}
		return s, "", true
	}
	p, isPad := r.onePad(from+1, true)
	if !isPad || !p.known {
		return s, "", false
	}
	list, k := r.padList(p, from+1, true)
	if bad := unknownOf(list); bad != "" {
		return s, r.noSuch(bad), true
	}
	if len(list) < 2 || !r.oneOf(k, "into", "as", "to") || k+1 >= to {
		return s, "Into what? For instance: merge 12 and 13 into Big Flat", true
	}
	s = entry.Setup{What: entry.SetMerge, To: r.newName(k+1, to), Names: knownNames(list)}
	if s.To == "" {
		return s, "Into what? For instance: merge 12 and 13 into Big Flat", true
	}
	return s, "", true
}

// hasLetter tells whether a name holds a letter or a digit.
func hasLetter(s string) bool { return foldOf(s) != "" }

// unknownOf gives the first paddock of a list that nobody knows, "" where all are
// known.
func unknownOf(list []place) string {
	for _, p := range list {
		if !p.known {
			return p.name
		}
	}
	return ""
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

// setQuiet says whether the bot acknowledges by a reaction, and where the
// summary goes.
//
//	quiet = "quiet" [ "on" | "off" ] | "summary" "here"
func (r *reader) setQuiet(from, to int) (s entry.Setup, why string, ok bool) {
	if k, found := r.run(r.over(from, "send", "put", "the", "daily", "morning"), "summary", "here"); found && k == to {
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
