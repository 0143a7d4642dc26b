package round

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// steady is a farm in step at a constant pace: stages spread evenly up to a
// top.
func steady(daysPerLeaf, top float64) outlook {
	o := outlook{least: 1}
	for d := range outlookDays {
		o.rise = append(o.rise, float64(d)/daysPerLeaf)
	}
	for i := range 30 {
		o.standing = append(o.standing, stand{1.0 / 30, top * (1 - float64(i)/30)})
	}
	return o
}

func TestSpeedOfAFarmInStep(t *testing.T) {
	// Ours: growth given up is least at three leaves, and a little before them
	// where stages scatter; at 12 days a leaf that is a round of 33 to 36 days.
	o := steady(12, 2.9)
	p := o.pick(12 * 2.5)
	assert.InDelta(t, 35, p.Days, 4)
	assert.Less(t, p.Lost, 0.08)
}

func TestSpeedOfAFarmThatRanAhead(t *testing.T) {
	ahead, behind := steady(12, 4), steady(12, 1.8)
	usual := steady(12, 2.75)
	assert.Less(t, ahead.pick(30).Days, usual.pick(30).Days, "it has to go faster for a while")
	assert.Greater(t, behind.pick(30).Days, usual.pick(30).Days, "it has to wait")
}

func TestNoPickIsFasterThanTheMobCanEat(t *testing.T) {
	o := steady(6, 4)
	o.least = 25
	assert.GreaterOrEqual(t, o.pick(15).Days, 25.0)
}
