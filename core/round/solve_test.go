package round

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"leafround/core/entry"
	"leafround/core/leaf"
)

var today = entry.NewDate(2026, time.September, 20)

// invent makes up a farm: paddocks a step apart in regrowth, some noise, some
// holds, some closed canopies.
func invent(r *rand.Rand, fields, mobs int) Problem {
	p := Problem{Today: today}
	pace := 7 + 13*r.Float64() // days per leaf
	days := pace * (2.2 + 0.9*r.Float64())
	area := 0.0
	for i := range fields {
		f := Field{Name: fmt.Sprint(i + 1), Area: entry.Hectares(1 + 4*r.Float64())}
		f.Habit = leaf.Of([]entry.Grass{entry.Ryegrass, entry.Ryegrass, entry.Ryegrass, entry.Fescue, entry.Cocksfoot}[r.IntN(5)])
		at := 3.2*float64(i)/float64(fields) + 0.4*r.NormFloat64()
		own := pace * math.Exp(0.15*r.NormFloat64())
		for d := range int(days) + 10 {
			f.Grow = append(f.Grow, Stage{max(0, at) + float64(d)/own, 0.2 + 0.01*float64(d)})
		}
		switch r.IntN(12) {
		case 0:
			f.Free = today.Add(1 + r.IntN(int(days)))
		case 1:
			f.Closed = 2.2
		case 2:
			f.NoEnd = true
		}
		area += float64(f.Area)
		p.Fields = append(p.Fields, f)
	}
	for m := range mobs {
		share := (0.6 + 0.8*r.Float64()) / float64(mobs)
		p.Mobs = append(p.Mobs, Mob{Name: fmt.Sprint("mob ", m+1), HaPerDay: share * area / days})
	}
	if mobs > 1 {
		for i := range p.Fields {
			if r.IntN(8) == 0 {
				p.Fields[i].Mobs = []string{p.Mobs[r.IntN(mobs)].Name}
			}
		}
	}
	return p
}

func TestGapAndTimeOnGeneratedFarms(t *testing.T) {
	var gaps, times []float64
	for seed := range uint64(20) {
		p := invent(rand.New(rand.NewPCG(5, seed)), 60, 1+int(seed)%3)
		start := time.Now()
		plan := Solve(p)
		times = append(times, float64(time.Since(start).Microseconds())/1000)
		require.LessOrEqual(t, plan.Bound, plan.Lost+1e-9)
		gaps = append(gaps, plan.Lost-plan.Bound)
		t.Logf("seed %d: lost %.4f bound %.4f gap %.4f %5.1f ms", seed, plan.Lost, plan.Bound, plan.Lost-plan.Bound, times[seed])
	}
	assert.Less(t, gaps[0], 0.03)
}
