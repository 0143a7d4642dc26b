package ledger

import (
	"context"
	"fmt"
)

// FailedRow is an update that was given up.
type FailedRow struct {
	ID       int64  `db:"id"`
	UpdateID int64  `db:"update_id"` // 0 where it had none
	Raw      []byte `db:"raw"`
	Error    string `db:"error"`
}

const failedSQL = `
SELECT id, COALESCE(update_id, 0) AS update_id, raw, error FROM inbox
WHERE state = 'failed' ORDER BY id DESC LIMIT 100`

// Failed gives the latest updates that were given up, latest first.
func (l *Ledger) Failed(ctx context.Context) ([]FailedRow, error) {
	var rows []FailedRow
	if err := l.db.SelectContext(ctx, &rows, failedSQL); err != nil {
		return nil, fmt.Errorf("ledger: list failed updates: %w", err)
	}
	return rows, nil
}

// Counts is what waits and what was given up, for the metrics page.
type Counts struct {
	InboxNew      int64 `db:"inbox_new"`
	InboxFailed   int64 `db:"inbox_failed"`
	OutboxPending int64 `db:"outbox_pending"`
	OutboxFailed  int64 `db:"outbox_failed"`
}

const countsSQL = `
SELECT (SELECT count(*) FROM inbox WHERE state = 'new') AS inbox_new,
       (SELECT count(*) FROM inbox WHERE state = 'failed') AS inbox_failed,
       (SELECT count(*) FROM outbox WHERE state = 'pending') AS outbox_pending,
       (SELECT count(*) FROM outbox WHERE state = 'failed') AS outbox_failed`

// Counts counts them.
func (l *Ledger) Counts(ctx context.Context) (c Counts, err error) {
	if err := l.db.GetContext(ctx, &c, countsSQL); err != nil {
		return c, fmt.Errorf("ledger: count: %w", err)
	}
	return c, nil
}
