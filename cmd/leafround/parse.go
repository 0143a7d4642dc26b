package main

import (
	"bufio"
	"encoding/json"
	"fmt"
	"os"
	"strings"
	"time"

	"leafround/bot/land"
	"leafround/core/entry"
	"leafround/core/leaf"
	"leafround/parser"
)

// parseCmd reads messages and prints what they say, without a database.
type parseCmd struct {
	Farm string `placeholder:"FILE" help:"A register (CSV: name,area_ha and optional grass,mob,boundary); without it any name may be a paddock."`
	At   string `placeholder:"TIME" help:"The moment of the messages, RFC 3339; now if left out."`
	Zone string `placeholder:"ZONE" help:"The farm's zone, an IANA name such as Pacific/Auckland; by default the offset of --at."`
}

// Run prints one JSON object a line.
func (c parseCmd) Run(s streams) error {
	book, err := c.context()
	if err != nil {
		return err
	}
	out := bufio.NewWriter(s.out)
	write := json.NewEncoder(out)
	write.SetEscapeHTML(false)
	in := bufio.NewReader(s.in)
	for {
		line, err := in.ReadString('\n')
		if line == "" && err != nil {
			break
		}
		line = strings.TrimSuffix(strings.TrimSuffix(line, "\n"), "\r")
		text := strings.ReplaceAll(line, `\n`, "\n")
		if err := write.Encode(parser.Read(text, book)); err != nil {
			return fmt.Errorf("writing the reading failed: %w", err)
		}
		if in.Buffered() == 0 {
			_ = out.Flush()
		}
	}
	return out.Flush()
}

func (c parseCmd) context() (parser.Context, error) {
	at := time.Now()
	if c.At != "" {
		t, err := time.Parse(time.RFC3339, c.At)
		if err != nil {
			return parser.Context{}, usageError(fmt.Sprintf("--at %q is not a moment like 2026-11-25T17:40:00+13:00", c.At))
		}
		at = t
	}
	if c.Zone != "" {
		zone, err := time.LoadLocation(c.Zone)
		if err != nil || c.Zone == "Local" {
			return parser.Context{}, usageError(fmt.Sprintf("--zone %q is not a zone's name like Pacific/Auckland", c.Zone))
		}
		at = at.In(zone)
	}
	book := parser.Context{Now: at, MonthFirst: parser.MonthFirst(at.Location().String()), AnyPaddock: c.Farm == ""}
	if c.Farm == "" {
		return book, nil
	}
	plots, err := readRegister(c.Farm)
	if err != nil {
		return book, err
	}
	for _, p := range plots {
		book.Paddocks = append(book.Paddocks, parser.Name{Name: p.Name, Live: leaf.Of(p.Grass).Live})
		if p.Mob != "" {
			book.Mobs = append(book.Mobs, p.Mob)
		}
	}
	return book, nil
}

// readRegister reads a register file; every bad line is named.
func readRegister(path string) ([]entry.Plot, error) {
	b, err := os.ReadFile(path)
	if err != nil {
		return nil, fmt.Errorf("the register %s can't be read: %w", path, err)
	}
	plots, faults := land.Register(b)
	if len(faults) > 0 {
		var all []string
		for _, f := range faults {
			all = append(all, f.String())
		}
		return nil, fmt.Errorf("the register %s was not taken: %s", path, strings.Join(all, "; "))
	}
	return plots, nil
}
