package farm

import (
	"slices"

	"leafround/core/entry"
)

// toldAfter is how many days after stock left a word of their leaving is still
// taken for that grazing (ours: as long as a stay may be).
const toldAfter = longStay

// lookedAfter is how many days after stock were told to have left somebody still
// goes and sees what they left (ours).
const lookedAfter = 1

// completes takes an out for more news of the grazing that ended last: where
// that was only inferred ("milkers in 2", then "1 left 1600"), where it is told
// twice in a day, or where what stock left is told after they did. It tells
// whether it was one.
func (w *walk) completes(it item, e entry.Graze) bool {
	n := len(w.p.Grazings)
	if n == 0 || len(w.p.Stays) > 0 || w.p.Regrowth.ID != w.p.Grazings[n-1].ID {
		return false
	}
	g := &w.p.Grazings[n-1]
	if g.Asked || it.day.Sub(g.Out) > toldAfter || it.named && !w.fits(it.mob, g) {
		return false
	}
	again := it.day == g.Out && part(e.Part) == 1 && g.Part == 1
	after := e.Event == entry.Out && it.day.Sub(g.Out) <= lookedAfter && g.Residual == nil && e.Residual != nil && part(e.Part) == g.Part
	if !g.soft && !again && !after {
		return false
	}
	w.complete(it, e, g)
	return true
}

// fits tells whether a mob may be the one of a grazing.
func (w *walk) fits(m *Mob, g *Grazing) bool {
	return len(g.Mobs) == 0 || slices.ContainsFunc(g.Mobs, func(name string) bool { return w.farm.FindMob(name) == m })
}

// complete adds to a grazing what an entry tells of it, and lets regrowth begin
// as it would have.
func (w *walk) complete(it item, e entry.Graze, g *Grazing) {
	g.Told = append(slices.Clone(g.Told), it.id)
	g.soft, g.Back = false, g.Back || e.Back
	if it.named && len(g.Mobs) == 0 {
		g.Mobs = []string{it.mob.Name}
	}
	if e.Residual != nil {
		g.Residual = e.Residual
	}
	r := &w.p.Regrowth
	r.Start = lax(g.Residual)
	if p := part(e.Part); p < g.Part {
		g.Part, r.Share = p, p
		w.grown, w.partDay = p, g.Out
	}
	w.restartAs(*r)
	w.remark(it, Remark{Kind: Completes, Date: g.Out})
}

// restartAs tells the estimator anew how the latest regrowth began.
func (w *walk) restartAs(r Regrowth) {
	for i := len(w.events) - 1; i >= 0; i-- {
		if w.events[i].restart {
			w.events = slices.Clone(w.events) // what was told before stays as it was told
			w.events[i].start, w.events[i].share = r.Start, r.Share
			return
		}
	}
}
