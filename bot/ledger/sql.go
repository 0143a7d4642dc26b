package ledger

import (
	"context"
	"database/sql"
	"database/sql/driver"
	"errors"
	"fmt"
	"strings"

	"github.com/jmoiron/sqlx"
	"github.com/lib/pq"
)

func sqlOpen(c driver.Connector) *sql.DB { return sql.OpenDB(c) }

// Tx is one transaction of the ledger.
type Tx struct {
	tx     *sqlx.Tx
	source string // what it handles ("in/7", "job/3"), for keys in the outbox
	sends  int    // rows put into the outbox so far, to number them
}

// In runs f in a transaction; an error or a panic rolls it back.
func (l *Ledger) In(ctx context.Context, f func(context.Context, *Tx) error) error {
	raw, err := l.db.BeginTxx(ctx, nil)
	if err != nil {
		return fmt.Errorf("ledger: begin: %w", err)
	}
	defer raw.Rollback() // after a commit it does nothing
	if err := f(ctx, &Tx{tx: raw}); err != nil {
		return err
	}
	if err := raw.Commit(); err != nil {
		return fmt.Errorf("ledger: commit: %w", err)
	}
	return nil
}

// get reads one row; found is false where there is none.
func (t *Tx) get(ctx context.Context, what string, dest any, query string, args ...any) (found bool, err error) {
	err = t.tx.GetContext(ctx, dest, query, args...)
	if errors.Is(err, sql.ErrNoRows) {
		return false, nil
	}
	if err != nil {
		return false, fmt.Errorf("ledger: %s: %w", what, err)
	}
	return true, nil
}

// list reads all rows.
func (t *Tx) list(ctx context.Context, what string, dest any, query string, args ...any) error {
	if err := t.tx.SelectContext(ctx, dest, query, args...); err != nil {
		return fmt.Errorf("ledger: %s: %w", what, err)
	}
	return nil
}

// do runs a statement and tells how many rows it touched.
func (t *Tx) do(ctx context.Context, what string, query string, args ...any) (int64, error) {
	res, err := t.tx.ExecContext(ctx, query, args...)
	if err != nil {
		return 0, fmt.Errorf("ledger: %s: %w", what, err)
	}
	n, err := res.RowsAffected()
	if err != nil {
		return 0, fmt.Errorf("ledger: %s: %w", what, err)
	}
	return n, nil
}

// transient tells whether an error is the database's trouble (a lost
// connection, a deadlock, a shutdown) and no fault of the update at hand.
func transient(err error) bool {
	if errors.Is(err, driver.ErrBadConn) || errors.Is(err, sql.ErrConnDone) || errors.Is(err, context.Canceled) {
		return true
	}
	var e *pq.Error
	if !errors.As(err, &e) {
		return false
	}
	switch string(e.Code.Class()) {
	case "08", "40", "53", "57": // connection, rollback, resources, shutdown (PostgreSQL manual, appendix A)
		return true
	}
	return false
}

// clean takes out what PostgreSQL's text can't hold.
func clean(s string) string {
	return strings.ToValidUTF8(strings.ReplaceAll(s, "\x00", ""), "\uFFFD")
}

// orNull gives NULL for zero.
func orNull(id int64) any {
	if id == 0 {
		return nil
	}
	return id
}
