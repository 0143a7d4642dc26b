package pace

import "leafround/core/entry"

// check is a kept state: as it was before the event at place next, at the
// start of that event's day.
type check struct {
	s    *state
	next int
}

// again forgets all that was reckoned.
func (k *Keeper) again() { k.now, k.done, k.checks, k.last = nil, 0, nil, nil }

// touch tells that the events from place i on, of that day and later, are not
// what they were: the state goes back to the newest check before them.
func (k *Keeper) touch(i int, day entry.Date) {
	k.last = nil
	if i >= k.done {
		return
	}
	n := len(k.checks)
	for n > 0 && (k.checks[n-1].next > i || k.checks[n-1].s.day > day) {
		n--
	}
	if n == 0 {
		k.again()
		return
	}
	clear(k.checks[n:])
	k.checks = k.checks[:n]
	k.now, k.done = k.checks[n-1].s.clone(), k.checks[n-1].next
}

// catchUp applies the events that have not been.
func (k *Keeper) catchUp() {
	for k.done < len(k.events) {
		e := k.events[k.done]
		if k.now == nil {
			k.now = newState(e.Day, k.tune)
		}
		if e.Day > k.now.day || len(k.checks) == 0 {
			k.reach(k.now, e.Day)
			k.keep()
		}
		k.now.widen(k.grasses, k.tune)
		k.do(k.now, e)
		k.done++
	}
}

// reach grows a state up to a day.
func (k *Keeper) reach(s *state, day entry.Date) {
	s.widen(k.grasses, k.tune)
	for s.day < day {
		k.grow(s)
	}
}

// Every day's state of the last closeDays is kept, and farther back one in every
// third of its age (ours): an entry made late re-runs a few days or, when it is
// about long ago, about as many as it is late.
const closeDays = 10

// keep stores the present state as a check and thins the older ones.
func (k *Keeper) keep() {
	k.checks = append(k.checks, check{s: k.now.clone(), next: k.done})
	kept := len(k.checks) - 1 // from here on the checks are kept, in reverse
	for i := kept - 1; i >= 0; i-- {
		age := k.now.day.Sub(k.checks[i].s.day)
		gap := k.checks[kept].s.day.Sub(k.checks[i].s.day)
		if age <= closeDays || gap*3 >= age {
			kept--
			k.checks[kept] = k.checks[i]
		}
	}
	n := copy(k.checks, k.checks[kept:])
	clear(k.checks[n:])
	k.checks = k.checks[:n]
}

// upTo gives a copy of the state at the start of a day with its events.
func (k *Keeper) upTo(day entry.Date) *state {
	k.catchUp()
	if k.now != nil && k.now.day <= day {
		s := k.now.clone()
		k.reach(s, day)
		return s
	}
	s, next := k.before(day)
	for ; next < len(k.events) && k.events[next].Day <= day; next++ {
		k.reach(s, k.events[next].Day)
		k.do(s, k.events[next])
	}
	k.reach(s, day)
	return s
}

// before gives a copy of the newest check not after a day.
func (k *Keeper) before(day entry.Date) (*state, int) {
	for i := len(k.checks) - 1; i >= 0; i-- {
		if k.checks[i].s.day <= day {
			return k.checks[i].s.clone(), k.checks[i].next
		}
	}
	from := day
	if len(k.events) > 0 {
		from = min(from, k.events[0].Day)
	}
	return newState(from, k.tune), 0
}
