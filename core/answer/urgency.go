package answer

import (
	"cmp"

	"leafround/core/entry"
)

// ByUrgency orders answers to one message: a person who may be hurt comes before ill
// stock, and both before everything else.
func ByUrgency(a, b Answer) int {
	return cmp.Compare(urgency(a), urgency(b))
}

func urgency(a Answer) int {
	l, _ := a.(Logged)
	n, _ := l.Entry.(entry.Note)
	switch n.Alarm {
	case entry.AlarmPerson:
		return 0
	case entry.AlarmStock:
		return 1
	}
	return 2
}
