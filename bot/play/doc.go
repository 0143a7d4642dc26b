// Package play performs a conversation script with the real bot: practice's
// Bot API server, the ledger over PostgreSQL, the handler, the Telegram client
// and the outbox, on a clock that the script moves. It prints the script again
// with the bot's words as they are now.
//
//	p, err := play.New(ctx, play.Options{URL: database, Dir: folder})
//	err = p.Play(ctx, lines, play.Text(os.Stdout))
//
// It plays one step after the other: a message, all that comes of it, the next.
package play
