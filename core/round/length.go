package round

import "leafround/core/entry"

// Days gives the length of a round: days per leaf times the leaf stage at
// grazing (Agriculture Victoria: 15 days × 3 leaves = 45 days).
func Days(daysPerLeaf float64, stage entry.LeafStage) float64 {
	return daysPerLeaf * float64(stage)
}

// HaPerDay gives the area a day that goes round in so many days; 0 where there
// are none (Agriculture Victoria: 1/45 of the area a day).
func HaPerDay(area entry.Hectares, days float64) float64 {
	if days <= 0 {
		return 0
	}
	return float64(area) / days
}

// DaysAt gives the length of a round at so many hectares a day; 0 where there
// are none.
func DaysAt(area entry.Hectares, haPerDay float64) float64 {
	if haPerDay <= 0 {
		return 0
	}
	return float64(area) / haPerDay
}
