package telegram

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"time"

	"leafround/bot/chat"
)

// Decode reads an update. One of a kind that we have no use for is
// [chat.Other]; one that can't be read is an error, and no second try will
// help it.
func Decode(raw []byte) (chat.Incoming, error) {
	var u wireUpdate
	if err := json.Unmarshal(raw, &u); err != nil {
		return chat.Incoming{}, fmt.Errorf("telegram: decode an update: %w", err)
	}
	in, err := u.read()
	if err != nil {
		return chat.Incoming{}, fmt.Errorf("telegram: decode update %d: %w", u.ID, err)
	}
	in.UpdateID = u.ID
	return in, nil
}

func (u wireUpdate) read() (chat.Incoming, error) {
	switch {
	case present(u.Message):
		return readMessage(u.Message, chat.Message)
	case present(u.Edited):
		return readMessage(u.Edited, chat.Edited)
	case present(u.Callback):
		return readPress(u.Callback)
	case present(u.MyChatMember):
		return readMember(u.MyChatMember)
	}
	return chat.Incoming{Kind: chat.Other}, nil
}

var (
	errNoChat    = errors.New("it has no chat")
	errNoMessage = errors.New("it has no message number")
)

func readMessage(raw json.RawMessage, kind chat.Kind) (chat.Incoming, error) {
	var m wireMessage
	if err := json.Unmarshal(raw, &m); err != nil {
		return chat.Incoming{}, err
	}
	if m.Chat.ID == 0 {
		return chat.Incoming{}, errNoChat
	}
	in := m.incoming(kind)
	switch {
	case m.MigrateTo != 0:
		in.Kind, in.NewChat = chat.Migrated, m.MigrateTo
	case m.MigrateFrom != 0:
		in.Kind, in.Chat, in.NewChat = chat.Migrated, m.MigrateFrom, m.Chat.ID
	case m.ID == 0:
		return chat.Incoming{}, errNoMessage
	case m.Chat.Type == "channel" || in.Text == "" && in.Media == "" && in.Pin == nil && in.File == nil:
		in.Kind = chat.Other // somebody joined, a title changed, ...
	}
	return in, nil
}

func (m wireMessage) incoming(kind chat.Kind) chat.Incoming {
	in := chat.Incoming{Kind: kind, Chat: m.Chat.ID, Title: plain(m.Chat.Title), Private: m.Chat.Type == "private",
		From: m.sender(), MessageID: m.ID, SentAt: moment(m.Date), EditedAt: moment(m.EditDate),
		Text: plain(m.Text), Media: m.name()}
	if in.Text == "" {
		in.Text = plain(m.Caption)
	}
	if m.InTopic {
		in.Topic = m.Thread
	}
	if m.ReplyTo != nil && !present(m.ReplyTo.Created) {
		in.ReplyTo = m.ReplyTo.ID
	}
	if m.Location != nil {
		in.Pin = &chat.Pin{Lat: m.Location.Lat, Lon: m.Location.Lon}
	}
	if m.Document != nil {
		in.File = &chat.File{ID: m.Document.ID, Name: plain(m.Document.Name), Size: m.Document.Size}
	}
	return in
}

// sender gives who wrote a message. An administrator who posts as the group
// is one nameless person of that group, not the bot that Telegram names.
func (m wireMessage) sender() chat.Person {
	if c := m.SenderChat; c != nil && c.ID == m.Chat.ID {
		name := m.AuthorSignature
		if name == "" {
			name = c.Title
		}
		return chat.Person{ID: c.ID, Name: plain(name)}
	}
	if m.From == nil {
		return chat.Person{}
	}
	return m.From.person()
}

func (u wireUser) person() chat.Person {
	name := plain(u.FirstName)
	if name == "" {
		name = plain(u.Username)
	}
	if name == "" {
		name = fmt.Sprint("person ", u.ID)
	}
	return chat.Person{ID: u.ID, Name: name, IsBot: u.IsBot}
}

func readPress(raw json.RawMessage) (chat.Incoming, error) {
	var c wireCallback
	if err := json.Unmarshal(raw, &c); err != nil {
		return chat.Incoming{}, err
	}
	in := chat.Incoming{Kind: chat.Press, From: c.From.person(), PressID: c.ID, PressData: plain(c.Data)}
	if c.Message == nil || c.Message.Chat.ID == 0 {
		in.Kind = chat.Other // pressed under a message that was sent through an inline query
		return in, nil
	}
	m := c.Message.incoming(chat.Press)
	in.Chat, in.Title, in.Private, in.Topic = m.Chat, m.Title, m.Private, m.Topic
	in.MessageID, in.SentAt = m.MessageID, m.SentAt
	return in, nil
}

func readMember(raw json.RawMessage) (chat.Incoming, error) {
	var m wireMember
	if err := json.Unmarshal(raw, &m); err != nil {
		return chat.Incoming{}, err
	}
	if m.Chat.ID == 0 {
		return chat.Incoming{}, errNoChat
	}
	in := chat.Incoming{Kind: chat.Joined, Chat: m.Chat.ID, Title: plain(m.Chat.Title),
		Private: m.Chat.Type == "private", From: m.From.person(), SentAt: moment(m.Date)}
	away := m.New.IsMember != nil && !*m.New.IsMember
	switch status := m.New.Status; {
	case m.Chat.Type == "channel":
		in.Kind = chat.Other
	case status == "left" || status == "kicked" || status == "restricted" && away:
		in.Kind = chat.Left
	}
	return in, nil
}

// moment reads a Unix time; 0 is none.
func moment(unix int64) time.Time {
	if unix == 0 {
		return time.Time{}
	}
	return time.Unix(unix, 0).UTC()
}

// plain takes out the NUL characters, which a text may hold and a database not.
func plain(s string) string { return strings.ReplaceAll(s, "\x00", "") }
