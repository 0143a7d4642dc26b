package pace_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"leafround/core/entry"
	"leafround/core/leaf"
	"leafround/core/pace"
)

// cell is one line of the trial's table.

type cell struct {
	name              string
	n, inside         int
	bot, paper, ideal float64 // sums of squared errors, days²
	lows, highs       int
}

func (c *cell) add(o cell) {
	c.n, c.inside = c.n+o.n, c.inside+o.inside
	c.bot, c.paper, c.ideal = c.bot+o.bot, c.paper+o.paper, c.ideal+o.ideal
	c.lows, c.highs = c.lows+o.lows, c.highs+o.highs
}

func (c cell) rmse() (bot, paper, ideal float64) {
	n := float64(c.n)
	return math.Sqrt(c.bot / n), math.Sqrt(c.paper / n), math.Sqrt(c.ideal / n)
}

func (c cell) String() string {
	b, p, i := c.rmse()
	return fmt.Sprintf("%-24s %6d  %5.2f  %5.2f  %5.2f   %5.3f  %5.3f   %4.1f %% (early %.1f late %.1f)", c.name, c.n, b, p, i, b/p, b/i,
		100*float64(c.inside)/float64(c.n), 100*float64(c.lows)/float64(c.n), 100*float64(c.highs)/float64(c.n))
}

// farmTrial runs one invented farm for a number of days after two unseen months
// and scores each forecast that is made at a count.
func farmTrial(seed uint64, south bool, paddocks, days int, m manner) cell {
	r := rand.New(rand.NewPCG(seed, 7))

	l := drawLore(r, south)
	from := entry.NewDate(2021, time.Month(1+r.IntN(12)), 1)
	w := imagine(r, l, from, paddocks, days+160)
	const skip = 60
	diary := keepDiary(r, w, m, skip)
	lat := 52.0
	if south {
		lat = -38
	}
	k := pace.New(pace.Site{Lat: lat, Placed: true, South: south})
	for p := range paddocks {
		k.Paddock(fmt.Sprint(p), leaf.Of(entry.Ryegrass))
	}
	best := newIdeal(l, w, skip)
	grazed := map[int]int{}
	var c cell
	for i, h := range diary {
		if h.day >= skip+days {
			break
		}
		name := fmt.Sprint(h.paddock)
		best.to(h.day)
		if h.count == nil {
			k.Add(pace.Event{ID: int64(i), Day: from.Add(h.day), Paddock: name, Do: &pace.Restart{Share: 1}})
			best.graze(h.paddock)
			grazed[h.paddock] = h.day
			continue
		}
		s := measured(h.count)
		k.Add(pace.Event{ID: int64(i), Day: from.Add(h.day), Paddock: name,
			Do: &pace.Seen{Mean: s.Mean, N: s.N, SE: s.SE, SD: s.SD, Past: h.count.Past}})
		best.see(h.paddock, s.N, s.Mean)
		since, known := grazed[h.paddock]
		if !known || !h.asked || s.Mean == 0 {
			continue
		}
		f, ok := k.On(from.Add(h.day)).Reach(name, 2.5)
		if !ok {
			continue
		}
		c.score(f, from, h, paper(h.day, since, s.Mean), best.due(h.paddock, 2.5))
	}
	return c
}

// score takes one forecast, with each way's moment rounded to the nearest day.
func (c *cell) score(f pace.Forecast, from entry.Date, h happened, paper, ideal float64) {
	due := math.Round(h.due)
	miss := func(v float64) float64 { d := math.Round(v) - due; return d * d }
	c.n++
	c.bot += miss(float64(f.On.Sub(from)))
	c.paper += miss(paper)
	c.ideal += miss(ideal)
	day := from.Add(int(due))
	switch {
	case day < f.Low:
		c.lows++
	case day > f.High:
		c.highs++
	default:
		c.inside++
	}
}

func TestSeasonTrial(t *testing.T) {
	var all cell
	for _, south := range []bool{true, false} {
		for _, m := range []manner{sparse, dense} {
			for _, paddocks := range []int{10, 30} {
				c := cell{name: fmt.Sprintf("south=%v %s %d", south, m.name, paddocks)}
				for seed := range uint64(4) {
					c.add(farmTrial(seed, south, paddocks, 900, m))
				}
				t.Log(c)
				all.add(c)
			}
		}
	}
	t.Log(all)

}
