package ledger

import (
	"context"
	"fmt"
	"strings"

	"leafround/core/entry"
)

const namedSQL = `
SELECT f.id, f.name, f.zone, f.version, f.summary_minute, f.summary_from FROM farm f
WHERE lower(f.name) = lower($1)
  AND ($2 = 0 OR EXISTS (SELECT FROM chat c WHERE c.farm = f.id AND c.id = $2))
ORDER BY f.id`

const chatIDsSQL = `SELECT id FROM chat WHERE farm = $1 AND NOT private ORDER BY id`

const exportSQL = `SELECT ` + entryColumns + entryFrom + `WHERE e.farm = $1 ORDER BY e.sent_at, e.id`

// Export gives a farm's whole log, oldest first. A chat other than 0 tells
// farms of one name apart. What the user got wrong is one plain sentence.
func (l *Ledger) Export(ctx context.Context, name string, chat int64) (f Farm, log []entry.Logged, err error) {
	err = l.In(ctx, func(ctx context.Context, tx *Tx) error {
		if f, err = tx.named(ctx, name, chat); err != nil {
			return err
		}
		log, err = tx.entries(ctx, exportSQL, f.ID)
		return err
	})
	return f, log, err
}

func (t *Tx) named(ctx context.Context, name string, chat int64) (Farm, error) {
	var farms []Farm
	if err := t.list(ctx, "find a farm", &farms, namedSQL, strings.TrimSpace(name), chat); err != nil {
		return Farm{}, err
	}
	switch len(farms) {
	case 1:
		return farms[0], nil
	case 0:
		return Farm{}, t.unknownFarm(ctx, name, chat)
	}
	var chats []string
	for _, f := range farms {
		var ids []int64
		if err := t.list(ctx, "list a farm's chats", &ids, chatIDsSQL, f.ID); err != nil {
			return Farm{}, err
		}
		for _, id := range ids {
			chats = append(chats, fmt.Sprint(id))
		}
	}
	return Farm{}, fmt.Errorf("%d farms are called %s: tell them apart with --chat and one of %s", len(farms), name, strings.Join(chats, ", "))
}

const farmNamesSQL = `SELECT DISTINCT name FROM farm ORDER BY name LIMIT 10`

func (t *Tx) unknownFarm(ctx context.Context, name string, chat int64) error {
	var names []string
	if err := t.list(ctx, "list the farms", &names, farmNamesSQL); err != nil {
		return err
	}
	where := ""
	if chat != 0 {
		where = fmt.Sprintf(" in chat %d", chat)
	}
	if len(names) == 0 {
		return fmt.Errorf("there is no farm called %s%s: no farm has been set up yet", name, where)
	}
	return fmt.Errorf("there is no farm called %s%s; there is %s", name, where, strings.Join(names, ", "))
}
