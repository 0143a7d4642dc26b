package ledger

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"sync"
	"time"

	"github.com/jmoiron/sqlx"

	"leafround/bot/chat"
)

// Sender works on the outbox. There is one at a time over a database, so that
// the pace and the order hold: it keeps a lock that the database frees when
// the connection ends, however it ends.
type Sender struct {
	mu   sync.Mutex // one statement at a time on the one connection
	conn *sqlx.Conn
}

const trySenderSQL = `SELECT pg_try_advisory_lock(7202)`

// ErrOtherSender means that another program sends at the moment.
var ErrOtherSender = errors.New("another program is sending from this database")

// Sender takes the place of the one that sends, if it is free.
func (l *Ledger) Sender(ctx context.Context) (*Sender, error) {
	conn, err := l.db.Connx(ctx)
	if err != nil {
		return nil, fmt.Errorf("ledger: sender: %w", err)
	}
	var free bool
	if err := conn.GetContext(ctx, &free, trySenderSQL); err != nil {
		conn.Close()
		return nil, fmt.Errorf("ledger: sender: %w", err)
	}
	if !free {
		conn.Close()
		return nil, ErrOtherSender
	}
	return &Sender{conn: conn}, nil
}

const freeSenderSQL = `SELECT pg_advisory_unlock(7202)`

// Close makes room for another sender.
func (s *Sender) Close() error {
	ctx, cancel := context.WithTimeout(context.Background(), 5*time.Second)
	defer cancel()
	s.conn.ExecContext(ctx, freeSenderSQL) // on a dead connection the lock is gone anyway
	if err := s.conn.Close(); err != nil {
		return fmt.Errorf("ledger: sender: %w", err)
	}
	return nil
}

type dueRow struct {
	ID       int64        `db:"id"`
	Chat     int64        `db:"chat"`
	Private  bool         `db:"private"`
	Attempts int          `db:"attempts"`
	NextTry  sql.NullTime `db:"next_try"`
	Until    sql.NullTime `db:"until"`
}

const headsSQL = `
SELECT o.id, o.chat, c.private, o.attempts, NULLIF(o.next_try, '-infinity') AS next_try, o.until
FROM chat c CROSS JOIN LATERAL (
  SELECT * FROM outbox WHERE chat = c.id AND state = 'pending' ORDER BY seq LIMIT 1) o
ORDER BY o.id`

// Heads gives the first message that waits for each chat, due or not.
func (s *Sender) Heads(ctx context.Context) ([]chat.Due, error) { return s.due(ctx, headsSQL) }

func (s *Sender) due(ctx context.Context, query string, args ...any) ([]chat.Due, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	var rows []dueRow
	if err := s.conn.SelectContext(ctx, &rows, query, args...); err != nil {
		return nil, fmt.Errorf("ledger: what waits: %w", err)
	}
	due := make([]chat.Due, len(rows))
	for i, r := range rows {
		due[i] = chat.Due{ID: r.ID, Chat: r.Chat, Group: !r.Private, Attempts: r.Attempts,
			Next: r.NextTry.Time, Until: r.Until.Time}
	}
	return due, nil
}

const loadSQL = `
SELECT o.payload, o.chat, o.moved, COALESCE(o.edits, 0) AS edits, COALESCE(e.sent_id, 0) AS edit_id,
  COALESCE(e.chat = o.chat, false) AS same
FROM outbox o LEFT JOIN outbox e ON e.id = o.edits WHERE o.id = $1`

const lastSendsSQL = `
SELECT o.chat, c.private, o.sent_at AS next_try FROM outbox o JOIN chat c ON c.id = o.chat
WHERE o.sent_at >= $1 ORDER BY o.sent_at`

// LastSends gives what was sent since a moment, its Next being when: a sender
// that starts needs it to keep the pace of the one before.
func (s *Sender) LastSends(ctx context.Context, since time.Time) ([]chat.Due, error) {
	return s.due(ctx, lastSendsSQL, since)
}

type loadRow struct {
	Payload []byte `db:"payload"`
	Chat    int64  `db:"chat"`
	Moved   bool   `db:"moved"`
	Edits   int64  `db:"edits"`
	EditID  int    `db:"edit_id"`
	Same    bool   `db:"same"` // the chat is still the one where the edited message is
}

// Load gives what is to be sent. ok is false where there is nothing left to do:
// buttons to be taken off a message that was never sent.
func (s *Sender) Load(ctx context.Context, id int64) (out chat.Outgoing, ok bool, err error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	var r loadRow
	if err := s.conn.GetContext(ctx, &r, loadSQL, id); err != nil {
		return out, false, fmt.Errorf("ledger: load what waits: %w", err)
	}
	if err := json.Unmarshal(r.Payload, &out); err != nil {
		return out, false, fmt.Errorf("ledger: outbox %d: %w", id, err)
	}
	out.Chat = r.Chat
	return out, r.aim(&out), nil
}

// aim sets the numbers of the messages that a send speaks of, as they are now.
// Telegram's numbers begin anew in a supergroup, so none is carried over.
func (r loadRow) aim(out *chat.Outgoing) (ok bool) {
	strip := out.Strip != 0
	if r.Moved {
		out.ReplyTo, out.Edit, out.Strip = 0, 0, 0
	}
	if r.Edits != 0 {
		out.Edit, out.Strip = 0, 0
		if r.Same && strip {
			out.Strip = r.EditID
		} else if r.Same {
			out.Edit = r.EditID
		}
	}
	return !(strip && out.Strip == 0) && !(r.Moved && out.React != "")
}

const sentSQL = `
UPDATE outbox SET state = 'sent', sent_id = $2, sent_at = $3, error = '' WHERE id = $1 AND state = 'pending'`

// Sent notes that a send was answered: it is never sent again.
func (s *Sender) Sent(ctx context.Context, id int64, messageID int, at time.Time) error {
	return s.do(ctx, "note a send", sentSQL, id, messageID, at)
}

const retrySQL = `UPDATE outbox SET attempts = attempts + 1, next_try = $2, error = $3 WHERE id = $1`

// Retry puts a send off.
func (s *Sender) Retry(ctx context.Context, id int64, next time.Time, why string) error {
	return s.do(ctx, "put a send off", retrySQL, id, next, clean(why))
}

const failSQL = `
UPDATE outbox SET state = 'failed', attempts = attempts + 1, error = $2 WHERE id = $1 AND state = 'pending'`

// Fail gives a send up; it is kept as failed, and its chat goes on.
func (s *Sender) Fail(ctx context.Context, id int64, why string) error {
	return s.do(ctx, "give a send up", failSQL, id, clean(why))
}

const lateSQL = `
WITH o AS (UPDATE outbox SET state = 'late' WHERE id = $1 AND state = 'pending' RETURNING job)
UPDATE job SET state = 'skipped', reason = 'could not be sent in time' FROM o WHERE job.id = o.job`

// Late drops what should not be sent any more, and notes its job as skipped.
func (s *Sender) Late(ctx context.Context, id int64) error {
	return s.do(ctx, "drop what is late", lateSQL, id)
}

// Moved carries a chat over to its new id.
func (s *Sender) Moved(ctx context.Context, from, to int64) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	tx, err := s.conn.BeginTxx(ctx, nil)
	if err != nil {
		return fmt.Errorf("ledger: move a chat: %w", err)
	}
	defer tx.Rollback() // after a commit it does nothing
	if err := (&Tx{tx: tx}).MoveChat(ctx, from, to); err != nil {
		return err
	}
	if err := tx.Commit(); err != nil {
		return fmt.Errorf("ledger: move a chat: %w", err)
	}
	return nil
}

func (s *Sender) do(ctx context.Context, what, query string, args ...any) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	if _, err := s.conn.ExecContext(ctx, query, args...); err != nil {
		return fmt.Errorf("ledger: %s: %w", what, err)
	}
	return nil
}
