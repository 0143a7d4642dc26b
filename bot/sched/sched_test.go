package sched

import (
	"context"
	"errors"
	"fmt"
	"testing"
	"testing/synctest"
	"time"

	"github.com/stretchr/testify/require"

	"leafround/bot/chat"
)

// store keeps what a database would: the farm's wish and which days are over.
type store struct {
	daily chat.Daily
	over  map[string]bool
	told  []string
	fail  int // times that making fails
}

func newStore(zone string, minute int, from string) *store {
	return &store{daily: chat.Daily{Farm: 1, Zone: zone, Minute: minute, From: date(from)}, over: map[string]bool{}}
}

func (s *store) Dailies(context.Context) ([]chat.Daily, error) { return []chat.Daily{s.daily}, nil }

func (s *store) note(what string, day, now time.Time) bool {
	key := day.Format(time.DateOnly)
	if s.over[key] {
		return false
	}
	s.over[key] = true
	if day.After(s.daily.Last) {
		s.daily.Last = day
	}
	s.told = append(s.told, fmt.Sprint(what, " ", key, " at ", now.UTC().Format("02T15:04:05")))
	return true
}

func (s *store) Make(_ context.Context, _ int64, day, now, until time.Time) (bool, error) {
	if s.fail > 0 {
		s.fail--
		return false, errors.New("the database does not answer")
	}
	if until.Before(now) || until.Sub(now) > Late {
		return false, fmt.Errorf("too late at %s, asked at %s", until, now)
	}
	return s.note("made", day, now), nil
}

func (s *store) Skip(_ context.Context, _ int64, day, now time.Time, _ string) (bool, error) {
	return s.note("skipped", day, now), nil
}

func at(t *testing.T, s string) time.Time {
	t.Helper()
	v, err := time.Parse(time.RFC3339, s)
	require.NoError(t, err)
	return v
}

func ticks(t *testing.T, s *store, moments ...string) {
	t.Helper()
	for _, m := range moments {
		// A new Sched each time: nothing is remembered but by the store.
		require.NoError(t, New(s, nil, nil).Tick(t.Context(), at(t, m)))
	}
}

func TestASummaryIsMadeOnceADayAcrossRestarts(t *testing.T) {
	s := newStore("Pacific/Auckland", 6*60+15, "2026-11-25")
	ticks(t, s, "2026-11-25T06:14:59+13:00", "2026-11-25T06:15:00+13:00", "2026-11-25T06:15:01+13:00",
		"2026-11-25T08:00:00+13:00", "2026-11-26T05:00:00+13:00", "2026-11-26T08:15:00+13:00")
	require.Equal(t, []string{"made 2026-11-25 at 24T17:15:00", "made 2026-11-26 at 25T19:15:00"}, s.told)
}

func TestTwoHoursLateIsSkipped(t *testing.T) {
	s := newStore("Pacific/Auckland", 6*60+15, "2026-11-25")
	ticks(t, s, "2026-11-25T08:15:01+13:00", "2026-11-25T08:16:00+13:00")
	require.Equal(t, []string{"skipped 2026-11-25 at 24T19:15:01"}, s.told)
}

func TestDaysThatPassedWhileTheProgramWasDownAreSkipped(t *testing.T) {
	s := newStore("Pacific/Auckland", 6*60+15, "2026-11-20")
	ticks(t, s, "2026-11-20T06:15:00+13:00", "2026-11-23T06:30:00+13:00")
	require.Equal(t, []string{"made 2026-11-20 at 19T17:15:00", "skipped 2026-11-21 at 22T17:30:00",
		"skipped 2026-11-22 at 22T17:30:00", "made 2026-11-23 at 22T17:30:00"}, s.told)
}

func TestASummaryLateInTheEveningIsMadeAfterMidnight(t *testing.T) {
	s := newStore("Pacific/Auckland", 23*60+30, "2026-11-25")
	ticks(t, s, "2026-11-26T00:40:00+13:00")
	require.Equal(t, []string{"made 2026-11-25 at 25T11:40:00"}, s.told)
}

// 4 April 2027: 02:30 comes twice, at 13:30 and 14:30 UTC of the 3rd. 27
// September 2026: 02:30 does not come; 03:00 is at 14:00 UTC of the 26th.
func TestClockChanges(t *testing.T) {
	s := newStore("Pacific/Auckland", 2*60+30, "2027-04-04")
	ticks(t, s, "2027-04-03T13:29:59Z", "2027-04-03T13:30:00Z", "2027-04-03T14:30:00Z", "2027-04-03T14:31:00Z")
	require.Equal(t, []string{"made 2027-04-04 at 03T13:30:00"}, s.told)

	s = newStore("Pacific/Auckland", 2*60+30, "2026-09-27")
	ticks(t, s, "2026-09-26T13:59:59Z", "2026-09-26T14:00:00Z", "2026-09-26T14:30:00Z")
	require.Equal(t, []string{"made 2026-09-27 at 26T14:00:00"}, s.told)
}

func TestAMovedHourGivesNoSecondSummary(t *testing.T) {
	s := newStore("Pacific/Auckland", 6*60+15, "2026-11-25")
	ticks(t, s, "2026-11-25T06:15:00+13:00")
	s.daily.Minute = 18 * 60
	ticks(t, s, "2026-11-25T18:00:00+13:00", "2026-11-26T06:15:00+13:00", "2026-11-26T18:00:00+13:00")
	require.Equal(t, []string{"made 2026-11-25 at 24T17:15:00", "made 2026-11-26 at 26T05:00:00"}, s.told)
}

func TestTheFirstDayOfAnHourThatIsSet(t *testing.T) {
	auckland, err := time.LoadLocation("Pacific/Auckland")
	require.NoError(t, err)
	for now, want := range map[string]string{
		"2026-11-25T06:14:59+13:00": "2026-11-25",
		"2026-11-25T06:15:00+13:00": "2026-11-26", // set after that hour: the next day
		"2026-11-25T20:00:00+13:00": "2026-11-26",
		"2026-11-24T18:00:00Z":      "2026-11-26", // 07:00 on the 25th
	} {
		require.Equal(t, date(want), FirstDay(at(t, now), 6*60+15, auckland), now)
	}
}

func TestNextIsTheFirstMomentToCome(t *testing.T) {
	s := newStore("Pacific/Auckland", 6*60+15, "2026-11-25")
	next := func(now string) string {
		at, ok, err := New(s, nil, nil).Next(t.Context(), at(t, now))
		require.NoError(t, err)
		require.True(t, ok)
		return at.UTC().Format(time.RFC3339)
	}
	require.Equal(t, "2026-11-24T17:15:00Z", next("2026-11-24T10:00:00Z"))
	require.Equal(t, "2026-11-25T17:15:00Z", next("2026-11-24T17:15:00Z"))
	ticks(t, s, "2026-11-24T17:15:00Z")
	require.Equal(t, "2026-11-25T17:15:00Z", next("2026-11-24T17:15:00Z"))
}

func TestRunSleepsUntilTheMomentAndTriesAgain(t *testing.T) {
	synctest.Test(t, func(t *testing.T) { // the bubble's clock begins at midnight UTC, 1 January 2000
		s := newStore("UTC", 6*60+15, "2000-01-01")
		s.fail = 1
		ctx, cancel := context.WithTimeout(t.Context(), 54*time.Hour)
		defer cancel()
		require.NoError(t, New(s, nil, nil).Run(ctx))
		require.Equal(t, []string{"made 2000-01-01 at 01T06:15:15", "made 2000-01-02 at 02T06:15:00"}, s.told)
	})
}

func TestAnUnknownZoneStopsNobody(t *testing.T) {
	s := newStore("Middle/Earth", 6*60+15, "2026-11-25")
	ticks(t, s, "2026-11-25T06:15:00+13:00")
	require.Empty(t, s.told)
}
