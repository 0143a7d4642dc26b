package parser

// standstill reads a remark that looks like a denial: "13 hasn't moved much",
// "12 not grown a lot". It is about the grass only where no stock are named and
// no direction follows.
//
//	standstill = ( "hasnt" | "havent" | "not" | "barely" | "hardly" | "didnt" ) [ "really" ] growth [ "much" | "a" "lot" | "at" "all" | … ]
func (r *reader) standstill(c *clause, i int) int {
	t := r.tok(i)
	if len(c.pads) != 1 || len(c.mobs) > 0 || c.says() || t.shape != word || t.tag != negWord && t.tag != notWord {
		return i
	}
	k := r.over(i+1, "really", "even", "been")
	if !growthWords[r.tok(k).text] {
		return i
	}
	grass := r.oneOf(k, "grown", "growing", "changed", "improved")
	k = r.over(k+1, "on", "along", "away")
	far := k
	k = r.over(k, "much", "a", "lot", "at", "all", "far", "any", "anywhere", "really", "since", "yet", "further")
	if !grass && (k == far || r.tok(k-1).text == "since") {
		return i // "13 hasn't moved" may be said of the stock
	}
	switch n := r.tok(k); n.tag {
	case fromWord, outWord, offWord, intoWord, toWord, inWord, mobWord, looseMob:
		return i
	}
	c.remarks++
	return k
}

// growthWords tell how far the grass has come.
var growthWords = wordSet(`moved moving done doing come coming grown growing changed improved budged shifted gone going`)

// stands tells whether a clause holds a standstill.
func (r *reader) stands(c *clause) bool {
	for i := c.from; i+1 < c.to; i++ {
		if t := r.tok(i); (t.tag == negWord || t.tag == notWord) && growthWords[r.tok(r.over(i+1, "really", "even", "been")).text] {
			return true
		}
	}
	return false
}
