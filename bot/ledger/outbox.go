package ledger

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"time"

	"leafround/bot/chat"
)

// Send is something to be sent.
type Send struct {
	// Key identifies it: the same key twice is sent once. Empty stands for the
	// update or the job that is being handled and a running number.
	Key     string
	Out     chat.Outgoing
	Message int64     // the message that it answers, our number; 0 for none
	Edits   int64     // the outbox row whose message it edits (or strips); 0 for none
	Job     int64     // the job whose result it is; 0 for none
	Until   time.Time // not to be sent after; zero: always
}

// takeSeqSQL numbers what goes to a chat, in commit order since the chat's row
// is held till then.
const takeSeqSQL = `
UPDATE chat SET out_seq = out_seq + 1 WHERE id = (` + movedSQL + `) RETURNING id, out_seq`

const enqueuedSQL = `SELECT id FROM outbox WHERE key = $1`

const enqueueSQL = `
INSERT INTO outbox (key, chat, seq, payload, message, edits, job, until)
VALUES ($1, $2, $3, $4, $5, $6, $7, $8) RETURNING id`

// Enqueue puts something into the outbox, after all that its chat has waiting.
// fresh is false where the key was there already. With Edits the message to
// edit is found when the time comes, since it may not be sent yet; where it
// was never sent, the text is sent as a message of its own.
func (t *Tx) Enqueue(ctx context.Context, s Send) (id int64, fresh bool, err error) {
	if s.Key == "" && t.source == "" {
		return 0, false, errors.New("ledger: enqueue: neither a key nor an update or a job to be known by")
	}
	if s.Key == "" {
		t.sends++
		s.Key = fmt.Sprintf("%s/%d", t.source, t.sends)
	}
	var to struct {
		ID  int64 `db:"id"`
		Seq int64 `db:"out_seq"`
	}
	met, err := t.get(ctx, "enqueue", &to, takeSeqSQL, s.Out.Chat)
	if err == nil && !met {
		err = fmt.Errorf("ledger: enqueue: chat %d was never met", s.Out.Chat)
	}
	if err != nil {
		return 0, false, err
	}
	if known, err := t.get(ctx, "enqueue", &id, enqueuedSQL, s.Key); known || err != nil {
		return id, false, err
	}
	payload, err := json.Marshal(s.Out)
	if err != nil {
		return 0, false, fmt.Errorf("ledger: enqueue: %w", err)
	}
	var until any
	if !s.Until.IsZero() {
		until = s.Until
	}
	if _, err := t.get(ctx, "enqueue", &id, enqueueSQL, s.Key, to.ID, to.Seq, string(payload),
		orNull(s.Message), orNull(s.Edits), orNull(s.Job), until); err != nil {
		return 0, false, err
	}
	_, err = t.do(ctx, "enqueue", ringSQL, Outbox)
	return id, true, err
}

// Sent is something that was put into the outbox, and what became of it.
type Sent struct {
	ID      int64         `db:"id"`
	Chat    int64         `db:"chat"`
	Message int64         `db:"message"` // that it answers, 0 for none
	SentID  int           `db:"sent_id"` // Telegram's number; 0 while it isn't sent
	State   string        `db:"state"`   // "pending", "sent", "failed" or "late"
	Out     chat.Outgoing `db:"-"`
	Payload []byte        `db:"payload"`
}

const sentColumns = `id, chat, COALESCE(message, 0) AS message, sent_id, state, payload`

const repliesSQL = `SELECT ` + sentColumns + ` FROM outbox WHERE message = $1 AND edits IS NULL ORDER BY seq`

// Replies gives what the bot said to a message, in order; what edited it later
// is left out.
func (t *Tx) Replies(ctx context.Context, message int64) ([]Sent, error) {
	var all []Sent
	if err := t.list(ctx, "list replies", &all, repliesSQL, message); err != nil {
		return nil, err
	}
	for i := range all {
		if err := json.Unmarshal(all[i].Payload, &all[i].Out); err != nil {
			return nil, fmt.Errorf("ledger: outbox %d: %w", all[i].ID, err)
		}
	}
	return all, nil
}

const botMessageSQL = `SELECT ` + sentColumns + ` FROM outbox WHERE chat = $1 AND sent_id = $2 AND edits IS NULL ORDER BY id DESC LIMIT 1`

// BotMessage gives what the bot sent under one of Telegram's numbers; its
// Message is the one that it answered.
func (t *Tx) BotMessage(ctx context.Context, chat int64, messageID int) (s Sent, found bool, err error) {
	found, err = t.get(ctx, "find a message of the bot", &s, botMessageSQL, chat, messageID)
	if err != nil || !found {
		return s, false, err
	}
	if err := json.Unmarshal(s.Payload, &s.Out); err != nil {
		return s, false, fmt.Errorf("ledger: outbox %d: %w", s.ID, err)
	}
	return s, true, nil
}
