// Package chat holds what goes in and out of a chat, as values: an [Incoming]
// update, an [Outgoing] message with its buttons, picture or file. It knows
// nothing of Telegram's JSON (bot/telegram translates) and nothing of grass.
//
//	in := chat.Incoming{Kind: chat.Message, Chat: -100, Text: "p12 2 2.5 2"}
//	out := chat.Outgoing{Chat: in.Chat, ReplyTo: in.MessageID, HTML: "<b>12</b>: ..."}
package chat

import "time"

// Kind tells what sort of update came in.
type Kind string

// The kinds of update that the program acts on.
const (
	Message  Kind = "message"  // a new message
	Edited   Kind = "edited"   // a message was edited by its sender
	Press    Kind = "press"    // a button under one of the bot's messages
	Joined   Kind = "joined"   // the bot was added to a chat, or its rights changed
	Left     Kind = "left"     // the bot was removed from a chat
	Migrated Kind = "migrated" // the group became a supergroup with a new id
	Other    Kind = "other"    // known to Telegram, of no use to us, or unknown
)

// Person is a sender.
type Person struct {
	ID    int64
	Name  string // what people call them: first name, else user name
	IsBot bool
}

// Pin is a shared location, degrees, north and east positive.
type Pin struct{ Lat, Lon float64 }

// File is a document that was sent; its content is fetched by ID when needed.
type File struct {
	ID   string
	Name string
	Size int64 // bytes
}

// Incoming is one update from the Bot API, decoded.
type Incoming struct {
	UpdateID  int64
	Kind      Kind
	Chat      int64
	Title     string // the group's title
	Private   bool
	Topic     int // forum topic (message_thread_id), 0 for none
	From      Person
	MessageID int // of the message, of the edited one, or of the one whose button was pressed
	ReplyTo   int // the message that this one answers, 0 for none
	SentAt    time.Time
	EditedAt  time.Time
	Text      string // text or caption
	Pin       *Pin
	File      *File
	Media     string // "photo", "sticker", "voice", ... where there is no text to read
	PressID   string // callback query id
	PressData string // what the button carries
	NewChat   int64  // Migrated: the new id
}

// Button is one inline button.
type Button struct {
	Label string `json:"label"`
	Data  string `json:"data"` // at most 64 bytes
}

// Outgoing is one thing to send. Exactly one of HTML, Picture, Document,
// React, Answer and Strip says what.
type Outgoing struct {
	Chat     int64      `json:"chat"`
	Topic    int        `json:"topic,omitempty"`
	ReplyTo  int        `json:"reply_to,omitempty"` // message to answer (reply_parameters)
	HTML     string     `json:"html,omitempty"`     // escaped HTML, at most 4,096 UTF-16 units
	Buttons  [][]Button `json:"buttons,omitempty"`
	Edit     int        `json:"edit,omitempty"` // edit this message of ours instead of sending
	Picture  *Picture   `json:"picture,omitempty"`
	Document *Document  `json:"document,omitempty"`
	React    string     `json:"react,omitempty"`  // a reaction to ReplyTo, one emoji
	Answer   string     `json:"answer,omitempty"` // answer to a button press, by its PressID
	AnswerTo string     `json:"answer_to,omitempty"`
	Strip    int        `json:"strip,omitempty"` // take the buttons off this message of ours
}

// Picture is a PNG with its caption (escaped HTML, at most 1,024 UTF-16 units).
type Picture struct {
	PNG     []byte `json:"png"`
	Shows   string `json:"shows"` // what it shows, in plain words
	Caption string `json:"caption,omitempty"`
}

// Document is a file with its name.
type Document struct {
	Name    string `json:"name"`
	Content []byte `json:"content"`
	Caption string `json:"caption,omitempty"`
}
