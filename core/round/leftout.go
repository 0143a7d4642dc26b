package round

import (
	"leafround/core/entry"
	"leafround/core/farm"
)

// Out tells why a paddock is left out.
type Out string

// Why a paddock is left out.
const (
	OutHeld    Out = "held"    // a hold binds; Held lists them, Free is the day the last of them ends
	OutShut    Out = "shut"    // shut in a what-if
	OutStock   Out = "stock"   // stock are in it; Mobs names them
	OutBarred  Out = "barred"  // the mob may not graze it
	OutUnknown Out = "unknown" // never counted and never grazed in the log
	OutBelow   Out = "below"   // below its window: not ready, in an answer on what is ready
	OutNoMob   Out = "no_mob"  // no mob on the round may graze it
	OutLater   Out = "later"   // free only after what can be foreseen
)

// LeftOut is a paddock that an answer leaves out, and why.
type LeftOut struct {
	Paddock string
	Why     Out
	Held    []farm.Held
	Free    entry.Date // the first day it may be grazed; zero where that is not known
	Mobs    []string
	Stage   entry.LeafStage // where below its window
	ReadyOn entry.Date
}

// out tells why no mob may be sent into a paddock on a day: it is held, or
// other stock are in it, or the mob may not graze it. The order is one of
// weight: a hold is told whatever else is true.
func out(f *farm.Farm, p *farm.Paddock, day entry.Date, mob string) (LeftOut, bool) {
	l := LeftOut{Paddock: p.Name}
	if held := p.HeldOn(day); len(held) > 0 {
		l.Why, l.Held = OutHeld, held
		l.Free, _ = p.FreeFrom(day)
		return l, true
	}
	if p.Occupied() {
		l.Why = OutStock
		for _, s := range p.Stays {
			l.Mobs = append(l.Mobs, s.Mob)
		}
		return l, true
	}
	if mob != "" && !f.MayGraze(mob, p) {
		l.Why = OutBarred
		l.Mobs = []string{mob}
		return l, true
	}
	return l, false
}
