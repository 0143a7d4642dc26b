package pace

import (
	"fmt"
	"math"

	"leafround/core/leaf"
)

// surely is the chance of not fitting from which a count is called odd (ours).
const surely = 0.8

// look takes a count into the state, and gives how much it surprised: minus the
// log of its likelihood.
func (m *model) look(s *state, i int, seen *Seen) (surprise float64) {
	p := &s.plots[i]
	p.repro = seen.Reproductive > 0 && seen.Reproductive > seen.N
	if seen.N <= 0 && !(seen.Mean > 0) || math.IsNaN(seen.Mean) { // nothing but reproductive tillers
		p.last = s.day
		return 0
	}
	s.counts++
	if !p.going {
		s.begin(i, math.Log(m.tune.unknown), m.tune.unsure*m.tune.unsure)
	}
	v := m.sight(s, i, seen)
	if p.bare { // counted on the day it was grazed: there is nothing to learn
		p.odd = ""
		if v.mean > 3*v.sd+p.start {
			p.odd = "it was grazed that same day"
		}
		return 0
	}
	before := belief{mean: s.x[stage(i)], v: max(s.spread(i), 1e-6)}
	after, odd, chance := v.meet(before)
	s.take(stage(i), before, after)
	p.looks, p.last, p.seen, p.hoped, p.odd = p.looks+1, s.day, seen.Mean, math.Exp(before.mean), ""
	if odd > surely {
		p.odd = oddity(v.mean, p.hoped)
		m.doubt(s, i, v)
	}
	return -math.Log(max(chance, 1e-12))
}

// begin sets a paddock going from a stage that nothing else in the state knows
// about.
func (s *state) begin(i int, mean, v float64) {
	s.forget(i)
	s.plots[i].going, s.plots[i].bare = true, false
	s.x[stage(i)] = mean
	s.p[stage(i)*s.n+stage(i)] = v
}

// sight weighs a count: the error of its mean, what people differ in, and the
// doubt about the start that is not yet in the state. Reproductive tillers that
// were set aside make the rest a poorer sample.
func (m *model) sight(s *state, i int, seen *Seen) sight {
	se := seen.SE
	if !(se > 0) {
		n := float64(seen.N)
		if seen.N <= 0 {
			n = 3
		}
		se = leaf.Usual.SD / math.Sqrt(n)
	}
	v := se*se + m.tune.people*m.tune.people + s.plots[i].pending
	if s.plots[i].repro {
		v *= 9
	} else if seen.Reproductive > 0 {
		v *= 1 + float64(seen.Reproductive)/float64(max(seen.N, 1))
	}
	return sight{mean: seen.Mean, sd: math.Sqrt(v), live: m.grasses[i].live(),
		floor: 2*seen.Past > seen.N && seen.Past > 0, odd: m.tune.odd}
}

// take moves the whole state as one element's belief moved: the others follow
// by their regression on it.
func (s *state) take(at int, before, after belief) {
	n := s.n
	c := append([]float64(nil), s.p[at*n:at*n+n]...)
	shift := (after.mean - before.mean) / before.v
	shrink := (1 - after.v/before.v) / before.v
	for j, cj := range c {
		s.x[j] += cj * shift
	}
	for j, cj := range c {
		if cj == 0 {
			continue
		}
		k, row := cj*shrink, s.p[j*n:j*n+n]
		for l, cl := range c {
			row[l] -= k * cl
		}
	}
}

// doubt cuts the stage of a paddock whose count cannot fit loose from the pace:
// perhaps the count is wrong, perhaps the day that regrowth began, and neither
// says anything about how fast leaves come. Until its next count settles which,
// the paddock is taken to lie between the two, with both well within reach.
func (m *model) doubt(s *state, i int, v sight) {
	expected, spread := s.leaves(i), s.spread(i)
	seen := max(v.mean, 0.25)
	far := math.Log(seen / expected)
	s.begin(i, math.Log((seen+expected)/2), spread+far*far/3)
}

func oddity(seen, expected float64) string {
	way := "faster"
	if seen < expected {
		way = "slower"
	}
	return fmt.Sprintf("%s than fits: %.1f leaves seen, about %.1f expected", way, seen, expected)
}
