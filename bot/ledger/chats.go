package ledger

import "context"

// Chat is a chat's row.
type Chat struct {
	ID      int64  `db:"id"`
	Farm    int64  `db:"farm"` // 0: none yet
	Private bool   `db:"private"`
	Title   string `db:"title"`
	Topic   int    `db:"topic"` // where the summary goes
	Gone    bool   `db:"gone"`  // the bot was removed
}

const chatColumns = `id, COALESCE(farm, 0) AS farm, private, title, topic, gone`

const meetChatSQL = `
INSERT INTO chat (id, private, title) VALUES ($1, $2, $3)
ON CONFLICT (id) DO UPDATE SET gone = false,
  title = CASE WHEN EXCLUDED.title = '' THEN chat.title ELSE EXCLUDED.title END`

// MeetChat notes that the bot is in a chat, and gives what is known of it. For
// a group that became a supergroup it gives the supergroup.
func (t *Tx) MeetChat(ctx context.Context, id int64, private bool, title string) (Chat, error) {
	if _, err := t.do(ctx, "meet a chat", meetChatSQL, id, private, clean(title)); err != nil {
		return Chat{}, err
	}
	c, _, err := t.Chat(ctx, id)
	return c, err
}

// movedSQL follows a chat to what it became.
const movedSQL = `
WITH RECURSIVE way AS (
  SELECT id, moved_to FROM chat WHERE id = $1
  UNION
  SELECT c.id, c.moved_to FROM chat c JOIN way w ON c.id = w.moved_to)
SELECT id FROM way WHERE moved_to IS NULL`

const chatSQL = `SELECT ` + chatColumns + ` FROM chat WHERE id = (` + movedSQL + `)`

// Chat gives a chat, by its id of today or by one that it had before.
func (t *Tx) Chat(ctx context.Context, id int64) (c Chat, found bool, err error) {
	found, err = t.get(ctx, "read a chat", &c, chatSQL, id)
	return c, found, err
}

const setChatFarmSQL = `UPDATE chat SET farm = $2 WHERE id = (` + movedSQL + `)`

// SetChatFarm says which farm a chat speaks of; 0 for none.
func (t *Tx) SetChatFarm(ctx context.Context, id, farm int64) error {
	_, err := t.do(ctx, "give a chat its farm", setChatFarmSQL, id, orNull(farm))
	return err
}

const setTopicSQL = `UPDATE chat SET topic = $2 WHERE id = (` + movedSQL + `)`

// SetTopic says in which forum topic of a chat the summary goes.
func (t *Tx) SetTopic(ctx context.Context, id int64, topic int) error {
	_, err := t.do(ctx, "set the topic", setTopicSQL, id, topic)
	return err
}

const chatGoneSQL = `UPDATE chat SET gone = $2 WHERE id = $1`

// ChatGone notes that the bot was removed from a chat, or is back.
func (t *Tx) ChatGone(ctx context.Context, id int64, gone bool) error {
	_, err := t.do(ctx, "note a removal", chatGoneSQL, id, gone)
	return err
}

const groupsSQL = `
SELECT ` + chatColumns + ` FROM chat
WHERE farm = $1 AND NOT private AND NOT gone AND moved_to IS NULL ORDER BY id`

// Groups lists the groups of a farm in which the bot is.
func (t *Tx) Groups(ctx context.Context, farm int64) ([]Chat, error) {
	var all []Chat
	err := t.list(ctx, "list a farm's groups", &all, groupsSQL, farm)
	return all, err
}

const (
	moveInSQL = `
INSERT INTO chat (id, farm, private, title, topic, out_seq)
SELECT $2, farm, private, title, topic, out_seq FROM chat WHERE id = $1
ON CONFLICT (id) DO UPDATE SET farm = COALESCE(chat.farm, EXCLUDED.farm), moved_to = NULL`
	moveOutSQL = `UPDATE chat SET moved_to = $2 WHERE id = $1 AND id <> $2`
	moveSeqSQL = `
UPDATE chat SET out_seq = GREATEST(out_seq, (SELECT COALESCE(max(seq), 0) FROM outbox WHERE chat = $1))
WHERE id = $2`
	moveSendSQL = `
UPDATE outbox o SET chat = $2, moved = true, next_try = '-infinity', seq = c.out_seq + n.rank
FROM chat c, (SELECT id, row_number() OVER (ORDER BY seq) AS rank FROM outbox
              WHERE chat = $1 AND state = 'pending') n
WHERE c.id = $2 AND o.id = n.id`
	moveNextSQL = `
UPDATE chat SET out_seq = GREATEST(out_seq, (SELECT COALESCE(max(seq), 0) FROM outbox WHERE chat = $1))
WHERE id = $1`
)

// MoveChat carries everything over from a group to the supergroup that it has
// become: its farm, its settings, and what still waits to be sent there. A
// second time it changes nothing.
func (t *Tx) MoveChat(ctx context.Context, from, to int64) error {
	if from == to {
		return nil
	}
	steps := []struct {
		query string
		args  []any
	}{
		{meetChatSQL, []any{from, false, ""}},
		{moveInSQL, []any{from, to}},
		{moveOutSQL, []any{from, to}},
		{moveSeqSQL, []any{from, to}},
		{moveSendSQL, []any{from, to}},
		{moveNextSQL, []any{to}},
	}
	for _, s := range steps {
		if _, err := t.do(ctx, "move a chat", s.query, s.args...); err != nil {
			return err
		}
	}
	return nil
}
