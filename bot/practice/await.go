package practice

import (
	"context"
	"fmt"
	"slices"
)

// Match tells whether an event is the one that is waited for.
type Match func(Event) bool

// ReplyFrom matches a message of the bot's that answers a message.
func ReplyFrom(chat int64, messageID int) Match {
	return func(e Event) bool {
		return e.Did == DidSay && e.Message.From.Bot && e.Message.Chat == chat && e.Message.ReplyTo == messageID
	}
}

// SpokenIn matches any message of the bot's in a chat.
func SpokenIn(chat int64) Match {
	return func(e Event) bool { return e.Did == DidSay && e.Message.From.Bot && e.Message.Chat == chat }
}

// ChangedIn matches an edit of a message: its text, its buttons.
func ChangedIn(chat int64, messageID int) Match {
	return func(e Event) bool {
		return e.Did == DidEdit && e.Message.Chat == chat && e.Message.ID == messageID
	}
}

// ReactionTo matches a reaction of the bot's to a message.
func ReactionTo(chat int64, messageID int) Match {
	return func(e Event) bool {
		return e.Did == DidReact && e.Message.Chat == chat && e.Message.ID == messageID
	}
}

// Toasted matches the bot's answer to a person's press of a button.
func Toasted(by Person) Match {
	return func(e Event) bool { return e.Did == DidToast && e.Press.By.ID == by.ID }
}

// Await waits for the first event after Seq `after` that matches, past ones
// included: 0 looks from the beginning.
func (s *Server) Await(ctx context.Context, after int64, match Match) (Event, error) {
	for {
		s.mu.Lock()
		events, changed := s.state.events, s.changed
		s.mu.Unlock()
		for ; after < int64(len(events)); after++ {
			if match(events[after]) {
				return events[after], nil
			}
		}
		select {
		case <-changed:
		case <-ctx.Done():
			return Event{}, fmt.Errorf("practice: wait for the bot: %w", ctx.Err())
		}
	}
}

// Seq gives the number of the latest event.
func (s *Server) Seq() int64 {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.state.seq
}

// Events gives what happened after Seq `after`.
func (s *Server) Events(after int64) []Event {
	s.mu.Lock()
	defer s.mu.Unlock()
	after = min(max(after, 0), int64(len(s.state.events)))
	return slices.Clone(s.state.events[after:])
}

// Messages gives a chat's messages as they stand, oldest first, without those
// that were deleted.
func (s *Server) Messages(chat int64) []Message {
	s.mu.Lock()
	defer s.mu.Unlock()
	c := s.state.chats[chat]
	if c == nil {
		return nil
	}
	out := make([]Message, 0, len(c.messages))
	for id := 1; id <= c.last; id++ {
		if m, ok := c.messages[id]; ok && !m.Gone {
			out = append(out, m)
		}
	}
	return out
}

// FromBot gives the bot's messages in a chat, oldest first.
func (s *Server) FromBot(chat int64) []Message {
	all := s.Messages(chat)
	return slices.DeleteFunc(all, func(m Message) bool { return !m.From.Bot })
}

// Pending gives the updates that the bot has not acknowledged.
func (s *Server) Pending() []Update {
	s.mu.Lock()
	defer s.mu.Unlock()
	return slices.Clone(s.state.pending)
}
