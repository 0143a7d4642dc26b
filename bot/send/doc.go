// Package send empties the outbox: what waits for a chat goes out in its
// order, no faster than the pace allows, and again where no answer came. A
// chat that has to wait holds up no other.
//
//	loop := send.Loop{Open: open, Bot: client, Rung: bell.Rung(), Pace: send.Telegram()}
//	err := loop.Run(ctx) // until the context ends and what is under way is done
//
// A send that was answered is never made again as long as the program lives,
// whatever the database does; one whose answer was lost is. What the server
// refuses for good is given up and the next goes on.
//
// The package knows neither SQL nor HTTP.
package send
