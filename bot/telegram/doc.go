// Package telegram translates between Telegram's Bot API and the values of
// bot/chat: it decodes updates, sends what is to be sent, fetches files and
// classes what goes wrong. It is the only importer of the go-telegram client.
//
//	in, err := telegram.Decode(raw)
//	client, err := telegram.New(token, telegram.Options{})
//	id, err := client.Send(ctx, chat.Outgoing{Chat: in.Chat, ReplyTo: in.MessageID, HTML: "..."})
//
// It reads of an update only what the program uses, so that a field of a kind
// it has never heard of spoils nothing. It keeps nothing, retries nothing and
// waits for nothing: that is bot/send's.
package telegram
