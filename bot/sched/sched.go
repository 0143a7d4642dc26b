package sched

import (
	"context"
	"fmt"
	"log/slog"
	"time"

	"leafround/bot/chat"
)

// Store knows the farms with a daily summary, and makes one. Making and
// skipping change nothing where the day is done or skipped already.
type Store interface {
	Dailies(ctx context.Context) ([]chat.Daily, error)
	// Make makes the summary of a farm's day and notes it as done, in one
	// transaction. until is when it becomes too late to send.
	Make(ctx context.Context, farm int64, day, now, until time.Time) (ran bool, err error)
	// Skip notes that a day goes without.
	Skip(ctx context.Context, farm int64, day, now time.Time, why string) (fresh bool, err error)
}

// Late is how long after its moment a summary may still go out.
const Late = 2 * time.Hour

// lookBack is how many days that passed while the program was down are noted
// as skipped.
const lookBack = 7

// Sched runs daily summaries.
type Sched struct {
	Store Store
	Now   func() time.Time // the wall clock if nil
	Log   *slog.Logger     // nil for silence
	Rest  time.Duration    // the longest pause between two looks; 0 means 15 seconds
	kick  chan struct{}
}

// due is one summary and its moment.
type due struct {
	farm int64
	day  time.Time
	at   time.Time
}

// New makes a Sched ready to run and to be kicked.
func New(store Store, now func() time.Time, log *slog.Logger) *Sched {
	s := &Sched{Store: store, Now: now, Log: log, kick: make(chan struct{}, 1)}
	if s.Now == nil {
		s.Now = time.Now
	}
	if s.Log == nil {
		s.Log = slog.New(slog.DiscardHandler)
	}
	s.Rest = 15 * time.Second
	return s
}

// Kick has Run look at once: the clock was moved, or an hour was set.
func (s *Sched) Kick() {
	select {
	case s.kick <- struct{}{}:
	default:
	}
}

// Run looks for what is due until the context ends.
func (s *Sched) Run(ctx context.Context) error {
	for ctx.Err() == nil {
		now := s.Now()
		wait := s.Rest
		if err := s.Tick(ctx, now); err != nil && ctx.Err() == nil {
			s.Log.Error("daily summaries can't be made; trying again", "error", err)
		} else if next, ok, err := s.Next(ctx, now); err == nil && ok {
			wait = min(wait, max(next.Sub(s.Now()), time.Millisecond))
		}
		select {
		case <-ctx.Done():
		case <-s.kick:
		case <-time.After(wait):
		}
	}
	return nil
}

// Tick makes every summary that is due at a moment and not hours late, and
// notes the others as skipped. One farm's trouble holds up no other; it is
// tried again with the next tick.
func (s *Sched) Tick(ctx context.Context, now time.Time) error {
	farms, err := s.Store.Dailies(ctx)
	if err != nil {
		return fmt.Errorf("sched: %w", err)
	}
	var failed error
	for _, f := range farms {
		for _, d := range s.open(f, now) {
			if d.at.After(now) {
				continue
			}
			if err := s.run(ctx, d, now); err != nil {
				failed = fmt.Errorf("sched: farm %d: %w", d.farm, err)
			}
		}
	}
	return failed
}

// run makes one summary, or skips it when it is too late.
func (s *Sched) run(ctx context.Context, d due, now time.Time) error {
	if now.Sub(d.at) <= Late {
		_, err := s.Store.Make(ctx, d.farm, d.day, now, d.at.Add(Late))
		return err
	}
	why := fmt.Sprintf("it was due at %s", d.at.UTC().Format(time.RFC3339))
	fresh, err := s.Store.Skip(ctx, d.farm, d.day, now, why)
	if fresh {
		s.Log.Warn("a daily summary is skipped: more than two hours late", "farm", d.farm, "day", d.day.Format(time.DateOnly), "due", d.at)
	}
	return err
}

// Next gives the first moment after now at which a summary is due.
func (s *Sched) Next(ctx context.Context, now time.Time) (next time.Time, ok bool, err error) {
	farms, err := s.Store.Dailies(ctx)
	if err != nil {
		return next, false, fmt.Errorf("sched: %w", err)
	}
	for _, f := range farms {
		for _, d := range s.open(f, now) {
			if d.at.After(now) && (!ok || d.at.Before(next)) {
				next, ok = d.at, true
			}
		}
	}
	return next, ok, nil
}

// open gives a farm's days that are neither done nor skipped, from a week ago
// to tomorrow.
func (s *Sched) open(f chat.Daily, now time.Time) []due {
	zone, err := time.LoadLocation(f.Zone)
	if err != nil {
		s.Log.Error("a farm's zone is unknown; it gets no summary", "farm", f.Farm, "zone", f.Zone)
		return nil
	}
	today := dayOf(now.In(zone))
	first := later(later(today.AddDate(0, 0, -lookBack), dayOf(f.From.UTC())), f.Last)
	var all []due
	for day := first; !day.After(today.AddDate(0, 0, 1)); day = day.AddDate(0, 0, 1) {
		if !f.Last.IsZero() && !day.After(dayOf(f.Last.UTC())) {
			continue
		}
		if at, ok := Moment(day, f.Minute, zone); ok {
			all = append(all, due{f.Farm, day, at})
		}
	}
	return all
}

func later(a, b time.Time) time.Time {
	if b.After(a) {
		return b
	}
	return a
}
