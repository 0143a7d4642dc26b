package ledger

import (
	"context"
	"fmt"
	"time"

	"github.com/lib/pq"

	"leafround/core/entry"
)

// Mark says where entries come from.
type Mark struct {
	Farm     int64
	Person   int64
	Manager  bool      // the person was a manager then
	SentAt   time.Time // when the message was written
	Message  int64     // our number of it
	Revision int       // of the message
	First    int       // ordinal of the first entry, where a message's entries come in parts
}

// entryRow is an entry as its table has it.
type entryRow struct {
	ID         int64     `db:"id"`
	Version    int64     `db:"version"`
	Person     int64     `db:"person"`
	Name       string    `db:"name"`
	Manager    bool      `db:"manager"`
	SentAt     time.Time `db:"sent_at"`
	Message    int64     `db:"message"`
	Body       []byte    `db:"body"`
	ReplacedBy int64     `db:"replaced_by"`
}

const entryColumns = `e.id, e.version, e.person, m.name, e.manager, e.sent_at, e.message, e.body,
  COALESCE(e.replaced_by, 0) AS replaced_by`

const entryFrom = ` FROM entry e JOIN member m ON m.farm = e.farm AND m.person = e.person `

const bumpSQL = `UPDATE farm SET version = version + 1 WHERE id = $1 RETURNING version`

// appendSQL takes the entries as lists, so that ten years of weather go in as
// one statement.
const appendSQL = `
INSERT INTO entry (farm, version, person, manager, sent_at, message, revision, ordinal, kind, body)
SELECT $1, $2, $3, $4, $5, $6, $7, $8::int + e.place - 1, e.kind, e.body::jsonb
FROM unnest($9::text[], $10::text[]) WITH ORDINALITY AS e (kind, body, place)
ON CONFLICT (message, revision, ordinal) DO NOTHING`

const appendedSQL = `SELECT ` + entryColumns + entryFrom + `
WHERE e.message = $1 AND e.revision = $2 AND e.ordinal BETWEEN $3 AND $4 ORDER BY e.ordinal`

// Append adds entries to a farm's log and gives them as they are kept. Entries
// that the log has from this revision of the message stay as they are. The
// person must have been met on the farm.
func (t *Tx) Append(ctx context.Context, m Mark, entries []entry.Entry) ([]entry.Logged, error) {
	if len(entries) == 0 {
		return nil, nil
	}
	version, err := t.bump(ctx, m.Farm)
	if err != nil {
		return nil, err
	}
	kinds, bodies := make([]string, len(entries)), make([]string, len(entries))
	for i, e := range entries {
		body, err := entry.Encode(e)
		if err != nil {
			return nil, fmt.Errorf("ledger: append: %w", err)
		}
		kinds[i], bodies[i] = string(e.Kind()), string(body)
	}
	if _, err := t.do(ctx, "append entries", appendSQL, m.Farm, version, m.Person, m.Manager, m.SentAt,
		m.Message, m.Revision, m.First, pq.Array(kinds), pq.Array(bodies)); err != nil {
		return nil, err
	}
	return t.entries(ctx, appendedSQL, m.Message, m.Revision, m.First, m.First+len(entries)-1)
}

// bump counts a change of a farm's log, and so holds the farm.
func (t *Tx) bump(ctx context.Context, farm int64) (version int64, err error) {
	found, err := t.get(ctx, "count a change", &version, bumpSQL, farm)
	if err == nil && !found {
		err = fmt.Errorf("ledger: there is no farm %d", farm)
	}
	return version, err
}

const replaceSQL = `
UPDATE entry SET replaced_by = $3, version = $4
WHERE farm = $1 AND id = ANY($2) AND replaced_by IS NULL AND id <> $3`

// Replace notes that entries were mended or withdrawn by another; one that was
// already stays with the first. It tells how many it changed.
func (t *Tx) Replace(ctx context.Context, farm int64, ids []int64, by int64) (int64, error) {
	if len(ids) == 0 {
		return 0, nil
	}
	version, err := t.bump(ctx, farm)
	if err != nil {
		return 0, err
	}
	return t.do(ctx, "replace entries", replaceSQL, farm, pq.Array(ids), by, version)
}

const replaceEachSQL = `
UPDATE entry SET replaced_by = p.by, version = $4
FROM unnest($2::bigint[], $3::bigint[]) AS p (old, by)
WHERE farm = $1 AND id = p.old AND replaced_by IS NULL AND id <> p.by`

// ReplaceEach is Replace for many pairs: each old entry by its own new one.
func (t *Tx) ReplaceEach(ctx context.Context, farm int64, old, by []int64) (int64, error) {
	if len(old) == 0 {
		return 0, nil
	}
	version, err := t.bump(ctx, farm)
	if err != nil {
		return 0, err
	}
	return t.do(ctx, "replace entries", replaceEachSQL, farm, pq.Array(old), pq.Array(by), version)
}

const logSQL = `SELECT ` + entryColumns + entryFrom + `
WHERE e.farm = $1 AND e.version > $2 ORDER BY e.version, e.id`

// Log gives what has changed in a farm's log after a version, in commit order:
// new entries, and older ones that were replaced since (their ReplacedBy is
// set now). With 0 it gives all. The version is the one to ask from next time.
func (t *Tx) Log(ctx context.Context, farm, after int64) (log []entry.Logged, version int64, err error) {
	var rows []entryRow
	if err := t.list(ctx, "read the log", &rows, logSQL, farm, after); err != nil {
		return nil, 0, err
	}
	version = after
	if len(rows) > 0 {
		version = rows[len(rows)-1].Version
	}
	log, err = decodeAll(rows)
	return log, version, err
}

const entriesSQL = `SELECT ` + entryColumns + entryFrom + `
WHERE e.message = $1 ORDER BY e.revision, e.ordinal`

// Entries gives what a message has logged, all its revisions together, whether
// it stands or not.
func (t *Tx) Entries(ctx context.Context, message int64) ([]entry.Logged, error) {
	return t.entries(ctx, entriesSQL, message)
}

const entryByIDSQL = `SELECT ` + entryColumns + entryFrom + `WHERE e.farm = $1 AND e.id = ANY($2) ORDER BY e.id`

// EntriesByID gives entries of a farm by their numbers.
func (t *Tx) EntriesByID(ctx context.Context, farm int64, ids ...int64) ([]entry.Logged, error) {
	return t.entries(ctx, entryByIDSQL, farm, pq.Array(ids))
}

func (t *Tx) entries(ctx context.Context, query string, args ...any) ([]entry.Logged, error) {
	var rows []entryRow
	if err := t.list(ctx, "read entries", &rows, query, args...); err != nil {
		return nil, err
	}
	return decodeAll(rows)
}

func decodeAll(rows []entryRow) ([]entry.Logged, error) {
	log := make([]entry.Logged, len(rows))
	for i, r := range rows {
		e, err := entry.Decode(r.Body)
		if err != nil {
			return nil, fmt.Errorf("ledger: entry %d: %w", r.ID, err)
		}
		log[i] = entry.Logged{ID: r.ID, Entry: e, SentAt: r.SentAt.UTC(), MemberID: r.Person, Member: r.Name,
			Manager: r.Manager, MessageID: r.Message, ReplacedBy: r.ReplacedBy}
	}
	return log, nil
}
