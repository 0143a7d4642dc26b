package ledger_test

import (
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"leafround/bot/chat"
	"leafround/bot/ledger"
	"leafround/bot/pgembed/pgtest"
)

func TestWorkersKeepTheOrderOfEachChat(t *testing.T) {
	book := pgtest.Ledger(t)
	const chats, each = 5, 20
	var batch []chat.Raw
	for i := range chats * each {
		batch = append(batch, raw(int64(i+1), int64(-100-i%chats)))
	}
	require.NoError(t, book.Receive(t.Context(), batch))

	var mu sync.Mutex
	seen := map[int64][]int64{}
	tried := map[int64]bool{}
	record := func(_ context.Context, _ *ledger.Tx, row ledger.InboxRow) error {
		time.Sleep(rand.N(time.Millisecond))
		mu.Lock()
		defer mu.Unlock()
		if row.UpdateID%7 == 0 && !tried[row.ID] { // each seventh fails once
			tried[row.ID] = true
			return errors.New("not yet")
		}
		seen[row.Chat] = append(seen[row.Chat], row.UpdateID)
		return nil
	}
	var wg sync.WaitGroup
	for range 4 {
		wg.Go(func() {
			for idle := 0; idle < 20; {
				did, err := book.Next(context.Background(), record)
				if err != nil {
					t.Error(err)
					return
				}
				if did {
					idle = 0
				} else {
					idle++
					time.Sleep(5 * time.Millisecond)
				}
			}
		})
	}
	wg.Wait()
	for c := range int64(chats) {
		var want []int64
		for i := range int64(each) {
			want = append(want, i*chats+c+1)
		}
		require.Equal(t, want, seen[-100-c])
	}
}

func TestAFailingUpdateIsTriedThenKeptAndPassedOver(t *testing.T) {
	book := pgtest.Open(t, pgtest.URL(t), ledger.Options{Attempts: 3, Backoff: func(int) time.Duration { return 0 }})
	require.NoError(t, book.Receive(t.Context(), []chat.Raw{raw(1, -100), raw(2, -100)}))
	var tries []string
	drain(t, book, func(ctx context.Context, tx *ledger.Tx, row ledger.InboxRow) error {
		tries = append(tries, fmt.Sprint(row.UpdateID, "/", row.Attempts))
		if row.UpdateID == 1 {
			if _, err := tx.MeetChat(ctx, 1, true, ""); err != nil {
				return err
			}
			return errors.New("no good")
		}
		_, found, err := tx.Chat(ctx, 1)
		require.False(t, found, "a failed handler leaves something behind")
		return err
	})
	require.Equal(t, []string{"1/0", "1/1", "1/2", "2/0"}, tries)
	failed, err := book.Failed(t.Context())
	require.NoError(t, err)
	require.Len(t, failed, 1)
	require.Equal(t, "no good", failed[0].Error)
	require.JSONEq(t, `{"update_id":1}`, string(failed[0].Raw))
}

func TestAHopelessUpdateIsNotTriedAgain(t *testing.T) {
	book := pgtest.Ledger(t)
	require.NoError(t, book.Receive(t.Context(), []chat.Raw{raw(1, -100)}))
	require.Equal(t, 1, drain(t, book, func(context.Context, *ledger.Tx, ledger.InboxRow) error {
		return fmt.Errorf("bot: %w", ledger.Hopeless(errors.New("malformed")))
	}))
}

func TestAPanicIsAFailureOfItsUpdateAlone(t *testing.T) {
	book := pgtest.Ledger(t)
	require.NoError(t, book.Receive(t.Context(), []chat.Raw{raw(1, -100), raw(2, -200)}))
	handled := 0
	drain(t, book, func(_ context.Context, _ *ledger.Tx, row ledger.InboxRow) error {
		if row.UpdateID == 1 {
			panic("a mistake of ours")
		}
		handled++
		return nil
	})
	require.Equal(t, 1, handled)
}

func TestAnUpdateThatIsNoJSONIsKept(t *testing.T) {
	book := pgtest.Ledger(t)
	odd := []chat.Raw{
		{JSON: []byte("{\"update_id\":9,\x00\xff"), UpdateID: 9, HasID: true, At: noon},
		{JSON: []byte(`{"text":"\u0000 \ud83d"}`), At: noon},
		{JSON: []byte(`{"text":"\u0000 \ud83d"}`), At: noon},
	}
	require.NoError(t, book.Receive(t.Context(), odd))
	var bodies []string
	drain(t, book, func(_ context.Context, _ *ledger.Tx, row ledger.InboxRow) error {
		bodies = append(bodies, string(row.Raw))
		return nil
	})
	require.Equal(t, []string{string(odd[0].JSON), string(odd[1].JSON)}, bodies)
}

// After a quiet week Telegram may number updates anew; a number that comes
// back with other content is another update.
func TestANumberThatComesBackWithOtherContentIsAnotherUpdate(t *testing.T) {
	book := pgtest.Ledger(t)
	first, spaced, other := raw(1, -100), raw(1, -100), raw(1, -100)
	spaced.JSON = []byte("{ \"update_id\": 1 }")
	other.JSON = []byte(`{"update_id":1,"message":{}}`)
	require.NoError(t, book.Receive(t.Context(), []chat.Raw{first, spaced, other}))
	require.Equal(t, 2, drain(t, book, func(context.Context, *ledger.Tx, ledger.InboxRow) error { return nil }))
}

func TestABellRingsWhenUpdatesComeAndKeepsOneRing(t *testing.T) {
	book := pgtest.Ledger(t)
	bell := book.Bell(ledger.Inbox)
	defer bell.Close()
	require.NoError(t, book.Receive(t.Context(), []chat.Raw{raw(1, -100)}))
	begin := time.Now()
	require.NoError(t, bell.Wait(t.Context(), 10*time.Second))
	require.Less(t, time.Since(begin), 5*time.Second)
}
