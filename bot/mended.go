package bot

import (
	"math"
	"slices"

	"leafround/core/entry"
)

// mended gives an entry as a correction wants it; ok is false where the entry
// has no such field.
func mended(e entry.Entry, c entry.Correct) (better entry.Entry, ok bool) {
	switch c.Field {
	case entry.FieldPaddock:
		return withPaddock(e, c.ToName)
	case entry.FieldDate:
		return withDate(e, c.ToDate)
	case entry.FieldMob:
		if g, ok := e.(entry.Graze); ok {
			g.Mob = c.ToName
			return g, true
		}
	case entry.FieldTillers:
		if n, ok := e.(entry.Count); ok {
			return withScores(n, c), true
		}
	}
	return e, false
}

func withPaddock(e entry.Entry, to string) (entry.Entry, bool) {
	switch e := e.(type) {
	case entry.Count:
		e.Paddock = to
		return e, true
	case entry.Graze:
		e.Paddock = to
		return e, true
	case entry.Cut:
		e.Paddock = to
		return e, true
	case entry.Canopy:
		e.Paddock = to
		return e, true
	case entry.Hold:
		e.Paddock = to
		return e, true
	case entry.Release:
		e.Paddock = to
		return e, true
	case entry.Note:
		e.Paddock = to
		return e, true
	case entry.Setup:
		if e.Paddock != "" {
			e.Paddock = to
			return e, true
		}
	}
	return e, false
}

func withDate(e entry.Entry, to entry.Date) (entry.Entry, bool) {
	switch e := e.(type) {
	case entry.Count:
		e.Date = to
		return e, true
	case entry.Graze:
		e.Date = to
		return e, true
	case entry.Cut:
		e.Date = to
		return e, true
	case entry.Canopy:
		e.Date = to
		return e, true
	case entry.Hold:
		e.Date = to
		return e, true
	case entry.Release:
		e.Date = to
		return e, true
	case entry.Rain:
		e.Date = to
		return e, true
	case entry.Temperature:
		e.Date = to
		return e, true
	case entry.Setup:
		if !e.Date.IsZero() {
			e.Date = to
			return e, true
		}
	}
	return e, false
}

// withScores puts other scores into a count. One score that was named ("was 2
// not 3") mends that tiller alone; an average stays an average.
func withScores(n entry.Count, c entry.Correct) entry.Count {
	if len(c.ToTillers) == 1 && len(n.Tillers) > 1 && len(c.FromTillers) == 1 {
		from := c.FromTillers[0].Stage(entry.RemnantBySize)
		for i, s := range n.Tillers {
			if math.Abs(float64(s-from)) < 1e-9 {
				return withTiller(n, i, c.ToTillers[0])
			}
		}
	}
	better := entry.Count{Paddock: n.Paddock, Date: n.Date, Skipped: n.Skipped, Said: c.ToTillers}
	if len(c.ToTillers) == 1 && len(n.Tillers) == 0 {
		better.Said, better.Mean, better.N = nil, c.ToTillers[0].Stage(entry.RemnantBySize), n.N
	}
	return better
}

func withTiller(n entry.Count, at int, to entry.Tiller) entry.Count {
	said := slices.Clone(n.Said)
	if len(said) == 0 {
		for _, s := range n.Tillers {
			said = append(said, entry.Tiller{Score: s})
		}
	}
	said[at] = to
	n.Said = said
	return n
}
