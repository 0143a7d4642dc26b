package farm

import (
	"fmt"
	"testing"
	"time"

	"leafround/core/entry"
)

// years writes the log of a farm of 60 paddocks: each grazed every 24 days for
// two days and counted twice between, with a day's weather.
func years(n int) []entry.Logged {
	m := &team{}
	start := entry.NewDate(2016, time.July, 1)
	plots := make([]entry.Plot, 60)
	for i := range plots {
		plots[i] = entry.Plot{Name: fmt.Sprint(i + 1), Area: 2}
	}
	add := func(day entry.Date, e entry.Entry) {
		id := int64(len(m.log) + 1)
		m.log = append(m.log, entry.Logged{ID: id, Entry: e, SentAt: day.Time().Add(time.Duration(id%1000) * time.Second),
			MemberID: 1, Member: "Ana", MessageID: id})
	}
	add(start, entry.Setup{What: entry.SetPaddocks, Paddocks: plots})
	add(start, entry.Setup{What: entry.SetMob, Mob: "milkers"})
	for d := range 365 * n {
		day := start.Add(d)
		add(day, entry.Rain{Date: day, Mm: float64(d % 7)})
		for p := range plots {
			name := plots[p].Name
			switch (d + p) % 24 {
			case 0:
				add(day, entry.Graze{Paddock: name, Date: day, Event: entry.Grazed, Mob: "milkers"})
			case 10, 18:
				mean := entry.LeafStage((d+p)%24) / 9
				add(day, entry.Count{Paddock: name, Date: day, Mean: mean, N: 8})
			}
		}
	}
	return m.log
}

// BenchmarkApply is one count more on a farm of one year and of ten.
func BenchmarkApply(b *testing.B) {
	for _, n := range []int{1, 10} {
		b.Run(fmt.Sprintf("%d years", n), func(b *testing.B) {
			log := years(n)
			f := Fold(log)
			last := log[len(log)-1]
			b.ResetTimer()
			for i := range b.N {
				l := last
				l.ID, l.SentAt = last.ID+int64(i)+1, last.SentAt.Add(time.Duration(i+1)*time.Second)
				l.Entry = entry.Count{Paddock: fmt.Sprint(i%60 + 1), Date: last.Entry.On(), Mean: 1.5, N: 8}
				f.Apply(l)
			}
		})
	}
}

// BenchmarkFold is a start with a log of ten years.
func BenchmarkFold(b *testing.B) {
	log := years(10)
	b.ResetTimer()
	for range b.N {
		Fold(log)
	}
}
