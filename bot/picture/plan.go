package picture

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/plot/vg"

	"leafround/bot/chat"
	"leafround/core/entry"
)

// Stay is one stay of a plan: a mob in a paddock.
type Stay struct {
	Mob      string
	Paddock  string
	From, To entry.Date // To is not included; To == From is part of one day
	Stage    float64    // leaves when it goes in
	End      float64    // where the window of its grass ends; the figure is then "3 or more"
	Early    bool       // below the window of its grass
	Now      bool       // it is there already
}

// Plan is the order of the coming days, mob by mob.
type Plan struct {
	Farm  string
	Today entry.Date
	Days  int // how many days are shown, 14 at most
	Stays []Stay
	Mobs  []string // in the order of the columns; those of the stays if empty
}

// The layout of the plan, in points.
const (
	mostPlanDays = 14
	dayWidth     = vg.Length(58)
	slotHeight   = vg.Length(17)
	wholeDay     = vg.Length(36)
)

// block is a stay with its place in its column.
type block struct {
	Stay
	top, bottom float64 // in days from the first
}

// Draw draws the picture: days run down, a column for each mob.
func (v Plan) Draw() (chat.Picture, error) {
	mobs := v.mobs()
	if len(mobs) == 0 {
		return chat.Picture{}, fmt.Errorf("picture: the plan has no stay to draw")
	}
	days := min(max(v.Days, 1), mostPlanDays)
	under := v.Farm + ", from " + day(v.Today) + ". A block is a stay; the figure is leaves when the mob goes in. Dashed and “early”: below the window."
	top := headingHeight(under) + 26
	columns, row := map[string][]block{}, wholeDay
	for _, m := range mobs {
		blocks, crowd := v.blocks(m, days)
		columns[m], row = blocks, max(row, slotHeight*vg.Length(crowd))
	}
	s := newSheet(top + row*vg.Length(days) + 14)
	s.heading("Where each mob goes", under)
	s.days(v.Today, days, top, row)
	width := (sheetWidth - edge - dayWidth) / vg.Length(len(mobs))
	for i, m := range mobs {
		x := dayWidth + width*vg.Length(i)
		p := pen{size: 12, bold: true, color: deepest}
		s.write(p, x+4, top-12, p.fit(named(m), width-6))
		for _, b := range columns[m] {
			s.block(b, x+2, x+width-3, top+row*vg.Length(b.top)+1.5, top+row*vg.Length(b.bottom)-1.5)
		}
	}
	return s.picture("the plan of the coming days, a column for each mob", v.caption(mobs, days))
}

// mobs lists the columns.
func (v Plan) mobs() []string {
	if len(v.Mobs) > 0 {
		return v.Mobs
	}
	var out []string
	for _, s := range v.Stays {
		if !slices.Contains(out, s.Mob) {
			out = append(out, s.Mob)
		}
	}
	return out
}

func named(mob string) string {
	if mob == "" {
		return "the mob"
	}
	return mob
}

// of lists a mob's stays within the days shown, in order.
func (v Plan) of(mob string, days int) []Stay {
	var out []Stay
	for _, s := range v.Stays {
		if s.Mob == mob && s.From < v.Today.Add(days) && max(s.To, s.From.Add(1)) > v.Today {
			out = append(out, s)
		}
	}
	slices.SortStableFunc(out, func(a, b Stay) int { return cmp.Or(cmp.Compare(a.From, b.From), cmp.Compare(a.To, b.To)) })
	return out
}

// blocks places a mob's stays: stays of one day share it, one under the other.
// crowd is how many share the fullest day.
func (v Plan) blocks(mob string, days int) (out []block, crowd int) {
	stays := v.of(mob, days)
	onDay := make([][]int, days)
	for i, s := range stays {
		for d := max(s.From.Sub(v.Today), 0); d < min(max(s.To, s.From.Add(1)).Sub(v.Today), days); d++ {
			onDay[d] = append(onDay[d], i)
			crowd = max(crowd, len(onDay[d]))
		}
	}
	out = make([]block, len(stays))
	for i, s := range stays {
		out[i] = block{Stay: s, top: -1}
	}
	for d, list := range onDay {
		for slot, i := range list {
			share := 1 / float64(len(list))
			if out[i].top < 0 {
				out[i].top = float64(d) + share*float64(slot)
			}
			out[i].bottom = float64(d) + share*float64(slot+1)
		}
	}
	return out, crowd
}

// days writes the days at the left, a line between them.
func (s *sheet) days(from entry.Date, days int, top, row vg.Length) {
	for d := range days {
		y := top + row*vg.Length(d)
		s.stroke(hair, 0.8, nil, s.at(edge, y), s.at(sheetWidth-edge, y))
		t := from.Add(d).Time()
		p := strong
		if d > 0 {
			p = body
		}
		s.write(p, edge, y+11, t.Format("Mon 2"))
		words := ""
		switch {
		case d == 0:
			words = "today"
		case t.Day() == 1:
			words = t.Format("Jan")
		}
		if words != "" && row >= 30 {
			s.write(small, edge, y+24, words)
		}
	}
	y := top + row*vg.Length(days)
	s.stroke(hair, 0.8, nil, s.at(edge, y), s.at(sheetWidth-edge, y))
}

// block draws one stay.
func (s *sheet) block(b block, x0, x1, y0, y1 vg.Length) {
	fill, dashes, line := pale, []vg.Length(nil), deep
	switch {
	case b.Now:
		fill = mild
	case b.Early:
		fill, dashes, line = white, []vg.Length{3, 2}, ink
	}
	s.fill(fill, x0, y0, x1, y1)
	s.frame(line, 1.1, dashes, x0, y0, x1, y1)
	inside := x1 - x0 - 10
	figure := orMore(b.Stage, b.End)
	if b.Early { // cut, not rounded: 1.96 is not yet 2.0
		figure = leaves(math.Floor(b.Stage*10)/10) + ", early"
	}
	if y1-y0 < 30 { // one line: the figure only where there is room for it
		s.write(strong, x0+5, (y0+y1)/2, strong.fit(b.Paddock, inside))
		p := small.in(ink).right()
		if b.Now {
			figure = "there now"
		}
		if strong.width(b.Paddock)+8+p.width(figure) < inside {
			s.write(p, x1-5, (y0+y1)/2, figure)
		}
		return
	}
	if !b.Early {
		figure += " leaves"
	}
	if b.Now {
		figure = "there now"
	}
	s.write(strong.sized(12), x0+5, y0+11, strong.sized(12).fit(b.Paddock, inside))
	s.write(small.in(ink), x0+5, y0+24, small.fit(figure, inside))
}

// caption says in words what the picture comes to.
func (v Plan) caption(mobs []string, days int) string {
	words := fmt.Sprintf("%s, %s to %s.", v.Farm, day(v.Today), day(v.Today.Add(days-1)))
	early := 0
	for _, m := range mobs {
		var names []string
		for _, s := range v.of(m, days) {
			on := s.From.Time().Format("Mon 2")
			if s.Now {
				on = "now"
			}
			names = append(names, s.Paddock+" ("+on+")")
			if s.Early {
				early++
			}
		}
		if len(names) == 0 {
			names = []string{"no paddock"}
		}
		words += " " + capital(named(m)) + ": " + list(names, 8) + "."
	}
	if early > 0 {
		words += " " + plural(early, "stay begins", "stays begin") + " below the window of the grass."
	}
	if v.Days > mostPlanDays {
		words += fmt.Sprintf(" The picture shows the first %d days.", mostPlanDays)
	}
	return words
}
