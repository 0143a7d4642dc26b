package answer

import (
	"slices"
	"strings"

	"leafround/core/entry"
	"leafround/core/farm"
	"leafround/core/leaf"
	"leafround/core/round"
)

// Ranking answers which paddock is next, or which are ready.
type Ranking struct {
	Head
	Mob     string      `json:"mob,omitempty"`
	Ranked  []Ranked    `json:"ranked"`
	LeftOut []LeftOut   `json:"left_out"`
	ByMob   []MobChoice `json:"by_mob,omitempty"` // the best three for each, where several go round
	Mobs    []Where     `json:"mobs,omitempty"`   // who is where now
	Today   entry.Date  `json:"today"`
	Empty   bool        `json:"empty,omitempty"` // no paddock is registered or known
}

// Ranked is a paddock in the order of merit.
type Ranked struct {
	Paddock  string          `json:"paddock"`
	Stage    entry.LeafStage `json:"stage"`
	Advice   leaf.Advice     `json:"advice"`
	TargetOn entry.Date      `json:"target_on,omitzero"`
	ReadyOn  entry.Date      `json:"ready_on,omitzero"`
	LateOn   entry.Date      `json:"late_on,omitzero"`
	Reason   round.Reason    `json:"reason"`
	Low      entry.LeafStage `json:"stage_low"`
	High     entry.LeafStage `json:"stage_high"`
	Days     int             `json:"days_since_grazing,omitempty"`
	AreaHa   entry.Hectares  `json:"area_ha,omitempty"`
	From     entry.LeafStage `json:"window_from"`
	To       entry.LeafStage `json:"window_to"`
	Heading  bool            `json:"heading,omitempty"`
	Odd      string          `json:"odd,omitempty"`
}

// LeftOut is a paddock that is not ranked, and why.
type LeftOut struct {
	Paddock string          `json:"paddock"`
	Why     string          `json:"why"` // a code and what goes with it, in plain words
	Code    round.Out       `json:"code"`
	Held    []Hold          `json:"held,omitempty"`
	Free    entry.Date      `json:"free,omitzero"`
	Mobs    []string        `json:"mobs,omitempty"`
	Stage   entry.LeafStage `json:"stage,omitempty"`
	ReadyOn entry.Date      `json:"ready_on,omitzero"`
}

// MobChoice is the best for one mob, or for several that have the same choice.
type MobChoice struct {
	Mobs   []string `json:"mobs,omitempty"` // all of them
	Mob    string   `json:"mob"`
	Ranked []Ranked `json:"ranked"`
}

// Where tells where a mob is.
type Where struct {
	Mob     string     `json:"mob"`
	Head    int        `json:"head,omitempty"`
	Paddock string     `json:"paddock,omitempty"`
	Since   entry.Date `json:"since,omitzero"`
	Days    int        `json:"days,omitempty"` // today is day 1
	Long    bool       `json:"long,omitempty"` // more than three days without a back fence
	Away    bool       `json:"away,omitempty"`
}

func ranking(f *farm.Farm, q entry.Question, day entry.Date) Answer {
	a := Ranking{Head: Head{string(q.About)}, Mob: mobName(f, q.Mob), Today: day, Mobs: wheres(f, day),
		Empty: len(f.Paddocks) == 0}
	rank := round.Rank
	if q.About == entry.AskReady {
		rank = round.Ready
	}
	ranked, left := rank(f, day, q.Mob)
	a.Ranked, a.LeftOut = ranks(ranked), leftOuts(left)
	mobs := goingRound(f)
	if q.Mob == "" && len(mobs) > 1 {
		for _, m := range mobs {
			own, _ := rank(f, day, m.Name)
			a.ByMob = gather(a.ByMob, m.Name, first(ranks(own), 3))
		}
		if len(a.ByMob) == 1 { // the same for all
			a.ByMob = nil
		}
	}
	return a
}

// mobName gives a mob's name as registered.
func mobName(f *farm.Farm, name string) string {
	if m := f.FindMob(name); m != nil {
		return m.Name
	}
	return name
}

// goingRound lists the mobs that go round paddock by paddock.
func goingRound(f *farm.Farm) []*farm.Mob {
	var out []*farm.Mob
	for _, m := range f.Mobs {
		if m.Active() && m.Listed && !farm.SetStocked(m.Name) {
			out = append(out, m)
		}
	}
	return out
}

// gather adds a mob's choice; mobs with the same choice share it.
func gather(all []MobChoice, mob string, best []Ranked) []MobChoice {
	for i := range all {
		if slices.EqualFunc(all[i].Ranked, best, func(a, b Ranked) bool { return a.Paddock == b.Paddock }) {
			all[i].Mobs = append(all[i].Mobs, mob)
			return all
		}
	}
	return append(all, MobChoice{Mob: mob, Mobs: []string{mob}, Ranked: best})
}

func ranks(rs []round.Ranked) []Ranked {
	out := make([]Ranked, 0, len(rs))
	for _, r := range rs {
		o := Ranked{Paddock: r.Paddock, Stage: r.Stage, Advice: r.Advice, TargetOn: r.TargetOn,
			ReadyOn: r.ReadyOn, LateOn: r.LateOn, Reason: r.Reason, Low: r.Low, High: r.High,
			Days: max(r.Days, 0), AreaHa: r.Area, From: r.Habit.From, To: r.Habit.To,
			Heading: r.Reproductive, Odd: r.Odd}
		if r.Reproductive && r.Advice != leaf.Canopy {
			o.Advice = leaf.Unknown
		}
		out = append(out, o)
	}
	return out
}

func leftOuts(ls []round.LeftOut) []LeftOut {
	out := make([]LeftOut, 0, len(ls))
	for _, l := range ls {
		o := LeftOut{Paddock: l.Paddock, Code: l.Why, Free: l.Free, Mobs: l.Mobs, Stage: l.Stage, ReadyOn: l.ReadyOn}
		for _, h := range l.Held {
			o.Held = append(o.Held, Hold{h.Reason, h.Until, h.From})
		}
		o.Why = o.why()
		out = append(out, o)
	}
	return out
}

// why puts the reason into one plain line for the JSON.
func (l LeftOut) why() string {
	var holds []string
	for _, h := range l.Held {
		s := string(h.Reason)
		if !h.Until.IsZero() {
			s += " until " + h.Until.String()
		}
		holds = append(holds, s)
	}
	switch {
	case len(holds) > 0:
		return "held: " + strings.Join(holds, ", ")
	case len(l.Mobs) > 0 && strings.Join(l.Mobs, "") != "":
		return string(l.Code) + ": " + strings.Join(l.Mobs, ", ")
	}
	return string(l.Code)
}

// wheres tells where each mob is.
func wheres(f *farm.Farm, day entry.Date) []Where {
	var out []Where
	for _, m := range f.Mobs {
		if m.Gone || !m.Listed && m.In == nil {
			continue
		}
		w := Where{Mob: m.Name, Head: m.Head, Away: m.Away}
		if m.In != nil {
			w.Paddock, w.Since, w.Days = m.In.Name, m.Since, day.Sub(m.Since)+1
			w.Long = day.Sub(m.Since) > 3 && !m.BackFence && !backFenced(m) && !farm.SetStocked(m.Name)
		}
		out = append(out, w)
	}
	return out
}

func backFenced(m *farm.Mob) bool {
	for _, s := range m.In.Stays {
		if entry.FoldName(s.Mob) == entry.FoldName(m.Name) {
			return s.Back
		}
	}
	return false
}

func first(rs []Ranked, n int) []Ranked { return rs[:min(n, len(rs))] }
