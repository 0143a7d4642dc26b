package ledger

import (
	"context"
	"fmt"
	"time"

	"leafround/bot/chat"
	"leafround/core/entry"
)

// Daily is the kind of the daily summary's job.
const Daily = "summary"

const dailiesSQL = `
SELECT f.id, f.zone, f.summary_minute, f.summary_from,
  (SELECT max(day) FROM job j WHERE j.farm = f.id AND j.kind = 'summary') AS last
FROM farm f WHERE f.summary_minute IS NOT NULL AND f.summary_from IS NOT NULL ORDER BY f.id`

// Dailies gives the farms that have a daily summary.
func (l *Ledger) Dailies(ctx context.Context) ([]chat.Daily, error) {
	var rows []struct {
		ID     int64      `db:"id"`
		Zone   string     `db:"zone"`
		Minute int        `db:"summary_minute"`
		From   time.Time  `db:"summary_from"`
		Last   *time.Time `db:"last"`
	}
	if err := l.db.SelectContext(ctx, &rows, dailiesSQL); err != nil {
		return nil, fmt.Errorf("ledger: daily summaries: %w", err)
	}
	all := make([]chat.Daily, len(rows))
	for i, r := range rows {
		all[i] = chat.Daily{Farm: r.ID, Zone: r.Zone, Minute: r.Minute, From: r.From}
		if r.Last != nil {
			all[i].Last = *r.Last
		}
	}
	return all, nil
}

const jobSQL = `
INSERT INTO job (farm, kind, day, state, reason, at) VALUES ($1, $2, $3, $4, $5, $6)
ON CONFLICT (farm, kind, day) DO NOTHING RETURNING id`

// Job runs f in the transaction that notes the job as done, unless it is done
// or skipped already. It holds the farm. ran tells whether f ran and all was
// committed.
func (l *Ledger) Job(ctx context.Context, farm int64, kind string, day entry.Date, at time.Time,
	f func(ctx context.Context, tx *Tx, job int64) error) (ran bool, err error) {
	err = l.In(ctx, func(ctx context.Context, tx *Tx) error {
		if _, err := tx.LockFarm(ctx, farm); err != nil {
			return err
		}
		var id int64
		ran, err = tx.get(ctx, "note a job", &id, jobSQL, farm, kind, day.String(), "done", "", at)
		if err != nil || !ran {
			return err
		}
		tx.source = fmt.Sprint("job/", id)
		return f(ctx, tx, id)
	})
	return ran && err == nil, err
}

// SkipJob notes that a job won't run for its day. fresh tells whether that was
// open until now.
func (l *Ledger) SkipJob(ctx context.Context, farm int64, kind string, day entry.Date, at time.Time, why string) (fresh bool, err error) {
	err = l.In(ctx, func(ctx context.Context, tx *Tx) error {
		var id int64
		fresh, err = tx.get(ctx, "skip a job", &id, jobSQL, farm, kind, day.String(), "skipped", clean(why), at)
		return err
	})
	return fresh, err
}
