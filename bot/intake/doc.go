// Package intake takes updates from the Bot API and commits them to the inbox,
// as they came, before it lets the server forget them: by long polling, or as
// a webhook.
//
//	poller := intake.Poller{URL: client.MethodURL("getUpdates"), Inbox: book}
//	err := poller.Run(ctx) // until the context ends
//
// It reads of an update no more than its number and its chat, so one that is
// malformed is kept like any other and holds up nobody. It never handles an
// update and never answers one.
package intake
