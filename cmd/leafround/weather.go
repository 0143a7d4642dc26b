package main

import (
	"context"
	"fmt"
	"log/slog"
	"os"
	"time"

	"leafround/bot"
	"leafround/bot/ledger"
	"leafround/core/pace/weather"
)

// weatherCmd reads a table of daily weather into a farm's log.
type weatherCmd struct {
	storeFlags
	File string `arg:"" help:"CSV with the header date,tmin,tmax,rain: °C and mm, one day a line."`
	Farm string `required:"" placeholder:"NAME" help:"The farm's name."`
	Chat int64  `placeholder:"ID" help:"A chat of the farm, to tell farms of one name apart."`
}

// Run reads the table and logs each good line; the bad ones are named.
func (c weatherCmd) Run(ctx context.Context, s streams) (err error) {
	text, err := os.ReadFile(c.File)
	if err != nil {
		return fmt.Errorf("the table can't be read: %w", err)
	}
	table := weather.Read(string(text))
	for _, b := range table.Bad {
		fmt.Fprintf(s.err, "leafround: left out %s\n", b)
	}
	if len(table.Entries) == 0 {
		return fmt.Errorf("no line of %s could be taken: it needs the header date,tmin,tmax,rain and one day a line", c.File)
	}
	book, err := c.open(ctx, "", true, slog.New(slog.DiscardHandler))
	if err != nil {
		return err
	}
	defer func() {
		if end := book.Close(); err == nil {
			err = end
		}
	}()
	if err := c.take(ctx, book.Ledger, table); err != nil {
		return err
	}
	fmt.Fprintf(s.out, "%d days taken, %s to %s.\n", table.Days, table.From, table.To)
	return nil
}

func (c weatherCmd) take(ctx context.Context, book *ledger.Ledger, table weather.Table) error {
	f, _, err := book.Export(ctx, c.Farm, c.Chat)
	if err != nil {
		return err
	}
	return bot.New(book, bot.Options{}).TakeWeather(ctx, f.ID, table.Entries, time.Now())
}
