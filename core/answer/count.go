package answer

import (
	"leafround/core/entry"
	"leafround/core/farm"
	"leafround/core/leaf"
)

// Count answers a leaf count: the stage is that of this count, the dates are
// the estimator's, which knows all the others too.
type Count struct {
	Head
	Standing
	Date     entry.Date    `json:"date,omitzero"`
	Skipped  entry.Skipped `json:"skipped,omitzero"`
	Past     int           `json:"past,omitempty"`
	Remarks  []Remark      `json:"remarks,omitempty"`
	Cautions []Caution     `json:"cautions,omitempty"`
}

// count answers a count that the farm has taken.
func count(f *farm.Farm, l entry.Logged, c entry.Count, day entry.Date) Answer {
	seen, p, ok := f.Counted(l.ID)
	if !ok { // withdrawn since, or on a paddock that is no more
		if p = f.Find(c.Paddock); p == nil {
			return noPaddock(f, c.Paddock)
		}
		seen = farm.Counted{Count: c.Scored(f.Remnant), ID: l.ID, Since: p.Regrowth.Since}
	}
	a := Count{Head: Head{string(entry.KindCount)}, Standing: blank(f, p, day), Date: seen.Date,
		Skipped: seen.Skipped, Past: seen.Past}
	sample := f.Sample(seen)
	a.Stage, a.StageLow, a.StageHigh, a.N = &sample.Mean, &sample.Low, &sample.High, &sample.N
	a.Heading, a.Floor = sample.Reproductive, sample.Floor
	a.plainly(seen.Since, seen.Date)
	now := seen.Since == p.Regrowth.Since
	if now {
		a.forecast(f.Estimate(day))
		if seen.Date == day {
			a.heed(seen.Mean)
		}
		a.give()
	}
	a.Advice = countAdvice(p, seen, sample, now)
	a.Remarks = countRemarks(f, p, seen, sample, now, day)
	return a
}

// countAdvice advises by the count; where most tillers head the count means
// little, and a count from before the last grazing says nothing of now.
func countAdvice(p *farm.Paddock, c farm.Counted, s leaf.Sample, now bool) leaf.Advice {
	switch {
	case !now:
		return leaf.Unknown
	case s.Reproductive && p.Closed.IsZero():
		return leaf.Unknown
	}
	return leaf.Advise(p.Habit(), c.Mean, !p.Closed.IsZero())
}

func countRemarks(f *farm.Farm, p *farm.Paddock, c farm.Counted, s leaf.Sample, now bool, day entry.Date) []Remark {
	var out []Remark
	if !now {
		return append(out, Remark{Kind: Older, Paddock: p.Name, Date: p.Regrowth.Since})
	}
	if why, odd := f.Estimate(day).Odd(p.Name); odd {
		out = append(out, Remark{Kind: Odd, Paddock: p.Name, Text: why})
	}
	if s.Reproductive {
		out = append(out, Remark{Kind: Heading, Paddock: p.Name, N: c.Skipped.Reproductive})
	} else if s.Floor {
		out = append(out, Remark{Kind: Floor, Paddock: p.Name, N: c.Past})
	}
	if !p.Closed.IsZero() && c.Mean < p.Habit().From {
		out = append(out, Remark{Kind: ClosedEarly, Paddock: p.Name, Date: p.Closed})
	}
	if !p.Grazed() {
		out = append(out, Remark{Kind: NeverGrazed, Paddock: p.Name})
	}
	if c.Repeat {
		out = append(out, Remark{Kind: ToldTwice, Paddock: p.Name, Date: c.Date})
	}
	out = append(out, heldRemarks(p, day)...)
	out = append(out, sameDay(p, c)...)
	if c.N > 0 && c.N < fewest {
		out = append(out, Remark{Kind: Few, Paddock: p.Name, N: c.N})
	}
	if firstUnknown(f, c.ID) {
		out = append(out, Remark{Kind: GrassUnknown, Paddock: p.Name})
	}
	return out
}

// fewest is the least number of tillers that is let pass without a word: six
// to ten are common practice, five or six do for NSW Government (grazing
// short-term ryegrass).
const fewest = 5

// heldRemarks tells what holds a paddock on a day.
func heldRemarks(p *farm.Paddock, day entry.Date) []Remark {
	var out []Remark
	for _, h := range p.HeldOn(day) {
		out = append(out, Remark{Kind: Held, Paddock: p.Name, Reason: h.Reason, Date: h.Until})
	}
	return out
}

// sameDay tells of other counts of the same paddock on the same day, the last
// of them by name: all of them count.
func sameDay(p *farm.Paddock, c farm.Counted) []Remark {
	if c.Repeat {
		return nil
	}
	last, others := Remark{Kind: AlsoCounted, Paddock: p.Name, Date: c.Date}, 0
	for _, o := range p.Counts {
		if o.ID != c.ID && o.Date == c.Date {
			last.Kind, last.Member, last.Stage, last.N = AlsoCounted, o.Member, o.Mean, o.N
			if o.MemberID == c.MemberID {
				last.Kind = CountedBefore
			}
			others++
		}
	}
	if others == 0 {
		return nil
	}
	return []Remark{last}
}

// firstUnknown tells whether a count is the farm's first in a paddock whose
// grass is not known: that it is taken as ryegrass is said once.
func firstUnknown(f *farm.Farm, id int64) bool {
	first := int64(0)
	for _, p := range f.Paddocks {
		if p.Habit().Known {
			continue
		}
		for _, c := range p.Every {
			if first == 0 || c.ID < first {
				first = c.ID
			}
		}
	}
	return first == id
}
