package pace

import "math"

// model is what stays the same from day to day.
type model struct {
	site    Site
	tune    tuning
	grasses []grass
}

// loads gives, for the state's day, how each of the farm's terms bears on log
// pace, and the season's own part.
func (m *model) loads(s *state) (season float64, load [farmTerms]float64) {
	load = [farmTerms]float64{atLevel: 1, atDrift: 1, atWeather: 1}
	load[atWarmth], load[atDryness] = s.sky.bearing(m.site, s.day)
	load[atSin], load[atCos] = math.Sincos(m.site.turn(s.day))
	return m.site.season(s.day), load
}

// grow takes the state from the start of its day to the start of the next.
func (m *model) grow(s *state) {
	season, load := m.loads(s)
	m.growWith(s, ahead{season, load})
	s.sky.pass(m.site, s.day-1)
}

// growWith does the same for a day whose loads are known; the sky stays.
func (m *model) growWith(s *state, a ahead) {
	farm := a.season
	for g, l := range a.load {
		farm += l * s.x[g]
	}
	s.mix(m.steps(s, farm), a.load)
	for i := range s.plots {
		m.shoot(s, i, farm)
	}
	m.wander(s)
	s.day++
}

// step is how one paddock's log stage after a day depends on what was before:
// by keep on itself, by gain on log pace.
type step struct {
	i          int
	keep, gain float64
}

// steps gives the day's step of each paddock that grows: with S' = S + r,
// ∂log S'/∂log S = S/S' and ∂log S'/∂log r = r/S'.
func (m *model) steps(s *state, farm float64) []step {
	all := make([]step, 0, len(s.plots))
	for i := range s.plots {
		if !s.plots[i].going {
			continue
		}
		r := math.Exp(farm + s.x[own(i)] + m.grasses[i].offset())
		was := s.leaves(i)
		all = append(all, step{i: i, keep: was / (was + r), gain: r / (was + r)})
	}
	return all
}

// mix carries the covariance through the day's steps (P' = F P Fᵀ): the rows of
// the stages first; the columns of all else then mirror them, and only between
// stages is there anything left to do.
func (s *state) mix(steps []step, load [farmTerms]float64) {
	n := s.n
	sum := make([]float64, n)
	for g, l := range load {
		for j, v := range s.p[g*n : g*n+n] {
			sum[j] += l * v
		}
	}
	for _, st := range steps {
		z, o := s.row(stage(st.i)), s.row(own(st.i))
		for j := range z {
			z[j] = st.keep*z[j] + st.gain*(sum[j]+o[j])
		}
	}
	for _, st := range steps {
		s.mirror(stage(st.i), steps, load)
	}
}

// mirror finishes a stage's row after the rows' step, and its column.
func (s *state) mirror(z int, steps []step, load [farmTerms]float64) {
	row, farm := s.row(z), 0.0
	for g, l := range load {
		farm += l * row[g]
	}
	for _, st := range steps {
		row[stage(st.i)] = st.keep*row[stage(st.i)] + st.gain*(farm+row[own(st.i)])
	}
	for j := range farmTerms {
		s.p[j*s.n+z] = row[j]
	}
	for i := range s.plots {
		s.p[own(i)*s.n+z] = row[own(i)]
	}
}

// row gives a row of the covariance.
func (s *state) row(i int) []float64 { return s.p[i*s.n : i*s.n+s.n] }

// shoot moves one paddock's mean stage on by a day's leaf, with the doubt that
// belongs to that paddock and day alone.
func (m *model) shoot(s *state, i int, farm float64) {
	p := &s.plots[i]
	if !p.going {
		return
	}
	r := math.Exp(farm + s.x[own(i)] + m.grasses[i].offset())
	now := s.leaves(i) + r
	p.bare = false
	s.x[stage(i)] = math.Log(now)
	d := m.tune.regrown * r / now
	s.p[stage(i)*s.n+stage(i)] += d * d
	s.settle(i)
}

// wander lets the terms that change do so: drift and weather forget and are
// renewed (Ornstein–Uhlenbeck), level, season and each paddock's difference
// take a step.
func (m *model) wander(s *state) {
	t := m.tune
	s.forgetting(atDrift, t.driftTime, t.drift*t.drift)
	s.forgetting(atWeather, t.quickTime, t.weather*t.weather)
	s.loosen(atLevel, t.levelStep)
	s.loosen(atCos, t.seasonal)
	s.loosen(atSin, t.seasonal)
	for i := range s.plots {
		s.loosen(own(i), t.ownStep)
	}
}

// loosen adds a day's share of what a term may change in a year.
func (s *state) loosen(at int, inYear float64) {
	s.p[at*s.n+at] += inYear * inYear / year
}

// forgetting shrinks a term towards 0 by a day and renews its variance, so that
// left alone it keeps the variance v.
func (s *state) forgetting(at int, time, v float64) {
	keep := math.Exp(-1 / time)
	s.x[at] *= keep
	for j := range s.n {
		s.p[at*s.n+j] *= keep
		s.p[j*s.n+at] *= keep
	}
	s.p[at*s.n+at] += (1 - keep*keep) * v
}
