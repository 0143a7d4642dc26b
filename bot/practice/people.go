package practice

import (
	"slices"
	"strings"
	"time"
)

// AddPerson gives the person of that name, new if there is none yet.
func (s *Server) AddPerson(name string) Person {
	s.mu.Lock()
	defer s.mu.Unlock()
	for _, p := range s.state.people {
		if p.Name == name {
			return p
		}
	}
	p := Person{ID: 101 + int64(len(s.state.people)), Name: name}
	s.record(Event{Did: DidPerson, Person: &p})
	return p
}

// AddGroup makes a group chat and gives its id. A group of the same title is
// the same group; an id that is set is kept.
func (s *Server) AddGroup(g Group) int64 {
	s.mu.Lock()
	defer s.mu.Unlock()
	for _, id := range s.state.order {
		if known := s.state.groups[id]; known.Title == g.Title && known.MovedTo == 0 {
			return id
		}
	}
	if g.ID == 0 {
		g.ID = -1001 - int64(len(s.state.order))
	}
	s.record(Event{Did: DidGroup, Group: &g})
	return g.ID
}

// Promote gives a person an administrator's rights in a group.
func (s *Server) Promote(group int64, p Person) {
	s.mu.Lock()
	defer s.mu.Unlock()
	g := s.state.groups[group]
	if slices.Contains(g.Admins, p.ID) {
		return
	}
	g.Admins = append(slices.Clone(g.Admins), p.ID)
	s.record(Event{Did: DidGroup, Group: &g})
}

// With is an option of what a person does: see ReplyTo and InTopic.
type With func(*Message)

// ReplyTo makes the message a reply to another.
func ReplyTo(id int) With { return func(m *Message) { m.ReplyTo = id } }

// InTopic puts the message into a topic of a forum.
func InTopic(id int) With { return func(m *Message) { m.Topic = id } }

// Say writes a text message as a person: in a group, or in the private chat
// with the bot when chat is the person's own id.
func (s *Server) Say(chat int64, from Person, text string, with ...With) (messageID int, updateID int64) {
	return s.post(Message{Chat: chat, From: from, Text: text}, with)
}

// Pin shares a location.
func (s *Server) Pin(chat int64, from Person, lat, lon float64, with ...With) (messageID int, updateID int64) {
	return s.post(Message{Chat: chat, From: from, Pin: &Pin{lat, lon}}, with)
}

// SendFile sends a document with a caption ("" for none).
func (s *Server) SendFile(chat int64, from Person, name string, content []byte, caption string, with ...With) (messageID int, updateID int64) {
	s.mu.Lock()
	f := s.store(name, content, false)
	s.mu.Unlock()
	return s.post(Message{Chat: chat, From: from, File: &f, Text: caption}, with)
}

// SendMedia sends something that holds no text to read: "photo", "sticker",
// "voice", "video" ...
func (s *Server) SendMedia(chat int64, from Person, kind, caption string, with ...With) (messageID int, updateID int64) {
	return s.post(Message{Chat: chat, From: from, Media: kind, Text: caption}, with)
}

// post writes a person's message and queues the update for the bot.
func (s *Server) post(m Message, with []With) (int, int64) {
	for _, w := range with {
		w(&m)
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	m.ID, m.At = s.state.chat(m.Chat).last+1, s.now()
	s.record(Event{Did: DidSay, Message: &m})
	return m.ID, s.queue("message", s.wireMessage(m, true))
}

// Edit changes the text of a person's message; the update is an
// edited_message. It tells false when there is no such message.
func (s *Server) Edit(chat int64, messageID int, text string) (updateID int64, ok bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	m, ok := s.state.message(chat, messageID)
	if !ok || m.From.Bot {
		return 0, false
	}
	m.Text, m.EditedAt = text, s.now()
	s.record(Event{Did: DidEdit, Message: &m})
	return s.queue("edited_message", s.wireMessage(m, true)), true
}

// PressButton presses a button, counted from 0 through all rows. It tells
// false when there is no such button. The bot's answer is a DidToast event.
func (s *Server) PressButton(chat int64, by Person, messageID, button int) (updateID int64, ok bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	m, ok := s.state.message(chat, messageID)
	all := slices.Concat(m.Buttons...)
	if !ok || button < 0 || button >= len(all) {
		return 0, false
	}
	return s.press(m, by, all[button].Data), true
}

// queue hands an update to the bot, unless the bot does not ask for its kind.
func (s *Server) queue(kind string, body any) int64 {
	if !s.wants(kind) {
		return 0
	}
	u := Update{ID: s.state.updateID + 1, Kind: kind}
	u.Raw = mustJSON(map[string]any{"update_id": u.ID, kind: body})
	s.record(Event{Did: DidUpdate, Update: &u})
	return u.ID
}

// unasked are the kinds that Telegram hands over only to a bot that names them.
var unasked = []string{"chat_member", "message_reaction", "message_reaction_count"}

func (s *Server) wants(kind string) bool {
	if s.allowed == nil {
		return !slices.Contains(unasked, kind)
	}
	return s.allowed[kind]
}

// MoveClock puts the server's clock on, and keeps it in the journal.
func (s *Server) MoveClock(d time.Duration) time.Time {
	if s.options.Clock == nil {
		return s.options.Now()
	}
	t := s.options.Clock.Move(d)
	s.mu.Lock()
	defer s.mu.Unlock()
	s.record(Event{Did: DidClock, At: t, Lead: s.options.Clock.lead()})
	return t
}

// isCommand tells whether a text begins with a slash command.
func isCommand(text string) bool { return strings.HasPrefix(text, "/") }
