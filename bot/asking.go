package bot

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"leafround/bot/chat"
	"leafround/bot/ledger"
	"leafround/core/answer"
	"leafround/core/entry"
	"leafround/core/farm"
	"leafround/parser"
)

// patience is how long a question of the bot's waits for its answer.
const patience = 24 * time.Hour

// mostOptions is how many options a question shows, "none of these" apart.
const mostOptions = 5

// ask asks the sender back; nothing is logged until it is answered.
func (t *turn) ask(a entry.Ask) error {
	if len(a.Options) > mostOptions {
		a.Options = a.Options[:mostOptions]
	}
	id, err := t.tx.OpenAsk(t.ctx, ledger.Asked{Farm: t.row.ID, Chat: t.chat.ID, Message: t.msg.ID,
		Revision: t.msg.Revision, Person: t.in.From.ID, Ask: a, AskedAt: t.in.SentAt})
	if err != nil {
		return err
	}
	if err := t.tx.SetState(t.ctx, t.msg.ID, "asked"); err != nil {
		return err
	}
	t.speak(answer.FromAsk(a))
	out := t.compose()
	out.Buttons = askButtons(id, a)
	row, err := t.send(t.msg, out)
	if err != nil || id == 0 {
		return err
	}
	return t.tx.AskedIn(t.ctx, id, row)
}

func askButtons(id int64, a entry.Ask) [][]chat.Button {
	if len(a.Options) == 0 {
		return nil
	}
	var rows [][]chat.Button
	for i, o := range a.Options {
		rows = append(rows, []chat.Button{{Label: o.Label, Data: fmt.Sprintf("ask:%d:%d", id, i)}})
	}
	return append(rows, []chat.Button{{Label: "None of these", Data: fmt.Sprintf("ask:%d:none", id)}})
}

// settleInWords takes a text as the answer to a question of the bot's, where it
// is one. done tells that the text needs no further reading.
func (t *turn) settleInWords() (done bool, err error) {
	asks, err := t.tx.OpenAsks(t.ctx, t.chat.ID)
	if err != nil {
		return false, err
	}
	t.asks, t.asked = asks, true
	for _, a := range asks {
		answers := a.BotID != 0 && a.BotID == t.in.ReplyTo
		if a.Person != t.in.From.ID && !(answers && t.member.Manager) || t.in.ReplyTo != 0 && !answers {
			continue
		}
		r, choice, ok := t.understand(a)
		if !ok {
			continue
		}
		if t.in.SentAt.Sub(a.AskedAt) > patience {
			return true, t.tooLate(a)
		}
		return true, t.settle(a, choice, r)
	}
	return false, nil
}

// understand reads the text as an answer to a question: one of its options,
// none of them, or the words that were missing.
func (t *turn) understand(a ledger.Asked) (r entry.Reading, choice int, ok bool) {
	c := t.context()
	if i, ok := parser.Choose(t.in.Text, a.Ask, c); ok {
		return ofOption(a.Ask, i), i, true
	}
	m, found, err := t.tx.Message(t.ctx, a.Message)
	if err != nil || !found || !t.isFragment(a) {
		return r, 0, false
	}
	c.Now, c.Recent, c.Last, c.Reply = m.SentAt.In(t.zone()), "", nil, false
	if p := t.bare(t.in.Text); p != "" {
		c.Recent = p
		if r = parser.Read(m.Text, c); allOn(r.Entries, p) {
			return r, -1, true
		}
		c.Recent = ""
	}
	for _, whole := range completed(m.Text, t.in.Text) {
		if r = parser.Read(whole, c); len(r.Entries) > 0 && len(r.Understood) == 0 {
			return r, -1, true
		}
	}
	return r, 0, false
}

// Bounds of an answer in the sender's own words (ours).
const (
	fragmentWords = 4
	fragmentWait  = 30 * time.Minute
)

// isFragment tells whether the text can be an answer in the sender's own words:
// short, soon, theirs, and nothing that says enough by itself.
func (t *turn) isFragment(a ledger.Asked) bool {
	if len(strings.Fields(t.in.Text)) > fragmentWords || t.in.SentAt.Sub(a.AskedAt) > fragmentWait || a.Person != t.in.From.ID {
		return false
	}
	if l, ok := t.farm.LatestBy(a.Person); ok && l.SentAt.After(a.AskedAt) {
		return false // the talk has gone on
	}
	alone := t.read(t.in.Text)
	return len(alone.Entries) == 0 && (alone.Question == nil || t.bare(t.in.Text) != "")
}

// bare gives the paddock of a text that is nothing but its name.
func (t *turn) bare(text string) string {
	c := t.context()
	c.Recent, c.Last = "", nil
	r := parser.Read(text, c)
	if q := r.Question; q != nil && q.About == entry.AskPaddock && !q.Why && !q.Picture {
		return q.Paddock
	}
	if r.Ask == nil || len(r.Ask.Options) != 1 {
		return ""
	}
	if q := r.Ask.Options[0].Question; q != nil && q.About == entry.AskPaddock {
		return q.Paddock // "4": a score or a paddock; a paddock, where one was asked for
	}
	return ""
}

func allOn(entries []entry.Entry, paddock string) bool {
	return len(entries) > 0 && !slices.ContainsFunc(entries, func(e entry.Entry) bool {
		return farm.PaddockOf(e) != paddock
	})
}

// completed gives the ways in which an answer may complete a text.
func completed(text, answer string) []string {
	return []string{text + " " + answer, text + " in " + answer, text + " to " + answer, text + " until " + answer,
		answer + ": " + text}
}

// ofOption gives what an option stands for; -1 is none of them.
func ofOption(a entry.Ask, i int) entry.Reading {
	if i < 0 || i >= len(a.Options) {
		return entry.Reading{Ignored: true}
	}
	return entry.Reading{Entries: a.Options[i].Entries, Question: a.Options[i].Question}
}

// settle logs what the question was about, with its message's own sender and
// moment.
func (t *turn) settle(a ledger.Asked, choice int, r entry.Reading) error {
	open, err := t.tx.Settle(t.ctx, a.ID, choice, t.in.From.ID, t.in.SentAt)
	if err != nil || !open {
		return err
	}
	if err := t.strip(a.Outbox); err != nil {
		return err
	}
	m, found, err := t.tx.Message(t.ctx, a.Message)
	if err != nil || !found {
		return err
	}
	switch {
	case r.Question != nil:
		t.speak(answer.Question(t.farm, *r.Question, t.at))
		return t.reply(t.msg)
	case len(r.Entries) == 0:
		t.say("Nothing logged. Send it again as it should be.")
		return t.reply(t.msg)
	}
	return t.logSettled(m, a, r)
}

func (t *turn) logSettled(m ledger.Message, a ledger.Asked, r entry.Reading) error {
	who, found, err := t.tx.Member(t.ctx, t.row.ID, m.Person)
	if err != nil || !found {
		return err
	}
	old := t.standingOf(m.ID)
	s := &source{person: m.Person, manager: who.Manager, sentAt: m.SentAt, message: m.ID, revision: a.Revision}
	logged, refusal, err := t.record(s, r.Entries)
	if err != nil {
		return err
	}
	if refusal != "" {
		return t.refuse(refusal)
	}
	if err := t.replace(old, logged[0].ID); err != nil {
		return err
	}
	t.answerLogged(logged, nil)
	return t.reply(t.msg)
}

// tooLate closes a question that waited for more than a day, and says so.
func (t *turn) tooLate(a ledger.Asked) error {
	if _, err := t.tx.Lapse(t.ctx, a.ID, t.in.SentAt); err != nil {
		return err
	}
	if err := t.strip(a.Outbox); err != nil {
		return err
	}
	t.say("That question has lapsed after a day, and nothing was logged. Send the message again.")
	return t.reply(t.msg)
}

// lapseBehind closes the sender's open questions that what was just logged has
// made idle: it is of the same kind, and about a paddock that was in question.
func (t *turn) lapseBehind(entries []entry.Entry) error {
	asks, err := t.tx.OpenAsks(t.ctx, t.chat.ID)
	if err != nil {
		return err
	}
	for _, a := range asks {
		if a.Person != t.in.From.ID || !overtaken(a.Ask, entries) && !bearsOn(a.Ask, entries) {
			continue
		}
		if _, err := t.tx.Lapse(t.ctx, a.ID, t.in.SentAt); err != nil {
			return err
		}
		if err := t.strip(a.Outbox); err != nil {
			return err
		}
	}
	return nil
}

// bearsOn tells whether entries are about the paddock that an unclear message
// named.
func bearsOn(a entry.Ask, entries []entry.Entry) bool {
	return a.Paddock != "" && slices.ContainsFunc(entries, func(e entry.Entry) bool {
		return strings.EqualFold(farm.PaddockOf(e), a.Paddock)
	})
}

func overtaken(a entry.Ask, entries []entry.Entry) bool {
	for _, o := range a.Options {
		for _, asked := range o.Entries {
			for _, e := range entries {
				same := strings.EqualFold(farm.PaddockOf(e), farm.PaddockOf(asked))
				if e.Kind() == asked.Kind() && same && farm.PaddockOf(e) != "" {
					return true
				}
			}
		}
	}
	return false
}

// strip takes the buttons off a message of the bot's.
func (t *turn) strip(outbox int64) error {
	if outbox == 0 {
		return nil
	}
	_, _, err := t.tx.Enqueue(t.ctx, ledger.Send{Edits: outbox, Out: chat.Outgoing{Chat: t.chat.ID, Strip: 1}})
	return err
}
