// Package bot handles what people send: one update, one transaction. It reads
// the text, appends to the farm's log, folds the farm, answers, words the
// reply and puts it into the outbox. It makes no network call and decides
// nothing about grass: the parser reads, core reckons, bot/reply words.
//
//	b := bot.New(book, bot.Options{Decode: telegram.Decode, Now: time.Now})
//	did, err := b.Step(ctx) // handles the next update of the inbox
//
// It works on the ledger itself, not on an interface with one implementation:
// the transaction is the point.
package bot
