package parser

import "strings"

// otherJob steps over words of field work that are said of something else: "topped
// up the trough in 12", "got spray for 12", "planted trees in 12".
//
//	other-job = "topped" "up" [ "the" ] thing | ( "got" | "bought" | … ) spray "for" | sown tree
func (r *reader) otherJob(c *clause, i int) int {
	t := r.tok(i)
	switch {
	case t.tag == toppedWord && r.oneOf(i+1, "up"):
		k := r.over(i+2, "the", "my", "our", "all")
		if u := r.tok(k); u.shape == word && u.tag != padMark && !r.padAhead(k) && (u.tag == troubleWord || u.tag == unknown || u.tag == remark) {
			c.remarks++
			c.trouble = c.trouble || u.tag == troubleWord
			return k + 1
		}
	case r.oneOf(i, "got", "bought", "ordered", "collected", "fetched", "mixed"):
		k := r.over(i+1, "the", "some", "more", "our")
		switch r.tok(k).tag {
		case sprayWord, fertWord, effWord:
			if r.tok(k+1).tag == forWord && !strings.HasSuffix(r.tok(k).text, "ed") && r.padAhead(k+2) {
				c.remarks++
				return k + 2
			}
		}
	case r.oneOf(i, "put", "left", "parked", "took", "moved"):
		if k := r.over(i+1, "the", "my", "our"); k > i+1 && r.oneOf(k, "topper", "mower", "mulcher", "slasher", "drill", "sprayer") {
			c.remarks++
			return k + 1 // "put the topper in 12"
		}
	case t.tag == sowWord:
		k := r.over(i+1, "a", "the", "some", "more", "new")
		if n, j := r.whole(k); j > k && n > 0 {
			k = j
		}
		if plantings[r.tok(k).text] {
			c.remarks++
			c.trouble = true
			return k + 1
		}
	}
	return i
}

var plantings = wordSet(`tree trees hedge hedges flax natives poplars willows pines shelterbelt shelter belt garden well bore hole holes post posts pegs`)
