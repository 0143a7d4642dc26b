package farm

import "leafround/core/entry"

// stripGap is the longest time, in days, between two strips of one grazing
// (ours: a week; a mob stays three days without a back fence, and longer with).
const stripGap = 7

// strip gives the share of the standing grass that begins anew when a part of
// the paddock was grazed: parts that follow each other within days are strips
// of one grazing, so the second half is all of what was left.
func (w *walk) strip(day entry.Date, part float64) float64 {
	if day.Sub(w.partDay) > stripGap {
		w.grown = 0
	}
	left := 1 - w.grown
	w.partDay = day
	if part >= left-1e-9 {
		w.grown = 0
		return 1
	}
	w.grown += part
	return part
}

// follows tells whether a part was grazed so lately that what is grazed now is
// the next part of the same grazing.
func (w *walk) follows(day entry.Date) bool {
	return w.grown > 0 && day.Sub(w.partDay) <= stripGap
}

// parts gives a part that follows on others what the first of them had: it eats
// what had grown since then, and is no grazing a day after a grazing.
func (w *walk) parts(g *Grazing) {
	if !w.follows(g.Out) {
		w.first = *g
		return
	}
	g.Before, g.Met, g.During, g.Began = w.first.Before, w.first.Met, w.first.During, w.first.Out
	if !w.first.In.IsZero() {
		g.Began = w.first.In
	}
}
