package ledger_test

import (
	"context"
	"fmt"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"leafround/bot/chat"
	"leafround/bot/ledger"
	"leafround/bot/pgembed/pgtest"
	"leafround/core/entry"
)

var noon = time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC)

func raw(id, chatID int64) chat.Raw {
	return chat.Raw{UpdateID: id, HasID: true, Chat: chatID, At: noon, JSON: fmt.Appendf(nil, `{"update_id":%d}`, id)}
}

// handle is the smallest handler that does all a real one does: it meets the
// chat and the sender, keeps the message, logs an entry and answers.
func handle(ctx context.Context, tx *ledger.Tx, row ledger.InboxRow) error {
	c, err := tx.MeetChat(ctx, row.Chat, false, "Totara Bend")
	if err != nil {
		return err
	}
	if c.Farm == 0 {
		f, err := tx.NewFarm(ctx, "Totara Bend", "Pacific/Auckland")
		if err != nil {
			return err
		}
		if err := tx.SetChatFarm(ctx, c.ID, f.ID); err != nil {
			return err
		}
		c.Farm = f.ID
	}
	if _, err := tx.LockFarm(ctx, c.Farm); err != nil {
		return err
	}
	if _, err := tx.Meet(ctx, c.Farm, 7, "Ana"); err != nil {
		return err
	}
	m, fresh, err := tx.SaveMessage(ctx, ledger.Message{Chat: c.ID, MessageID: int(row.UpdateID), Farm: c.Farm, Person: 7, SentAt: noon, Text: "12 mm"})
	if err != nil || !fresh {
		return err
	}
	mark := ledger.Mark{Farm: c.Farm, Person: 7, SentAt: noon, Message: m.ID}
	logged, err := tx.Append(ctx, mark, []entry.Entry{entry.Rain{Date: entry.DateOf(noon), Mm: float64(row.UpdateID)}})
	if err != nil {
		return err
	}
	out := chat.Outgoing{Chat: c.ID, ReplyTo: m.MessageID, HTML: fmt.Sprint("entry ", logged[0].ID)}
	_, _, err = tx.Enqueue(ctx, ledger.Send{Message: m.ID, Out: out})
	return err
}

func drain(t *testing.T, book *ledger.Ledger, h ledger.Handler) (n int) {
	t.Helper()
	for {
		did, err := book.Next(t.Context(), h)
		require.NoError(t, err)
		if !did {
			return n
		}
		n++
	}
}

func TestAnUpdateIsHandledOnceHoweverOftenItComes(t *testing.T) {
	book := pgtest.Ledger(t)
	require.NoError(t, book.Receive(t.Context(), []chat.Raw{raw(1, -100), raw(2, -100)}))
	require.NoError(t, book.Receive(t.Context(), []chat.Raw{raw(1, -100), raw(2, -100), raw(3, -200)}))
	require.Equal(t, 3, drain(t, book, handle))
	require.NoError(t, book.Receive(t.Context(), []chat.Raw{raw(3, -200)}))
	require.Equal(t, 0, drain(t, book, handle))

	_, log, err := book.Export(t.Context(), "totara bend", -100)
	require.NoError(t, err)
	require.Len(t, log, 2)
	require.Equal(t, entry.Rain{Date: entry.DateOf(noon), Mm: 1}, log[0].Entry)
	require.Equal(t, "Ana", log[0].Member)

	s, err := book.Sender(t.Context())
	require.NoError(t, err)
	defer s.Close()
	heads, err := s.Heads(t.Context())
	require.NoError(t, err)
	require.Len(t, heads, 2)
	out, ok, err := s.Load(t.Context(), heads[0].ID)
	require.NoError(t, err)
	require.True(t, ok)
	require.Equal(t, 1, out.ReplyTo)
}
