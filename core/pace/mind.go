package pace

import (
	"math"

	"leafround/core/entry"
)

// mind is the filter run in several tempers at once (a bank of filters; Magill
// 1965, IEEE Trans. Autom. Control 10:434): each holds a state of its own, and
// the better one of them foresees the counts, the more it weighs.
type mind struct {
	day    entry.Date
	states []*state
	weight []float64 // sum to 1
}

// newMind gives what is known before anything is logged.
func newMind(day entry.Date, models []model) *mind {
	m := &mind{day: day}
	for i := range models {
		m.states = append(m.states, newState(day, models[i].tune))
		m.weight = append(m.weight, likely[i])
	}
	return m
}

// clone gives an independent copy.
func (m *mind) clone() *mind {
	c := &mind{day: m.day, weight: append([]float64(nil), m.weight...)}
	for _, s := range m.states {
		c.states = append(c.states, s.clone())
	}
	return c
}

// reach grows every state up to a day.
func (m *mind) reach(day entry.Date, models []model) {
	for i, s := range m.states {
		s.widen(models[i].grasses, models[i].tune)
		for s.day < day {
			models[i].grow(s)
		}
	}
	if day > m.day {
		m.relent(day.Sub(m.day))
		m.day = day
	}
}

// relents is in how many days a temper's good or bad name is forgotten: a year
// may be calm in spring and wild in summer (ours).
const relents = 90

// relent draws the weights back to what they were at first as days pass.
func (m *mind) relent(days int) {
	keep := math.Exp(-float64(days) / relents)
	sum := 0.0
	for i, w := range m.weight {
		m.weight[i] = likely[i] * math.Pow(max(w/likely[i], 1e-6), keep)
		sum += m.weight[i]
	}
	for i := range m.weight {
		m.weight[i] /= sum
	}
}

// do applies one event to every state, and weighs them by how a count
// surprised them.
func (m *mind) do(e Event, i int, models []model) {
	least := math.Inf(1)
	surprise := make([]float64, len(m.states))
	for j, s := range m.states {
		surprise[j] = models[j].do(s, e, i)
		least = min(least, surprise[j])
	}
	sum := 0.0
	for j := range m.weight {
		m.weight[j] = max(m.weight[j]*math.Exp(least-surprise[j]), 1e-9)
		sum += m.weight[j]
	}
	for j := range m.weight {
		m.weight[j] /= sum
	}
}

// do applies one event to a state; i is the paddock's place.
func (m *model) do(s *state, e Event, i int) (surprise float64) {
	switch d := e.Do.(type) {
	case *Weather:
		s.sky.tell(s.day, d)
	case *Restart:
		m.restart(s, i, d)
	case *Seen:
		return m.look(s, i, d)
	case *Closed:
		s.plots[i].closed = s.day
	}
	return 0
}
