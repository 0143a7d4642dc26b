package picture

import (
	"bytes"
	"fmt"
	"image/color"

	xfont "golang.org/x/image/font"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgimg"

	"leafround/bot/chat"
)

// The sheet: 400 points wide, drawn at two pixels a point, so that a phone of
// 400 points shows a point as a point.
const (
	sheetWidth = vg.Length(400)
	sheetDPI   = 144
	edge       = vg.Length(12) // the margin left and right
)

// The inks. Blue of several depths and near-black are told apart by people
// with any kind of colour vision, and in print.
var (
	white    = color.RGBA{255, 255, 255, 255}
	ink      = color.RGBA{26, 32, 38, 255}
	grey     = color.RGBA{88, 96, 104, 255} // 6.3 : 1 on white
	hair     = color.RGBA{214, 219, 224, 255}
	pale     = color.RGBA{214, 230, 243, 255} // the window
	mild     = color.RGBA{167, 202, 229, 255}
	middling = color.RGBA{104, 158, 200, 255}
	deep     = color.RGBA{20, 87, 140, 255} // 7.5 : 1 on white
	deepest  = color.RGBA{10, 54, 92, 255}
	plate    = color.NRGBA{255, 255, 255, 215} // beneath letters
	veil     = color.NRGBA{20, 87, 140, 46}    // an interval, over the window or beside it
)

// sheet is a canvas on which y runs down from the top, in points.
type sheet struct {
	img *vgimg.Canvas
	c   draw.Canvas
	h   vg.Length
}

func newSheet(h vg.Length) *sheet {
	img := vgimg.NewWith(vgimg.UseWH(sheetWidth, h), vgimg.UseDPI(sheetDPI), vgimg.UseBackgroundColor(white))
	s := &sheet{img: img, h: h}
	s.c = draw.New(img)
	return s
}

// pen is how a text is written.
type pen struct {
	size  vg.Length
	bold  bool
	color color.Color
	align text.XAlignment
	turn  float64 // radians, anticlockwise
}

var (
	body   = pen{size: 11, color: ink}
	small  = pen{size: 10, color: grey}
	strong = pen{size: 11, bold: true, color: ink}
)

func (p pen) right() pen            { p.align = text.XRight; return p }
func (p pen) centre() pen           { p.align = text.XCenter; return p }
func (p pen) in(c color.Color) pen  { p.color = c; return p }
func (p pen) sized(n vg.Length) pen { p.size = n; return p }

// style gives the plotting library's style; texts hang on their middle.
func (p pen) style() text.Style {
	f := font.Font{Typeface: "Liberation", Variant: "Sans", Size: p.size}
	if p.bold {
		f.Weight = xfont.WeightBold
	}
	return text.Style{Color: p.color, Font: f, Rotation: p.turn, XAlign: p.align, YAlign: text.YCenter,
		Handler: text.Plain{Fonts: font.DefaultCache}}
}

// width tells how wide a text is.
func (p pen) width(s string) vg.Length { return p.style().Width(s) }

// fit shortens a text to a width, with an ellipsis.
func (p pen) fit(s string, width vg.Length) string {
	if p.width(s) <= width {
		return s
	}
	r := []rune(s)
	for len(r) > 1 && p.width(string(r)+"…") > width {
		r = r[:len(r)-1]
	}
	return string(r) + "…"
}

// wrap breaks a text into lines of a width.
func (p pen) wrap(s string, width vg.Length) []string {
	var lines []string
	line := ""
	for _, word := range splitWords(s) {
		longer := word
		if line != "" {
			longer = line + " " + word
		}
		if line != "" && p.width(longer) > width {
			lines = append(lines, line)
			longer = word
		}
		line = longer
	}
	return append(lines, line)
}

func (s *sheet) at(x, y vg.Length) vg.Point { return vg.Point{X: x, Y: s.h - y} }

// write puts a text with its middle at y; letters sit a point higher than the
// library's middle, which counts the space beneath them.
func (s *sheet) write(p pen, x, y vg.Length, words string) {
	s.c.FillText(p.style(), s.at(x, y-1.2), words)
}

// fill fills a rectangle.
func (s *sheet) fill(c color.Color, x0, y0, x1, y1 vg.Length) {
	s.area(c, s.at(x0, y0), s.at(x1, y0), s.at(x1, y1), s.at(x0, y1))
}

// area fills a polygon.
func (s *sheet) area(c color.Color, points ...vg.Point) { s.c.FillPolygon(c, points) }

// stroke draws a line through points; dashes as the plotting library has them.
func (s *sheet) stroke(c color.Color, width vg.Length, dashes []vg.Length, points ...vg.Point) {
	s.c.StrokeLines(draw.LineStyle{Color: c, Width: width, Dashes: dashes}, points)
}

// frame draws the outline of a rectangle.
func (s *sheet) frame(c color.Color, width vg.Length, dashes []vg.Length, x0, y0, x1, y1 vg.Length) {
	s.stroke(c, width, dashes, s.at(x0, y0), s.at(x1, y0), s.at(x1, y1), s.at(x0, y1), s.at(x0, y0))
}

// dot draws a filled circle.
func (s *sheet) dot(c color.Color, x, y, r vg.Length) {
	s.c.DrawGlyphNoClip(draw.GlyphStyle{Color: c, Radius: r, Shape: draw.CircleGlyph{}}, s.at(x, y))
}

// ring draws an open circle, white inside.
func (s *sheet) ring(c color.Color, x, y, r vg.Length) {
	s.dot(c, x, y, r)
	s.dot(white, x, y, r-1.4)
}

// box draws a filled square standing on its point: a diamond.
func (s *sheet) box(c color.Color, x, y, r vg.Length) {
	s.area(c, s.at(x-r, y), s.at(x, y-r), s.at(x+r, y), s.at(x, y+r))
}

// heading writes what the sheet shows, and a line beneath; it gives the y at
// which the drawing may begin.
func (s *sheet) heading(title, under string) vg.Length {
	p := pen{size: 15, bold: true, color: ink}
	s.write(p, edge, 18, p.fit(title, sheetWidth-2*edge))
	y := vg.Length(36)
	for _, line := range small.wrap(under, sheetWidth-2*edge) {
		s.write(small, edge, y, line)
		y += 13
	}
	return y + 2
}

// headingHeight tells how far down a heading goes.
func headingHeight(under string) vg.Length {
	return 38 + 13*vg.Length(len(small.wrap(under, sheetWidth-2*edge)))
}

// picture gives the sheet as a PNG with its words. Shows is what the picture
// shows; the caption says what it comes to.
func (s *sheet) picture(shows, caption string) (chat.Picture, error) {
	var b bytes.Buffer
	if _, err := (vgimg.PngCanvas{Canvas: s.img}).WriteTo(&b); err != nil {
		return chat.Picture{}, fmt.Errorf("picture: encode: %w", err)
	}
	return chat.Picture{PNG: b.Bytes(), Shows: shows, Caption: escape(clip(caption))}, nil
}

// The plotting library puts its embedded fonts into the cache when it loads.
var _ = plot.DefaultFont
