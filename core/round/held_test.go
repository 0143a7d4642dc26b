package round

import (
	"flag"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
	"leafround/core/farm"
)

var long = flag.Bool("long", false, "run the long campaigns")

// Nobody is ever told to graze a held paddock, by any question, what-if or
// plan, whatever the log holds.
func TestNobodyIsToldToGrazeAHeldPaddock(t *testing.T) {
	logs := 15
	if *long {
		logs = 3000
	}
	first := entry.NewDate(2026, time.August, 1)
	told := 0
	for seed := range uint64(logs) {
		r := rand.New(rand.NewPCG(31, seed))
		days := 10 + r.IntN(80)
		f := wander(r, first, days)
		for _, day := range []entry.Date{first.Add(days - 1), first.Add(days + 3)} {
			told += checkHeld(t, f, day)
		}
	}
	require.Positive(t, told, "the logs made up told nobody anything")
}

// checkHeld asks everything that names a paddock to graze and gives how many
// were named.
func checkHeld(t *testing.T, f *farm.Farm, day entry.Date) int {
	t.Helper()
	told := 0
	free := func(paddock string, from, to entry.Date) {
		told++
		p := f.Find(paddock)
		for d := from; d < to; d++ {
			require.Empty(t, p.HeldOn(d), "paddock %s is held on %v", paddock, d)
		}
	}
	mobs := []string{""}
	for _, m := range f.Mobs {
		mobs = append(mobs, m.Name)
	}
	for _, mob := range mobs {
		for _, rank := range []func(*farm.Farm, entry.Date, string) ([]Ranked, []LeftOut){Rank, Ready} {
			ranked, _ := rank(f, day, mob)
			for _, r := range ranked {
				free(r.Paddock, day, day+1)
			}
		}
		for _, w := range []What{{}, {Days: 12}, {Ha: 3}, {Shut: []string{"1", "3"}}} {
			plan := PlanFor(f, day, 40, mob, w)
			for _, s := range append(plan.Steps, plan.Whole.Steps...) {
				free(s.Paddock, s.From, s.To)
				require.Less(t, s.From, s.To)
				require.NotContains(t, w.Shut, s.Paddock)
				require.True(t, s.Current || f.MayGraze(s.Mob, f.Find(s.Paddock)), "%s is barred from %s", s.Mob, s.Paddock)
			}
			apart(t, plan.Steps)
		}
	}
	return told
}

// apart checks that no mob is in two paddocks and no two mobs are in one at a
// time, but for mobs that share the paddock they are in.
func apart(t *testing.T, steps []Step) {
	t.Helper()
	for i, a := range steps {
		for _, b := range steps[:i] {
			if a.Mob == b.Mob || a.Paddock == b.Paddock && !(a.Current && b.Current) {
				require.LessOrEqual(t, b.End, a.Start+1e-6, "%v and %v overlap", b, a)
			}
		}
	}
}
