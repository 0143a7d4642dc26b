package picture

import (
	"slices"
	"time"

	"gonum.org/v1/plot/vg"

	"leafround/core/entry"
)

// span is a stretch of days across a chart, and of a quantity up it.
type span struct {
	from, to                 entry.Date
	low, high                float64
	left, right, top, bottom vg.Length
}

func (a span) x(d entry.Date) vg.Length {
	return a.left + (a.right-a.left)*vg.Length(d.Sub(a.from))/vg.Length(max(a.to.Sub(a.from), 1))
}

func (a span) y(v float64) vg.Length {
	v = min(max(v, a.low), a.high)
	return a.bottom - (a.bottom-a.top)*vg.Length((v-a.low)/(a.high-a.low))
}

// upright is one upright line of the calendar: a day and how it is written.
type upright struct {
	day   entry.Date
	words string
}

// uprights gives the days that are written under a chart: Mondays while the
// chart is short, the first of each month when it is long.
func (a span) uprights() []upright {
	var out []upright
	days := a.to.Sub(a.from)
	step := 1 + days/7/6 // weeks between Mondays, six of them at most
	if days > 120 {
		for d := a.from; d <= a.to; d++ {
			if t := d.Time(); t.Day() == 1 {
				out = append(out, upright{d, t.Format("Jan")})
			}
		}
		return out
	}
	for d := a.from; d <= a.to; d++ {
		if d.Weekday() == time.Monday && (d.Sub(monday(a.from))/7)%step == 0 {
			out = append(out, upright{d, shortDay(d)})
		}
	}
	return out
}

// calendar draws the uprights and their dates; a date that a mark at one of the
// days told would cross is left out.
func (s *sheet) calendar(a span, marks ...entry.Date) {
	last := vg.Length(-100)
	for _, u := range a.uprights() {
		x := a.x(u.day)
		s.stroke(hair, 0.7, nil, s.at(x, a.top), s.at(x, a.bottom+4))
		w := small.width(u.words)
		crossed := func(d entry.Date) bool { return a.x(d) > x-w/2-2 && a.x(d) < x+w/2+2 }
		if x-w/2 < last+6 || x+w/2 > sheetWidth-2 || slices.ContainsFunc(marks, crossed) {
			continue
		}
		s.write(small.centre(), x, a.bottom+13, u.words)
		last = x + w/2
	}
}

// nowLine marks today.
func (s *sheet) nowLine(a span, today entry.Date) {
	x := a.x(today)
	s.stroke(grey, 1, []vg.Length{2, 2}, s.at(x, a.top-2), s.at(x, a.bottom+4))
	words := "today"
	p := small.centre()
	if x+small.width(words)/2 > sheetWidth-2 {
		p = small.right()
	}
	s.write(p, x, a.top-9, words)
}
