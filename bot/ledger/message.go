package ledger

import (
	"context"
	"fmt"
	"time"
)

// Message is one that the bot has read.
type Message struct {
	ID        int64     `db:"id"` // ours; entries of one message share it
	Chat      int64     `db:"chat"`
	MessageID int       `db:"message_id"` // Telegram's, unique in its chat
	Farm      int64     `db:"farm"`       // 0: none
	Person    int64     `db:"person"`
	SentAt    time.Time `db:"sent_at"`
	Text      string    `db:"text"` // as it reads now
	Topic     int       `db:"topic"`
	ReplyTo   int       `db:"reply_to"`
	Revision  int       `db:"revision"` // edits so far
	State     string    `db:"state"`    // the handler's own word: "read", "asked", ...
}

const messageColumns = `id, chat, message_id, COALESCE(farm, 0) AS farm, person, sent_at, text, topic, reply_to, revision, state`

const saveMessageSQL = `
INSERT INTO message (chat, message_id, farm, person, sent_at, text, topic, reply_to, state)
VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9)
ON CONFLICT (chat, message_id) DO NOTHING RETURNING ` + messageColumns

const saveRevisionSQL = `INSERT INTO revision (message, revision, text, at) VALUES ($1, $2, $3, $4) ON CONFLICT DO NOTHING`

// SaveMessage keeps a message. One that is known already is given as it is
// kept, with fresh false. Its chat must have been met.
func (t *Tx) SaveMessage(ctx context.Context, m Message) (kept Message, fresh bool, err error) {
	fresh, err = t.get(ctx, "save a message", &kept, saveMessageSQL, m.Chat, m.MessageID, orNull(m.Farm),
		m.Person, m.SentAt, clean(m.Text), m.Topic, m.ReplyTo, m.State)
	if err != nil {
		return kept, false, err
	}
	if fresh {
		_, err = t.do(ctx, "save a message", saveRevisionSQL, kept.ID, 0, kept.Text, kept.SentAt)
		return kept, true, err
	}
	kept, found, err := t.MessageAt(ctx, m.Chat, m.MessageID)
	if err == nil && !found {
		err = fmt.Errorf("ledger: message %d of chat %d is neither new nor known", m.MessageID, m.Chat)
	}
	return kept, false, err
}

const messageAtSQL = `SELECT ` + messageColumns + ` FROM message WHERE chat = $1 AND message_id = $2`

// MessageAt gives a message by Telegram's number.
func (t *Tx) MessageAt(ctx context.Context, chat int64, messageID int) (m Message, found bool, err error) {
	found, err = t.get(ctx, "read a message", &m, messageAtSQL, chat, messageID)
	return m, found, err
}

const messageSQL = `SELECT ` + messageColumns + ` FROM message WHERE id = $1`

// Message gives a message by our number.
func (t *Tx) Message(ctx context.Context, id int64) (m Message, found bool, err error) {
	found, err = t.get(ctx, "read a message", &m, messageSQL, id)
	return m, found, err
}

// reviseSQL takes an edit that is newer than what is kept and says something
// else.
const reviseSQL = `
UPDATE message m SET text = $3, revision = revision + 1
WHERE chat = $1 AND message_id = $2 AND text <> $3
  AND $4 >= (SELECT max(at) FROM revision r WHERE r.message = m.id)
RETURNING ` + messageColumns

// Revise keeps an edit as a new revision. changed is false for one that says
// what is kept already or is older than it; known is false for a message that
// was never read.
func (t *Tx) Revise(ctx context.Context, chat int64, messageID int, text string, at time.Time) (m Message, changed, known bool, err error) {
	changed, err = t.get(ctx, "revise a message", &m, reviseSQL, chat, messageID, clean(text), at)
	if err != nil {
		return m, false, false, err
	}
	if changed {
		_, err = t.do(ctx, "revise a message", saveRevisionSQL, m.ID, m.Revision, m.Text, at)
		return m, true, true, err
	}
	m, known, err = t.MessageAt(ctx, chat, messageID)
	return m, false, known, err
}

const setStateSQL = `UPDATE message SET state = $2 WHERE id = $1`

// SetState notes the handler's word for what became of a message.
func (t *Tx) SetState(ctx context.Context, id int64, state string) error {
	_, err := t.do(ctx, "set a message's state", setStateSQL, id, state)
	return err
}

const setMessageFarmSQL = `UPDATE message SET farm = $2 WHERE id = $1`

// SetMessageFarm says which farm a message turned out to speak of.
func (t *Tx) SetMessageFarm(ctx context.Context, id, farm int64) error {
	_, err := t.do(ctx, "give a message its farm", setMessageFarmSQL, id, orNull(farm))
	return err
}

const recentSQL = `
SELECT ` + messageColumns + ` FROM message
WHERE farm = $1 AND person = $2 AND sent_at BETWEEN $3 AND $4
ORDER BY sent_at DESC, id DESC LIMIT $5`

// Recent gives a person's latest messages on a farm, latest first.
func (t *Tx) Recent(ctx context.Context, farm, person int64, since, until time.Time, atMost int) ([]Message, error) {
	var all []Message
	err := t.list(ctx, "list recent messages", &all, recentSQL, farm, person, since, until, atMost)
	return all, err
}

const textsSQL = `SELECT text FROM revision WHERE message = $1 ORDER BY revision`

// Texts gives what a message said, as first sent and after each edit.
func (t *Tx) Texts(ctx context.Context, id int64) ([]string, error) {
	var texts []string
	err := t.list(ctx, "read a message's edits", &texts, textsSQL, id)
	return texts, err
}
