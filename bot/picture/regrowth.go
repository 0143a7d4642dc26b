package picture

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/plot/vg"

	"leafround/bot/chat"
	"leafround/core/entry"
)

// StageDay is a leaf stage on one day.
type StageDay struct {
	Day              entry.Date
	Stage, Low, High float64 // leaves; a 95 % interval of what was, 80 % of what is to come
}

// CountMark is a count in one paddock.
type CountMark struct {
	Day              entry.Date
	Stage, Low, High float64 // its 95 % interval
	N                int     // tillers
	Member           string
}

// Start is a grazing or a cut, from which regrowth starts again.
type Start struct {
	Day  entry.Date
	What string // "milkers out", "cut for hay"
}

// Regrowth is one paddock's growth since its last grazings.
type Regrowth struct {
	Paddock  string
	Farm     string
	Today    entry.Date
	From, To float64 // the window of its grass, leaves
	Target   float64
	Past     []StageDay // as reckoned, oldest first, up to today; stages fall at each start
	Ahead    []StageDay // from today on
	Counts   []CountMark
	Starts   []Start
	TargetOn entry.Date // when the target comes; zero where nothing can be said
	Low      entry.Date // 80 % interval of that
	High     entry.Date
}

// Draw draws the picture.
func (v Regrowth) Draw() (chat.Picture, error) {
	if len(v.Past)+len(v.Ahead) == 0 {
		return chat.Picture{}, fmt.Errorf("picture: nothing is known of the regrowth of %s", v.Paddock)
	}
	under := v.Farm + ", to " + day(v.Today) + ". Dots: counts, with where the mean lies. Line: leaves as reckoned. Dashed: to come. Shaded: the window in which to graze."
	top := headingHeight(under) + 26
	s := newSheet(top + 280)
	s.heading("Paddock "+v.Paddock+": leaves since it was grazed", under)
	v.Ahead = v.near()
	a := v.span(top, top+226)
	s.fill(pale, a.left, a.y(v.To), a.right, a.y(v.From))
	s.calendar(a, v.marks()...)
	s.leafRungs(a)
	s.write(small.in(deep), a.left+5, a.y(v.To)+9, "graze in here")
	v.paths(s, a)
	v.starts(s, a)
	for _, c := range v.Counts {
		if c.Day < a.from {
			continue
		}
		x := a.x(c.Day)
		s.stroke(ink, 1.4, nil, s.at(x, a.y(c.Low)), s.at(x, a.y(c.High)))
		s.dot(ink, x, a.y(c.Stage), 4)
	}
	s.nowLine(a, v.Today)
	v.label(s, a)
	return s.picture("one paddock's regrowth with its counts and grazings", v.caption())
}

// marks lists the days whose marks reach down between the dates.
func (v Regrowth) marks() []entry.Date {
	out := []entry.Date{v.TargetOn}
	for _, g := range v.Starts {
		out = append(out, g.Day)
	}
	return out
}

// near gives the days to come until the grass is past its window: a tiller
// keeps no more leaves alive, and a line that went on would promise them.
func (v Regrowth) near() []StageDay {
	for i, p := range v.Ahead {
		if i > 0 && p.Stage > v.To+0.3 {
			return v.Ahead[:i]
		}
	}
	return v.Ahead
}

// span gives the days, and leaves up to half a leaf past the window or the
// highest count.
func (v Regrowth) span(top, bottom vg.Length) span {
	a := span{from: v.Today, to: v.Today.Add(1), low: 0, high: max(3.5, v.To+0.5), left: 30, right: sheetWidth - edge, top: top, bottom: bottom}
	for _, p := range slices.Concat(v.Past, v.Ahead) {
		a.from, a.to = min(a.from, p.Day), max(a.to, p.Day)
	}
	for _, c := range v.Counts {
		if c.Day >= a.from {
			a.high = max(a.high, math.Ceil(2*c.Stage)/2)
		}
	}
	return a
}

// leafRungs draws a level line for each whole leaf.
func (s *sheet) leafRungs(a span) {
	for n := 0.0; n <= a.high; n++ {
		s.stroke(hair, 0.7, nil, s.at(a.left, a.y(n)), s.at(a.right, a.y(n)))
		s.write(small.right(), a.left-6, a.y(n), fmt.Sprint(n))
	}
	s.write(small, edge, a.top-9, "leaves")
}

// paths draws the stage that was and the one to come, each with its interval.
func (v Regrowth) paths(s *sheet, a span) {
	for _, run := range runs(v.Past) {
		s.band(a, run)
	}
	s.band(a, v.Ahead)
	for _, run := range runs(v.Past) {
		s.path(a, run, nil)
	}
	s.path(a, v.Ahead, []vg.Length{4, 3})
}

// runs cuts the days where the stage falls back: a grazing lies between.
func runs(days []StageDay) [][]StageDay {
	var out [][]StageDay
	from := 0
	for i := 1; i <= len(days); i++ {
		if i == len(days) || days[i].Stage < days[i-1].Stage-0.3 {
			out = append(out, days[from:i])
			from = i
		}
	}
	return out
}

// band shades an interval.
func (s *sheet) band(a span, days []StageDay) {
	var points []vg.Point
	for _, p := range days {
		points = append(points, s.at(a.x(p.Day), a.y(p.High)))
	}
	for i := len(days) - 1; i >= 0; i-- {
		points = append(points, s.at(a.x(days[i].Day), a.y(days[i].Low)))
	}
	if len(points) > 3 {
		s.area(veil, points...)
	}
}

func (s *sheet) path(a span, days []StageDay, dashes []vg.Length) {
	var points []vg.Point
	for _, p := range days {
		points = append(points, s.at(a.x(p.Day), a.y(p.Stage)))
	}
	if len(points) > 1 {
		s.stroke(deep, 2.2, dashes, points...)
	}
}

// starts marks the grazings, with what they were beneath the dates.
func (v Regrowth) starts(s *sheet, a span) {
	for _, g := range v.Starts {
		if g.Day < a.from || g.Day > a.to {
			continue
		}
		x := a.x(g.Day)
		s.area(ink, s.at(x-4.5, a.bottom+1), s.at(x+4.5, a.bottom+1), s.at(x, a.bottom-8))
		s.stroke(ink, 0.9, nil, s.at(x, a.bottom), s.at(x, a.bottom+20))
		s.beside(small.in(ink), x-2, a.bottom+27, shortDay(g.Day)+", "+g.What)
	}
}

// beside writes from x to the right, or so far left that it stays on the sheet.
func (s *sheet) beside(p pen, x, y vg.Length, words string) {
	s.write(p, max(edge, min(x, sheetWidth-edge-p.width(words))), y, words)
}

// label writes today's stage, and the target's day beneath the dates.
func (v Regrowth) label(s *sheet, a span) {
	if n := len(v.Past); n > 0 {
		now := v.Past[n-1]
		p := pen{size: 13, bold: true, color: deepest}
		s.dot(deepest, a.x(now.Day), a.y(now.Stage), 3.4)
		s.beside(p, a.x(now.Day)+5, a.y(now.Stage)+13, v.figure(now.Stage))
	}
	if v.TargetOn.IsZero() || v.TargetOn > a.to || v.TargetOn <= v.Today {
		return
	}
	x, y := a.x(v.TargetOn), a.y(v.Target)
	s.stroke(deepest, 1, nil, s.at(x, y), s.at(x, a.bottom+34))
	s.box(deepest, x, y, 5)
	p := strong.in(deepest)
	words := number(v.Target) + " leaves " + day(v.TargetOn)
	s.beside(p, x-p.width(words)/2, a.bottom+41, words)
}

// figure words a stage; past the window's end there are no more leaves to see.
func (v Regrowth) figure(stage float64) string { return orMore(stage, v.To) }

// caption says in words what the picture comes to.
func (v Regrowth) caption() string {
	words := "Paddock " + v.Paddock
	if n := len(v.Past); n > 0 {
		now := v.Past[n-1]
		words += fmt.Sprintf(" stands at %s leaves on %s (95 times in 100 between %s and %s).", v.figure(now.Stage), day(v.Today), v.figure(now.Low), v.figure(now.High))
	} else {
		words += ": nothing is known of today."
	}
	if n := len(v.Starts); n > 0 {
		words += fmt.Sprintf(" Last: %s, %s.", v.Starts[n-1].What, day(v.Starts[n-1].Day))
	}
	if n := len(v.Counts); n > 0 {
		c := v.Counts[n-1]
		words += fmt.Sprintf(" Counted last on %s: %s leaves.", day(c.Day), leaves(c.Stage))
	}
	if v.TargetOn.IsZero() {
		return words
	}
	if v.TargetOn <= v.Today {
		return words + fmt.Sprintf(" The target of %s is reached.", number(v.Target))
	}
	words += fmt.Sprintf(" The target of %s comes about %s", number(v.Target), day(v.TargetOn))
	if !v.Low.IsZero() && v.High > v.Low {
		words += fmt.Sprintf(" (8 times in 10 from %s to %s)", day(v.Low), day(v.High))
	}
	return words + "."
}
