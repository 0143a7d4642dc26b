// Package picture draws what the farm looks like, as PNGs to be read at the
// width of a phone: every paddock's stage against its window ([Stages]), the
// pace of leaves over the season ([Pace]), the plan of the coming days
// ([Plan]), one paddock's regrowth ([Regrowth]) and a map ([Map]). Each takes
// values and gives a picture whose caption says in words what it shows:
//
//	p, err := picture.Stages{Farm: "Totara Bend", Today: today, Rows: rows}.Draw()
//
// The rules of all five: one hue (blue) and ink, told apart by shape, depth
// and words, never by colour alone; no traffic lights; units and dates are
// written out; nothing smaller than ten points on a sheet of 400. The same
// values give the same bytes: the fonts are embedded, and no clock is read.
//
// It reckons nothing of the grass: figures come from core/answer, and rounding
// is all that is done to them.
package picture
