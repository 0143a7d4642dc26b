package parser

import (
	"slices"
	"strings"

	"leafround/core/entry"
)

// What is told may be taken back in the same breath: "p12 2 2.5 2 scratch that",
// "12 grazed, no wait"; or it is an example, a draft or a plan by what stands in
// front of it: "just text it like p12 2 2.5 2", "plan: milkers into 12". Nothing is
// logged from either without a further word.

// takenBack asks about a message that takes itself back or is headed as none that
// tells what was done.
//
//	taken = message turn { courtesy } | [ word ] heading [ ":" ] message
func (r *reader) takenBack(from, to int, o outcome) outcome {
	if len(o.entries) == 0 || alarmIn(o.entries) {
		return o
	}
	if r.secondThought(from, to) {
		return outcome{ask: &entry.Ask{Reason: "Which of it is right? Please send it once more as it should be."}}
	}
	if !reports(o.entries) {
		return o
	}
	switch {
	case r.turnsBack(from, to), r.disowned(from, to), r.wasElsewhere(from, to):
		return outcome{ask: r.confirm(takenReason, o.entries)}
	case r.headedAway(from, to):
		return outcome{ask: r.confirm("Is that done, or only an example or a plan?", o.entries)}
	}
	return o
}

// takenReason stands before what would be logged all the same.
const takenReason = "You seem to take that back, so I log nothing yet."

// secondThought tells whether somebody thinks better of a number or a paddock in the
// middle of a message: "12 2 2.5 no wait 3 2".
func (r *reader) secondThought(from, to int) bool {
	for i := from + 1; i+1 < to; i++ {
		if r.tok(i-1).tag == padMark || r.day(i+2).ok {
			continue // a paddock of that name: "grazed paddock hang on 2026-11-24"
		}
		if r.oneOf(i, "no") && r.oneOf(i+1, "wait") || r.oneOf(i, "wait") && r.oneOf(i+1, "no") || r.oneOf(i, "hang") && r.oneOf(i+1, "on") {
			k := r.over(i+2, "no", "wait", ",", "-", ".", "its", "it", "was", "thats", "i", "meant", "make", "that", "the", "in", "into", "a")
			if t := r.tok(k); t.shape == number || t.shape == part || r.padAhead(k) {
				return true
			}
		}
	}
	return false
}

// wasElsewhere tells whether a message ends by putting what it told into a place that
// nobody knows: "hill 2.5 2 3 2, sorry no that was the triangle".
//
//	elsewhere = ( "sorry" | "oops" | "no" | "wait" | … ) ( "that" | "it" | "they" ) ( "was" | "were" ) [ "in" | "on" ] [ "the" ] unknown [ unknown ]
func (r *reader) wasElsewhere(from, to int) bool {
	for i := max(from+2, to-7); i+2 < to; i++ {
		if !apologies[r.tok(i-1).text] && !r.oneOf(i-2, "sorry", "oops") || !r.oneOf(i, "that", "it", "they", "those") || !r.oneOf(i+1, "was", "were") {
			continue
		}
		k := r.over(i+2, "in", "on", "the", "actually")
		last := k
		for last < to && r.tok(last).shape == word && (r.tok(last).tag == unknown || r.tok(last).tag == acreUnit || placeWords[r.tok(last).text]) {
			last++
		}
		if last > k && last == to && last-k <= 2 {
			return true
		}
	}
	return false
}

// disowned tells whether a message begins by telling the bot to leave out what
// follows: "ignore p12 2 2.5 2", "wrong: 12 grazed".
func (r *reader) disowned(from, to int) bool {
	if !leavesOut[r.tok(from).text] {
		return false
	}
	return r.tok(from+1).text == ":" || !r.oneOf(from, "wrong") && r.padAhead(r.over(from+1, "that", "the", "count", "my", "in", "for", "of", ",", "-"))
}

// reports tells whether entries tell of the farm, and not of an entry or of talk.
func reports(list []entry.Entry) bool {
	return slices.ContainsFunc(list, func(e entry.Entry) bool {
		switch e.(type) {
		case entry.Note, entry.Undo, entry.Correct, entry.Setup:
			return false
		}
		return true
	})
}

// turnsBack tells whether a message ends by taking back what it told.
func (r *reader) turnsBack(from, to int) bool {
	for to > from && r.idleEnd(to-1) {
		to--
	}
	if r.orWasIt(from, to) || r.undoneBehind(from, to) {
		return true
	}
	for _, words := range turns[r.tok(to-1).text] {
		at := to - len(words)
		if _, spelt := r.run(at, words...); at <= from || !spelt {
			continue
		}
		b := r.tok(at - 1)
		if ofOther[words[0]] && r.padEnds(from, at) {
			continue // "12 grazed, 13 not yet"
		}
		if b.shape != word || (len(words) > 1 || plainTurns[words[0]]) && !saying[b.text] && !(grazedWrong[words[len(words)-1]] && turnsInto[b.text]) {
			return true
		}
	}
	return false
}

// undoneBehind tells whether a verb of undoing ends a message, with no more behind
// it than the words that an entry is spoken of with: "12 grazed, ignore that one".
func (r *reader) undoneBehind(from, to int) bool {
	at := to - 1
	for at > from && undoObjects[r.tok(at).text] {
		at--
	}
	if at <= from || !undoVerbs[r.tok(at).text] || r.tok(at).shape != word {
		return false
	}
	b := r.tok(at - 1)
	return b.shape != word || at < to-1 && !saying[b.text] && !r.oneOf(at-1, "to", "not", "dont")
}

// padEnds tells whether a paddock's name that opens a statement ends right before a
// token.
func (r *reader) padEnds(from, at int) bool {
	for i := max(from, at-4); i < at; i++ {
		if p, ok := r.onePad(i, false); ok && p.known && p.next == at && i > from && r.tok(i-1).text != "/" && (r.joins(i-1) || r.tok(i-1).shape == mark || r.tok(i-1).shape == newline || r.tok(i-1).tag == butWord) {
			return true
		}
	}
	return false
}

// orWasIt tells whether a message ends by doubting the paddock or the number that it
// told: "in 21, out of 20 or was it 13".
func (r *reader) orWasIt(from, to int) bool {
	for i := max(from+1, to-5); i < to; i++ {
		if r.oneOf(i, "or") && r.oneOf(i+1, "was", "is", "were") && r.oneOf(i+2, "it", "that", "they") {
			return true
		}
	}
	return false
}

// idleEnd tells whether a token at a message's end says nothing by itself.
func (r *reader) idleEnd(i int) bool {
	t := r.tok(i)
	return t.shape != number && t.shape != part && (t.shape != word || t.tag == courtesy || idleEnds[t.text])
}

var (
	idleEnds = wordSet(`sorry soz oops whoops lads lad folks everyone guys team boss mate please pls lol haha hehe all sir now actually though`)
	// ofOther may tell of the paddock right before them.
	ofOther = wordSet(`not isnt is would wont eventually someday some one at`)
	// plainTurns need no mark before them.
	plainTurns = wordSet(`nope nah nvm nevermind jk kidding joking eventually someday`)
	// turnsInto stand before a wrong paddock that was grazed, saying before what
	// somebody else said.
	grazedWrong = wordSet(`paddock pdk paddocks field one farm`)
	turnsInto   = wordSet(`the a in into to of on with from`)
	saying      = wordSet(`said say says saying told`)
)

// turns are the words that take back what stands before them, by their last word.
var turns = func() map[string][][]string {
	all := map[string][][]string{}
	add := func(words ...string) { all[words[len(words)-1]] = append(all[words[len(words)-1]], words) }
	for _, thing := range strings.Fields(`paddock pdk paddocks field one chat group farm day message thread person number numbers count list`) {
		add("wrong", thing)
		add("the", "wrong", thing)
	}
	for _, line := range []string{
		"no wait", "wait no", "hang on", "hold on", "hang on no", "no", "nope", "nah", "not", "actually no", "actually not", "no it wasnt", "no it didnt",
		"never mind", "nevermind", "nvm", "forget about it", "forget about that", "just kidding", "kidding", "only kidding", "jk", "joke", "a joke",
		"joking", "only joking", "im joking", "just joking", "not really", "but not really", "haha not", "or not", "i wish", "if only", "in my dreams", "i lied", "thats wrong",
		"that is wrong", "thats not right", "thats not it", "that was wrong", "is that right", "is this right", "is that correct", "is that ok", "did i get that right",
		"test", "testing", "a test", "just testing", "only testing", "just a test", "only a test", "this is a test", "test message", "for example", "as an example", "an example", "just an example",
		"dont log that", "dont log it", "dont log this", "dont save that", "dont count that", "dont use that", "would be good", "would be nice", "would be great", "would be ideal", "would be better", "would be handy",
		"is the plan", "thats the plan", "that is the plan", "plan", "not done", "not done yet", "not yet", "isnt done", "isnt done yet", "except it wasnt", "except i didnt", "except they didnt", "only it wasnt",
		"yeah right", "yea right", "aye right", "eventually", "at some point", "at some stage", "one day", "some day", "someday", "in due course", "in theory",
	} {
		add(strings.Fields(line)...)
	}
	return all
}()

// headedAway tells whether what stands in front of a message says that it tells
// nothing that was done.
func (r *reader) headedAway(from, to int) bool {
	if r.oneOf(from, "e") && r.oneOf(from+1, ".") && r.oneOf(from+2, "g") {
		return true
	}
	for k := from; k < min(to, from+longestHeading); k++ {
		t := r.tok(k)
		if t.shape == mark && t.text == ":" && k > from {
			return r.tok(k-1).shape == word && headings[r.tok(k-1).text]
		}
		if t.shape != word {
			return false
		}
		if r.exampleAt(k, k == from) {
			return true
		}
		if _, ok := r.onePad(k, false); ok && !placeless[t.text] {
			return false
		}
	}
	return false
}

// longestHeading is how many words stand before what they head (ours).
const longestHeading = 8

// exampleAt tells whether a word says that an example follows.
func (r *reader) exampleAt(k int, first bool) bool {
	switch {
	case r.oneOf(k, "eg", "imagine", "suppose") && first, r.oneOf(k, "example", "format") && !r.oneOf(k-1, "an", "good", "bad"):
		return true
	case r.oneOf(k, "like"):
		_, teaching := r.has(0, k, teaches)
		return teaching && r.oneOf(k-1, "it", "them", "that", "message", "messages", "text", "texts", "type", "write", "send", "something")
	case r.oneOf(k, "type", "write", "text"):
		return r.oneOf(k-1, "you", "u", "just") || r.oneOf(k-1, "to") && r.oneOf(k-2, "how", "have", "has", "need", "supposed", "want")
	case r.oneOf(k, "test", "testing"):
		return first && r.padAhead(r.over(k+1, "in", "for", "of", ",", "-"))
	}
	return false
}

var (
	// headings end in a colon, and say what stands behind it is not done.
	headings = wordSet(`plan plans todo do example eg draft test testing joke imagine suppose practice practise idea proposal suggestion hypothetical reminder format template later`)
	// leavesOut tell the bot not to take what follows.
	leavesOut = joinSets(undoVerbs, wordSet(`wrong`))
	// teaches are verbs of one who shows another what to send.
	teaches = wordSet(`text send type write put say message log enter do`)
	// placeless are words of such headings that may also name a paddock.
	placeless = wordSet(`for just you the is it like this to like format way`)
)
