package bot

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"sync"
	"time"

	"leafround/bot/chat"
	"leafround/bot/ledger"
	"leafround/bot/reply"
	"leafround/core/answer"
	"leafround/core/entry"
)

// Options are what a Bot needs from outside.
type Options struct {
	Decode  func(raw []byte) (chat.Incoming, error)
	Fetch   func(ctx context.Context, fileID string) ([]byte, error) // a document's content; nil where there are none
	Now     func() time.Time
	Name    string // the bot's user name, for commands that name a bot
	Log     *slog.Logger
	Observe func(Outcome) // told of each outcome after it was committed; may be nil
}

// Outcome is what one message, or one job, led to.
type Outcome struct {
	In      chat.Incoming // zero for what the bot said unasked
	Farm    int64
	At      time.Time     // in the farm's zone
	Entries []entry.Entry // what the message said, as it was logged
	Replies []Spoken
	Sent    []Shown
}

// Spoken is one answer and its words.
type Spoken struct {
	HTML   string
	Answer answer.Answer
}

// Shown is one message of the bot's as it went to the outbox.
type Shown struct {
	Outbox int64
	Out    chat.Outgoing
}

// Bot handles updates. Its methods may be called from several goroutines.
type Bot struct {
	book *ledger.Ledger
	o    Options

	mu    sync.Mutex
	farms map[int64]*keptFarm
	files map[string]fetched
}

type fetched struct {
	content []byte
	err     error
}

// New makes a bot on a ledger.
func New(book *ledger.Ledger, o Options) *Bot {
	if o.Now == nil {
		o.Now = time.Now
	}
	if o.Log == nil {
		o.Log = slog.New(slog.DiscardHandler)
	}
	return &Bot{book: book, o: o, farms: map[int64]*keptFarm{}, files: map[string]fetched{}}
}

// fileWanted is how a handler asks for a document's content.
type fileWanted struct{ id string }

func (f fileWanted) Error() string { return "the file " + f.id + " is wanted" }

// Step handles the next update that waits, if there is one.
func (b *Bot) Step(ctx context.Context) (did bool, err error) {
	var t *turn
	var wanted fileWanted
	var stumbled *ledger.InboxRow // its handling failed
	did, err = b.book.Next(ctx, func(ctx context.Context, tx *ledger.Tx, row ledger.InboxRow) (err error) {
		t = &turn{b: b, ctx: ctx, tx: tx}
		stumbled = &row
		defer func() {
			if stumbled != nil {
				b.forget(t.row.ID)
			}
		}()
		if err = t.handle(row); err == nil {
			stumbled = nil
		}
		if errors.As(err, &wanted) {
			return ledger.Later(err)
		}
		return err
	})
	switch {
	case err != nil:
		return did, fmt.Errorf("bot: %w", err)
	case wanted.id != "":
		if n := b.fetch(ctx, wanted.id); n > longFile {
			return did, b.announce(ctx, t.in, n)
		}
	case stumbled != nil:
		return did, b.tellGivenUp(ctx, *stumbled)
	case did && b.o.Observe != nil && t != nil:
		b.o.Observe(t.out)
	}
	return did, nil
}

// longFile is from how many bytes on a file takes long enough to say so.
const longFile = 64 << 10

// fetch brings a document's content, outside of any transaction, and gives its
// length.
func (b *Bot) fetch(ctx context.Context, id string) int {
	f := fetched{err: errors.New("no files can be fetched here")}
	if b.o.Fetch != nil {
		f.content, f.err = b.o.Fetch(ctx, id)
	}
	b.mu.Lock()
	defer b.mu.Unlock()
	b.files[id] = f
	return len(f.content)
}

// announce tells a sender that a long file is being read, before it is.
func (b *Bot) announce(ctx context.Context, in chat.Incoming, bytes int) error {
	return b.book.In(ctx, func(ctx context.Context, tx *ledger.Tx) error {
		if _, err := tx.MeetChat(ctx, in.Chat, in.Private, in.Title); err != nil {
			return err
		}
		_, _, err := tx.Enqueue(ctx, ledger.Send{Key: fmt.Sprintf("reading/%d/%d", in.Chat, in.MessageID),
			Out: chat.Outgoing{Chat: in.Chat, Topic: in.Topic, ReplyTo: in.MessageID, HTML: reply.Reading(in.File.Name, bytes)}})
		return err
	})
}

// Run handles updates as they come, until the context ends.
func (b *Bot) Run(ctx context.Context) error {
	bell := b.book.Bell(ledger.Inbox)
	defer bell.Close()
	for {
		did, err := b.Step(ctx)
		if ctx.Err() != nil {
			return nil
		}
		if err != nil {
			b.o.Log.Error("the inbox can't be worked on", "error", err)
		}
		if did && err == nil {
			continue
		}
		if bell.Wait(ctx, time.Second) != nil {
			return nil
		}
	}
}
