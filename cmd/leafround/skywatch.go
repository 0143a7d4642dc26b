package main

import (
	"context"
	"time"

	"leafround/bot/skies"
)

// skywatch asks a weather service for each farm whose place is known, every
// few hours. What fails is told to the log, and the morning summary says when
// the weather is stale.
func (e *engine) skywatch(ctx context.Context, template string, now func() time.Time) {
	const every = 3 * time.Hour
	for {
		if err := e.skies(ctx, skies.Service{Template: template}, now()); err != nil && ctx.Err() == nil {
			e.log.Warn("the weather can't be had; trying again later", "error", err)
		}
		select {
		case <-ctx.Done():
			return
		case <-time.After(every):
		}
	}
}

// skies asks once, farm by farm.
func (e *engine) skies(ctx context.Context, service skies.Service, now time.Time) error {
	places, err := e.bot.Places(ctx)
	if err != nil {
		return err
	}
	var last error
	for _, p := range places {
		days, err := service.Fetch(ctx, p.Lat, p.Lon)
		if err != nil {
			last = err
			continue
		}
		n, err := e.bot.FillWeather(ctx, p.Farm, days, now)
		if err != nil {
			last = err
			continue
		}
		e.log.Info("weather taken", "farm", p.Farm, "entries", n)
	}
	return last
}
