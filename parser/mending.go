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
	for r.tok(i).tag == jokeWord && r.tok(i).shape == word {
		i++
	}
	i = r.apology(i)
	if _, k := r.undo(i + 1); k > i+1 && r.oneOf(i, "nah", "no", "nope") {
		i++
	}
	for to-1 > i && r.oneOf(to-1, "lads", "there", "folks", "guys", "team", "everyone", "mate", "boss", "please", "sorry", "soz", "thanks", "ta") && !r.oneOf(to-2, "the", "our", "those") {
		to--
	}
	if to-i > 4 && r.oneOf(to-1, "way") && r.oneOf(to-2, "the") && r.oneOf(to-3, "by") {
		to -= 3
	} else if to-i > 2 && r.oneOf(to-1, "btw") {
		to--
	}
	if o, ok := r.wrongToldOf(i, to); ok {
		return o, true
	}
	sorryBehind := r.oneOf(to, "sorry", "soz")
	i = r.sentWrong(i, to)
	undo, k := r.undo(i)
	if undo {
		k = r.apology(k)
		if r.undoTail(k) >= to || r.willRedo(k, to) || r.idleTail(k, to) || r.neverSo(k, to) {
			return outcome{entries: []entry.Entry{entry.Undo{}}}, true
		}
		tail := r.undoTail(k)
		if j := r.over(k, ",", ".", "-", ":"); j > k {
			k = r.apology(j)
		}
		if r.oneOf(k-1, ",", ".", "-", ":", "sorry", "no") || r.hasText(k, to, "not") || r.hasText(k, to, "should") {
			if c, ok := r.correction(k, to, true); ok {
				return r.mendedWith(c), true
			}
		}
		if o, ok := r.instead(tail, to); ok {
			return o, true
		}
		if o, ok := r.undoOf(k, to); ok || !r.oneOf(tail-1, ",", ".", "-") || r.asking {
			return o, ok
		}
		return r.undoAndWhat(tail, to)
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
	moved := false
	if c, ok := r.wroteWrong(i, to, &moved); ok && moved {
		return outcome{ask: &entry.Ask{Reason: "Shall I mend your latest entry? Or tell me where they are now, such as: heifers in 12",
			Options: []entry.Option{{Label: "Mend it: " + c.ToName + ", not " + c.From, Entries: []entry.Entry{c}}}}}, true
	}
	c, ok := r.correction(i, to, i > from || r.Reply)
	if !ok && sorryBehind {
		c, ok = r.correction(i, to, true)
		ok = ok && c.Field != entry.FieldTillers // "13 sorry"; scores alone may be any paddock's
	}
	if !ok || c.Field == entry.FieldTillers && i > from && r.tok(from).tag == jokeWord {
		return outcome{}, false // "lol 3 2.5 2.5 2" may be paddock 3
	}
	if r.oneOf(i-1, "no") && i > from && c.Field == entry.FieldTillers && r.tok(i).shape == number && !r.tok(i).decimal && r.bears(r.tok(i).text) {
		return outcome{ask: &entry.Ask{Reason: "Are those the scores of paddock " + r.tok(i).text + ", or shall I mend your last ones? Please send “p" + r.tok(i).text + "” before scores that are its own."}}, true
	}
	_, said := r.announces(i)
	if why := r.wrongThing(from, said, c); why != "" {
		return outcome{ask: &entry.Ask{Reason: why}}, true
	}
	return r.mendedWith(c), true
}

// wrongThing asks where what the sender calls wrong is not what would be mended:
// "wrong date, should be 18" names no day.
func (r *reader) wrongThing(from, to int, c entry.Correct) string {
	for i := from - 1; i < to; i++ {
		if i >= from && r.tok(i).text != "wrong" || i < from && !r.oneOf(i+1, "the", "day", "date", "mob", "paddock") {
			continue
		}
		i = r.over(i+1, "the") - 1
		switch {
		case r.oneOf(i+1, "day", "date") && c.Field != entry.FieldDate:
			return "Which day should it be? Please send it such as: should be the 18th"
		case r.oneOf(i+1, "mob") && c.Field != entry.FieldMob:
			return "Which mob should it be?"
		case r.oneOf(i+1, "paddock", "pdk") && c.Field != entry.FieldPaddock && !r.namesPad(i+1):
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
		case r.oneOf(i, "fat", "cold", "clumsy", "frozen", "butter", "numb") && r.oneOf(i+1, "thumb", "thumbs", "finger", "fingers"):
			sorry = true
			i += 2
		case t.text == "wrong" && r.oneOf(i+1, "paddock", "pdk", "field", "one", "number", "mob", "day", "date", "score", "scores"):
			sorry = true
			i = r.ofThat(i + 2)
		case r.oneOf(i, "thats", "its") && r.oneOf(i+1, "wrong") && r.oneOf(r.over(i+2, ",", "-", "."), "it", "its", "should", "was"):
			sorry = true
			i += 2 // "thats wrong it was 2 2.5 2"
		case sorry && r.hasWrong(i) > i:
			i = r.hasWrong(i)
		case !sorry && r.wasWrong(i) > i:
			sorry = true
			i = r.wasWrong(i)
		case t.text == "hang" && r.oneOf(i+1, "on"), t.text == "hold" && r.oneOf(i+1, "on", "up") && r.oneOf(i+2, ",", "-", ".", "that", "it", "should", "i", "the", "no", "wait"):
			sorry = true
			i += 2
		case t.text == "i" && r.oneOf(i+1, "make", "made") && r.tok(r.over(i+2, "a")).text == "mistake":
			sorry = true
			i = r.over(i+2, "a") + 1
		case sorry && r.lookedUp(i) > i:
			i = r.lookedUp(i)
		case sorry && r.oneOf(i, "mam", "maam", "mum", "sir", "boss", "all", "everyone", "guys", "lads", "folks", "team"):
			i++
		case sorry && r.oneOf(i, "it", "that", "this") && r.oneOf(i+1, "is", "was") && (r.tok(i+2).tag == padMark || r.tok(i+2).shape == number || r.oneOf(i+2, "the")):
			i += 2
		case apologies[t.text]:
			if r.oneOf(i, "no", "nah") && !r.oneOf(i+1, ",", "no", "you", "youve", "it", "its", "that", "thats", "sorry", "wait", "hang", "hold", "scrap", "oops", "actually", "should", "meant") && !(r.oneOf(i+1, "make", "change") && r.oneOf(i+2, "that", "it")) && r.tok(i+1).shape != number && r.tok(i+1).tag != padMark {
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

// lookedUp steps over "looking at the map again,": where the sender saw what was
// wrong.
func (r *reader) lookedUp(i int) int {
	if !r.oneOf(i, "looking", "looked", "checking", "checked", "reading") {
		return i
	}
	k := r.over(i+1, "at", "on", "back", "in", "over", "the", "my", "a")
	if !r.oneOf(k, "map", "notes", "notebook", "book", "phone", "diary", "sheet", "calendar", "list") {
		return i
	}
	return r.over(k+1, "again", "now", "there", "here")
}

// wasWrong steps over "the date on my last one was wrong,": what should stand
// follows.
func (r *reader) wasWrong(i int) int {
	if k := r.hasWrong(i); k > i {
		return k
	}
	j := i
	if !r.oneOf(i, "i", "got", "had") {
		j = r.subject(i)
	} else if j = r.over(i, "i", "got", "had"); r.oneOf(j, "the", "that", "my") {
		if k := r.subject(j); r.oneOf(k, "wrong") {
			return r.over(r.ofThat(k+1), ",", "-", ".", "and")
		}
	}
	if j > i && r.oneOf(j, "was", "is", "were") && r.oneOf(j+1, "wrong") {
		return r.over(j+2, ",", "-", ".", "and")
	}
	return i
}

// announced tells whether a small word behind an apology leads on to another.
func (r *reader) announced(i int) bool {
	return r.oneOf(i, "and", "so") || r.oneOf(i, "i") && apologies[r.tok(i+1).text]
}

var apologies = wordSet(`sorry soz sry oops whoops woops ops correction wait no nah naw actually mistake typo * nope bugger ah sori edit oh`)
