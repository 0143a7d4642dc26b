package bot

import (
	"bytes"
	"fmt"

	"leafround/bot/calendar"
	"leafround/bot/chat"
	"leafround/bot/ledger"
	"leafround/bot/reply"
	"leafround/bot/sheet"
	"leafround/core/answer"
	"leafround/core/entry"
)

// file answers a question with a file: the log as a table, or the plan as a
// calendar.
func (t *turn) file(q entry.Question) error {
	doc, err := t.fileFor(q)
	if err != nil {
		return err
	}
	t.say(doc.Caption)
	out := t.compose()
	out.HTML, out.Document = "", &doc
	row, _, err := t.tx.Enqueue(t.ctx, ledger.Send{Out: out, Message: t.msg.ID})
	t.out.Sent = append(t.out.Sent, Shown{row, out})
	return err
}

func (t *turn) fileFor(q entry.Question) (chat.Document, error) {
	day := t.farm.Today(t.at)
	if q.About != entry.AskPlan {
		var b bytes.Buffer
		log := t.farm.Log()
		if err := sheet.Write(&b, t.zone(), log); err != nil {
			return chat.Document{}, err
		}
		return chat.Document{Name: fmt.Sprintf("log-%s.csv", day), Content: b.Bytes(),
			Caption: reply.LogFile(len(log))}, nil
	}
	plan, ok := answer.Question(t.farm, q, t.at).(answer.Plan)
	if !ok {
		return chat.Document{}, fmt.Errorf("bot: the plan has no steps to put into a file")
	}
	var stays []calendar.Stay
	for _, s := range plan.Steps {
		what, note := reply.Stay(s)
		stays = append(stays, calendar.Stay{From: s.From, To: s.To, What: what, Note: note})
	}
	return chat.Document{Name: fmt.Sprintf("plan-%s.ics", day), Caption: reply.PlanFile(len(stays)),
		Content: calendar.Write(t.farm.Name, t.at, stays)}, nil
}
