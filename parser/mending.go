package parser

import (
	"fmt"

	"leafround/core/entry"
)

// mending reads a message that withdraws or mends what the sender logged.
//
//	mending = undo | [ "sorry" | undo "," ] correction
func (r *reader) mending(from, to int) (outcome, bool) {
	i := from
	for i > 0 && r.oneOf(i-1, "sorry", "soz", "ah", "oh", "no", "mam", "maam", "sir", "boss", "mate", ",", "-", "*") {
		i--
	}
	from = i
	i = r.apology(i)
	if _, k := r.undo(i + 1); k > i+1 && r.oneOf(i, "nah", "no", "nope") {
		i++
	}
	undo, k := r.undo(i)
	if undo {
		k = r.apology(k)
		if r.undoTail(k) >= to {
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
	if why := r.wrongThing(from, i, c); why != "" {
		return outcome{ask: &entry.Ask{Reason: why}}, true
	}
	return r.mendedWith(c), true
}

// wrongThing asks where what the sender calls wrong is not what would be mended:
// "wrong date, should be 18" names no day.
func (r *reader) wrongThing(from, to int, c entry.Correct) string {
	for i := from; i < to; i++ {
		if r.tok(i).text != "wrong" {
			continue
		}
		switch {
		case r.oneOf(i+1, "day", "date") && c.Field != entry.FieldDate:
			return "Which day should it be? Please send it such as: should be the 18th"
		case r.oneOf(i+1, "mob") && c.Field != entry.FieldMob:
			return "Which mob should it be?"
		case r.oneOf(i+1, "paddock", "pdk") && c.Field != entry.FieldPaddock:
			return "Which paddock should it be?"
		case r.oneOf(i+1, "score", "scores") && c.Field != entry.FieldTillers:
			return "Which scores should stand?"
		}
	}
	return ""
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
		case t.text == "i" && r.oneOf(i+1, "make", "made") && r.tok(r.over(i+2, "a")).text == "mistake":
			sorry = true
			i = r.over(i+2, "a") + 1
		case sorry && r.oneOf(i, "mam", "maam", "mum", "sir", "boss", "all", "everyone", "guys", "lads", "folks", "team"):
			i++
		case sorry && r.oneOf(i, "it", "that", "this") && r.oneOf(i+1, "is", "was") && (r.tok(i+2).tag == padMark || r.tok(i+2).shape == number || r.oneOf(i+2, "the")):
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

// undoTail steps over what people say behind an undo: to whom, and why.
func (r *reader) undoTail(i int) int {
	if r.oneOf(i-1, "the", "my") {
		return i // "ignore the lads"
	}
	for {
		k := i
		for _, w := range undoReasons {
			if j, ok := r.run(i, w...); ok {
				k = j
				break
			}
		}
		if t := r.tok(i); k == i && (undoTails[t.text] || t.tag == courtesy && t.shape == word || i > 0 && (t.text == "," || t.text == "." || t.text == "-" || t.text == "!")) {
			k = i + 1
		}
		if k == i {
			return i
		}
		i = k
	}
}

// undoTails are those who are spoken to, and small words of regret.
var undoTails = wordSet(`lads lad folks everyone everybody guys team girls boys ladies boss sir again now sorry mistake mine wrong oops`)

// undoReasons say why something is taken back.
var undoReasons = [][]string{
	{"wrong", "group"}, {"wrong", "chat"}, {"wrong", "one"}, {"wrong", "message"}, {"wrong", "paddock"}, {"wrong", "list"}, {"wrong", "farm"},
	{"my", "mistake"}, {"my", "fault"}, {"my", "bad"}, {"my", "error"}, {"by", "mistake"}, {"in", "error"}, {"sent", "by", "mistake"}, {"sent", "in", "error"},
	{"sent", "it", "by", "mistake"}, {"i", "sent", "it", "by", "mistake"}, {"its", "wrong"}, {"it", "was", "wrong"}, {"thats", "wrong"}, {"that", "was", "wrong"},
	{"for", "me"}, {"will", "you"}, {"would", "you"}, {"if", "you", "can"}, {"if", "you", "would"}, {"not", "right"}, {"i", "made", "a", "mistake"}, {"made", "a", "mistake"},
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
