package answer

import (
	"fmt"
	"testing"
	"time"

	"leafround/core/entry"
	"leafround/core/farm"
)

// tenYears is a farm of 60 paddocks, grazed every 24 days and counted twice
// between, over ten years.
func tenYears() (*log, entry.Date) {
	l := &log{}
	start := entry.NewDate(2016, time.July, 1)
	var plots []entry.Plot
	for i := range 60 {
		plots = append(plots, entry.Plot{Name: fmt.Sprint(i + 1), Area: 2})
	}
	l.say(start, "Ana", entry.Setup{What: entry.SetPaddocks, Paddocks: plots})
	l.say(start, "Ana", entry.Setup{What: entry.SetMob, Mob: "milkers"})
	last := start
	for d := range 3650 {
		last = start.Add(d)
		for p := range plots {
			switch (d + p) % 24 {
			case 0:
				l.say(last, "Jo", entry.Graze{Paddock: plots[p].Name, Date: last, Event: entry.Grazed, Mob: "milkers"})
			case 10, 18:
				mean := entry.LeafStage((d+p)%24) / 9
				l.say(last, "Jo", entry.Count{Paddock: plots[p].Name, Date: last, Mean: mean, N: 8})
			}
		}
	}
	return l, last
}

// BenchmarkCount is a count's way through farm and answer on a farm with ten
// years in its log.
func BenchmarkCount(b *testing.B) {
	l, day := tenYears()
	f := farm.Fold(*l)
	f.Estimate(day)
	b.ResetTimer()
	for i := range b.N {
		e := l.say(day, "Jo", entry.Count{Paddock: fmt.Sprint(i%60 + 1), Date: day, Mean: 1.5, N: 8})
		f.Apply(e)
		Entry(f, e, noon(day))
	}
}

// BenchmarkSummary is the morning's summary on the same farm.
func BenchmarkSummary(b *testing.B) {
	l, day := tenYears()
	f := farm.Fold(*l)
	b.ResetTimer()
	for range b.N {
		Question(f, entry.Question{About: entry.AskSummary}, noon(day))
	}
}
