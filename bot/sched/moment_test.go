package sched

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

func date(s string) time.Time {
	t, err := time.Parse(time.DateOnly, s)
	if err != nil {
		panic(err)
	}
	return t
}

// The dates of clock changes are those of the IANA time zone data, as Go's own
// time package has them: New Zealand springs forward at 02:00 on the last
// Sunday of September (27 September 2026) and falls back at 03:00 on the first
// Sunday of April (4 April 2027).
func TestMoment(t *testing.T) {
	for _, c := range []struct{ zone, day, minute, want string }{
		{"Pacific/Auckland", "2026-11-25", "06:15", "2026-11-25T06:15:00+13:00"},
		{"Pacific/Auckland", "2026-09-27", "02:30", "2026-09-27T03:00:00+13:00"},    // skipped: the next minute that exists
		{"Pacific/Auckland", "2026-09-27", "02:00", "2026-09-27T03:00:00+13:00"},    // the first that is skipped
		{"Pacific/Auckland", "2026-09-27", "01:59", "2026-09-27T01:59:00+12:00"},    // the last before
		{"Pacific/Auckland", "2026-09-27", "03:00", "2026-09-27T03:00:00+13:00"},    // the first after
		{"Pacific/Auckland", "2027-04-04", "02:30", "2027-04-04T02:30:00+13:00"},    // twice: the first
		{"Pacific/Auckland", "2027-04-04", "03:00", "2027-04-04T03:00:00+12:00"},    // once
		{"America/New_York", "2026-03-08", "02:30", "2026-03-08T03:00:00-04:00"},    // west of Greenwich
		{"America/New_York", "2026-11-01", "01:30", "2026-11-01T01:30:00-04:00"},    // twice, west
		{"Australia/Lord_Howe", "2026-10-04", "02:10", "2026-10-04T02:30:00+11:00"}, // half an hour skipped
		{"America/Sao_Paulo", "2018-11-04", "00:10", "2018-11-04T01:00:00-02:00"},   // midnight skipped
		{"Asia/Kolkata", "2026-11-25", "06:15", "2026-11-25T06:15:00+05:30"},
		{"UTC", "2026-11-25", "00:00", "2026-11-25T00:00:00Z"},
	} {
		zone, err := time.LoadLocation(c.zone)
		require.NoError(t, err)
		clock, err := time.Parse("15:04", c.minute)
		require.NoError(t, err)
		at, ok := Moment(date(c.day), clock.Hour()*60+clock.Minute(), zone)
		require.True(t, ok)
		require.Equal(t, c.want, at.In(zone).Format(time.RFC3339), "%s %s %s", c.zone, c.day, c.minute)
	}
}

func TestADayThatAZoneSkipsHasNoMoment(t *testing.T) {
	apia, err := time.LoadLocation("Pacific/Apia")
	require.NoError(t, err)
	_, ok := Moment(date("2011-12-30"), 375, apia) // Samoa crossed the date line
	require.False(t, ok)
	_, ok = Moment(date("2011-12-31"), 375, apia)
	require.True(t, ok)
}

// Whatever the zone and the day, the moment is on its day, shows its minute or
// one later, and no earlier moment shows it.
func TestMomentOverZonesAndDays(t *testing.T) {
	for _, name := range []string{"Pacific/Auckland", "Europe/Dublin", "America/Santiago", "Australia/Lord_Howe", "Africa/Casablanca", "Asia/Tehran", "America/St_Johns"} {
		zone, err := time.LoadLocation(name)
		require.NoError(t, err)
		for day := date("2021-01-01"); day.Before(date("2027-01-01")); day = day.AddDate(0, 0, 1) {
			for _, minute := range []int{0, 30, 90, 150, 180, 1439} {
				at, ok := Moment(day, minute, zone)
				require.True(t, ok)
				local := at.In(zone)
				require.Equal(t, day, dayOf(local), "%s %s %d", name, day, minute)
				shown := local.Hour()*60 + local.Minute()
				require.GreaterOrEqual(t, shown, minute)
				before := at.Add(-time.Minute).In(zone)
				require.False(t, dayOf(before).Equal(day) && before.Hour()*60+before.Minute() >= minute, "%s %s %d", name, day, minute)
			}
		}
	}
}
