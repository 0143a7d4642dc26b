package picture

import (
	"fmt"
	"image/color"
	"math"

	"gonum.org/v1/plot/vg"

	"leafround/bot/chat"
	"leafround/core/entry"
)

// LonLat is a place in degrees, longitude first, east and north positive.
type LonLat [2]float64

// Outline is one piece of ground with what is cut out of it.
type Outline struct {
	Outer []LonLat
	Holes [][]LonLat
}

// Plot is one paddock on the map.
type Plot struct {
	Paddock string
	Ground  []Outline
	Stage   float64 // leaves; NaN where nothing is known
	End     float64 // where the window of its grass ends; the figure is then "3+"
	Held    string  // why it is held; "" where it is not
}

// Map is the farm from above: where boundaries are known, each paddock with
// its leaves printed on it, the deeper the blue the more.
type Map struct {
	Farm  string
	Today entry.Date
	Plots []Plot
}

// deepAt is the stage, in leaves, at which the blue is deepest.
const deepAt = 3.0

// Draw draws the picture.
func (v Map) Draw() (chat.Picture, error) {
	g, ok := v.ground()
	if !ok {
		return chat.Picture{}, fmt.Errorf("picture: no boundary is known to draw a map of")
	}
	under := v.Farm + ", " + day(v.Today) + ". The figure is new leaves, the deeper the blue the more. Striped: held. White: not counted."
	g.top = headingHeight(under) + 8
	labels, unwritten := v.labels(g)
	foot := small.wrap(unwritten, sheetWidth-2*edge)
	h := g.top + g.height + 46
	if unwritten != "" {
		h += 4 + 13*vg.Length(len(foot))
	}
	s := newSheet(h)
	s.heading("Leaves, paddock by paddock", under)
	for _, p := range v.Plots {
		s.plot(g, p)
	}
	for _, l := range labels {
		l.write(s)
	}
	y := g.top + g.height + 24
	s.key(y)
	s.yardstick(g, y)
	if unwritten != "" {
		for i, line := range foot {
			s.write(small, edge, y+26+13*vg.Length(i), line)
		}
	}
	return s.picture("a map of the paddocks with the leaves of each", v.caption())
}

// plot fills one paddock, stripes it where it is held, and draws its boundary.
func (s *sheet) plot(g ground, p Plot) {
	for _, o := range p.Ground {
		rings := append([][]vg.Point{g.ring(s, o.Outer)}, g.rings(s, o.Holes)...)
		s.area(shade(p.Stage), rings[0]...)
		for _, hole := range rings[1:] {
			s.area(white, hole...)
		}
		if p.Held != "" {
			s.stripe(rings)
		}
		for _, r := range rings {
			s.stroke(ink, 1.2, nil, append(r, r[0])...)
		}
	}
}

// shade gives the blue of a stage: white where nothing is known.
func shade(stage float64) color.RGBA {
	if math.IsNaN(stage) {
		return white
	}
	t := min(max(stage/deepAt, 0), 1)
	mix := func(a, b uint8) uint8 { return uint8(math.Round(float64(a) + t*(float64(b)-float64(a)))) }
	light := color.RGBA{238, 245, 251, 255}
	return color.RGBA{mix(light.R, deep.R), mix(light.G, deep.G), mix(light.B, deep.B), 255}
}

// onShade gives the colour of letters that stands out more on a stage's blue.
func onShade(stage float64) color.Color {
	ground := luminance(shade(stage))
	if (1+0.05)/(ground+0.05) > (ground+0.05)/(luminance(ink)+0.05) {
		return white
	}
	return ink
}

// luminance is the relative luminance of WCAG 2.1.
func luminance(c color.RGBA) float64 {
	linear := func(v uint8) float64 {
		f := float64(v) / 255
		if f <= 0.04045 {
			return f / 12.92
		}
		return math.Pow((f+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(c.R) + 0.7152*linear(c.G) + 0.0722*linear(c.B)
}

// key draws the scale of blues with its figures.
func (s *sheet) key(y vg.Length) {
	const steps, w = 24, vg.Length(6)
	for i := range steps {
		x := edge + w*vg.Length(i)
		s.fill(shade(deepAt*float64(i)/(steps-1)), x, y-8, x+w+0.5, y)
	}
	s.frame(ink, 0.8, nil, edge, y-8, edge+w*steps, y)
	for n := range 4 {
		words := fmt.Sprint(n)
		p := small.centre()
		if n == 3 {
			words = "3 leaves"
		}
		s.write(p, edge+w*steps*vg.Length(n)/3, y+8, words)
	}
}

// yardstick draws a length on the ground, and where north is.
func (s *sheet) yardstick(g ground, y vg.Length) {
	metres := 50.0
	for _, m := range []float64{100, 200, 500, 1000, 2000, 5000, 10000} {
		if g.points(m) <= 110 {
			metres = m
		}
	}
	x1 := sheetWidth - edge - 26
	x0 := x1 - g.points(metres)
	s.stroke(ink, 1.4, nil, s.at(x0, y-8), s.at(x0, y-3), s.at(x1, y-3), s.at(x1, y-8))
	words := fmt.Sprintf("%g m", metres)
	if metres >= 1000 {
		words = fmt.Sprintf("%g km", metres/1000)
	}
	s.write(small.centre(), (x0+x1)/2, y+8, words)
	x := sheetWidth - edge - 8
	s.area(ink, s.at(x, y-14), s.at(x+5, y-1), s.at(x, y-4), s.at(x-5, y-1))
	s.write(small.centre(), x, y+8, "N")
}

// caption says in words what the picture comes to.
func (v Map) caption() string {
	var most, least Plot
	known, held := 0, 0
	for _, p := range v.Plots {
		if p.Held != "" {
			held++
		}
		if math.IsNaN(p.Stage) {
			continue
		}
		if known == 0 || p.Stage > most.Stage {
			most = p
		}
		if known == 0 || p.Stage < least.Stage {
			least = p
		}
		known++
	}
	words := fmt.Sprintf("%s on %s: %s on the map.", v.Farm, day(v.Today), plural(len(v.Plots), "paddock", "paddocks"))
	if known > 0 {
		words += fmt.Sprintf(" Most leaves: %s with %s. Fewest: %s with %s.", most.Paddock, orMore(most.Stage, most.End), least.Paddock, orMore(least.Stage, least.End))
	}
	if held > 0 {
		words += fmt.Sprintf(" Held: %d.", held)
	}
	if n := len(v.Plots) - known; n > 0 {
		words += fmt.Sprintf(" Not counted: %d.", n)
	}
	return words
}
