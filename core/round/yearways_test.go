package round

import (
	"cmp"
	"math"
	"slices"

	"leafround/core/entry"
	"leafround/core/farm"
)

// aim is the leaf stage that whoever chooses a round's length aims at.
const aim = 2.75

// calendar grazes the paddocks in their order, a fixed number of days a round.
type calendar struct {
	l    *land
	days float64
	at   int
}

func (c *calendar) walk(int)                   {}
func (c *calendar) speed(int) float64          { return c.l.openArea() / c.days }
func (c *calendar) spare(int) []int            { return nil }
func (c *calendar) moved(int, int, bool, bool) {}

// next goes on through the list, the furthest grown at the start first.
func (c *calendar) next(int) int {
	n := len(c.l.plots)
	i := n - 1 - c.at%n
	c.at++
	return i
}

// paper reckons as one does with pen and paper (field guide: common practice):
// days per leaf from this week's counts, days since grazing ÷ leaf stage; a
// round of days per leaf × the aim; a paddock's stage from its last count and
// the days since. It picks the longest rested, or the highest stage.
type paper struct {
	l       *land
	highest bool
	pace    float64
	counted []entry.Count // by plot, of this regrowth
}

func newPaper(l *land, south, highest bool) *paper {
	return &paper{l: l, highest: highest, pace: seasonal(l.first, south), counted: make([]entry.Count, len(l.plots))}
}

func (p *paper) walk(day int) {
	sum, n := 0.0, 0
	for _, i := range walked(p.l, day) {
		c := p.l.count(i, day)
		p.counted[i] = c
		if c.Past == 0 && c.Mean > 0.75 {
			sum += float64(day-p.l.plots[i].since) / float64(c.Mean)
			n++
		}
	}
	if n > 0 {
		p.pace = sum / float64(n)
	}
}

// walked lists the plots of a leaf walk: the five longest rested, the middle
// of the queue and its last with a leaf to show (field guide: the next few, the
// middle and the last).
func walked(l *land, day int) []int {
	open := l.open()
	slices.SortStableFunc(open, func(a, b int) int { return cmp.Compare(l.plots[a].since, l.plots[b].since) })
	out := slices.Clone(open[:min(5, len(open))])
	out = append(out, open[len(open)/2])
	for k := len(open) - 1; k > len(open)/2; k-- {
		if day-l.plots[open[k]].since >= 10 {
			return append(out, open[k])
		}
	}
	return out
}

func (p *paper) speed(int) float64 { return p.l.openArea() / Days(p.pace, aim) }

func (p *paper) stage(i, day int) float64 {
	if c := p.counted[i]; c.N > 0 && c.Date >= p.l.first.Add(p.l.plots[i].since) {
		return float64(c.Mean) + float64(p.l.first.Add(day).Sub(c.Date))/p.pace
	}
	return float64(day-p.l.plots[i].since) / p.pace
}

func (p *paper) next(day int) int {
	return slices.MaxFunc(p.l.open(), func(a, b int) int {
		if p.highest {
			return cmp.Compare(p.stage(a, day), p.stage(b, day))
		}
		return cmp.Compare(p.l.plots[b].since, p.l.plots[a].since)
	})
}

// spare shuts up what the mob can't eat of the round, the youngest regrowth
// first, for there is the longest till it is wanted.
func (p *paper) spare(day int) []int {
	return surplusOf(p.l, p.l.openArea()-p.l.most*Days(p.pace, aim), func(i int) float64 { return p.stage(i, day) })
}

// surplusOf picks plots of so many hectares at the most, the least rank first.
func surplusOf(l *land, ha float64, rank func(int) float64) (out []int) {
	open := l.open()
	slices.SortStableFunc(open, func(a, b int) int { return cmp.Compare(rank(a), rank(b)) })
	for _, i := range open {
		if ha -= l.plots[i].area; ha < 0 {
			return out
		}
		out = append(out, i)
	}
	return out
}

func (p *paper) moved(i, _ int, _, in bool) {
	if !in {
		p.counted[i] = entry.Count{}
	}
}

// planner runs the farm by this package: it logs what happened, and asks the
// farm's log for the round, the surplus and the next paddock.
type planner struct {
	l     *land
	d     *diary
	f     *farm.Farm
	days  float64
	index map[string]int
}

func newPlanner(l *land, south bool) *planner {
	p := &planner{l: l, d: newDiary(l.first), index: map[string]int{}}
	lat, zone := 38.0, "Europe/Madrid"
	if south {
		lat, zone = -38, "Pacific/Auckland"
	}
	lon := 0.0
	p.d.say(entry.Setup{What: entry.SetFarm, Name: "Totara Bend", Zone: zone})
	p.d.say(entry.Setup{What: entry.SetPlace, Lat: &lat, Lon: &lon})
	p.d.say(entry.Setup{What: entry.SetAim, Leaves: aim})
	p.d.say(entry.Setup{What: entry.SetMob, Mob: "milkers", Head: 300})
	var plots []entry.Plot
	for i, q := range l.plots {
		p.index[q.name] = i
		plots = append(plots, entry.Plot{Name: q.name, Area: entry.Hectares(q.area)})
	}
	p.d.say(entry.Setup{What: entry.SetPaddocks, Paddocks: plots})
	for _, q := range l.plots {
		p.d.say(entry.Setup{What: entry.SetLastGrazed, Paddock: q.name, Date: l.first.Add(q.since)})
	}
	p.f = farm.Fold(p.d.log)
	return p
}

func (p *planner) log(day int, e entry.Entry) {
	if on := p.l.first.Add(day).Time(); p.d.at.Before(on) {
		p.d.on(p.l.first.Add(day))
	}
	p.d.say(e)
	p.f.Apply(p.d.log[len(p.d.log)-1])
}

func (p *planner) today(day int) entry.Date { return p.l.first.Add(day) }

func (p *planner) walk(day int) {
	for _, i := range walked(p.l, day) {
		p.log(day, p.l.count(i, day))
	}
}

func (p *planner) speed(day int) float64 {
	p.days = BestLength(p.f, p.today(day), p.l.openArea()/p.l.most).Days
	return p.l.openArea() / p.days
}

func (p *planner) next(day int) int {
	problem, _ := Build(p.f, p.today(day), What{Days: math.Max(p.days, p.l.openArea()/p.l.most)})
	plan := Solve(problem)
	if len(plan.Steps) == 0 {
		return -1
	}
	return p.index[plan.Steps[0].Paddock]
}

// spare shuts up what the mob can't eat of the round that the grass needs:
// what the plan would reach last.
func (p *planner) spare(day int) []int {
	l := LengthOf(p.f, p.today(day), What{})
	e := p.f.Estimate(p.today(day))
	out := surplusOf(p.l, float64(l.Area)-p.l.most*l.Days, func(i int) float64 {
		s, _ := e.Stage(p.l.plots[i].name)
		return s.Mean
	})
	for _, i := range out {
		p.log(day, entry.Hold{Paddock: p.l.plots[i].name, Date: p.today(day), Reason: entry.HoldSilage})
	}
	return out
}

func (p *planner) moved(i, day int, cut, in bool) {
	name, on := p.l.plots[i].name, p.today(day)
	switch {
	case cut:
		p.log(day, entry.Cut{Paddock: name, Date: on, What: entry.Silage})
		p.log(day, entry.Release{Paddock: name, Date: on, Reason: entry.HoldSilage})
	case in:
		p.log(day, entry.Graze{Paddock: name, Date: on, Event: entry.In, Mob: "milkers"})
	default:
		p.log(day, entry.Graze{Paddock: name, Date: on, Event: entry.Out, Mob: "milkers"})
	}
}
