package practice

import (
	"encoding/json"
	"time"
)

// Deed names what an event did.
type Deed string

// The deeds that an event may tell of.
const (
	DidPerson   Deed = "person"   // somebody joined the cast
	DidGroup    Deed = "group"    // a group was made, or changed
	DidSay      Deed = "say"      // a message was written, by a person or the bot
	DidEdit     Deed = "edit"     // a message changed: text, caption, buttons
	DidReact    Deed = "react"    // the bot put a reaction to a message
	DidDelete   Deed = "delete"   // a message was taken away
	DidPress    Deed = "press"    // a person pressed a button
	DidToast    Deed = "toast"    // the bot answered a press
	DidUpdate   Deed = "update"   // an update was queued for the bot
	DidAck      Deed = "ack"      // the bot acknowledged updates
	DidFile     Deed = "file"     // a file's content came in
	DidCommands Deed = "commands" // the bot registered its commands
	DidClock    Deed = "clock"    // the clock was moved
)

// Event is one thing that happened, in order of Seq. Message holds the whole
// message as it is after the event.
type Event struct {
	Seq      int64       `json:"seq"`
	Did      Deed        `json:"did"`
	At       time.Time   `json:"at"`
	Message  *Message    `json:"message,omitempty"`
	Person   *Person     `json:"person,omitempty"`
	Group    *Group      `json:"group,omitempty"`
	Update   *Update     `json:"update,omitempty"`
	Offset   int64       `json:"offset,omitempty"` // DidAck: updates below it are done with
	Lead     Lead        `json:"lead,omitempty"`   // DidClock: how far the clock is ahead of the wall clock
	File     *StoredFile `json:"file,omitempty"`
	Press    *Press      `json:"press,omitempty"` // DidPress, DidToast
	Commands *Commands   `json:"commands,omitempty"`
}

// Lead is a time by which one clock is ahead of another.
type Lead = time.Duration

// Person is somebody who may write.
type Person struct {
	ID   int64  `json:"id"`
	Name string `json:"name"`
	Bot  bool   `json:"bot,omitempty"`
}

// Group is a group chat. An ID of 0 asks [Server.AddGroup] for a new one.
type Group struct {
	ID      int64   `json:"id"`
	Title   string  `json:"title"`
	Zone    string  `json:"zone,omitempty"`    // IANA zone in which the page shows its times
	Forum   bool    `json:"forum,omitempty"`   // it has topics
	Admins  []int64 `json:"admins,omitempty"`  // people with an administrator's rights
	Kicked  bool    `json:"kicked,omitempty"`  // the bot was put out
	MovedTo int64   `json:"movedTo,omitempty"` // the id that it has now
}

// Message is a message in a chat.
type Message struct {
	Chat     int64      `json:"chat"`
	ID       int        `json:"id"`
	Topic    int        `json:"topic,omitempty"`
	From     Person     `json:"from"`
	ReplyTo  int        `json:"replyTo,omitempty"`
	At       time.Time  `json:"sentAt"`
	EditedAt time.Time  `json:"editedAt,omitzero"`
	Text     string     `json:"text,omitempty"` // text or caption, plain
	HTML     string     `json:"html,omitempty"` // text or caption as the bot marked it up
	Buttons  [][]Button `json:"buttons,omitempty"`
	File     *File      `json:"file,omitempty"`
	Pin      *Pin       `json:"pin,omitempty"`
	Media    string     `json:"media,omitempty"`   // sticker, voice, ...: nothing to read
	Service  string     `json:"service,omitempty"` // what the chat itself says: "Ana added the bot"
	Reaction string     `json:"reaction,omitempty"`
	Gone     bool       `json:"gone,omitempty"` // deleted
}

// Button is an inline button under a message of the bot's.
type Button struct {
	Text string `json:"text"`
	Data string `json:"callback_data,omitempty"`
	URL  string `json:"url,omitempty"`
}

// Pin is a shared location in degrees, north and east positive.
type Pin struct {
	Lat float64 `json:"lat"`
	Lon float64 `json:"lon"`
}

// File describes a file under a message; Photo tells it was sent as a picture.
type File struct {
	ID     string `json:"id"`
	Name   string `json:"name"`
	Mime   string `json:"mime,omitempty"`
	Size   int    `json:"size"`
	Photo  bool   `json:"photo,omitempty"`
	Width  int    `json:"width,omitempty"`
	Height int    `json:"height,omitempty"`
}

// StoredFile is a file with its content.
type StoredFile struct {
	File
	Content []byte `json:"content"`
}

// Update is an update for the bot as it goes over the wire.
type Update struct {
	ID   int64           `json:"id"`
	Kind string          `json:"kind"` // message, edited_message, callback_query, ...
	Raw  json.RawMessage `json:"raw"`
}

// Press is the press of a button and the bot's answer to it.
type Press struct {
	QueryID string `json:"query"`
	By      Person `json:"by"`
	Chat    int64  `json:"chat"`
	Message int    `json:"message"`
	Data    string `json:"data,omitempty"`
	Answer  string `json:"answer,omitempty"` // shown to who pressed
	Alert   bool   `json:"alert,omitempty"`
}

// Commands are the slash commands that the bot registered for a scope.
type Commands struct {
	Scope string    `json:"scope"`
	List  []Command `json:"list"`
}

// Command is one slash command.
type Command struct {
	Command     string `json:"command"`
	Description string `json:"description"`
}
