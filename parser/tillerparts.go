package parser

import "leafround/core/entry"

// plusParts reads remnant+full+new behind the first part.
func (r *reader) plusParts(t *tally, a amount) (entry.Tiller, int, bool) {
	list := [3]float64{a.value}
	n, next := 1, a.next
	for n < 3 {
		p, q := r.tok(next), r.tok(next+1)
		b, ok := r.value(next + 1)
		if p.text != "+" || !ok || p.glued && !q.glued {
			break
		}
		list[n], next = b.value, b.next
		n++
	}
	if n == 1 {
		return entry.Tiller{}, a.next, false
	}
	if p, q := r.tok(next), r.tok(next+1); p.text == "+" && q.shape == number && p.glued == q.glued {
		t.unsure("A tiller has three parts at most: remnant + full leaves + new leaf.")
	}
	t.parts, t.decimal = true, true
	return partsOf(t, list, n), next, true
}

// partsOf lays two or three parts on their places.
func partsOf(t *tally, list [3]float64, n int) entry.Tiller {
	one := entry.Tiller{Parts: true}
	whole := func(v float64) bool { return v == float64(int(v)) }
	switch {
	case n == 3:
		one.Remnant, one.Full, one.New = entry.LeafStage(list[0]), entry.LeafStage(list[1]), entry.LeafStage(list[2])
	case list[0] < 1 && whole(list[1]):
		one.Remnant, one.Full = entry.LeafStage(list[0]), entry.LeafStage(list[1])
	case whole(list[0]) && list[1] < 1:
		one.Full, one.New = entry.LeafStage(list[0]), entry.LeafStage(list[1])
	default:
		t.unsure("Which parts are these? Please send remnant + full leaves + new leaf, such as .8+1+.2.")
	}
	if one.Remnant > 1 || one.New > 1 || !whole(float64(one.Full)) {
		t.unsure("The remnant and the new leaf are parts of a leaf, the full leaves a whole number: such as .8+1+.2.")
	}
	return one
}
