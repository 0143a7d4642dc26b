package bot

import (
	"strconv"
	"strings"

	"leafround/bot/chat"
	"leafround/bot/ledger"
	"leafround/core/answer"
	"leafround/core/entry"
)

// press handles a button under one of the bot's messages. What it carries says
// what to do: "ask:ID:OPTION", "undo:MESSAGE", "farm:ID",
// or a question (see questionData).
func (t *turn) press() error {
	found, err := t.meet()
	if err != nil {
		return err
	}
	if t.in.SentAt.IsZero() {
		t.in.SentAt = t.b.o.Now()
	}
	t.at = t.in.SentAt.In(t.zone())
	t.out.At = t.at
	verb, rest, _ := strings.Cut(t.in.PressData, ":")
	toast := ""
	switch {
	case verb == "farm":
		err = t.pressFarm(rest)
	case !found:
	case verb == "ask":
		toast, err = t.pressAsk(rest)
	case verb == "undo":
		toast, err = t.pressUndo(rest)
	case verb == "q":
		err = t.pressQuestion(rest)
	}
	if err != nil {
		return err
	}
	_, _, err = t.tx.Enqueue(t.ctx, ledger.Send{Key: "press/" + t.in.PressID,
		Out: chat.Outgoing{Chat: t.chat.ID, AnswerTo: t.in.PressID, Answer: toast}})
	return err
}

// under gives the message that the button's message had answered: replies go
// there.
func (t *turn) under(id int64) (bool, error) {
	m, found, err := t.tx.Message(t.ctx, id)
	if found {
		t.msg, t.in.MessageID = m, m.MessageID
	}
	return found, err
}

func (t *turn) pressAsk(rest string) (toast string, err error) {
	number, option, _ := strings.Cut(rest, ":")
	id, _ := strconv.ParseInt(number, 10, 64)
	a, found, err := t.tx.Asked(t.ctx, id)
	if err != nil || !found || a.Chat != t.chat.ID {
		return "This question is not open any more.", err
	}
	if a.Person != t.in.From.ID && !t.member.Manager {
		return "Only who sent the message, or a manager, can answer this.", nil
	}
	if a.State != "open" {
		return "This question is settled already.", nil
	}
	if found, err := t.under(a.Message); err != nil || !found {
		return "", err
	}
	if t.in.SentAt.Sub(a.AskedAt) > patience {
		return "", t.tooLate(a)
	}
	choice, err := strconv.Atoi(option)
	if err != nil {
		choice = -1
	}
	return "", t.settle(a, choice, ofOption(a.Ask, choice))
}

// pressUndo withdraws all that still stands of a message.
func (t *turn) pressUndo(rest string) (toast string, err error) {
	id, _ := strconv.ParseInt(rest, 10, 64)
	pressed := t.in.MessageID
	if found, err := t.under(id); err != nil || !found {
		return "There is nothing to undo.", err
	}
	if t.msg.Person != t.in.From.ID && !t.member.Manager {
		return "Only who sent the message, or a manager, can undo it.", nil
	}
	old := t.standingOf(id)
	if len(old) == 0 {
		return "That is undone already.", nil
	}
	place, err := t.nextOrdinal(id)
	if err != nil {
		return "", err
	}
	s := &source{person: t.in.From.ID, manager: t.member.Manager, sentAt: t.in.SentAt, message: id,
		revision: t.msg.Revision, next: place}
	l, err := t.append(s, entry.Undo{})
	if err != nil {
		return "", err
	}
	if err := t.replace(old, l.ID); err != nil {
		return "", err
	}
	t.out.Entries = append(t.out.Entries, l.Entry)
	t.speak(answer.Entry(t.farm, l, t.at))
	if err := t.follow([]entry.Entry{l.Entry}); err != nil {
		return "", err
	}
	if said, found, err := t.tx.BotMessage(t.ctx, t.chat.ID, pressed); err == nil && found {
		if err := t.strip(said.ID); err != nil {
			return "", err
		}
	}
	return "", t.reply(t.msg)
}

// nextOrdinal gives the place behind all that a message has logged so far.
func (t *turn) nextOrdinal(message int64) (int, error) {
	all, err := t.tx.Entries(t.ctx, message)
	return len(all), err
}

// pressFarm says which farm a private chat speaks of, and then reads the
// message that had raised the question.
func (t *turn) pressFarm(rest string) error {
	number, message, _ := strings.Cut(rest, ":")
	id, _ := strconv.ParseInt(number, 10, 64)
	farms, err := t.tx.FarmsOf(t.ctx, t.in.From.ID)
	if err != nil || !t.in.Private {
		return err
	}
	for _, f := range farms {
		if f.ID == id {
			return t.turnTo(f, message)
		}
	}
	return nil
}

func (t *turn) turnTo(f ledger.Farm, message string) error {
	if err := t.tx.SetChatFarm(t.ctx, t.chat.ID, f.ID); err != nil {
		return err
	}
	if said, found, err := t.tx.BotMessage(t.ctx, t.chat.ID, t.in.MessageID); err == nil && found {
		if err := t.strip(said.ID); err != nil {
			return err
		}
	}
	id, _ := strconv.ParseInt(message, 10, 64)
	found, err := t.under(id)
	if err != nil {
		return err
	}
	t.say("From now on I answer for " + f.Name + " here; say “other farm” to change.")
	if !found {
		_, err := t.send(t.msg, t.compose())
		return err
	}
	t.in.Text, t.in.SentAt = t.msg.Text, t.msg.SentAt
	if err := t.tx.SetMessageFarm(t.ctx, t.msg.ID, f.ID); err != nil {
		return err
	}
	if err := t.enter(f.ID); err != nil {
		return err
	}
	if err := t.act(t.read(t.in.Text)); err != nil || len(t.out.Sent) > 0 {
		return err
	}
	return t.reply(t.msg)
}

// pressQuestion asks what a button stands for.
func (t *turn) pressQuestion(rest string) error {
	q, ok := questionOf(rest)
	if !ok {
		return nil
	}
	t.msg = ledger.Message{}
	return t.question(q)
}
