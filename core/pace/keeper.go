package pace

import (
	"sort"

	"leafround/core/entry"
	"leafround/core/leaf"
)

// Keeper holds a farm's events and the filter's state after them. It is not
// safe for use by several goroutines at once, and neither are its estimates.
type Keeper struct {
	site    Site
	grasses []grass
	at      map[string]int // paddock's name to its place
	events  []Event        // by day, then ID
	now     *mind          // after the first done events; nil before any
	done    int
	checks  []check
	last    *Estimate // the latest asked for, until something changes
}

// New gives an empty keeper for a site.
func New(site Site) *Keeper {
	return &Keeper{site: site, at: map[string]int{}}
}

// Place moves the farm: everything is reckoned anew when next asked for.
func (k *Keeper) Place(site Site) {
	if site != k.site {
		k.site = site
		k.again()
	}
}

// Paddock declares a paddock and its grass, or changes its grass.
func (k *Keeper) Paddock(name string, habit leaf.Habit) {
	i, ok := k.at[name]
	if !ok {
		k.at[name] = len(k.grasses)
		k.grasses = append(k.grasses[:len(k.grasses):len(k.grasses)], grass{habit})
		k.last = nil
		return
	}
	if k.grasses[i].habit != habit {
		k.grasses = append([]grass(nil), k.grasses...)
		k.grasses[i] = grass{habit}
		k.again()
	}
}

// Rename gives a paddock another name; what happened in it stays with it. A
// name that is in use is left alone.
func (k *Keeper) Rename(old, name string) {
	i, ok := k.at[old]
	if _, taken := k.at[name]; !ok || taken {
		return
	}
	delete(k.at, old)
	k.at[name] = i
	for j := range k.events {
		if k.events[j].Paddock == old {
			k.events[j].Paddock = name
		}
	}
	k.last = nil
}

// Add takes an event, of any day and in any order. A paddock that was not
// declared is taken as one of unknown grass.
func (k *Keeper) Add(e Event) {
	if e.Paddock != "" {
		if _, ok := k.at[e.Paddock]; !ok {
			k.Paddock(e.Paddock, leaf.Of(""))
		}
	}
	i := sort.Search(len(k.events), func(i int) bool {
		o := k.events[i]
		return o.Day > e.Day || o.Day == e.Day && o.ID > e.ID
	})
	k.events = append(k.events, Event{})
	copy(k.events[i+1:], k.events[i:])
	k.events[i] = e
	k.touch(i, e.Day)
}

// Remove withdraws every event of an ID.
func (k *Keeper) Remove(id int64) {
	first, day, kept := -1, entry.Date(0), k.events[:0]
	for i, e := range k.events {
		if e.ID != id {
			kept = append(kept, e)
		} else if first < 0 {
			first, day = i, e.Day
		}
	}
	clear(k.events[len(kept):])
	k.events = kept
	if first >= 0 {
		k.touch(first, day)
	}
}

// On gives the estimate of a day from everything that happened up to it. It
// stays good until the keeper changes.
func (k *Keeper) On(day entry.Date) *Estimate {
	if k.last != nil && k.last.day == day {
		return k.last
	}
	k.last = k.estimate(k.upTo(day))
	return k.last
}

// models gives the filter's tempers on this farm.
func (k *Keeper) models() []model {
	all := make([]model, len(tempers))
	for i, t := range tempers {
		all[i] = model{site: k.site, tune: t, grasses: k.grasses}
	}
	return all
}
