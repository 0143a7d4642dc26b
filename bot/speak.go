package bot

import (
	"slices"

	"leafround/bot/chat"
	"leafround/bot/ledger"
	"leafround/bot/reply"
	"leafround/core/answer"
	"leafround/core/entry"
)

// speak puts an answer into the turn's reply.
func (t *turn) speak(a answer.Answer) {
	t.out.Replies = append(t.out.Replies, Spoken{HTML: reply.HTML(a, t.voice()), Answer: a})
}

// say puts a sentence of the bot's own into the reply; it carries no figures.
func (t *turn) say(sentence string) {
	t.speak(answer.FromAsk(entry.Ask{Reason: sentence}))
}

// refuse answers with the sentence that says why not.
func (t *turn) refuse(sentence string) error {
	t.say(sentence)
	return t.reply(t.msg)
}

func (t *turn) voice() reply.Voice {
	if t.farm == nil {
		return reply.Voice{}
	}
	return reply.Voice{Acres: t.farm.Units == "acres", Inches: t.farm.Inches()}
}

// answerLogged answers each entry, alarms first; where spelling was forgiven, the last
// reply says what was understood, at its end.
func (t *turn) answerLogged(logged []entry.Logged, understood []string) {
	var as []answer.Answer
	for _, l := range logged {
		as = append(as, answer.Entry(t.farm, l, t.at))
	}
	slices.SortStableFunc(as, answer.ByUrgency)
	v := t.voice()
	v.Understood = understood
	for i, html := range reply.Each(as, v) {
		t.out.Replies = append(t.out.Replies, Spoken{HTML: html, Answer: as[i]})
	}
}

// question answers a question.
func (t *turn) question(q entry.Question) error {
	if q.File {
		return t.file(q)
	}
	a := answer.Question(t.farm, q, t.at)
	t.speak(a)
	if q.Picture {
		return t.pictureOf(q, a)
	}
	out := t.compose()
	out.Buttons = buttonsUnder(a, t.msg)
	_, err := t.send(t.msg, out)
	return err
}

// compose joins what was spoken into one message.
func (t *turn) compose() chat.Outgoing {
	var texts []string
	for _, s := range t.out.Replies {
		texts = append(texts, s.HTML)
	}
	return chat.Outgoing{Chat: t.chat.ID, Topic: t.in.Topic, ReplyTo: t.in.MessageID, HTML: reply.Join(texts)}
}

// reply sends what was spoken as the reply to a message.
func (t *turn) reply(m ledger.Message) error {
	if len(t.out.Replies) == 0 {
		return nil
	}
	if done, err := t.acknowledge(m); done || err != nil {
		return err
	}
	out := t.compose()
	out.Buttons = buttonsOf(t.out.Replies, m)
	_, err := t.send(m, out)
	return err
}

// send puts a message into the outbox, cut where it is too long for one. It
// gives the row of the last part, which bears the buttons.
func (t *turn) send(m ledger.Message, out chat.Outgoing) (row int64, err error) {
	parts := reply.Split(out.HTML)
	for i, html := range parts {
		part := out
		part.HTML = html
		if i < len(parts)-1 {
			part.Buttons = nil
		}
		if row, _, err = t.tx.Enqueue(t.ctx, ledger.Send{Out: part, Message: m.ID}); err != nil {
			return 0, err
		}
		t.out.Sent = append(t.out.Sent, Shown{row, part})
	}
	return row, nil
}
