package picture_test

import (
	"bytes"
	"image/png"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"leafround/bot/chat"
	"leafround/bot/picture"
)

type drawing interface{ Draw() (chat.Picture, error) }

// all lists one of each kind.
func all() map[string]drawing {
	return map[string]drawing{
		"stages by week":  picture.Stages{Farm: "Totara Bend", Today: today, Rows: rows(), ByWeek: true},
		"stages in order": picture.Stages{Farm: "Totara Bend", Today: today, Rows: rows()},
		"pace":            seasonPace(), "regrowth": regrowth(), "plan": plan(), "map": farmMap(),
	}
}

// inked counts the pixels of a picture that are not white, by dark and blue.
func inked(t *testing.T, p chat.Picture) (width, height int, share float64, dark, blue bool) {
	t.Helper()
	m, err := png.Decode(bytes.NewReader(p.PNG))
	require.NoError(t, err)
	b := m.Bounds()
	n := 0
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			r, g, bl, _ := m.At(x, y).RGBA()
			if r < 0xf000 || g < 0xf000 || bl < 0xf000 {
				n++
			}
			dark = dark || r < 0x3000 && g < 0x3000 && bl < 0x3000
			blue = blue || bl > r+0x2000 && bl > g+0x800
		}
	}
	return b.Dx(), b.Dy(), float64(n) / float64(b.Dx()*b.Dy()), dark, blue
}

func TestSizeInkAndWords(t *testing.T) {
	for name, d := range all() {
		t.Run(name, func(t *testing.T) {
			p, err := d.Draw()
			require.NoError(t, err)
			w, h, share, dark, blue := inked(t, p)
			assert.Equal(t, 800, w, "two pixels for each of 400 points")
			assert.True(t, h >= 400 && h <= 2200, "%d pixels high", h)
			assert.True(t, share > 0.02 && share < 0.8, "ink covers %.2f", share)
			assert.True(t, dark && blue)
			assert.Less(t, len(p.PNG), 400_000)
			assert.Contains(t, p.Caption, "25 Nov")
			assert.NotEmpty(t, p.Shows)
			assert.Equal(t, strings.ToLower(p.Shows[:1]), p.Shows[:1], "it goes on a line behind \"picture:\"")
		})
	}
}

// No hue but blue: no red and no green, whatever is drawn.
func TestOneHue(t *testing.T) {
	for name, d := range all() {
		p, err := d.Draw()
		require.NoError(t, err)
		m, err := png.Decode(bytes.NewReader(p.PNG))
		require.NoError(t, err)
		for y := 0; y < m.Bounds().Dy(); y += 2 {
			for x := 0; x < m.Bounds().Dx(); x += 2 {
				r, g, b, _ := m.At(x, y).RGBA()
				if r > b+0x600 || g > b+0x600 {
					require.Failf(t, "another hue", "%s at %d, %d: %x %x %x", name, x, y, r>>8, g>>8, b>>8)
				}
			}
		}
	}
}

func TestSameValuesGiveTheSameBytes(t *testing.T) {
	one, two := all(), all()
	for name := range one {
		a, err := one[name].Draw()
		require.NoError(t, err)
		b, err := two[name].Draw()
		require.NoError(t, err)
		assert.True(t, bytes.Equal(a.PNG, b.PNG), name)
		assert.Equal(t, a.Caption, b.Caption)
	}
}

func TestNothingToDrawIsAnError(t *testing.T) {
	for _, d := range []drawing{picture.Pace{Today: today}, picture.Regrowth{Today: today}, picture.Plan{Today: today},
		picture.Map{Today: today, Plots: []picture.Plot{{Paddock: "1"}}}} {
		_, err := d.Draw()
		assert.Error(t, err, "%T", d)
	}
	_, err := picture.Stages{Today: today}.Draw()
	assert.NoError(t, err, "a farm without paddocks is an empty table")
}

func TestCaptionOfStages(t *testing.T) {
	p, err := picture.Stages{Farm: "Smith & Sons <Farm>", Today: today, Rows: rows()[:5]}.Draw()
	require.NoError(t, err)
	assert.Equal(t, "Smith &amp; Sons &lt;Farm&gt;, Wed 25 Nov: of 5 paddocks, 1 in its window (5); none at its end, past it or closed over."+
		" The next to come ready is 4, on Sat 28 Nov.", p.Caption)
}

func TestCaptionIsCutAtAWord(t *testing.T) {
	v := picture.Plan{Farm: strings.Repeat("long name ", 150), Today: today, Days: 7, Stays: plan().Stays}
	p, err := v.Draw()
	require.NoError(t, err)
	assert.LessOrEqual(t, len([]rune(p.Caption)), 1024)
	assert.True(t, strings.HasSuffix(p.Caption, " …"))
}

func TestManyPaddocksAreCountedWhereThereIsNoRoom(t *testing.T) {
	var many []picture.Row
	for len(many) < 120 {
		many = append(many, rows()...)
	}
	p, err := picture.Stages{Farm: "Totara Bend", Today: today, Rows: many, ByWeek: true}.Draw()
	require.NoError(t, err)
	assert.Contains(t, p.Caption, "75 paddocks found no room")
	_, h, _, _, _ := inked(t, p)
	assert.Less(t, h, 2600, "Telegram shrinks what is longer than 2,560 pixels")
}

func TestOddValuesAreDrawnAllTheSame(t *testing.T) {
	odd := []picture.Row{
		{Paddock: "A paddock with a very long name indeed", Stage: 9, Low: -3, High: 40, From: 3.5, To: 4.5, Advice: "late"},
		{Paddock: "", Stage: math.NaN(), Low: math.NaN(), High: math.NaN(), From: 2, To: 3, Advice: "unknown"},
		{Paddock: "Pīwakawaka", Stage: 0, From: 2, To: 3, Advice: "wait", Held: "a reason that is far too long for its place"},
	}
	_, err := picture.Stages{Farm: "Totara Bend", Today: today, Rows: odd, ByWeek: true}.Draw()
	assert.NoError(t, err)
	_, err = picture.Pace{Farm: "Totara Bend", Today: today, Past: []picture.PaceDay{{Day: today, Days: 12, Low: 12, High: 12}}}.Draw()
	assert.NoError(t, err, "one day, no spread")
	_, err = picture.Regrowth{Paddock: "1", Today: today, From: 2, To: 3, Past: []picture.StageDay{{Day: today}}}.Draw()
	assert.NoError(t, err)
	crowded := picture.Plan{Farm: "Totara Bend", Today: today, Days: 30}
	for i := range 8 {
		crowded.Stays = append(crowded.Stays, picture.Stay{Mob: "milkers", Paddock: "14", From: today, To: today, Stage: float64(i)},
			picture.Stay{Mob: "mob " + strings.Repeat("x", i), Paddock: "3", From: today.Add(i), To: today.Add(60)})
	}
	p, err := crowded.Draw()
	require.NoError(t, err)
	assert.Contains(t, p.Caption, "the first 14 days")
}

// Paddocks on both sides of the date line lie beside each other.
func TestMapAcrossTheDateLine(t *testing.T) {
	square := func(lon float64) []picture.Outline {
		return []picture.Outline{{Outer: []picture.LonLat{{lon, -17}, {lon + 0.002, -17}, {lon + 0.002, -17.002}, {lon, -17.002}}}}
	}
	p, err := picture.Map{Farm: "East and West", Today: today, Plots: []picture.Plot{
		{Paddock: "West", Ground: square(179.997), Stage: 2.2}, {Paddock: "East", Ground: square(-179.999), Stage: 1.1}}}.Draw()
	require.NoError(t, err)
	_, _, share, _, _ := inked(t, p)
	assert.Greater(t, share, 0.25, "two paddocks side by side fill the sheet")
}

// A tiller keeps no more leaves alive than its window's end: pictures say "or
// more" from there on.
func TestPastTheWindowIsOrMore(t *testing.T) {
	r := regrowth()
	r.Past[len(r.Past)-1].Stage, r.Past[len(r.Past)-1].High = 4.2, 5.1
	p, err := r.Draw()
	require.NoError(t, err)
	assert.Contains(t, p.Caption, "stands at 3 or more leaves")
	m := picture.Map{Farm: "Totara Bend", Today: today, Plots: farmMap().Plots}
	for i := range m.Plots {
		m.Plots[i].End = 3
	}
	p, err = m.Draw()
	require.NoError(t, err)
	assert.Contains(t, p.Caption, "Most leaves: Back Hill with 3 or more.")
}

// Where a grazing was not logged a count gives a pace that is far off.
func TestCountsFarAstrayDoNotSqueezeThePace(t *testing.T) {
	v := seasonPace()
	v.Counts = append(v.Counts, picture.Seen{Day: today.Add(-9), Days: 90}, picture.Seen{Day: today.Add(-8), Days: 0.4})
	p, err := v.Draw()
	require.NoError(t, err)
	assert.Contains(t, p.Caption, "28 counts, 2 of them so far from the rest that they lie off the sheet.")
}
