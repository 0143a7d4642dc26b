package parser

// splashed tells whether a chemical or heat has hurt a person: spray in the
// eyes, a burn on the arm, something swallowed.
func (r *reader) splashed(from, to int) bool {
	_, stock := r.has(from, to, stockOnly)
	if stock {
		return false
	}
	_, chemical := r.has(from, to, chemicals)
	burn, burns := r.has(from, to, burnWords)
	burns = burns && !r.refuted(from, burn)
	for i := from; i < to; i++ {
		t := r.tok(i)
		if t.shape != word {
			continue
		}
		if chemical && swallowWords[t.text] && !r.refuted(from, i) {
			return true
		}
		if r.oneOf(i, "eye", "eyes") && r.oneOf(i-1, "my", "his", "her") && r.oneOf(i-2, "in") && !r.refuted(from, i) && r.gotIn(max(from, i-8), i-2) {
			return true
		}
		if !(chemical || burns) || !r.oneOf(i, "my", "his", "her", "their") || r.refuted(from, i) {
			continue
		}
		k := r.over(i+1, "left", "right", "whole", "bare")
		switch w := r.tok(k).text; {
		case tenderParts[w] && (chemical || burns):
			return true
		case (limbs[w] || skinParts[w]) && burns:
			return true
		}
	}
	return false
}

// gotIn tells whether something got or splashed somewhere, whatever it is called,
// but the weather.
func (r *reader) gotIn(from, to int) bool {
	splashed := false
	for i := from; i < to; i++ {
		if weatherNames[r.tok(i).text] || r.oneOf(i, "sun", "dust", "hair", "light", "glare", "smoke", "tears", "sleep") {
			return false
		}
		splashed = splashed || r.oneOf(i, "got", "splashed", "squirted", "sprayed", "flicked", "spilt", "spilled", "blew", "spat")
	}
	return splashed
}

// refuted tells whether a word of denial stands shortly before a token.
func (r *reader) refuted(from, k int) bool {
	for i := max(from, k-6); i < k; i++ {
		if r.oneOf(i, "no", "not", "never", "didnt", "without", "avoid", "if", "dont", "none") {
			return true
		}
	}
	return false
}

var (
	chemicals = wordSet(`spray sprays drench acid caustic chemical chemicals bleach glyphosate herbicide insecticide weedkiller poison
		ammonia detergent diesel petrol fuel lime pouron teatspray hypochlorite`)
	burnWords    = wordSet(`burn burns burnt burned burning scald scalded stinging stings`)
	swallowWords = wordSet(`swallowed drank inhaled breathed`)
	tenderParts  = wordSet(`eye eyes face mouth lungs throat`)
	skinParts    = wordSet(`hands arms legs feet skin neck fingers chest`)
)
