package parser

// shorthand takes words as people type and say them for what they stand for:
// "b4 lunch" is before lunch, "out of 9 an in 10" is and. An article stays one:
// "an inch", "an 8 tiller average".
func (r *reader) shorthand() {
	for i := 0; i < len(r.toks); i++ {
		t := &r.toks[i]
		if t.shape != word || len(t.text) > 2 && t.text != "full" && t.text != "comma" && !spokenFor[t.text] && !bodies[t.text] && t.text != "form" {
			continue
		}
		switch n := r.tok(i + 1); {
		case t.text == "full" && n.text == "stop":
			r.remake(t, mark, ".")
			t.end = n.end
			t.glued = false
			r.toks = append(r.toks[:i+1], r.toks[i+2:]...)
		case t.text == "comma":
			r.remake(t, mark, ",")
		case bodies[t.text]:
			if n.text == "1" && n.glued && !r.bears(t.text+"1") {
				r.remake(t, word, map[string]string{"sum": "someone", "any": "anyone", "every": "everyone"}[t.text])
				t.end = n.end
				r.toks = append(r.toks[:i+1], r.toks[i+2:]...)
			}
		case t.text == "form":
			if u := r.tok(i + 2); n.shape == number && u.shape == word && (u.tag == toWord || u.tag == intoWord) {
				t.text, t.tag = "from", fromWord // "milkers form 12 to 13"
				r.respelt = append(r.respelt, "read “form” as from")
			}
		case spokenFor[t.text] && t.text[0] == 's' && (n.text == "be" || n.text == "have" || n.text == "read"):
			t.text, t.tag = "should", lexicon["should"].tag
		case spokenFor[t.text]:
			if n.shape == word && (n.text == "u" || n.text == "you" || n.text == "ya" || n.text == "i" || n.text == "we") {
				t.text, t.tag = map[byte]string{'c': "could", 'w': "would", 's': "should"}[t.text[0]], lexicon["could"].tag
			}
		case t.text == "in" && n.text == "." && n.glued && r.inchPoint(i):
			t.text, t.tag, t.end = "inch", inchUnit, n.end
			r.toks = append(r.toks[:i+1], r.toks[i+2:]...)
		case t.text == "in" && r.inchesTold(i):
			t.text, t.tag = "inch", inchUnit
		case t.text == "an" && r.andForAn(i):
			t.text, t.tag = "and", andWord
		case t.text == "b" && n.text == "4" && n.glued && r.tok(i+2).shape == word && !r.tok(i+2).glued && !r.anyPaddock && !r.bears("b4"):
			t.text, t.tag, t.end = "before", lexicon["before"].tag, n.end
			r.toks = append(r.toks[:i+1], r.toks[i+2:]...)
		}
	}
}

// inchPoint tells whether "in." behind a number is the unit of rain: "0.8 in. of
// rain". A sentence may end behind "in", and another begin.
func (r *reader) inchPoint(i int) bool {
	b := r.tok(i - 1)
	if i == 0 || b.shape != number && b.shape != part {
		return false
	}
	k := i + 2
	if c := r.text[min(r.tok(k).start, len(r.text)-1)]; 'A' <= c && c <= 'Z' {
		return false
	}
	for j := k; j < k+6 && !r.endsSentence(j) && r.tok(j).shape != end; j++ {
		if t := r.tok(j); t.tag == rainWord || t.tag == gaugeWord {
			return r.tok(j+1).shape != number
		}
		if r.tok(j).shape == number {
			return false
		}
	}
	if !b.decimal {
		return false
	}
	for j := i - 1; j >= 0 && !r.endsSentence(j); j-- {
		if t := r.tok(j); t.tag == rainWord || t.tag == gaugeWord {
			return true
		}
	}
	return false
}

// inchesTold tells whether "in" behind a number is the unit: of what was left, or
// of rain, with nothing behind it that stock or rain could be in: "left 3 in;", ".6
// in rain".
func (r *reader) inchesTold(i int) bool {
	b := r.tok(i - 1)
	if i == 0 || b.shape != number && b.shape != part || b.value > 20 {
		return false
	}
	n := r.tok(i + 1)
	wet := n.tag == rainWord || n.tag == ofWord && r.tok(i+2).tag == rainWord
	if wet && (r.monthFirst || b.decimal || b.shape == part) {
		return true
	}
	switch {
	case n.shape == end, n.shape == newline, n.shape == mark && n.text != "-" && n.text != "/", n.text == "-" && !n.glued:
	case n.tag == andWord, n.tag == thenWord, n.tag == plusWord, n.tag == butWord, r.oneOf(i+1, "also", "so"):
	default:
		return false
	}
	k := i - 1
	for k > 0 && (r.tok(k-1).tag == hedgeWord || r.tok(k-1).text == "~" || r.oneOf(k-1, "of", "was", "is", "at", ":", "=")) {
		k--
	}
	t := r.tok(k - 1)
	return k > 0 && (t.tag == leftWord || t.tag == residWord || t.tag == rainWord || t.tag == gaugeWord || t.tag == toWord && r.oneOf(k-2, "down", "back"))
}

// andForAn tells whether "an" is no article: no vowel follows it, or a word that
// bears none.
func (r *reader) andForAn(i int) bool {
	b, n := r.tok(i-1), r.tok(i+1)
	switch n.shape {
	case number:
		return b.shape == number
	case word:
		switch n.text[0] {
		case 'a', 'e', 'i', 'o', 'u':
			return noArticle[n.text]
		case 'h':
			return n.text != "hour" && n.text != "hours"
		}
		return len(n.text) > 1 && n.text[0] < 0x80
	}
	return false
}

// spokenFor are would, could and should as they are typed.
var spokenFor = wordSet(`cud wud shud cld wld shld`)

// bodies are said of somebody with a 1 behind them: "sum1", "any1".
var bodies = wordSet(`sum any every`)

// noArticle are words with a vowel before which "an" is "and".
var noArticle = wordSet(`a it its i im ive ill id all also another our us out in into on onto off after again are is`)
