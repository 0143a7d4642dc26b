package parser

// balesAt reads a number of bales with what they are of: the number is no
// paddock's, whatever the register bears. It gives the act of baling with what was
// baled, and the token behind.
//
//	bales = whole { "big" | "round" | "hay" | "silage" | … } ( "bales" | "rolls" | "wraps" | … ) [ "of" ( "hay" | "silage" ) ]
func (r *reader) balesAt(i int) (act, int, bool) {
	if t := r.tok(i); t.shape != number || t.decimal || r.marked(i+1, i+2) {
		return 0, i, false
	}
	does, shaped := actBale, false
	k := i + 1
	for ; k < i+4 && r.tok(k).shape == word; k++ {
		switch t := r.tok(k); {
		case t.tag == silageWord && t.text != "ensiled" && t.text != "silaged":
			does |= actSilage
		case t.tag == hayWord && t.text == "hay":
			does |= actHay
		case baleShapes[t.text]:
			shaped = true
		case baleNouns[t.text], t.text == "bale" && shaped:
			return r.baledOf(does, k+1)
		case strawLoads[t.text] && (does != actBale || r.oneOf(k+1, "of") && (r.tok(k+2).tag == hayWord || r.tok(k+2).tag == silageWord)):
			return r.baledOf(does, k+1)
		default:
			return 0, i, false
		}
	}
	return 0, i, false
}

// baledOf reads what bales are of, where it stands behind them.
func (r *reader) baledOf(does act, k int) (act, int, bool) {
	if j := r.over(k, "of", "good", "wet", "dry"); j > k || r.tok(k).tag == silageWord || r.tok(k).tag == hayWord {
		switch r.tok(j).tag {
		case silageWord:
			return does | actSilage, j + 1, true
		case hayWord:
			return does | actHay, j + 1, true
		}
	}
	return does, k, true
}

var (
	baleShapes = wordSet(`round square big small large wee mini wrapped wet dry good conventional`)
	baleNouns  = wordSet(`bales squares rounds wraps bigbales`)
	strawLoads = wordSet(`rolls loads load trailers trailerloads trailer wagons wagonloads`)
)

// balePart reads bales that were made: "20 hay bales off 21". Others, put or fed
// somewhere, leave their number in doubt.
func (r *reader) balePart(c *clause, i int) (int, bool) {
	does, k, ok := r.balesAt(i)
	if !ok || r.bears(r.tok(i).text) && r.tok(i-1).tag == padMark {
		return i, false
	}
	j := r.over(k, "came", "come", "taken", "carted", "made")
	if t := r.tok(j); t.shape == word && (t.tag == offWord || t.tag == fromWord || t.tag == outWord && r.tok(j+1).tag == ofWord) && (r.padAhead(j+1) || r.padAhead(j+2)) {
		c.acts |= does
		c.remarks++
		return j, true
	}
	switch {
	case len(c.pads) > 0 && r.oneOf(i-1, "made", "did", "gave", "yielded", "produced"):
		c.acts |= does
		c.remarks++
		return k, true
	case !r.bears(r.tok(i).text) || r.oneOf(i+1, "bales"):
		return i, false
	}
	return r.odd(c, i, k), true
}
