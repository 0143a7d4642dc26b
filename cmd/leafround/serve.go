package main

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"

	"leafround/bot/send"
	"leafround/bot/skies"
)

// serveCmd is the bot on Telegram, for real.
type serveCmd struct {
	storeFlags
	telegramFlags
	Pace    string `env:"LEAFROUND_PACE" enum:"telegram,none" default:"telegram" help:"telegram sends no faster than Telegram allows; none as fast as the server takes it ($LEAFROUND_PACE)."`
	Weather string `name:"weather-url" env:"LEAFROUND_WEATHER_URL" placeholder:"TEMPLATE" help:"Address of a weather service with {lat} and {lon} in it; none by default ($LEAFROUND_WEATHER_URL)."`
	Webhook string `name:"webhook-url" env:"LEAFROUND_WEBHOOK_URL" placeholder:"URL" help:"Public https address that leads to /webhook at --listen: updates are brought there instead of being asked for ($LEAFROUND_WEBHOOK_URL)."`
	Listen  string `env:"LEAFROUND_LISTEN" default:"127.0.0.1:8081" placeholder:"ADDRESS" help:"Address of /healthz, /readyz and /metrics; port 0 takes any free one ($LEAFROUND_LISTEN)."`
}

// Run serves until the context ends, then finishes what it holds.
func (c serveCmd) Run(ctx context.Context, s streams) (err error) {
	if err := errors.Join(c.telegramFlags.check(), c.storeFlags.check()); err != nil {
		return err
	}
	if c.Weather != "" {
		if err := skies.Check(c.Weather); err != nil {
			return err
		}
	}
	log := logTo(s.err)
	pages, err := listen(c.Listen)
	if err != nil {
		return err
	}
	book, err := c.open(ctx, "", false, log)
	if err != nil {
		pages.Close()
		return err
	}
	defer func() {
		if end := book.Close(); err == nil {
			err = end
		}
	}()
	e, err := newEngine(ctx, book.Ledger, engineOptions{token: c.Token, server: c.APIURL, pace: limits(c.Pace), weather: c.Weather, webhook: c.Webhook}, log)
	if err != nil {
		pages.Close()
		if ctx.Err() != nil {
			return nil
		}
		return err
	}
	fmt.Fprintf(s.err, "leafround: running; health pages on http://%s/healthz\n", pages.Addr())
	handler := healthPages(book.Ledger)
	if c.Webhook != "" {
		handler.Handle("/webhook", e.webhook())
	}
	return runWith(ctx, e, pages, handler)
}

func limits(pace string) send.Limits {
	if pace == "none" {
		return send.Unpaced()
	}
	return send.Telegram()
}

// runWith runs the bot and its pages until the context ends or one of them
// can't go on.
func runWith(ctx context.Context, e *engine, l net.Listener, pages http.Handler) error {
	ctx, stop := context.WithCancelCause(ctx)
	defer stop(nil)
	over := make(chan struct{})
	go func() {
		defer close(over)
		if err := serveUntil(ctx, l, pages); err != nil {
			stop(err)
		}
	}()
	err := e.run(ctx)
	stop(nil)
	<-over
	if cause := context.Cause(ctx); err == nil && !errors.Is(cause, context.Canceled) {
		err = cause
	}
	return err
}
