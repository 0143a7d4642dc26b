package bot

import (
	"encoding/json"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"leafround/bot/chat"
	"leafround/bot/ledger"
	"leafround/bot/pgembed/pgtest"
)

func TestMain(m *testing.M) { pgtest.Main(m) }

// bench is a bot over an empty ledger that is fed Incoming values as they are.
type bench struct {
	t    *testing.T
	book *ledger.Ledger
	bot  *Bot
	n    int64
	said []Outcome
}

func newBench(t *testing.T, o Options) *bench {
	b := &bench{t: t, book: pgtest.Open(t, pgtest.URL(t), ledger.Options{Attempts: 2,
		Backoff: func(int) time.Duration { return 0 }})}
	o.Decode = func(raw []byte) (in chat.Incoming, err error) {
		err = json.Unmarshal(raw, &in)
		return in, err
	}
	o.Observe = func(out Outcome) { b.said = append(b.said, out) }
	b.bot = New(b.book, o)
	return b
}

// take brings one update and handles all that waits.
func (b *bench) take(in chat.Incoming) []Outcome {
	b.t.Helper()
	b.n++
	in.UpdateID = b.n
	raw, err := json.Marshal(in)
	require.NoError(b.t, err)
	return b.raw(raw)
}

func (b *bench) raw(raw []byte) []Outcome {
	b.t.Helper()
	b.said = nil
	require.NoError(b.t, b.book.Receive(b.t.Context(), []chat.Raw{{UpdateID: b.n, HasID: true, Chat: -1, JSON: raw, At: time.Now()}}))
	for range 200 {
		did, err := b.bot.Step(b.t.Context())
		require.NoError(b.t, err)
		if w, err := b.book.Waiting(b.t.Context()); !did && err == nil && w.Inbox == 0 {
			return b.said
		}
		if !did {
			time.Sleep(20 * time.Millisecond)
		}
	}
	require.Fail(b.t, "the inbox does not empty")
	return nil
}

func message(id int, text string) chat.Incoming {
	return chat.Incoming{Kind: chat.Message, Chat: -1, From: chat.Person{ID: 5, Name: "Ana"}, MessageID: id,
		SentAt: time.Date(2026, 11, 16, 0, 0, id, 0, time.UTC), Text: text}
}

// An update that can't be decoded is kept as failed; the loop goes on.
func TestMalformedUpdateIsKeptAndTheNextIsHandled(t *testing.T) {
	b := newBench(t, Options{})
	b.n++
	require.Empty(t, b.raw([]byte(`{"Kind": 7}`)))
	failed, err := b.book.Failed(t.Context())
	require.NoError(t, err)
	require.Len(t, failed, 1)
	require.Len(t, b.take(message(1, "set up Totara Bend, Pacific/Auckland"))[0].Replies, 1)
}

// What no text can be read from, and what is of no use, is met with silence.
func TestSilenceWhereAPersonWouldBeSilent(t *testing.T) {
	b := newBench(t, Options{})
	b.take(message(1, "set up Totara Bend, Pacific/Auckland"))
	photo := message(2, "")
	photo.Media = "photo"
	other := chat.Incoming{Kind: chat.Other, Chat: -1}
	robot := message(3, "p12 2 2 2")
	robot.From.IsBot = true
	for _, in := range []chat.Incoming{photo, other, robot} {
		for _, out := range b.take(in) {
			require.Empty(t, out.Replies)
			require.Empty(t, out.Sent)
		}
	}
}

// A failure of ours is tried again, then told to the sender once, and nothing
// of it stays in the log.
func TestFailureOfOursIsTold(t *testing.T) {
	b := newBench(t, Options{})
	b.take(message(1, "set up Totara Bend, Pacific/Auckland"))
	sound, tries := b.bot.o.Decode, 0
	b.bot.o.Decode = func(raw []byte) (chat.Incoming, error) {
		in, err := sound(raw)
		if in.Text == "boom" {
			if tries++; tries <= 2 {
				panic("a mistake of ours")
			}
		}
		return in, err
	}
	require.Empty(t, b.take(message(2, "boom")))
	require.Equal(t, 3, tries, "twice handled, once read again to tell the sender")
	sender, err := b.book.Sender(t.Context())
	require.NoError(t, err)
	defer sender.Close()
	var said []string
	for {
		heads, err := sender.Heads(t.Context())
		require.NoError(t, err)
		if len(heads) == 0 {
			break
		}
		out, _, err := sender.Load(t.Context(), heads[0].ID)
		require.NoError(t, err)
		said = append(said, out.HTML)
		require.NoError(t, sender.Sent(t.Context(), heads[0].ID, len(said), time.Now()))
	}
	require.Len(t, said, 2)
	require.Contains(t, said[1], "this message is kept, but nothing was logged")
	require.Len(t, b.take(message(3, "help"))[0].Replies, 1)
}

// A second delivery under another number changes nothing: the chat and its
// message's number are the second guard.
func TestSameMessageUnderAnotherUpdateNumber(t *testing.T) {
	b := newBench(t, Options{})
	b.take(message(1, "set up Totara Bend, Pacific/Auckland"))
	b.take(message(2, "paddocks\n12 3"))
	b.take(message(3, "p12 2 2 2.5"))
	require.Empty(t, b.take(message(3, "p12 2 2 2.5"))[0].Replies)
	_, log, err := b.book.Export(t.Context(), "Totara Bend", 0)
	require.NoError(t, err)
	require.Len(t, log, 3)
}

// A group that becomes a supergroup keeps its farm.
func TestSupergroupKeepsItsFarm(t *testing.T) {
	b := newBench(t, Options{})
	b.take(message(1, "set up Totara Bend, Pacific/Auckland"))
	b.take(message(2, "paddocks\n12 3"))
	moved := message(3, "")
	moved.Kind, moved.NewChat = chat.Migrated, -100
	b.take(moved)
	in := message(1, "p12 2 2 2.5")
	in.Chat = -100
	require.Equal(t, "count", b.take(in)[0].Replies[0].Answer.Subject())
}

// Being added to a group is met with how to begin; being removed, with silence.
func TestWelcomeAndRemoval(t *testing.T) {
	b := newBench(t, Options{})
	out := b.take(chat.Incoming{Kind: chat.Joined, Chat: -1, From: chat.Person{ID: 5, Name: "Ana"}})
	require.Contains(t, out[0].Sent[0].Out.HTML, "set up Totara Bend")
	require.Empty(t, b.take(chat.Incoming{Kind: chat.Left, Chat: -1, From: chat.Person{ID: 5, Name: "Ana"}})[0].Sent)
}
