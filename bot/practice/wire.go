package practice

import (
	"encoding/json"
	"fmt"
	"strings"
	"unicode/utf16"
)

// object is a JSON object of the Bot API.
type object = map[string]any

// mustJSON encodes a value of our own making.
func mustJSON(v any) json.RawMessage {
	b, err := json.Marshal(v)
	if err != nil {
		panic(fmt.Sprintf("practice: encode: %v", err))
	}
	return b
}

func (s *Server) wireUser(p Person) object {
	o := object{"id": p.ID, "is_bot": p.Bot, "first_name": p.Name}
	if p.Bot {
		o["username"] = s.options.Bot
	}
	return o
}

func (s *Server) wireChat(id int64) object {
	if g, ok := s.state.groups[id]; ok {
		o := object{"id": id, "type": "supergroup", "title": g.Title}
		if g.Forum {
			o["is_forum"] = true
		}
		return o
	}
	p, _ := s.state.person(id)
	return object{"id": id, "type": "private", "first_name": p.Name}
}

// wireMessage gives a message as the bot sees it; the message that it answers
// goes along when deep is set.
func (s *Server) wireMessage(m Message, deep bool) object {
	o := object{"message_id": m.ID, "from": s.wireUser(m.From), "chat": s.wireChat(m.Chat), "date": m.At.Unix()}
	if m.Topic != 0 {
		o["message_thread_id"], o["is_topic_message"] = m.Topic, true
	}
	if !m.EditedAt.IsZero() {
		o["edit_date"] = m.EditedAt.Unix()
	}
	if answered, ok := s.state.message(m.Chat, m.ReplyTo); ok && deep {
		o["reply_to_message"] = s.wireMessage(answered, false)
	}
	if len(m.Buttons) > 0 {
		o["reply_markup"] = object{"inline_keyboard": m.Buttons}
	}
	s.wireContent(m, o)
	return o
}

// wireContent adds what the message holds.
func (s *Server) wireContent(m Message, o object) {
	text, entities := "text", "entities"
	switch {
	case m.File != nil && m.File.Photo:
		o["photo"] = []object{{"file_id": m.File.ID, "file_unique_id": "u" + m.File.ID,
			"width": m.File.Width, "height": m.File.Height, "file_size": m.File.Size}}
		text, entities = "caption", "caption_entities"
	case m.File != nil:
		o["document"] = object{"file_id": m.File.ID, "file_unique_id": "u" + m.File.ID,
			"file_name": m.File.Name, "mime_type": m.File.Mime, "file_size": m.File.Size}
		text, entities = "caption", "caption_entities"
	case m.Pin != nil:
		o["location"] = object{"latitude": m.Pin.Lat, "longitude": m.Pin.Lon}
	case m.Media != "":
		o[m.Media] = wireMedia(m)
		text, entities = "caption", "caption_entities"
	case m.Service != "":
		wireService(m, o, s.wireUser(s.Self()))
		return
	}
	if m.Text != "" {
		o[text] = m.Text
	}
	if list := wireEntities(m); len(list) > 0 {
		o[entities] = list
	}
}

// wireMedia gives the least that a message without text may carry.
func wireMedia(m Message) any {
	id := fmt.Sprintf("%s-%d-%d", m.Media, m.Chat, m.ID)
	file := object{"file_id": id, "file_unique_id": "u" + id, "file_size": 4096}
	switch m.Media {
	case "photo":
		file["width"], file["height"] = 1280, 960
		return []object{file}
	case "sticker":
		file["type"], file["width"], file["height"] = "regular", 512, 512
		file["is_animated"], file["is_video"], file["emoji"] = false, false, "👍"
	case "voice", "audio":
		file["duration"], file["mime_type"] = 4, "audio/ogg"
	case "video", "video_note", "animation":
		file["duration"], file["width"], file["height"], file["length"] = 4, 640, 480, 480
	}
	return file
}

func wireService(m Message, o object, bot object) {
	switch {
	case strings.HasPrefix(m.Service, "added"):
		o["new_chat_members"] = []object{bot}
	case strings.HasPrefix(m.Service, "removed"):
		o["left_chat_member"] = bot
	case strings.HasPrefix(m.Service, "topic "):
		o["forum_topic_created"] = object{"name": strings.TrimPrefix(m.Service, "topic "), "icon_color": 7322096}
	}
}

// wireEntities gives the parts of the text that are marked up: a person's
// command, or the bot's own HTML.
func wireEntities(m Message) []Entity {
	if m.HTML != "" {
		marked, err := parseHTML(m.HTML)
		if err == nil {
			return marked.Entities
		}
	}
	if isCommand(m.Text) {
		word, _, _ := strings.Cut(strings.ReplaceAll(m.Text, "\n", " "), " ")
		return []Entity{{Type: "bot_command", Length: units(word)}}
	}
	return nil
}

// units counts UTF-16 code units, as the Bot API measures texts.
func units(s string) int { return len(utf16.Encode([]rune(s))) }
