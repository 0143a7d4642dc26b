package bot

import (
	"leafround/bot/ledger"
	"leafround/core/entry"
	"leafround/parser"
)

// unanswered gives the sender's latest question back that still waits, asked
// within the hour.
func (t *turn) unanswered() (ledger.Asked, bool) {
	if !t.asked {
		asks, err := t.tx.OpenAsks(t.ctx, t.chat.ID)
		if err != nil {
			return ledger.Asked{}, false
		}
		t.asks, t.asked = asks, true
	}
	for _, a := range t.asks {
		if ago := t.at.Sub(a.AskedAt); a.Person == t.in.From.ID && ago >= 0 && ago <= memory {
			return a, true
		}
	}
	return ledger.Asked{}, false
}

// endOfHold reads a text that says nothing by itself, such as "10 days", as the
// end of the holds that the sender has just logged without one.
func (t *turn) endOfHold(alone entry.Reading) (r entry.Reading, ok bool) {
	if len(alone.Entries) > 0 || alone.Question != nil {
		return r, false
	}
	c := t.context()
	last := c.Last
	c.Recent, c.Last = "", nil
	for _, e := range last {
		h, held := e.(entry.Hold)
		if !held || !h.Until.IsZero() {
			return r, false
		}
		whole := parser.Read(h.Paddock+" "+string(h.Reason)+" "+t.in.Text, c)
		if len(whole.Entries) != 1 {
			return r, false
		}
		end, held := whole.Entries[0].(entry.Hold)
		if !held || end.Until.IsZero() || end.Paddock != h.Paddock || end.Reason != h.Reason {
			return r, false
		}
		end.Date = h.Date
		r.Entries = append(r.Entries, end)
	}
	r.Text = t.in.Text
	return r, len(r.Entries) > 0
}

// readAgain reads a text anew where the sender has asked about another paddock
// since they logged anything: scores without a name are for that one.
func (t *turn) readAgain(r entry.Reading) entry.Reading {
	c := t.context()
	before, err := t.tx.Recent(t.ctx, t.row.ID, t.in.From.ID, t.in.SentAt.Add(-memory), t.in.SentAt, 3)
	if err != nil || c.Recent == "" {
		return r
	}
	for _, m := range before {
		if m.ID == t.msg.ID {
			continue
		}
		if l, ok := t.farm.LatestBy(t.in.From.ID); ok && !m.SentAt.After(l.SentAt) {
			return r
		}
		if p := t.bare(m.Text); p != "" && p != c.Recent {
			c.Recent = p
			return parser.Read(t.in.Text, c)
		}
	}
	return r
}
