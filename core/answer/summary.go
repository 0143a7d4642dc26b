package answer

import (
	"time"

	"leafround/core/entry"
	"leafround/core/farm"
	"leafround/core/leaf"
	"leafround/core/round"
)

// Summary is the morning's word to the team.
type Summary struct {
	Head
	Farm       string       `json:"farm,omitempty"`
	Today      entry.Date   `json:"today"`
	Mobs       []Where      `json:"mobs,omitempty"`
	Next       []MobChoice  `json:"next,omitempty"` // two for each mob; one without a name where there are none
	Rate       Rate         `json:"rate"`
	RoundDays  float64      `json:"round_days,omitempty"`
	Running    *float64     `json:"running_days,omitempty"`
	Late       []Ranked     `json:"late,omitempty"`
	Closing    []Ranked     `json:"closed,omitempty"` // canopies
	Held       []LeftOut    `json:"held,omitempty"`
	ComingOut  []LeftOut    `json:"coming_out,omitempty"` // of a hold, today or within three days
	OpenEnded  []LeftOut    `json:"open_ended,omitempty"` // held without an end, for long: asked about
	Due        []DuePaddock `json:"due,omitempty"`
	Advice     []Advice     `json:"advice,omitempty"`
	Cautions   []Caution    `json:"cautions,omitempty"`
	StaleDays  int          `json:"stale_days,omitempty"` // since weather was last told, where it was told before
	StaleSince entry.Date   `json:"stale_since,omitzero"`
	Quiet      bool         `json:"quiet,omitempty"` // nothing to be done today
	Empty      bool         `json:"empty,omitempty"`
}

// Bounds of the summary, in days (ours).
const (
	comingOut  = 3  // a hold that ends so soon is told
	openEnded  = 21 // a hold without an end is asked about after so long
	weatherOld = 4  // weather is stale after so long
)

func summary(f *farm.Farm, day entry.Date, at time.Time) Answer {
	a := Summary{Head: Head{string(entry.AskSummary)}, Farm: f.Name, Today: day, Mobs: wheres(f, day),
		Empty: len(f.Paddocks) == 0}
	a.Rate = rate(f, entry.Question{}, day).(Rate)
	if a.Empty {
		return a
	}
	l := round.LengthOf(f, day, round.What{})
	a.RoundDays, a.Running = l.Days, told(l.Running)
	ranked, left := round.Rank(f, day, "")
	a.choices(f, day, ranks(ranked))
	a.sort(ranks(ranked))
	a.holds(day, leftOuts(left))
	a.Due = dues(f, day).Paddocks
	a.mornings(f, at)
	a.Cautions = lately(f, day)
	a.weather(f, day)
	a.Quiet = len(a.Late)+len(a.Closing)+len(a.ComingOut)+len(a.OpenEnded)+len(a.Advice)+len(a.Cautions) == 0
	return a
}

// choices gives the next two paddocks for each mob.
func (a *Summary) choices(f *farm.Farm, day entry.Date, all []Ranked) {
	mobs := goingRound(f)
	for _, m := range mobs {
		own, _ := round.Rank(f, day, m.Name)
		a.Next = gather(a.Next, m.Name, first(ranks(own), 2))
	}
	if len(mobs) == 0 {
		a.Next = []MobChoice{{Ranked: first(all, 2)}}
	}
}

// sort finds what is late and what has closed over.
func (a *Summary) sort(all []Ranked) {
	for _, r := range all {
		switch r.Advice {
		case leaf.Late:
			a.Late = append(a.Late, r)
		case leaf.Canopy:
			a.Closing = append(a.Closing, r)
		}
	}
}

// holds sorts what is held: all of it, what comes out soon, and what has no end
// and was held for long.
func (a *Summary) holds(day entry.Date, left []LeftOut) {
	for _, l := range left {
		if l.Code != round.OutHeld {
			continue
		}
		a.Held = append(a.Held, l)
		if !l.Free.IsZero() && l.Free.Sub(day) <= comingOut {
			a.ComingOut = append(a.ComingOut, l)
		}
		for _, h := range l.Held {
			if h.Until.IsZero() && day.Sub(h.From) >= openEnded {
				a.OpenEnded = append(a.OpenEnded, l)
				break
			}
		}
	}
}

// lately gives the cautions of yesterday's and today's entries: warnings that
// wait for the summary.
func lately(f *farm.Farm, day entry.Date) []Caution {
	var out []Caution
	for _, l := range f.History(nil, day.Add(-1), day) {
		switch e := l.Entry.(type) {
		case entry.Graze:
			out = append(out, grazeCautions(f, l, e)...)
		case entry.Note:
			if e.Alarm == entry.AlarmStock {
				out = append(out, Caution{Danger: Sick, Paddock: e.Paddock, Mob: e.Mob, Text: e.Text})
			}
		}
	}
	return out
}

// weather tells when it was last told, where that is long ago.
func (a *Summary) weather(f *farm.Farm, day entry.Date) {
	rain, warmth := f.LastWeather()
	last := max(rain, warmth)
	if !last.IsZero() && day.Sub(last) > weatherOld {
		a.StaleDays, a.StaleSince = day.Sub(last), last
	}
}
