package pace

// tuning is what the model takes for granted: standard deviations in units of
// log pace (0.1 is about a tenth), and times in days. All are ours, chosen wide
// rather than sharp: a farm's own counts settle what can be settled.
type tuning struct {
	level     float64 // farm's steady difference from the rule of thumb
	levelStep float64 // its change in a year
	season    float64 // each of the two terms of the farm's own season
	seasonal  float64 // their change in a year

	drift     float64 // the slow wandering term
	driftTime float64 // days in which it forgets
	weather   float64 // the quick one
	quickTime float64

	warmth, warmthSD   float64 // β: how much logged warmth tells
	dryness, drynessSD float64 // γ: how much reckoned dryness tells

	own     float64 // between paddocks
	ownStep float64 // its change in a year
	sown    float64 // between paddocks of a grass of which we know little, on top
	regrown float64 // a paddock's daily leaf growth about its pace, as a part of it

	start    float64 // leaves: doubt about the stage that regrowth starts from
	startLax float64 // the same for each leaf of a lax start
	unknown  float64 // leaves: what a never grazed, never counted paddock is taken to carry
	unsure   float64 // in log: the doubt about it

	people float64 // leaves: what two careful people differ in, apart from the tillers drawn
	odd    float64 // part of all counts that cannot fit
}

// tempers are the ways a farm's pace may wander: hardly beyond a quick up and
// down, in spells of weeks, or in leaps and after a season of its own, as where
// a dry summer breaks.
var tempers = []tuning{temper(0.10, 45, 0.18), temper(0.15, 30, 0.18), temper(0.4, 30, 0.35)}

// likely is how often each is met, before counts.
var likely = []float64{0.5, 0.3, 0.2}

func temper(drift, driftTime, season float64) tuning {
	return tuning{
		level: 0.25, levelStep: 0.05, season: season, seasonal: 0.02,
		drift: drift, driftTime: driftTime, weather: 0.12, quickTime: 8,
		warmth: 0.8, warmthSD: 0.35, dryness: 0.7, drynessSD: 0.35,
		own: 0.14, ownStep: 0.02, sown: 0.2, regrown: 0.1,
		start: 0.05, startLax: 0.2, unknown: 1.3, unsure: 0.5,
		people: 0.06, odd: 0.02,
	}
}

// doubt gives the standard deviation of one of the farm's terms before anything
// is logged.
func (t tuning) doubt(term int) float64 {
	switch term {
	case atLevel:
		return t.level
	case atDrift:
		return t.drift
	case atWeather:
		return t.weather
	case atWarmth:
		return t.warmthSD
	case atDryness:
		return t.drynessSD
	}
	return t.season
}
