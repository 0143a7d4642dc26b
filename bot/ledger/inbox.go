package ledger

import (
	"context"
	"errors"
	"fmt"
	"runtime/debug"
	"time"

	"leafround/bot/chat"
)

// InboxRow is one update that waits to be handled.
type InboxRow struct {
	ID         int64     `db:"id"`
	UpdateID   int64     `db:"update_id"` // 0 where it had none
	Chat       int64     `db:"chat"`      // 0 where it had none
	Raw        []byte    `db:"raw"`
	ReceivedAt time.Time `db:"received_at"`
	Attempts   int       `db:"attempts"` // that failed so far
}

// claimSQL takes the oldest update that is the first of its chat. A row that
// another worker holds is passed over, and so are those behind it in its chat:
// they are not first until that one is committed.
const claimSQL = `
SELECT id, COALESCE(update_id, 0) AS update_id, COALESCE(chat, 0) AS chat, raw, received_at, attempts
FROM inbox i
WHERE state = 'new' AND next_try <= now()
  AND NOT EXISTS (SELECT FROM inbox e WHERE e.chat = i.chat AND e.state = 'new' AND e.id < i.id)
ORDER BY id LIMIT 1
FOR UPDATE OF i SKIP LOCKED`

const doneSQL = `UPDATE inbox SET state = 'done', done_at = now(), error = '' WHERE id = $1`

// Handler does all that one update asks for, in one transaction.
type Handler func(ctx context.Context, tx *Tx, row InboxRow) error

// Next handles the next update, if there is one. When the handler fails,
// nothing of what it did stays, the attempt is counted and the update is tried
// again later; after Options.Attempts it is kept as failed and its chat goes
// on. The handler's failure is told to the log, not returned: an error is the
// database's.
func (l *Ledger) Next(ctx context.Context, handle Handler) (did bool, err error) {
	var row InboxRow
	var failed error
	err = l.In(ctx, func(ctx context.Context, tx *Tx) error {
		did, err = tx.get(ctx, "claim an update", &row, claimSQL)
		if !did || err != nil {
			return err
		}
		tx.source = fmt.Sprint("in/", row.ID)
		if failed = guarded(ctx, tx, row, handle); failed != nil {
			return failed
		}
		_, err := tx.do(ctx, "close an update", doneSQL, row.ID)
		return err
	})
	if failed != nil {
		return true, l.missed(ctx, row, failed)
	}
	return did, err
}

// guarded turns a handler's panic into an error: a message that trips a
// mistake of ours must not stop the messages of everybody else.
func guarded(ctx context.Context, tx *Tx, row InboxRow, handle Handler) (err error) {
	defer func() {
		if p := recover(); p != nil {
			err = fmt.Errorf("panic: %v\n%s", p, debug.Stack())
		}
	}()
	return handle(ctx, tx, row)
}

// Hopeless marks an error that no second try can mend: the update is kept as
// failed at once.
func Hopeless(err error) error { return hopeless{err} }

type hopeless struct{ error }

func (h hopeless) Unwrap() error { return h.error }

// Later marks an error that is no failure: the handler needs something from
// outside first (a file's content), and takes the update again at once.
func Later(err error) error { return later{err} }

type later struct{ error }

func (l later) Unwrap() error { return l.error }

const missedSQL = `
UPDATE inbox SET attempts = attempts + $2, error = $3, next_try = now() + $4 * interval '1 microsecond',
  state = CASE WHEN $5 THEN 'failed' ELSE state END,
  done_at = CASE WHEN $5 THEN now() END
WHERE id = $1 AND state = 'new'`

// missed counts a failed attempt, unless the trouble was the database's.
func (l *Ledger) missed(ctx context.Context, row InboxRow, why error) error {
	if ctx.Err() != nil {
		return ctx.Err() // we are ending: not the update's fault
	}
	if soon := (later{}); errors.As(why, &soon) {
		return nil
	}
	count := 1
	if transient(why) {
		count = 0
	}
	var h hopeless
	end := errors.As(why, &h) || row.Attempts+count >= l.opts.Attempts
	wait := l.opts.Backoff(row.Attempts + 1)
	log := l.opts.Log.With("inbox", row.ID, "update", row.UpdateID, "attempt", row.Attempts+1, "error", why)
	if end {
		log.Error("an update can't be handled; it is kept and passed over")
	} else {
		log.Warn("an update failed; it will be tried again")
	}
	_, err := l.db.ExecContext(ctx, missedSQL, row.ID, count, clean(why.Error()), wait.Microseconds(), end)
	if err != nil {
		return fmt.Errorf("ledger: note a failure: %w", err)
	}
	return nil
}

// receiveLockSQL makes receivers take turns, so that rows are numbered in the
// order in which they are committed.
const receiveLockSQL = `SELECT pg_advisory_xact_lock(7201)`

const receiveSQL = `
INSERT INTO inbox (update_id, digest, chat, raw, received_at) VALUES ($1, $2, $3, $4, $5)
ON CONFLICT DO NOTHING`

// Receive commits updates to the inbox, in their order. One that is there
// already changes nothing.
func (l *Ledger) Receive(ctx context.Context, updates []chat.Raw) error {
	if len(updates) == 0 {
		return nil
	}
	return l.In(ctx, func(ctx context.Context, tx *Tx) error {
		if _, err := tx.do(ctx, "receive", receiveLockSQL); err != nil {
			return err
		}
		for _, u := range updates {
			id := any(u.UpdateID)
			if !u.HasID {
				id = nil
			}
			if _, err := tx.do(ctx, "receive", receiveSQL, id, digest(u.JSON), orNull(u.Chat), u.JSON, u.At); err != nil {
				return err
			}
		}
		_, err := tx.do(ctx, "receive", ringSQL, Inbox)
		return err
	})
}

const givenUpSQL = `SELECT state = 'failed' FROM inbox WHERE id = $1`

// GivenUp tells whether an update was given up.
func (l *Ledger) GivenUp(ctx context.Context, id int64) (gone bool, err error) {
	if err := l.db.GetContext(ctx, &gone, givenUpSQL, id); err != nil {
		return false, fmt.Errorf("ledger: read an update's state: %w", err)
	}
	return gone, nil
}
