package parser

import "leafround/core/entry"

// What was set aside is mostly told in words behind the scores, in any order:
// "threw out 2 daughters", "pulled 2 daughters off and didn't count them",
// "another 3 were heading so left those out", "binned one with nodes", "one was
// a daughter". Each number there counts tillers, and is no score, because a verb
// or a word that ties them stands beside it.

// asideTold reads how many tillers were set aside, and for what.
//
//	asideTold = { verb | particle | pronoun } [ total ] pair { [ "," | "and" | "+" ] pair } [ outro ]
//	pair      = count { tie } set-aside-word | "no" set-aside-word
func (r *reader) asideTold(t *tally, i int) (int, bool) {
	first := r.tok(i)
	somebody := first.tag == unknown && first.shape == word && throwVerbs[r.tok(i+1).text] && !throwVerbs[first.text]
	if first.shape == word && !asideOpeners[first.text] && !somebody || first.shape != word && first.shape != number {
		return i, false
	}
	if n, j := r.onlyRejects(i); j > i && len(t.said) > 0 {
		t.unsure("What was wrong with the %d that you set aside? Please say repro, daughter, no remnant or x for each.", n)
		return j, true
	}
	if !r.asideNear(i) {
		return i, false
	}
	var found entry.Skipped
	var into *int
	verb, end, k := false, i, i
	total, pulled := 0, false
	if n, j := r.rejects(i); j > i {
		total, verb, k = n, true, j
	}
	if somebody {
		k++ // "Ari threw out 2 daughters"
	}
	for last := i + mostAsideWords; k < last; {
		if r.asideJoint(k) {
			if into == nil {
				break
			}
			k++
			continue
		}
		if verb && end == i && total == 0 {
			if n, j := r.asideTotal(k); j > k {
				total, pulled, k = n, r.hasTag(k, j, tillerUnit), j
				continue
			}
		}
		n, kind, next, ok := r.asidePair(&found, k, verb, end > i)
		if ok {
			if kind != nil {
				*kind += n
			}
			into, k, end = kind, next, next
			if kind == nil {
				return r.asideOutro(end), end > i
			}
			continue
		}
		u := r.tok(k)
		if u.shape != word || !throwVerbs[u.text] && !asideTalk[u.text] || into != nil && r.joins(k-1) && !throwVerbs[u.text] {
			break
		}
		if into != nil || r.oneOf(k, "didnt", "did", "didn", "not") && !r.oneOf(r.over(k+1, "not", "t", "to", "bother"), "count", "counting", "include", "including", "with", "bother") {
			break // "didn't throw out the 2 daughters"
		}
		verb = verb || throwVerbs[u.text] || r.oneOf(k, "were", "was", "had", "got") || r.oneOf(k, "count", "include", "bother") && r.oneOf(k-1, "didnt", "not", "didn")
		k++
	}
	if end == i {
		return i, false
	}
	t.skipped = both(t.skipped, found)
	if n := found.Total(); total > 0 && total != n && !(pulled && (len(t.said) == 0 || total == len(t.said)+t.skipped.Total())) {
		t.unsure("Of %d tillers you tell what %d were. How many were set aside, and for what?", total, n)
	}
	if total > 0 && r.tok(end).text == ")" {
		return end + 1, true
	}
	if pulled && len(t.said) == 0 {
		t.n = total
		if k := r.over(end, ",", ":", "-", "and", "the", "rest", "others", "remaining", "ones", "were", "was", "are", "scored", "went", "left", "average", "averaged", "avg"); r.isScore(k) {
			return k, true
		}
	}
	return r.asideOutro(end), true
}

// rejects reads "two rejects," before what each of them was: none is a score.
//
//	rejects = [ whole ] ( "rejects" | "chucked" | "out" | … ) ( "," | ":" | … ) before a pair
func (r *reader) rejects(i int) (n, next int) {
	n, k := r.whole(i)
	if k > i && (n < 1 || n > 30 || r.tok(i).decimal) {
		return 0, i
	}
	if n = max(n, 0); k == i && !r.oneOf(k, "rejects", "discards", "throwouts", "duds") {
		return 0, i
	}
	j := r.over(k, "tillers", "tiller", "were", "was", "got", "more")
	if !r.oneOf(j, "rejects", "reject", "discards", "throwouts", "duds", "rejected", "discarded", "chucked", "binned", "tossed", "out", "thrown") {
		return 0, i
	}
	j = r.over(j+1, "out", "away", "aside", "were", "are", "as", "well", "too", "there")
	if !r.oneOf(j, ",", ":", "-", "(", ";") {
		return 0, i
	}
	var s entry.Skipped
	if _, kind, _, ok := r.asidePair(&s, j+1, true, true); !ok || kind == nil {
		return 0, i
	}
	return n, j + 1
}

// onlyRejects reads "two rejects" where it is not told what they were.
func (r *reader) onlyRejects(i int) (n, next int) {
	n, k := r.whole(i)
	if k == i || n < 1 || n > 30 || r.tok(i).decimal || !r.oneOf(k, "rejects", "reject", "discards", "throwouts", "duds", "rejected", "discarded") {
		return 0, i
	}
	if t := r.tok(k + 1); t.shape != end && t.shape != newline && !r.endsSentence(k+1) && t.text != ")" && !r.oneOf(k+1, "as", "too") {
		return 0, i
	}
	return n, k + 1
}

// asideTotal reads how many tillers were set aside, or pulled, before what each
// of them was: "rejected two, one daughter and one without a remnant", "took 8
// tillers, 2 were repro".
//
//	total = whole [ "tillers" ] ( "," | ":" | "-" | "(" ) before a pair
func (r *reader) asideTotal(i int) (n, next int) {
	n, k := r.whole(i)
	if k == i && r.oneOf(i, "couple", "pair") {
		n, k = 2, i+1
	}
	if k == i || n < 1 || n > 60 || r.tok(i).decimal {
		return 0, i
	}
	k = r.over(k, "more", "of", "them", "those", "tillers", "tiller", "ones", "out", "off", "away", "aside", "in", "all")
	if !r.oneOf(k, ",", ":", "-", "(", ";") {
		return 0, i
	}
	var s entry.Skipped
	if _, kind, _, ok := r.asidePair(&s, k+1, true, true); !ok || kind == nil {
		return 0, i
	}
	return n, k + 1
}

// asideNear tells whether a word that may set tillers aside stands in the next
// words. How far none stands is kept from call to call.
func (r *reader) asideNear(i int) bool {
	if i < r.asideFrom || i > r.asideNext {
		r.asideFrom, r.asideNext = i, i
	}
	last := i + mostAsideWords + longestRun
	for ; r.asideNext < min(last, len(r.toks)); r.asideNext++ {
		t := r.tok(r.asideNext)
		if t.shape == word && (t.tag == reproWord || t.tag == daughterWord || t.tag == remnantWord || t.text == "seed" || t.text == "head" || t.text == "heads" || reproTalk[t.text]) {
			break
		}
	}
	return r.asideNext < last
}

// asidePair reads one number of tillers with what they were.
func (r *reader) asidePair(s *entry.Skipped, i int, verb, further bool) (n int, into *int, next int, ok bool) {
	k := i
	word1 := r.tok(i).shape == word
	switch m, j := r.whole(i); {
	case j > i && m >= 1 && m <= 30 && !r.tok(i).decimal:
		n, k = m, j
	case r.oneOf(i, "a", "an", "another", "one"):
		n, k = 1, i+1
		if m, j := r.whole(k); j > k && m >= 1 && m <= 30 && r.oneOf(i, "another") {
			n, k = m, j
		} else if r.oneOf(k, "couple", "pair") {
			n, k = 2, k+1
		}
	case r.oneOf(i, "couple", "pair"):
		n, k = 2, i+1
	case r.oneOf(i, "no", "none", "zero"):
		into, j := r.asideKind(s, r.over(i+1, "of", "them", "were", "was", "had", "with"))
		return 0, into, j, into != nil && into != &s.NoRemnant
	default:
		return 0, nil, i, false
	}
	tied := false
	paddock := r.tok(i).shape == number && n > 4 && r.bears(r.tok(i).text)
	for last := k + longestRun; k < last; k++ {
		u := r.tok(k)
		if into, j := r.asideKind(s, k); into != nil {
			if !verb && !tied && !word1 && !further && (r.tok(i-1).shape == number || !throwVerbs[r.tok(r.over(j, "were", "was", "got", "all", "that", "i", "we", "which", "both")).text]) {
				return 0, nil, i, false // "2 repro" alone: a score of 2 and one set aside
			}
			if r.oneOf(i, "a", "an") && !verb && !further {
				return 0, nil, i, false
			}
			if same, j2 := r.asideKind(s, r.over(j, "with", "had", "and", "showing")); same == into && j2 > j && r.tok(j).tag == withWord {
				j = j2
			}
			return n, into, j, true
		}
		switch {
		case u.text == "," && r.oneOf(k+1, "both", "all", "they", "theyre"):
			tied = true
		case r.oneOf(k, "it", "its") && n > 1, paddock && r.oneOf(k, "as", "because", "cos", "coz", "since"):
			return 0, nil, i, false // "skipped 13 as it was heading"
		case u.shape != word || !tieWords[u.text] && !(verb && (asideTalk[u.text] || throwVerbs[u.text])) && !(throwVerbs[u.text] && (r.oneOf(k-1, "i", "we", "ive") || r.oneOf(k-1, "that"))):
			return 0, nil, i, false
		case r.oneOf(k, "was", "were", "had", "with", "is", "are", "thats", "being", "as", "because", "cos", "coz", "for", "other", "others", "more", "extra"), throwVerbs[u.text]:
			tied = true
		}
	}
	return 0, nil, i, false
}

// asideKind reads why a tiller is set aside, with turns that say it only of
// tillers that are counted: "2 going to seed".
func (r *reader) asideKind(s *entry.Skipped, i int) (*int, int) {
	if t := r.tok(i); t.shape != word || t.tag == timesWord {
		return nil, i
	}
	switch {
	case r.oneOf(i, "going", "gone", "running", "run", "went", "turning") && r.oneOf(i+1, "to", "repro", "reproductive") && (r.oneOf(i+2, "seed", "head") || !r.oneOf(i+1, "to")):
		if r.oneOf(i+1, "to") {
			return &s.Reproductive, i + 3
		}
		return &s.Reproductive, i + 2
	case reproTalk[r.tok(i).text]:
		return &s.Reproductive, i + 1
	case r.oneOf(i, "in", "with", "had") && (r.oneOf(i+1, "head", "flower") || r.oneOf(i+1, "seed") && r.oneOf(i+2, "heads", "head")):
		return &s.Reproductive, r.over(i+2, "heads", "head")
	case r.oneOf(i, "without", "missing", "lacking", "lacked") && r.tok(r.over(i+1, "a", "any", "the", "its", "their")).tag == remnantWord:
		return &s.NoRemnant, r.over(r.over(i+1, "a", "any", "the", "its", "their")+1, "leaf", "leaves", "left")
	case r.oneOf(i, "didnt", "dont") && r.oneOf(i+1, "have", "show") && r.tok(r.over(i+2, "a", "any", "the")).tag == remnantWord:
		return &s.NoRemnant, r.over(r.over(i+2, "a", "any", "the")+1, "leaf", "leaves", "left")
	}
	into, k := r.asideWord(s, i)
	if into == &s.NoRemnant {
		k = r.over(k, "leaf", "leaves", "left")
	}
	if into != nil {
		k = r.over(k, "tiller", "tillers", "ones", "one", "on", "them", "it")
	}
	return into, k
}

// asideJoint tells whether a token joins two pairs.
func (r *reader) asideJoint(i int) bool {
	t := r.tok(i)
	return t.text == "," || t.text == "&" || t.text == "+" || t.tag == andWord || t.tag == plusWord || t.tag == thenWord
}

// asideOutro steps over what was done with them: "off and didn't count them",
// "so left those out".
//
//	outro = { "," | "so" | "and" | … } { verb | particle | pronoun } up to a mark or the end
func (r *reader) asideOutro(i int) int {
	k := i
	for last := i + mostAsideWords; k < last; k++ {
		t := r.tok(k)
		if t.shape == word && (throwVerbs[t.text] || asideTalk[t.text] || asideBehind[t.text]) {
			continue
		}
		if t.text == "," && (r.oneOf(k+1, "so", "which", "didnt", "and", "but", "all", "both", "not") || throwVerbs[r.tok(k+1).text]) {
			continue
		}
		break
	}
	more := r.tok(k).shape == number
	for k > i && (r.asideJoint(k-1) || more && r.tok(k-1).tag == withWord) {
		k--
	}
	if t := r.tok(k); t.shape == word && !r.asideJoint(k) || t.shape == number {
		return i
	}
	return k
}

// mostAsideWords is how far such talk goes (ours).
const mostAsideWords = 18

var (
	// throwVerbs are what is done with a tiller that is not counted.
	throwVerbs = wordSet(`threw throw thrown throwing chucked chuck chucking tossed toss tossing binned bin binning discarded discard discarding ditched ditching
		dumped dumping dropped dropping removed removing excluded excluding exclude ignored ignoring ignore skipped skipping skip rejected rejecting left leaving
		pulled pulling took taking taken peeled peeling stripped stripping picked set put turfed turfing biffed biffing flicked flung pitched scrapped culled
		less bar except apart besides lost knocked rid plucked hoiked hoofed pegged eliminated omitted omitting minus found spotted counted counting`)
	// asideTalk may stand between such a verb and its number.
	asideTalk = wordSet(`out off away aside he she hed i we ive weve id had have to of the then also just another got get did didnt didn not count include including bother with
		on from there were was are is about so and but them those these it all more other others extra first up side one top over which that too only`)
	// reproTalk tells of a tiller that heads only where it is one of those counted.
	reproTalk = wordSet(`seeding seeded bolting bolted flowering flowered flower`)
	// tieWords tie a number of tillers to what they were.
	tieWords = wordSet(`thats of them those these the was were had with is are being having showing that which who a an more other others extra also tiller tillers ones one
		as because cos coz since for they it looked too already all both i we ive starting started just clearly obviously off out away aside were got had going pulled`)
	// asideBehind may stand behind what they were.
	asideBehind = wordSet(`off out away aside didnt dont not count counted counting include included use score scored bother so as well too them those that it these
		and but which i we ive have they were was got in the bin bucket ground to one side ones altogether all first before though tho obviously again done measure measured
		hence thats both either from tally average of course for good already straight`)
	asideOpeners = joinSets(throwVerbs, wordSet(`a an another one he she id hed couple two three four five six seven eight nine ten i we had have got did didnt not there with and plus also then the other ive all no none zero rejects discards throwouts duds`))
)
