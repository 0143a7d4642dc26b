package land

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"

	"github.com/paulmach/orb"
	"github.com/paulmach/orb/encoding/wkt"
	"github.com/paulmach/orb/geo"
	"github.com/paulmach/orb/geojson"
	"github.com/paulmach/orb/planar"

	"leafround/core/entry"
)

// Shape reads a boundary: WKT or a GeoJSON geometry, a polygon or several;
// longitude first, degrees.
func Shape(s string) (orb.MultiPolygon, error) {
	s = strings.TrimSpace(s)
	var g orb.Geometry
	if strings.HasPrefix(s, "{") {
		var gj geojson.Geometry
		if err := json.Unmarshal([]byte(s), &gj); err != nil {
			return nil, fmt.Errorf("land: boundary: %w", err)
		}
		g = gj.Geometry()
	} else {
		w, err := wkt.Unmarshal(s)
		if err != nil {
			return nil, fmt.Errorf("land: boundary: %w", err)
		}
		g = w
	}
	return polygons(g)
}

// polygons takes the polygons out of a geometry and checks that they are on
// the globe.
func polygons(g orb.Geometry) (orb.MultiPolygon, error) {
	var m orb.MultiPolygon
	switch t := g.(type) {
	case orb.Polygon:
		m = orb.MultiPolygon{t}
	case orb.MultiPolygon:
		m = t
	default:
		return nil, fmt.Errorf("land: a boundary is a polygon")
	}
	for _, p := range m {
		if len(p) == 0 || len(p[0]) < 4 || !p[0].Closed() {
			return nil, fmt.Errorf("land: a boundary's ring has at least four points and ends where it began")
		}
		for _, ring := range p {
			for _, at := range ring {
				if math.Abs(at.Lon()) > 180 || math.Abs(at.Lat()) > 90 {
					return nil, fmt.Errorf("land: a point of the boundary lies off the globe; GeoJSON puts longitude first")
				}
			}
		}
	}
	return m, nil
}

// Area measures a boundary on the sphere, holes taken off.
func Area(m orb.MultiPolygon) entry.Hectares {
	return entry.Hectares(geo.Area(m) / entry.SquareMetresPerHectare)
}

// Boundaries reads a GeoJSON FeatureCollection (RFC 7946) of paddocks: each
// feature a polygon with a "name", and optionally "area_ha", "grass" and
// "mob". Where no area is told the measured one stands.
func Boundaries(b []byte) ([]entry.Plot, []Fault) {
	c, err := geojson.UnmarshalFeatureCollection(b)
	if err != nil {
		return nil, []Fault{{"the file", "it is not a GeoJSON FeatureCollection"}}
	}
	var plots []entry.Plot
	var faults []Fault
	for i, f := range c.Features {
		p, what := feature(f)
		if what != "" {
			faults = append(faults, Fault{fmt.Sprintf("feature %d", i+1), what})
			continue
		}
		plots = append(plots, p)
	}
	if len(faults) > 0 {
		return nil, faults
	}
	if len(plots) == 0 {
		return nil, []Fault{{"the file", "it holds no feature"}}
	}
	return plots, nil
}

func feature(f *geojson.Feature) (entry.Plot, string) {
	p := entry.Plot{Name: text(f.Properties, "name"), Mob: text(f.Properties, "mob")}
	if entry.FoldName(p.Name) == "" {
		return p, `the paddock has no "name" among its properties`
	}
	m, err := polygons(f.Geometry)
	if err != nil {
		return p, strings.TrimPrefix(err.Error(), "land: ")
	}
	if g := text(f.Properties, "grass"); g != "" {
		grass, ok := entry.GrassNamed(g)
		if !ok {
			return p, fmt.Sprintf("the grass %q is not one of %s", g, grassList())
		}
		p.Grass = grass
	}
	p.Boundary = wkt.MarshalString(m)
	p.Area = entry.Hectares(f.Properties.MustFloat64("area_ha", float64(Area(m))))
	return p, ""
}

// text reads a property that may be written as text or as a number.
func text(p geojson.Properties, key string) string {
	for k, v := range p {
		if strings.EqualFold(k, key) && v != nil {
			return strings.TrimSpace(fmt.Sprint(v))
		}
	}
	return ""
}

// Difference is an area typed that the boundary contradicts.
type Difference struct {
	Name            string
	Typed, Measured entry.Hectares
}

// tolerance is the difference between a typed and a measured area that is
// worth naming, as a share of the typed one (ours).
const tolerance = 0.05

// Differ compares typed areas with the areas of the boundaries and gives those
// that are more than 5 % apart.
func Differ(plots []entry.Plot) []Difference {
	var out []Difference
	for _, p := range plots {
		m, err := Shape(p.Boundary)
		if err != nil || p.Area <= 0 {
			continue
		}
		if a := Area(m); math.Abs(float64(a/p.Area)-1) > tolerance {
			out = append(out, Difference{p.Name, p.Area, a})
		}
	}
	return out
}

// Inside finds the paddock that a location lies in, degrees.
func Inside(plots []entry.Plot, lat, lon float64) (string, bool) {
	for _, p := range plots {
		m, err := Shape(p.Boundary)
		if err == nil && planar.MultiPolygonContains(m, orb.Point{lon, lat}) {
			return p.Name, true
		}
	}
	return "", false
}
