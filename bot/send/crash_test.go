package send_test

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"leafround/bot/chat"
	"leafround/bot/intake"
	"leafround/bot/ledger"
	"leafround/bot/pgembed"
	"leafround/bot/pgembed/pgtest"
	"leafround/bot/send"
	"leafround/bot/telegram"
	"leafround/core/entry"
)

var kills = flag.Int("kills", 8, "how often the crash campaign kills the program")

// TestMain lets this binary be the program that is killed.
func TestMain(m *testing.M) {
	if url := os.Getenv("CRASH_DATABASE"); url != "" {
		if err := program(url, os.Getenv("CRASH_API")); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		os.Exit(0)
	}
	pgtest.Main(m)
}

// program is the whole way through, as serve has it, with the smallest handler
// that logs an entry and answers.
func program(url, api string) error {
	ctx := context.Background()
	book, err := ledger.Open(ctx, url, ledger.Options{})
	if err != nil {
		return err
	}
	client, err := telegram.New("123:abc", telegram.Options{ServerURL: api, Timeout: 2 * time.Second})
	if err != nil {
		return err
	}
	poller := intake.Poller{URL: client.MethodURL("getUpdates"), Inbox: book, Wait: time.Second}
	go poller.Run(ctx)
	for range 2 {
		go work(ctx, book)
	}
	loop := send.Loop{Bot: client, Rung: book.Bell(ledger.Outbox).Rung(), Pace: send.Unpaced(),
		Open: func(ctx context.Context) (send.Outbox, error) { return book.Sender(ctx) }}
	return loop.Run(ctx)
}

func work(ctx context.Context, book *ledger.Ledger) {
	bell := book.Bell(ledger.Inbox)
	for {
		did, err := book.Next(ctx, handle)
		if !did || err != nil {
			bell.Wait(ctx, 100*time.Millisecond)
		}
	}
}

func handle(ctx context.Context, tx *ledger.Tx, row ledger.InboxRow) error {
	in, err := telegram.Decode(row.Raw)
	if err != nil {
		return ledger.Hopeless(err)
	}
	c, err := tx.MeetChat(ctx, in.Chat, in.Private, in.Title)
	if err != nil {
		return err
	}
	if c.Farm == 0 {
		f, err := tx.NewFarm(ctx, fmt.Sprint("Totara Bend ", in.Chat), "Pacific/Auckland")
		if err == nil {
			err = tx.SetChatFarm(ctx, c.ID, f.ID)
		}
		if err != nil {
			return err
		}
		c.Farm = f.ID
	}
	if _, err := tx.Meet(ctx, c.Farm, in.From.ID, in.From.Name); err != nil {
		return err
	}
	m, fresh, err := tx.SaveMessage(ctx, ledger.Message{Chat: c.ID, MessageID: in.MessageID, Farm: c.Farm,
		Person: in.From.ID, SentAt: in.SentAt, Text: in.Text})
	if err != nil || !fresh {
		return err
	}
	mark := ledger.Mark{Farm: c.Farm, Person: in.From.ID, SentAt: in.SentAt, Message: m.ID}
	if _, err := tx.Append(ctx, mark, []entry.Entry{entry.Note{Text: in.Text}}); err != nil {
		return err
	}
	out := chat.Outgoing{Chat: c.ID, ReplyTo: in.MessageID, HTML: in.Text}
	_, _, err = tx.Enqueue(ctx, ledger.Send{Message: m.ID, Out: out})
	if err == nil && rand.N(10) == 0 {
		return errors.New("a mishap after all was done")
	}
	return err
}

// The program is killed again and again while updates come in, some twice, to
// a server that drops connections and has bad moments. In the end each update
// is logged exactly once, each is answered, in the order of its chat, and again
// only where the answer to a send was lost.
func TestNothingIsLostWhateverDies(t *testing.T) {
	url := pgtest.URL(t)
	api := newAPI(t)
	const chats = 4
	sent := 0
	for range *kills {
		cmd := launch(t, url, api)
		for range 12 {
			sent++
			api.say(int64(-100-sent%chats), sent)
		}
		time.Sleep(150*time.Millisecond + rand.N(350*time.Millisecond))
		require.NoError(t, cmd.Process.Kill())
		cmd.Wait()
		api.nextEpoch()
	}
	cmd := launch(t, url, api)
	api.calm()
	answered := func() bool { return api.answered() == sent }
	require.Eventually(t, answered, 60*time.Second, 20*time.Millisecond, "some replies never come")
	time.Sleep(100 * time.Millisecond)
	require.NoError(t, cmd.Process.Kill())
	cmd.Wait()

	book := pgtest.Open(t, url, ledger.Options{})
	for c := range chats {
		_, log, err := book.Export(t.Context(), fmt.Sprint("Totara Bend ", -100-c), 0)
		require.NoError(t, err)
		texts := map[string]int{}
		for _, l := range log {
			texts[l.Entry.(entry.Note).Text]++
		}
		require.Len(t, texts, sent/chats)
		for text, n := range texts {
			require.Equal(t, 1, n, "%s is logged %d times", text, n)
		}
	}
	failed, err := book.Failed(t.Context())
	require.NoError(t, err)
	require.Empty(t, failed)
	api.judge(t)
	t.Logf("%d updates, %d kills, %d sends, %d answers lost, %d handed over again", sent, *kills, len(api.sends), api.lost, api.again)
}

func launch(t *testing.T, url string, api *fakeAPI) *exec.Cmd {
	t.Helper()
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), "CRASH_DATABASE="+url, "CRASH_API="+api.url)
	cmd.Stderr = os.Stderr
	require.NoError(t, cmd.Start())
	t.Cleanup(func() { cmd.Process.Kill() })
	return cmd
}

// The database dies under the program and comes back.
func TestTheDatabaseDiesAndComesBack(t *testing.T) {
	dir, err := os.MkdirTemp("", "lr-test-")
	require.NoError(t, err)
	defer os.RemoveAll(dir)
	server, err := pgembed.Start(t.Context(), pgembed.Options{DataDir: dir})
	require.NoError(t, err)
	defer func() { require.NoError(t, server.Stop()) }()
	api := newAPI(t)
	cmd := launch(t, server.URL(), api)
	sent := 0
	say := func() {
		for range 20 {
			sent++
			api.say(-100, sent)
		}
	}
	say()
	require.Eventually(t, func() bool { return api.answered() > 2 }, 40*time.Second, 5*time.Millisecond)
	require.NoError(t, server.Kill())
	require.NoError(t, server.Stop())
	say()
	server, err = pgembed.Start(t.Context(), pgembed.Options{DataDir: dir})
	require.NoError(t, err)
	api.calm()
	require.Eventually(t, func() bool { return api.answered() == sent }, 40*time.Second, 20*time.Millisecond)
	require.NoError(t, cmd.Process.Kill())
	cmd.Wait()

	book, err := ledger.Open(t.Context(), server.URL(), ledger.Options{})
	require.NoError(t, err)
	defer book.Close()
	_, log, err := book.Export(t.Context(), "Totara Bend -100", 0)
	require.NoError(t, err)
	require.Len(t, log, sent)
}
