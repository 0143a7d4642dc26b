package bot

import (
	"context"
	"time"

	"leafround/bot/ledger"
	"leafround/core/entry"
)

// Place is where a farm lies.
type Place struct {
	Farm     int64
	Lat, Lon float64 // degrees, north and east positive
}

// Places gives the farms whose place was told.
func (b *Bot) Places(ctx context.Context) ([]Place, error) {
	ids, err := b.book.FarmIDs(ctx)
	if err != nil {
		return nil, err
	}
	var all []Place
	for _, id := range ids {
		err := b.withFarm(ctx, id, func(t *turn) error {
			if t.farm.Placed {
				all = append(all, Place{id, t.farm.Lat, t.farm.Lon})
			}
			return nil
		})
		if err != nil {
			return nil, err
		}
	}
	return all, nil
}

// withFarm runs f with a farm held.
func (b *Bot) withFarm(ctx context.Context, farm int64, f func(*turn) error) error {
	return b.book.In(ctx, func(ctx context.Context, tx *ledger.Tx) (err error) {
		t := &turn{b: b, ctx: ctx, tx: tx}
		ok := false
		defer func() {
			if !ok {
				b.forget(farm)
			}
		}()
		row, err := tx.LockFarm(ctx, farm)
		if err != nil {
			return err
		}
		if err := t.keep(row); err != nil {
			return err
		}
		err = f(t)
		ok = err == nil
		return err
	})
}

// FillWeather logs the days of a weather service that are over and of which
// nobody has told anything yet. It tells how many entries that were.
func (b *Bot) FillWeather(ctx context.Context, farm int64, entries []entry.Entry, now time.Time) (n int, err error) {
	err = b.withFarm(ctx, farm, func(t *turn) error {
		today := t.farm.Today(now)
		told := map[weatherKey]bool{}
		for _, l := range t.farm.Log() {
			if k, ok := wholeDay(l.Entry); ok && l.Stands() {
				told[k] = true
			}
		}
		var missing []entry.Entry
		for _, e := range entries {
			if k, ok := wholeDay(e); ok && k.day < today && !told[k] {
				missing = append(missing, e)
			}
		}
		n = len(missing)
		if n == 0 {
			return nil
		}
		return t.weatherFor(farm, missing, now)
	})
	return n, err
}

// Warm folds every farm and reckons where it stands, so that the first message
// after a start does not wait for years of history.
func (b *Bot) Warm(ctx context.Context) error {
	ids, err := b.book.FarmIDs(ctx)
	if err != nil {
		return err
	}
	for _, id := range ids {
		err := b.withFarm(ctx, id, func(t *turn) error {
			t.farm.Estimate(t.farm.Today(b.o.Now()))
			return nil
		})
		if err != nil {
			return err
		}
	}
	return nil
}
