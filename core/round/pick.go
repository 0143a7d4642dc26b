package round

import (
	"math"

	"leafround/core/entry"
	"leafround/core/farm"
	"leafround/core/leaf"
)

// paces are the rounds that are weighed against each other, as parts of the
// one that the grass needs to its target.
var paces = [...]float64{0.7, 0.8, 0.9, 1, 1.1, 1.2, 1.35}

// Pick is a round's length that was weighed: what it gives up in the round to
// come, by the best order, and in the round after that.
type Pick struct {
	Days        float64
	Lost, After float64 // shares of growth given up
}

// Cost is what the two rounds give up together, as a mean.
func (p Pick) Cost() float64 { return (p.Lost + p.After) / 2 }

// BestLength picks the round's length that gives up the least growth over two
// rounds (ours): the one to come, for which the farm stands as it does, and the
// one after it, in which each paddock is grazed at the stage to which it comes
// in a round from now. The round that the grass needs is right when the farm is
// in step with it; a farm that has run ahead has to go faster for a while, one
// that was grazed down slower. No pick is shorter than least days.
func BestLength(f *farm.Farm, day entry.Date, least float64) (best Pick, all []Pick) {
	l := LengthOf(f, day, What{})
	n := needs{f.Estimate(day), day, inRound(f, day, nil)}
	for _, pace := range paces {
		days := math.Max(least, pace*l.Days)
		if len(all) > 0 && all[len(all)-1].Days >= days {
			continue
		}
		p, _ := Build(f, day, What{Days: days})
		all = append(all, Pick{days, Solve(p).Lost, n.after(days)})
	}
	for i, p := range all {
		if i == 0 || p.Cost() < best.Cost() {
			best = p
		}
	}
	return best, all
}

// spread is how widely stages at grazing scatter in a round, leaves (ours).
const spread = 0.3

// after gives what a round so long gives up once the farm is in step with it.
func (n needs) after(days float64) float64 {
	stage := Stage{float64(n.stageAfter(days)), spread}
	f := Field{Habit: leaf.Of(entry.Ryegrass), Grow: []Stage{stage}}
	return f.givenUp(0)
}
