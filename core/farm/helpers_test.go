package farm

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
)

// team writes a log: each entry is sent a minute after the one before, on its
// own day.
type team struct {
	t   *testing.T
	log []entry.Logged
}

var nov = func(day int) entry.Date { return entry.NewDate(2026, time.November, day) }

// say logs entries as Ana, the manager, on a day of November 2026.
func (m *team) say(day int, entries ...entry.Entry) *team {
	for _, e := range entries {
		id := int64(len(m.log) + 1)
		at := nov(day).Time().Add(time.Duration(id) * time.Minute)
		m.log = append(m.log, entry.Logged{ID: id, Entry: e, SentAt: at, MemberID: 1, Member: "Ana",
			Manager: true, MessageID: id})
	}
	return m
}

// farm folds the log, and applies it one by one, and holds both to be one.
func (m *team) farm() *Farm {
	m.t.Helper()
	folded, applied := Fold(m.log), New()
	applied.ApplyAll(m.log)
	same(m.t, folded, applied)
	return folded
}

func (m *team) paddock(name string) *Paddock {
	m.t.Helper()
	p := m.farm().Find(name)
	require.NotNil(m.t, p)
	return p
}

// newTeam begins a farm at Totara Bend with paddocks 1 to 4 of two hectares.
func newTeam(t *testing.T, mobs ...string) *team {
	m := &team{t: t}
	m.say(1, entry.Setup{What: entry.SetFarm, Name: "Totara Bend", Zone: "Pacific/Auckland"},
		entry.Setup{What: entry.SetPaddocks, Paddocks: []entry.Plot{
			{Name: "1", Area: 2}, {Name: "2", Area: 2}, {Name: "3", Area: 2}, {Name: "River 1", Area: 4}}})
	for _, name := range mobs {
		m.say(1, entry.Setup{What: entry.SetMob, Mob: name, Head: 100})
	}
	return m
}

func in(p string, day int, mob string) entry.Graze {
	return entry.Graze{Paddock: p, Date: nov(day), Event: entry.In, Mob: mob}
}

func out(p string, day int, mob string) entry.Graze {
	return entry.Graze{Paddock: p, Date: nov(day), Event: entry.Out, Mob: mob}
}

func grazed(p string, day int) entry.Graze {
	return entry.Graze{Paddock: p, Date: nov(day), Event: entry.Grazed}
}

func count(p string, day int, scores ...entry.LeafStage) entry.Count {
	c := entry.Count{Paddock: p, Date: nov(day)}
	for _, s := range scores {
		c.Said = append(c.Said, entry.Tiller{Score: s})
	}
	return c.Scored(entry.RemnantBySize)
}

// picture writes all that a farm says of itself.
func picture(f *Farm) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s %s %v %v %v %v %s %s %v %v %q\n", f.Name, f.ZoneName, f.Lat, f.Lon, f.Placed, f.Aim,
		f.SummaryAt, f.Remnant, f.HoldDays, f.Quiet, f.Units)
	for _, p := range f.Paddocks {
		drawPaddock(&b, p)
	}
	for _, p := range f.all {
		fmt.Fprintf(&b, "all %s retired=%v heirs=%v\n", p.Name, p.Retired, p.heirs)
	}
	for _, m := range f.Mobs {
		in := ""
		if m.In != nil {
			in = m.In.Name
		}
		fmt.Fprintf(&b, "mob %s %d %v in=%s since=%v only=%v bar=%v %v %v %v %v\n", m.Name, m.Head, m.Set, in,
			m.Since, m.Only, m.Bar, m.Away, m.BackFence, m.Listed, m.Gone)
	}
	fmt.Fprintf(&b, "pins %v notes %d\n", f.Pins, len(f.Notes))
	for day := nov(1).Add(-60); day < nov(1).Add(60); day++ {
		if d, ok := f.Weather(day); ok {
			fmt.Fprintf(&b, "%v %+v\n", day, d.key())
		}
	}
	return b.String()
}

func drawPaddock(b *strings.Builder, p *Paddock) {
	fmt.Fprintf(b, "%s %v %s %s listed=%v regrowth=%+v closed=%v seen=%v\n", p.Name, p.Area, p.Grass, p.OnlyMob,
		p.Listed, p.Regrowth, p.Closed, p.LastSeen)
	for _, s := range p.Stays {
		fmt.Fprintf(b, "  stay %s %v %v %v\n", s.Mob, s.Since, s.Head, s.Back)
	}
	for _, c := range p.Counts {
		fmt.Fprintf(b, "  count %d %v %v\n", c.ID, c.Date, c.Mean)
	}
	for _, h := range p.Holds {
		fmt.Fprintf(b, "  hold %+v\n", h)
	}
	for _, g := range p.Grazings {
		g.Count = nil
		fmt.Fprintf(b, "  grazing %+v\n", g)
	}
	fmt.Fprintf(b, "  cuts %v remarks %v\n", p.Cuts, p.remarks)
}

// same holds two farms to be one, the estimates of several days included. What
// the estimator takes for granted of a paddock hangs a little on when it first
// heard of it: a five-hundredth is let pass.
func same(t require.TestingT, want, got *Farm) {
	require.Equal(t, picture(want), picture(got))
	for _, day := range []entry.Date{nov(5), nov(10), nov(15), nov(21), nov(25), nov(1).Add(60)} {
		a, b := want.Estimate(day), got.Estimate(day)
		require.InEpsilon(t, a.Pace("").DaysPerLeaf, b.Pace("").DaysPerLeaf, 2e-3)
		for _, p := range want.Paddocks {
			s, known := a.Stage(p.Name)
			o, also := b.Stage(p.Name)
			require.Equal(t, known, also, p.Name)
			if known && s.Mean > 1e-6 {
				require.InEpsilon(t, s.Mean, o.Mean, 2e-3, "%s on %s", p.Name, day)
				require.InEpsilon(t, s.SD, o.SD, 2e-3, "%s on %s", p.Name, day)
			}
			require.Equal(t, s.Days, o.Days)
		}
	}
}
