package main

import (
	"bufio"
	"context"
	"fmt"
	"log/slog"
	"path/filepath"
	"time"

	"leafround/bot/ledger"
	"leafround/bot/pgembed"
	"leafround/bot/sheet"
	"leafround/core/entry"
)

// exportCmd prints a farm's log as CSV.
type exportCmd struct {
	storeFlags
	Farm string `required:"" placeholder:"NAME" help:"The farm's name."`
	Chat int64  `placeholder:"ID" help:"A chat of the farm, to tell farms of one name apart."`
}

// read finds the farm: where serve keeps its log, or else the demo.
func (c exportCmd) read(ctx context.Context) (f ledger.Farm, log []entry.Logged, err error) {
	err = fmt.Errorf("there is no log in the data directory yet: run leafround serve or demo first, or say where it is with LEAFROUND_DATA_DIR or LEAFROUND_DATABASE_URL")
	for _, folder := range c.folders() {
		if f, log, err = c.readFrom(ctx, folder); err == nil {
			return f, log, nil
		}
	}
	return f, log, err
}

// folders lists where in the data directory a log can lie.
func (c exportCmd) folders() []string {
	if c.DatabaseURL != "" {
		return []string{""}
	}
	var found []string
	for _, folder := range []string{demoFolder, ""} {
		dir, err := c.dir()
		if err == nil && pgembed.Exists(filepath.Join(dir, folder)) {
			found = append(found, folder)
		}
	}
	return found
}

func (c exportCmd) readFrom(ctx context.Context, folder string) (f ledger.Farm, log []entry.Logged, err error) {
	book, err := c.open(ctx, folder, true, slog.New(slog.DiscardHandler))
	if err != nil {
		return f, nil, err
	}
	defer func() {
		if end := book.Close(); err == nil {
			err = end
		}
	}()
	return book.Export(ctx, c.Farm, c.Chat)
}

// Run prints the log, oldest first.
func (c exportCmd) Run(ctx context.Context, s streams) error {
	f, log, err := c.read(ctx)
	if err != nil {
		return err
	}
	zone, err := time.LoadLocation(f.Zone)
	if err != nil {
		return fmt.Errorf("the farm's zone %s is unknown here: %w", f.Zone, err)
	}
	out := bufio.NewWriter(s.out)
	if err := sheet.Write(out, zone, log); err != nil {
		return err
	}
	if err := out.Flush(); err != nil {
		return fmt.Errorf("the table can't be written: %w", err)
	}
	return nil
}
