package parser

import "strconv"

// joinNumbers makes one token of "twenty-four" and "thirty two", and digits of a
// number in words that belongs to a registered name: "top one" is Top 1, "forty
// acre" is 40 Acre.
func (r *reader) joinNumbers() {
	for i := 0; i < len(r.toks); i++ {
		t := r.tok(i)
		if t.tag != numberWord || t.shape != word {
			continue
		}
		if t.sense >= 20 {
			r.joinNext(t, i)
		}
		if digits := strconv.Itoa(int(t.sense)); r.namedByWord(i, digits) {
			t.tag, t.value = unknown, float64(t.sense)
			r.remake(t, number, digits)
		}
	}
}

// joinNext adds the ones behind a number of tens.
func (r *reader) joinNext(t *token, i int) {
	j := i + 1
	if r.tok(j).text == "-" && r.tok(j).glued {
		j++
	}
	if u := r.tok(j); u.tag == numberWord && u.shape == word && u.sense > 0 && u.sense < 10 {
		t.sense, t.end = t.sense+u.sense, u.end
		r.toks = append(r.toks[:i+1], r.toks[j+1:]...)
	}
}

// namedByWord tells whether a number in words ends or begins a registered name.
func (r *reader) namedByWord(i int, digits string) bool {
	if b := r.tok(i - 1); i > 0 && b.shape == word && r.bears(b.text+digits) {
		return true
	}
	n := r.tok(i + 1)
	return n.shape == word && r.bears(digits+n.text)
}
