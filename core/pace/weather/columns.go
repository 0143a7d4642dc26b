package weather

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"leafround/core/entry"
)

// columns tells where each field stands; −1 where it doesn't.
type columns struct {
	comma                    rune
	count                    int
	date, least, most, water int
}

// header finds the first line that is not empty and reads it. at is its place.
func header(lines []string) (c columns, at int, why string) {
	for at < len(lines) && strings.TrimSpace(lines[at]) == "" {
		at++
	}
	if at == len(lines) {
		return c, 0, "the table is empty: its first line should be date,tmin,tmax,rain"
	}
	c = columns{comma: ',', date: -1, least: -1, most: -1, water: -1}
	for _, mark := range ";\t" {
		if strings.ContainsRune(lines[at], mark) && !strings.ContainsRune(lines[at], ',') {
			c.comma = mark
		}
	}
	names, err := split(lines[at], c.comma)
	if err != nil {
		return c, at, "the header can't be read: it should be date,tmin,tmax,rain"
	}
	c.count = len(names)
	for i, name := range names {
		if why := c.name(strings.ToLower(name), i); why != "" {
			return c, at, why
		}
	}
	return c, at, c.complete()
}

// name takes one name of the header.
func (c *columns) name(name string, i int) string {
	place := map[string]*int{"date": &c.date, "tmin": &c.least, "tmax": &c.most, "rain": &c.water}[name]
	if place == nil {
		return ""
	}
	if *place >= 0 {
		return fmt.Sprintf("the column %s stands twice in the header", name)
	}
	*place = i
	return ""
}

func (c *columns) complete() string {
	switch {
	case c.date < 0:
		return "the header has no column date: it should be date,tmin,tmax,rain"
	case (c.least < 0) != (c.most < 0):
		return "the header has only one of tmin and tmax: both are needed"
	case c.least < 0 && c.water < 0:
		return "the header has neither tmin,tmax nor rain"
	}
	return ""
}

// day is one line's values; nil where the field is empty.
type day struct {
	date              entry.Date
	least, most, rain *float64
}

// What no weather has ever been, beyond the records kept by the World
// Meteorological Organization (−89.2 and 56.7 °C, 1,825 mm in a day; from
// memory): such a value is a slip or another unit.
const (
	coldest, hottest = -90, 60
	wettest          = 1900
)

// day reads one line; why is set where it can't be taken.
func (c columns) day(line string) (d day, why string) {
	f, err := split(line, c.comma)
	if err != nil {
		return d, "the quotes don't match"
	}
	if len(f) != c.count {
		return d, fmt.Sprintf("%d fields where the header has %d", len(f), c.count)
	}
	if d.date, err = entry.ParseDate(f[c.date]); err != nil {
		return d, fmt.Sprintf("%q is not a date like 2026-11-25", f[c.date])
	}
	for _, v := range []struct {
		name     string
		at       int
		to       **float64
		low, top float64
	}{
		{"tmin", c.least, &d.least, coldest, hottest},
		{"tmax", c.most, &d.most, coldest, hottest},
		{"rain", c.water, &d.rain, 0, wettest},
	} {
		if v.at < 0 || f[v.at] == "" {
			continue
		}
		if *v.to, why = c.number(v.name, f[v.at], v.low, v.top); why != "" {
			return d, why
		}
	}
	return d, d.check()
}

// check looks at the values together.
func (d day) check() string {
	switch {
	case (d.least == nil) != (d.most == nil):
		return "only one of tmin and tmax is given"
	case d.least == nil && d.rain == nil:
		return "no value is given"
	case d.least != nil && *d.least > *d.most:
		return fmt.Sprintf("tmin %g is above tmax %g", *d.least, *d.most)
	}
	return ""
}

// number reads a value within its bounds.
func (c columns) number(name, s string, low, top float64) (*float64, string) {
	if c.comma != ',' {
		s = strings.Replace(s, ",", ".", 1)
	}
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) || strings.ContainsAny(s, "xXpP_") {
		return nil, fmt.Sprintf("%s %q is not a number", name, s)
	}
	if v < low || v > top {
		return nil, fmt.Sprintf("%s %g can't be: it lies outside %g to %g", name, v, low, top)
	}
	return &v, ""
}
