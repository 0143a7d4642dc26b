package parser

import (
	"flag"
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"
	"unicode/utf16"

	"leafround/core/entry"
)

var (
	worstSearch = flag.Int("worst-search", 200, "how many kinds of message TestWorstSearch tries")
	worstSeed   = flag.Uint64("worst-seed", 2026, "where TestWorstSearch's chance begins")
)

// TestWorstSearch looks for messages of up to 4,096 units that are dear to
// read: a few words, marks and numbers drawn by chance and repeated. The
// dearest are kept and altered a little at a time. It holds what it reads to
// nothing but that one part of the reading holds, and tells the dearest in
// processor time, each timed thirty times more at the end; run it with -v
// -cpu 1 and a -worst-search of tens of thousands.
func TestWorstSearch(t *testing.T) {
	s := worstFinder{Rand: rand.New(rand.NewPCG(*worstSeed, 1)), pieces: worstPieces(t), contexts: fuzzContexts(t)}
	for _, p := range corpus(t, "*.jsonl") {
		s.phrases = append(s.phrases, strings.Split(p.Text, " "))
	}
	herds := s.contexts[0]
	herds.Book = NewBook(herds.Book.names, []string{"milkers", "Herd 2", "young stock", "R2 heifers", "the big old bulls"})
	s.contexts = append(s.contexts, herds)
	var dearest []worstKind
	for n := range *worstSearch {
		s.try(t)
		if n == *worstSearch-1 || n%mostAltered == mostAltered-1 {
			dearest = append(dearest, s.best[:min(len(s.best), 3)]...)
			s.best = nil // and begin anew, elsewhere
		}
	}
	for n := range dearest {
		k := &dearest[n]
		k.cost = s.time(t, k.farm, k.read, 30) // what stood by chance in the way is gone
	}
	slices.SortStableFunc(dearest, dearer)
	for _, k := range dearest[:min(len(dearest), 12)] {
		t.Logf("%v %s", k.cost, k)
	}
	t.Logf("%d kinds, %d messages", *worstSearch, s.read)
}

// mostAltered is how many kinds are tried from one beginning.
const mostAltered = 2500

func dearer(a, b worstKind) int { return int(b.cost - a.cost) }

// worstPieces are what messages are built from: the lexicon, the words of
// idioms, questions and of the corpus, the registers' names, marks and numbers.
// Marks and numbers come many times, as they are few among thousands of words.
func worstPieces(t testing.TB) []string {
	words := map[string]bool{}
	for _, p := range corpus(t, "*.jsonl") {
		for _, w := range strings.Fields(p.Text) {
			words[w] = true
		}
	}
	known := slices.Sorted(maps.Keys(lexicon))
	for first, list := range idioms {
		known = append(known, first)
		for _, d := range list {
			known = append(known, first+" "+strings.Join(d.rest, " "))
			known = append(known, d.rest...)
		}
	}
	for _, farm := range []string{"totara", "smiths"} {
		for _, n := range register(t, farm).names {
			known = append(known, n.Name)
		}
	}
	known = append(known, slices.Collect(maps.Keys(questionWords))...)
	known = append(known, slices.Collect(maps.Keys(apologies))...)
	slices.Sort(known)
	list := slices.Compact(known)
	list = append(list, slices.Sorted(maps.Keys(words))...)
	odd := append(slices.Clone(odds), "\n", ",", ";", ":", ".", "?", "!", "-", "+", "/", "&", "(", ")", "\"", "'", "*", "#", "%", "$", "@", "~", "=", ">", "->", "|", "°",
		"1", "2", "3", "2.5", ".5", "1/2", "3/4", "12", "13", "25", "60", "100", "1500", "2..5", "2026-11-03", "3/11", "1-24", "2x2", "½", "a", "e\u0301", "ﷺ", "😂", "→", "\r", "\u0301")
	for range 40 {
		list = append(list, odd...)
	}
	return list
}

// worstKind is a kind of message: a beginning, and what is repeated behind it.
type worstKind struct {
	head string
	body []string
	farm int           // which register it is read against
	form string        // how much of it is read
	read string        // that much
	cost time.Duration // the processor time that it took
}

func (k worstKind) String() string {
	return fmt.Sprintf("%s, register %d: %q + %q repeated", k.form, k.farm, k.head, strings.Join(k.body, ""))
}

// worstFinder looks for dear kinds.
type worstFinder struct {
	*rand.Rand
	pieces   []string
	phrases  [][]string // the corpus' phrases, in words
	contexts []Context
	best     []worstKind // the dearest so far, dearest first
	read     int         // messages read
}

// mostKept is how many of the dearest kinds are altered further.
const mostKept = 60

// piece draws a word, a mark or a number, now and then some words of a phrase.
func (s *worstFinder) piece() string {
	p := s.pieces[s.IntN(len(s.pieces))]
	if s.IntN(6) == 0 {
		words := s.phrases[s.IntN(len(s.phrases))]
		from := s.IntN(len(words))
		p = strings.Join(words[from:min(from+1+s.IntN(4), len(words))], " ")
	}
	if s.IntN(8) > 0 {
		p += " "
	}
	return p
}

// opening draws what a message begins with: what phrases do, or anything.
func (s *worstFinder) opening() string {
	if s.IntN(2) == 0 {
		return s.piece()
	}
	words := s.phrases[s.IntN(len(s.phrases))]
	return strings.Join(words[:min(1+s.IntN(4), len(words))], " ") + " "
}

// kind draws a kind: a new one, or one of the dearest altered.
func (s *worstFinder) kind() worstKind {
	if len(s.best) < 5 || s.IntN(5) < 2 {
		k := worstKind{farm: s.IntN(len(s.contexts))}
		if s.IntN(2) == 0 {
			k.head = s.opening()
		}
		for range 1 + s.IntN(4) {
			k.body = append(k.body, s.piece())
		}
		return k
	}
	k := s.best[min(s.IntN(len(s.best)), s.IntN(len(s.best)))]
	k.body = slices.Clone(k.body)
	for range 1 + s.IntN(2) {
		s.alter(&k)
	}
	return k
}

func (s *worstFinder) alter(k *worstKind) {
	at := s.IntN(len(k.body))
	switch s.IntN(10) {
	case 0, 1:
		k.body[at] = s.piece()
	case 2, 3:
		if len(k.body) < 8 || s.IntN(8) == 0 {
			k.body = slices.Insert(k.body, at, s.piece())
		}
	case 4:
		if len(k.body) > 1 {
			k.body = slices.Delete(k.body, at, at+1)
		}
	case 5:
		other := s.IntN(len(k.body))
		k.body[at], k.body[other] = k.body[other], k.body[at]
	case 6:
		if bare, spaced := strings.CutSuffix(k.body[at], " "); spaced && bare != "" {
			k.body[at] = bare
		} else {
			k.body[at] += " "
		}
	case 7:
		k.farm = s.IntN(len(s.contexts))
	case 8:
		switch s.IntN(4) {
		case 0:
			k.head = ""
		case 1:
			k.head = s.opening()
		default:
			if len(k.head) < 60 {
				k.head += s.piece()
			}
		}
	case 9:
		if len(k.body) <= 64 {
			k.body = append(k.body, k.body...)
		}
	}
}

// try reads a kind in each of its forms and keeps the dearest.
func (s *worstFinder) try(t testing.TB) {
	k := s.kind()
	fill := k.text()
	read := func(form, text string) {
		k.form, k.read, k.cost = form, text, s.time(t, k.farm, text, 5)
		s.keep(k)
	}
	read("4,096 units", fill)
	if len(fill) > longestTry {
		read("as much as is read again", strings.ToValidUTF8(fill[:longestTry], ""))
	}
	plain := clean(fill)
	toks := scan(plain, nil)
	if len(toks) > mostTokens {
		fill = plain[:toks[mostTokens-1].end]
		read("as many tokens as are read", fill)
		toks = toks[:mostTokens]
	}
	if !s.tooMuch(k.farm, fill) {
		return
	}
	low, high := 0, len(toks) // the longest form that is not too much otherwise
	for low+1 < high {
		if mid := (low + high) / 2; s.tooMuch(k.farm, plain[:toks[mid-1].end]) {
			high = mid
		} else {
			low = mid
		}
	}
	if low > 0 {
		read("just under a limit", plain[:toks[low-1].end])
	}
}

// text fills 4,096 units with a kind.
func (k worstKind) text() string {
	body := strings.Join(k.body, "")
	if body == "" {
		body = " "
	}
	units := utf16.Encode([]rune(k.head + strings.Repeat(body, MaxUnits/len(body)*3+1)))
	return string(utf16.Decode(units[:min(len(units), MaxUnits)]))
}

func (s *worstFinder) tooMuch(farm int, text string) bool {
	s.read++
	r := Read(text, s.contexts[farm])
	return r.Ask != nil && r.Ask.Reason == tooMuchReason
}

// time gives the processor time that a message takes: the best of a few
// readings where the first was dear.
func (s *worstFinder) time(t testing.TB, farm int, text string, most int) time.Duration {
	s.read++
	var got entry.Reading
	best := time.Hour
	for n := range most {
		start := cpuTime(t)
		got = Read(text, s.contexts[farm])
		best = min(best, cpuTime(t)-start)
		if n == 0 {
			checkReading(t, got)
		}
		if len(s.best) == mostKept && best < s.best[mostKept-1].cost {
			break
		}
	}
	return best
}

// keep puts a kind among the dearest; a kind stands there once.
func (s *worstFinder) keep(k worstKind) {
	same := slices.IndexFunc(s.best, func(had worstKind) bool {
		return had.head == k.head && slices.Equal(had.body, k.body)
	})
	if same >= 0 {
		if s.best[same].cost >= k.cost {
			return
		}
		s.best = slices.Delete(s.best, same, same+1)
	}
	k.body = slices.Clone(k.body)
	at, _ := slices.BinarySearchFunc(s.best, k, dearer)
	s.best = slices.Insert(s.best, at, k)
	s.best = s.best[:min(len(s.best), mostKept)]
}
