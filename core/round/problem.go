package round

import (
	"leafround/core/entry"
	"leafround/core/leaf"
)

// Stage is a leaf stage as estimated, with its standard deviation.
type Stage struct{ Mean, SD float64 }

// Problem is all that the planner needs to know.
type Problem struct {
	Today  entry.Date
	Fields []Field
	Mobs   []Mob
	Pins   []Pin
}

// Field is a paddock as the planner sees it.
type Field struct {
	Name   string
	Area   entry.Hectares
	Free   entry.Date // first day it may be grazed; zero or past: today
	NoEnd  bool       // held without an end: it is in no plan
	Grow   []Stage    // stage on each day from today on; past its end it grows on as on its last day
	Habit  leaf.Habit
	Closed entry.LeafStage // the stage at which the canopy closed; 0 while it has not
	Mobs   []string        // the mobs that may graze it; nil is all
}

// Mob is a herd that moves through the paddocks.
type Mob struct {
	Name     string
	HaPerDay float64
	In       string         // the paddock it is in and finishes first; "" is none
	Left     entry.Hectares // what is left to graze there
}

// Pin is a wish of the manager: the mob ("" is any) is in the paddock on that
// day.
type Pin struct {
	Mob, Paddock string
	Day          entry.Date
}

// Plan is an order for one whole round: each paddock that may be grazed, once.
type Plan struct {
	Steps []Step // by start, then by mob
	// Lost is the area-weighted mean share of growth given up by this order,
	// expected over the uncertainty of the stages. Bound is proven: no order in
	// which no mob stands idle beside a paddock it may graze gives up less.
	Lost, Bound float64
	Exact       bool    // the order is proven the best
	Unmet       []Pin   // pins that could not be kept
	rents       rents   // the prices that guided the search
	bare        rents   // prices that prove the bound better, where there are any
	cost        float64 // growth given up and what else the planner minds, hectares
}

// Step is one stay of a mob in a paddock.
type Step struct {
	From, To   entry.Date // To is not included; several steps may fall on one day
	Start, End float64    // days since the start of today
	Paddock    string
	Mob        string
	Stage      entry.LeafStage // mean over the strips, as they are grazed
	Lost       float64         // expected share of growth given up on this paddock
	Current    bool            // the mob is there already and finishes it
	Again      bool            // the paddock's second grazing in the plan
	hectares   float64         // grazed in this step
}

// field gives the field of that name; an empty one where there is none.
func (p Problem) field(name string) Field {
	for _, f := range p.Fields {
		if f.Name == name {
			return f
		}
	}
	return Field{}
}
