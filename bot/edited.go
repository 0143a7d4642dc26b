package bot

import (
	"slices"
	"time"

	"leafround/bot/ledger"
	"leafround/bot/reply"
	"leafround/core/answer"
	"leafround/core/entry"
	"leafround/core/farm"
)

// edited reads a message anew that its sender has changed: what it says now
// replaces what it had logged, and the bot's reply is changed to match.
func (t *turn) edited() error {
	found, err := t.meet()
	if err != nil {
		return err
	}
	m, changed, known, err := t.tx.Revise(t.ctx, t.in.Chat, t.in.MessageID, t.in.Text, t.editedAt())
	if err != nil {
		return err
	}
	if !known {
		return t.message()
	}
	if !changed {
		return nil
	}
	t.msg, t.in.SentAt = m, m.SentAt
	if !found {
		return t.strange()
	}
	t.at = m.SentAt.In(t.zone())
	t.out.At = t.at
	if err := t.lapseOf(m); err != nil {
		return err
	}
	return t.reread(t.standingOf(m.ID))
}

// reread does what the changed text asks for, in the place of old.
func (t *turn) reread(old []entry.Logged) error {
	r := t.read(t.in.Text)
	switch {
	case r.Ask != nil:
		return t.ask(*r.Ask)
	case len(r.Entries) > 0:
		return t.relog(r, old)
	case len(old) > 0:
		if err := t.takeBack(old); err != nil {
			return err
		}
	}
	if r.Question != nil {
		t.speak(answer.Question(t.farm, *r.Question, t.at))
	}
	return t.reword()
}

// relog logs the changed text and replaces what the message had logged.
func (t *turn) relog(r entry.Reading, old []entry.Logged) error {
	after := t.actedOn(old)
	logged, refusal, err := t.record(t.ownWords(), r.Entries)
	if err != nil {
		return err
	}
	if refusal != "" && len(logged) == 0 {
		return t.refuse(refusal)
	}
	if err := t.replace(old, logged[0].ID); err != nil {
		return err
	}
	t.answerLogged(logged, r.Understood)
	if after != nil {
		t.warnLate(*after)
	}
	return t.reword()
}

// takeBack withdraws what a message had logged, when it says nothing any more.
func (t *turn) takeBack(old []entry.Logged) error {
	after := t.actedOn(old)
	s := t.ownWords()
	l, err := t.append(s, entry.Undo{})
	if err != nil {
		return err
	}
	if err := t.replace(old, l.ID); err != nil {
		return err
	}
	t.out.Entries = append(t.out.Entries, l.Entry)
	t.speak(answer.Entry(t.farm, l, t.at))
	if after != nil {
		t.warnLate(*after)
	}
	return t.follow([]entry.Entry{l.Entry})
}

// actedOn gives the first entry that somebody else logged about the same
// paddocks after what is being changed.
func (t *turn) actedOn(old []entry.Logged) *entry.Logged {
	var paddocks []string
	last := int64(0)
	for _, l := range old {
		paddocks = append(paddocks, farm.PaddockOf(l.Entry))
		last = max(last, l.ID)
	}
	for _, l := range t.farm.Log() {
		name := farm.PaddockOf(l.Entry)
		if last != 0 && l.ID > last && l.Stands() && l.MemberID != t.in.From.ID && name != "" && slices.Contains(paddocks, name) {
			return &l
		}
	}
	return nil
}

func (t *turn) warnLate(l entry.Logged) {
	if n := len(t.out.Replies); n > 0 {
		t.out.Replies[n-1].HTML += "\n" + reply.EditedLate(l.Member, farm.PaddockOf(l.Entry), l.SentAt.In(t.zone()))
	}
}

// reword changes the bot's reply to the message, or replies where there was
// none.
func (t *turn) reword() error {
	if len(t.out.Replies) == 0 {
		return nil
	}
	said, err := t.tx.Replies(t.ctx, t.msg.ID)
	if err != nil {
		return err
	}
	if len(said) == 0 {
		return t.reply(t.msg)
	}
	out := t.compose()
	out.HTML, out.Buttons = reply.Split(out.HTML)[0], buttonsOf(t.out.Replies, t.msg)
	row, _, err := t.tx.Enqueue(t.ctx, ledger.Send{Out: out, Message: t.msg.ID, Edits: said[0].ID})
	t.out.Sent = append(t.out.Sent, Shown{row, out})
	return err
}

// lapseOf closes the question that stood open about a message.
func (t *turn) lapseOf(m ledger.Message) error {
	a, found, err := t.tx.AskedAbout(t.ctx, m.ID)
	if err != nil || !found || a.State != "open" {
		return err
	}
	if _, err := t.tx.Lapse(t.ctx, a.ID, t.editedAt()); err != nil {
		return err
	}
	return t.strip(a.Outbox)
}

// editedAt gives the moment of the edit.
func (t *turn) editedAt() time.Time {
	if t.in.EditedAt.IsZero() {
		return t.b.o.Now()
	}
	return t.in.EditedAt
}
