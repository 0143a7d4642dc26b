package parser

// What people say between a paddock and its scores, or before them.

// gist steps over talk that tells how a paddock looks before its scores: "West
// 80 is all over the place: 1 2 1.5", "8 - all twos bar one, so 2 2 2 2.5". It
// names no paddock, herd or day and tells of nothing done, and three scores or
// more stand right behind it. Behind a comma the first of them may be a
// paddock's number, so that it must be plain that it is none.
//
//	gist = { word } ( ":" | "-" | "," | "so" )
func (r *reader) gist(i int) int {
	k := i
	for r.tok(k).text == "-" && !r.negative(k) || r.tok(k).text == "," {
		k++
	}
	start, twos := k, false
	for ; k < start+12; k++ {
		t := r.tok(k)
		switch {
		case k > start+1 && (t.text == ":" || t.text == "-" && !r.negative(k) || t.text == "," || t.text == "so"):
			firm := t.text == ":" || t.text == "-" || t.text == "so" || twos
			at := r.over(k+1, "so", ":", "-")
			if r.listed3(at, firm || at > k+1) {
				return at
			}
			if t.text != "so" && t.text != "," {
				return i
			}
			continue
		case t.shape != word:
			return i
		case pluralNumbers[t.text]:
			twos = true
			continue
		case t.tag == numberWord && (r.tok(k-1).tag == butWord || r.tok(k-1).tag == andWord && twos || r.oneOf(k-1, "a")):
			continue
		}
		if d, next, ok := r.idiomAt(k); ok {
			if d.guard != 0 || d.acts != 0 || d.event || d.kept {
				return i
			}
			k = next - 1
			continue
		}
		if !gistTags[t.tag] || times[t.text] || t.tag == unknown && mayBeVerb(t.text) || illWords[t.text] || hurtWords[t.text] {
			return i
		}
		if p, ok := r.longest(k); ok && p.known {
			return i
		}
	}
	return i
}

// listed3 tells whether three scores or more stand at a token, all of them
// within what a grass carries; where the list is not firmly tied to what stands
// before it, its first number must be no paddock.
func (r *reader) listed3(i int, firm bool) bool {
	if !r.isScore(i) || !firm && !r.tok(i).decimal && r.tok(i).shape == number && (r.bears(r.tok(i).text) || r.anyPaddock) {
		return false
	}
	t, _ := r.lookAtScores(i)
	for _, s := range t.said {
		if s.Score > 5 {
			return false
		}
	}
	return len(t.said) > 2 && t.doubt == ""
}

// pluralNumbers tell of scores as a crowd.
var pluralNumbers = wordSet(`ones twos threes fours halves quarters`)

// gistTags are the parts of speech of such talk.
var gistTags = map[tag]bool{unknown: true, filler: true, courtesy: true, remark: true, notWord: true, negWord: true, ofWord: true, onWord: true, inWord: true,
	allWord: true, andWord: true, withWord: true, hedgeWord: true, onlyWord: true, readyWord: true, leafWord: true, grassWord: true, butWord: true, nearWord: true,
	toWord: true, dampWord: true}

// cameTo steps over "came up", "came out at", "came to" where scores with a
// point, or several, or leaves follow: stock also come out.
func (r *reader) cameTo(i int) int {
	if !r.oneOf(i, "came", "coming", "comes", "come") {
		return i
	}
	k := r.over(i+1, "in", "up", "out", "back", "to", "at", "around", "about", "as", "an", "average", "with")
	if r.oneOf(k-1, "of") || k == i+1 {
		return i
	}
	a, ok := r.value(k)
	if !ok || !r.isScore(k) || a.value > 5 {
		return i
	}
	if r.oneOf(i+1, "in", "at") || a.decimal || r.isScore(a.next) || r.leafy(a.next) || r.tok(a.next).tag == averageWord {
		return k
	}
	return i
}

// praised steps over a word of praise before a score: "a good 2.5", "a bare 2".
func (r *reader) praised(i int) int {
	if n := r.tok(i + 1); r.oneOf(i, "a") && n.shape == word && (n.tag == remark || r.oneOf(i+1, "bare", "solid", "fair", "full", "scant")) && r.isScore(i+2) {
		return i + 2
	}
	return i
}

// talkedOf tells whether a number told as a word, behind scores in figures, may
// be how many tillers rather than a score, because something is told of it:
// "2 2.5 3 and one broken".
func (r *reader) talkedOf(t *tally, i, next int) bool {
	w := r.tok(next)
	if len(t.said) == 0 || r.tok(i).tag != numberWord || next != i+1 || w.shape != word || w.glued {
		return false
	}
	k := i - 1
	for r.joins(k) {
		k--
	}
	if s := r.tok(k); s.shape != number && s.shape != part {
		return false
	}
	if _, _, idiom := r.idiomAt(next); idiom || r.day(next).ok {
		return false
	}
	return w.tag == unknown || r.oneOf(next, "thats", "that", "which", "is", "was", "had", "has", "with", "in", "going", "gone", "dead", "broken", "snapped", "bent", "short", "eaten", "chewed", "grazed") && r.tok(next+1).shape != number
}
