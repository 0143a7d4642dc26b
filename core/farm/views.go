package farm

import (
	"math"

	"leafround/core/entry"
	"leafround/core/pace"
)

// never is later than any day.
const never = entry.Date(math.MaxInt32)

// mostViews is how many days' estimates are kept: those that a summary looks
// back at, on a farm of some size.
const mostViews = 96

// on gives the estimate of a day. An estimate hangs on what happened up to its
// day, so one that was made stays good until something before it changes.
func (c *estimator) on(day entry.Date) *pace.Estimate {
	e := c.views[day]
	if e == nil {
		e = c.keeper.On(day)
		c.views[day] = e
		c.thin(day)
	}
	return e
}

// stale forgets the estimates that a change has made wrong.
func (c *estimator) stale() {
	for day := range c.views {
		if day >= c.since {
			delete(c.views, day)
		}
	}
	c.since = never
}

// thin keeps the number of estimates down: the oldest goes.
func (c *estimator) thin(keep entry.Date) {
	for len(c.views) > mostViews {
		oldest := never
		for day := range c.views {
			if day != keep {
				oldest = min(oldest, day)
			}
		}
		delete(c.views, oldest)
	}
}

// PaceOn gives the days per leaf of a paddock, or with "" of the farm, as
// estimated on a day from what had happened by then.
func (f *Farm) PaceOn(paddock string, day entry.Date) float64 {
	return f.Estimate(day).Pace(paddock).DaysPerLeaf
}
