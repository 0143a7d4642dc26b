package parser

// bracketed steps over a remark in brackets, or between dashes, that stands
// between a paddock and its scores: "14 (fescue) 2 2.5 2". It holds no number,
// day, verb or denial: what says more than how the paddock looks is read as a
// clause of its own.
//
//	bracketed = ( "(" | "-" | "," ) words ( ")" | "-" | "," )
func (r *reader) bracketed(i int) int {
	open := r.tok(i)
	var shut string
	switch open.text {
	case "(":
		shut = ")"
	case "-", ",":
		shut = open.text
	default:
		return i
	}
	if open.shape != mark || open.glued && open.text == "-" {
		return i
	}
	for k := i + 1; k < i+7; k++ {
		t := r.tok(k)
		if t.text == shut && t.shape == mark {
			if k == i+1 || shut != ")" && !r.isScore(r.intro(k)) {
				return i
			}
			return k + 1
		}
		if t.shape != word || !r.describes(k, shut == ")") {
			return i
		}
	}
	return i
}

// bracketedDay steps over a day in brackets: "14 (yesterday) 2 2.5 2".
func (r *reader) bracketedDay(i int) int {
	if r.tok(i).text != "(" {
		return i
	}
	if m := r.when(i + 1); m.ok && r.tok(m.next).text == ")" {
		return m.next + 1
	}
	return i
}

// describes tells whether a word does no more than describe a paddock.
func (r *reader) describes(i int, anyWord bool) bool {
	t := r.tok(i)
	if _, _, idiom := r.idiomAt(i); idiom {
		return false
	}
	switch t.tag {
	case grassWord, remark, filler, courtesy, topWord:
		return true
	case unknown:
		return anyWord || placeWords[t.text] || t.text == "new" || t.text == "mix"
	case ofWord, withWord, inWord, onWord, atWord, forWord, andWord, padMark, looseMob:
		return anyWord
	}
	return false
}

// described steps over what describes a paddock before its scores, in brackets
// or without: "14 fescue 2 2.5", "14 the big one 2 2.5".
//
//	described = bracketed | grass { grass } | [ "the" ] looks { looks } "one"
func (r *reader) described(i int) int {
	if k := r.bracketed(i); k > i {
		return k
	}
	k, grass := r.over(i, "the"), true
	for n := 0; n < 3 && r.tok(k).shape == word && looksTags[r.tok(k).tag]; n++ {
		grass = grass && r.tok(k).tag == grassWord
		k++
	}
	switch {
	case r.pronounOne(k):
		k++
	case !grass || !r.twoScores(k):
		return i // "12 fescue 2.1" may tell its area
	}
	if k > i && r.isScore(r.intro(k)) && r.tok(k).text != "the" {
		return k
	}
	return i
}

// twoScores tells whether a list of two scores or more stands at a token.
func (r *reader) twoScores(i int) bool {
	i = r.intro(i)
	a, ok := r.value(i)
	return ok && r.isScore(i) && r.isScore(r.listSeparator(a.next, true))
}

// looksTags are parts of speech that tell one paddock from another by its looks.
var looksTags = map[tag]bool{grassWord: true, remark: true, lastWord: true, ordinalWord: true, dampWord: true, wetWord: true, topWord: true}

// pronounOne tells whether "one" stands for a paddock rather than a score: "the
// big one 2 2.5 2".
func (r *reader) pronounOne(i int) bool {
	if t := r.tok(i); t.text != "one" || t.shape != word || i == 0 {
		return false
	}
	b, n := r.tok(i-1), r.tok(i+1)
	if b.shape != word || r.bears(b.text) || n.shape != number && n.text != ":" && n.text != "," {
		return false
	}
	return looksTags[b.tag] || b.tag == thisWord || b.tag == nextWord || r.oneOf(i-1, "the", "that", "other", "same", "new")
}
