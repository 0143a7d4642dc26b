package answer

import (
	"leafround/core/entry"
	"leafround/core/farm"
)

// Help is the page that shows by example what one can say.
type Help struct {
	Head
	Farm    string `json:"farm,omitempty"`
	Paddock string `json:"paddock"` // one of the farm's own, for the examples
	Other   string `json:"other"`   // another
	Mob     string `json:"mob"`
	SetUp   bool   `json:"set_up"` // the register holds paddocks
}

func help(f *farm.Farm) Answer {
	a := Help{Head: Head{string(entry.AskHelp)}, Farm: f.Name, Paddock: "12", Other: "7", Mob: "milkers"}
	var names []string
	for _, p := range f.Paddocks {
		if p.Listed {
			names = append(names, p.Name)
		}
	}
	a.SetUp = len(names) > 0
	if len(names) > 1 {
		a.Paddock, a.Other = names[0], names[1]
	}
	for _, m := range f.Mobs {
		if m.Listed && m.Active() {
			a.Mob = m.Name
			break
		}
	}
	return a
}
