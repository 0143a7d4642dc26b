package bot

import (
	"context"
	"fmt"

	"leafround/bot/chat"
	"leafround/bot/ledger"
	"leafround/bot/reply"
)

// tellGivenUp tells a sender, once, that their message could not be handled
// after all tries: it is kept, but nothing was logged.
func (b *Bot) tellGivenUp(ctx context.Context, row ledger.InboxRow) error {
	gone, err := b.book.GivenUp(ctx, row.ID)
	if err != nil || !gone {
		return err
	}
	in, err := b.o.Decode(row.Raw)
	if err != nil || in.Kind != chat.Message && in.Kind != chat.Edited {
		return nil // nobody to tell
	}
	return b.book.In(ctx, func(ctx context.Context, tx *ledger.Tx) error {
		if _, err := tx.MeetChat(ctx, in.Chat, in.Private, in.Title); err != nil {
			return err
		}
		_, _, err := tx.Enqueue(ctx, ledger.Send{Key: fmt.Sprintf("given up/%d", row.ID),
			Out: chat.Outgoing{Chat: in.Chat, Topic: in.Topic, ReplyTo: in.MessageID, HTML: reply.GivenUp()}})
		return err
	})
}
