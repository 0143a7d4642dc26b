package farm

import (
	"maps"
	"time"

	"leafround/core/entry"
)

// Settings are what the team has set for the farm as a whole.
type Settings struct {
	Name      string
	Zone      *time.Location // UTC before it is set
	ZoneName  string         // IANA
	Lat, Lon  float64        // degrees, north and east positive
	Placed    bool           // Lat and Lon were told
	Aim       entry.LeafStage
	SummaryAt string    // "06:15" local; "" for none
	SummarySt time.Time // when the hour was set: the first summary comes after it
	Remnant   entry.RemnantRule
	HoldDays  map[entry.Reason]int // the farm's own days for a hold
	Quiet     bool                 // acknowledge by reaction
	TopicFrom int64                // the message in whose topic the summary goes; 0 for none
	Units     string               // "acres", or hectares
	unitsSet  bool                 // by their name, not by what areas were typed in
}

// South tells whether the farm lies in the southern hemisphere: by its
// latitude, or else by its zone.
func (s Settings) South() bool {
	if s.Placed {
		return s.Lat < 0
	}
	return southern[s.ZoneName]
}

// Latitude gives the latitude for reckoning with the season: as told, or else
// 40 degrees in the hemisphere of the zone (ours).
func (s Settings) Latitude() float64 {
	switch {
	case s.Placed:
		return s.Lat
	case s.South():
		return -40
	default:
		return 40
	}
}

// Today gives the farm's day at a moment.
func (s Settings) Today(at time.Time) entry.Date { return entry.DateOf(at.In(s.zone())) }

func (s Settings) zone() *time.Location {
	if s.Zone == nil {
		return time.UTC
	}
	return s.Zone
}

// set takes a setup entry that concerns the farm as a whole; it tells whether
// it was one.
func (s *Settings) set(l entry.Logged, e entry.Setup) bool {
	switch e.What {
	case entry.SetFarm:
		s.setFarm(e)
	case entry.SetSummary:
		s.SummaryAt, s.SummarySt = e.At, l.SentAt
		if e.Off {
			s.SummaryAt = ""
		}
	case entry.SetAim:
		s.Aim = e.Leaves
	case entry.SetPlace:
		if e.Lat != nil && e.Lon != nil {
			s.Lat, s.Lon, s.Placed = *e.Lat, *e.Lon, true
		}
	case entry.SetRemnant:
		s.Remnant = e.Rule
	case entry.SetHoldDays:
		s.setHoldDays(e)
	case entry.SetQuiet:
		s.Quiet = e.Yes
	case entry.SetTopic:
		s.TopicFrom = l.MessageID
	case entry.SetUnits:
		s.Units, s.unitsSet = e.Unit, true
	default:
		return false
	}
	return true
}

// typed takes the unit that areas were typed in, where none was set.
func (s *Settings) typed(unit string) {
	if unit == "acres" && !s.unitsSet {
		s.Units = unit
	}
}

// setFarm takes a name and a zone; a zone that the computer does not know is
// left as it was.
func (s *Settings) setFarm(e entry.Setup) {
	if e.Name != "" {
		s.Name = e.Name
	}
	if e.Zone == "" {
		return
	}
	if zone, err := time.LoadLocation(e.Zone); err == nil {
		s.Zone, s.ZoneName = zone, e.Zone
	}
}

func (s *Settings) setHoldDays(e entry.Setup) {
	s.HoldDays = maps.Clone(s.HoldDays)
	if s.HoldDays == nil {
		s.HoldDays = map[entry.Reason]int{}
	}
	s.HoldDays[e.Reason] = e.Days
}
