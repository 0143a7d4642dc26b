package pace

import (
	"math"

	"leafround/core/entry"
	"leafround/core/leaf"
)

// grass is what a paddock's habit means for its pace.
type grass struct {
	habit leaf.Habit
}

// offset gives the log of how much faster than perennial ryegrass it grows
// leaves, by the degree-days that each takes for one.
func (g grass) offset() float64 {
	rye := leaf.Of(entry.Ryegrass).DegreeDays
	if g.habit.DegreeDays <= 0 {
		return 0
	}
	return math.Log(rye / g.habit.DegreeDays)
}

// spread gives how much its paddocks differ, before counts.
func (g grass) spread(t tuning) float64 {
	if g.habit.Grass == entry.Ryegrass || !g.habit.Known {
		return t.own
	}
	return math.Hypot(t.own, t.sown)
}

// live gives how many leaves stay alive.
func (g grass) live() float64 { return max(float64(g.habit.Live), 1) }
