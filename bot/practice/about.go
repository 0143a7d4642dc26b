package practice

import (
	"regexp"
	"slices"
)

func (s *Server) getMe(params) (any, error) {
	me := s.wireUser(s.Self())
	me["can_join_groups"], me["can_read_all_group_messages"] = true, true
	me["supports_inline_queries"] = false
	return me, nil
}

func (s *Server) getChat(p params) (any, error) {
	if err := s.mayWrite(p.int64("chat_id")); err != nil {
		return nil, err
	}
	chat := s.wireChat(p.int64("chat_id"))
	chat["accent_color_id"], chat["max_reaction_count"] = 0, 11
	return chat, nil
}

func (s *Server) getChatMember(p params) (any, error) {
	group := p.int64("chat_id")
	if err := s.mayWrite(group); err != nil {
		return nil, err
	}
	if p.int64("user_id") == botID {
		return s.wireMember(group, s.Self()), nil
	}
	person, ok := s.state.person(p.int64("user_id"))
	if !ok {
		return nil, badRequest("user not found")
	}
	return s.wireMember(group, person), nil
}

// wireMember gives a person with the standing in a group.
func (s *Server) wireMember(group int64, p Person) object {
	if slices.Contains(s.state.groups[group].Admins, p.ID) {
		return object{"status": "administrator", "user": s.wireUser(p), "can_be_edited": false,
			"can_manage_chat": true, "can_delete_messages": true, "is_anonymous": false}
	}
	return object{"status": "member", "user": s.wireUser(p)}
}

func (s *Server) getChatAdministrators(p params) (any, error) {
	group := p.int64("chat_id")
	if err := s.mayWrite(group); err != nil {
		return nil, err
	}
	out := []object{}
	for _, person := range append([]Person{s.Self()}, s.state.people...) {
		if slices.Contains(s.state.groups[group].Admins, person.ID) {
			out = append(out, s.wireMember(group, person))
		}
	}
	return out, nil
}

func (s *Server) getChatMemberCount(p params) (any, error) {
	if err := s.mayWrite(p.int64("chat_id")); err != nil {
		return nil, err
	}
	return len(s.state.people) + 1, nil
}

func (s *Server) sendChatAction(p params) (any, error) {
	if err := s.mayWrite(p.int64("chat_id")); err != nil {
		return nil, err
	}
	return true, nil
}

var commandName = regexp.MustCompile(`^[a-z0-9_]{1,32}$`)

func (s *Server) setMyCommands(p params) (any, error) {
	var list []Command
	if !p.json("commands", &list) {
		return nil, badRequest("can't parse commands JSON object")
	}
	for _, c := range list {
		if !commandName.MatchString(c.Command) {
			return nil, badRequest("BOT_COMMAND_INVALID")
		}
		if n := units(c.Description); n < 1 || n > 256 {
			return nil, badRequest("BOT_COMMAND_DESCRIPTION_INVALID")
		}
	}
	s.record(Event{Did: DidCommands, Commands: &Commands{scopeOf(p), list}})
	return true, nil
}

func (s *Server) getMyCommands(p params) (any, error) {
	list := s.state.commands[scopeOf(p)]
	if list == nil {
		list = []Command{}
	}
	return list, nil
}

func (s *Server) deleteMyCommands(p params) (any, error) {
	s.record(Event{Did: DidCommands, Commands: &Commands{scopeOf(p), nil}})
	return true, nil
}

// scopeOf names whom commands are for: "default" when not told.
func scopeOf(p params) string {
	var scope struct {
		Type string `json:"type"`
	}
	if !p.json("scope", &scope) || scope.Type == "" {
		return "default"
	}
	return scope.Type
}

// CommandsFor gives the commands that the bot registered for a scope
// ("default", "all_group_chats", "all_private_chats" ...).
func (s *Server) CommandsFor(scope string) []Command {
	s.mu.Lock()
	defer s.mu.Unlock()
	return slices.Clone(s.state.commands[scope])
}
