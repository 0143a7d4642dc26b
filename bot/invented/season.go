package invented

import (
	"fmt"
	"math"
	"math/rand/v2"
	"sort"
	"strings"
	"time"
)

// days is the length of the season that the demo begins with.
const days = 84

// Season gives the texts of the last twelve weeks, oldest first, none later
// than now. The same day gives the same season.
func Season(now time.Time) []Message {
	zone, err := time.LoadLocation(Zone)
	if err != nil {
		zone = time.UTC
	}
	now = now.In(zone)
	y, m, d := now.Date()
	s := &season{
		first:  time.Date(y, m, d-days, 0, 0, 0, 0, zone),
		ground: grounds(),
		rand:   rand.New(rand.NewPCG(7, 11)),
	}
	s.open()
	for day := 1; day <= days; day++ {
		s.day = day
		s.grow()
		s.work()
	}
	sort.SliceStable(s.said, func(i, j int) bool { return s.said[i].At.Before(s.said[j].At) })
	for len(s.said) > 0 && s.said[len(s.said)-1].At.After(now.Add(-2*time.Minute)) {
		s.said = s.said[:len(s.said)-1]
	}
	// Asked for only now, the morning summary begins tomorrow.
	return append(s.said, Message{At: now.Add(-time.Minute).Truncate(time.Minute), Who: Ana, Text: "summary 6:15"})
}

type season struct {
	first   time.Time
	day     int
	ground  []*ground
	rand    *rand.Rand
	said    []Message
	milkers *ground
	left    float64 // days of grass left for the milkers where they are
	heifers *ground
	since   int
}

// say puts one text into the season.
func (s *season) say(hour, minute int, who, text string) {
	y, m, d := s.first.Date()
	at := time.Date(y, m, d+s.day, hour, minute, 0, 0, s.first.Location())
	s.said = append(s.said, Message{At: at, Who: who, Text: text})
}

// open sets the farm up and tells when each paddock was last grazed.
func (s *season) open() {
	before, after := opening()
	for i, text := range before {
		s.say(18, i, Ana, text)
	}
	s.say(18, len(before), Ana, "")
	last := &s.said[len(s.said)-1]
	last.File, last.Content = "totara-bend.csv", register(s.ground)
	for i, text := range after {
		s.say(18, len(before)+1+i, Ana, text)
	}
	for i, p := range s.ground {
		ago := 1 + (i*17)%34
		p.start, p.stage = -ago, float64(ago)*s.pace(0)*p.vigour
		on := s.first.AddDate(0, 0, -ago)
		s.say(18, 10+i, Ana, fmt.Sprintf("%s last grazed %s", mark(p.name), on.Format("2 Jan")))
	}
}

// pace is the farm's true leaves a day: fast in a southern spring, slow in
// winter, with some weather in it.
func (s *season) pace(day int) float64 {
	year := s.first.AddDate(0, 0, day).YearDay()
	warm := math.Cos(2 * math.Pi * float64(year-20) / 365) // most in late January
	weather := 1 + 0.08*math.Sin(float64(day)/5.3)
	return (0.102 + 0.045*warm) * weather
}

func (s *season) grow() {
	for _, p := range s.ground {
		p.stage += s.pace(s.day) * p.vigour
	}
}

// work is one day on the farm.
func (s *season) work() {
	s.milk()
	s.young()
	switch s.day % 7 {
	case 2:
		s.walk(9, Jo, 9)
	case 5:
		s.walk(16, Wiremu, 6)
	case 3:
		s.weather()
	}
	s.events()
}

// milk moves the milkers when their paddock is eaten out.
func (s *season) milk() {
	const haADay = 2.3
	if s.left -= 1; s.left > 0.3 && s.milkers != nil {
		return
	}
	next := s.best(false)
	if next == nil {
		return
	}
	who := []string{Wiremu, Jo}[s.day%2]
	switch {
	case s.milkers == nil:
		s.say(7, 10, who, "milkers into "+mark(next.name))
	case s.day%5 == 0:
		s.say(7, 5, who, fmt.Sprintf("out %s resid %d", mark(s.milkers.name), 1450+50*(s.day%4)))
		s.say(7, 12, who, "milkers in "+mark(next.name))
	default:
		s.say(7, 8, who, fmt.Sprintf("milkers %s to %s", bare(s.milkers.name), bare(next.name)))
	}
	s.leave(s.milkers)
	s.milkers, s.left = next, math.Max(1, math.Round(next.ha/haADay))
}

// young moves the heifers every third day.
func (s *season) young() {
	if s.heifers != nil && s.day-s.since < 3 {
		return
	}
	next := s.best(true)
	if next == nil || next == s.heifers {
		return
	}
	if s.heifers == nil {
		s.say(15, 30, Wiremu, "heifers in "+next.name)
	} else {
		s.say(15, 40, Wiremu, fmt.Sprintf("heifers %s to %s", s.heifers.name, next.name))
	}
	s.leave(s.heifers)
	s.heifers, s.since = next, s.day
}

func (s *season) leave(p *ground) {
	if p != nil {
		p.start, p.stage = s.day, 0
	}
}

// best is the paddock that the manager would choose by eye.
func (s *season) best(young bool) *ground {
	var best *ground
	for _, p := range s.ground {
		if p.young != young || p.held > s.day || p == s.milkers || p == s.heifers {
			continue
		}
		if best == nil || p.stage > best.stage {
			best = p
		}
	}
	return best
}

// walk counts the paddocks furthest on, one in the middle, and the last.
func (s *season) walk(hour int, who string, n int) {
	order := append([]*ground(nil), s.ground...)
	sort.SliceStable(order, func(i, j int) bool { return order[i].stage > order[j].stage })
	order = append(order[:n-2:n-2], order[len(order)/2], order[len(order)-6])
	for i, p := range order {
		if p == s.milkers || p == s.heifers || p.held > s.day+20 {
			continue
		}
		s.say(hour, 4*i, who, s.count(p, i))
	}
}

// count is what somebody types after pulling tillers.
func (s *season) count(p *ground, way int) string {
	var scores []string
	for range 6 + (way+s.day)%3 {
		v := math.Round((p.stage+0.35*s.rand.NormFloat64())*4) / 4
		v = math.Min(3.25, math.Max(0.25, v))
		scores = append(scores, number(v, way))
	}
	text := mark(p.name) + " " + strings.Join(scores, " ")
	if way%4 == 1 {
		text = strings.TrimPrefix(mark(p.name), "p") + ": " + strings.Join(scores, " ")
	}
	if p.stage > 3 {
		text += " yellowing at base"
	}
	return text
}

// number writes a score as one hand or another would.
func number(v float64, way int) string {
	if way%3 != 2 {
		return strings.TrimSuffix(fmt.Sprintf("%g", v), ".0")
	}
	whole := math.Floor(v)
	part := map[float64]string{0: "", 0.25: "¼", 0.5: "½", 0.75: "¾"}[v-whole]
	if whole == 0 {
		return part
	}
	return fmt.Sprintf("%g%s", whole, part)
}

// weather is the rain gauge and the soil thermometer, once a week.
func (s *season) weather() {
	s.say(8, 15, Ana, fmt.Sprintf("rain %dmm", 3+(s.day*5)%19))
	year := s.first.AddDate(0, 0, s.day).YearDay()
	warm := 13 + 5*math.Cos(2*math.Pi*float64(year-25)/365)
	s.say(8, 16, Ana, fmt.Sprintf("soil temp %.1f", warm))
}

// events are the days that differ.
func (s *season) events() {
	find := func(name string) *ground {
		for _, p := range s.ground {
			if p.name == name {
				return p
			}
		}
		return &ground{}
	}
	switch days - s.day {
	case 60:
		s.say(12, 20, Jo, "rain's set in, back at the house by 12")
	case 41:
		s.say(11, 0, Ana, "shut 3 for silage")
		find("3").held = days + 40
	case 33:
		s.say(10, 5, Wiremu, "note trough leaking in 9")
	case 20:
		s.say(14, 0, Ana, "effluent on 17 today, 21 days")
		find("17").held = s.day + 21
	case 9:
		s.say(13, 30, Ana, "sprayed 12 today, 14 days")
		find("12").held = s.day + 14
	case 6:
		s.say(17, 10, Jo, "gully too wet")
		find("Gully").held = s.day + 3
	case 3:
		s.say(17, 20, Jo, "gully dried out ok to graze")
	}
}
