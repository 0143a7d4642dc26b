package bot

import (
	"context"
	"fmt"
	"time"

	"leafround/bot/chat"
	"leafround/bot/ledger"
	"leafround/bot/reply"
	"leafround/core/answer"
	"leafround/core/entry"
)

// Summary sends a farm's summary of a day to its groups, once. now is the
// moment that it speaks of; after until it is too late to go out.
func (b *Bot) Summary(ctx context.Context, farm int64, day entry.Date, now, until time.Time) (ran bool, err error) {
	t := &turn{b: b, ctx: ctx}
	ran, err = b.book.Job(ctx, farm, ledger.Daily, day, now, func(ctx context.Context, tx *ledger.Tx, job int64) (err error) {
		t.ctx, t.tx = ctx, tx
		ok := false
		defer func() {
			if !ok {
				b.forget(farm)
			}
		}()
		err = t.summary(farm, day, now, until, job)
		ok = err == nil
		return err
	})
	if err != nil {
		return false, fmt.Errorf("bot: summary: %w", err)
	}
	if ran && b.o.Observe != nil {
		b.o.Observe(t.out)
	}
	return ran, nil
}

func (t *turn) summary(farm int64, day entry.Date, now, until time.Time, job int64) error {
	row, err := t.tx.Farm(t.ctx, farm)
	if err != nil {
		return err
	}
	if err := t.keep(row); err != nil {
		return err
	}
	t.at = now.In(t.zone())
	t.out.Farm, t.out.At = farm, t.at
	a := answer.Question(t.farm, entry.Question{About: entry.AskSummary}, t.at)
	t.speak(a)
	pictures, err := t.summaryPictures(a)
	if err != nil {
		return err
	}
	groups, err := t.tx.Groups(t.ctx, farm)
	if err != nil {
		return err
	}
	for _, g := range groups {
		for i, out := range t.summaryParts(pictures) {
			out.Chat, out.Topic = g.ID, g.Topic
			id, _, err := t.tx.Enqueue(t.ctx, ledger.Send{Key: fmt.Sprintf("summary/%d/%s/%d/%d", farm, day, g.ID, i),
				Out: out, Job: job, Until: until})
			if err != nil {
				return err
			}
			t.out.Sent = append(t.out.Sent, Shown{id, out})
		}
	}
	return nil
}

// summaryParts gives what goes to one group: the words, then the pictures.
func (t *turn) summaryParts(pictures []chat.Picture) []chat.Outgoing {
	var parts []chat.Outgoing
	for _, html := range reply.Split(t.out.Replies[0].HTML) {
		parts = append(parts, chat.Outgoing{HTML: html})
	}
	parts[len(parts)-1].Buttons = buttonsUnder(t.out.Replies[0].Answer, ledger.Message{})
	for _, p := range pictures {
		parts = append(parts, chat.Outgoing{Picture: &p})
	}
	return parts
}

// Mornings is the bot as the scheduler sees it.
type Mornings struct{ *Bot }

// Dailies gives the farms that have a daily summary.
func (m Mornings) Dailies(ctx context.Context) ([]chat.Daily, error) { return m.book.Dailies(ctx) }

// Make makes the summary of a farm's day, a midnight in UTC, and notes it as
// done.
func (m Mornings) Make(ctx context.Context, farm int64, day, now, until time.Time) (ran bool, err error) {
	return m.Summary(ctx, farm, entry.DateOf(day.UTC()), now, until)
}

// Skip notes that a day goes without a summary.
func (m Mornings) Skip(ctx context.Context, farm int64, day, now time.Time, why string) (fresh bool, err error) {
	return m.book.SkipJob(ctx, farm, ledger.Daily, entry.DateOf(day.UTC()), now, why)
}
