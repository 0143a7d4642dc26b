package parser

import (
	"flag"
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"
)

var (
	campaign     = flag.Int("campaign", 30_000, "how many bent phrases TestCampaign reads")
	campaignSeed = flag.Uint64("campaign-seed", 2026, "where TestCampaign's chance begins")
)

// TestCampaign reads phrases of the corpus that were bent at random: words
// dropped, doubled, swapped, spliced with another phrase, numbers and bytes
// changed. It holds each to what the fuzzer holds texts to; it is blind where
// the fuzzer follows coverage, and many times as fast.
func TestCampaign(t *testing.T) {
	seeds := slices.Clone(foundByFuzzing)
	for _, p := range corpus(t, "*.jsonl") {
		seeds = append(seeds, p.Text)
	}
	words := slices.Sorted(maps.Keys(lexicon))
	contexts := fuzzContexts(t) // registers are read-only, and may be shared
	const workers = 2
	faults := make([]faultLog, workers)
	var wait sync.WaitGroup
	for w := range workers {
		wait.Go(func() {
			b := bender{rand.New(rand.NewPCG(uint64(w), *campaignSeed)), seeds, words}
			for range *campaign / workers {
				faults[w].read(b.bend(), contexts)
			}
		})
	}
	wait.Wait()
	for _, f := range faults {
		require.Empty(t, f.found, strings.Join(f.found, "\n"))
	}
}

// faultLog is a testing.TB of which checks may make use from a goroutine: it
// collects what goes wrong instead of ending the test.
type faultLog struct {
	testing.TB
	found []string
}

type faulty struct{}

func (f *faultLog) Helper()  {}
func (f *faultLog) FailNow() { panic(faulty{}) }
func (f *faultLog) Errorf(format string, args ...any) {
	f.found = append(f.found, fmt.Sprintf(format, args...))
}

func (f *faultLog) Fatalf(format string, args ...any) {
	f.Errorf(format, args...)
	f.FailNow()
}

// read reads one text against every register; a panic is a fault like another.
func (f *faultLog) read(text string, contexts []Context) {
	if len(f.found) > 20 {
		return
	}
	defer func() {
		switch p := recover().(type) {
		case nil, faulty:
		default:
			f.Errorf("%q: panic: %v", text, p)
		}
	}()
	for _, c := range contexts {
		r := Read(text, c)
		checkReading(f, r)
		for _, e := range r.Entries {
			checkPrint(f, e, c)
		}
	}
}

// bender bends phrases.
type bender struct {
	*rand.Rand
	seeds, words []string
}

var odds = []string{"0", "4", "12", "2.5", "25", "½", "-", ".", ",", ":", "+", "/", "x4", "p", "not", "until", "and", "to", "?", "!", "\n", "🙏", "\u00a0", "tomorrow", "yest", "if"}

func (b bender) seed() string { return b.seeds[b.IntN(len(b.seeds))] }

func (b bender) bend() string {
	text := b.seed()
	for range 1 + b.IntN(4) {
		text = b.once(text)
	}
	return text
}

func (b bender) once(text string) string {
	words := strings.Split(text, " ")
	i, j := b.IntN(len(words)), b.IntN(len(words))
	switch b.IntN(10) {
	case 0:
		words = append(words[:i], words[i+1:]...)
	case 1:
		words[i] += " " + words[j]
	case 2:
		words[i], words[j] = words[j], words[i]
	case 3:
		other := strings.Split(b.seed(), " ")
		words = append(words[:i:i], other[b.IntN(len(other)):]...)
	case 4:
		words[i] = odds[b.IntN(len(odds))]
	case 5:
		words[i] += odds[b.IntN(len(odds))]
	case 6:
		words[i] = strings.ToUpper(words[i])
	case 7:
		raw := []byte(words[i])
		if len(raw) > 0 {
			raw[b.IntN(len(raw))] = byte(b.IntN(256))
		}
		words[i] = string(raw)
	case 8:
		words[i] = b.words[b.IntN(len(b.words))]
	case 9:
		return strings.Replace(text, " ", "", 1)
	}
	return strings.Join(words, " ")
}
