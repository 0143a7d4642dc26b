package bot

import (
	"math"
	"slices"

	"leafround/bot/chat"
	"leafround/bot/land"
	"leafround/bot/ledger"
	"leafround/bot/picture"
	"leafround/core/answer"
	"leafround/core/entry"
	"leafround/core/farm"
)

// drawing is a picture that can be drawn.
type drawing interface{ Draw() (chat.Picture, error) }

// pictureOf sends the picture that goes with a question.
func (t *turn) pictureOf(q entry.Question, a answer.Answer) error {
	d := t.drawing(q, a)
	if d == nil {
		return t.reply(t.msg)
	}
	p, err := d.Draw()
	if err != nil {
		return err
	}
	out := t.compose()
	out.HTML, out.Picture = "", &p
	row, _, err := t.tx.Enqueue(t.ctx, ledger.Send{Out: out, Message: t.msg.ID})
	t.out.Sent = append(t.out.Sent, Shown{row, out})
	return err
}

// drawing chooses the picture for an answer; nil where there is none to draw.
func (t *turn) drawing(q entry.Question, a answer.Answer) drawing {
	day := t.farm.Today(t.at)
	switch a := a.(type) {
	case answer.Paddock:
		return regrowthOf(t.farm, a, day)
	case answer.Plan:
		return planOf(t.farm, a, day)
	case answer.Rate:
		return paceOf(t.farm, q.Paddock, day)
	case answer.Ask:
		return nil
	}
	if len(t.farm.Paddocks) == 0 {
		return nil
	}
	if q.About == entry.AskReady {
		if m := mapOf(t.farm, t.standings(), day); len(m.Plots) > 0 {
			return m
		}
	}
	return stagesOf(t.farm, t.standings(), day)
}

// summaryPictures are the pictures behind the morning's words.
func (t *turn) summaryPictures(a answer.Answer) ([]chat.Picture, error) {
	s, ok := a.(answer.Summary)
	if !ok || s.Empty {
		return nil, nil
	}
	v := stagesOf(t.farm, t.standings(), t.farm.Today(t.at))
	if !slices.ContainsFunc(v.Rows, func(r picture.Row) bool { return !math.IsNaN(r.Stage) }) {
		return nil, nil // nothing is known yet
	}
	p, err := v.Draw()
	if err != nil {
		return nil, err
	}
	return []chat.Picture{p}, nil
}

// standings answers how every paddock stands.
func (t *turn) standings() []answer.Paddock {
	var all []answer.Paddock
	for _, p := range t.farm.Paddocks {
		if !p.Active() {
			continue
		}
		a := answer.Question(t.farm, entry.Question{About: entry.AskPaddock, Paddock: p.Name}, t.at)
		if one, ok := a.(answer.Paddock); ok {
			all = append(all, one)
		}
	}
	return all
}

func stagesOf(f *farm.Farm, all []answer.Paddock, day entry.Date) picture.Stages {
	v := picture.Stages{Farm: f.Name, Today: day, ByWeek: true}
	for _, a := range all {
		r := picture.Row{Paddock: a.Paddock, Stage: math.NaN(), From: float64(a.From), To: float64(a.To),
			Advice: string(a.Advice), ReadyOn: a.ReadyOn, Held: heldWord(a.Held)}
		if a.Stage != nil && a.StageLow != nil && a.StageHigh != nil {
			r.Stage, r.Low, r.High = *a.Stage, *a.StageLow, *a.StageHigh
		}
		v.Rows = append(v.Rows, r)
	}
	return v
}

func heldWord(held []answer.Hold) string {
	if len(held) == 0 {
		return ""
	}
	return string(held[0].Reason)
}

func planOf(f *farm.Farm, a answer.Plan, day entry.Date) drawing {
	v := picture.Plan{Farm: f.Name, Today: day, Days: min(14, a.Days)}
	for _, s := range a.Steps {
		stay := picture.Stay{Mob: s.Mob, Paddock: s.Paddock, From: s.From, To: s.To,
			Stage: float64(s.Stage), Early: s.Advice == "wait", Now: s.Now}
		if p := f.Find(s.Paddock); p != nil {
			stay.End = float64(p.Habit().To)
		}
		v.Stays = append(v.Stays, stay)
	}
	if len(v.Stays) == 0 {
		return nil
	}
	return v
}

// weeksShown is how far back the picture of the pace goes.
const weeksShown = 12

func paceOf(f *farm.Farm, paddock string, day entry.Date) drawing {
	v := picture.Pace{Farm: f.Name, Today: day}
	if paddock != "" {
		v.Farm = paddock + ", " + f.Name
	}
	first := day
	for _, p := range f.Paddocks {
		if paddock != "" && p != f.Find(paddock) {
			continue
		}
		for _, c := range p.Every {
			since, ok := startBefore(p, c.Date)
			if !ok || c.Mean <= 0 || day.Sub(c.Date) > weeksShown*7 || c.Date <= since {
				continue
			}
			first = min(first, c.Date)
			v.Counts = append(v.Counts, picture.Seen{Day: c.Date, Days: float64(c.Date.Sub(since)) / float64(c.Mean), Paddock: p.Name})
		}
	}
	for d := first; d < day; d = d.Add(2) {
		v.Past = append(v.Past, paceDay(f, paddock, d, d))
	}
	v.Past = append(v.Past, paceDay(f, paddock, day, day))
	for d := day; d <= day.Add(28); d = d.Add(2) {
		v.Ahead = append(v.Ahead, paceAhead(f, paddock, day, d))
	}
	return v
}

func paceDay(f *farm.Farm, paddock string, on, at entry.Date) picture.PaceDay {
	p := f.Estimate(on).Pace(paddock)
	return picture.PaceDay{Day: at, Days: p.DaysPerLeaf, Low: p.Low, High: p.High}
}

// paceAhead is the pace of a leaf that begins on a day to come; its interval is
// today's, in proportion.
func paceAhead(f *farm.Farm, paddock string, today, on entry.Date) picture.PaceDay {
	e := f.Estimate(today)
	now, then := e.Pace(paddock), e.Needs(paddock, on, 1)
	return picture.PaceDay{Day: on, Days: then, Low: then * now.Low / now.DaysPerLeaf, High: then * now.High / now.DaysPerLeaf}
}

func regrowthOf(f *farm.Farm, a answer.Paddock, day entry.Date) drawing {
	p := f.Find(a.Paddock)
	if p == nil || !p.Grazed() && len(p.Counts) == 0 {
		return nil
	}
	v := picture.Regrowth{Paddock: a.Paddock, Farm: f.Name, Today: day, From: float64(a.From), To: float64(a.To),
		Target: float64(a.Target), TargetOn: a.TargetOn, Low: a.TargetLow, High: a.TargetHigh}
	begin := day.Add(-70)
	for _, g := range p.Grazings {
		if g.Out >= begin {
			v.Starts = append(v.Starts, picture.Start{Day: g.Out, What: "grazed"})
		}
	}
	for _, c := range p.Cuts {
		if c.Date >= begin {
			v.Starts = append(v.Starts, picture.Start{Day: c.Date, What: "cut for " + string(c.What)})
		}
	}
	for _, c := range p.Every {
		if c.Date < begin {
			continue
		}
		s := f.Sample(c)
		v.Counts = append(v.Counts, picture.CountMark{Day: c.Date, Stage: float64(s.Mean), Low: float64(s.Low),
			High: float64(s.High), N: c.N, Member: c.Member})
	}
	for d := begin; d <= day; d = d.Add(2) {
		if s, ok := f.Estimate(d).Stage(a.Paddock); ok {
			v.Past = append(v.Past, picture.StageDay{Day: d, Stage: s.Mean, Low: s.Low, High: s.High})
		}
	}
	e := f.Estimate(day)
	for d := day; d <= day.Add(28); d = d.Add(2) {
		if m, sd, ok := e.At(a.Paddock, d); ok {
			v.Ahead = append(v.Ahead, picture.StageDay{Day: d, Stage: m, Low: m - normal80*sd, High: m + normal80*sd})
		}
	}
	return v
}

// normal80 is how many standard deviations hold 80 % of a normal distribution
// on either side together: its 0.9 quantile.
const normal80 = 1.2816

func mapOf(f *farm.Farm, all []answer.Paddock, day entry.Date) picture.Map {
	v := picture.Map{Farm: f.Name, Today: day}
	for _, a := range all {
		p := f.Find(a.Paddock)
		if p == nil || p.Boundary == "" {
			continue
		}
		ground, err := land.Shape(p.Boundary)
		if err != nil {
			continue
		}
		plot := picture.Plot{Paddock: a.Paddock, Stage: math.NaN(), End: float64(a.To), Held: heldWord(a.Held)}
		if a.Stage != nil {
			plot.Stage = *a.Stage
		}
		for _, polygon := range ground {
			var o picture.Outline
			for i, ring := range polygon {
				var points []picture.LonLat
				for _, at := range ring {
					points = append(points, picture.LonLat{at.Lon(), at.Lat()})
				}
				if i == 0 {
					o.Outer = points
				} else {
					o.Holes = append(o.Holes, points)
				}
			}
			plot.Ground = append(plot.Ground, o)
		}
		v.Plots = append(v.Plots, plot)
	}
	return v
}

// startBefore gives the last grazing or cut that ended before a day.
func startBefore(p *farm.Paddock, day entry.Date) (start entry.Date, ok bool) {
	for _, g := range p.Grazings {
		if g.Out < day {
			start = max(start, g.Out)
		}
	}
	for _, c := range p.Cuts {
		if c.Date < day {
			start = max(start, c.Date)
		}
	}
	return start, !start.IsZero()
}
