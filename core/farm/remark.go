package farm

import "leafround/core/entry"

// RemarkKind names what was noticed when an entry was folded in.
type RemarkKind string

// The remarks.
const (
	AlreadyIn   RemarkKind = "already_in"   // that stock was in there since Date
	NeverIn     RemarkKind = "never_in"     // stock came out that nobody had logged going in
	Completes   RemarkKind = "completes"    // told more of a grazing that had ended, on Date
	TakenOut    RemarkKind = "taken_out"    // Mob is taken to have left Paddock on Date
	MobUntold   RemarkKind = "mob_untold"   // stock without a name where several mobs are registered
	Named       RemarkKind = "named"        // Mob is the stock without a name that went in on Date
	CutAlready  RemarkKind = "cut_already"  // the same cut was told that day before
	HeldAlready RemarkKind = "held_already" // a hold of that Reason binds already, until Date
	OthersIn    RemarkKind = "others_in"    // Mob stays in, so regrowth waits
	WhileHeld   RemarkKind = "while_held"   // stock went into a held paddock
	StillHeld   RemarkKind = "still_held"   // a hold that this release does not lift
	Lifted      RemarkKind = "lifted"       // a hold that ended by this entry
	NotHeld     RemarkKind = "not_held"     // a release where nothing was held
	Barred      RemarkKind = "barred"       // a mob where it should not graze
	OverStayed  RemarkKind = "over_stayed"  // left after more than three days
)

// Remark is something that the team should hear about an entry.
type Remark struct {
	Kind    RemarkKind
	Paddock string
	Mob     string
	Reason  entry.Reason
	Date    entry.Date
	Days    int
}

// Remarks gives what was noticed when the entry of that number was folded in.
func (f *Farm) Remarks(id int64) []Remark {
	var out []Remark
	for _, p := range f.all {
		out = append(out, p.remarks[id]...)
	}
	return append(out, f.left[id]...)
}
