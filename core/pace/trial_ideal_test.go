package pace_test

import (
	"math"
)

// ideal is a filter that is handed the true lore of its farm and learns only
// the weather, the paddocks and their stages: no estimator can know more. It is
// written apart from the estimator: weather in two terms, each paddock's
// factor, and the log of each stage, in one covariance.
type ideal struct {
	l     lore
	w     world
	n     int
	x     []float64
	c     [][]float64
	going []bool
	day   int
	shows [][2]float64 // mean and variance that a tiller shows, by stage in hundredths
}

func newIdeal(l lore, w world, day int) *ideal {
	f := &ideal{l: l, w: w, n: 2 + 2*len(w.rates), day: day, going: make([]bool, len(w.rates))}
	f.x = make([]float64, f.n)
	f.c = make([][]float64, f.n)
	for i := range f.c {
		f.c[i] = make([]float64, f.n)
	}
	f.c[0][0], f.c[1][1] = l.quick*l.quick, l.slow*l.slow
	for p := range w.rates {
		f.c[2+2*p][2+2*p] = l.apart * l.apart
	}
	for s := 0.0; s < 6; s += 0.01 {
		f.shows = append(f.shows, shows(s, l.tillers, w.live))
	}
	return f
}

// shows gives the mean and variance of what one tiller shows, by summing over
// its deviation.
func shows(stage, sd, live float64) [2]float64 {
	var w, m, q float64
	for u := -4.0; u <= 4; u += 0.05 {
		s := math.Round(4*min(max(stage+sd*u, 0), live)) / 4
		g := math.Exp(-u * u / 2)
		w, m, q = w+g, m+g*s, q+g*s*s
	}
	m /= w
	return [2]float64{m, q/w - m*m + 1e-3}
}

// rate gives a paddock's leaves on a day if the weather terms are these.
func (f *ideal) rate(p, day int, weather float64) float64 {
	return f.l.usualRate(f.w.from.Add(day)) * math.Exp(weather+f.x[2+2*p])
}

// to carries the filter to the start of a day.
func (f *ideal) to(day int) {
	for ; f.day < day; f.day++ {
		for p, on := range f.going {
			if on {
				f.leafOut(p)
			}
		}
		for i, keep := range []float64{f.l.quickKeep, f.l.slowKeep} {
			sd := []float64{f.l.quick, f.l.slow}[i]
			f.x[i] *= keep
			for j := range f.n {
				f.c[i][j] *= keep
				f.c[j][i] *= keep
			}
			f.c[i][i] += sd * sd * (1 - keep*keep)
		}
	}
}

// leafOut grows one paddock by a day.
func (f *ideal) leafOut(p int) {
	b, z := 2+2*p, 3+2*p
	was := math.Exp(f.x[z])
	r := f.rate(p, f.day, f.x[0]+f.x[1])
	g := r / (was + r)
	f.x[z] = math.Log(was + r)
	for j := range f.n {
		f.c[z][j] = (1-g)*f.c[z][j] + g*(f.c[0][j]+f.c[1][j]+f.c[b][j])
	}
	for j := range f.n {
		f.c[j][z] = (1-g)*f.c[j][z] + g*(f.c[j][0]+f.c[j][1]+f.c[j][b])
	}
	f.c[z][z] += 0.01 * g * g // a paddock's own day: a tenth
}

// graze starts a paddock's regrowth.
func (f *ideal) graze(p int) {
	z := 3 + 2*p
	f.going[p] = true
	for j := range f.n {
		f.c[z][j], f.c[j][z] = 0, 0
	}
	f.x[z] = -12 // e⁻¹²: nothing
}

// see takes a count: the posterior of the log stage over a grid, by the true
// law of what tillers show; the rest follows by regression.
func (f *ideal) see(p, n int, mean float64) {
	z := 3 + 2*p
	if !f.going[p] {
		f.going[p], f.x[z], f.c[z][z] = true, math.Log(1.6), 0.25
	}
	m, sd := f.x[z], math.Sqrt(f.c[z][z])
	var w, a, b float64
	for u := -5.0; u <= 5; u += 0.04 {
		s := min(int(100*math.Exp(m+sd*u)), len(f.shows)-1)
		v := f.shows[s][1] / float64(n)
		e := mean - f.shows[s][0]
		g := math.Exp(-u*u/2-e*e/(2*v)) / math.Sqrt(v)
		w, a, b = w+g, a+g*u, b+g*u*u
	}
	if w <= 0 || sd == 0 {
		return
	}
	a, b = a/w, b/w
	shrink := 1 - (b - a*a)
	row := append([]float64(nil), f.c[z]...)
	for i, ri := range row {
		f.x[i] += ri / sd * a
		for j, rj := range row {
			f.c[i][j] -= ri * rj / (sd * sd) * shrink
		}
	}
}

// due gives the moment at which the paddock reaches a stage, the weather terms
// fading as they do.
func (f *ideal) due(p int, to float64) float64 {
	s := math.Exp(f.x[3+2*p])
	if s >= to {
		return float64(f.day)
	}
	quick, slow := f.x[0], f.x[1]
	for d := f.day; ; d++ {
		r := f.rate(p, d, quick+slow)
		if s+r >= to {
			return float64(d) + (to-s)/r
		}
		s, quick, slow = s+r, quick*f.l.quickKeep, slow*f.l.slowKeep
	}
}
