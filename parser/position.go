package parser

// A paddock may be called Back, Top or Flat, and a part of another be told by
// the same word: "the top half of 22", "the back corner of 7". That names no
// paddock Top.

// partNamed tells whether the name at i only tells which part of a paddock, or of
// the farm, is meant.
//
//	part-of = position part | name part "of"
func (r *reader) partNamed(i int, p place) bool {
	t := r.tok(i)
	if t.shape == word && p.next == i+1 && r.sayings(i) {
		return true
	}
	if t.shape != word || p.next != i+1 || !partNames[r.tok(p.next).text] || r.tok(p.next).shape != word {
		return false
	}
	of := r.tok(p.next+1).tag == ofWord
	if n := r.tok(p.next + 1); positions[t.text] && r.oneOf(p.next, "half", "quarter", "third", "corner", "end", "side", "bit", "section") && (n.shape == number && !n.decimal && n.value > 4 || n.tag == padMark) && r.padAhead(p.next+1) && !r.isScore(p.next+2) {
		return true // "back corner 9 is boggy"
	}
	if positions[t.text] && i == r.opening && r.oneOf(p.next, "half", "corner", "end", "side") && r.isScore(p.next+1) {
		return true // "back end 2.5 2 2": no count of Back
	}
	if u := r.tok(p.next + 1); positions[t.text] && u.shape == word && (u.tag == inWord || u.tag == atWord || u.tag == onWord) && r.padAhead(p.next+2) && !r.oneOf(p.next, "half", "quarter", "third") {
		return true // "back fence in 12"
	}
	if !positions[t.text] {
		return of && !r.oneOf(p.next, "half", "quarter", "third") // "hill end of 12"
	}
	return of || i > 0 && (r.oneOf(i-1, "the", "that", "this"))
}

var (
	// positions are words of place that paddocks are named by too.
	positions = wordSet(`top bottom back front flat middle near far north south east west upper lower left right long high low inside outside`)
	// lies tell how a part of a paddock lies.
	lies = wordSet(`swampy boggy wet damp dry steep shady sunny hilly rough sandy stony weedy gully creek river road shed house bush rocky lush other far nearer further farther soggy exposed sheltered`)
	// partNames are parts that a paddock has.
	partNames = wordSet(`half end corner third quarter bit part side section strip edge portion piece boundary fence fenceline gate gateway trough break hedge two-thirds`)
)

// partAhead steps over "the back corner of" before a paddock and gives how much
// of it that is, where it tells.
//
//	part-ahead = [ "the" ] ( position | lie ) part "of" [ "the" ]
func (r *reader) partAhead(i int) (share float64, next int) {
	if r.tok(i).shape != word || r.tok(i+1).shape != word {
		return 0, i
	}
	if k := r.someOf(i); k > i {
		return 0, k
	}
	k := r.over(i, "the", "that")
	if r.tok(k+2).tag != ofWord || r.tok(k+1).shape != word {
		return 0, i
	}
	if !positions[r.tok(k).text] && !lies[r.tok(k).text] || r.tok(k).shape != word || !partNames[r.tok(k+1).text] || r.tok(k+2).tag != ofWord {
		return 0, i
	}
	next = r.over(k+3, "the")
	if !r.padAhead(next) {
		return 0, i
	}
	return map[string]float64{"half": 0.5, "quarter": 0.25, "third": 1. / 3}[r.tok(k+1).text], next
}

// someOf steps over "most of", "a good bit of", "nearly all of" before a paddock.
//
//	some-of = { "a" | "the" | "good" | … } ( "most" | "some" | "bit" | … ) "of" | ( "nearly" | "almost" | … ) "all" "of"
func (r *reader) someOf(i int) int {
	k := r.over(i, "a", "the", "good", "fair", "big", "wee", "little", "small", "best", "decent", "only")
	switch {
	case r.oneOf(k, "most", "some", "bit", "part", "chunk", "majority", "bulk", "corner", "strip", "bits", "parts"):
	case r.oneOf(k, "nearly", "almost", "practically", "virtually") && r.oneOf(k+1, "all"):
		k++
	default:
		return i
	}
	if r.tok(k+1).tag != ofWord {
		return i
	}
	if k = r.over(k+2, "the"); !r.padAhead(k) {
		return i
	}
	return k
}

// sayingPart steps over a saying whose other words would tell something: "flat
// out", "back and forth".
func (r *reader) sayingPart(c *clause, i int) int {
	switch {
	case !r.sayings(i):
		return i
	case r.oneOf(i, "flat") && r.oneOf(i+1, "out"):
		c.remarks++
		return i + 2
	case r.oneOf(i, "back") && r.oneOf(i+1, "and"):
		c.remarks++
		return i + 3
	}
	return i
}

// sayings tells whether a word of place is part of a saying: "top job", "flat
// out here", "I'm back".
func (r *reader) sayings(i int) bool {
	switch r.tok(i).text {
	case "top":
		return r.oneOf(i+1, "job", "notch", "stuff", "marks", "effort", "bloke", "man", "lad", "work")
	case "flat":
		return r.oneOf(i+1, "out") && i > 0 && r.oneOf(i-1, "im", "i", "were", "we", "been", "be", "being", "was", "is", "are", "hes", "shes", "theyre", "going", "working", "run", "running", "all", "ive", "ill") ||
			r.oneOf(i+1, "out") && r.oneOf(i+2, "here", "there", "all", "at", "busy", "as", "sorry", "with", "on") && !r.padAhead(i+3) ||
			r.oneOf(i+1, "tyre", "tire", "battery", "batteries", "stick", "strap", "tack")
	case "back":
		n := r.tok(i + 1)
		if r.oneOf(i-1, "contractors", "contractor", "balers", "baler", "drivers", "driver", "vets", "boss", "hes", "shes", "theyre", "im", "ill") && r.oneOf(i+1, "when", "once", "tomorrow", "later", "soon", "on", "after", "next", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday") {
			return true
		}
		return r.oneOf(i+1, "and") && r.oneOf(i+2, "forth", "forward", "forwards") || i > 0 && r.oneOf(i-1, "im", "hes", "shes", "were") && (n.shape == mark || n.shape == end || n.shape == newline)
	}
	return false
}
