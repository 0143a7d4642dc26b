package telegram

import "encoding/json"

// The parts of an update that we read (https://core.telegram.org/bots/api).
// They are narrower than the client library's types on purpose: those fail
// on an unknown kind of forward, say, and the message would be lost with it.
type wireUpdate struct {
	ID           int64           `json:"update_id"`
	Message      json.RawMessage `json:"message"`
	Edited       json.RawMessage `json:"edited_message"`
	Callback     json.RawMessage `json:"callback_query"`
	MyChatMember json.RawMessage `json:"my_chat_member"`
}

type wireUser struct {
	ID        int64  `json:"id"`
	IsBot     bool   `json:"is_bot"`
	FirstName string `json:"first_name"`
	Username  string `json:"username"`
}

type wireChat struct {
	ID    int64  `json:"id"`
	Type  string `json:"type"`
	Title string `json:"title"`
}

type wireMessage struct {
	ID              int           `json:"message_id"`
	Thread          int           `json:"message_thread_id"`
	InTopic         bool          `json:"is_topic_message"`
	From            *wireUser     `json:"from"`
	SenderChat      *wireChat     `json:"sender_chat"`
	AuthorSignature string        `json:"author_signature"`
	Chat            wireChat      `json:"chat"`
	Date            int64         `json:"date"`
	EditDate        int64         `json:"edit_date"`
	ReplyTo         *wireReply    `json:"reply_to_message"`
	Text            string        `json:"text"`
	Caption         string        `json:"caption"`
	Location        *wireLocation `json:"location"`
	Document        *wireDocument `json:"document"`
	MigrateTo       int64         `json:"migrate_to_chat_id"`
	MigrateFrom     int64         `json:"migrate_from_chat_id"`
	wireMedia
}

// wireReply is the message that is answered. In a forum every message answers
// the service message that opened its topic, which is no answer to us.
type wireReply struct {
	ID      int             `json:"message_id"`
	Created json.RawMessage `json:"forum_topic_created"`
}

type wireLocation struct {
	Lat float64 `json:"latitude"`
	Lon float64 `json:"longitude"`
}

type wireDocument struct {
	ID   string `json:"file_id"`
	Name string `json:"file_name"`
	Size int64  `json:"file_size"`
}

// wireMedia is what may stand in place of a text; only its presence is read.
type wireMedia struct {
	Animation json.RawMessage `json:"animation"`
	Audio     json.RawMessage `json:"audio"`
	Photo     json.RawMessage `json:"photo"`
	Sticker   json.RawMessage `json:"sticker"`
	Story     json.RawMessage `json:"story"`
	Video     json.RawMessage `json:"video"`
	VideoNote json.RawMessage `json:"video_note"`
	Voice     json.RawMessage `json:"voice"`
	Contact   json.RawMessage `json:"contact"`
	Dice      json.RawMessage `json:"dice"`
	Poll      json.RawMessage `json:"poll"`
	Checklist json.RawMessage `json:"checklist"`
}

// name gives the medium's name in Telegram's word, "" for none.
func (m wireMedia) name() string {
	for _, k := range []struct {
		name string
		raw  json.RawMessage
	}{
		{"animation", m.Animation}, {"audio", m.Audio}, {"photo", m.Photo}, {"sticker", m.Sticker},
		{"story", m.Story}, {"video", m.Video}, {"video_note", m.VideoNote}, {"voice", m.Voice},
		{"contact", m.Contact}, {"dice", m.Dice}, {"poll", m.Poll}, {"checklist", m.Checklist},
	} {
		if present(k.raw) {
			return k.name
		}
	}
	return ""
}

func present(raw json.RawMessage) bool { return len(raw) > 0 && string(raw) != "null" }

type wireCallback struct {
	ID      string       `json:"id"`
	From    wireUser     `json:"from"`
	Message *wireMessage `json:"message"`
	Data    string       `json:"data"`
}

type wireMember struct {
	Chat wireChat `json:"chat"`
	From wireUser `json:"from"`
	Date int64    `json:"date"`
	New  struct {
		Status   string `json:"status"`
		IsMember *bool  `json:"is_member"`
	} `json:"new_chat_member"`
}
