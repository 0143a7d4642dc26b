// Package practice is a chat to practise in: a Bot API server on loopback with
// groups, private chats and people of its own, and a web page to sit at. It is
// the server behind `demo` and `replay`, and the one that the tests talk to.
//
// It speaks the wire format of Telegram's Bot API (as documented at
// core.telegram.org/bots/api, from memory, and checked against the go-telegram
// client): the bot polls getUpdates and calls sendMessage and the rest. What
// the people do is done in Go, or by the page:
//
//	s := practice.New(practice.Options{Token: "1:practice"})
//	farm := s.AddGroup(practice.Group{Title: "Totara Bend"})
//	ana := s.AddPerson("Ana")
//	id, _ := s.Say(farm, ana, "p12 2 2.5 2")
//	reply, err := s.Await(ctx, 0, practice.ReplyFrom(farm, id))
//
// All that happens is an [Event]; the state is what the events fold to. With a
// journal (see [Open]) the events are kept as JSON lines, so the record of the chat
// outlives a restart and updates that the bot has not acknowledged are handed
// over again.
//
// It never talks to the network, never reads the program's own packages and
// knows nothing of grass.
package practice
