package round

import (
	"cmp"
	"math"
	"slices"

	"leafround/core/entry"
)

// pinWeight is what each day by which a pin is missed costs, in hectares of
// growth lost whole: far more than any order can save (ours).
const pinWeight = 1e4

// epsilon is the tolerance on moments, in days (a tenth of a second).
const epsilon = 1e-6

// job is a paddock to be grazed once; crew a mob from the moment it is free.
type job struct {
	field  int     // index in Problem.Fields
	area   float64 // hectares
	free   float64 // days from today
	lost   tally   // share of growth given up, by day
	cost   tally   // the same and what else the planner minds
	mobs   []bool  // by crew
	latest float64 // no order starts it later
	pinned bool
	pinDay float64
}

type crew struct {
	mob   int // index in Problem.Mobs
	rate  float64
	start float64
}

// group is a set of mobs and paddocks that share nothing with the others.
type group struct {
	jobs  []job
	crews []crew
	far   int // days to which costs are tallied; every order ends before
}

// turn is a job's place in time.
type turn struct {
	job        int
	start, end float64
}

// price gives what it costs to graze the job from start to end, in hectares.
func (j *job) price(start, end float64) float64 {
	c := j.area * j.cost.mean(start, end)
	if j.pinned {
		c += pinWeight * j.missed(start, end)
	}
	return c
}

// missed gives by how much a stay misses the day it is pinned to: nothing when
// it has a part of that day, else the days between and one more.
func (j *job) missed(start, end float64) float64 {
	switch {
	case start >= j.pinDay+1-epsilon:
		return start - j.pinDay
	case end <= j.pinDay+epsilon:
		return j.pinDay + 1 - end
	}
	return 0
}

// stay gives how long a crew takes over a job, in days.
func (g *group) stay(job, crew int) float64 { return g.jobs[job].area / g.crews[crew].rate }

// groups parts the work into groups that share no mob and no paddock. Jobs are
// sorted by the day they are free, then by their place in the problem.
func (p Problem) groups(crews []crew) []*group {
	jobs := p.jobs(crews)
	root := make([]int, len(crews))
	for i := range root {
		root[i] = i
	}
	for _, j := range jobs {
		first := slices.Index(j.mobs, true)
		for c, ok := range j.mobs {
			if ok {
				merge(root, root[first], root[c])
			}
		}
	}
	var out []*group
	for r := range crews {
		if g := pick(jobs, crews, root, r); len(g.jobs) > 0 {
			g.tally(p)
			out = append(out, g)
		}
	}
	return out
}

// tally works out what each job costs on each day.
func (g *group) tally(p Problem) {
	for i := range g.jobs {
		j, f := &g.jobs[i], &p.Fields[g.jobs[i].field]
		j.lost = newTally(g.far, f.givenUp)
		j.cost = newTally(g.far, func(d int) float64 { return j.lost.on(d) + f.harm(d) })
	}
}

// bare gives the group in which nothing but growth given up counts.
func (g *group) bare() *group {
	out := *g
	out.jobs = slices.Clone(g.jobs)
	for i := range out.jobs {
		out.jobs[i].cost = out.jobs[i].lost
	}
	return &out
}

func merge(root []int, keep, lose int) {
	for i := range root {
		if root[i] == lose {
			root[i] = keep
		}
	}
}

// pick copies out the group whose crews have root r.
func pick(jobs []job, crews []crew, root []int, r int) *group {
	g := &group{}
	var mine []int
	for c := range crews {
		if root[c] == r {
			mine = append(mine, c)
			g.crews = append(g.crews, crews[c])
		}
	}
	for _, j := range jobs {
		if first := slices.Index(j.mobs, true); first >= 0 && root[first] == r {
			was := j.mobs
			j.mobs = make([]bool, len(mine))
			for k, c := range mine {
				j.mobs[k] = was[c]
			}
			g.jobs = append(g.jobs, j)
		}
	}
	slices.SortStableFunc(g.jobs, func(a, b job) int { return cmp.Compare(a.free, b.free) })
	g.limit()
	return g
}

// limit works out how late each job can start at the most.
func (g *group) limit() {
	for i := range g.jobs {
		j := &g.jobs[i]
		j.latest = math.Min(g.lastStart(j), g.lastStartShared(j))
		end := j.latest
		for c, ok := range j.mobs {
			if ok {
				end = max(end, j.latest+g.stay(i, c))
			}
		}
		g.far = max(g.far, int(end)+2)
	}
}

// lastStart limits a job's start by its own mobs alone: while it is free and
// not begun, every mob that may graze it is busy with something that it may
// graze, or it would begin it.
func (g *group) lastStart(j *job) float64 {
	work := 0.0
	for k := range g.jobs {
		if other := &g.jobs[k]; other != j && meet(other.mobs, j.mobs) {
			work += other.area
		}
	}
	return eaten(g.ready(j), work)
}

// ready gives the mobs of a job, each from when both are free.
func (g *group) ready(j *job) []crew {
	var out []crew
	for c, ok := range j.mobs {
		if ok {
			out = append(out, crew{rate: g.crews[c].rate, start: max(g.crews[c].start, j.free)})
		}
	}
	return out
}

// lastStartShared limits it by what the other mobs eat too. Once another mob
// stands idle, the job's own mobs can begin only what that one may not graze
// or what was not free then, beside what they are in: so it was busy until
// shortly before.
func (g *group) lastStartShared(j *job) float64 {
	crews, rate, started := g.ready(j), 0.0, 0.0
	for _, c := range crews {
		rate, started = rate+c.rate, max(started, c.start)
	}
	work, longest := g.area()-j.area, 0.0
	for o, other := range g.crews {
		if !j.mobs[o] {
			spell := g.without(j, o) / rate // once all of its own mobs have started
			longest = max(longest, spell)
			crews = append(crews, crew{rate: other.rate, start: max(other.start, j.free) + spell})
		}
	}
	return max(eaten(crews, work), started+longest)
}

// without gives the most hectares that a job's mobs can eat, before they begin
// it, while another mob stands idle.
func (g *group) without(j *job, idle int) float64 {
	area := 0.0
	largest := make([]float64, len(g.crews))
	for k := range g.jobs {
		other := &g.jobs[k]
		switch {
		case other == j || !meet(other.mobs, j.mobs):
		case !other.mobs[idle] || other.free > j.free:
			area += other.area
		default:
			for c, ok := range other.mobs {
				if ok && j.mobs[c] {
					largest[c] = max(largest[c], other.area)
				}
			}
		}
	}
	for _, l := range largest {
		area += l
	}
	return area
}

// eaten gives the moment by which crews, each from its start, have eaten so
// much; at the earliest when the last of them could begin at once.
func eaten(crews []crew, work float64) float64 {
	slices.SortFunc(crews, func(a, b crew) int { return cmp.Compare(a.start, b.start) })
	rate, at := crews[0].rate, crews[0].start
	for _, c := range crews[1:] {
		if work <= rate*(c.start-at) {
			break
		}
		work -= rate * (c.start - at)
		rate, at = rate+c.rate, c.start
	}
	return at + work/rate
}

func meet(a, b []bool) bool {
	for i := range a {
		if a[i] && b[i] {
			return true
		}
	}
	return false
}

// daysUntil gives days from today; never less than none.
func daysUntil(today, day entry.Date) float64 {
	return float64(max(0, day.Sub(today)))
}
