package land

import (
	"math"
	"testing"

	"github.com/paulmach/orb"
	"github.com/paulmach/orb/encoding/wkt"
	"github.com/stretchr/testify/require"

	"leafround/core/entry"
)

func TestRegister(t *testing.T) {
	plots, faults := Register([]byte("\xEF\xBB\xBFname,area_ha,grass,mob\r\n1,3.2,,\r\n\"Top, far\",2.5,Tall Fescue,heifers\r\n"))
	require.Empty(t, faults)
	require.Equal(t, []entry.Plot{{Name: "1", Area: 3.2}, {Name: "Top, far", Area: 2.5, Grass: entry.Fescue, Mob: "heifers"}}, plots)
}

func TestRegisterFaultsNameTheLine(t *testing.T) {
	for file, want := range map[string]string{
		"":                                    "line 1: the file is empty",
		"paddock,ha\n1,2\n":                   "line 1: the header has no column name",
		"name,area_ha\n1,two\n":               `line 2: the area "two" is not a number of hectares`,
		"name,area_ha\n1,2\n,3\n":             "line 3: the paddock has no name",
		"name,area_ha\n1,2\n 1 ,3\n":          "line 3: 1 stands on line 2 already",
		"name,area_ha,grass\n1,2,lawn\n":      `line 2: the grass "lawn" is not one of`,
		"name,area_ha\n":                      "line 2: no paddock stands under the header",
		"name,area_ha,boundary\n1,2,a line\n": "line 2: the boundary is neither",
		"name,area_ha\n\"1,2\n":               "is not CSV",
	} {
		plots, faults := Register([]byte(file))
		require.Nil(t, plots)
		require.NotEmpty(t, faults, file)
		require.Contains(t, faults[0].String(), want)
	}
}

// RFC 7946, section 1.5, has this FeatureCollection's polygon among its three
// features; the point and the line string are faults to us.
const rfc = `{"type":"FeatureCollection","features":[
{"type":"Feature","geometry":{"type":"Point","coordinates":[102.0,0.5]},"properties":{"prop0":"value0"}},
{"type":"Feature","geometry":{"type":"Polygon","coordinates":[[[100.0,0.0],[101.0,0.0],[101.0,1.0],[100.0,1.0],[100.0,0.0]]]},"properties":{"name":"value0","prop1":{"this":"that"}}}]}`

func TestBoundariesRefuseWhatIsNotAPaddock(t *testing.T) {
	_, faults := Boundaries([]byte(rfc))
	require.Len(t, faults, 1)
	require.Contains(t, faults[0].String(), "feature 1")
}

// A cell of one degree by one degree at the equator measures
// R² Δλ (sin φ2 − sin φ1) on a sphere: the closed form of a zone's area.
func TestAreaAgainstTheClosedFormOfTheSphere(t *testing.T) {
	m, err := Shape(`{"type":"Polygon","coordinates":[[[100,0],[101,0],[101,1],[100,1],[100,0]]]}`)
	require.NoError(t, err)
	closed := orb.EarthRadius * orb.EarthRadius * (math.Pi / 180) * math.Sin(math.Pi/180) / entry.SquareMetresPerHectare
	// Between meridians the closed form follows a parallel, the polygon's side a
	// great circle; at one degree they differ by less than 1 in 10,000.
	require.InEpsilon(t, closed, float64(Area(m)), 1e-4)
}

// The same cell measures 12,308,778,361.47 m² on the WGS84 ellipsoid
// (GeographicLib, C. F. F. Karney: the worked example of its PolygonArea,
// https://docs.rs/geographiclib-rs/latest/geographiclib_rs/struct.PolygonArea.html).
// We measure on a sphere of the equator's radius, which is 0.67 % more at the
// equator, where it differs most among places with paddocks.
func TestAreaAgainstAPublishedPolygonOnTheEllipsoid(t *testing.T) {
	m, err := Shape("POLYGON((0 0,1 0,1 1,0 1,0 0))")
	require.NoError(t, err)
	const published = 12308778361.469452 / entry.SquareMetresPerHectare
	require.InEpsilon(t, published, float64(Area(m)), 0.007)
}

func TestDifferAndInside(t *testing.T) {
	// About 200 m by 150 m, 3 ha, at 37.8° S.
	lat, lon := -37.8, 175.3
	dLat := 150 / 111194.9 // metres per degree of a great circle, radius 6,371 km
	dLon := 200 / (111194.9 * math.Cos(lat*math.Pi/180))
	ring := orb.Ring{{lon, lat}, {lon + dLon, lat}, {lon + dLon, lat + dLat}, {lon, lat + dLat}, {lon, lat}}
	plots := []entry.Plot{{Name: "7", Area: 3.0, Boundary: wktOf(ring)}, {Name: "8", Area: 2.5, Boundary: wktOf(ring)}}
	require.Equal(t, "8", Differ(plots)[0].Name)
	require.Len(t, Differ(plots), 1)
	name, ok := Inside(plots, lat+dLat/2, lon+dLon/2)
	require.True(t, ok)
	require.Equal(t, "7", name)
	_, ok = Inside(plots, lat-dLat, lon)
	require.False(t, ok)
}

func wktOf(r orb.Ring) string { return wkt.MarshalString(orb.Polygon{r}) }
