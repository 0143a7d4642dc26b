package practice

import (
	"reflect"
	"slices"
	"strconv"
)

func (s *Server) editMessageText(p params) (any, error) {
	return s.edit(p, func(m *Message) error {
		if m.File != nil {
			return badRequest("there is no text in the message to edit")
		}
		if err := s.setText(m, p, "text", maxText); err != nil {
			return err
		}
		if m.Text == "" {
			return badRequest("message text is empty")
		}
		return setButtons(m, p)
	})
}

func (s *Server) editMessageCaption(p params) (any, error) {
	return s.edit(p, func(m *Message) error {
		if m.File == nil {
			return badRequest("there is no caption in the message to edit")
		}
		if err := s.setText(m, p, "caption", maxCaption); err != nil {
			return err
		}
		return setButtons(m, p)
	})
}

// editMessageMedia puts another picture or document in the place of one.
func (s *Server) editMessageMedia(p params) (any, error) {
	var media struct {
		Type    string `json:"type"`
		Media   string `json:"media"`
		Caption string `json:"caption"`
		Mode    string `json:"parse_mode"`
	}
	if !p.json("media", &media) || media.Type != "photo" && media.Type != "document" {
		return nil, badRequest("can't parse InputMedia: Can't find field \"type\"")
	}
	p.values[media.Type], p.values["caption"], p.values["parse_mode"] = media.Media, media.Caption, media.Mode
	return s.edit(p, func(m *Message) error {
		if m.File == nil {
			return badRequest("there is no media in the message to edit")
		}
		f, err := s.uploaded(p, media.Type, media.Type == "photo")
		if err != nil {
			return err
		}
		m.File = &f
		if err := s.setText(m, p, "caption", maxCaption); err != nil {
			return err
		}
		return setButtons(m, p)
	})
}

func (s *Server) editMessageReplyMarkup(p params) (any, error) {
	return s.edit(p, func(m *Message) error { return setButtons(m, p) })
}

// edit changes one of the bot's own messages. Buttons alone do not mark it as
// edited, as at Telegram.
func (s *Server) edit(p params, change func(*Message) error) (any, error) {
	m, err := s.own(p, "edit", "edited")
	if err != nil {
		return nil, err
	}
	was := m
	if err := change(&m); err != nil {
		return nil, err
	}
	same := m.HTML == was.HTML && m.Text == was.Text && m.File == was.File
	if same && reflect.DeepEqual(m.Buttons, was.Buttons) {
		return nil, badRequest("message is not modified: specified new message content and reply markup are exactly the same as a current content and reply markup of the message")
	}
	if !same {
		m.EditedAt = s.now()
	}
	s.record(Event{Did: DidEdit, Message: &m})
	return s.wireMessage(m, true), nil
}

// own finds a message of the bot's.
func (s *Server) own(p params, verb, done string) (Message, error) {
	chat := p.int64("chat_id")
	if err := s.mayWrite(chat); err != nil {
		return Message{}, err
	}
	m, ok := s.state.message(chat, p.int("message_id"))
	if !ok {
		return m, badRequest("message to %s not found", verb)
	}
	if !m.From.Bot {
		return m, badRequest("message can't be %s", done)
	}
	return m, nil
}

func (s *Server) deleteMessage(p params) (any, error) {
	m, ok := s.state.message(p.int64("chat_id"), p.int("message_id"))
	if !ok {
		return nil, badRequest("message to delete not found")
	}
	if !m.From.Bot && !slices.Contains(s.state.groups[m.Chat].Admins, botID) {
		return nil, badRequest("message can't be deleted")
	}
	m.Gone = true
	s.record(Event{Did: DidDelete, Message: &m})
	return true, nil
}

// press records the press of a button and tells the bot.
func (s *Server) press(m Message, by Person, data string) int64 {
	press := Press{QueryID: strconv.FormatInt(9000000+s.state.seq+1, 10), By: by, Chat: m.Chat, Message: m.ID, Data: data}
	s.record(Event{Did: DidPress, Press: &press})
	return s.queue("callback_query", object{
		"id": press.QueryID, "from": s.wireUser(by), "message": s.wireMessage(m, true),
		"chat_instance": strconv.FormatInt(m.Chat, 10), "data": data,
	})
}

func (s *Server) answerCallbackQuery(p params) (any, error) {
	press, ok := s.state.queries[p.values["callback_query_id"]]
	if !ok {
		return nil, badRequest("query is too old and response timeout expired or query ID is invalid")
	}
	press.Answer, press.Alert = p.values["text"], p.bool("show_alert")
	if units(press.Answer) > 200 {
		return nil, badRequest("MESSAGE_TOO_LONG")
	}
	s.record(Event{Did: DidToast, Press: &press})
	return true, nil
}

// reactions are the emoji that a bot may react with
// (core.telegram.org/bots/api#reactiontypeemoji, from memory).
var reactions = []string{"❤", "👍", "👎", "🔥", "🥰", "👏", "😁", "🤔", "🤯", "😱", "🤬", "😢", "🎉", "🤩", "🤮",
	"💩", "🙏", "👌", "🕊", "🤡", "🥱", "🥴", "😍", "🐳", "❤‍🔥", "🌚", "🌭", "💯", "🤣", "⚡", "🍌", "🏆", "💔", "🤨",
	"😐", "🍓", "🍾", "💋", "🖕", "😈", "😴", "😭", "🤓", "👻", "👨‍💻", "👀", "🎃", "🙈", "😇", "😨", "🤝", "✍",
	"🤗", "🫡", "🎅", "🎄", "☃", "💅", "🤪", "🗿", "🆒", "💘", "🙉", "🦄", "😘", "💊", "🙊", "😎", "👾", "🤷‍♂",
	"🤷", "🤷‍♀", "😡"}

// setMessageReaction puts a reaction to a message, or takes it away.
func (s *Server) setMessageReaction(p params) (any, error) {
	if err := s.mayWrite(p.int64("chat_id")); err != nil {
		return nil, err
	}
	m, ok := s.state.message(p.int64("chat_id"), p.int("message_id"))
	if !ok {
		return nil, badRequest("message to react not found")
	}
	var list []struct {
		Type  string `json:"type"`
		Emoji string `json:"emoji"`
	}
	p.json("reaction", &list)
	m.Reaction = ""
	for _, r := range list {
		if r.Type != "emoji" || !slices.Contains(reactions, r.Emoji) || len(list) > 1 {
			return nil, badRequest("REACTION_INVALID")
		}
		m.Reaction = r.Emoji
	}
	s.record(Event{Did: DidReact, Message: &m})
	return true, nil
}
