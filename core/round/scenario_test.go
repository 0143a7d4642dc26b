package round

import (
	"fmt"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"leafround/core/entry"
	"leafround/core/leaf"
)

// even makes so many paddocks of two hectares, ryegrass, a quarter of a leaf
// apart, the first the furthest, at 12 days a leaf.
func even(n int) Problem {
	p := Problem{Today: today, Mobs: []Mob{{Name: "milkers", HaPerDay: 1}}}
	for i := range n {
		f := Field{Name: fmt.Sprint(i + 1), Area: 2, Free: today, Habit: leaf.Of(entry.Ryegrass)}
		for d := range 60 {
			f.Grow = append(f.Grow, Stage{2.75 - 0.25*float64(i) + float64(d)/12, 0.2})
		}
		p.Fields = append(p.Fields, f)
	}
	return p
}

func names(steps []Step) (out []string) {
	for _, s := range steps {
		out = append(out, s.Paddock)
	}
	return out
}

func TestOrderFollowsTheStages(t *testing.T) {
	plan := Solve(even(8))
	assert.Equal(t, []string{"1", "2", "3", "4", "5", "6", "7", "8"}, names(plan.Steps))
	assert.Equal(t, today, plan.Steps[0].From)
	assert.Equal(t, today.Add(2), plan.Steps[0].To, "two hectares at one a day last two days")
	assert.Equal(t, today.Add(2), plan.Steps[1].From)
	// Ours: the mean over the two days' strips, 2.75 and 2.75 + 1/12.
	assert.InDelta(t, 2.75+0.5/12, float64(plan.Steps[0].Stage), 1e-9)
}

func TestHeldPaddockEntersOnItsUntilDay(t *testing.T) {
	p := even(8)
	p.Fields[0].Free = today.Add(5) // the ripest: taken as soon as it may be
	plan := Solve(p)
	for _, s := range plan.Steps {
		if s.Paddock == "1" {
			assert.Equal(t, today.Add(6), s.From, "the first step to begin on its until day or after")
			return
		}
	}
	t.Fatal("the held paddock never entered")
}

func TestHeldPastTheRoundIsWaitedFor(t *testing.T) {
	p := even(3)
	p.Fields[1].Free = today.Add(20)
	plan := Solve(p)
	assert.Equal(t, []string{"1", "3", "2"}, names(plan.Steps))
	assert.Equal(t, today.Add(20), plan.Steps[2].From)
	p.Fields[1].NoEnd = true
	assert.Equal(t, []string{"1", "3"}, names(Solve(p).Steps))
}

func TestMobFinishesItsPaddock(t *testing.T) {
	p := even(6)
	p.Mobs[0].In, p.Mobs[0].Left = "6", 1
	plan := Solve(p)
	assert.Equal(t, "6", plan.Steps[0].Paddock)
	assert.True(t, plan.Steps[0].Current)
	assert.Equal(t, today.Add(1), plan.Steps[0].To, "one hectare at one a day")
	assert.Equal(t, []string{"6", "1", "2", "3", "4", "5"}, names(plan.Steps))
}

func TestMobLeavesAPaddockThatIsHeld(t *testing.T) {
	p := even(6)
	p.Mobs[0].In, p.Mobs[0].Left = "6", 1
	p.Fields[5].NoEnd = true
	assert.Equal(t, []string{"1", "2", "3", "4", "5"}, names(Solve(p).Steps))
}

func TestPinIsKeptAndTheRestPlannedAroundIt(t *testing.T) {
	for _, n := range []int{8, 20} { // ordered exactly, and by search
		p := even(n)
		p.Pins = []Pin{{Mob: "milkers", Paddock: "7", Day: today.Add(3)}}
		plan := Solve(p)
		require.Empty(t, plan.Unmet)
		require.Len(t, plan.Steps, n)
		for _, s := range plan.Steps {
			if s.Paddock == "7" {
				assert.LessOrEqual(t, s.From, today.Add(3))
				assert.Greater(t, s.To, today.Add(3))
			}
		}
		free := p.unpinned()
		assert.Greater(t, plan.Lost, Solve(free).Lost-1e-12, "a wish never gains")
	}
}

func TestPinOfAHeldPaddockIsNotKept(t *testing.T) {
	p := even(8)
	p.Fields[6].Free = today.Add(9)
	p.Pins = []Pin{{Mob: "milkers", Paddock: "7", Day: today.Add(3)}}
	plan := Solve(p)
	assert.Equal(t, p.Pins, plan.Unmet)
	assert.LessOrEqual(t, plan.Bound, plan.Lost)
	for _, s := range plan.Steps {
		if s.Paddock == "7" {
			assert.GreaterOrEqual(t, s.From, today.Add(9))
		}
	}
}

func TestBarsAndSeveralMobs(t *testing.T) {
	p := even(12)
	p.Mobs = append(p.Mobs, Mob{Name: "heifers", HaPerDay: 0.5})
	for i := range p.Fields {
		if i%4 == 3 {
			p.Fields[i].Mobs = []string{"heifers"}
		}
	}
	p.Fields[0].Mobs = []string{"milkers"}
	plan := Solve(p)
	require.Len(t, plan.Steps, 12)
	last := map[string]float64{}
	for _, s := range plan.Steps {
		if f := p.field(s.Paddock); f.Mobs != nil {
			assert.Contains(t, f.Mobs, s.Mob)
		}
		assert.GreaterOrEqual(t, s.Start, last[s.Mob]-epsilon, "a mob is in one paddock at a time")
		last[s.Mob] = s.End
	}
	assert.Len(t, last, 2, "both mobs move")
}

func TestSeveralStepsADay(t *testing.T) {
	p := even(8)
	p.Mobs[0].HaPerDay = 4 // a day and a night paddock
	plan := Solve(p)
	assert.Equal(t, plan.Steps[0].From, plan.Steps[1].From)
	assert.Equal(t, today.Add(1), plan.Steps[1].To)
	assert.Equal(t, today.Add(1), plan.Steps[2].From)
}

func TestClosedCanopyGoesEarly(t *testing.T) {
	p := even(8)
	p.Fields[5].Closed = 1.4
	at := 0
	for i, s := range Solve(p).Steps {
		if s.Paddock == "6" {
			at = i
		}
	}
	assert.Less(t, at, 5, "it gains nothing by waiting")
}

func TestNothingToPlan(t *testing.T) {
	for _, p := range []Problem{{Today: today}, {Today: today, Mobs: []Mob{{Name: "milkers", HaPerDay: 2}}},
		{Today: today, Fields: even(3).Fields}} {
		plan := Solve(p)
		assert.Empty(t, plan.Steps)
		assert.Zero(t, plan.Lost)
	}
}

// A mob that hardly moves makes a round of years: that takes no longer to plan.
func TestVerySlowMobs(t *testing.T) {
	for _, mobs := range []int{1, 2} {
		p := invent(rand.New(rand.NewPCG(3, 3)), 40, mobs)
		for m := range p.Mobs {
			p.Mobs[m].HaPerDay = 0.05
		}
		start := time.Now()
		plan := Solve(p)
		assert.Less(t, time.Since(start), 5*time.Second)
		assert.LessOrEqual(t, plan.Bound, plan.Lost)
		assert.Greater(t, plan.Bound, 0.5*plan.Lost)
	}
}
