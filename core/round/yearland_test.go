package round

import (
	"fmt"
	"math"
	"math/rand/v2"

	"leafround/core/entry"
	"leafround/core/leaf"
)

// land is an invented farm on which the year trial runs: what is true and
// nobody sees but by counting. All of its figures are ours but for days per
// leaf, which keep to the rules of thumb (common practice: 6–10 in spring, 20–35
// in winter).
type land struct {
	seed  uint64
	first entry.Date
	rate  []float64 // by day: leaves a day on the mean paddock
	plots []plot
	most  float64 // hectares a day that the mob can eat at the most
}

// plot is one paddock: its truth.
type plot struct {
	name  string
	area  float64
	own   float64 // its pace as a part of the farm's
	stage float64 // leaves since it was last grazed or cut
	since int     // the day that regrowth began
	left  float64 // hectares still to graze, of the paddock that the mob is in
	shut  bool
}

// daysPerLeaf by month, January first, in the south.
var daysPerLeaf = [12]float64{11, 12, 13, 15, 20, 27, 30, 22, 13, 8.5, 8, 9.5}

func newLand(seed uint64, south bool, paddocks, days int) *land {
	r := rand.New(rand.NewPCG(seed, 77))
	l := &land{seed: seed, first: entry.NewDate(2026, 1, 1)}
	year, weather := math.Exp(0.1*r.NormFloat64()), 0.0
	for d := range days {
		weather = weather*0.95 + 0.15*math.Sqrt(1-0.95*0.95)*r.NormFloat64()
		l.rate = append(l.rate, year*math.Exp(weather)/seasonal(l.first.Add(d), south))
	}
	total := 0.0
	for i := range paddocks {
		p := plot{name: fmt.Sprint(i + 1), area: 2 + 2*r.Float64(), own: math.Exp(0.12 * r.NormFloat64())}
		p.stage = 2.75 * float64(i+1) / float64(paddocks) * math.Exp(0.1*r.NormFloat64())
		p.since = -int(p.stage / l.rate[0])
		l.plots = append(l.plots, p)
		total += p.area
	}
	l.most = total / 25
	return l
}

// seasonal gives days per leaf on a day, in a straight line between the middles
// of the months.
func seasonal(day entry.Date, south bool) float64 {
	at := float64(day.Time().YearDay())/365*12 - 0.5
	if !south {
		at += 6
	}
	at = math.Mod(at+12, 12)
	k := int(at)
	a, b := daysPerLeaf[k], daysPerLeaf[(k+1)%12]
	return a + (at-float64(k))*(b-a)
}

// count pulls eight tillers in a paddock on a day: the same luck for whoever
// counts. A tiller keeps three leaves alive.
func (l *land) count(i, day int) entry.Count {
	r := rand.New(rand.NewPCG(l.seed*1000+uint64(i), uint64(day)))
	c := entry.Count{Paddock: l.plots[i].name, Date: l.first.Add(day), N: 8}
	sum := 0.0
	for range c.N {
		t := math.Max(0, math.Round(4*(l.plots[i].stage+0.45*r.NormFloat64()))/4)
		if t > 3 {
			t = 3
			c.Past++
		}
		c.Tillers = append(c.Tillers, entry.LeafStage(t))
		sum += t
	}
	c.Mean = entry.LeafStage(sum / float64(c.N))
	return c
}

// ledger is what a year came to.
type ledger struct {
	lost, area         float64 // hectares of growth given up; hectares grazed or cut
	early, late, moves int
	shut               float64 // hectares shut up
}

func (b ledger) share() float64 { return b.lost / b.area }

// take charges hectares grazed at a stage.
func (b *ledger) take(ha, stage float64) {
	b.area += ha
	b.lost += ha * leaf.GivenUp(leaf.Of(entry.Ryegrass), entry.LeafStage(stage))
}

// policy is a way to run the farm.
type policy interface {
	walk(day int)               // counts have come in
	speed(day int) (ha float64) // hectares a day from this day on
	next(day int) int           // which plot
	spare(day int) (shut []int) // which plots to shut up as surplus now
	moved(i, day int, cut, in bool)
}

// run lets a policy run a farm for its days.
func (l *land) run(p policy) ledger {
	var book ledger
	in, ha := -1, 0.0
	for day := range l.rate {
		for i := range l.plots {
			l.plots[i].stage += l.rate[day] * l.plots[i].own
		}
		if day%7 == 0 {
			p.walk(day)
			for _, i := range p.spare(day) {
				l.plots[i].shut = true
				book.shut += l.plots[i].area
			}
			ha = math.Min(p.speed(day), l.most)
		}
		l.cut(p, day, &book)
		in = l.graze(p, day, in, ha, &book)
	}
	return book
}

// graze lets the mob eat a day's hectares, into as many paddocks as it takes.
func (l *land) graze(p policy, day, in int, ha float64, book *ledger) int {
	for ha > 1e-9 {
		if in < 0 {
			if in = p.next(day); in < 0 {
				return in
			}
			l.plots[in].left = l.plots[in].area
			p.moved(in, day, false, true)
		}
		q := &l.plots[in]
		eat := math.Min(ha, q.left)
		book.take(eat, q.stage)
		ha, q.left = ha-eat, q.left-eat
		if q.left < 1e-9 {
			book.moves++
			if q.stage < 2 {
				book.early++
			} else if q.stage > 3 {
				book.late++
			}
			q.stage, q.since, q.left = 0, day, 0
			p.moved(in, day, false, false)
			in = -1
		}
	}
	return in
}

// cut cuts what was shut up once it has three leaves.
func (l *land) cut(p policy, day int, book *ledger) {
	for i := range l.plots {
		if q := &l.plots[i]; q.shut && q.stage >= 3 {
			book.take(q.area, q.stage)
			q.stage, q.since, q.shut = 0, day, false
			p.moved(i, day, true, false)
		}
	}
}

// open lists the plots that may be grazed.
func (l *land) open() []int {
	var out []int
	for i, q := range l.plots {
		if !q.shut && q.left == 0 {
			out = append(out, i)
		}
	}
	return out
}

func (l *land) openArea() (ha float64) {
	for _, q := range l.plots {
		if !q.shut {
			ha += q.area
		}
	}
	return ha
}
