package parser

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"leafround/core/entry"
)

// Print gives an entry as a text that Read takes back to the same entry, with
// every date written out. It is how the bot says again what it understood, and
// how tests hold the grammar to account. A setup is printed where it has a form
// of one message.
func Print(e entry.Entry) string {
	switch v := e.(type) {
	case entry.Count:
		return printCount(v)
	case entry.Graze:
		return printGraze(v)
	case entry.Cut:
		return fmt.Sprintf("%s %s on %s", padName(v.Paddock), map[entry.CutKind]string{entry.Silage: "cut for silage",
			entry.Hay: "cut for hay", entry.Topped: "topped"}[v.What], v.Date)
	case entry.Canopy:
		return fmt.Sprintf("%s canopy closed on %s", padName(v.Paddock), v.Date)
	case entry.Hold:
		return printHold(v)
	case entry.Release:
		return printRelease(v)
	case entry.Rain:
		return fmt.Sprintf("rain %smm on %s", figure(v.Mm), v.Date)
	case entry.Temperature:
		return printTemperature(v)
	case entry.Note:
		return v.Text
	case entry.Undo:
		return "undo"
	case entry.Correct:
		return printCorrect(v)
	case entry.Setup:
		return printSetup(v)
	}
	return ""
}

// padName marks a paddock's name so that it is read as one.
func padName(name string) string { return "paddock " + name }

// figure writes a number so that it reads back to the same value.
func figure(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

func printCount(c entry.Count) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s on %s:", padName(c.Paddock), c.Date)
	switch {
	case len(c.Said) > 0:
		for _, t := range c.Said {
			b.WriteString(" " + printTiller(t))
		}
	case len(c.Tillers) > 0:
		for _, t := range c.Tillers {
			b.WriteString(" " + figure(float64(t)))
		}
	default:
		b.WriteString(" average " + figure(float64(c.Mean)))
		if c.Past == 1 {
			b.WriteString("+")
		}
		if c.N > 0 {
			fmt.Fprintf(&b, " from %d tillers", c.N)
		}
		switch {
		case c.Past > 1 && c.Past == c.N:
			b.WriteString(", all yellowing")
		case c.Past > 1:
			fmt.Fprintf(&b, ", %d yellowing", c.Past)
		}
	}
	for _, s := range []struct {
		n    int
		word string
	}{{c.Skipped.Reproductive, "repro"}, {c.Skipped.Daughter, "daughter"}, {c.Skipped.NoRemnant, "no remnant"}, {c.Skipped.Other, "x"}} {
		b.WriteString(strings.Repeat(" "+s.word, s.n))
	}
	return b.String()
}

func printTiller(t entry.Tiller) string {
	s := figure(float64(t.Score))
	if t.Parts {
		s = figure(float64(t.Remnant)) + "+" + figure(float64(t.Full)) + "+" + figure(float64(t.New))
	}
	if t.Floor {
		if !strings.Contains(s, ".") {
			s += ".0"
		}
		s += "+"
	}
	return s
}

func printGraze(g entry.Graze) string {
	var parts []string
	if g.Mob != "" {
		if g.Head > 0 {
			parts = append(parts, strconv.Itoa(g.Head))
		}
		parts = append(parts, g.Mob)
	}
	switch g.Event {
	case entry.In:
		parts = append(parts, "into", padName(g.Paddock))
	case entry.Out:
		parts = append(parts, "out of", padName(g.Paddock))
	default:
		parts = append(parts, "grazed", padName(g.Paddock))
	}
	parts = append(parts, "on", g.Date.String())
	if g.Mob == "" && g.Head > 0 {
		parts = append(parts, ",", strconv.Itoa(g.Head), "head")
	}
	if g.Part > 0 {
		parts = append(parts, ",", "part", figure(g.Part))
	}
	if g.Residual != nil {
		parts = append(parts, ", residual", figure(g.Residual.Value), unitWord(g.Residual.Unit))
	}
	if g.Back {
		parts = append(parts, ", back fence")
	}
	return strings.ReplaceAll(strings.Join(parts, " "), " ,", ",")
}

// unitWord writes a residual's unit; "in" alone would read as the preposition.
func unitWord(u entry.ResidualUnit) string {
	if u == entry.Inches {
		return "inches"
	}
	return string(u)
}

// holdWords is how a hold's reason is printed.
var holdWords = map[entry.Reason]string{entry.HoldSilage: "shut up for silage", entry.HoldHay: "shut up for hay", entry.HoldSpray: "sprayed",
	entry.HoldFertiliser: "fertiliser", entry.HoldEffluent: "effluent", entry.HoldResown: "resown", entry.HoldWet: "too wet",
	entry.HoldCrop: "in crop", entry.HoldOther: "shut up"}

func printHold(h entry.Hold) string {
	s := fmt.Sprintf("%s %s on %s", padName(h.Paddock), holdWords[h.Reason], h.Date)
	if !h.Until.IsZero() {
		s += " until " + h.Until.String()
	}
	return s
}

func printRelease(v entry.Release) string {
	words := map[entry.Reason]string{entry.HoldSilage: "silage", entry.HoldHay: "hay", entry.HoldSpray: "spray",
		entry.HoldFertiliser: "fertiliser", entry.HoldEffluent: "effluent", entry.HoldResown: "resown", entry.HoldCrop: "crop"}
	switch word := words[v.Reason]; {
	case v.Reason == entry.HoldWet:
		return fmt.Sprintf("%s dried out and ok to graze on %s", padName(v.Paddock), v.Date)
	case word != "":
		return fmt.Sprintf("release the %s hold on %s on %s", word, padName(v.Paddock), v.Date)
	}
	return fmt.Sprintf("%s ok to graze on %s", padName(v.Paddock), v.Date)
}

func printTemperature(t entry.Temperature) string {
	s := string(t.Where)
	if t.Celsius != nil {
		s += " temperature " + figure(*t.Celsius) + "°C"
	}
	if t.Min != nil {
		s += " min " + figure(*t.Min) + "°C"
	}
	if t.Max != nil {
		s += " max " + figure(*t.Max) + "°C"
	}
	return s + " on " + t.Date.String()
}

func printCorrect(c entry.Correct) string {
	to := c.ToName
	switch c.Field {
	case entry.FieldPaddock:
		to = padName(c.ToName)
	case entry.FieldDate:
		to = c.ToDate.String()
	case entry.FieldTillers:
		to = printTillers(c.ToTillers)
	}
	if c.About != "" && !c.Told() {
		return padName(c.About) + " should be " + to
	}
	if c.About != "" {
		s := padName(c.About) + " was " + to + " not " + printFrom(c)
		if !c.Day.IsZero() {
			s += " on " + c.Day.String()
		}
		return s
	}
	if c.Told() {
		return "should be " + to + " not " + printFrom(c)
	}
	return "should be " + to
}

func printFrom(c entry.Correct) string {
	switch c.Field {
	case entry.FieldPaddock:
		return padName(c.From)
	case entry.FieldTillers:
		return printTillers(c.FromTillers)
	}
	return c.From
}

// printTillers writes scores; a whole number alone would read as a paddock.
func printTillers(tillers []entry.Tiller) string {
	list := make([]string, len(tillers))
	for i, t := range tillers {
		list[i] = printTiller(t)
	}
	s := strings.Join(list, " ")
	if len(list) == 1 && !strings.ContainsAny(s, ".+") {
		s += ".0"
	}
	return s
}

func printSetup(s entry.Setup) string {
	switch s.What {
	case entry.SetFarm:
		return "set up " + s.Name + ", " + s.Zone
	case entry.SetPaddocks:
		return printRegister(s.Paddocks, s.Unit)
	case entry.SetMob:
		if s.Head == 0 {
			return "mob " + s.Mob
		}
		return fmt.Sprintf("mob %s %d", s.Mob, s.Head)
	case entry.SetSummary:
		if s.Off {
			return "summary off"
		}
		return "summary " + s.At
	case entry.SetAim:
		return "aim " + figure(float64(s.Leaves)) + " leaves"
	case entry.SetPlace:
		return fmt.Sprintf("we are at %s %s", figure(*s.Lat), figure(*s.Lon))
	case entry.SetGrass:
		return padName(s.Paddock) + " is " + string(s.Grass)
	case entry.SetLastGrazed:
		return padName(s.Paddock) + " last grazed " + s.Date.String()
	}
	return printYear(s)
}

// printRegister prints paddocks one a line, or the mob that alone may graze
// them.
func printRegister(plots []entry.Plot, unit string) string {
	lines := []string{"paddocks"}
	var names []string
	for _, p := range plots {
		names = append(names, padName(p.Name))
		lines = append(lines, strings.TrimSpace(p.Name+" "+printArea(p.Area, unit)+" "+string(p.Grass)))
	}
	if len(plots) > 0 && plots[0].Mob != "" {
		return "only " + plots[0].Mob + " on " + strings.Join(names, ", ")
	}
	return strings.Join(lines, "\n")
}

// printArea writes an area in the unit that it was typed in, so that it reads
// back to the same value.
func printArea(a entry.Hectares, unit string) string {
	if unit != "acres" {
		return figure(float64(a)) + " ha"
	}
	v := float64(a / entry.Acres(1))
	for _, near := range []float64{v, math.Nextafter(v, 0), math.Nextafter(v, math.MaxFloat64)} {
		if entry.Acres(near) == a {
			v = near
		}
	}
	for digits := 1; digits < 17; digits++ {
		if short, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', digits, 64), 64); err == nil && entry.Acres(short) == a {
			return figure(short) + " acres"
		}
	}
	return figure(v) + " acres"
}
