package parser

// An animal that is down is an alarm; a team that is two goals down is none.

// animalDown reads "2 down in 11", "cow down", "a cow cant get up".
func (r *reader) animalDown(from, to int) bool {
	if r.downThere(from, to) {
		return true
	}
	for i := from; i < to; i++ {
		t, b, n := r.tok(i), r.tok(i-1), r.tok(i+1)
		if t.text != "down" {
			continue
		}
		if r.downBeast(from, i) {
			return true
		}
		if i == from {
			continue
		}
		if n.tag == toWord || r.oneOf(i-1, "gone", "went", "goes", "going") && n.shape == word && n.tag != inWord && n.tag != onWord && n.tag != atWord && n.text != "behind" && n.text != "with" && n.text != "now" {
			continue
		}
		animal := stockOnly[b.text] || (stockOnly[r.tok(i-2).text] || stockOnly[r.tok(i-3).text]) && (b.text == "is" || b.text == "are" || b.text == "gone" || b.text == "went" || b.text == "goes" || b.text == "going") || b.text == "was" && r.oneBeast(from, i)
		counted := (b.shape == number && !b.decimal && b.value < 20 || b.tag == numberWord || b.text == "couple" || b.text == "one") && (n.tag == inWord || n.shape == end || r.endsSentence(i+1) || n.tag == onWord || n.tag == atWord)
		if r.ofGame(i-1) || counted && !animal && r.placeEnds(from, i-1) && !r.endsSentence(i+1) && n.shape != end {
			continue // "milkers in 12 down at the bottom"
		}
		stands := n.shape == end || r.endsSentence(i+1) || n.text == "," || r.oneOf(i+1, "again", "now", "and", "not", "cant", "wont", "but", "since")
		if tagged(b) && r.beast(i-2) && r.oneBeast(from, i) && (n.tag == inWord || n.tag == atWord || n.tag == onWord) {
			return true // "cow 412 down in 12"
		}
		if stands && (r.placeEnds(from, i-1) || r.oneOf(i-1, "is", "are") && r.placeEnds(from, i-2) || tagged(b) && n.tag != toWord) && r.illBefore(from, i) {
			return true // "cow in 12 down again", "cow 412 down"
		}
		if animal && n.text != "the" || counted && (n.shape != end && !r.endsSentence(i+1) || b.value < 6 && r.stockCounted(from, i-2)) {
			return true
		}
	}
	return false
}

// downThere reads a sentence that says no more than how many are down in a paddock:
// "12: one down", "hill has two down again", "one down, 12".
//
//	there = place [ mark | "has" | "got" ] whole "down" [ "again" | "now" ] | whole "down" [ mark ] place
func (r *reader) downThere(from, to int) bool {
	from, to = r.trim(from, to)
	if to-from > 8 {
		return false
	}
	if p, ok := r.onePad(from, false); ok && p.known {
		k := p.next
		if r.tok(k).shape == mark && r.tok(k).text != "/" || r.oneOf(k, "has", "got", "with") {
			k++
		}
		return r.fewHead(k) && r.oneOf(k+1, "down") && r.over(k+2, "again", "now") == to
	}
	if !r.fewHead(from) || !r.oneOf(from+1, "down") {
		return false
	}
	k := from + 2
	if r.tok(k).shape == mark {
		k++
	}
	p, ok := r.onePad(k, false)
	return ok && p.known && p.next == to
}

// fewHead tells whether a token counts a few animals.
func (r *reader) fewHead(i int) bool {
	t := r.tok(i)
	return t.shape == number && !t.decimal && t.value > 0 && t.value < 20 || t.tag == numberWord && t.shape == word
}

// tagged tells whether a number may be an ear tag's.
func tagged(t *token) bool { return t.shape == number && !t.decimal && t.value >= 100 }

// downBeast reads "found a down cow in 12".
//
//	downBeast = [ "a" | "the" | "another" | number ] "down" animal
func (r *reader) downBeast(from, i int) bool {
	if !r.beast(i+1) || i > from && r.tok(i-1).shape == word && !r.oneOf(i-1, "a", "the", "another", "one", "two", "that", "with", "got", "have", "found", "is", "its") && r.tok(i-1).tag != numberWord {
		return false
	}
	k := i + 2
	n := r.tok(k)
	return n.tag == inWord || n.tag == atWord || n.tag == onWord || n.shape == end || r.endsSentence(k) || n.text == ","
}

// stockCounted tells whether stock are named right before so many that are down:
// "ewes: 2 down", "cows in 11, two down".
func (r *reader) stockCounted(from, k int) bool {
	if r.tok(k).shape == mark {
		k--
	}
	return k >= from && (stockOnly[r.tok(k).text] || r.tok(k-1).tag == inWord && k-2 >= from && stockOnly[r.tok(k-2).text])
}

// ofGame tells whether a number before "down" is a score of a game: "two nil down",
// "three one down", "one down and five to go".
func (r *reader) ofGame(i int) bool {
	t, b := r.tok(i), r.tok(i-1)
	switch {
	case t.tag != numberWord && t.shape != number:
		return false
	case r.oneOf(i, "nil", "nought", "zero"), (b.tag == numberWord || b.shape == number && i > 0) && r.tok(i-2).tag != inWord && r.tok(i-2).tag != padMark, b.text == "-" && r.tok(i-2).shape == number:
		return true
	}
	for k := i + 2; k < i+7 && !r.endsSentence(k); k++ {
		if r.oneOf(k, "to") && r.oneOf(k+1, "go") && !r.oneOf(k+2, "down") {
			return true
		}
	}
	return false
}
