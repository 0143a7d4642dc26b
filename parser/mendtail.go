package parser

import "leafround/core/entry"

// What stands around the value that a mending names: which message is meant,
// and what people say behind it.

// wroteWrong reads what was written and what it should have been: "i put 12,
// should have been 13". Where a herd stands with it ("i put heifers in 12,
// should have been 13"), moved tells that it may be the stock that went wrong.
//
//	wrong = "i" written value [ "down" ] [ "," | "but" ] ( announcement | "it" "was" ) value
func (r *reader) wroteWrong(i, to int, moved *bool) (entry.Correct, bool) {
	k := r.over(i, "i", "ive")
	if k == i || !saidWords[r.tok(k).text] && !r.oneOf(k, "had", "have") {
		return entry.Correct{}, false
	}
	from, k, ok := r.mended(r.over(k+1, "it", "that", "down", "as", "was"))
	if !ok {
		return entry.Correct{}, false
	}
	if place, next, both := r.mended(k + 1); both && from.field == entry.FieldMob && place.field == entry.FieldPaddock && r.oneOf(k, "in", "into", "on", "to") {
		from, k, *moved = place, next, true
	}
	if c, ok := r.saidNot(i, k, to, from); ok {
		return c, true
	}
	k = r.over(k, "down", "there")
	k = r.over(k, ",", "but", "and", "-", ".")
	announced, j := r.announces(k)
	if !announced {
		if j = r.over(k, "it", "its", "that", "is", "was", "were", "actually", "really"); j == k {
			return entry.Correct{}, false
		}
	}
	thing, end, ok := r.mended(j)
	if ok && r.oneOf(end, "that", "where", "which") {
		if last, talk := r.onlyTalk(end + 1); talk && last >= to {
			end = to // "it was 25 that they went into"
		}
	}
	if !ok || !r.endsHere(end, to) {
		return entry.Correct{}, false
	}
	return joinMended(thing, from)
}

// saidNot reads "I said 13 and not 11, it was 13 I was standing in": what was
// said is what should stand.
//
//	said = "i" ( "said" | "meant" ) value [ "," | "and" ] "not" value [ "," "it" "was" value ]
func (r *reader) saidNot(i, k, to int, thing mended) (entry.Correct, bool) {
	at := r.over(k, ",", "and", "-")
	if v := r.over(i, "i", "ive"); !r.oneOf(v, "said", "meant", "told") || !r.oneOf(at, "not") {
		return entry.Correct{}, false
	}
	from, end, ok := r.mended(at + 1)
	if !ok {
		return entry.Correct{}, false
	}
	if a := r.over(end, ",", "."); a > end && r.oneOf(a, "it", "that") && r.oneOf(a+1, "was", "is") {
		if again, next, ok := r.mended(a + 2); ok && again.field == thing.field && again.text == thing.text && again.field != entry.FieldTillers {
			end = next
		}
	}
	if !r.endsHere(end, to) {
		return entry.Correct{}, false
	}
	return joinMended(thing, from)
}

// hasWrong steps over what is wrong with an entry: "the count I just sent has the
// wrong scores.", "my last one has the wrong day on it,", "you have put the wrong
// thing down,". What should stand follows.
func (r *reader) hasWrong(i int) int {
	k := i
	if r.oneOf(i, "you", "youve", "u", "bot") {
		k = r.over(i+1, "have", "put", "got", "logged", "written", "wrote", "taken", "down", "it", "that", "as", "in")
	} else if k = r.whoseEntry(r.subject(i)); k > i && r.oneOf(k, "has", "had", "have", "got", "with") {
		k++
	} else {
		return i
	}
	k = r.over(k, "the", "a", "got")
	if k == i+1 || !r.oneOf(k, "wrong") || !r.oneOf(k+1, "score", "scores", "day", "date", "mob", "paddock", "pdk", "number", "numbers", "thing", "one", "figures", "count") {
		return i
	}
	k = r.over(k+2, "on", "in", "it", "down", "there")
	return r.over(k, ",", "-", ".", "and")
}

// ofThat steps over which entry is meant: "on that one", "in my last message",
// "for the move before".
//
//	ofThat = [ "," ] ( "on" | "in" | "for" | "of" | "with" ) pointer { thing }
func (r *reader) ofThat(i int) int {
	k := r.over(i, ",")
	if !r.oneOf(k, "on", "in", "for", "of", "with", "from") {
		return i
	}
	k++
	j := r.over(k, "that", "my", "the", "this", "it", "last", "latest", "previous", "first")
	if j == k {
		return i
	}
	end := j
	for entryNames[r.tok(end).text] {
		end++
	}
	if end == j && !r.oneOf(j-1, "that", "it", "this", "last") {
		return i
	}
	if t := r.tok(end); end == j && t.shape != mark && t.shape != newline && t.shape != 0 && !r.oneOf(end, "should", "shouldve", "was", "is", "needs", "meant", "to") {
		return i
	}
	return r.whoseEntry(r.over(end, "before", "above", "there"))
}

// entryNames are what people call what they logged.
var entryNames = wordSet(`one message msg text texts entry count move shift grazing graze cut spray hold lot bit post log feed note last number`)

// endsHere tells whether a mending is over at a token: nothing but which message
// is meant, and talk, stands behind it.
func (r *reader) endsHere(i, to int) bool {
	i = r.ofThat(i)
	return i >= to || r.idleTail(i, to)
}

// idleTail tells whether the rest of a message is a remark behind a mark: it
// names no paddock, herd, day or number, tells of nothing done, and asks
// nothing: ", I got behind on this".
func (r *reader) idleTail(i, to int) bool {
	t := r.tok(i)
	k := r.apology(i)
	if to-i > longestTail || t.shape != mark && t.shape != newline && k == i && t.text != "i" && t.text != "wrong" && !r.oneOf(i, "as", "cos", "coz", "because") && !(t.text == "and" && r.oneOf(i+1, "somebody", "someone")) {
		return false
	}
	for k = i; k < to; k++ {
		t := r.tok(k)
		switch {
		case t.shape == newline, t.shape == mark && t.text != "?":
		case t.shape != word:
			return false
		case r.oneOf(k, "paddock", "pdk", "mob", "day", "days", "times", "date", "field", "list", "line", "page", "number") && (r.oneOf(k-1, "wrong", "the", "my", "that", "long", "hard", "rough", "tough", "busy", "bad")):
		case r.oneOf(k, "put") && r.oneOf(k+2, "kettle", "tea", "jug", "dinner", "spuds"), r.oneOf(k, "will", "would", "can") && r.oneOf(k+1, "you", "ye", "u"):
		case r.oneOf(k, "shut", "closed") && k > i && r.tok(k-1).tag == unknown && r.tok(k-1).shape == word: // "the wind blew my notebook shut"
		case r.oneOf(k, "soon", "early", "send", "sent", "button", "enter"):
		case r.oneOf(k, "out") && r.oneOf(k-1, "flat"):
		case idleTags[t.tag]:
			if p, ok := r.longest(k); ok && p.known {
				return false
			}
		default:
			return false
		}
	}
	return true
}

// longestTail is how many tokens a remark behind a mending can have (ours).
const longestTail = 24

// idleTags are the parts of speech of a remark that states nothing.
var idleTags = map[tag]bool{unknown: true, filler: true, courtesy: true, remark: true, ofWord: true, onWord: true, inWord: true, atWord: true, forWord: true,
	withWord: true, andWord: true, butWord: true, toWord: true, fromWord: true, offWord: true, allWord: true, notWord: true, negWord: true, againWord: true,
	hearWord: true, jokeWord: true, thisWord: true, lastWord: true, onlyWord: true, hedgeWord: true, okWord: true, daytimeWord: true, thenWord: true, gaugeWord: true, noteWord: true}

// putInstead reads what was written in the place of what should stand: ", I put
// down 8".
//
//	putInstead = [ "," | "but" ] "i" written [ "down" ] value
func (r *reader) putInstead(i, to int) (mended, bool) {
	k := r.over(i, ",", "-", ".", "but", "and", "not")
	j := r.over(k, "i", "ive")
	if j == k || !saidWords[r.tok(j).text] {
		return mended{}, false
	}
	from, end, ok := r.mended(r.over(j+1, "it", "that", "down", "as", "in", "for"))
	return from, ok && r.endsHere(r.over(end, "by", "mistake", "instead"), to)
}

// neverSo tells whether it stands behind an undo that what was told was not so, and
// no more: ", cows weren't in there". What shall not be done is another matter.
func (r *reader) neverSo(i, to int) bool {
	k := r.over(i, ",", "-", ".", "the", "as", "because", "cos", "they", "it", "we", "i", "that")
	if _, j := r.mob(k); j > k {
		k = j
	}
	if k == i || to-k > 8 || !r.oneOf(k, "werent", "wasnt", "didnt", "never", "hadnt", "havent", "hasnt", "isnt", "arent") {
		return false
	}
	for ; k < to; k++ {
		if t := r.tok(k); t.shape != word || t.tag == numberWord || r.padAhead(k) && !r.oneOf(k, "in", "there") || r.when(k).ok {
			return false
		}
	}
	return true
}
