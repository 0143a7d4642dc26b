package ledger

import (
	"context"
	"fmt"
)

// Waiting counts what is not done yet, and what was given up.
type Waiting struct {
	Inbox   int64 `db:"inbox"`   // updates committed and not handled
	Failed  int64 `db:"failed"`  // updates that could not be handled
	Outbox  int64 `db:"outbox"`  // messages not sent
	Due     int64 `db:"due"`     // of them, those that are not put off
	Refused int64 `db:"refused"` // messages given up
}

const waitingSQL = `
SELECT (SELECT count(*) FROM inbox WHERE state = 'new') AS inbox,
  (SELECT count(*) FROM inbox WHERE state = 'failed') AS failed,
  (SELECT count(*) FROM outbox WHERE state = 'pending') AS outbox,
  (SELECT count(*) FROM outbox WHERE state = 'pending' AND next_try <= now()) AS due,
  (SELECT count(*) FROM outbox WHERE state = 'failed') AS refused`

// Waiting tells what waits.
func (l *Ledger) Waiting(ctx context.Context) (w Waiting, err error) {
	if err := l.db.GetContext(ctx, &w, waitingSQL); err != nil {
		return w, fmt.Errorf("ledger: what waits: %w", err)
	}
	return w, nil
}
