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
