package parser

// agreed steps over words that say no more than who wanted it: "as per the
// whiteboard", "as planned", "like you asked".
//
//	agreed = "as" "per" [ "the" | "your" ] word | ( "as" | "like" ) [ person ] wanted
func (r *reader) agreed(i int) int {
	if t := r.tok(i); t.shape != word || t.text != "as" && t.text != "like" {
		return i
	}
	if r.tok(i).text == "as" && r.oneOf(i+1, "per") {
		k := r.over(i+2, "the", "your", "our", "ur", "his", "her", "last", "usual", "morning", "yesterdays")
		if t := r.tok(k); t.shape == word && (t.tag == unknown || r.oneOf(k, "plan", "note", "notes", "order", "text", "summary")) {
			return k + 1
		}
		return i
	}
	k := r.over(i+1, "you", "u", "we", "was", "were", "he", "she", "they", "boss", "had", "i", "id")
	if !wantedWords[r.tok(k).text] {
		return i
	}
	k++
	for r.oneOf(k, "me", "us", "for", "to") && !r.padAhead(k+1) && !r.padAhead(k) {
		k++
	}
	return k
}

var wantedWords = wordSet(`asked wanted requested instructed planned discussed agreed arranged told directed ordered suggested`)

// agreedPart lays it on a clause as a remark.
func (r *reader) agreedPart(c *clause, i int) int {
	k := r.agreed(i)
	if k > i {
		c.remarks++
	}
	return k
}

// agreesAnywhere tells whether such words stand in a run of tokens.
func (r *reader) agreesAnywhere(from, to int) bool {
	for i := from; i < to; i++ {
		if r.agreed(i) > i {
			return true
		}
	}
	return false
}
