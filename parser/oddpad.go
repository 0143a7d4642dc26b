package parser

import "leafround/core/entry"

// A number behind a move may be the hour, or so many of the animals: "heifers
// into 12 just after 8", "heifers into 12, 8 of them lame", "12 8 this morning".
// Stock go into a second paddock only where it is joined to the first.

// oddPad gives what to ask of a bare number among the paddocks of a move that may
// be something else.
func (r *reader) oddPad(c *clause) string {
	if why := r.headOut(c); why != "" {
		return why
	}
	for n := 1; n < len(c.pads); n++ {
		p := c.pads[n]
		t := r.tok(p.at)
		if u := r.tok(p.next); r.anyPaddock && !p.marked && t.shape == word && t.tag == unknown && !placeWords[t.text] && r.tok(p.at-1).text == "," && u.shape == word && u.tag != andWord {
			return "Is “" + p.name + "” a paddock too?" // "heifers into 12, vet monday"
		}
		if p.marked || t.shape != word && t.shape != number || t.shape == word && t.tag != numberWord || t.value > 60 || p.next > p.at+1 {
			continue
		}
		if r.inAndOutHours(c.pads[n:]) {
			return "Are the " + p.name + " and the " + c.pads[n+1].name + " paddocks or hours? Please send “p" + p.name + "” for the paddock, “" + p.name + " o'clock” for the hour."
		}
		if role := c.pads[n-1].role; p.role == roleOut && role != roleOut || len(c.mobs) == 0 && c.head == 0 && !c.stock {
			continue
		}
		if r.oddBefore(p.at) || r.oddBehind(p) {
			return "Is the " + r.source(p.at, p.next) + " there a paddock, the hour, or how many? Please send “p" + p.name + "” for the paddock."
		}
	}
	return ""
}

// headOut asks of "took 12 out of 13", where 12 animals may have come out of 13, and
// of "heifers out back", where no paddock may be meant.
func (r *reader) headOut(c *clause) string {
	for n, p := range c.pads {
		t := r.tok(p.at)
		if b := r.over(p.at-1, "the"); p.role == roleOut && !p.marked && r.oneOf(p.at, "back", "front") && p.next == p.at+1 && r.tok(b).tag != ofWord && (r.oneOf(p.at-1, "out") || r.oneOf(p.at-1, "the") && r.oneOf(p.at-2, "out")) {
			return "Are they out of the paddock " + p.name + ", in it, or just out there? Please say “out of " + p.name + "” or “in " + p.name + "”."
		}
		if n+1 == len(c.pads) || len(c.mobs) > 0 || p.marked || t.shape != number || p.next != p.at+1 || r.tok(p.next).tag != outWord || r.tok(p.next+1).tag != ofWord {
			continue
		}
		if r.oneOf(p.at-1, "took", "taken", "moved", "pulled", "got", "drafted", "shifted", "brought", "ran", "run", "put", "let", "take") {
			return "Did " + p.name + " animals come out of " + c.pads[n+1].name + ", or stock out of both paddocks? Please say, such as: " + p.name + " heifers out of " + c.pads[n+1].name
		}
	}
	return ""
}

// inAndOutHours tells whether two paddocks behind another may be the hours at which
// stock went in and came out: "heifers 5 in 9 out 3".
func (r *reader) inAndOutHours(list []place) bool {
	if len(list) < 2 || r.tok(list[0].at-1).tag != inWord || r.tok(list[1].at-1).tag != outWord {
		return false
	}
	for _, p := range list[:2] {
		if t := r.tok(p.at); p.marked || t.shape != number || t.value > 12 || p.next > p.at+1 {
			return false
		}
	}
	return true
}

// oddBefore tells whether a word of time or of number stands before a number.
func (r *reader) oddBefore(i int) bool {
	b := r.tok(i - 1)
	if b.shape == number {
		u := r.tok(i + 1)
		return r.tok(i).value <= 12 && (u.tag == thisWord || u.tag == daytimeWord || u.tag == todayWord || u.tag == yesterdayWord)
	}
	if b.shape != word {
		return false
	}
	switch b.tag {
	case nearWord, hedgeWord, onlyWord, allWord, untilWord, sinceWord, partWord:
		return true
	}
	return r.oneOf(i-1, "after", "before", "just", "gone", "half", "another", "some", "like", "maybe", "say")
}

// oddBehind tells whether what stands behind a number counts animals.
func (r *reader) oddBehind(p place) bool {
	i := p.next
	if r.tok(i).tag == ofWord {
		return r.oneOf(i+1, "them", "em", "us", "those", "these", "which", "whom")
	}
	if r.tok(i).tag == outWord && r.tok(i+1).tag == ofWord && r.tok(i+2).shape == number {
		return r.tok(p.at-1).text == "," && r.tok(i+2).value > r.tok(p.at).value // "8 out of 10"
	}
	return r.joins(p.at-1) && r.oneOf(i, "short", "lame", "strong", "big", "small", "light", "extra", "new", "old", "young", "thin", "sick", "black", "red", "white", "spare", "over", "less", "fewer", "late", "ish", "head", "quiet", "wild", "fat")
}

// leftToDo asks of "12 grazed, 3 left": stock left 3, or three are left to do.
func (r *reader) leftToDo(c *clause) string {
	if !c.has(actPlace) || c.resid != nil || len(c.pads) == 0 || len(c.mobs) > 0 {
		return ""
	}
	p := c.pads[len(c.pads)-1]
	if len(c.pads) > 1 && r.tok(p.at-1).tag == leftWord && !p.marked && r.tok(p.at).shape == number && p.next == p.at+1 {
		return howMuchLeft(p.name) // "7 grazed left 6"
	}
	n := r.tok(p.next + 1)
	if t := r.tok(p.at); !p.marked && t.shape == number && p.next == p.at+1 && r.tok(p.next).tag == leftWord && p.at > 0 && r.joins(p.at-1) && (n.shape == end || n.shape == mark || n.shape == newline) {
		return "Did stock leave " + p.name + ", or are so many left to do?"
	}
	return ""
}

// leftHowMuch asks of "7 done, left 6": stock left paddock 6, or they left 6 of
// something in 7.
func (r *reader) leftHowMuch(last, c *clause) {
	if c.acts != actPlace || c.resid != nil || len(c.pads) != 1 || len(c.mobs) > 0 || c.sentence != last.sentence || last.family() != famGraze || last.resid != nil {
		return
	}
	p := c.pads[0]
	if t := r.tok(p.at); t.shape == number && !p.marked && p.next == p.at+1 && p.next == c.to && r.tok(p.at-1).tag == leftWord {
		c.unsure(howMuchLeft(p.name))
	}
}

func howMuchLeft(name string) string {
	return "Did stock leave paddock " + name + ", or is that how much they left? Please send “p" + name + "” for the paddock, or the unit, such as: left 6 cm"
}

// outBeforeIn tells whether stock that are told to go in come out of the same
// paddock on an earlier day: "heifers into 12 wed, back out fri" on a Wednesday.
func outBeforeIn(list []entry.Entry) bool {
	for n := range list {
		in, ok := list[n].(entry.Graze)
		if !ok || in.Event != entry.In {
			continue
		}
		for _, e := range list[n+1:] {
			if out, ok := e.(entry.Graze); ok && out.Event == entry.Out && out.Paddock == in.Paddock && out.Mob == in.Mob && out.Date < in.Date {
				return true
			}
		}
	}
	return false
}
