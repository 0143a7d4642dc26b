package ledger

import (
	"context"
	"encoding/json"
	"fmt"
	"time"

	"leafround/core/entry"
)

// Asked is a question that the bot asked about a message.
type Asked struct {
	ID       int64
	Farm     int64 // 0: none
	Chat     int64
	Message  int64 // the message that was unclear, our number
	Revision int
	Person   int64 // who sent it
	Ask      entry.Ask
	AskedAt  time.Time
	State    string // "open", "settled" or "lapsed"
	Choice   int    // the option taken, from 0; -1 for none
	BotID    int    // Telegram's number of the bot's question; 0 while it isn't sent
	Outbox   int64
}

type askRow struct {
	ID       int64     `db:"id"`
	Farm     int64     `db:"farm"`
	Chat     int64     `db:"chat"`
	Message  int64     `db:"message"`
	Revision int       `db:"revision"`
	Person   int64     `db:"person"`
	Body     []byte    `db:"body"`
	AskedAt  time.Time `db:"asked_at"`
	State    string    `db:"state"`
	Choice   int       `db:"choice"`
	BotID    int       `db:"bot_id"`
	Outbox   int64     `db:"outbox"`
}

const askColumns = `a.id, COALESCE(a.farm, 0) AS farm, a.chat, a.message, a.revision, a.person, a.body, a.asked_at,
  a.state, COALESCE(a.choice, -1) AS choice, COALESCE(o.sent_id, 0) AS bot_id, COALESCE(a.outbox, 0) AS outbox`

const askFrom = ` FROM ask a LEFT JOIN outbox o ON o.id = a.outbox `

const openAskSQL = `
INSERT INTO ask (farm, chat, message, revision, person, body, asked_at)
VALUES ($1, $2, $3, $4, $5, $6, $7)
ON CONFLICT (message, revision) DO NOTHING RETURNING id`

// OpenAsk keeps a question back and gives its number; 0 for one that was asked
// already about this revision of the message.
func (t *Tx) OpenAsk(ctx context.Context, a Asked) (id int64, err error) {
	body, err := json.Marshal(a.Ask)
	if err != nil {
		return 0, fmt.Errorf("ledger: keep a question: %w", err)
	}
	_, err = t.get(ctx, "keep a question", &id, openAskSQL, orNull(a.Farm), a.Chat, a.Message, a.Revision,
		a.Person, string(body), a.AskedAt)
	return id, err
}

const askedInSQL = `UPDATE ask SET outbox = $2 WHERE id = $1`

// AskedIn notes the outbox row with which a question goes out.
func (t *Tx) AskedIn(ctx context.Context, ask, outbox int64) error {
	_, err := t.do(ctx, "note where a question went", askedInSQL, ask, outbox)
	return err
}

const askSQL = `SELECT ` + askColumns + askFrom + `WHERE a.id = $1`

// Asked gives a question by its number.
func (t *Tx) Asked(ctx context.Context, id int64) (Asked, bool, error) {
	return t.oneAsk(ctx, askSQL, id)
}

const askOfSQL = `SELECT ` + askColumns + askFrom + `WHERE a.message = $1 ORDER BY a.revision DESC LIMIT 1`

// AskedAbout gives the latest question about a message.
func (t *Tx) AskedAbout(ctx context.Context, message int64) (Asked, bool, error) {
	return t.oneAsk(ctx, askOfSQL, message)
}

const openAsksSQL = `SELECT ` + askColumns + askFrom + `WHERE a.chat = $1 AND a.state = 'open' ORDER BY a.asked_at DESC, a.id DESC`

// OpenAsks lists the questions that wait for an answer in a chat, latest first.
func (t *Tx) OpenAsks(ctx context.Context, chat int64) ([]Asked, error) {
	var rows []askRow
	if err := t.list(ctx, "list open questions", &rows, openAsksSQL, chat); err != nil {
		return nil, err
	}
	all := make([]Asked, len(rows))
	for i, r := range rows {
		var err error
		if all[i], err = r.asked(); err != nil {
			return nil, err
		}
	}
	return all, nil
}

const settleSQL = `
UPDATE ask SET state = 'settled', choice = $2, settled_by = $3, settled_at = $4
WHERE id = $1 AND state = 'open'`

// Settle answers a question with one of its options, -1 for none of them. It
// tells whether the question was still open: the first answer stands.
func (t *Tx) Settle(ctx context.Context, ask int64, choice int, by int64, at time.Time) (bool, error) {
	var c any
	if choice >= 0 {
		c = choice
	}
	n, err := t.do(ctx, "settle a question", settleSQL, ask, c, by, at)
	return n == 1, err
}

const lapseSQL = `UPDATE ask SET state = 'lapsed', settled_at = $2 WHERE id = $1 AND state = 'open'`

// Lapse closes a question that nobody answered.
func (t *Tx) Lapse(ctx context.Context, ask int64, at time.Time) (bool, error) {
	n, err := t.do(ctx, "let a question lapse", lapseSQL, ask, at)
	return n == 1, err
}

func (t *Tx) oneAsk(ctx context.Context, query string, arg int64) (Asked, bool, error) {
	var r askRow
	found, err := t.get(ctx, "read a question", &r, query, arg)
	if !found || err != nil {
		return Asked{}, false, err
	}
	a, err := r.asked()
	return a, err == nil, err
}

func (r askRow) asked() (Asked, error) {
	a := Asked{ID: r.ID, Farm: r.Farm, Chat: r.Chat, Message: r.Message, Revision: r.Revision, Person: r.Person,
		AskedAt: r.AskedAt.UTC(), State: r.State, Choice: r.Choice, BotID: r.BotID, Outbox: r.Outbox}
	if err := json.Unmarshal(r.Body, &a.Ask); err != nil {
		return a, fmt.Errorf("ledger: question %d: %w", r.ID, err)
	}
	return a, nil
}
