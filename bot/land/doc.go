// Package land reads what describes the ground: a register of paddocks as CSV,
// boundaries as GeoJSON (RFC 7946). It measures boundaries on the sphere and
// finds the paddock that a location lies in. It keeps nothing.
//
//	plots, faults := land.Register(file)  // name,area_ha[,grass,mob,boundary]
//	plots, faults := land.Boundaries(file) // a FeatureCollection of polygons
//
// A fault is a value that names its line and says what to do; a file with one
// is not half-read.
package land

import "fmt"

// Fault is one thing wrong with a file.
type Fault struct {
	Where string // "line 3", "feature 2"
	What  string // one sentence that says what to do
}

func (f Fault) String() string { return fmt.Sprintf("%s: %s", f.Where, f.What) }
