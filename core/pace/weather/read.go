package weather

import (
	"encoding/csv"
	"fmt"
	"strings"

	"leafround/core/entry"
)

// Table is what was read.
type Table struct {
	Entries []entry.Entry // entry.Temperature (air) and entry.Rain, in the order of the lines
	Days    int           // good lines
	From    entry.Date    // the earliest day among them; zero where there is none
	To      entry.Date    // the latest
	Bad     []Bad
}

// Bad is a line that could not be taken.
type Bad struct {
	Line int    // from 1, the header included
	Text string // as it stood
	Why  string // a sentence's end: "tmax "x" is not a number"
}

// String words a bad line.
func (b Bad) String() string { return fmt.Sprintf("line %d: %s", b.Line, b.Why) }

// Read reads a table. The columns may stand in any order and others beside
// them; date is needed, and at least one of rain and the pair tmin, tmax.
// Fields are separated by commas, semicolons or tabs, as the header has it;
// where it isn't the comma, a decimal comma is understood.
func Read(text string) Table {
	var t Table
	lines := strings.Split(strings.TrimPrefix(text, "\ufeff"), "\n")
	cols, at, why := header(lines)
	if why != "" {
		t.Bad = append(t.Bad, Bad{Line: min(at+1, max(len(lines), 1)), Text: strings.TrimSpace(lines[min(at, len(lines)-1)]), Why: why})
		return t
	}
	seen := map[entry.Date]int{}
	for i := at + 1; i < len(lines); i++ {
		line := strings.TrimRight(lines[i], "\r")
		if strings.TrimSpace(line) == "" {
			continue
		}
		day, why := cols.day(line)
		if first, twice := seen[day.date]; why == "" && twice {
			why = fmt.Sprintf("%s stands in line %d already", day.date, first)
		}
		if why != "" {
			t.Bad = append(t.Bad, Bad{Line: i + 1, Text: line, Why: why})
			continue
		}
		seen[day.date] = i + 1
		t.take(day)
	}
	return t
}

// take adds a good day.
func (t *Table) take(d day) {
	if t.Days == 0 || d.date < t.From {
		t.From = d.date
	}
	if t.Days == 0 || d.date > t.To {
		t.To = d.date
	}
	t.Days++
	if d.least != nil {
		t.Entries = append(t.Entries, entry.Temperature{Date: d.date, Min: d.least, Max: d.most, Where: entry.Air})
	}
	if d.rain != nil {
		t.Entries = append(t.Entries, entry.Rain{Date: d.date, Mm: *d.rain})
	}
}

// split cuts a line into its trimmed fields.
func split(line string, comma rune) ([]string, error) {
	r := csv.NewReader(strings.NewReader(line))
	r.Comma, r.FieldsPerRecord, r.TrimLeadingSpace = comma, -1, comma != '\t'
	fields, err := r.Read()
	for i := range fields {
		fields[i] = strings.TrimSpace(fields[i])
	}
	return fields, err
}
