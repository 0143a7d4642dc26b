package land

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"leafround/core/entry"
)

// columns of a register; the first two are required.
var columns = []string{"name", "area_ha", "grass", "mob", "boundary"}

// Register reads a register of paddocks: CSV (RFC 4180) with the header
// name,area_ha and the optional columns grass, mob and boundary (WKT or a
// GeoJSON geometry). Areas are hectares; empty is not told.
func Register(b []byte) ([]entry.Plot, []Fault) {
	r := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(b, []byte("\xEF\xBB\xBF"))))
	r.FieldsPerRecord = -1
	r.TrimLeadingSpace = true
	header, err := r.Read()
	if err != nil {
		return nil, []Fault{{"line 1", "the file is empty; its first line is name,area_ha"}}
	}
	at, fault := locate(header)
	if fault != nil {
		return nil, []Fault{*fault}
	}
	return rows(r, at)
}

// locate finds the known columns in the header.
func locate(header []string) (map[string]int, *Fault) {
	at := map[string]int{}
	for i, h := range header {
		h = strings.ToLower(strings.TrimSpace(h))
		if slices.Contains(columns, h) {
			at[h] = i
		}
	}
	for _, need := range columns[:2] {
		if _, ok := at[need]; !ok {
			return nil, &Fault{"line 1", fmt.Sprintf("the header has no column %s; it reads name,area_ha and optionally grass,mob,boundary", need)}
		}
	}
	return at, nil
}

func rows(r *csv.Reader, at map[string]int) ([]entry.Plot, []Fault) {
	var plots []entry.Plot
	var faults []Fault
	seen := map[string]string{}
	for {
		record, err := r.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, append(faults, Fault{"line " + lineOf(err), "the line is not CSV: a quotation mark is open or misplaced"})
		}
		line, _ := r.FieldPos(0)
		where := fmt.Sprintf("line %d", line)
		p, what := plot(record, at)
		if what == "" && seen[entry.FoldName(p.Name)] != "" {
			what = fmt.Sprintf("%s stands on %s already", p.Name, seen[entry.FoldName(p.Name)])
		}
		if what != "" {
			faults = append(faults, Fault{where, what})
			continue
		}
		seen[entry.FoldName(p.Name)] = where
		plots = append(plots, p)
	}
	if len(faults) > 0 {
		return nil, faults
	}
	if len(plots) == 0 {
		return nil, []Fault{{"line 2", "no paddock stands under the header"}}
	}
	return plots, nil
}

// lineOf gives the line that a CSV fault lies on.
func lineOf(err error) string {
	var at *csv.ParseError
	if errors.As(err, &at) {
		return strconv.Itoa(at.StartLine)
	}
	return "unknown"
}

// plot reads one line of the register.
func plot(record []string, at map[string]int) (entry.Plot, string) {
	field := func(name string) string {
		if i, ok := at[name]; ok && i < len(record) {
			return strings.TrimSpace(record[i])
		}
		return ""
	}
	p := entry.Plot{Name: field("name"), Mob: field("mob"), Boundary: field("boundary")}
	if entry.FoldName(p.Name) == "" {
		return p, "the paddock has no name"
	}
	if a := field("area_ha"); a != "" {
		ha, err := strconv.ParseFloat(a, 64)
		if err != nil || !(ha > 0) || math.IsInf(ha, 0) || ha > 1e6 {
			return p, fmt.Sprintf("the area %q is not a number of hectares", a)
		}
		p.Area = entry.Hectares(ha)
	}
	if g := field("grass"); g != "" {
		grass, ok := entry.GrassNamed(g)
		if !ok {
			return p, fmt.Sprintf("the grass %q is not one of %s", g, grassList())
		}
		p.Grass = grass
	}
	if p.Boundary != "" {
		if _, err := Shape(p.Boundary); err != nil {
			return p, "the boundary is neither WKT nor a GeoJSON geometry of a polygon"
		}
	}
	return p, ""
}

func grassList() string {
	var names []string
	for _, g := range entry.Grasses() {
		names = append(names, string(g))
	}
	return strings.Join(names, ", ")
}
