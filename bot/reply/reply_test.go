package reply

import (
	"fmt"
	"testing"
	"time"

	"leafround/core/answer"
	"leafround/core/entry"
	"leafround/core/farm"
)

func TestLook(t *testing.T) {
	l := season()
	f := farm.Fold(*l)
	at := noon(nov(25))
	for _, e := range *l {
		if e.SentAt.Before(nov(18).Time()) && e.Entry.Kind() != entry.KindSetup {
			continue
		}
		fmt.Printf("[%s] %s\n%s\n\n", e.Entry.Kind(), Voice{}.Describe(e.Entry), Plain(HTML(answer.Entry(f, e, e.SentAt), Voice{})))
	}
	for _, q := range questions() {
		fmt.Printf("[%s %+v]\n%s\n\n", q.About, q, Plain(HTML(answer.Question(f, q, at), Voice{})))
	}
	_ = time.Now
}
