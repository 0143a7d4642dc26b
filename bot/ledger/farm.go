package ledger

import (
	"context"
	"fmt"
	"time"

	"leafround/core/entry"
)

// Farm is a farm's row: what must be known without folding its log.
type Farm struct {
	ID            int64      `db:"id"`
	Name          string     `db:"name"`
	Zone          string     `db:"zone"`
	Version       int64      `db:"version"`        // counts the changes of its log
	SummaryMinute *int       `db:"summary_minute"` // of the local day; nil: no summary
	SummaryFrom   *time.Time `db:"summary_from"`   // the first day with one, midnight UTC
}

const farmColumns = `id, name, zone, version, summary_minute, summary_from`

const newFarmSQL = `INSERT INTO farm (name, zone) VALUES ($1, $2) RETURNING ` + farmColumns

// NewFarm makes a farm with an empty log.
func (t *Tx) NewFarm(ctx context.Context, name, zone string) (Farm, error) {
	var f Farm
	_, err := t.get(ctx, "make a farm", &f, newFarmSQL, clean(name), zone)
	return f, err
}

const lockFarmSQL = `SELECT ` + farmColumns + ` FROM farm WHERE id = $1 FOR UPDATE`

// LockFarm gives a farm and holds it until the transaction ends: nobody else
// changes its log meanwhile.
func (t *Tx) LockFarm(ctx context.Context, id int64) (Farm, error) {
	return t.farm(ctx, lockFarmSQL, id)
}

const farmSQL = `SELECT ` + farmColumns + ` FROM farm WHERE id = $1`

// Farm gives a farm without holding it.
func (t *Tx) Farm(ctx context.Context, id int64) (Farm, error) { return t.farm(ctx, farmSQL, id) }

func (t *Tx) farm(ctx context.Context, query string, id int64) (Farm, error) {
	var f Farm
	found, err := t.get(ctx, "read a farm", &f, query, id)
	if err == nil && !found {
		err = fmt.Errorf("ledger: there is no farm %d", id)
	}
	return f, err
}

const nameFarmSQL = `UPDATE farm SET name = $2, zone = $3 WHERE id = $1`

// NameFarm changes a farm's name and zone.
func (t *Tx) NameFarm(ctx context.Context, id int64, name, zone string) error {
	_, err := t.do(ctx, "name a farm", nameFarmSQL, id, clean(name), zone)
	return err
}

const setSummarySQL = `UPDATE farm SET summary_minute = $2, summary_from = $3 WHERE id = $1`

// SetSummary sets the minute of the local day at which the summary is due and
// the first day that has one; a negative minute means no summary.
func (t *Tx) SetSummary(ctx context.Context, id int64, minute int, from entry.Date) error {
	var m, day any
	if minute >= 0 {
		m, day = minute, from.String()
	}
	_, err := t.do(ctx, "set the summary", setSummarySQL, id, m, day)
	return err
}

const farmsOfSQL = `
SELECT ` + farmColumns + ` FROM farm
WHERE id IN (SELECT farm FROM member WHERE person = $1) ORDER BY id`

// FarmsOf gives the farms on which a person has been met.
func (t *Tx) FarmsOf(ctx context.Context, person int64) ([]Farm, error) {
	var farms []Farm
	err := t.list(ctx, "list a person's farms", &farms, farmsOfSQL, person)
	return farms, err
}

const setKeepSQL = `
INSERT INTO keep (farm, key, value) VALUES ($1, $2, $3)
ON CONFLICT (farm, key) DO UPDATE SET value = EXCLUDED.value`

// Keep remembers a JSON value for a farm, beside its log.
func (t *Tx) Keep(ctx context.Context, farm int64, key string, value []byte) error {
	_, err := t.do(ctx, "keep a value", setKeepSQL, farm, key, string(value))
	return err
}

const keptSQL = `SELECT value FROM keep WHERE farm = $1 AND key = $2`

// Kept gives what Keep remembered; nil where nothing was.
func (t *Tx) Kept(ctx context.Context, farm int64, key string) ([]byte, error) {
	var value []byte
	_, err := t.get(ctx, "read a kept value", &value, keptSQL, farm, key)
	return value, err
}
