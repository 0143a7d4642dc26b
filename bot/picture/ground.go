package picture

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/plot/vg"
)

// metresPerDegree is the length of a degree of latitude on a sphere of the
// mean Earth radius (IUGG, 6,371,008.8 m): 111,195 m.
const metresPerDegree = math.Pi * 6371008.8 / 180

// ground is the projection of a farm onto the sheet: a plane at its middle
// latitude, true enough over a few kilometres.
type ground struct {
	lon, lat float64 // the north-west corner, degrees
	squeeze  float64 // a degree of longitude, as a share of one of latitude
	scale    float64 // points for each degree of latitude
	left     vg.Length
	top      vg.Length
	height   vg.Length
}

// The room for the map, in points.
const (
	mapWidth  = sheetWidth - 2*edge
	mapHeight = vg.Length(440)
)

// ground fits the farm into the room; false where no boundary is known.
func (v Map) ground() (ground, bool) {
	west, south, east, north := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	first := math.NaN()
	for _, p := range v.Plots {
		for _, o := range p.Ground {
			for _, at := range o.Outer {
				if math.IsNaN(first) {
					first = at[0]
				}
				lon := near(at[0], first)
				west, east = min(west, lon), max(east, lon)
				south, north = min(south, at[1]), max(north, at[1])
			}
		}
	}
	if math.IsNaN(first) || north <= south || east <= west {
		return ground{}, false
	}
	g := ground{lon: west, lat: north, squeeze: math.Cos((south + north) / 2 * math.Pi / 180)}
	wide, tall := (east-west)*g.squeeze, north-south
	g.scale = min(float64(mapWidth)/wide, float64(mapHeight)/tall)
	g.left = edge + (mapWidth-vg.Length(wide*g.scale))/2
	g.height = vg.Length(tall * g.scale)
	return g, true
}

// near gives a longitude on the same side of the date line as another.
func near(lon, other float64) float64 {
	switch {
	case lon-other > 180:
		return lon - 360
	case lon-other < -180:
		return lon + 360
	}
	return lon
}

// xy gives a place on the sheet, y down from the top.
func (g ground) xy(at LonLat) (x, y vg.Length) {
	return g.left + vg.Length((near(at[0], g.lon)-g.lon)*g.squeeze*g.scale), g.top + vg.Length((g.lat-at[1])*g.scale)
}

// points gives a length on the ground in points.
func (g ground) points(metres float64) vg.Length {
	return vg.Length(metres / metresPerDegree * g.scale)
}

func (g ground) ring(s *sheet, ring []LonLat) []vg.Point {
	out := make([]vg.Point, len(ring))
	for i, at := range ring {
		out[i] = s.at(g.xy(at))
	}
	return out
}

func (g ground) rings(s *sheet, rings [][]LonLat) [][]vg.Point {
	var out [][]vg.Point
	for _, r := range rings {
		out = append(out, g.ring(s, r))
	}
	return out
}

// stripe draws lines from lower left to upper right within rings.
func (s *sheet) stripe(rings [][]vg.Point) {
	low, high := math.Inf(1), math.Inf(-1)
	for _, p := range rings[0] {
		low, high = min(low, float64(p.Y-p.X)), max(high, float64(p.Y-p.X))
	}
	const gap = 11
	for c := math.Ceil(low/gap) * gap; c < high; c += gap {
		cuts := crossings(rings, vg.Length(c))
		for i := 0; i+1 < len(cuts); i += 2 {
			s.stroke(white, 2.6, nil, cuts[i], cuts[i+1])
			s.stroke(ink, 0.9, nil, cuts[i], cuts[i+1])
		}
	}
}

// crossings gives where the line y = x + c crosses the rings, left to right.
func crossings(rings [][]vg.Point, c vg.Length) []vg.Point {
	var out []vg.Point
	for _, ring := range rings {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			da, db := a.Y-a.X-c, b.Y-b.X-c
			if (da < 0) == (db < 0) {
				continue
			}
			t := da / (da - db)
			out = append(out, vg.Point{X: a.X + t*(b.X-a.X), Y: a.Y + t*(b.Y-a.Y)})
		}
	}
	slices.SortFunc(out, func(a, b vg.Point) int { return cmp.Compare(a.X, b.X) })
	return out
}

// label is what is printed on a paddock: its name, and its leaves beneath.
type label struct {
	x, y         vg.Length
	name, figure string
	size         vg.Length
	plot         Plot
}

func (l label) write(s *sheet) {
	p := pen{size: l.size, color: onShade(l.plot.Stage)}.centre()
	b := p
	b.bold = true
	if l.plot.Held != "" { // a white plate, so that the stripes leave the letters alone
		w := max(p.width(l.name), b.width(l.figure))/2 + 3
		s.fill(white, l.x-w, l.y-l.size*1.15, l.x+w, l.y+l.size*1.15)
		p.color, b.color = ink, ink
	}
	s.write(p, l.x, l.y-l.size*0.55, l.name)
	s.write(b, l.x, l.y+l.size*0.6, l.figure)
}

// labels finds a place and a size for each label; what is too small to be
// printed on goes into a line of words.
func (v Map) labels(g ground) (out []label, unwritten string) {
	var small []string
	for _, p := range v.Plots {
		figure := "?"
		if !math.IsNaN(p.Stage) {
			figure = leaves(p.Stage)
			if p.End > 0 && p.Stage >= p.End {
				figure = number(p.End) + "+"
			}
		}
		x, y, room := widest(g, p)
		l := label{x: x, y: y, name: p.Paddock, figure: figure, plot: p}
		for l.size = 13; l.size >= 9; l.size-- {
			half := pen{size: l.size, bold: true}.width(longer(p.Paddock, figure)) / 2
			if math.Hypot(float64(half), float64(l.size*1.05)) <= float64(room)*1.05 {
				out = append(out, l)
				break
			}
		}
		if l.size < 9 {
			if figure == "?" {
				figure = "not counted"
			}
			small = append(small, p.Paddock+" "+figure)
		}
	}
	if len(small) == 0 {
		return out, ""
	}
	return out, "Too small to print on: " + strings.Join(small, ", ") + "."
}

func longer(a, b string) string {
	if len([]rune(b)) > len([]rune(a)) {
		return b
	}
	return a
}

// widest finds the middle of the widest part of a paddock, and how far it is
// from the boundary there.
func widest(g ground, p Plot) (x, y, room vg.Length) {
	for _, o := range p.Ground {
		rings := [][][2]float64{flat(g, o.Outer)}
		for _, h := range o.Holes {
			rings = append(rings, flat(g, h))
		}
		if px, py, d := middle(rings); vg.Length(d) > room {
			x, y, room = vg.Length(px), vg.Length(py), vg.Length(d)
		}
	}
	return x, y, room
}

// middle looks on a grid for the place furthest from the boundary; of places
// about as far it takes the mean, so that a label sits in the middle of them.
func middle(rings [][][2]float64) (x, y, room float64) {
	const grid = 28
	x0, y0, x1, y1 := box(rings[0])
	at := func(i int) (float64, float64) {
		return x0 + (x1-x0)*(float64(i%grid)+0.5)/grid, y0 + (y1-y0)*(float64(i/grid)+0.5)/grid
	}
	far := make([]float64, grid*grid)
	best := 0
	for i := range far {
		px, py := at(i)
		if d, in := clearance(rings, px, py); in {
			far[i] = d
		}
		if far[i] > far[best] {
			best = i
		}
	}
	n := 0.0
	for i, d := range far {
		if d > 0.9*far[best] {
			px, py := at(i)
			x, y, n = x+px, y+py, n+1
		}
	}
	x, y = x/n, y/n
	if d, in := clearance(rings, x, y); in && d >= 0.9*far[best] {
		return x, y, d
	}
	x, y = at(best)
	return x, y, far[best]
}

func flat(g ground, ring []LonLat) [][2]float64 {
	out := make([][2]float64, len(ring))
	for i, at := range ring {
		x, y := g.xy(at)
		out[i] = [2]float64{float64(x), float64(y)}
	}
	return out
}

func box(ring [][2]float64) (x0, y0, x1, y1 float64) {
	x0, y0, x1, y1 = math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, p := range ring {
		x0, y0, x1, y1 = min(x0, p[0]), min(y0, p[1]), max(x1, p[0]), max(y1, p[1])
	}
	return x0, y0, x1, y1
}

// clearance gives the distance to the nearest edge of any ring, and whether
// the place is inside by the even-odd rule.
func clearance(rings [][][2]float64, x, y float64) (distance float64, inside bool) {
	distance = math.Inf(1)
	for _, ring := range rings {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if (a[1] > y) != (b[1] > y) && x < a[0]+(y-a[1])/(b[1]-a[1])*(b[0]-a[0]) {
				inside = !inside
			}
			distance = min(distance, toEdge(a, b, x, y))
		}
	}
	return distance, inside
}

// toEdge gives the distance from a place to a stretch of boundary.
func toEdge(a, b [2]float64, x, y float64) float64 {
	dx, dy := b[0]-a[0], b[1]-a[1]
	t := 0.0
	if l := dx*dx + dy*dy; l > 0 {
		t = min(max(((x-a[0])*dx+(y-a[1])*dy)/l, 0), 1)
	}
	return math.Hypot(x-a[0]-t*dx, y-a[1]-t*dy)
}
