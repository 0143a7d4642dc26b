package practice

import "encoding/json"

// AddBot tells that a person added the bot to a group: a my_chat_member update
// and the service message that goes with it.
func (s *Server) AddBot(group int64, by Person) (updateID int64) {
	s.mu.Lock()
	defer s.mu.Unlock()
	g := s.state.groups[group]
	g.Kicked = false
	s.record(Event{Did: DidGroup, Group: &g})
	id := s.membership(group, by, "left", "member")
	s.announce(group, by, "added the bot")
	return id
}

// RemoveBot tells that a person put the bot out; it may not write any more.
func (s *Server) RemoveBot(group int64, by Person) (updateID int64) {
	s.mu.Lock()
	defer s.mu.Unlock()
	g := s.state.groups[group]
	g.Kicked = true
	s.record(Event{Did: DidGroup, Group: &g})
	return s.membership(group, by, "member", "kicked")
}

func (s *Server) membership(group int64, by Person, was, is string) int64 {
	me := s.wireUser(s.Self())
	member := func(status string) object {
		o := object{"status": status, "user": me}
		if status == "kicked" {
			o["until_date"] = 0
		}
		return o
	}
	return s.queue("my_chat_member", object{"chat": s.wireChat(group), "from": s.wireUser(by),
		"date": s.now().Unix(), "old_chat_member": member(was), "new_chat_member": member(is)})
}

// announce writes a service message and tells the bot.
func (s *Server) announce(chat int64, by Person, service string) Message {
	m := Message{Chat: chat, From: by, Service: service, ID: s.state.chat(chat).last + 1, At: s.now()}
	s.record(Event{Did: DidSay, Message: &m})
	s.queue("message", s.wireMessage(m, false))
	return m
}

// AddTopic opens a topic in a forum and gives its id.
func (s *Server) AddTopic(group int64, by Person, name string) int {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.announce(group, by, "topic "+name).ID
}

// Migrate gives a group a new id, as when it becomes a supergroup: the old one
// answers with the new one from then on.
func (s *Server) Migrate(group int64, by Person) (newID int64) {
	s.mu.Lock()
	defer s.mu.Unlock()
	old := s.state.groups[group]
	moved := old
	moved.ID = -1001000000000 - int64(len(s.state.order))
	old.MovedTo = moved.ID
	s.record(Event{Did: DidGroup, Group: &moved})
	message := object{"message_id": s.state.chat(group).last + 1, "from": s.wireUser(by),
		"chat": object{"id": group, "type": "group", "title": old.Title}, "date": s.now().Unix(),
		"migrate_to_chat_id": moved.ID}
	s.record(Event{Did: DidGroup, Group: &old})
	s.queue("message", message)
	return moved.ID
}

// Raw queues an update as it is given, with its update_id set: to try kinds
// that the bot does not know. It must be valid JSON; what is not an object is
// handed over untouched, without a number.
func (s *Server) Raw(body json.RawMessage) (updateID int64) {
	s.mu.Lock()
	defer s.mu.Unlock()
	u := Update{ID: s.state.updateID + 1, Kind: "raw", Raw: body}
	var fields map[string]json.RawMessage
	if json.Unmarshal(body, &fields) == nil && fields != nil {
		fields["update_id"] = mustJSON(u.ID)
		u.Raw = mustJSON(fields)
	}
	s.record(Event{Did: DidUpdate, Update: &u})
	return u.ID
}
