package parser

// Not all of a paddock, or not all of the stock: "grazed 22 bar the top corner",
// "22 done apart from the swampy bit". How much that leaves is not told, so that
// it is asked.

const (
	partly = "Not all of it? Please send how much was done, such as: half of 12 grazed."
	allBut = "All but which? I cannot take an exception: please name the paddocks that it was."
)

// exceptionPart reads an exception of a paddock's part behind the paddock.
//
//	exception = except [ "for" | "from" ] { word } part | ( "except" | "bar" | … ) [ "for" ] ( "where" | "round" | … )
func (r *reader) exceptionPart(c *clause, i int) int {
	if len(c.pads) == 0 || c.count != nil || c.has(actsHold|actRelease|actRain|actTemp) {
		return i
	}
	k := i + 1
	firm := true
	switch r.tok(i).text {
	case "bar", "except", "excepting", "excluding", "barring":
		k = r.over(k, "for", "from")
	case "apart", "aside":
		if !r.oneOf(k, "from") {
			return i
		}
		k++
	case "other":
		if !r.oneOf(k, "than") {
			return i
		}
		k++
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
