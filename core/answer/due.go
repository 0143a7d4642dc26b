package answer

import (
	"leafround/core/entry"
	"leafround/core/farm"
	"leafround/core/round"
)

// Due answers what needs counting.
type Due struct {
	Head
	Paddocks []DuePaddock `json:"paddocks"`
	Today    entry.Date   `json:"today"`
	Empty    bool         `json:"empty,omitempty"` // no paddock is known
}

// DuePaddock is a paddock that needs counting, and why.
type DuePaddock struct {
	Paddock string          `json:"paddock"`
	Why     string          `json:"why"`
	Stage   entry.LeafStage `json:"stage,omitempty"`
	Low     entry.LeafStage `json:"stage_low,omitempty"`
	High    entry.LeafStage `json:"stage_high,omitempty"`
	Last    entry.Date      `json:"last_count,omitzero"`
	Member  string          `json:"counted_by,omitempty"` // who counted it last
	ReadyOn entry.Date      `json:"ready_on,omitzero"`
}

func due(f *farm.Farm, day entry.Date) Answer { return dues(f, day) }

func dues(f *farm.Farm, day entry.Date) Due {
	a := Due{Head: Head{string(entry.AskDue)}, Paddocks: []DuePaddock{}, Today: day, Empty: len(f.Paddocks) == 0}
	for _, d := range round.DueOn(f, day) {
		o := DuePaddock{Paddock: d.Paddock, Why: string(d.Why), Stage: d.Stage, Low: d.Low, High: d.High,
			Last: d.Last, ReadyOn: d.ReadyOn}
		if p := f.Find(d.Paddock); p != nil && len(p.Every) > 0 {
			o.Member = p.Every[len(p.Every)-1].Member
		}
		a.Paddocks = append(a.Paddocks, o)
	}
	return a
}
