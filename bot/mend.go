package bot

import (
	"slices"

	"leafround/core/entry"
	"leafround/core/farm"
)

// withdraw takes back the sender's latest entry, or that of the message that
// is answered; a move goes as a whole.
func (t *turn) withdraw(s *source) (entry.Logged, string, error) {
	old, refusal, err := t.target(nil)
	if err != nil || refusal != "" {
		return entry.Logged{}, refusal, err
	}
	l, err := t.append(s, entry.Undo{})
	if err != nil {
		return l, "", err
	}
	if err := t.replace(t.whole(old), l.ID); err != nil {
		return l, "", err
	}
	if err := t.stripReplies(old.MessageID); err != nil {
		return l, "", err
	}
	return l, "", t.restore(s, old)
}

// stripReplies takes the buttons off what the bot said to a message that logs
// nothing any more: they have nothing left to undo.
func (t *turn) stripReplies(message int64) error {
	if len(t.standingOf(message)) > 0 {
		return nil
	}
	said, err := t.tx.Replies(t.ctx, message)
	if err != nil {
		return err
	}
	for _, r := range said {
		if len(r.Out.Buttons) == 0 {
			continue
		}
		if err := t.strip(r.ID); err != nil {
			return err
		}
	}
	return nil
}

// whole gives an entry with what belongs to it: the other half of a move.
func (t *turn) whole(l entry.Logged) []entry.Logged {
	g, ok := l.Entry.(entry.Graze)
	if !ok || !g.Moved {
		return []entry.Logged{l}
	}
	var all []entry.Logged
	for _, o := range t.farm.Log() {
		if o.MessageID != l.MessageID || !o.Stands() {
			continue
		}
		if other, ok := o.Entry.(entry.Graze); ok && other.Moved {
			all = append(all, o)
		}
	}
	return all
}

// restore puts back what a withdrawn correction had mended: the log gets the
// first wording once more.
func (t *turn) restore(s *source, gone entry.Logged) error {
	for _, o := range t.farm.Log() {
		c, ok := t.farm.Entry(o.ReplacedBy)
		if !ok || c.Entry.Kind() != entry.KindCorrect || c.MessageID != gone.MessageID || o.ID > c.ID {
			continue
		}
		again := *s
		again.person, again.sentAt, again.manager = o.MemberID, o.SentAt, o.Manager
		if _, err := t.append(&again, o.Entry); err != nil {
			return err
		}
		s.next = again.next
		return nil
	}
	return nil
}

// target finds the entry that an undo (nil) or a correction means.
func (t *turn) target(c *entry.Correct) (entry.Logged, string, error) {
	old, found, err := t.meant(c)
	if err != nil {
		return old, "", err
	}
	if !found {
		return old, "I find nothing of yours to change: reply to the message that you mean.", nil
	}
	if old.MemberID != t.in.From.ID && !t.member.Manager {
		return old, "That is " + old.Member + "'s: only " + old.Member + " or a manager can change it.", nil
	}
	return old, "", nil
}

func (t *turn) meant(c *entry.Correct) (entry.Logged, bool, error) {
	if t.in.ReplyTo != 0 {
		if l, found, err := t.answered(c); found || err != nil {
			return l, found, err
		}
	}
	if c == nil || c.About == "" && c.Day.IsZero() && !c.Told() {
		l, found := t.farm.LatestBy(t.in.From.ID)
		return l, found, nil
	}
	log := t.farm.Log()
	for i := len(log) - 1; i >= 0; i-- {
		if l := log[i]; l.Stands() && l.MemberID == t.in.From.ID && t.fits(l, *c) {
			return l, true, nil
		}
	}
	if c.About == "" && c.Day.IsZero() && c.Field != entry.FieldPaddock {
		l, found := t.farm.LatestBy(t.in.From.ID)
		return l, found, nil
	}
	return entry.Logged{}, false, nil
}

// fits tells whether a correction can mean an entry.
func (t *turn) fits(l entry.Logged, c entry.Correct) bool {
	paddock := farm.PaddockOf(l.Entry)
	same := func(name string) bool { return entry.FoldName(name) == entry.FoldName(paddock) }
	if c.About != "" && !same(c.About) || !c.Day.IsZero() && l.Entry.On() != c.Day {
		return false
	}
	if c.Field == entry.FieldPaddock && c.From != "" && !same(c.From) {
		return false
	}
	_, ok := mended(l.Entry, c)
	return ok
}

// answered finds the latest standing entry of the message that is replied to,
// or of the one that the bot answered there.
func (t *turn) answered(c *entry.Correct) (entry.Logged, bool, error) {
	m, found, err := t.tx.MessageAt(t.ctx, t.chat.ID, t.in.ReplyTo)
	if err != nil {
		return entry.Logged{}, false, err
	}
	id := m.ID
	if !found {
		said, found, err := t.tx.BotMessage(t.ctx, t.chat.ID, t.in.ReplyTo)
		if err != nil || !found || said.Message == 0 {
			return entry.Logged{}, false, err
		}
		id = said.Message
	}
	all := t.standingOf(id)
	for _, l := range slices.Backward(all) {
		if c == nil || t.fits(l, *c) {
			return l, true, nil
		}
	}
	return entry.Logged{}, false, nil
}

// standingOf gives the entries that stand for a message, those included that a
// correction put in the place of its own.
func (t *turn) standingOf(message int64) []entry.Logged {
	var all []entry.Logged
	seen := map[int64]bool{}
	for _, l := range t.farm.Log() {
		if l.MessageID != message {
			continue
		}
		for !l.Stands() {
			next, ok := t.heir(l)
			if !ok {
				break
			}
			l = next
		}
		if k := l.Entry.Kind(); l.Stands() && !seen[l.ID] && k != entry.KindUndo && k != entry.KindCorrect {
			seen[l.ID] = true
			all = append(all, l)
		}
	}
	return all
}

// heir gives the entry that a correction put in the place of another: the one
// that was logged right after the correction.
func (t *turn) heir(l entry.Logged) (entry.Logged, bool) {
	by, ok := t.farm.Entry(l.ReplacedBy)
	if !ok || by.Entry.Kind() != entry.KindCorrect {
		return entry.Logged{}, false
	}
	best := entry.Logged{}
	for _, o := range t.farm.Log() {
		if o.MessageID == by.MessageID && o.ID > by.ID && (best.ID == 0 || o.ID < best.ID) {
			best = o
		}
	}
	return best, best.ID != 0
}

// correct mends an entry: the correction is logged, and behind it the entry as
// it should have been.
func (t *turn) correct(s *source, c entry.Correct) (entry.Logged, string, error) {
	old, refusal, err := t.target(&c)
	if err != nil || refusal != "" {
		return entry.Logged{}, refusal, err
	}
	better, ok := mended(old.Entry, c)
	if !ok {
		return entry.Logged{}, "A " + string(old.Entry.Kind()) + " has no " + word(c.Field) + " to mend: say it again as it should be, and undo the other.", nil
	}
	if better.On() > t.farm.Today(t.at) && better.Kind() != entry.KindHold {
		return entry.Logged{}, "That day is still to come: which day was it?", nil
	}
	l, err := t.append(s, c)
	if err != nil {
		return l, "", err
	}
	if err := t.replace([]entry.Logged{old}, l.ID); err != nil {
		return l, "", err
	}
	as := *s
	as.person, as.sentAt, as.manager = old.MemberID, old.SentAt, old.Manager
	_, err = t.append(&as, scored(better, t.farm.Remnant))
	s.next = as.next
	return l, "", err
}

func word(f entry.Field) string {
	if f == entry.FieldTillers {
		return "scores"
	}
	return string(f)
}
