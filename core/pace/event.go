package pace

import "leafround/core/entry"

// Event is one thing that happened, as the estimator sees it. Events of one day
// are taken in the order of their ID. Several events may share an ID.
type Event struct {
	ID      int64
	Day     entry.Date
	Paddock string // as declared; "" for weather
	Do      Deed
}

// Deed is what happened: a *Restart, a *Seen, a *Closed or a *Weather.
type Deed interface{ deed() }

// Restart is a grazing or a cut: regrowth starts again. Its day is the last day
// of the grazing.
type Restart struct {
	Share float64         // of the paddock, over 0 to 1
	Start entry.LeafStage // the stage it starts from, after a lax residual; usually 0
	Cut   bool            // a cut, not a grazing
	// Strips is how many days stock took to go over it behind a back fence: the
	// first strip then is that much ahead of the last. 0 or 1 where all was grazed
	// at once.
	Strips int
}

// Seen is a leaf count.
type Seen struct {
	Mean         float64 // leaves
	N            int     // tillers; 0 where not told
	SE, SD       float64 // of the mean, and between tillers (leaf.Sample); 0: the usual ones
	Past         int     // tillers whose score is a floor
	Reproductive int     // tillers pulled that were turning reproductive
}

// Closed tells that the canopy has closed. It says nothing of the pace.
type Closed struct{}

// Weather is a day's weather, as far as told. Several on one day: rain adds up,
// the latest temperatures hold. Its day is the day on which it rained or was
// that warm.
type Weather struct {
	Rain     *float64 // mm
	Min, Max *float64 // °C, air
	Mean     *float64 // °C, air: one reading, where no least and most is told
	Soil     *float64 // °C, soil
}

func (*Restart) deed() {}
func (*Seen) deed()    {}
func (*Closed) deed()  {}
func (*Weather) deed() {}
