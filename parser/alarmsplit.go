package parser

import (
	"leafround/core/entry"
)

// besideAlarm reads a message of which some sentences tell of a hurt person or ill
// stock and others of something else: "milkers out of 8 into 9. One cow is down". Each
// becomes what it says, an alarm of its own kind; ok is false where any of it is in
// doubt, so that the whole message is kept as the note. Without a kind it is one of
// stock that are well again.
func (r *reader) besideAlarm(from, to int, kind entry.Alarm) (list []entry.Entry, ok bool) {
	alarms, others, pieces := 0, 0, 0
	told := false // the message's own kind, by one of its parts
	for i := from; i < to; {
		k := i
		ill := false
		for k < to {
			end := r.pieceEnd(k, to)
			if bad := r.alarmKind(k, end) != "" || kind == "" && (r.wellAgain(k, end) || r.isOver(k, end)); k == i {
				ill = bad
			} else if bad != ill {
				break
			}
			k = min(end+1, to)
			if pieces++; pieces > mostPieces {
				return nil, false
			}
		}
		a, b := r.trim(i, k)
		within := alarms > 0 && r.tok(i-1).text == ","
		i = k
		switch {
		case a >= b:
		case within && !ill:
			return nil, false // "bloat in the milkers, river flat, 2 down"
		case ill:
			n := r.alarmNote(a, b, r.alarmKind(a, b))
			told = told || n.Alarm == kind
			list = append(list, n)
			alarms++
		default:
			o := r.sentences(a, b)
			if o.ask != nil || o.question != nil || !plainEntries(o.entries) {
				return nil, false
			}
			list = append(list, o.entries...)
			others++
		}
	}
	return list, told && alarms > 0 && others > 0
}

// mostPieces is how many sentences and parts of them are looked through for what
// else an alarm's message says; a longer one is the alarm's note as a whole (ours).
const mostPieces = 100

// pieceEnd gives the token that ends a sentence, or a part of one in front of a
// comma.
func (r *reader) pieceEnd(i, to int) int {
	stop := r.sentenceEnd(i, to)
	for k := i; k < stop; k++ {
		if r.tok(k).text == "," {
			return k
		}
	}
	return stop
}

// plainEntries tells whether entries stand on their own beside an alarm: a
// place alone ("in 12, two down") tells of no move.
func plainEntries(list []entry.Entry) bool {
	for _, e := range list {
		switch v := e.(type) {
		case entry.Graze:
			if v.Mob == "" {
				return false
			}
		case entry.Count, entry.Hold, entry.Release, entry.Cut, entry.Rain, entry.Temperature, entry.Canopy:
		default:
			return false
		}
	}
	return len(list) > 0
}
