// Package ledger keeps everything that must not be lost in PostgreSQL: updates
// as they came in (the inbox), messages and their edits, the farm's log, open
// questions, what is to be sent (the outbox) and which daily jobs have run. It
// is the only package that speaks SQL.
//
// One update is one transaction:
//
//	did, err := book.Next(ctx, func(ctx context.Context, tx *ledger.Tx, row ledger.InboxRow) error {
//		msg, fresh, err := tx.SaveMessage(ctx, ledger.Message{...})
//		logged, err := tx.Append(ctx, ledger.Mark{Message: msg.ID, ...}, entries)
//		_, err = tx.Enqueue(ctx, ledger.Send{Message: msg.ID, Out: reply})
//		return err
//	})
//
// What may arrive twice changes nothing the second time, by a unique key.
// Updates of one chat are handled in their order; what goes to one chat is
// numbered in commit order. Whoever changes a farm's log holds the farm's row,
// so its version counts commits; the numbers of rows do not.
//
// The package reads no Telegram JSON, knows no grass, and makes no network
// call but to the database.
package ledger
