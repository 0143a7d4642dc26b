package bot

import (
	"encoding/json"
	"fmt"
	"time"

	"leafround/bot/land"
	"leafround/bot/reply"
	"leafround/core/entry"
)

// standing is where a member said they stand, by a location pin.
type standing struct {
	Paddock string    `json:"paddock"`
	At      time.Time `json:"at"`
}

// pin takes a location: the paddock that it lies in is the one that bare
// scores mean from now on; a manager's, in none, is the farm's place.
func (t *turn) pin() error {
	var plots []entry.Plot
	for _, p := range t.farm.Paddocks {
		if p.Active() && p.Boundary != "" {
			plots = append(plots, entry.Plot{Name: p.Name, Boundary: p.Boundary})
		}
	}
	lat, lon := t.in.Pin.Lat, t.in.Pin.Lon
	if name, ok := land.Inside(plots, lat, lon); ok {
		return t.standIn(name)
	}
	if t.member.Manager {
		return t.log(entry.Reading{Entries: []entry.Entry{entry.Setup{What: entry.SetPlace, Lat: &lat, Lon: &lon}}})
	}
	if len(plots) > 0 {
		return t.refuse("That place lies in no paddock whose boundary I know.")
	}
	return nil
}

func (t *turn) standIn(paddock string) error {
	value, err := json.Marshal(standing{paddock, t.in.SentAt})
	if err != nil {
		return fmt.Errorf("bot: pin: %w", err)
	}
	if err := t.tx.Keep(t.ctx, t.row.ID, t.pinKey(), value); err != nil {
		return err
	}
	return t.refuse(reply.StandIn(paddock))
}

func (t *turn) pinKey() string { return fmt.Sprintf("pin/%d", t.in.From.ID) }

// pinned gives the paddock in which the sender stands, if they said so within
// the hour.
func (t *turn) pinned() (standing, bool) {
	value, err := t.tx.Kept(t.ctx, t.row.ID, t.pinKey())
	var s standing
	if err != nil || value == nil || json.Unmarshal(value, &s) != nil {
		return s, false
	}
	ago := t.at.Sub(s.At)
	return s, ago >= 0 && ago <= memory
}
