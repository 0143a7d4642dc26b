package pace_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"leafround/core/entry"
	"leafround/core/leaf"
	"leafround/core/pace"
)

// The rules of thumb that a new farm starts from: Ireland 7–8 days a leaf in
// May and June (Teagasc 2019); 6–10 in spring and 20–35 in winter (common
// practice, no source), of which winter's lower part for a mild 37° S.
func TestNewFarmFollowsTheRulesOfThumb(t *testing.T) {
	south := pace.New(pace.Site{Lat: -37, Placed: true, South: true})
	north := pace.New(pace.Site{Lat: 52, Placed: true})
	june, may := entry.NewDate(2026, time.June, 15), entry.NewDate(2026, time.May, 20)
	assert.InDelta(t, 24, south.On(june).Pace("").DaysPerLeaf, 6)
	assert.InDelta(t, 7.5, north.On(may).Pace("").DaysPerLeaf, 1)
	assert.InDelta(t, 8, south.On(entry.NewDate(2026, time.October, 20)).Pace("").DaysPerLeaf, 2)
}

// 36 days and 2.25 leaves are 16 days a leaf over the regrowth (common
// practice: days ÷ stage); in a season that neither rises nor falls steeply the
// pace now is near that.
func TestOneGoodCount(t *testing.T) {
	k := pace.New(pace.Site{Lat: -37, Placed: true, South: true})
	k.Paddock("1", leaf.Of(entry.Ryegrass))
	grazed := entry.NewDate(2026, time.June, 10)
	k.Add(pace.Event{ID: 1, Day: grazed, Paddock: "1", Do: &pace.Restart{Share: 1}})
	k.Add(pace.Event{ID: 2, Day: grazed.Add(36), Paddock: "1",
		Do: &pace.Seen{Mean: 2.25, N: 8, SE: 0.16, SD: 0.45}})
	assert.InDelta(t, 16, k.On(grazed.Add(36)).Pace("1").DaysPerLeaf, 1.5)
}
