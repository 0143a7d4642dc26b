package bot

import (
	"context"
	"fmt"
	"time"

	"leafround/bot/ledger"
	"leafround/bot/reply"
	"leafround/core/entry"
	"leafround/core/pace/weather"
)

// takeWeather logs a file of daily weather; lines that can't be taken are
// named.
func (t *turn) takeWeather(content []byte) error {
	table := weather.Read(string(content))
	var bad []string
	for _, b := range table.Bad {
		bad = append(bad, b.String())
	}
	if len(table.Entries) == 0 {
		return t.refuse(faultList(bad))
	}
	if err := t.logWeather(t.ownWords(), table.Entries); err != nil {
		return err
	}
	t.out.Entries = table.Entries
	t.say(reply.WeatherTaken(table.Days, table.From, table.To, bad))
	return t.reply(t.msg)
}

// weatherKey tells which figure of which day an entry gives.
type weatherKey struct {
	day  entry.Date
	kind entry.Kind
}

// logWeather logs whole days: what was told of them before is replaced, so
// that the same table may come twice.
func (t *turn) logWeather(s *source, entries []entry.Entry) error {
	before := map[weatherKey][]entry.Logged{}
	for _, l := range t.farm.Log() {
		if k, ok := wholeDay(l.Entry); ok && l.Stands() {
			before[k] = append(before[k], l)
		}
	}
	logged, err := t.tx.Append(t.ctx, ledger.Mark{Farm: t.row.ID, Person: s.person, Manager: s.manager,
		SentAt: s.sentAt, Message: s.message, Revision: s.revision, First: s.next}, entries)
	if err != nil {
		return err
	}
	s.next += len(logged)
	var replaced []entry.Logged
	var ids, by []int64
	for _, l := range logged {
		k, _ := wholeDay(l.Entry)
		for _, old := range before[k] {
			ids, by = append(ids, old.ID), append(by, l.ID)
			old.ReplacedBy = l.ID
			replaced = append(replaced, old)
		}
		delete(before, k)
	}
	if _, err := t.tx.ReplaceEach(t.ctx, t.row.ID, ids, by); err != nil {
		return err
	}
	if len(replaced) > foldAnew {
		t.b.forget(t.row.ID)
		return t.keep(t.row)
	}
	t.farm.ApplyAll(append(replaced, logged...))
	return nil
}

// foldAnew is how many changes at once make folding the whole log the shorter
// way.
const foldAnew = 200

// wholeDay gives the key of an entry that a table of daily weather would
// replace: rain, and the day's air temperature.
func wholeDay(e entry.Entry) (weatherKey, bool) {
	switch e := e.(type) {
	case entry.Rain:
		return weatherKey{e.Date, e.Kind()}, true
	case entry.Temperature:
		return weatherKey{e.Date, e.Kind()}, e.Where == entry.Air
	}
	return weatherKey{}, false
}

// tableSender is who logs weather that came by no message.
const tableSender = "weather table"

// TakeWeather logs daily weather that came to a farm by no message: from a
// command, or a weather service.
func (b *Bot) TakeWeather(ctx context.Context, farm int64, entries []entry.Entry, now time.Time) error {
	return b.withFarm(ctx, farm, func(t *turn) error { return t.weatherFor(farm, entries, now) })
}

func (t *turn) weatherFor(farm int64, entries []entry.Entry, now time.Time) error {
	groups, err := t.tx.Groups(t.ctx, farm)
	if err != nil {
		return err
	}
	if len(groups) == 0 {
		return fmt.Errorf("the farm %s has no group", t.farm.Name)
	}
	if _, err := t.tx.Meet(t.ctx, farm, 0, tableSender); err != nil {
		return err
	}
	// No message of Telegram's has a number below zero: one by the minute is ours.
	for number := -int(now.Unix() / 60); ; number-- {
		m, fresh, err := t.tx.SaveMessage(t.ctx, ledger.Message{Chat: groups[0].ID, MessageID: number,
			Farm: farm, SentAt: now, Text: tableSender, State: "read"})
		if err != nil {
			return err
		}
		if fresh {
			return t.logWeather(&source{sentAt: now, message: m.ID}, entries)
		}
	}
}
