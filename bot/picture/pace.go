package picture

import (
	"fmt"
	"image/color"
	"math"
	"slices"

	"gonum.org/v1/plot/vg"

	"leafround/bot/chat"
	"leafround/core/entry"
)

// PaceDay is the pace of leaves on one day, in days for one leaf.
type PaceDay struct {
	Day       entry.Date
	Days      float64
	Low, High float64 // 80 %
}

// Seen is a count that says something of the pace.
type Seen struct {
	Day     entry.Date
	Days    float64 // days since regrowth began, for each leaf
	Paddock string
}

// Pace is the pace of leaves over the season: what the counts said, what was
// made of them, and what is to come.
type Pace struct {
	Farm   string // or a paddock with its farm
	Today  entry.Date
	Past   []PaceDay // oldest first, up to today
	Ahead  []PaceDay // from today on
	Counts []Seen
}

// Draw draws the picture.
func (v Pace) Draw() (chat.Picture, error) {
	if len(v.Past) == 0 {
		return chat.Picture{}, fmt.Errorf("picture: a pace needs at least one day")
	}
	under := v.Farm + ", to " + day(v.Today) + ". Line: the pace as reckoned. Shaded: where it lies, 8 times in 10. Dots: what single counts say. Dashed: the days to come."
	top := headingHeight(under) + 26
	s := newSheet(top + 250)
	s.heading("Days for one new leaf", under)
	a := v.span(top, top+214)
	s.calendar(a)
	s.rungs(a)
	s.ribbon(a, v.Past, pale)
	s.ribbon(a, v.Ahead, hair)
	for _, c := range v.Counts {
		if !c.off(a) {
			s.dot(middling, a.x(c.Day), a.y(c.Days), 2.6)
		}
	}
	s.trace(a, v.Past, nil)
	s.trace(a, v.Ahead, []vg.Length{4, 3})
	s.nowLine(a, v.Today)
	v.label(s, a)
	s.write(small, edge, a.top-13, "slower")
	s.write(small, edge, a.bottom+13, "faster")
	return s.picture("the pace of leaves over the season, with the counts behind it and the days to come", v.caption(a))
}

// span gives the days and the bounds: room for the line with its interval and
// for most of the counts. Single counts go astray by far, where a grazing was
// not logged; they must not squeeze the rest.
func (v Pace) span(top, bottom vg.Length) span {
	a := span{from: v.Past[0].Day, to: v.Today.Add(1), left: 40, right: sheetWidth - 46, top: top, bottom: bottom, low: math.Inf(1), high: math.Inf(-1)}
	take := func(low, high float64) { a.low, a.high = min(a.low, low), max(a.high, high) }
	line := 0.0
	for _, p := range slices.Concat(v.Past, v.Ahead) {
		a.to = max(a.to, p.Day)
		take(p.Low, p.High)
		line = max(line, p.Days)
	}
	a.high = min(a.high, 2.5*line)
	for _, c := range v.Counts {
		if c.Days < 2*line && c.Days > a.low/2 {
			take(c.Days, c.Days)
		}
	}
	a.low, a.high = math.Floor(a.low/2)*2, math.Ceil(a.high/2)*2
	a.low = max(min(a.low, a.high-4), 0)
	return a
}

// off tells whether a count lies outside the sheet.
func (c Seen) off(a span) bool { return c.Day < a.from || c.Days < a.low || c.Days > a.high }

// rungs draws the level lines with their numbers.
func (s *sheet) rungs(a span) {
	step := 1.0
	for _, n := range []float64{1, 2, 5, 10, 20} {
		if step = n; (a.high-a.low)/n <= 6 {
			break
		}
	}
	for n := math.Ceil(a.low/step) * step; n <= a.high; n += step {
		s.stroke(hair, 0.7, nil, s.at(a.left, a.y(n)), s.at(a.right, a.y(n)))
		s.write(small.right(), a.left-6, a.y(n), fmt.Sprint(n))
	}
}

// ribbon shades the interval.
func (s *sheet) ribbon(a span, days []PaceDay, c color.Color) {
	if len(days) < 2 {
		return
	}
	var points []vg.Point
	for _, p := range days {
		points = append(points, s.at(a.x(p.Day), a.y(p.High)))
	}
	for i := len(days) - 1; i >= 0; i-- {
		points = append(points, s.at(a.x(days[i].Day), a.y(days[i].Low)))
	}
	s.area(c, points...)
}

// trace draws the line itself.
func (s *sheet) trace(a span, days []PaceDay, dashes []vg.Length) {
	var points []vg.Point
	for _, p := range days {
		points = append(points, s.at(a.x(p.Day), a.y(p.Days)))
	}
	if len(points) > 1 {
		s.stroke(deep, 2.2, dashes, points...)
	}
}

// label writes today's pace, and the last one ahead, at the line.
func (v Pace) label(s *sheet, a span) {
	now := v.Past[len(v.Past)-1]
	s.dot(deepest, a.x(now.Day), a.y(now.Days), 4)
	p := pen{size: 13, bold: true, color: deepest}
	words := fmt.Sprintf("%.1f days", now.Days)
	y := a.y(now.Low) + 14
	if y > a.bottom-8 {
		y = a.y(now.High) - 14
	}
	x := a.x(now.Day) - 7
	s.fill(plate, x-p.width(words)-3, y-8, x+3, y+8)
	s.write(p.right(), x, y, words)
	if len(v.Ahead) > 0 {
		last := v.Ahead[len(v.Ahead)-1]
		s.write(strong.in(deep), a.x(last.Day)+5, a.y(last.Days), fmt.Sprintf("%.1f", last.Days))
	}
}

// caption says in words what the picture comes to.
func (v Pace) caption(a span) string {
	now := v.Past[len(v.Past)-1]
	words := fmt.Sprintf("%s: on %s one leaf takes %.1f days (8 times in 10 between %.1f and %.1f).", v.Farm, day(now.Day), now.Days, now.Low, now.High)
	if before, ok := v.before(28); ok {
		words += fmt.Sprintf(" About four weeks ago it took %.1f.", before.Days)
	}
	if n := len(v.Ahead); n > 0 {
		words += fmt.Sprintf(" By %s it will take about %.1f.", day(v.Ahead[n-1].Day), v.Ahead[n-1].Days)
	}
	words += fmt.Sprintf(" Behind it: %s", plural(len(v.Counts), "count", "counts"))
	astray := 0
	for _, c := range v.Counts {
		if c.off(a) {
			astray++
		}
	}
	if astray > 0 {
		words += fmt.Sprintf(", %d of them so far from the rest that they lie off the sheet", astray)
	}
	return words + "."
}

// before finds the pace about so many days before the last: within half a week.
func (v Pace) before(days int) (PaceDay, bool) {
	want := v.Past[len(v.Past)-1].Day.Add(-days)
	best, found := PaceDay{}, false
	for _, p := range v.Past {
		gap := max(p.Day.Sub(want), want.Sub(p.Day))
		if gap <= 3 && (!found || gap < max(best.Day.Sub(want), want.Sub(best.Day))) {
			best, found = p, true
		}
	}
	return best, found
}
