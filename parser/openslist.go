package parser

// The number that opens a list of scores may be the paddock or a score.

// opensList tells whether nothing but courtesy and days stands before a token in
// its sentence: the number there is the paddock of a list, not its first score.
func (r *reader) opensList(i int) bool {
	for k := i - 1; k >= 0; k-- {
		t := r.tok(k)
		switch {
		case t.shape == newline:
			return true
		case t.shape == mark && (t.text == "." || t.text == "!" || t.text == "?" || t.text == ";"):
			return !(r.listOfCommas3(i) && r.padBefore(k))
		case t.shape == word && (t.tag == filler || t.tag == courtesy || t.tag == onWord || t.tag >= todayWord && t.tag <= ordinalWord), t.shape == mark:
		default:
			return false
		}
	}
	return true
}

// listOfCommas3 tells whether three scores stand at i with commas between them:
// the first of "2, 2, 2.5" is hardly their paddock.
func (r *reader) listOfCommas3(i int) bool {
	return r.tok(i+1).text == "," && r.isScore(i+2) && r.tok(i+3).text == "," && r.isScore(i+4)
}

// padBefore tells whether a paddock is named in the sentence before a mark.
func (r *reader) padBefore(i int) bool {
	for k := i - 1; k >= 0 && k > i-longestPiece; k-- {
		if t := r.tok(k); t.shape == newline || t.text == "." && !t.glued {
			return false
		}
		if p, ok := r.onePad(k, false); ok && p.known {
			return true
		}
	}
	return false
}
