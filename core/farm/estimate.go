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
	id      int64 // by which the estimator knows it, and orders a day's events
}

// event notes one for the estimator.
func (w *walk) event(it item, e paceEvent) {
	e.day, e.id = it.day, paceID(it, w.p)
	if e.count != nil {
		e.seen, e.counted, e.count = w.farm.seenAs(it.id, *e.count), true, nil
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

// seenKey names a count as scored: an entry never changes, the rule may.
type seenKey struct {
	id   int64
	rule entry.RemnantRule
}

// seenAs keeps what counts mean, so that folding anew does not measure again.
func (f *Farm) seenAs(id int64, c entry.Count) pace.Seen {
	key := seenKey{id, f.Remnant}
	s, ok := f.clock.seen[key]
	if !ok {
		s = seen(c)
		f.clock.seen[key] = s
	}
	return s
}

// paceID numbers an event so that a day's events are in the order of sending,
// however they came in: seconds of sending, then the entry, then the paddock
// (an entry's history may live on in several).
func paceID(it item, p *Paddock) int64 {
	const year2000 = 946684800
	return (it.at.Unix()-year2000)<<32 | (it.id&(1<<20-1))<<12 | int64(p.key)&(1<<12-1)
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
	site   pace.Site
	told   map[string][]paceEvent
	habits map[string]entry.Grass
	days   map[entry.Date]toldDay
	seen   map[seenKey]pace.Seen
	news   []pace.Event                  // to be told, in order of their days
	views  map[entry.Date]*pace.Estimate // estimates of days before which nothing changed
	since  entry.Date                    // the earliest day that changed since
}

type toldDay struct {
	id int64
	w  weatherKey
}

func newEstimator() *estimator {
	return &estimator{keeper: pace.New(pace.Site{}), told: map[string][]paceEvent{},
		habits: map[string]entry.Grass{}, days: map[entry.Date]toldDay{},
		seen: map[seenKey]pace.Seen{}, views: map[entry.Date]*pace.Estimate{}, since: never}
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
	site := pace.Site{Lat: f.Latitude(), Placed: f.Placed, South: f.South()}
	if site != c.site {
		c.keeper.Place(site)
		c.site, c.since = site, 0
	}
	if f.rebuilt {
		c.forgetDays(f)
		f.rebuilt = false
	}
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
		c.since = min(c.since, e.Day)
	}
	c.news = c.news[:0]
	c.stale()
}

// paddock tells what changed about one paddock.
func (c *estimator) paddock(p *Paddock) {
	if g, known := c.habits[p.Name]; !known || g != p.Grass {
		c.keeper.Paddock(p.Name, p.Habit())
		c.habits[p.Name], c.since = p.Grass, 0
	}
	old, now := c.told[p.Name], p.events
	i, j, k := 0, len(old), len(now)
	for i < j && i < k && old[i] == now[i] {
		i++
	}
	for j > i && k > i && old[j-1] == now[k-1] {
		j, k = j-1, k-1
	}
	c.swap(p.Name, old[i:j], now[i:k])
	c.told[p.Name] = now
}

// swap takes events back and has others told in their place.
func (c *estimator) swap(name string, old, now []paceEvent) {
	for _, e := range old {
		c.keeper.Remove(e.id)
		c.since = min(c.since, e.day)
	}
	for _, e := range now {
		c.news = append(c.news, pace.Event{ID: e.id, Day: e.day, Paddock: name, Do: e.deed()})
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
