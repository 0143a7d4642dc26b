package parser

import "leafround/core/entry"

// One score may stand for several tillers: "2.5x4", "4x2.5".

// repeat reads "x4" behind a score.
func (r *reader) repeat(t *tally, i int) (times, next int) {
	x, n := r.tok(i), r.tok(i+1)
	if x.tag != timesWord && x.text != "*" || n.shape != number || n.decimal {
		return 1, i
	}
	if x.text == "*" && x.glued && !n.glued {
		t.unsure("What does the “*” mean among the scores?")
		return 1, i + 1
	}
	if !x.glued && !n.glued && n.value < 5 && x.tag == timesWord {
		if len(t.said) > 0 || r.isScore(i+2) {
			return 1, i // "2 x 2": the x is a tiller set aside
		}
		t.unsure("Is “x %s” a repeat, or a tiller set aside? Please write 2.5x4 for four tillers of 2.5.", n.text)
	}
	if n.value < 1 || n.value > 60 {
		t.unsure("I cannot read “x%s” as a number of tillers.", n.text)
		return 1, i + 2
	}
	return int(n.value), i + 2
}

// timesBefore reads "4x2.5", where only the first number can be how many.
func (r *reader) timesBefore(t *tally, a amount, i int) (int, bool) {
	x := r.tok(a.next)
	if x.tag != timesWord && x.text != "*" || a.decimal {
		return i, false
	}
	b, ok := r.value(a.next + 1)
	if ok && !x.glued && b.decimal && x.tag == timesWord && a.value <= 10 && len(t.said) == 0 && r.tok(b.next).shape != word && !r.isScore(b.next) {
		t.unsure("Is that %g tillers of %g? Please write it without spaces, such as 4x2.5.", a.value, b.value)
		if !t.looked {
			r.offer(t.doubt, i, b.next, r.tok(i).text+"x"+r.source(a.next+1, b.next), "")
		}
	}
	if !ok || !x.glued || a.value > 60 || r.unitAhead(b.next) {
		return i, false
	}
	if !b.decimal && a.value <= 4 {
		return i, false // 2x4: four tillers of 2
	}
	if a.value < 1 || b.value > 6 {
		return i, false
	}
	t.decimal = t.decimal || b.decimal
	for range int(a.value) {
		t.said = append(t.said, entry.Tiller{Score: entry.LeafStage(b.value)})
	}
	return b.next, true
}
