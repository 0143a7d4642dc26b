package parser

import (
	"leafround/core/entry"
)

// correction reads what should stand instead.
//
//	correction = value "not" value | "not" value [ "," ] value | ( "should" "be" | "make" "it" | "i" "meant" ) value
//	           | place "was" scores "not" scores [ day ] | "change" value "to" value
func (r *reader) correction(i, to int, told bool) (entry.Correct, bool) {
	if k := r.asksTo(i); k > i && r.oneOf(k, "make") {
		i = k
	}
	moved := false
	if c, ok := r.wroteWrong(i, to, &moved); ok {
		return c, !moved
	}
	announced, j := r.announces(i)
	if r.oneOf(j, "not") {
		from, k, ok := r.mended(j + 1)
		for r.oneOf(k, ",", "-", "its", "it", "is", "but", "should", "be", "was") {
			k++
		}
		thing, k2, ok2 := r.mended(k)
		if ok && ok2 && r.endsHere(k2, to) {
			return joinMended(thing, from)
		}
		return entry.Correct{}, false
	}
	if c, ok := r.aboutCorrection(j, to); ok {
		return c, true
	}
	if k := r.asksTo(j); changeVerbs[r.tok(k).text] {
		s := r.subject(k + 1)
		if thing, end, ok := r.mended(r.over(s, "to", "be", "read", "say")); ok && s > k+1 && r.oneOf(s, "to") && r.endsHere(end, to) {
			return thing.correct(), true
		}
		if k := r.over(s, ",", ":", "-", "to", "it"); s > k-3 && s > r.asksTo(j)+1 && r.oneOf(s, ",", ":", "-") {
			return r.correction(k, to, told)
		}
		from, k, ok := r.mended(k + 1)
		if ok && r.oneOf(k, "to", "for") {
			if thing, k2, ok := r.mended(k + 1); ok && r.endsHere(k2, to) {
				return joinMended(thing, from)
			}
		}
		return entry.Correct{}, false
	}
	thing, k, ok := r.mended(j)
	if !ok {
		return entry.Correct{}, false
	}
	if n, ok := r.run(k, "i", "was", "in"); ok && thing.field == entry.FieldPaddock {
		k = n // "that was road 1 I was in, not road 2"
	}
	if from, ok := r.putInstead(k, to); ok {
		return joinMended(thing, from)
	}
	end := k
	for r.oneOf(k, ",", "and") {
		k++
	}
	if r.oneOf(k, "not") && k < to {
		from, k2, ok := r.mended(k + 1)
		if p, is := r.onePad(k+1, true); !ok && is && thing.field == entry.FieldPaddock && r.tok(k+1).shape == number && (r.tok(j).tag == padMark || r.tok(j).text == "#") {
			from, k2, ok = mended{field: entry.FieldPaddock, name: p.name, text: p.name}, p.next, p.known // "p14 not 4"
		}
		if thing.field == entry.FieldTillers {
			if t, k3 := r.scores(k + 1); len(t.said) > 0 {
				from, k2, ok = mended{field: entry.FieldTillers, scores: plainScores(t.said)}, k3, true
			}
		}
		if ok && r.endsHere(k2, to) {
			return joinMended(thing, from)
		}
		return entry.Correct{}, false
	}
	if (announced || told) && (end == to || announced && r.endsHere(end, to)) {
		return thing.correct(), true
	}
	return entry.Correct{}, false
}

// changeVerbs ask that an entry be made another.
var changeVerbs = wordSet(`change swap switch amend alter edit update correct fix`)

// namesPad tells whether a known paddock is named at i.
func (r *reader) namesPad(i int) bool {
	p, ok := r.onePad(i, false)
	return ok && p.known
}

// subject steps over what is to be mended: "the date on that one", "my last
// count".
func (r *reader) subject(i int) int {
	j := i
	for {
		switch {
		case r.tok(j).shape != word && !r.oneOf(j, "i"):
			return j
		case r.oneOf(j, "it", "that", "this", "they", "the", "date", "day", "mob", "last", "one", "count", "scores", "score", "tillers", "counts", "my", "latest", "previous", "entry", "message", "msg", "text"):
		case r.oneOf(j, "paddock", "before"):
			if r.namesPad(j) {
				return j
			}
		case r.oneOf(j, "move", "shift", "grazing", "graze", "spray", "cut", "hold", "feed", "lot") && j > i && r.oneOf(j-1, "last", "that", "my", "previous", "latest"):
		case j > i && r.oneOf(j, "of") && r.oneOf(j+1, "mine", "ours"):
			j++
		case j > i && r.ofThat(j) > j && r.tok(j).text != ",":
			j = r.ofThat(j)
			continue
		case r.oneOf(j, "i") && r.oneOf(j+1, "should", "shouldve", "meant"):
		default:
			return j
		}
		j++
	}
}

// pointsBack tells whether a subject speaks of what the sender logged last: "my
// last message", "the last move".
func (r *reader) pointsBack(i, j int) bool {
	i = r.over(i, "the", "my")
	return r.oneOf(i, "last", "latest", "previous") && j > i+1 && r.oneOf(j-1, "one", "count", "entry", "message", "msg", "text", "move", "shift")
}

// announces reads "should be", "make it", "i meant", "that was".
func (r *reader) announces(i int) (bool, int) {
	j := r.subject(i)
	for _, w := range [][]string{{"should", "be"}, {"should", "have", "been"}, {"shouldve", "been"}, {"should", "have", "said"}, {"shouldve", "said"}, {"should", "of", "said"}, {"should", "have", "read"}, {"should", "have", "written"}, {"should", "have", "wrote"}, {"should", "of", "been"}, {"meant", "to", "write"}, {"meant", "to", "type"}, {"was", "meant", "to", "say"}, {"shoulda", "been"}, {"shud", "be"}, {"make", "it"}, {"make", "that"}, {"meant", "to", "say"}, {"was", "meant", "for"}, {"meant"}, {"i", "meant"}, {"i", "mean"}, {"should", "read"}, {"should", "say"}, {"change", "the", "mob", "to"}, {"change", "mob", "to"}, {"change", "the", "paddock", "to"}, {"change", "paddock", "to"}, {"change", "the", "date", "to"}, {"change", "date", "to"},
		{"was", "meant", "to", "be"}, {"is", "meant", "to", "be"}, {"change", "it", "to"}, {"change", "that", "to"}, {"change", "to"}, {"needs", "to", "be"}} {
		if k, ok := r.run(j, w...); ok {
			if r.oneOf(k-2, "make") && r.oneOf(k-1, "that") {
				k = r.over(k, "last", "one", "count", "move", "entry")
			}
			for r.oneOf(k, "for", "from", "in", "the", "on") && !r.tok(k).glued {
				k++
			}
			return true, k
		}
	}
	for _, w := range [][]string{{"supposed", "to", "be"}, {"meant", "to", "be"}} {
		if k, ok := r.run(r.over(j, "was", "is"), w...); ok {
			return false, k // a correction behind an apology alone
		}
	}
	if j > i && r.oneOf(j, "was", "is", "were") {
		k := r.over(j+1, "the", "in", "from", "for", "actually", "really", "meant", "to", "be")
		_, _, ok := r.mended(k)
		said := r.oneOf(i, "that", "it", "they") || r.pointsBack(i, j)
		return ok && r.oneOf(j, "was", "were") && said, r.over(j+1, "from", "for", "actually", "really")
	}
	if r.oneOf(i, "its", "thats", "that", "was", "were", "is") {
		return false, i + 1
	}
	return false, i
}

// mended is one value of a correction.
type mended struct {
	field  entry.Field
	name   string
	text   string
	date   entry.Date
	scores []entry.Tiller
}

func (m mended) correct() entry.Correct {
	c := entry.Correct{Field: m.field}
	switch m.field {
	case entry.FieldDate:
		c.ToDate = m.date
	case entry.FieldTillers:
		c.ToTillers = m.scores
	default:
		c.ToName = m.name
	}
	return c
}

// joinMended gives the correction from one value to another of its kind.
func joinMended(to, from mended) (entry.Correct, bool) {
	if to.field != from.field {
		return entry.Correct{}, false
	}
	c := to.correct()
	c.From, c.FromTillers = from.text, plainScores(from.scores)
	return c, true
}

// mended reads one value: a mob, a day, scores or a paddock.
func (r *reader) mended(i int) (mended, int, bool) {
	if r.oneOf(i, "the") {
		i++
	}
	if name, k := r.mobAlone(i); k > i && name != "" {
		return mended{field: entry.FieldMob, name: name, text: name}, k, true
	}
	if m := r.when(i); m.ok {
		return mended{field: entry.FieldDate, date: m.day, text: m.day.String()}, m.next, true
	}
	if r.oneOf(i, "in", "on", "for") {
		i++
	}
	p, isPad := r.onePad(i, true)
	p.marked = p.marked || isPad && r.subjectIs(i, "paddock")
	if isPad && (p.marked || r.tok(i).shape == word || !r.manyScores(i)) && p.known && (p.next > i+1 || r.tok(i).shape == word || r.tok(i).value > 4 || p.marked) {
		return mended{field: entry.FieldPaddock, name: p.name, text: p.name}, p.next, true
	}
	t, k := r.scores(i)
	if len(t.said) > 0 && t.doubt == "" && (len(t.said) > 1 || t.decimal || t.parts) {
		return mended{field: entry.FieldTillers, scores: t.said}, k, true
	}
	return mended{}, i, false
}

// subjectIs tells whether what should be mended was called by a word before the
// "should be" or "to" at i: "paddock should be 3".
func (r *reader) subjectIs(i int, w string) bool {
	for k := max(0, i-8); k < i-1; k++ {
		if r.oneOf(k, w) && !r.namesPad(k) {
			return r.oneOf(i-1, "be", "to", "been", "say", "read")
		}
	}
	return false
}

// manyScores tells whether two scores or more stand at i.
func (r *reader) manyScores(i int) bool {
	t, _ := r.lookAtScores(i)
	for _, s := range t.said {
		if s.Score > 5 && s.Score == entry.LeafStage(int(s.Score)) {
			return false // a paddock's number is whole
		}
	}
	return len(t.said) > 1 || t.decimal
}

// shouldBe reads "12 should be 13", "12 was meant to be 13" and "12 should be 2 2.5 3".
func (r *reader) shouldBe(i, to int) (entry.Correct, bool) {
	p, ok := r.onePad(i, true)
	if !ok || !p.known {
		return entry.Correct{}, false
	}
	k := p.next + 1
	switch {
	case r.oneOf(p.next, "should", "shouldve"):
	case r.oneOf(p.next, "was", "is", "were") && r.oneOf(k, "supposed", "sposed", "meant") && r.oneOf(k+1, "to") && r.oneOf(k+2, "be", "say", "read"):
		k += 2 // "6 was supposed to be 9"
	default:
		return entry.Correct{}, false
	}
	for r.oneOf(k, "be", "read", "say", "have", "been") {
		k++
	}
	m, end, ok := r.mended(k)
	if !ok || end != to || m.field != entry.FieldPaddock && m.field != entry.FieldTillers || k == p.next+1 {
		return entry.Correct{}, false
	}
	c := m.correct()
	if m.field == entry.FieldPaddock {
		c.From = p.name
	} else {
		c.About = p.name
	}
	return c, true
}

// aboutCorrection reads "p12 was 2 not 3 on mon".
func (r *reader) aboutCorrection(i, to int) (entry.Correct, bool) {
	if c, ok := r.shouldBe(i, to); ok {
		return c, true
	}
	p, ok := r.onePad(i, true)
	if !ok || !r.oneOf(p.next, "was", "is", "should", "were") || !p.known {
		return entry.Correct{}, false
	}
	k := p.next + 1
	if r.oneOf(k, "be") {
		k++
	}
	t, k2 := r.scores(k)
	k2 = r.over(k2, ",")
	if len(t.said) == 0 || t.doubt != "" || !r.oneOf(k2, "not") {
		return entry.Correct{}, false
	}
	f, k3 := r.scores(k2 + 1)
	if len(f.said) == 0 {
		return entry.Correct{}, false
	}
	c := entry.Correct{Field: entry.FieldTillers, FromTillers: plainScores(f.said), ToTillers: t.said, About: p.name}
	if m := r.when(k3); m.ok {
		c.Day = m.day
		k3 = m.next
	}
	return c, k3 == to
}

// plainScores gives each tiller by its leaf stage alone: what was wrong needs no
// more.
func plainScores(said []entry.Tiller) []entry.Tiller {
	var out []entry.Tiller
	for _, t := range said {
		out = append(out, entry.Tiller{Score: t.Stage(entry.RemnantBySize)})
	}
	return out
}
