package bot

import (
	"leafround/bot/chat"
	"leafround/bot/ledger"
	"leafround/core/answer"
	"leafround/core/entry"
)

// noted is the reaction by which a quiet farm hears that an entry went in: a
// writing hand, one of the few that every chat allows.
const noted = "✍"

// acknowledge puts a reaction to a message in the place of a reply, where the
// farm wants it quiet and the reply would say nothing new.
func (t *turn) acknowledge(m ledger.Message) (done bool, err error) {
	if t.farm == nil || !t.farm.Quiet || m.MessageID == 0 {
		return false, nil
	}
	for _, s := range t.out.Replies {
		if !routine(s.Answer) {
			return false, nil
		}
	}
	out := chat.Outgoing{Chat: t.chat.ID, Topic: t.in.Topic, ReplyTo: m.MessageID, React: noted}
	row, _, err := t.tx.Enqueue(t.ctx, ledger.Send{Out: out, Message: m.ID})
	t.out.Sent = append(t.out.Sent, Shown{row, out})
	return true, err
}

// routine tells whether an answer only confirms: a move, rain, a temperature or
// a note without anything that the team should hear.
func routine(a answer.Answer) bool {
	l, ok := a.(answer.Logged)
	if !ok || len(l.Remarks)+len(l.Cautions)+len(l.Others) > 0 {
		return false
	}
	switch e := l.Entry.(type) {
	case entry.Graze:
		return l.Before == nil || l.Before.When != "wait"
	case entry.Rain, entry.Temperature:
		return true
	case entry.Note:
		return e.Alarm == ""
	}
	return false
}
