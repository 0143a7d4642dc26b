package parser

// Not all of a paddock, or not all of the stock: "grazed 22 bar the top corner",
// "22 done apart from the swampy bit". How much that leaves is not told, so that
// it is asked.

const (
	someOfThem = "Not all of them? Please say which animals went where."
	partly     = "Not all of it? Please send how much was done, such as: half of 12 grazed."
	allBut     = "All but which? I cannot take an exception: please name the paddocks that it was."
)

// exceptionPart reads an exception of a paddock's part behind the paddock.
//
//	exception = except [ "for" | "from" ] { word } part | ( "except" | "bar" | … ) [ "for" ] ( "where" | "round" | … )
func (r *reader) exceptionPart(c *clause, i int) int {
	if len(c.pads) == 0 || c.count != nil || c.has(actsHold|actRelease|actRain|actTemp) {
		return i
	}
	k := i + 1
	if n, j := r.whole(k + 1); len(c.mobs) > 0 && r.oneOf(i, "apart", "aside", "other") && r.oneOf(k, "from", "than") && n > 0 && r.tok(j).shape == word {
		c.unsure(someOfThem)
		return j + 1 // "heifers out of 12 apart from two stragglers"
	}
	firm := true
	switch r.tok(i).text {
	case "bar", "except", "excepting", "excluding", "barring", "apart", "aside", "other":
		if k = r.exceptWord(i); k == i {
			return i
		}
	case "minus", "save", "less":
		k, firm = r.over(k, "for"), false
	case "but", "only", "all":
		firm = false
		if n := r.over(k, "but", "not", "for"); n > k || r.tok(i).text == "but" {
			k = n
			break
		}
		return i
	}
	if firm && r.oneOf(k, "where", "round", "around", "along", "under", "near", "by", "beside", "behind") {
		c.unsure(partly)
		return k + 1
	}
	for last := k + 6; k < last; k++ {
		t := r.tok(k)
		if t.shape != word || t.tag == andWord || t.tag == negWord || len(c.mobs) > 0 && k > i+2 && t.tag == toWord {
			return i
		}
		if (exceptParts[t.text] || positions[t.text] && r.tok(k+1).tag == ofWord) && (k > i+1 || firm) {
			n := r.tok(k + 1)
			if !firm && n.shape != end && n.shape != newline && n.shape != mark && !r.oneOf(k+1, "of", "by", "near", "where", "that", "today", "yesterday", "which", "got", "missed", "left", "still") {
				return i // "grazed 22 but the corner is wet"
			}
			c.unsure(partly)
			k = r.over(k+1, "of", "it", "them")
			if r.tok(k-1).tag == ofWord {
				k--
			}
			return k
		}
		if _, j := r.mob(k); j > k || r.padAhead(k) && !positions[t.text] {
			return i
		}
	}
	return i
}

// exceptParts are what of a paddock may be left.
var exceptParts = joinSets(partNames, wordSet(`patch patches face bank gully gullies swamp hollow hill knob hump rise slope hole ground corners ends bits sides
	strips breaks edges headland headlands drain creek pond trees bush scrub rushes track lane tail middle hillside flats strip sidling terrace paddling`))

// someOfMob reads "some of the heifers": the others went elsewhere.
func (r *reader) someOfMob(c *clause, i int) int {
	if r.tok(i+1).tag != ofWord || r.oneOf(i, "rest") {
		return i
	}
	k := r.over(i+2, "the", "our", "my")
	if _, j := r.mob(k); j == k {
		return i
	}
	c.unsure(someOfThem)
	return k
}

// leftPart reads "left the top corner", "not the back of 13", "didn't touch the far
// end": a part that stock did not graze.
//
//	leftPart = ( "left" | "leaving" | "not" | "missed" | "didnt" "touch" | … ) [ "the" ] { position | lie } part [ "of" place ]
func (r *reader) leftPart(c *clause, i int) int {
	if c.count != nil || c.has(actsHold|actRelease|actRain|actTemp) || c.guard&^guardFuture != 0 || r.asking {
		return i
	}
	k := i + 1
	switch {
	case r.oneOf(i, "left", "leaving", "missed", "missing", "not"):
	case r.oneOf(i, "didnt", "havent", "never") && r.oneOf(k, "touch", "touched", "graze", "grazed", "eat", "eaten", "ate", "do", "done", "get", "got", "clean", "cleaned"):
		k = r.over(k+1, "up", "to", "into")
	default:
		return i
	}
	start := k
	k = r.over(k, "the", "a", "just", "only", "about", "that", "one", "small", "wee", "little", "big")
	for n := 0; n < 2 && (positions[r.tok(k).text] || lies[r.tok(k).text]); n++ {
		k++
	}
	t := r.tok(k)
	switch {
	case k == start || t.shape != word:
		return i
	case r.tok(k).tag == ofWord && positions[r.tok(k-1).text] && r.padAhead(k+1):
		k--
	case !leftParts[t.text]:
		return i
	}
	n := r.tok(k + 1)
	if n.shape != end && n.shape != newline && n.shape != mark && n.tag != ofWord && !r.oneOf(k+1, "by", "near", "along", "for", "behind", "under", "where", "down", "though", "but", "and", "today", "yesterday") {
		return i
	}
	if len(c.pads) == 0 && n.tag != ofWord && !c.has(actGrazed) && !r.grazedBefore(i) {
		return i
	}
	c.acts |= actPlace
	c.unsure(partly)
	return k + 1
}

// grazedBefore tells whether the sentence says before a token that stock grazed.
func (r *reader) grazedBefore(i int) bool {
	for k := i - 1; k >= 0 && k > i-longestPiece && !r.endsSentence(k); k-- {
		if t := r.tok(k); t.shape == word && (t.tag == grazedWord || t.tag == outWord || t.tag == offWord || t.tag == doneWord || t.tag == toppedWord || t.tag == mowWord || eatVerbs[t.text] || r.oneOf(k, "did")) {
			return true
		}
	}
	return false
}

// leftParts are parts of a paddock, and nothing that stands in one.
var leftParts = wordSet(`end corner half third quarter bit part side section strip edge portion piece patch face bank gully swamp hollow hill ends corners sides bits strips headland headlands`)
