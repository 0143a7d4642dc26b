package bot

import (
	"context"
	"time"

	"leafround/bot/chat"
	"leafround/bot/ledger"
	"leafround/core/entry"
	"leafround/core/farm"
	"leafround/parser"
)

// turn is the handling of one update.
type turn struct {
	b   *Bot
	ctx context.Context
	tx  *ledger.Tx
	in  chat.Incoming

	chat   ledger.Chat
	row    ledger.Farm
	kept   *keptFarm
	farm   *farm.Farm
	member ledger.Member
	msg    ledger.Message
	at     time.Time // when the message was written, in the farm's zone

	asks  []ledger.Asked // the chat's open questions, once looked up
	asked bool

	out Outcome
}

// handle does all that one update asks for.
func (t *turn) handle(row ledger.InboxRow) error {
	in, err := t.b.o.Decode(row.Raw)
	if err != nil {
		return ledger.Hopeless(err)
	}
	t.in, t.out.In = in, in
	if in.From.IsBot {
		return nil
	}
	switch in.Kind {
	case chat.Message:
		return t.message()
	case chat.Edited:
		return t.edited()
	case chat.Press:
		return t.press()
	case chat.Joined:
		return t.joined()
	case chat.Left:
		return t.left()
	case chat.Migrated:
		return t.tx.MoveChat(t.ctx, in.Chat, in.NewChat)
	}
	return nil
}

// meet finds the chat and its farm. found is false where there is none yet;
// then nothing but setting one up makes sense.
func (t *turn) meet() (found bool, err error) {
	if t.chat, err = t.tx.MeetChat(t.ctx, t.in.Chat, t.in.Private, t.in.Title); err != nil {
		return false, err
	}
	id := t.chat.Farm
	if id == 0 && t.in.Private {
		farms, err := t.tx.FarmsOf(t.ctx, t.in.From.ID)
		if err != nil {
			return false, err
		}
		if len(farms) == 1 {
			id = farms[0].ID
		}
	}
	if id == 0 {
		return false, nil
	}
	return true, t.enter(id)
}

// enter takes a farm up: holds it, and knows the sender on it.
func (t *turn) enter(id int64) error {
	row, err := t.tx.LockFarm(t.ctx, id)
	if err != nil {
		return err
	}
	if t.member, err = t.tx.Meet(t.ctx, id, t.in.From.ID, t.in.From.Name); err != nil {
		return err
	}
	if err := t.keep(row); err != nil {
		return err
	}
	t.at = t.in.SentAt.In(t.zone())
	t.out.Farm, t.out.At = id, t.at
	return nil
}

func (t *turn) zone() *time.Location {
	if t.farm != nil && t.farm.Zone != nil {
		return t.farm.Zone
	}
	return time.UTC
}

// message handles a new message.
func (t *turn) message() error {
	found, err := t.meet()
	if err != nil {
		return err
	}
	t.out.At = t.in.SentAt
	if found {
		t.out.At = t.at
	}
	var fresh bool
	t.msg, fresh, err = t.tx.SaveMessage(t.ctx, ledger.Message{
		Chat: t.chat.ID, MessageID: t.in.MessageID, Farm: t.row.ID, Person: t.in.From.ID,
		SentAt: t.in.SentAt, Text: t.in.Text, Topic: t.in.Topic, ReplyTo: t.in.ReplyTo, State: "read"})
	if err != nil || !fresh {
		return err
	}
	switch {
	case !found:
		return t.strange()
	case t.in.File != nil:
		return t.document()
	case t.in.Pin != nil:
		return t.pin()
	case t.in.Text == "":
		return t.media()
	}
	if t.in.Private && t.chat.Farm != 0 && otherFarm(t.in.Text) {
		return t.choose()
	}
	if done, err := t.settleInWords(); done || err != nil {
		return err
	}
	r := t.read(t.in.Text)
	if len(r.Understood) > 0 {
		r = t.readAgain(r)
	}
	if until, ok := t.endOfHold(r); ok {
		r = until
	}
	return t.act(r)
}

// read reads a text as the sender means it on this farm at this moment.
func (t *turn) read(text string) entry.Reading {
	return parser.Read(text, t.context())
}

func (t *turn) context() parser.Context {
	c := parser.Context{Now: t.at, Book: t.kept.register(), MonthFirst: parser.MonthFirst(t.farm.ZoneName),
		Bot: t.b.o.Name, Rule: t.farm.Remnant, Reply: t.in.ReplyTo != 0}
	c.Recent, c.Last = t.recent()
	return c
}

// memory is how long bare scores still mean the paddock that was named last.
const memory = time.Hour

// recent gives the paddock that the sender spoke of within the hour, and what
// their latest message logged.
func (t *turn) recent() (paddock string, last []entry.Entry) {
	log := t.farm.Log()
	message, since := int64(0), time.Time{}
	for i := len(log) - 1; i >= 0 && t.at.Sub(log[i].SentAt) <= memory; i-- {
		l := log[i]
		if l.MemberID != t.in.From.ID || l.SentAt.After(t.at) || !l.Stands() {
			continue
		}
		if message == 0 {
			message = l.MessageID
		}
		if l.MessageID == message {
			last = append([]entry.Entry{l.Entry}, last...)
		}
		if name := farm.PaddockOf(l.Entry); name != "" && paddock == "" {
			paddock, since = name, l.SentAt
		}
	}
	if a, ok := t.unanswered(); ok && a.AskedAt.After(since) {
		return a.Ask.Paddock, last // bare scores answer that question, or nothing
	}
	if s, ok := t.pinned(); ok && (paddock == "" || s.At.After(since)) {
		paddock = s.Paddock
	}
	return paddock, last
}

// act does what a reading asks for.
func (t *turn) act(r entry.Reading) error {
	switch {
	case r.Ask != nil:
		return t.ask(*r.Ask)
	case r.Question != nil:
		return t.question(*r.Question)
	case len(r.Entries) > 0:
		return t.log(r)
	}
	return nil
}
