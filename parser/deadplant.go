package parser

// deadPlant tells whether it is a plant that is dead or dying, where no animal is named
// between the marks beside it: "stalks dead", "dead grass at the base", or what stands right
// behind a list of scores: "3 3 2.5 3. Two of them dying off at the bottom". A plant
// that something lies in or under is none of it: "found in the thistles, dead".
func (r *reader) deadPlant(from, k int) bool {
	parts := func(i int) bool { return r.endsSentence(i) || r.tok(i).text == "," }
	start, end := k, k
	for start > from && !parts(start-1) {
		start--
	}
	for end < len(r.toks) && !parts(end) {
		end++
	}
	if r.anyBeast(start, end) {
		return false
	}
	if plants[r.tok(k+1).text] {
		return true
	}
	for i := max(start, k-4); i < k; i++ {
		b := r.tok(r.back(i-1, "the", "some", "a", "tall", "long"))
		if plants[r.tok(i).text] && (i == start || b.shape != word || !lyingIn[b.text]) {
			return true
		}
	}
	n := 0
	for i := start - 2; i >= from && n < 3; i-- {
		switch t := r.tok(i); {
		case r.isScore(i) && t.value <= 5:
			n++
		case t.text != ",":
			return false
		}
	}
	return n == 3
}

var (
	plants = wordSet(`grass stalk stalks stem stems leaf leaves tiller tillers clover thistle thistles dock docks weeds matter material litter ragwort nettles rushes`)
	// lyingIn stand before what something lies in.
	lyingIn = wordSet(`in into on onto under among amongst by near behind beside through of off against between`)
)
