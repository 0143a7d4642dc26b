// Package sheet writes a farm's log as a table: CSV (RFC 4180) with a header
// row, UTF-8, one row an entry, oldest first. It sorts nothing and leaves
// nothing out: what was mended or withdrawn points to what did so.
//
//	sheet.Write(os.Stdout, zone, log)
package sheet

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"time"

	"leafround/core/entry"
)

// Columns is the header.
var Columns = []string{"id", "sent_at", "member", "kind", "paddock", "mob", "date", "value", "unit", "detail", "replaced_by"}

// Write writes the log; times are in the farm's zone.
func Write(w io.Writer, zone *time.Location, log []entry.Logged) error {
	out := csv.NewWriter(w)
	out.UseCRLF = true
	if err := out.Write(Columns); err != nil {
		return fmt.Errorf("sheet: %w", err)
	}
	for _, l := range log {
		row, err := rowOf(l, zone)
		if err != nil {
			return fmt.Errorf("sheet: entry %d: %w", l.ID, err)
		}
		if err := out.Write(row); err != nil {
			return fmt.Errorf("sheet: %w", err)
		}
	}
	out.Flush()
	if err := out.Error(); err != nil {
		return fmt.Errorf("sheet: %w", err)
	}
	return nil
}

func rowOf(l entry.Logged, zone *time.Location) ([]string, error) {
	c := cells(l.Entry)
	if c.detail == "" {
		body, err := entry.Encode(l.Entry)
		if err != nil {
			return nil, err
		}
		c.detail = string(body)
	}
	by := ""
	if l.ReplacedBy != 0 {
		by = strconv.FormatInt(l.ReplacedBy, 10)
	}
	return []string{strconv.FormatInt(l.ID, 10), l.SentAt.In(zone).Format(time.RFC3339), l.Member,
		string(l.Entry.Kind()), c.paddock, c.mob, l.Entry.On().String(), c.value, c.unit, c.detail, by}, nil
}

// line is what the columns of one entry hold; without a detail the whole entry
// stands there as JSON.
type line struct{ paddock, mob, value, unit, detail string }

func cells(e entry.Entry) line {
	switch e := e.(type) {
	case entry.Count:
		return line{paddock: e.Paddock, value: number(float64(e.Mean)), unit: "leaves"}
	case entry.Graze:
		c := line{paddock: e.Paddock, mob: e.Mob}
		if e.Residual != nil {
			c.value, c.unit = number(e.Residual.Value), string(e.Residual.Unit)
		}
		return c
	case entry.Cut:
		return line{paddock: e.Paddock}
	case entry.Canopy:
		return line{paddock: e.Paddock}
	case entry.Hold:
		return line{paddock: e.Paddock}
	case entry.Release:
		return line{paddock: e.Paddock}
	case entry.Rain:
		return line{value: number(e.Mm), unit: "mm"}
	case entry.Temperature:
		return line{value: degrees(e), unit: "°C"}
	case entry.Note:
		return line{paddock: e.Paddock, mob: e.Mob, detail: e.Text}
	case entry.Setup:
		return line{paddock: e.Paddock, mob: e.Mob}
	}
	return line{}
}

// degrees gives a reading, or the day's mean where its least and most were told:
// half their sum, as the estimator takes it. The detail holds both.
func degrees(e entry.Temperature) string {
	switch {
	case e.Celsius != nil:
		return number(*e.Celsius)
	case e.Min != nil && e.Max != nil:
		return number((*e.Min + *e.Max) / 2)
	case e.Min != nil:
		return number(*e.Min)
	case e.Max != nil:
		return number(*e.Max)
	}
	return ""
}

func number(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }
