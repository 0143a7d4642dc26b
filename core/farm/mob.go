package farm

import (
	"slices"
	"strings"

	"leafround/core/entry"
)

// Mob is a group of stock that moves together.
type Mob struct {
	Name      string
	Head      int            // animals; 0 where not told
	Set       entry.Hectares // hectares a day as the team set it; 0 where not
	In        *Paddock       // where it is now; nil where not known
	Since     entry.Date     // since when
	Only      []string       // if not empty, the only paddocks that it may graze
	Bar       []string       // paddocks that it may not graze
	Away      bool           // off the round: winter crop, agistment
	BackFence bool           // runs behind a back fence
	Listed    bool           // registered; else only named in an entry
	Gone      bool           // runs as part of another mob
	key       int
	moves     []move // its goings in and out, in order of day and sending
	soft      []move // the outs that follow from them
	dirty     bool
}

// Active tells whether the mob goes round now.
func (m *Mob) Active() bool { return !m.Away && !m.Gone }

// move is one going in or out of a mob, as said.
type move struct {
	item    item
	paddock *Paddock // nil: it left the farm, or joined another mob
	in      bool
}

// FindMob gives the mob of that name, without regard to case and spaces; nil
// where there is none.
func (f *Farm) FindMob(name string) *Mob {
	folded := entry.FoldName(name)
	if folded == "" {
		return nil
	}
	if m := f.mobNames[folded]; m != nil {
		return m
	}
	return f.mobAlias[folded]
}

// MayGraze tells whether a mob may graze a paddock, holds and stage apart.
func (f *Farm) MayGraze(mob string, p *Paddock) bool {
	if p.OnlyMob != "" && !f.sameMob(p.OnlyMob, mob) {
		return false
	}
	m := f.FindMob(mob)
	if m == nil {
		return true
	}
	if len(m.Only) > 0 && !f.lists(m.Only, p) {
		return false
	}
	return !f.lists(m.Bar, p)
}

// sameMob tells whether two names mean one mob.
func (f *Farm) sameMob(a, b string) bool {
	if m := f.FindMob(a); m != nil {
		return m == f.FindMob(b)
	}
	return entry.FoldName(a) == entry.FoldName(b)
}

// lists tells whether a list of paddock names holds that paddock.
func (f *Farm) lists(list []string, p *Paddock) bool {
	for _, n := range list {
		if f.Find(n) == p {
			return true
		}
	}
	return false
}

// soleMob gives the one registered mob that goes round, or nil where there are
// none or several: stock without a name are then taken for it.
func (f *Farm) soleMob() *Mob {
	var sole *Mob
	for _, m := range f.Mobs {
		if !m.Listed || !m.Active() {
			continue
		}
		if sole != nil {
			return nil
		}
		sole = m
	}
	return sole
}

// mobOf resolves the mob that an entry names; one that is new becomes known.
func (f *Farm) mobOf(name string) *Mob {
	if name == "" {
		return nil
	}
	if m := f.FindMob(name); m != nil {
		return m
	}
	return f.addMob(name)
}

func (f *Farm) addMob(name string) *Mob {
	m := &Mob{Name: name, key: len(f.Mobs)}
	f.Mobs = append(f.Mobs, m)
	f.mobNames[entry.FoldName(name)] = m
	return m
}

// settle gives the outs that follow from a mob's moves without having been
// said: who goes into one paddock has left the other. Those that changed are
// put anew into the timelines of the paddocks left.
func (m *Mob) settle() {
	m.dirty = false
	now := m.implied()
	same := 0
	for same < len(now) && same < len(m.soft) && now[same].equal(m.soft[same]) {
		same++
	}
	for _, s := range m.soft[same:] {
		s.paddock.dropSoft(m, s.item.id)
	}
	for _, s := range now[same:] {
		s.paddock.insert(s.item)
	}
	m.soft = now
}

// implied lists the soft outs of a mob, in order.
func (m *Mob) implied() []move {
	var out []move
	var in *Paddock
	for _, mv := range m.moves {
		gone := mv.in || mv.paddock == nil
		if gone && in != nil && in != mv.paddock {
			out = append(out, move{item: softOut(mv, m), paddock: in})
		}
		switch {
		case gone:
			in = mv.paddock
		case mv.paddock == in:
			in = nil
		}
	}
	return out
}

func (a move) equal(b move) bool {
	return a.paddock == b.paddock && a.item.compare(b.item) == 0
}

// softOut is the out that a later move implies.
func softOut(mv move, m *Mob) item {
	it := mv.item
	it.entry, it.mob, it.soft = nil, m, true
	return it
}

// addMove puts a move into its place.
func (m *Mob) addMove(mv move) {
	i := len(m.moves)
	for i > 0 && m.moves[i-1].item.compare(mv.item) > 0 {
		i--
	}
	m.moves = slices.Insert(m.moves, i, mv)
	m.dirty = true
}

// dropMoves takes out the moves of one entry.
func (m *Mob) dropMoves(id int64) {
	n := len(m.moves)
	m.moves = slices.DeleteFunc(m.moves, func(mv move) bool { return mv.item.id == id })
	m.dirty = m.dirty || len(m.moves) != n
}

// setStocked are the words for stock that stay for weeks in one paddock: no
// warning of a long stay is due for them (common practice, no source).
var setStocked = []string{"ewe", "lamb", "ram", "hogget"}

// SetStocked tells whether a mob by its name stays for weeks in one paddock.
func SetStocked(mob string) bool {
	name := entry.FoldName(mob)
	return slices.ContainsFunc(setStocked, func(w string) bool { return strings.Contains(name, w) })
}

// place tells each mob where it is.
func (f *Farm) place() {
	for _, m := range f.Mobs {
		m.In, m.Since = nil, 0
	}
	for _, p := range f.all {
		for _, s := range p.Stays {
			if s.mob != nil {
				s.mob.In, s.mob.Since = p, s.Since
			}
		}
	}
}
