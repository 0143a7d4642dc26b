package answer

import (
	"leafround/core/entry"
	"leafround/core/farm"
	"leafround/core/leaf"
	"leafround/core/pace"
)

// Paddock answers how one paddock stands at the moment asked, by everything
// that the log holds.
type Paddock struct {
	Head
	Standing
	Held       []Hold     `json:"held,omitempty"`
	In         []In       `json:"in,omitempty"`
	LastCount  *Seen      `json:"last_count,omitempty"`
	LastCut    string     `json:"last_cut,omitempty"` // regrowth began with this cut
	Unlisted   bool       `json:"unlisted,omitempty"`
	Why        *Why       `json:"why,omitempty"`
	Remarks    []Remark   `json:"remarks,omitempty"`
	Cautions   []Caution  `json:"cautions,omitempty"`
	LastGrazed entry.Date `json:"last_grazed,omitzero"`
}

// Hold is one hold that binds now.
type Hold struct {
	Reason entry.Reason `json:"reason"`
	Until  entry.Date   `json:"until,omitzero"`
	From   entry.Date   `json:"from,omitzero"`
}

// In is stock that is in a paddock.
type In struct {
	Mob   string     `json:"mob,omitempty"`
	Since entry.Date `json:"since"`
	Days  int        `json:"days"` // today is day 1
}

// Seen is a count, told as what somebody saw.
type Seen struct {
	Date   entry.Date      `json:"date"`
	Stage  entry.LeafStage `json:"stage"`
	N      int             `json:"n"`
	Member string          `json:"member,omitempty"`
	Days   int             `json:"days_ago"`
}

// onePaddock answers how one paddock stands.
func onePaddock(f *farm.Farm, q entry.Question, day entry.Date) Answer {
	p := f.Find(q.Paddock)
	if p == nil {
		return noPaddock(f, q.Paddock)
	}
	a := stand(f, p, day)
	if q.Why {
		a.Why = whyOf(f, p.Name, day)
	}
	return a
}

// stand gives the standing of a paddock on a day.
func stand(f *farm.Farm, p *farm.Paddock, day entry.Date) Paddock {
	e := f.Estimate(day)
	a := Paddock{Head: Head{string(entry.AskPaddock)}, Standing: blank(f, p, day), Held: holds(p, day),
		In: stays(p, day), LastCut: string(p.Regrowth.Cut), Unlisted: !p.Listed}
	if s, ok := e.Stage(p.Name); ok {
		a.Stage, a.StageLow, a.StageHigh, a.Heading = &s.Mean, &s.Low, &s.High, s.Reproductive
		a.Advice = advise(p, s)
	} else if !p.Closed.IsZero() {
		a.Advice = leaf.Canopy
	}
	if c, ok := p.LastCount(); ok {
		n := c.N
		a.N = &n
		a.LastCount = &Seen{c.Date, c.Mean, c.N, c.Member, day.Sub(c.Date)}
	}
	a.plainly(p.Regrowth.Since, day)
	a.forecast(e)
	a.give()
	a.Remarks = paddockRemarks(f, p, day)
	a.Cautions = heldCautions(p, day)
	if n := len(p.Grazings); n > 0 {
		a.LastGrazed = p.Grazings[n-1].Out
	}
	return a
}

// advise advises by the estimated stage.
func advise(p *farm.Paddock, s pace.Stage) leaf.Advice {
	if s.Reproductive && p.Closed.IsZero() {
		return leaf.Unknown
	}
	return leaf.Advise(p.Habit(), entry.LeafStage(s.Mean), !p.Closed.IsZero())
}

func holds(p *farm.Paddock, day entry.Date) []Hold {
	var out []Hold
	for _, h := range p.HeldOn(day) {
		out = append(out, Hold{h.Reason, h.Until, h.From})
	}
	return out
}

func stays(p *farm.Paddock, day entry.Date) []In {
	var out []In
	for _, s := range p.Stays {
		out = append(out, In{s.Mob, s.Since, day.Sub(s.Since) + 1})
	}
	return out
}

func paddockRemarks(f *farm.Farm, p *farm.Paddock, day entry.Date) []Remark {
	var out []Remark
	e := f.Estimate(day)
	st, known := e.Stage(p.Name)
	if why, odd := e.Odd(p.Name); odd {
		out = append(out, Remark{Kind: Odd, Paddock: p.Name, Text: why})
	}
	switch {
	case known && st.Reproductive:
		out = append(out, Remark{Kind: Heading, Paddock: p.Name})
	case !p.Grazed():
		out = append(out, Remark{Kind: NeverGrazed, Paddock: p.Name})
	case len(p.Counts) == 0:
		out = append(out, Remark{Kind: NeverCounted, Paddock: p.Name})
	}
	if known && !p.Closed.IsZero() && entry.LeafStage(st.Mean) < p.Habit().From {
		out = append(out, Remark{Kind: ClosedEarly, Paddock: p.Name, Date: p.Closed})
	}
	return out
}
