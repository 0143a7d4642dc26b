package answer

import (
	"math"
	"slices"
	"time"

	"leafround/core/entry"
	"leafround/core/farm"
	"leafround/core/round"
)

// mornings gives the summary's advice: none that its own ranking contradicts,
// and what was said yesterday too marked as that.
func (a *Summary) mornings(f *farm.Farm, at time.Time) {
	for _, ad := range advices(f, a.Today) {
		if ad.Kind != string(round.SpeedUp) || a.anyReady() {
			a.Advice = append(a.Advice, ad)
		}
	}
	if len(a.Advice) == 0 {
		return
	}
	before := yesterdays(f, at)
	for i, ad := range a.Advice {
		a.Advice[i].Again = slices.ContainsFunc(before, ad.like)
	}
}

// anyReady tells whether any mob has a paddock to go to that is ready: to ask
// for a faster round is no use where none is.
func (a *Summary) anyReady() bool {
	return slices.ContainsFunc(a.Next, func(c MobChoice) bool {
		return len(c.Ranked) > 0 && c.Ranked[0].Reason != round.Below
	})
}

// moved is how much a round must have moved to be news (ours: a fifth).
const moved = 0.2

// like tells whether two advices say the same thing with about the same figures.
func (a Advice) like(o Advice) bool {
	return a.Kind == o.Kind && a.Mob == o.Mob && near(a.Running, o.Running) && near(a.Needed, o.Needed) &&
		(len(a.Paddocks) != 1 || slices.EqualFunc(a.Paddocks, o.Paddocks, func(x, y Spot) bool { return x.Paddock == y.Paddock }))
}

func near(a, b float64) bool { return math.Abs(a-b) <= moved*max(a, b) }

// lookBack is how much of the log yesterday's farm is folded from, in days
// (ours: longer than a winter's round; settings are taken whatever their age).
const lookBack = 150

// yesterdays gives the advice of yesterday's summary, from the log as it was
// then; none where there was no summary.
func yesterdays(f *farm.Farm, at time.Time) []Advice {
	cut, ok := lastMorning(f, at)
	if !ok {
		return nil
	}
	day := f.Today(cut)
	var log []entry.Logged
	for _, l := range f.Log() {
		set := l.Entry.Kind() == entry.KindSetup
		if l.SentAt.Before(cut) && (set || f.DayOf(l) > day.Add(-lookBack)) {
			log = append(log, l)
		}
	}
	return advices(farm.Fold(log), day)
}

// lastMorning gives the moment of yesterday's summary; ok is false where none
// was due.
func lastMorning(f *farm.Farm, at time.Time) (cut time.Time, ok bool) {
	hour, err := time.Parse("15:04", f.SummaryAt)
	if err != nil {
		return cut, false
	}
	zone := time.UTC
	if f.Zone != nil {
		zone = f.Zone
	}
	y, m, d := at.In(zone).Date()
	cut = time.Date(y, m, d-1, hour.Hour(), hour.Minute(), 0, 0, zone)
	return cut, f.SummarySt.Before(cut)
}
