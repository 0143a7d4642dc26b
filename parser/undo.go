package parser

import "leafround/core/entry"

// undo reads what takes the sender's latest entry back: "undo", "scrap that",
// "could you take that last one back out".
//
//	undo   = [ asking ] verb { object } [ particle ] [ whose ]
//	asking = ( "can" | "could" | "would" | "will" ) "you" | "please" | "just"
//	whose  = "of" "mine" | "from" "me" | "i" [ "just" ] sent
func (r *reader) undo(i int) (bool, int) {
	start := i
	i = r.asksTo(i)
	t := r.tok(i)
	if t.shape != word {
		return false, start
	}
	if k := r.saidJust(i + 1); undoVerbs[t.text] && k > i+1 {
		return true, k
	}
	if undoVerbs[t.text] {
		k := i + 1
		for k < len(r.toks) && undoObjects[r.tok(k).text] {
			k++
		}
		n := k - i - 1
		k = r.whoseEntry(k)
		asked := r.oneOf(start, "can", "could", "would", "will") // "can you undo?" asks whether one can
		return n > 0 || t.text == "undo" && !asked, k
	}
	if k, ok := r.takesBack(i); ok {
		return true, r.whoseEntry(k)
	}
	return false, start
}

// asksTo steps over how somebody is asked to do something.
func (r *reader) asksTo(i int) int {
	for {
		switch {
		case r.oneOf(i, "can", "could", "would", "will") && r.oneOf(i+1, "you", "u", "ye", "ya", "someone", "we"):
			i += 2
		case r.oneOf(i, "please", "pls", "plz", "just", "kindly", "bot", "leafround", "better") || r.oneOf(i, ",") && r.oneOf(i-1, "please", "bot", "leafround"):
			i++
		default:
			return i
		}
	}
}

// takesBack reads verbs that take something back only with a word behind them
// that says so, or where it is an entry that they speak of: "rub that out",
// "take that last one back out", "get rid of my last text".
func (r *reader) takesBack(i int) (int, bool) {
	k := i + 1
	switch {
	case r.oneOf(i, "get") && r.oneOf(i+1, "rid") && r.oneOf(i+2, "of"):
		k = i + 3
	case r.oneOf(i, "never") && r.oneOf(i+1, "mind"), r.oneOf(i, "dont") && r.oneOf(i+1, "count", "log", "use", "keep", "record", "save"):
		k = i + 2
	case !takeVerbs[r.tok(i).text]:
		return i, false
	}
	back := false
	if r.oneOf(k, "back", "out") && undoObjects[r.tok(k+1).text] {
		back = true // "take out my last entry"
		k++
	}
	from := k
	last, thing := false, false
	for undoObjects[r.tok(k).text] {
		last = last || r.oneOf(k, "last", "latest", "previous")
		thing = thing || r.oneOf(k, "one", "entry", "message", "msg", "text", "bit", "log", "count")
		k++
	}
	if k == from {
		return i, false
	}
	for r.oneOf(k, "back", "out", "off", "again", "away") {
		back = back || r.oneOf(k, "back", "out")
		k++
	}
	pronoun := r.oneOf(from, "that", "it", "this") && k > from
	return k, last && (thing || back || r.oneOf(from, "my", "that")) || back && (thing || pronoun)
}

// saidJust reads "what I just sent" behind a verb of undoing.
func (r *reader) saidJust(i int) int {
	k := r.over(i, "all", "everything")
	if !r.oneOf(k, "what", "whatever", "that", "it", "the", "last", "bit", "thing") {
		return i
	}
	k = r.over(k, "what", "whatever", "that", "it", "the", "last", "bit", "thing")
	j := r.over(k, "i", "ive", "just", "only")
	if j == k || !saidWords[r.tok(j).text] {
		return i
	}
	return r.over(j+1, "in", "there", "now", "up", "you", "just")
}

// whoseEntry steps over whose entry it is that is taken back.
func (r *reader) whoseEntry(i int) int {
	switch {
	case r.oneOf(i, "of") && r.oneOf(i+1, "mine"), r.oneOf(i, "from", "by") && r.oneOf(i+1, "me"):
		return i + 2
	case r.oneOf(i, "i", "ive"):
		if j := r.over(i+1, "just", "only"); saidWords[r.tok(j).text] {
			return r.over(j+1, "in", "there", "now", "up", "you", "just")
		}
	}
	return i
}

var (
	undoVerbs = wordSet(`scrap delete ignore cancel forget scratch strike remove disregard undo withdraw bin dump erase void discard retract reverse`)
	takeVerbs = wordSet(`take pull wipe rub cross drop chuck kill lose nix whip throw scrub`)
	// undoObjects are the words that an entry is spoken of with.
	undoObjects = wordSet(`that it the last my one this entry message msg previous text please bit log count latest`)
	saidWords   = wordSet(`said sent wrote typed put told entered logged posted texted did made`)
)

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

// instead reads what is told behind an undo in its place: "scrap that. p13 2
// 2.5 2".
func (r *reader) instead(i, to int) (outcome, bool) {
	for i < to && r.tok(i).shape == newline {
		i++
	}
	if b := r.tok(i - 1); i >= to || b.shape != newline && !r.oneOf(i-1, ",", ".", "!", ":", "-") {
		return outcome{}, false
	}
	forms, understood := len(r.forms), len(r.understood)
	o := r.sentences(i, to)
	if len(o.entries) == 0 || o.ask != nil || onlyANote(o.entries) {
		r.forms, r.understood = r.forms[:forms], r.understood[:understood]
		return outcome{}, false
	}
	o.entries = append([]entry.Entry{entry.Undo{}}, o.entries...)
	return o, true
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
