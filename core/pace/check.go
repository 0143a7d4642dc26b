package pace

import "leafround/core/entry"

// check is a kept state: as it was before the event at place next, at the
// start of that event's day.
type check struct {
	m    *mind
	next int
}

// again forgets all that was reckoned.
func (k *Keeper) again() { k.now, k.done, k.checks, k.last = nil, 0, nil, nil }

// touch tells that the events from place i on, of that day and later, are not
// what they were: the state goes back to the newest check before them.
func (k *Keeper) touch(i int, day entry.Date) {
	k.last = nil
	if i >= k.done && (k.now == nil || day >= k.now.day) {
		return
	}
	n := len(k.checks)
	for n > 0 && (k.checks[n-1].next > i || k.checks[n-1].m.day > day) {
		n--
	}
	if n == 0 {
		k.again()
		return
	}
	clear(k.checks[n:])
	k.checks = k.checks[:n]
	k.now, k.done = k.checks[n-1].m.clone(), k.checks[n-1].next
}

// catchUp applies the events that have not been.
func (k *Keeper) catchUp() {
	models := k.models()
	for k.done < len(k.events) {
		e := k.events[k.done]
		if k.now == nil {
			k.now = newMind(e.Day, models)
		}
		if e.Day > k.now.day || len(k.checks) == 0 {
			k.now.reach(e.Day, models)
			k.keep()
		}
		k.apply(k.now, e, models)
		k.done++
	}
}

// apply does one event of the mind's own day.
func (k *Keeper) apply(m *mind, e Event, models []model) {
	m.reach(e.Day, models)
	m.do(e, k.at[e.Paddock], models)
}

// Every day's state of the last closeDays is kept, and farther back one in every
// third of its age (ours): an entry made late re-runs a few days or, when it is
// about long ago, about as many as it is late.
const closeDays = 10

// keep stores the present state as a check and thins the older ones. One that
// the events still to come would thin out at once is not stored.
func (k *Keeper) keep() {
	if n := len(k.checks); n > 0 {
		age := k.events[len(k.events)-1].Day.Sub(k.now.day)
		if age > closeDays && k.now.day.Sub(k.checks[n-1].m.day)*3 < age {
			return
		}
	}
	k.checks = append(k.checks, check{m: k.now.clone(), next: k.done})
	k.thin()
}

// thin drops each check without which the way from its newer neighbour back to
// its older one is still within a third of that one's age. The oldest stays.
func (k *Keeper) thin() {
	kept := len(k.checks) - 1 // from here on the checks are kept, in reverse
	for i := kept - 1; i >= 0; i-- {
		if i > 0 && k.now.day.Sub(k.checks[i].m.day) > closeDays {
			older := k.checks[i-1].m.day
			if k.checks[kept].m.day.Sub(older)*3 <= k.now.day.Sub(older) {
				continue
			}
		}
		kept--
		k.checks[kept] = k.checks[i]
	}
	n := copy(k.checks, k.checks[kept:])
	clear(k.checks[n:])
	k.checks = k.checks[:n]
}

// upTo gives a copy of the mind at the start of a day with its events.
func (k *Keeper) upTo(day entry.Date) *mind {
	k.catchUp()
	models := k.models()
	m, next := k.before(day, models)
	for ; next < len(k.events) && k.events[next].Day <= day; next++ {
		k.apply(m, k.events[next], models)
	}
	m.reach(day, models)
	return m
}

// before gives a copy of what was reckoned last, not after a day, and the place
// of the event that comes next.
func (k *Keeper) before(day entry.Date, models []model) (*mind, int) {
	if k.now != nil && k.now.day <= day {
		return k.now.clone(), k.done
	}
	for i := len(k.checks) - 1; i >= 0; i-- {
		if k.checks[i].m.day <= day {
			return k.checks[i].m.clone(), k.checks[i].next
		}
	}
	if len(k.events) > 0 {
		day = min(day, k.events[0].Day)
	}
	return newMind(day, models), 0
}
