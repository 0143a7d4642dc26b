package sched

import "time"

// Moment gives the moment at which a minute of the day comes on a local day
// (given by its midnight in UTC). A minute that a clock change skips falls on
// the next that exists; of one that comes twice it is the first. ok is false
// for a day that the zone has skipped as a whole.
func Moment(day time.Time, minute int, zone *time.Location) (at time.Time, ok bool) {
	y, m, d := day.Date()
	if !existsDay(y, m, d, zone) {
		return time.Time{}, false
	}
	asUTC := time.Date(y, m, d, minute/60, minute%60, 0, 0, time.UTC)
	early := reading(asUTC, offset(asUTC.Add(-36*time.Hour), zone), zone)
	late := reading(asUTC, offset(asUTC.Add(36*time.Hour), zone), zone)
	switch {
	case early.fits && late.fits:
		return earlier(early.at, late.at), true
	case early.fits:
		return early.at, true
	case late.fits:
		return late.at, true
	}
	// The clock jumps over it: read by the offset before the jump it lies
	// behind the jump, so the jump is where its stretch of time begins.
	start, _ := early.at.ZoneBounds()
	return start, true
}

// candidate is a wall clock time read by one offset; it fits if the clocks
// really show it then.
type candidate struct {
	at   time.Time
	fits bool
}

func reading(asUTC time.Time, seconds int, zone *time.Location) candidate {
	at := asUTC.Add(-time.Duration(seconds) * time.Second).In(zone)
	return candidate{at, at.Hour() == asUTC.Hour() && at.Minute() == asUTC.Minute() && at.Day() == asUTC.Day()}
}

func offset(at time.Time, zone *time.Location) int {
	_, seconds := at.In(zone).Zone()
	return seconds
}

// existsDay tells whether a zone has a day: Samoa had no 30 December 2011.
func existsDay(y int, m time.Month, d int, zone *time.Location) bool {
	noon := time.Date(y, m, d, 12, 0, 0, 0, zone)
	return noon.Day() == d
}

func earlier(a, b time.Time) time.Time {
	if b.Before(a) {
		return b
	}
	return a
}

// FirstDay gives the first local day (its midnight in UTC) whose summary is
// still to come at a moment: today, or tomorrow when today's minute is past.
func FirstDay(now time.Time, minute int, zone *time.Location) time.Time {
	today := dayOf(now.In(zone))
	for i := range 3 {
		day := today.AddDate(0, 0, i)
		if at, ok := Moment(day, minute, zone); ok && at.After(now) {
			return day
		}
	}
	return today.AddDate(0, 0, 1)
}

// dayOf gives the calendar's day of a local time, as midnight in UTC.
func dayOf(local time.Time) time.Time {
	y, m, d := local.Date()
	return time.Date(y, m, d, 0, 0, 0, 0, time.UTC)
}
