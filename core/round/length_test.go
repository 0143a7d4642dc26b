package round

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestRotationArithmetic(t *testing.T) {
	// Agriculture Victoria extension, May 2020: 15 days × 3 leaves = 45 days,
	// 1/45 of the area a day.
	assert.InDelta(t, 45, Days(15, 3), 1e-12)
	assert.InDelta(t, 1.0/45, HaPerDay(1, 45), 1e-12)
	// Ours (field guide): 7.5 × 2.5 = 18.75 days; 60 ha: 3.2 ha a day.
	assert.InDelta(t, 18.75, Days(7.5, 2.5), 1e-12)
	assert.InDelta(t, 3.2, HaPerDay(60, 18.75), 1e-12)
	// Ours: 100 ha less 20 shut up, 9 × 2.5: 3.56 ha a day.
	assert.InDelta(t, 3.56, HaPerDay(100-20, Days(9, 2.5)), 0.005)
	assert.InDelta(t, 18.75, DaysAt(60, 3.2), 1e-12)
	assert.Zero(t, HaPerDay(60, 0))
	assert.Zero(t, DaysAt(60, 0))
}
