package parser

import (
	"fmt"
	"slices"

	"leafround/core/entry"
)

// tally is what a list of scores says, before the farm's rule is laid on it.
type tally struct {
	said      []entry.Tiller
	skipped   entry.Skipped
	n         int    // tillers behind it, or the number announced
	garbled   bool   // digits that make no number stood in it
	yellow    int    // tillers told to be yellowing; -1: told of the paddock; everyTiller: of each
	parts     bool   // some score was told in parts
	decimal   bool   // some score was no whole number
	marked    bool   // single scores were marked as yellowing
	each      bool   // the number of tillers is that of each paddock named
	doubt     string // what must be asked
	multiples bool   // some were told by how many had a score
	looked    bool   // nobody will ask it: the list is only looked at
}

// empty tells whether nothing was pulled.
func (t *tally) empty() bool {
	return len(t.said) == 0 && t.skipped.Total() == 0 && !t.garbled
}

func (t *tally) unsure(format string, args ...any) {
	switch {
	case t.doubt != "":
	case t.looked:
		t.doubt = format
	default:
		t.doubt = fmt.Sprintf(format, args...)
	}
}

// mostReads is how often scores are looked at in one message, which is asked to
// come in parts beyond that (ours): a walk as long as a message can be takes
// some 2,800 looks.
const mostReads = 4000

// mostTillers is the longest list of scores that is taken for one count (ours).
const mostTillers = 100

// scores reads a list of scores; next is i where there is none.
//
//	scores = item { [ "," | ";" | "and" | "/" ] item }
//	item   = tiller [ "x" whole ] | aside
func (r *reader) scores(i int) (t tally, next int) {
	next = r.borrowed(&t, i)
	t.said = slices.Clone(t.said)
	return t, next
}

// lookAtScores reads a list of scores whose doubt nobody will ask: it is gone
// with the next one that is read.
func (r *reader) lookAtScores(i int) (t tally, next int) {
	t.looked = true
	next = r.borrowed(&t, i)
	return t, next
}

// borrowed reads a list of scores into what every list is read into.
func (r *reader) borrowed(t *tally, i int) (next int) {
	t.said = r.seen[:0]
	r.seen = nil // a list looked at inside this one has a place of its own
	next = r.scoresInto(t, i)
	r.seen = t.said
	return next
}

// kept gives the list to keep.
func (t tally) kept() *tally { return &t }

func (r *reader) scoresInto(t *tally, i int) (next int) {
	if r.tillers > mostReads {
		return i
	}
	r.commas = r.commaUse(i)
	if r.commas == commaUnclear {
		t.unsure("Is the comma a decimal comma or between two scores? Please send it with points and spaces.")
	}
	next = i
	for {
		if len(t.said)+t.skipped.Total() > mostTillers {
			t.unsure("That is more than %d tillers. Please send them in parts.", mostTillers)
			r.commas = commaList
			return next
		}
		if next > i && r.tok(next).text == "," && r.tok(next+1).text == "," && r.tok(next+2).shape == number {
			t.unsure("What stands between the two commas? Please send the scores again with spaces.") // "2.5 2,,5 3"
		}
		j := r.listSeparator(next, next > i)
		if j > next && r.padOrScore(next, j) {
			t.unsure("Is the %s a paddock or a score? Please send each paddock on a line of its own, or the scores with spaces.", r.tok(j).text)
		} else if j > next && !t.multiples && r.nextPaddock(j) {
			r.commas = commaList
			return next
		}
		if len(t.said) > 0 && (t.decimal || t.parts || len(t.said) > 2 && r.plainRun(i, next)) && r.eventPads(j) {
			if r.tok(j).value > 4 {
				r.commas = commaList
				return next
			}
			if j > next && !r.sameMark(i, next, j) {
				t.unsure("Is the %s a paddock or a score? Please send each paddock on a line of its own.", r.tok(j).text)
			}
		}
		if m := r.tok(j + 1); j > next && len(t.said) > 2 && (m.text == "," || m.text == ":") && allDigits(r.tok(j)) && r.tok(j).value < 5 && (r.anyPaddock || r.bears(r.tok(j).text)) && !(m.text == "," && m.glued && r.tok(j+2).glued) &&
			r.isScore(j+2) && r.isScore(j+3) && !r.sameMark(i, next, j) && !r.sameMark(i, next, j+2) {
			t.unsure("Is the %s a paddock or a score? Please send each paddock on a line of its own.", r.tok(j).text) // "2 2.5 2 and 2, 2.5 2.5 3"
		}
		k, ok := r.item(t, j)
		r.tillers++
		if !ok {
			r.commas = commaList
			return next
		}
		next = k
	}
}

// bears tells whether a paddock of the register bears a folded name.
func (r *reader) bears(folded string) bool {
	_, ok := r.book.has(folded)
	return ok
}

// padOrScore tells whether the 5 of "12 2,5,3" may be a score, a paddock or the
// decimals of the number before it: commas stand on both sides.
func (r *reader) padOrScore(i, j int) bool {
	t := r.tok(j)
	return r.tok(i).text == "," && j == i+1 && t.shape == number && !t.decimal && t.value == 5 && r.tok(j+1).text == "," && !r.tok(j-2).decimal && r.isScore(j+2) && r.nextPaddock(j)
}

// nextPaddock tells whether the whole number behind a comma is the next
// paddock of a walk: "11 2.5, 12 2, 13 1.5".
func (r *reader) nextPaddock(i int) bool {
	t := r.tok(i)
	if t.shape != number || t.decimal || t.value <= 4 && !(r.tok(i+1).tag == atWord && r.tok(i+1).shape == word && r.bears(t.text)) || r.runsOn(i) {
		return false
	}
	_, ok := r.book.has(t.text)
	k := i + 1
	if s := r.tok(k); s.text == "s" && s.glued {
		k++ // "14s at 2"
	}
	k = r.praised(r.intro(k))
	return (ok || r.anyPaddock) && r.isScore(k) && r.tok(k).value <= 5
}

// listSeparator steps over what may stand between two scores.
func (r *reader) listSeparator(i int, inside bool) int {
	if !inside {
		return i
	}
	t := r.tok(i)
	if t.shape == mark && (t.text == "&" || t.text == "|" || t.text == "/") && !r.isScore(i+1) {
		return i
	}
	if t.text == ";" && !r.scoreBehind(i) {
		return i
	}
	if n := r.tok(i + 1); t.text == "n" && n.glued && n.shape == number && r.bears("n"+n.text) {
		return i // N3 where there is one
	}
	if t.text == "," || t.text == ";" || t.text == "/" || t.text == "|" || t.text == "&" || t.tag == andWord && r.isScore(i+1) {
		i++
		if n := r.tok(i + 1); r.tok(i).tag == andWord && r.isScore(i+1) && !(r.tok(i).text == "n" && n.glued && n.shape == number && r.bears("n"+n.text)) {
			i++
		}
	}
	if r.tok(i).tag == andWord && r.oneOf(i+1, "the") && r.oneOf(i+2, "last", "other") && r.tok(i+3).tag == numberWord {
		i++
	}
	if r.tok(i).tag == andWord && r.oneOf(i+1, "a") && r.tok(i+2).shape == number && r.isScore(i+2) {
		i += 2 // "2 2.5 and a 3"
	}
	return i
}

// isScore tells whether a number that can be a score stands at i: no unit
// behind it, no herd, no time.
func (r *reader) isScore(i int) bool {
	a, ok := r.value(i)
	if !ok || a.value >= 100 {
		return false
	}
	n := r.tok(a.next)
	switch {
	case r.tok(i).pair:
		return false // the next paddock of a walk told as pairs
	case r.progress(i) > i:
		return false // "one down five to go"
	case r.countsThing(i, a):
		return false // ", 2 rails broken"
	case r.tok(i).tag == numberWord && n.tag == atWord && r.oneOf(a.next+1, "a", "the", "least", "home", "most"):
		return false // "one at a time"
	case r.pronounOne(i), r.tok(i).tag == partWord && r.halfHour(i, r.tok(i-1).tag == atWord) > i:
		return false
	case n.glued && n.shape == word && r.tok(i).shape == number && a.next == i+1 && r.bears(r.tok(i).text+n.text):
		return false // 6b
	case i > 0 && r.oneOf(i-1, "by", "before"):
		return false // by 12
	case r.tok(i).tag == partWord && (r.oneOf(a.next, "an", "a") && r.tok(a.next+1).tag == inchUnit || n.tag == ofWord && r.oneOf(a.next+1, "an", "a") && r.tok(a.next+2).tag == inchUnit):
		return false // "half an inch of rain"
	case n.tag == ofWord && (a.decimal && a.value < 1 || r.oneOf(a.next+1, "them", "those", "the", "which", "these")):
		return false
	case n.shape == word && n.glued && n.tag == unknown && len(n.text) > 1:
		return false // 2.2kv
	case a.decimal && a.value < 1 && n.shape == word && (n.tag == grazedWord || n.tag == leftWord || n.tag == atWord):
		return false // half grazed, half left, half at 2
	case n.tag == yellowWord && i > 0 && r.tok(i-1).text == "," && r.tok(i-3).text != "," && r.tok(i).shape == number && !a.decimal:
		return false // ", 2 yellowing"
	case r.tok(i).shape == word && (r.tok(i).tag == numberWord || r.tok(i).tag == partWord) && r.yellowAhead(i):
		return false // "two yellowing"
	}
	if n := r.tok(a.next + 1); r.tok(a.next).tag == leftWord && (n.shape == end || n.shape == mark || n.shape == newline) && !a.decimal {
		return false // "3 left"
	}
	return !r.unitAhead(a.next)
}

// unitAhead tells whether what follows a number makes it something other than
// a score.
func (r *reader) unitAhead(i int) bool {
	t := r.tok(i)
	switch t.tag {
	case cmUnit, mmUnit, inchUnit, clickUnit, kgUnit, haUnit, acreUnit, dayUnit, weekUnit, monthUnit,
		hourUnit, headUnit, degreeUnit, strangeUnit, mobWord, looseMob, daytimeWord, nightWord, agoWord, monthName, gaugeWord, pointUnit:
		return true
	case tillerUnit:
		return true
	}
	switch t.text {
	case `"`:
		return r.tok(i-2).text != `"`
	case "%", "°", "$", ":":
		return true
	case "st", "rd", "th":
		return t.glued
	case "/":
		return t.glued && r.tok(i+1).glued && r.tok(i+1).shape == number && !r.slashList(i)
	}
	return false
}

// slashList tells whether slashes part scores here rather than a date or a
// fraction: "2.5/2/2.5/3".
func (r *reader) slashList(i int) bool {
	points := false
	n := 0
	for k := i - 1; !points && n <= 3 && r.tok(k).shape == number; k += 2 {
		points = points || r.tok(k).decimal
		n++
		if r.tok(k+1).text != "/" {
			break
		}
	}
	for k := i - 1; !points && n <= 3 && k > 1 && r.tok(k-1).text == "/" && r.tok(k-2).shape == number; k -= 2 {
		points = points || r.tok(k-2).decimal
		n++
	}
	return points || n > 3
}

// item reads one tiller with its repeats, or one that is set aside.
func (r *reader) item(t *tally, i int) (int, bool) {
	if j, ok := r.aside(t, i); ok {
		return j, true
	}
	if j, ok := r.asideTold(t, i); ok {
		return j, true
	}
	if j, ok := r.oneAt(t, i); ok {
		return j, true
	}
	if k, ok := r.multiple(t, i); ok {
		return k, true
	}
	if r.tok(i).text == "-" && r.tok(i+1).shape == number && r.tok(i+1).glued && !r.tok(i).glued && len(t.said) > 0 {
		t.unsure("A leaf score cannot be below nothing. Please send the scores again.")
		return i + 2, true
	}
	if r.tok(i).shape == broken {
		t.garbled = true
		t.unsure("I cannot read “%s” as a score. Please send the scores again.", r.tok(i).text)
		return i + 1, true
	}
	last := r.tok(i-1).shape == number && len(t.said) > 0 && r.tok(i+1).tag == tillerUnit && r.tok(i).shape == number && r.tok(i).value <= 4
	if !r.isScore(i) && !last {
		return i, false
	}
	return r.tiller(t, i)
}

// tiller reads one score or its parts, a floor mark and a repeat.
//
//	tiller = value [ "+" value [ "+" value ] ] [ "+" ] [ "x" whole ]
func (r *reader) tiller(t *tally, i int) (int, bool) {
	a, _ := r.value(i)
	if k, ok := r.timesBefore(t, a, i); ok {
		return k, true
	}
	one := entry.Tiller{Score: entry.LeafStage(a.value)}
	next := a.next
	t.decimal = t.decimal || a.decimal
	if one2, k, ok := r.plusParts(t, a); ok {
		one, next = one2, k
	}
	if p := r.tok(next); p.text == "+" && p.glued && !(r.tok(next+1).glued && r.tok(next+1).shape == number) {
		one.Floor = true
		next++
	}
	if k := r.andABit(next); k > next {
		t.unsure("What score shall I log? Please send one number.")
		next = k
	}
	if j, isRange := r.scoreRange(next); isRange {
		t.unsure("A range is no score: please send one number for each tiller, or their average.")
		next = j
	}
	if y := r.tok(next); y.tag == yellowWord && y.shape == word && len(t.said) > 0 && (r.isScore(next+1) || t.marked) {
		one.Floor, t.marked = true, true
		next++
	}
	if w := r.tok(i + 2); next == i+1 && len(t.said) > 0 && a.value > 1 && !a.decimal && r.oneOf(next, "were") && w.shape == word && w.tag != atWord && w.tag != yellowWord && !r.eventAhead(next+1) {
		t.unsure("Is “%s” a score, or how many tillers? Please put repro, daughter, no remnant or x for each tiller set aside.", r.tok(i).text)
	}
	if r.talkedOf(t, i, next) {
		t.unsure("Is “%s” a score, or how many tillers? Please put repro, daughter, no remnant or x for each tiller set aside.", r.tok(i).text)
	}
	r.thingOrScore(t, i, next)
	times, next := r.repeat(t, next)
	for range times {
		t.said = append(t.said, one)
	}
	return next, true
}

// scoreRange sees "2-2.5" and "2 to 3" behind a score.
func (r *reader) scoreRange(i int) (int, bool) {
	s := r.tok(i)
	if s.text == "-" && !s.glued && r.setAside(i+1) {
		return i, false
	}
	if s.text == "-" || s.tag == toWord {
		if a, ok := r.value(i + 1); ok && a.value < 10 && !r.unitAhead(a.next) {
			return a.next, true
		}
	}
	return i, false
}
