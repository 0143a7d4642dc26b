package parser

import (
	"fmt"
	"strings"

	"leafround/core/entry"
)

// mending reads a message that withdraws or mends what the sender logged.
//
//	mending = undo | [ "sorry" | undo "," ] correction
func (r *reader) mending(from, to int) (outcome, bool) {
	i := from
	for i > 0 && r.oneOf(i-1, "sorry", "soz", "ah", "oh", "no", ",", "-", "*") {
		i--
	}
	from = i
	i = r.apology(i)
	undo, k := r.undo(i)
	if undo {
		k = r.apology(k)
		if k >= to {
			return outcome{entries: []entry.Entry{entry.Undo{}}}, true
		}
		if j := r.over(k, ",", ".", "-", ":"); j > k {
			k = r.apology(j)
		}
		if r.oneOf(k-1, ",", ".", "-", ":", "sorry", "no") || r.hasText(k, to, "not") || r.hasText(k, to, "should") {
			if c, ok := r.correction(k, to, true); ok {
				return r.mendedWith(c), true
			}
		}
		return r.undoOf(k, to)
	}
	if undoVerbs[r.tok(i).text] {
		if o, ok := r.undoOf(i+1, to); ok {
			return o, true
		}
	}
	if t := r.tok(to - 1); t.text == "*" && t.glued {
		if m, k, ok := r.mended(i); ok && k == to-1 {
			return r.mendedWith(m.correct()), true
		}
	}
	c, ok := r.correction(i, to, i > from || r.Reply)
	if !ok {
		return outcome{}, false
	}
	return r.mendedWith(c), true
}

// mendedWith gives a correction as entry, unless its scores cannot be.
func (r *reader) mendedWith(c entry.Correct) outcome {
	top := entry.LeafStage(5.5) // one leaf above cocksfoot, where the paddock is not told
	if c.About != "" {
		top = r.book.live(c.About) + 1
	}
	for _, t := range c.ToTillers {
		if t.Stage(entry.RemnantBySize) > top {
			return outcome{ask: &entry.Ask{Reason: fmt.Sprintf("A score of %g is more leaves than that grass carries. Which scores should stand?", float64(t.Score))}}
		}
	}
	return outcome{entries: []entry.Entry{c}}
}

// hasText tells whether a word stands in a run of tokens.
func (r *reader) hasText(from, to int, w string) bool {
	for i := from; i < to; i++ {
		if r.tok(i).text == w {
			return true
		}
	}
	return false
}

// undoOf meets "undo 12" and "remove the count in 12": which entry is meant is
// not told, so it asks.
func (r *reader) undoOf(i, to int) (outcome, bool) {
	for r.oneOf(i, "the", "my", "that", "last", "count", "counts", "entry", "grazing", "spray", "hold", "score", "scores", "rain", "in", "for", "of", "from", "on", "about") {
		i++
	}
	p, ok := r.onePad(i, false)
	if i < to && (!ok || p.next != to) || i >= to && !r.hasText(0, to, "the") {
		return outcome{}, false
	}
	return outcome{ask: &entry.Ask{Reason: "I can take back your latest entry, or one that you reply to with “undo”. Your latest?",
		Options: []entry.Option{{Label: "Yes, my latest", Entries: []entry.Entry{entry.Undo{}}}}}}, true
}

// apology steps over "sorry", "oops", "my bad" and their commas.
func (r *reader) apology(i int) int {
	start := i
	sorry := false
	for {
		t := r.tok(i)
		switch {
		case t.text == "my" && r.oneOf(i+1, "bad", "mistake", "fault", "error", "apologies"):
			sorry = true
			i += 2
		case t.text == "wrong" && r.oneOf(i+1, "paddock", "pdk", "one", "number", "mob", "day", "date", "score", "scores"):
			sorry = true
			i += 2
		case t.text == "hang" && r.oneOf(i+1, "on"):
			sorry = true
			i += 2
		case apologies[t.text]:
			if r.oneOf(i, "no", "nah") && !r.oneOf(i+1, ",", "it", "its", "that", "thats", "sorry", "wait") && r.tok(i+1).shape != number && r.tok(i+1).tag != padMark {
				return i
			}
			sorry = true
			i++
		case sorry && r.oneOf(i, ",", "-", ":", ".", "!", "and", "i", "so", "it", "was", "the") && (t.shape == mark || r.announced(i)):
			i++
		default:
			if !sorry {
				return start
			}
			return i
		}
	}
}

// announced tells whether a small word behind an apology leads on to another.
func (r *reader) announced(i int) bool {
	return r.oneOf(i, "and", "so") || r.oneOf(i, "i") && apologies[r.tok(i+1).text]
}

var apologies = wordSet(`sorry soz sry oops whoops woops ops correction wait no nah actually mistake typo * nope bugger ah sori edit oh`)

var undoVerbs = wordSet(`scrap delete ignore cancel forget scratch strike remove disregard undo withdraw bin dump`)

// undo reads "undo", "scrap that", "delete the last one".
func (r *reader) undo(i int) (bool, int) {
	t := r.tok(i)
	if !undoVerbs[t.text] || t.shape != word {
		return false, i
	}
	k := i + 1
	n := 0
	for r.oneOf(k, "that", "it", "the", "last", "my", "one", "this", "entry", "message", "msg", "previous", "text", "please", "bit", "log", "count", "latest") {
		k++
		n++
	}
	if t.text == "undo" || n > 0 || r.tok(k).shape == end {
		return t.text == "undo" || n > 0, k
	}
	return false, i
}

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
				from, k2, ok = mended{field: entry.FieldTillers, text: strings.TrimSpace(r.source(k+1, k3))}, k3, true
			}
		}
		if ok && k2 == to {
			return joinMended(thing, from)
		}
		return entry.Correct{}, false
	}
	if k == to && (announced || told && r.sureTold(i, to)) {
		return thing.correct(), true
	}
	return entry.Correct{}, false
}

// sureTold tells whether an apology alone announces a correction: it must not
// be a message of its own, such as "sorry, 13".
func (r *reader) sureTold(i, to int) bool { return true }

// announces reads "should be", "make it", "i meant", "that was".
func (r *reader) announces(i int) (bool, int) {
	j := i
	for r.oneOf(j, "it", "that", "this", "they", "the", "paddock", "date", "day", "mob", "last", "one", "count", "scores", "score", "tillers", "counts", "my") && r.tok(j).shape == word {
		if r.tok(j).tag == padMark && r.tok(j+1).shape == number {
			break
		}
		j++
	}
	for _, w := range [][]string{{"should", "be"}, {"should", "have", "been"}, {"shouldve", "been"}, {"shoulda", "been"}, {"shud", "be"}, {"make", "it"}, {"make", "that"}, {"meant"}, {"i", "meant"}, {"i", "mean"}, {"should", "read"}, {"should", "say"}, {"change", "the", "mob", "to"}, {"change", "mob", "to"}, {"change", "the", "paddock", "to"}, {"change", "paddock", "to"}, {"change", "the", "date", "to"}, {"change", "date", "to"},
		{"meant", "to", "say"}, {"was", "meant", "to", "be"}, {"is", "meant", "to", "be"}, {"change", "it", "to"}, {"change", "that", "to"}, {"change", "to"}, {"needs", "to", "be"}} {
		if k, ok := r.run(j, w...); ok {
			for r.oneOf(k, "for", "for", "in", "the", "on") && !r.tok(k).glued {
				k++
			}
			return true, k
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
	either bool // a whole number that may be a score or a paddock
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
	c.From = from.text
	return c, true
}

// mended reads one value: a mob, a day, scores or a paddock.
func (r *reader) mended(i int) (mended, int, bool) {
	if r.oneOf(i, "the") {
		i++
	}
	if name, k := r.mob(i); k > i && name != "" {
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
		return mended{field: entry.FieldTillers, scores: t.said, text: strings.TrimSpace(r.source(i, k))}, k, true
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
	c := entry.Correct{Field: entry.FieldTillers, From: strings.TrimSpace(r.source(k2+1, k3)), ToTillers: t.said, About: p.name}
	if m := r.when(k3); m.ok {
		c.Day = m.day
		k3 = m.next
	}
	return c, k3 == to
}

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
