// Package calendar writes a plan's steps as an iCalendar file (RFC 5545): one
// all-day event a step. It plans nothing.
//
//	b := calendar.Write("Totara Bend", now, []calendar.Stay{{From: d, To: d + 2, What: "milkers in 7"}})
package calendar

import (
	"fmt"
	"time"

	ics "github.com/arran4/golang-ical"

	"leafround/core/entry"
)

// Stay is one event: whole days, To not included.
type Stay struct {
	From, To entry.Date
	What     string
	Note     string
}

// Write gives the file.
func Write(farm string, now time.Time, stays []Stay) []byte {
	cal := ics.NewCalendar()
	cal.SetProductId("-//leafround//plan//EN")
	cal.SetMethod(ics.MethodPublish)
	cal.SetName(farm)
	for i, s := range stays {
		e := cal.AddEvent(fmt.Sprintf("%s-%s-%d@leafround", entry.FoldName(farm), s.From, i))
		e.SetDtStampTime(now)
		e.SetAllDayStartAt(s.From.Time())
		e.SetAllDayEndAt(max(s.To, s.From.Add(1)).Time())
		e.SetSummary(s.What)
		if s.Note != "" {
			e.SetDescription(s.Note)
		}
	}
	return []byte(cal.Serialize(ics.WithNewLineWindows))
}
