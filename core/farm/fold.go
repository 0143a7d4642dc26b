package farm

import (
	"slices"

	"leafround/core/entry"
)

// reset forgets everything but the log and what the estimator was told.
func (f *Farm) reset() {
	f.Settings = Settings{}
	f.Paddocks, f.Mobs, f.Pins, f.Notes, f.all = nil, nil, nil, nil, nil
	f.names, f.alias = map[string]*Paddock{}, map[string]*Paddock{}
	f.mobNames, f.mobAlias = map[string]*Mob{}, map[string]*Mob{}
	f.left = map[int64][]Remark{}
	f.weather, f.stale = map[entry.Date]*Day{}, map[entry.Date]bool{}
	f.register, f.turned = -1, false
}

// rebuild folds the whole log anew. The estimator is told only what changed.
func (f *Farm) rebuild() {
	f.reset()
	f.rebuilt = true
	for i, l := range f.log {
		if l.Stands() {
			f.take(l, i)
		}
	}
	f.finish()
}

// relog puts the log in order again.
func (f *Farm) relog() {
	f.log = f.log[:0]
	for _, l := range f.at {
		f.log = append(f.log, l)
	}
	slices.SortFunc(f.log, bySending)
}

// take folds in one entry, the i-th of the log, by the register of its moment.
func (f *Farm) take(l entry.Logged, i int) {
	paddocks, mobs := len(f.all), len(f.Mobs)
	switch e := l.Entry.(type) {
	case entry.Setup:
		f.setup(l, e)
		f.register = i
	case entry.Graze:
		f.takeGraze(l, e)
	case entry.Rain:
		f.rain(l, e)
	case entry.Temperature:
		f.temperature(l, e)
	case entry.Note:
		f.Notes = append(f.Notes, l)
	case entry.Undo, entry.Correct:
	default:
		f.put(f.paddockOf(PaddockOf(e)), itemOf(l))
	}
	if len(f.all) != paddocks || len(f.Mobs) != mobs || f.turned {
		f.register, f.turned = i, false
	}
}

// drop takes an entry out again that left the register as it was.
func (f *Farm) drop(l entry.Logged) {
	switch e := l.Entry.(type) {
	case entry.Rain:
		f.noWeather(e.Date, l.ID)
	case entry.Temperature:
		f.noWeather(e.Date, l.ID)
	case entry.Note:
		f.Notes = slices.DeleteFunc(f.Notes, func(n entry.Logged) bool { return n.ID == l.ID })
	}
	for _, p := range f.all {
		p.drop(l.ID)
	}
	for _, m := range f.Mobs {
		m.dropMoves(l.ID)
	}
}

func itemOf(l entry.Logged) item {
	return item{day: l.Entry.On(), at: l.SentAt, id: l.ID, entry: l.Entry,
		member: l.Member, author: l.MemberID, manager: l.Manager}
}

func (f *Farm) put(p *Paddock, it item) {
	if p != nil {
		p.insert(it)
	}
}

// takeGraze resolves whose stock it was: the mob that was named, or the only
// one that it can be.
func (f *Farm) takeGraze(l entry.Logged, e entry.Graze) {
	p, it := f.paddockOf(e.Paddock), itemOf(l)
	if p == nil {
		return
	}
	it.mob, it.named = f.mobOf(e.Mob), e.Mob != ""
	if it.mob == nil {
		it.mob = f.mobOf(p.OnlyMob)
	}
	if it.mob == nil {
		it.mob = f.soleMob()
	}
	if it.mob != nil && e.Event != entry.Grazed {
		if it.mob.Away && e.Event == entry.In {
			it.mob.Away = false
			f.turned = true
		}
		it.mob.addMove(move{item: it, paddock: p, in: e.Event == entry.In})
	}
	p.insert(it)
}

// finish settles whatever an entry has touched.
func (f *Farm) finish() {
	f.version++
	for _, m := range f.Mobs {
		if m.dirty {
			m.settle()
		}
	}
	var again []*Paddock
	for _, p := range f.all {
		if len(p.from) > 0 && p.touched(map[*Paddock]bool{}) {
			again = append(again, p)
		}
	}
	for _, p := range again {
		p.dirty = true
	}
	for _, p := range f.all {
		if p.dirty {
			f.settle(p)
		}
	}
	f.place()
	f.tellWeather()
	f.clock.finish(f)
}
