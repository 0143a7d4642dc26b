package ledger_test

import (
	"context"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"leafround/bot/chat"
	"leafround/bot/ledger"
	"leafround/core/entry"
)

func sender(t *testing.T, book *ledger.Ledger) *ledger.Sender {
	t.Helper()
	s, err := book.Sender(t.Context())
	require.NoError(t, err)
	t.Cleanup(func() { s.Close() })
	return s
}

func head(t *testing.T, s *ledger.Sender) chat.Due {
	t.Helper()
	heads, err := s.Heads(t.Context())
	require.NoError(t, err)
	require.Len(t, heads, 1)
	return heads[0]
}

func load(t *testing.T, s *ledger.Sender, id int64) chat.Outgoing {
	t.Helper()
	out, ok, err := s.Load(t.Context(), id)
	require.NoError(t, err)
	require.True(t, ok)
	return out
}

func TestTheSameKeyIsSentOnce(t *testing.T) {
	book, _ := farmed(t)
	send := ledger.Send{Key: "k", Out: chat.Outgoing{Chat: -100, HTML: "once"}}
	var first int64
	in(t, book, func(ctx context.Context, tx *ledger.Tx) (err error) {
		var fresh bool
		first, fresh, err = tx.Enqueue(ctx, send)
		require.True(t, fresh)
		return err
	})
	in(t, book, func(ctx context.Context, tx *ledger.Tx) error {
		id, fresh, err := tx.Enqueue(ctx, send)
		require.False(t, fresh)
		require.Equal(t, first, id)
		return err
	})
}

func TestThereIsOneSenderAtATime(t *testing.T) {
	book, _ := farmed(t)
	s, err := book.Sender(t.Context())
	require.NoError(t, err)
	_, err = book.Sender(t.Context())
	require.ErrorIs(t, err, ledger.ErrOtherSender)
	require.NoError(t, s.Close())
	sender(t, book)
}

func TestAnEditFindsItsMessageWhenTheTimeComes(t *testing.T) {
	book, f := farmed(t)
	var m ledger.Message
	in(t, book, func(ctx context.Context, tx *ledger.Tx) error {
		m = save(t, ctx, tx, f.ID, 1, "p12 2")
		id, _, err := tx.Enqueue(ctx, ledger.Send{Key: "k1", Message: m.ID, Out: chat.Outgoing{Chat: -100, HTML: "12: 2"}})
		require.NoError(t, err)
		_, _, err = tx.Enqueue(ctx, ledger.Send{Key: "k2", Message: m.ID, Edits: id, Out: chat.Outgoing{Chat: -100, HTML: "13: 2"}})
		require.NoError(t, err)
		_, _, err = tx.Enqueue(ctx, ledger.Send{Key: "k3", Edits: id, Out: chat.Outgoing{Chat: -100, Strip: 1}})
		return err
	})
	s := sender(t, book)
	d := head(t, s)
	require.NoError(t, s.Sent(t.Context(), d.ID, 55, noon))
	d = head(t, s)
	require.Equal(t, 55, load(t, s, d.ID).Edit)
	require.NoError(t, s.Sent(t.Context(), d.ID, 55, noon))
	d = head(t, s)
	out := load(t, s, d.ID)
	require.Equal(t, 55, out.Strip)
	require.Zero(t, out.Edit)

	in(t, book, func(ctx context.Context, tx *ledger.Tx) error {
		replies, err := tx.Replies(ctx, m.ID)
		require.NoError(t, err)
		require.Len(t, replies, 1)
		require.Equal(t, 55, replies[0].SentID)
		answered, found, err := tx.BotMessage(ctx, -100, 55)
		require.True(t, found)
		require.Equal(t, m.ID, answered.Message)
		return err
	})
}

func TestAnEditOfAMessageThatWasNeverSentIsSent(t *testing.T) {
	book, _ := farmed(t)
	in(t, book, func(ctx context.Context, tx *ledger.Tx) error {
		id, _, err := tx.Enqueue(ctx, ledger.Send{Key: "k4", Out: chat.Outgoing{Chat: -100, HTML: "first"}})
		require.NoError(t, err)
		_, _, err = tx.Enqueue(ctx, ledger.Send{Key: "k5", Edits: id, Out: chat.Outgoing{Chat: -100, HTML: "second"}})
		return err
	})
	s := sender(t, book)
	require.NoError(t, s.Fail(t.Context(), head(t, s).ID, "refused"))
	out := load(t, s, head(t, s).ID)
	require.Equal(t, "second", out.HTML)
	require.Zero(t, out.Edit)
}

func TestASupergroupCarriesEverythingOver(t *testing.T) {
	book, f := farmed(t)
	in(t, book, func(ctx context.Context, tx *ledger.Tx) error {
		require.NoError(t, tx.SetTopic(ctx, -100, 9))
		m := save(t, ctx, tx, f.ID, 1, "p12 2")
		for _, text := range []string{"one", "two"} {
			_, _, err := tx.Enqueue(ctx, ledger.Send{Key: text, Message: m.ID, Out: chat.Outgoing{Chat: -100, ReplyTo: 1, HTML: text}})
			require.NoError(t, err)
		}
		return nil
	})
	for range 2 { // told twice: by the old group and by the new
		in(t, book, func(ctx context.Context, tx *ledger.Tx) error { return tx.MoveChat(ctx, -100, -1001) })
	}
	in(t, book, func(ctx context.Context, tx *ledger.Tx) error {
		c, found, err := tx.Chat(ctx, -100)
		require.NoError(t, err)
		require.True(t, found)
		require.Equal(t, ledger.Chat{ID: -1001, Farm: f.ID, Title: "Totara Bend", Topic: 9}, c)
		_, _, err = tx.Enqueue(ctx, ledger.Send{Key: "k7", Out: chat.Outgoing{Chat: -100, HTML: "three"}})
		return err
	})
	s := sender(t, book)
	for _, want := range []string{"one", "two", "three"} {
		d := head(t, s)
		require.EqualValues(t, -1001, d.Chat)
		out := load(t, s, d.ID)
		require.Equal(t, chat.Outgoing{Chat: -1001, HTML: want}, out, "numbers of the old group are carried over")
		require.NoError(t, s.Sent(t.Context(), d.ID, 5, noon))
	}
}

func TestAJobRunsOnceADayAndALateSendSkipsIt(t *testing.T) {
	book, f := farmed(t)
	day := entry.DateOf(noon)
	in(t, book, func(ctx context.Context, tx *ledger.Tx) error { return tx.SetSummary(ctx, f.ID, 375, day) })
	runs := 0
	make := func(ctx context.Context, tx *ledger.Tx, job int64) error {
		runs++
		_, _, err := tx.Enqueue(ctx, ledger.Send{Key: "day", Job: job, Until: noon.Add(2 * time.Hour), Out: chat.Outgoing{Chat: -100, HTML: "morning"}})
		return err
	}
	ran, err := book.Job(t.Context(), f.ID, ledger.Daily, day, noon, func(context.Context, *ledger.Tx, int64) error { return context.DeadlineExceeded })
	require.ErrorIs(t, err, context.DeadlineExceeded)
	require.False(t, ran)
	for i := range 2 {
		ran, err := book.Job(t.Context(), f.ID, ledger.Daily, day, noon, make)
		require.NoError(t, err)
		require.Equal(t, i == 0, ran)
	}
	require.Equal(t, 1, runs)
	fresh, err := book.SkipJob(t.Context(), f.ID, ledger.Daily, day, noon, "late")
	require.NoError(t, err)
	require.False(t, fresh)

	s := sender(t, book)
	d := head(t, s)
	require.True(t, noon.Add(2*time.Hour).Equal(d.Until))
	require.NoError(t, s.Late(t.Context(), d.ID))
	heads, err := s.Heads(t.Context())
	require.NoError(t, err)
	require.Empty(t, heads)
	dailies, err := book.Dailies(t.Context())
	require.NoError(t, err)
	require.Equal(t, day.Time(), dailies[0].Last.UTC())
	require.Equal(t, 375, dailies[0].Minute)
}
