package ledger_test

import (
	"context"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"leafround/bot/chat"
	"leafround/bot/ledger"
	"leafround/bot/pgembed/pgtest"
	"leafround/core/entry"
)

// farmed gives a ledger with a farm in chat -100 and Ana on it.
func farmed(t *testing.T) (*ledger.Ledger, ledger.Farm) {
	t.Helper()
	book := pgtest.Ledger(t)
	var f ledger.Farm
	in(t, book, func(ctx context.Context, tx *ledger.Tx) (err error) {
		_, err = tx.MeetChat(ctx, -100, false, "Totara Bend")
		require.NoError(t, err)
		f, err = tx.NewFarm(ctx, "Totara Bend", "Pacific/Auckland")
		require.NoError(t, err)
		require.NoError(t, tx.SetChatFarm(ctx, -100, f.ID))
		_, err = tx.Meet(ctx, f.ID, 7, "Ana")
		return err
	})
	return book, f
}

func in(t *testing.T, book *ledger.Ledger, f func(context.Context, *ledger.Tx) error) {
	t.Helper()
	require.NoError(t, book.In(t.Context(), f))
}

func save(t *testing.T, ctx context.Context, tx *ledger.Tx, farm int64, id int, text string) ledger.Message {
	t.Helper()
	m, _, err := tx.SaveMessage(ctx, ledger.Message{Chat: -100, MessageID: id, Farm: farm, Person: 7, SentAt: noon, Text: text})
	require.NoError(t, err)
	return m
}

func rain(mm float64) entry.Entry { return entry.Rain{Date: entry.DateOf(noon), Mm: mm} }

func TestTheLogAfterAVersionIsWhatChangedSince(t *testing.T) {
	book, f := farmed(t)
	var first, second []entry.Logged
	var seen int64
	in(t, book, func(ctx context.Context, tx *ledger.Tx) (err error) {
		m := save(t, ctx, tx, f.ID, 1, "12 mm then 3 mm")
		first, err = tx.Append(ctx, ledger.Mark{Farm: f.ID, Person: 7, SentAt: noon, Message: m.ID}, []entry.Entry{rain(12), rain(3)})
		require.NoError(t, err)
		again, err := tx.Append(ctx, ledger.Mark{Farm: f.ID, Person: 7, SentAt: noon, Message: m.ID}, []entry.Entry{rain(99), rain(99)})
		require.Equal(t, first, again, "the same revision was logged twice")
		return err
	})
	in(t, book, func(ctx context.Context, tx *ledger.Tx) error {
		log, v, err := tx.Log(ctx, f.ID, 0)
		require.Equal(t, first, log)
		require.Equal(t, "Ana", log[0].Member)
		seen = v
		return err
	})
	in(t, book, func(ctx context.Context, tx *ledger.Tx) (err error) {
		m := save(t, ctx, tx, f.ID, 2, "undo")
		second, err = tx.Append(ctx, ledger.Mark{Farm: f.ID, Person: 7, SentAt: noon, Message: m.ID}, []entry.Entry{entry.Undo{}})
		require.NoError(t, err)
		n, err := tx.Replace(ctx, f.ID, []int64{first[1].ID}, second[0].ID)
		require.EqualValues(t, 1, n)
		require.NoError(t, err)
		n, err = tx.Replace(ctx, f.ID, []int64{first[1].ID}, first[0].ID)
		require.Zero(t, n, "what was withdrawn can't be withdrawn by another")
		return err
	})
	in(t, book, func(ctx context.Context, tx *ledger.Tx) error {
		log, v, err := tx.Log(ctx, f.ID, seen)
		require.Len(t, log, 2)
		require.Equal(t, second[0], log[0])
		require.Equal(t, first[1].ID, log[1].ID)
		require.Equal(t, second[0].ID, log[1].ReplacedBy)
		require.Greater(t, v, seen)
		return err
	})
}

// Two transactions append at once: the one that commits last has the later
// version, so nothing is missed by whoever asks from a version on.
func TestVersionsFollowCommits(t *testing.T) {
	book, f := farmed(t)
	began, finish := make(chan bool), make(chan bool)
	done := make(chan error, 1)
	go func() {
		done <- book.In(context.Background(), func(ctx context.Context, tx *ledger.Tx) error {
			m := save(t, ctx, tx, f.ID, 1, "1 mm")
			_, err := tx.Append(ctx, ledger.Mark{Farm: f.ID, Person: 7, SentAt: noon, Message: m.ID}, []entry.Entry{rain(1)})
			close(began)
			<-finish
			return err
		})
	}()
	<-began
	time.AfterFunc(50*time.Millisecond, func() { close(finish) })
	in(t, book, func(ctx context.Context, tx *ledger.Tx) error {
		m := save(t, ctx, tx, f.ID, 2, "2 mm")
		_, err := tx.Append(ctx, ledger.Mark{Farm: f.ID, Person: 7, SentAt: noon, Message: m.ID}, []entry.Entry{rain(2)})
		log, _, readErr := tx.Log(ctx, f.ID, 0)
		require.NoError(t, readErr)
		require.Len(t, log, 2, "it did not wait for the other")
		return err
	})
	require.NoError(t, <-done)
}

func TestAMessageIsKeptOnceAndItsEditsInOrder(t *testing.T) {
	book, f := farmed(t)
	in(t, book, func(ctx context.Context, tx *ledger.Tx) error {
		m := save(t, ctx, tx, f.ID, 1, "p12 2 2.5\x00 2")
		require.Equal(t, "p12 2 2.5 2", m.Text)
		_, fresh, err := tx.SaveMessage(ctx, ledger.Message{Chat: -100, MessageID: 1, Person: 8, SentAt: noon, Text: "other"})
		require.NoError(t, err)
		require.False(t, fresh)

		edited, changed, known, err := tx.Revise(ctx, -100, 1, "p13 2 2.5 2", noon.Add(time.Minute))
		require.NoError(t, err)
		require.True(t, changed && known)
		require.Equal(t, 1, edited.Revision)
		_, changed, _, err = tx.Revise(ctx, -100, 1, "p13 2 2.5 2", noon.Add(time.Minute))
		require.NoError(t, err)
		require.False(t, changed, "the same edit twice")
		_, changed, _, err = tx.Revise(ctx, -100, 1, "p11", noon.Add(30*time.Second))
		require.NoError(t, err)
		require.False(t, changed, "an edit older than the last")
		_, _, known, err = tx.Revise(ctx, -100, 99, "x", noon)
		require.NoError(t, err)
		require.False(t, known)
		texts, err := tx.Texts(ctx, m.ID)
		require.Equal(t, []string{"p12 2 2.5 2", "p13 2 2.5 2"}, texts)
		return err
	})
}

func TestAQuestionIsSettledOnce(t *testing.T) {
	book, f := farmed(t)
	in(t, book, func(ctx context.Context, tx *ledger.Tx) error {
		m := save(t, ctx, tx, f.ID, 1, "2 2.5 2")
		ask := entry.Ask{Reason: "Which paddock?", Options: []entry.Option{{Label: "12", Entries: []entry.Entry{entry.Count{Paddock: "12"}}}}}
		id, err := tx.OpenAsk(ctx, ledger.Asked{Farm: f.ID, Chat: -100, Message: m.ID, Person: 7, Ask: ask, AskedAt: noon})
		require.NoError(t, err)
		again, err := tx.OpenAsk(ctx, ledger.Asked{Farm: f.ID, Chat: -100, Message: m.ID, Person: 7, Ask: ask, AskedAt: noon})
		require.NoError(t, err)
		require.Zero(t, again)
		box, _, err := tx.Enqueue(ctx, ledger.Send{Key: "k1", Message: m.ID, Out: chat.Outgoing{Chat: -100, HTML: "Which paddock?"}})
		require.NoError(t, err)
		require.NoError(t, tx.AskedIn(ctx, id, box))

		open, err := tx.OpenAsks(ctx, -100)
		require.NoError(t, err)
		require.Len(t, open, 1)
		require.Equal(t, ask, open[0].Ask)
		require.Equal(t, box, open[0].Outbox)

		won, err := tx.Settle(ctx, id, 0, 7, noon)
		require.NoError(t, err)
		require.True(t, won)
		won, err = tx.Settle(ctx, id, -1, 8, noon)
		require.NoError(t, err)
		require.False(t, won)
		a, found, err := tx.Asked(ctx, id)
		require.True(t, found)
		require.Equal(t, "settled", a.State)
		require.Equal(t, 0, a.Choice)
		return err
	})
}

func TestExportTellsFarmsOfOneNameApart(t *testing.T) {
	book, f := farmed(t)
	in(t, book, func(ctx context.Context, tx *ledger.Tx) error {
		_, err := tx.MeetChat(ctx, -200, false, "other")
		require.NoError(t, err)
		g, err := tx.NewFarm(ctx, "Totara bend", "UTC")
		require.NoError(t, err)
		return tx.SetChatFarm(ctx, -200, g.ID)
	})
	_, _, err := book.Export(t.Context(), "Totara Bend", 0)
	require.EqualError(t, err, "2 farms are called Totara Bend: tell them apart with --chat and one of -100, -200")
	got, _, err := book.Export(t.Context(), "totara bend", -100)
	require.NoError(t, err)
	require.Equal(t, f.ID, got.ID)
	_, _, err = book.Export(t.Context(), "Elsewhere", 0)
	require.ErrorContains(t, err, "there is no farm called Elsewhere; there is Totara Bend")
}
