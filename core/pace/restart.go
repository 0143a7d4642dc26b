package pace

import "math"

// restart begins a paddock's regrowth again, all of it or a share.
func (m *model) restart(s *state, i int, r *Restart) {
	share := r.Share
	if !(share > 0 && share <= 1) || !s.plots[i].going {
		share = 1
	}
	start := max(float64(r.Start), 0) + m.ahead(s, i, r.Strips)
	if share < 1 {
		m.part(s, i, share, start)
		return
	}
	s.forget(i)
	s.plots[i] = plot{going: true, bare: start == 0, since: s.day, start: start, warmth: s.sky.sum}
	doubt := m.tune.start + m.tune.startLax*start
	if start > 0 {
		s.x[stage(i)] = math.Log(start)
	}
	s.plots[i].pending = doubt * doubt
	s.settle(i)
}

// ahead gives the mean stage over strips that were grazed a day apart, on the
// day the last was left (ours).
func (m *model) ahead(s *state, i, strips int) float64 {
	if strips < 2 {
		return 0
	}
	season, load := m.loads(s)
	r := season + s.x[own(i)] + m.grasses[i].offset()
	for g, l := range load {
		r += l * s.x[g]
	}
	return math.Exp(r) * float64(strips-1) / 2
}

// part grazes a share: the stage is the mean over what was grazed and what was
// not (ours). From half on, the days are counted from this grazing.
func (m *model) part(s *state, i int, share, start float64) {
	p := &s.plots[i]
	was := s.leaves(i)
	now := (1-share)*was + share*start
	if now <= 0 {
		return
	}
	keep := (1 - share) * was / now
	s.x[stage(i)] = math.Log(now)
	s.scale(stage(i), keep)
	// Which strip a count falls in is a matter of chance: doubt of a quarter of
	// the difference between the two (ours).
	d := share * (1 - share) * (was - start) / now
	s.p[stage(i)*s.n+stage(i)] += d * d
	p.bare, p.odd = false, ""
	if share >= 0.5 {
		p.since, p.start, p.looks, p.repro, p.closed = s.day, now, 0, false, 0
		p.warmth = s.sky.sum
	}
}

// scale multiplies an element's deviation from its mean.
func (s *state) scale(at int, by float64) {
	for j := range s.n {
		s.p[at*s.n+j] *= by
		s.p[j*s.n+at] *= by
	}
}

// settle moves the doubt about where regrowth started into the state, once the
// stage is half a leaf: log stage is no measure of it before.
func (s *state) settle(i int) {
	p, now := &s.plots[i], s.leaves(i)
	if p.pending > 0 && now >= 0.5 {
		s.p[stage(i)*s.n+stage(i)] += p.pending / (now * now)
		p.pending = 0
	}
}
