package parser

import (
	"leafround/core/entry"
)

// correction reads what should stand instead.
//
//	correction = value "not" value | "not" value [ "," ] value | ( "should" "be" | "make" "it" | "i" "meant" ) value
//	           | place "was" scores "not" scores [ day ] | "change" value "to" value
func (r *reader) correction(i, to int, told bool) (entry.Correct, bool) {
	announced, j := r.announces(i)
	if r.oneOf(j, "not") {
		from, k, ok := r.mended(j + 1)
		for r.oneOf(k, ",", "-", "its", "it", "is", "but", "should", "be", "was") {
			k++
		}
		thing, k2, ok2 := r.mended(k)
		if ok && ok2 && k2 == to {
			return joinMended(thing, from)
		}
		return entry.Correct{}, false
	}
	if c, ok := r.aboutCorrection(j, to); ok {
		return c, true
	}
	if r.oneOf(j, "change", "swap") {
		from, k, ok := r.mended(j + 1)
		if ok && r.oneOf(k, "to", "for") {
			if thing, k2, ok := r.mended(k + 1); ok && k2 == to {
				return joinMended(thing, from)
			}
		}
		return entry.Correct{}, false
	}
	thing, k, ok := r.mended(j)
	if !ok {
		return entry.Correct{}, false
	}
	for r.oneOf(k, ",", "and") {
		k++
	}
	if r.oneOf(k, "not") && k < to {
		from, k2, ok := r.mended(k + 1)
		if thing.field == entry.FieldTillers {
			if t, k3 := r.scores(k + 1); len(t.said) > 0 {
				from, k2, ok = mended{field: entry.FieldTillers, scores: plainScores(t.said)}, k3, true
			}
		}
		if ok && k2 == to {
			return joinMended(thing, from)
		}
		return entry.Correct{}, false
	}
	if k == to && (announced || told) {
		return thing.correct(), true
	}
	return entry.Correct{}, false
}

// namesPad tells whether a known paddock is named at i.
func (r *reader) namesPad(i int) bool {
	p, ok := r.onePad(i, false)
	return ok && p.known
}

// announces reads "should be", "make it", "i meant", "that was".
func (r *reader) announces(i int) (bool, int) {
	j := i
	for r.oneOf(j, "it", "that", "this", "they", "the", "paddock", "date", "day", "mob", "last", "one", "count", "scores", "score", "tillers", "counts", "my") && r.tok(j).shape == word || r.oneOf(j, "i") && r.oneOf(j+1, "should", "shouldve", "meant") {
		if r.tok(j).tag == padMark && r.namesPad(j) {
			break
		}
		j++
	}
	for _, w := range [][]string{{"should", "be"}, {"should", "have", "been"}, {"shouldve", "been"}, {"should", "have", "said"}, {"shouldve", "said"}, {"should", "of", "said"}, {"should", "have", "read"}, {"should", "have", "written"}, {"should", "have", "wrote"}, {"should", "of", "been"}, {"meant", "to", "write"}, {"meant", "to", "type"}, {"was", "meant", "to", "say"}, {"shoulda", "been"}, {"shud", "be"}, {"make", "it"}, {"make", "that"}, {"meant"}, {"i", "meant"}, {"i", "mean"}, {"should", "read"}, {"should", "say"}, {"change", "the", "mob", "to"}, {"change", "mob", "to"}, {"change", "the", "paddock", "to"}, {"change", "paddock", "to"}, {"change", "the", "date", "to"}, {"change", "date", "to"},
		{"meant", "to", "say"}, {"was", "meant", "to", "be"}, {"is", "meant", "to", "be"}, {"change", "it", "to"}, {"change", "that", "to"}, {"change", "to"}, {"needs", "to", "be"}} {
		if k, ok := r.run(j, w...); ok {
			for r.oneOf(k, "for", "for", "in", "the", "on") && !r.tok(k).glued {
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
		k := j + 1
		for r.oneOf(k, "the", "in") {
			k++
		}
		_, _, ok := r.mended(k)
		return ok && r.oneOf(j, "was", "were") && r.oneOf(i, "that", "it", "they"), j + 1
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
	if isPad && (p.marked || r.tok(i).shape == word || !r.manyScores(i)) && p.known && (p.next > i+1 || r.tok(i).shape == word || r.tok(i).value > 4 || p.marked) {
		return mended{field: entry.FieldPaddock, name: p.name, text: p.name}, p.next, true
	}
	t, k := r.scores(i)
	if len(t.said) > 0 && t.doubt == "" && (len(t.said) > 1 || t.decimal || t.parts) {
		return mended{field: entry.FieldTillers, scores: t.said}, k, true
	}
	return mended{}, i, false
}

// manyScores tells whether two scores or more stand at i.
func (r *reader) manyScores(i int) bool {
	t, _ := r.scores(i)
	for _, s := range t.said {
		if s.Score > 5 {
			return false
		}
	}
	return len(t.said) > 1 || t.decimal
}

// shouldBe reads "12 should be 13" and "12 should be 2 2.5 3".
func (r *reader) shouldBe(i, to int) (entry.Correct, bool) {
	p, ok := r.onePad(i, true)
	if !ok || !p.known || !r.oneOf(p.next, "should", "shouldve") {
		return entry.Correct{}, false
	}
	k := p.next + 1
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
