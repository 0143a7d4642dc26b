package bot

import (
	"slices"
	"time"

	"leafround/bot/ledger"
	"leafround/core/answer"
	"leafround/core/entry"
)

// source tells whose words entries are: a message at a revision, and its
// sender. The one who settles a question is not the one whose words are logged.
type source struct {
	person   int64
	manager  bool
	sentAt   time.Time
	message  int64
	revision int
	next     int // ordinal of the next entry
}

func (t *turn) ownWords() *source {
	return &source{person: t.in.From.ID, manager: t.member.Manager, sentAt: t.in.SentAt,
		message: t.msg.ID, revision: t.msg.Revision}
}

// log logs what a message says, answers each entry, and then the question
// that stood behind them.
func (t *turn) log(r entry.Reading) error {
	logged, refusal, err := t.record(t.ownWords(), r.Entries)
	if err != nil {
		return err
	}
	if refusal != "" && len(logged) == 0 {
		return t.refuse(refusal)
	}
	if err := t.lapseBehind(r.Entries); err != nil {
		return err
	}
	t.answerLogged(logged, r.Understood)
	if refusal != "" {
		t.speak(answer.FromAsk(entry.Ask{Reason: refusal}))
	}
	if r.Also != nil {
		t.speak(answer.Question(t.farm, *r.Also, t.at))
	}
	return t.reply(t.msg)
}

// record appends entries to the log and folds them in. Where one may not be
// logged, nothing is, and refusal is the sentence that says why.
func (t *turn) record(s *source, entries []entry.Entry) (logged []entry.Logged, refusal string, err error) {
	for _, e := range entries {
		if refusal := t.refusal(s, e); refusal != "" {
			return nil, refusal, nil
		}
	}
	for _, e := range entries {
		var l entry.Logged
		switch e := e.(type) {
		case entry.Undo:
			l, refusal, err = t.withdraw(s)
		case entry.Correct:
			l, refusal, err = t.correct(s, e)
		default:
			l, err = t.append(s, scored(e, t.farm.Remnant))
		}
		if err != nil || refusal != "" {
			return logged, refusal, err
		}
		logged = append(logged, l)
		t.out.Entries = append(t.out.Entries, l.Entry)
	}
	return logged, "", t.follow(entries)
}

// scored reckons a count by the farm's rule for the remnant.
func scored(e entry.Entry, rule entry.RemnantRule) entry.Entry {
	if c, ok := e.(entry.Count); ok {
		return c.Scored(rule)
	}
	return e
}

// append keeps one entry and folds it in.
func (t *turn) append(s *source, e entry.Entry) (entry.Logged, error) {
	logged, err := t.tx.Append(t.ctx, ledger.Mark{Farm: t.row.ID, Person: s.person, Manager: s.manager,
		SentAt: s.sentAt, Message: s.message, Revision: s.revision, First: s.next}, []entry.Entry{e})
	if err != nil {
		return entry.Logged{}, err
	}
	s.next++
	t.farm.Apply(logged[0])
	return logged[0], nil
}

// replace notes that entries were mended or withdrawn, and folds that in.
func (t *turn) replace(old []entry.Logged, by int64) error {
	var ids []int64
	for _, l := range old {
		if l.Stands() {
			ids = append(ids, l.ID)
		}
	}
	if _, err := t.tx.Replace(t.ctx, t.row.ID, ids, by); err != nil {
		return err
	}
	for _, l := range old {
		if l.Stands() {
			l.ReplacedBy = by
			t.farm.Apply(l)
		}
	}
	return nil
}

// managers' settings: what a slip would cost the whole team.
var managersOnly = []entry.What{entry.SetHoldDays, entry.SetRename, entry.SetRetire, entry.SetSplit,
	entry.SetMerge, entry.SetManager}

// refusal says why an entry may not be logged, "" where it may.
func (t *turn) refusal(s *source, e entry.Entry) string {
	set, ok := e.(entry.Setup)
	if !ok {
		return ""
	}
	if set.What == entry.SetFarm {
		if _, err := time.LoadLocation(set.Zone); set.Zone != "" && err != nil {
			return "I know no zone " + set.Zone + ": it is a name such as Pacific/Auckland or Europe/Dublin."
		}
	}
	anew := set.What == entry.SetFarm && t.farm.Name != ""
	if (anew || slices.Contains(managersOnly, set.What)) && !s.manager {
		return "Only a manager can change that here: ask " + t.managers() + "."
	}
	return ""
}

// managers names the farm's managers.
func (t *turn) managers() string {
	members, err := t.tx.Members(t.ctx, t.row.ID)
	if err != nil {
		return "one of them"
	}
	names := ""
	for _, m := range members {
		if !m.Manager {
			continue
		}
		if names != "" {
			names += " or "
		}
		names += m.Name
	}
	if names == "" {
		return "whoever set the farm up"
	}
	return names
}
