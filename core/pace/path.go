package pace

import "math"

// horizon is how far the estimator looks, days: no regrowth takes a year.
const horizon = 400

// path is the future of one paddock: its log stage at the start of each day
// from the estimate's, found day by day and kept.
type path struct {
	s     *state // farm terms and this one paddock
	m     model
	steps []belief
}

// path gives a paddock's future.
func (e *view) path(i int) *path {
	if p := e.paths[i]; p != nil {
		return p
	}
	n := farmTerms + 2
	s := &state{day: e.s.day, n: n, x: make([]float64, n), p: make([]float64, n*n),
		plots: []plot{e.s.plots[i]}, sky: e.s.sky}
	from := make([]int, n)
	for j := range from {
		from[j] = j
	}
	from[own(0)], from[stage(0)] = own(i), stage(i)
	for a, fa := range from {
		s.x[a] = e.s.x[fa]
		for b, fb := range from {
			s.p[a*n+b] = e.s.p[fa*e.s.n+fb]
		}
	}
	p := &path{s: s, m: model{site: e.m.site, tune: e.m.tune, grasses: e.m.grasses[i : i+1]}}
	p.note()
	e.paths[i] = p
	return p
}

// note keeps the present belief about the log stage. What is doubtful about the
// start and not yet in the state is added.
func (p *path) note() {
	b := belief{mean: math.Inf(-1)}
	if now := p.s.leaves(0); now > 0 {
		b = belief{mean: p.s.x[stage(0)], v: p.s.spread(0) + p.s.plots[0].pending/max(now*now, 0.25)}
	}
	p.steps = append(p.steps, b)
}

// on gives the belief about the log stage k days ahead.
func (e *view) on(i, k int) belief {
	p := e.path(i)
	for len(p.steps) <= k {
		p.m.growWith(p.s, e.outlook(len(p.steps)-1))
		p.note()
	}
	return p.steps[k]
}
