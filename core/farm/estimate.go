package farm

import (
	"cmp"
	"slices"

	"leafround/core/entry"
	"leafround/core/leaf"
	"leafround/core/pace"
)

// paceEvent is what one item of a timeline means to the estimator.
type paceEvent struct {
	day     entry.Date
	restart bool
	closed  bool
	cut     bool
	share   float64
	start   entry.LeafStage
	strips  int
	seen    pace.Seen // where a count
	counted bool
	count   *entry.Count
	id      int64 // by which the estimator knows it
}

// event notes one for the estimator.
func (w *walk) event(it item, e paceEvent) {
	e.day = it.day
	if e.count != nil {
		e.seen, e.counted, e.count = seen(*e.count), true, nil
	}
	w.events = append(w.events, e)
}

// seen turns a count into the estimator's terms, its error by the usual
// spread, so that one count does not hang on the others.
func seen(c entry.Count) pace.Seen {
	s := leaf.Measure(c, leaf.Usual)
	return pace.Seen{Mean: s.Mean, N: s.N, SE: s.SE, SD: s.SD, Past: c.Past,
		Reproductive: c.Skipped.Reproductive}
}

func (e paceEvent) same(o paceEvent) bool {
	e.id, o.id = 0, 0
	return e == o
}

func (e paceEvent) deed() pace.Deed {
	switch {
	case e.restart:
		return &pace.Restart{Share: e.share, Start: e.start, Cut: e.cut, Strips: e.strips}
	case e.closed:
		return &pace.Closed{}
	}
	s := e.seen
	return &s
}

// estimator keeps the estimator in step with the farm: it is told only what
// changed.
type estimator struct {
	keeper *pace.Keeper
	next   int64
	told   map[string][]paceEvent
	habits map[string]entry.Grass
	days   map[entry.Date]toldDay
	news   []pace.Event // to be told, in order of their days
	now    *pace.Estimate
	nowDay entry.Date
}

type toldDay struct {
	id int64
	w  weatherKey
}

func newEstimator() *estimator {
	return &estimator{keeper: pace.New(pace.Site{}), told: map[string][]paceEvent{},
		habits: map[string]entry.Grass{}, days: map[entry.Date]toldDay{}}
}

func (c *estimator) on(day entry.Date) *pace.Estimate {
	if c.now == nil || c.nowDay != day {
		c.now, c.nowDay = c.keeper.On(day), day
	}
	return c.now
}

func (c *estimator) id() int64 {
	c.next++
	return c.next
}

// tell notes what a paddock's timeline means; finish passes it on.
func (f *Farm) tell(p *Paddock, events []paceEvent) {
	p.events = events
	if p.heirs {
		p.events = nil
	}
	p.untold = true
}

// finish brings the estimator up to date.
func (c *estimator) finish(f *Farm) {
	c.now = nil
	site := pace.Site{Lat: f.Latitude(), Placed: f.Placed, South: f.South()}
	c.keeper.Place(site)
	c.forget(f)
	for _, p := range f.all {
		if p.untold {
			c.paddock(p)
			p.untold = false
		}
	}
	c.weather(f)
	slices.SortFunc(c.news, func(a, b pace.Event) int {
		return cmp.Or(cmp.Compare(a.Day, b.Day), cmp.Compare(a.ID, b.ID))
	})
	for _, e := range c.news {
		c.keeper.Add(e)
	}
	c.news = c.news[:0]
}

// paddock tells what changed about one paddock. The events of one day are told
// in their order, so a day that changed is told anew as a whole.
func (c *estimator) paddock(p *Paddock) {
	if g, known := c.habits[p.Name]; !known || g != p.Grass {
		c.keeper.Paddock(p.Name, p.Habit())
		c.habits[p.Name] = p.Grass
	}
	old, now := c.told[p.Name], slices.Clone(p.events)
	i := 0
	for i < len(old) && i < len(now) && old[i].same(now[i]) {
		now[i].id = old[i].id
		i++
	}
	for i > 0 && (i < len(now) && now[i-1].day == now[i].day || i < len(old) && old[i-1].day == old[i].day) {
		i--
	}
	j, k := len(old), len(now)
	for j > i && k > i && old[j-1].same(now[k-1]) {
		j, k = j-1, k-1
		now[k].id = old[j].id
	}
	for k < len(now) && (k > i && now[k-1].day == now[k].day || j > i && old[j-1].day == now[k].day) {
		j, k = j+1, k+1
	}
	c.swap(p.Name, old[i:j], now[i:k])
	c.told[p.Name] = now
}

// swap takes events back and tells others in their place.
func (c *estimator) swap(name string, old, now []paceEvent) {
	for _, e := range old {
		c.keeper.Remove(e.id)
	}
	for i := range now {
		now[i].id = c.id()
		c.news = append(c.news, pace.Event{ID: now[i].id, Day: now[i].day, Paddock: name, Do: now[i].deed()})
	}
}

// forget takes back what was told of names that no paddock bears any more.
func (c *estimator) forget(f *Farm) {
	for name, events := range c.told {
		if p := f.names[entry.FoldName(name)]; p != nil && p.Name == name {
			continue
		}
		c.swap(name, events, nil)
		delete(c.told, name)
		delete(c.habits, name)
	}
}
