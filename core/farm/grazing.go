package farm

import (
	"slices"

	"leafround/core/entry"
)

// Grazing is one grazing that ended.
type Grazing struct {
	In       entry.Date // zero where nobody logged the going in
	Out      entry.Date // the day the last of that stock left
	Mobs     []string
	Residual *entry.Residual
	Part     float64    // share of the paddock (0–1]
	Before   entry.Date // since when the grass that was grazed had grown; zero where unknown
	Count    *Counted   // the latest count of that regrowth, where there was one
	Met      []Counted  // counts of its first day, sent before the stock went in
	During   []Counted  // counts of its first day, sent after
	Back     bool       // grazed in breaks behind a back fence
	Began    entry.Date // where it followed on another part, the first day of those parts
	ID       int64
	Told     []int64 // the entries that told more of it
	Asked    bool    // known by "last grazed" alone
	soft     bool    // nobody said that it ended: the mob was seen elsewhere
}

// graze takes stock in or out.
func (w *walk) graze(it item, e entry.Graze) {
	switch e.Event {
	case entry.In:
		w.in(it, e)
	case entry.Out:
		w.out(it, e)
	case entry.Grazed:
		w.out(it, e)
	}
}

// in begins a stay; stock that are in already stay on.
func (w *walk) in(it item, e entry.Graze) {
	if held := w.p.HeldOn(it.day); len(held) > 0 {
		w.remark(it, Remark{Kind: WhileHeld, Reason: held[0].Reason, Date: held[0].Until})
	}
	if it.mob != nil && !w.farm.MayGraze(it.mob.Name, w.p) {
		w.remark(it, Remark{Kind: Barred, Mob: it.mob.Name})
	}
	for i := range w.p.Stays {
		s := &w.p.Stays[i]
		if s.mob == it.mob {
			w.remark(it, Remark{Kind: AlreadyIn, Mob: s.Mob, Date: s.Since})
			s.Back = s.Back || e.Back
			return
		}
	}
	if w.name(it, e) {
		return
	}
	if it.mob == nil && w.farm.several() {
		w.remark(it, Remark{Kind: MobUntold})
	}
	s := Stay{Since: it.day, Head: e.Head, Back: e.Back, ID: it.id, Met: w.met(it.day), mob: it.mob}
	if it.mob != nil {
		s.Mob, s.Back = it.mob.Name, e.Back || it.mob.BackFence
	}
	w.p.Stays = append(w.p.Stays, s)
}

// out ends the stays that it means: those of the mob that was named, or all
// where none was. Without a stay it is still a grazing that ended.
func (w *walk) out(it item, e entry.Graze) {
	ended := w.leave(it)
	if len(ended) == 0 && w.completes(it, e) {
		return
	}
	g := Grazing{Out: it.day, Residual: e.Residual, Part: part(e.Part), ID: it.id, Back: e.Back}
	if len(ended) == 0 {
		w.unseen(it, e, &g)
	}
	for _, s := range ended {
		if g.In.IsZero() || s.Since < g.In {
			g.In, g.Met = s.Since, s.Met
		}
		if s.Mob != "" {
			g.Mobs = append(g.Mobs, s.Mob)
		}
		g.Back = g.Back || s.Back
		w.overStayed(it, s)
	}
	w.ended(it, g)
}

// unseen fills in a grazing whose going in nobody logged.
func (w *walk) unseen(it item, e entry.Graze, g *Grazing) {
	g.Met = w.met(it.day)
	if it.mob != nil {
		g.Mobs = []string{it.mob.Name}
	}
	if e.Event == entry.Grazed {
		g.In = it.day
		if held := w.p.HeldOn(it.day); len(held) > 0 {
			w.remark(it, Remark{Kind: WhileHeld, Reason: held[0].Reason, Date: held[0].Until})
		}
		return
	}
	if !w.follows(it.day) {
		w.remark(it, Remark{Kind: NeverIn})
	}
}

// softOut ends the stay of a mob that has gone into another paddock, or away.
func (w *walk) softOut(it item) {
	i := slices.IndexFunc(w.p.Stays, func(s Stay) bool { return s.mob == it.mob })
	if i < 0 {
		return
	}
	s := w.p.Stays[i]
	w.p.Stays = slices.Delete(w.p.Stays, i, i+1)
	w.remark(it, Remark{Kind: TakenOut, Mob: s.Mob, Date: it.day})
	w.overStayed(it, s)
	w.ended(it, Grazing{In: s.Since, Out: it.day, Mobs: []string{s.Mob}, Part: 1, ID: it.id, Back: s.Back,
		Met: s.Met, soft: true})
}

// leave takes the stays out that an out or a grazing over ends.
func (w *walk) leave(it item) []Stay {
	var ended, stay []Stay
	for _, s := range w.p.Stays {
		// A named mob that comes out ends the stay of stock without a name too:
		// nobody could end that otherwise but by leaving out every name.
		if !it.named || s.mob == it.mob || s.mob == nil {
			ended = append(ended, s)
		} else {
			stay = append(stay, s)
		}
	}
	w.p.Stays = stay
	return ended
}

// ended keeps a grazing and, when the last stock have left, begins regrowth.
func (w *walk) ended(it item, g Grazing) {
	g.Before = w.p.Regrowth.Since
	if c, ok := w.p.LastCount(); ok {
		g.Count = &c
	}
	g.During = w.during(g)
	w.parts(&g)
	w.p.Grazings = append(w.p.Grazings, g)
	if len(w.p.Stays) > 0 {
		w.remark(it, Remark{Kind: OthersIn, Mob: w.p.Stays[0].Mob, Date: w.p.Stays[0].Since})
		return
	}
	r := Regrowth{Share: w.strip(it.day, g.Part), Start: lax(g.Residual)}
	if g.Back && !g.In.IsZero() {
		r.Strips = g.Out.Sub(g.In) + 1
	}
	w.restart(it, r)
}

// part gives the share of the paddock that a grazing took; 0 is "not told",
// all of it.
func part(p float64) float64 {
	if p <= 0 || p > 1 {
		return 1
	}
	return p
}

// longStay is the longest stay without a back fence, in days: regrazing within
// three to six days costs more than half of regrowth (Aust. J. Agric. Res.
// 45:1809–1815).
const longStay = 3

func (w *walk) overStayed(it item, s Stay) {
	if days := it.day.Sub(s.Since); days > longStay && !s.Back && !SetStocked(s.Mob) {
		w.remark(it, Remark{Kind: OverStayed, Mob: s.Mob, Date: s.Since, Days: days})
	}
}
