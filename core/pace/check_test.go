package pace

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"leafround/core/entry"
)

// Ten years of daily entries: the kept states are few, the last ten days are
// all there, and farther back one is never older than a third more than asked.
func TestChecksThinOut(t *testing.T) {
	k, from := New(Site{South: true}), entry.NewDate(2016, 7, 1)
	rain := 1.0
	for d := range 3650 {
		k.Add(Event{ID: int64(d), Day: from.Add(d), Paddock: "1", Do: &Weather{Rain: &rain}})
		k.catchUp()
	}
	last := from.Add(3649)
	assert.Equal(t, last, k.now.day)
	assert.Less(t, len(k.checks), 45)
	assert.Greater(t, len(k.checks), 20)
	for age := range 3000 {
		m, _ := k.before(last.Add(-age), k.models())
		behind := last.Add(-age).Sub(m.day)
		assert.LessOrEqual(t, behind*2, max(age, 1), "%d days ago", age)
		if age < closeDays {
			assert.Zero(t, behind)
		}
	}
}

// A new event of today is taken into the state as it stands.
func TestTodayNeedsNoRerun(t *testing.T) {
	k, day := New(Site{South: true}), entry.NewDate(2026, 7, 1)
	k.Add(Event{ID: 1, Day: day, Paddock: "1", Do: &Restart{Share: 1}})
	k.On(day.Add(30))
	now := k.now
	k.Add(Event{ID: 2, Day: day.Add(20), Paddock: "1", Do: &Seen{Mean: 1, N: 8}})
	k.On(day.Add(20))
	k.Add(Event{ID: 3, Day: day.Add(20), Paddock: "1", Do: &Seen{Mean: 1, N: 8}})
	k.On(day.Add(20))
	assert.Same(t, now, k.now, "asking for later days had not moved it")
	k.Add(Event{ID: 4, Day: day.Add(19), Paddock: "1", Do: &Seen{Mean: 1, N: 8}})
	assert.NotSame(t, now, k.now)
	assert.Equal(t, day, k.now.day)
}
