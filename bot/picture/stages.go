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

// Row is one paddock of a picture of stages.
type Row struct {
	Paddock   string
	Stage     float64 // leaves; NaN where nothing is known
	Low, High float64 // its 95 % interval
	From, To  float64 // the window of its grass
	Advice    string  // wait, ready, late, canopy or unknown
	ReadyOn   entry.Date
	Held      string // why it is held, in a word or two; "" where it is not
}

// Stages is every paddock's stage with its interval, against the window of its
// grass.
type Stages struct {
	Farm   string
	Today  entry.Date
	Rows   []Row
	ByWeek bool // by the week in which they come ready; else in the order given
}

// The layout of the sheet, in points.
const (
	rowHeight   = vg.Length(19)
	groupHeight = vg.Length(24)
	nameRight   = vg.Length(86)
	chartLeft   = vg.Length(94)
	chartRight  = vg.Length(310)
	mostRows    = 45 // more would be too small to read when Telegram has shrunk it
)

// group is a run of rows under one title.
type group struct {
	title string
	rows  []Row
}

// Draw draws the picture.
func (v Stages) Draw() (chat.Picture, error) {
	groups, left := v.groups()
	under := v.Farm + ", " + day(v.Today) + ". Mark: leaves today. Line through it: where it lies, 95 times in 100. Shaded: the window in which to graze."
	top := headingHeight(under) + 18
	h := top + 34
	for _, g := range groups {
		h += rowHeight * vg.Length(len(g.rows))
		if g.title != "" {
			h += groupHeight
		}
	}
	s := newSheet(h)
	s.heading("How far each paddock has grown", under)
	most := v.most()
	s.scale(top, h-26, most)
	y := top
	for _, g := range groups {
		if g.title != "" {
			s.write(strong.in(deep), edge, y+groupHeight/2+3, g.title)
			s.stroke(hair, 0.7, nil, s.at(edge+strong.width(g.title)+6, y+groupHeight/2+3), s.at(sheetWidth-edge, y+groupHeight/2+3))
			y += groupHeight
		}
		for _, r := range g.rows {
			s.row(r, y, most)
			y += rowHeight
		}
	}
	return s.picture("every paddock's leaf stage with its interval, against the window of its grass", v.caption(left))
}

// most gives where the scale ends: half a leaf past the last window, three and
// a half at least. A tiller keeps no more leaves alive than its window's end:
// what lies beyond the scale is drawn at its end, with an arrow.
func (v Stages) most() float64 {
	most := 3.5
	for _, r := range v.Rows {
		most = max(most, r.To+0.5)
	}
	return math.Ceil(most*2) / 2
}

// across gives the x of a number of leaves.
func across(leaves, most float64) vg.Length {
	return chartLeft + (chartRight-chartLeft)*vg.Length(min(max(leaves, 0), most)/most)
}

// scale draws the upright lines and their numbers, above and below.
func (s *sheet) scale(top, bottom vg.Length, most float64) {
	for n := 0; float64(n) <= most; n++ {
		x := across(float64(n), most)
		s.stroke(hair, 0.7, nil, s.at(x, top-4), s.at(x, bottom+4))
		words := fmt.Sprint(n)
		s.write(small.centre(), x, top-11, words)
		s.write(small.centre(), x, bottom+11, words)
	}
	s.write(small, chartRight+6, top-11, "leaves")
	s.write(small, chartRight+6, bottom+11, "leaves")
}

// row draws one paddock.
func (s *sheet) row(r Row, y vg.Length, most float64) {
	mid := y + rowHeight/2
	s.write(body.right(), nameRight, mid, body.fit(r.Paddock, nameRight-edge+4))
	s.fill(pale, across(r.From, most), y+2, across(r.To, most), y+rowHeight-2)
	if !math.IsNaN(r.Stage) {
		s.stroke(ink, 1.6, nil, s.at(across(r.Low, most), mid), s.at(across(r.High, most), mid))
		if r.High > most {
			x := across(most, most)
			s.area(ink, s.at(x, mid-4), s.at(x+5, mid), s.at(x, mid+4))
		}
		s.mark(r, across(r.Stage, most), mid)
	}
	p := small
	if r.Held == "" && (r.Advice == "ready" || r.Advice == "late" || r.Advice == "canopy") {
		p = strong.sized(10)
	}
	s.write(p, chartRight+8, mid, p.fit(r.word(), sheetWidth-chartRight-10))
}

// mark draws the stage: open below the window, filled within it, a diamond at
// its end and past it.
func (s *sheet) mark(r Row, x, y vg.Length) {
	switch {
	case r.Stage >= r.To:
		s.box(ink, x, y, 6)
	case r.Stage >= r.From:
		s.dot(deep, x, y, 4.6)
	default:
		s.ring(deep, x, y, 4.6)
	}
}

// word says how the paddock stands, at the right.
func (r Row) word() string {
	switch {
	case r.Held == "held" || r.Held == "other":
		return "held"
	case r.Held != "":
		return "held, " + r.Held
	case r.Advice == "canopy":
		return "closed over"
	case r.Advice == "late":
		return "late"
	case r.Advice == "ready":
		return "ready"
	case !r.ReadyOn.IsZero():
		return "ready " + shortDay(r.ReadyOn)
	case math.IsNaN(r.Stage):
		return "not counted"
	}
	return ""
}

// groups sorts the rows by the week in which they come ready; left tells how
// many found no room.
func (v Stages) groups() (out []group, left int) {
	rows := v.Rows
	if !v.ByWeek {
		if len(rows) > mostRows {
			rows, left = rows[:mostRows], len(rows)-mostRows
		}
		return []group{{rows: rows}}, left
	}
	rows = slices.Clone(rows)
	slices.SortStableFunc(rows, func(a, b Row) int {
		return cmp.Or(cmp.Compare(v.week(a), v.week(b)), cmp.Compare(a.turn(), b.turn()), cmp.Compare(b.over(), a.over()))
	})
	if len(rows) > mostRows {
		rows, left = rows[:mostRows], len(rows)-mostRows
	}
	for _, r := range rows {
		title := v.title(v.week(r))
		if len(out) == 0 || out[len(out)-1].title != title {
			out = append(out, group{title: title})
		}
		g := &out[len(out)-1]
		g.rows = append(g.rows, r)
	}
	return out, left
}

// turn sorts a week: what is closed over or late first, then what is ready,
// then by the day on which it comes ready.
func (r Row) turn() entry.Date {
	switch r.Advice {
	case "canopy", "late":
		return math.MinInt32
	case "ready":
		return math.MinInt32 + 1
	}
	return r.ReadyOn
}

// over tells how far a row is past the start of its window; it sorts what is
// ready.
func (r Row) over() float64 {
	if math.IsNaN(r.Stage) {
		return math.Inf(-1)
	}
	return r.Stage - r.From
}

// Weeks as groups: what is ready comes first, what is unknown and what is held
// last.
const (
	weekNow     = entry.Date(math.MinInt32)
	weekUnknown = entry.Date(math.MaxInt32 - 1)
	weekHeld    = entry.Date(math.MaxInt32)
)

// week gives the Monday of the week in which a row comes ready.
func (v Stages) week(r Row) entry.Date {
	switch {
	case r.Held != "":
		return weekHeld
	case r.Advice == "ready" || r.Advice == "late" || r.Advice == "canopy":
		return weekNow
	case r.ReadyOn.IsZero():
		return weekUnknown
	}
	return monday(r.ReadyOn)
}

func monday(d entry.Date) entry.Date {
	return d.Add(-(int(d.Weekday()) + 6) % 7)
}

func (v Stages) title(week entry.Date) string {
	switch week {
	case weekNow:
		return "Ready now"
	case weekUnknown:
		return "Not known when"
	case weekHeld:
		return "Held"
	case monday(v.Today):
		return "This week, to " + day(week.Add(6))
	}
	return "Week from " + week.Time().Format("Mon 2 January")
}

// caption says in words what the picture comes to.
func (v Stages) caption(left int) string {
	var late, ready, held []string
	next := Row{}
	for _, r := range v.Rows {
		switch {
		case r.Held != "":
			held = append(held, r.Paddock)
		case r.Advice == "late" || r.Advice == "canopy":
			late = append(late, r.Paddock)
		case r.Advice == "ready":
			ready = append(ready, r.Paddock)
		case !r.ReadyOn.IsZero() && (next.ReadyOn.IsZero() || r.ReadyOn < next.ReadyOn):
			next = r
		}
	}
	words := fmt.Sprintf("%s, %s: of %s, ", v.Farm, day(v.Today), plural(len(v.Rows), "paddock", "paddocks"))
	words += tally(len(ready), ready, "in its window", "in their window")
	words += "; " + tally(len(late), late, "at its end, past it or closed over", "at its end, past it or closed over")
	if len(held) > 0 {
		words += "; " + tally(len(held), held, "held", "held")
	}
	words += "."
	if !next.ReadyOn.IsZero() {
		on := "on " + day(next.ReadyOn)
		if next.ReadyOn <= v.Today {
			on = "later today"
		}
		words += fmt.Sprintf(" The next to come ready is %s, %s.", next.Paddock, on)
	}
	if left > 0 {
		words += fmt.Sprintf(" %s found no room in the picture.", plural(left, "paddock", "paddocks"))
	}
	return words
}

func tally(n int, names []string, one, many string) string {
	switch n {
	case 0:
		return "none " + many
	case 1:
		return "1 " + one + " (" + names[0] + ")"
	}
	return fmt.Sprintf("%d %s (%s)", n, many, list(names, 12))
}
