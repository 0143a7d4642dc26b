package pace

import (
	"math"

	"leafround/core/entry"
)

// The farm's own terms, at the head of the state vector.
const (
	atLevel = iota
	atDrift
	atWeather
	atWarmth
	atDryness
	atCos // the farm's own season
	atSin
	farmTerms
)

// own and stage give where a paddock's difference and its log leaf stage lie.
func own(i int) int   { return farmTerms + 2*i }
func stage(i int) int { return farmTerms + 2*i + 1 }

// state is what the filter holds at the start of a day: means x and their
// covariance p (n by n, in rows), and what each paddock is about.
type state struct {
	day    entry.Date
	n      int
	x, p   []float64
	plots  []plot
	sky    sky
	counts int // on the whole farm
}

// plot is one paddock's part of the state that is not Gaussian.
type plot struct {
	going   bool       // its log stage means something
	bare    bool       // stage is 0: log stage is minus infinity
	pending float64    // leaves²: doubt about the start that is not yet in p
	since   entry.Date // regrowth began; zero where not known
	looks   int        // counts of this regrowth
	last    entry.Date // the last of them
	seen    float64    // its mean
	hoped   float64    // the stage that was expected of it
	repro   bool       // mostly reproductive when last looked at
	odd     string     // why the last count cannot fit
	start   float64    // leaves: the stage that regrowth began at
	closed  entry.Date // canopy
	warmth  float64    // degree-days that the sky had summed when regrowth began
}

// newState gives what is known before anything is logged.
func newState(day entry.Date, t tuning) *state {
	s := &state{day: day, n: farmTerms, x: make([]float64, farmTerms),
		p: make([]float64, farmTerms*farmTerms)}
	s.x[atWarmth], s.x[atDryness] = t.warmth, t.dryness
	for i := range farmTerms {
		sd := t.doubt(i)
		s.p[i*s.n+i] = sd * sd
	}
	return s
}

// clone gives an independent copy.
func (s *state) clone() *state {
	c := *s
	c.x = append([]float64(nil), s.x...)
	c.p = append([]float64(nil), s.p...)
	c.plots = append([]plot(nil), s.plots...)
	return &c
}

// widen adds paddocks until there are as many as grasses. A paddock's
// difference is independent of all else before it is first counted, so it does
// not matter when it is added.
func (s *state) widen(grasses []grass, t tuning) {
	have := len(s.plots)
	if have >= len(grasses) {
		return
	}
	n := farmTerms + 2*len(grasses)
	p := make([]float64, n*n)
	for i := range s.n {
		copy(p[i*n:i*n+s.n], s.p[i*s.n:(i+1)*s.n])
	}
	x := make([]float64, n)
	copy(x, s.x)
	s.n, s.p, s.x = n, p, x
	for i := have; i < len(grasses); i++ {
		s.plots = append(s.plots, plot{})
		sd := grasses[i].spread(t)
		s.p[own(i)*n+own(i)] = sd * sd
	}
}

// forget takes what is known of a paddock's stage out of the state.
func (s *state) forget(i int) {
	z := stage(i)
	for j := range s.n {
		s.p[z*s.n+j], s.p[j*s.n+z] = 0, 0
	}
	s.x[z] = 0
	s.plots[i].pending = 0
}

// leaves gives the median leaf stage of a paddock, leaves.
func (s *state) leaves(i int) float64 {
	switch {
	case !s.plots[i].going || s.plots[i].bare:
		return 0
	}
	return math.Exp(s.x[stage(i)])
}

// spread gives the variance of a paddock's log stage.
func (s *state) spread(i int) float64 { return s.p[stage(i)*s.n+stage(i)] }
