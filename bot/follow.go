package bot

import (
	"context"
	"fmt"
	"strings"
	"time"

	"leafround/bot/ledger"
	"leafround/core/entry"
)

// follow keeps the farm's row, the chat and the members in step with what the
// log now says of them.
func (t *turn) follow(entries []entry.Entry) error {
	touched := false
	for _, e := range entries {
		switch e := e.(type) {
		case entry.Undo, entry.Correct:
			touched = true
		case entry.Setup:
			touched = true
			if err := t.followSetup(e); err != nil {
				return err
			}
		}
	}
	if !touched {
		return nil
	}
	if t.farm.Name != "" && (t.farm.Name != t.row.Name || t.farm.ZoneName != t.row.Zone) {
		if err := t.tx.NameFarm(t.ctx, t.row.ID, t.farm.Name, t.farm.ZoneName); err != nil {
			return err
		}
	}
	t.at = t.at.In(t.zone())
	t.out.At = t.at
	return t.followSummary()
}

// followSummary sets when the summary is due: set after the hour, it begins
// the next day.
func (t *turn) followSummary() error {
	minute, from := -1, entry.Date(0)
	if t.farm.SummaryAt != "" {
		m, err := minuteOf(t.farm.SummaryAt)
		if err != nil {
			return err
		}
		set := t.farm.SummarySt.In(t.zone())
		minute, from = m, entry.DateOf(set)
		if set.Hour()*60+set.Minute() >= minute {
			from = from.Add(1)
		}
	}
	before := -1
	if t.row.SummaryMinute != nil {
		before = *t.row.SummaryMinute
	}
	if before == minute && (minute < 0 || t.row.SummaryFrom != nil && entry.DateOf(*t.row.SummaryFrom) == from) {
		return nil
	}
	return t.tx.SetSummary(t.ctx, t.row.ID, minute, from)
}

func minuteOf(hhmm string) (int, error) {
	at, err := time.Parse("15:04", hhmm)
	if err != nil {
		return 0, fmt.Errorf("bot: summary hour %q: %w", hhmm, err)
	}
	return at.Hour()*60 + at.Minute(), nil
}

func (t *turn) followSetup(e entry.Setup) error {
	switch e.What {
	case entry.SetTopic:
		return t.tx.SetTopic(t.ctx, t.chat.ID, t.in.Topic)
	case entry.SetManager:
		return t.appoint(e.Name, !e.Off)
	}
	return nil
}

// appoint makes a member a manager, or no longer.
func (t *turn) appoint(name string, manager bool) error {
	members, err := t.tx.Members(t.ctx, t.row.ID)
	if err != nil {
		return err
	}
	for _, m := range members {
		if strings.EqualFold(m.Name, name) {
			return t.tx.SetManager(t.ctx, t.row.ID, m.Person, manager)
		}
	}
	return nil
}

// Appoint makes a person a manager of the farm that a chat speaks of: for
// scripts, whose marks say who manages. done is false while there is no farm.
func (b *Bot) Appoint(ctx context.Context, chat, person int64, name string) (done bool, err error) {
	err = b.book.In(ctx, func(ctx context.Context, tx *ledger.Tx) error {
		c, found, err := tx.Chat(ctx, chat)
		if err != nil || !found || c.Farm == 0 {
			return err
		}
		if _, err := tx.Meet(ctx, c.Farm, person, name); err != nil {
			return err
		}
		done = true
		return tx.SetManager(ctx, c.Farm, person, true)
	})
	return done, err
}
