package parser

import (
	"bufio"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"sort"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
)

const phrases = "../testdata/phrases"

// phrase is one message of the corpus with what it means.
type phrase struct {
	Text     string           `json:"text"`
	Farm     string           `json:"farm"`
	At       time.Time        `json:"at"`
	Zone     string           `json:"zone"`
	Topic    string           `json:"topic"`
	Entries  []map[string]any `json:"entries"`
	Also     map[string]any   `json:"also"`
	Question map[string]any   `json:"question"`
	Ask      bool             `json:"ask"`
	Ignored  bool             `json:"ignored"`
	Accept   []string         `json:"accept"`
	Why      string           `json:"why"`
	file     string
	line     int
}

// verdict is how a reading compares with what was meant.
type verdict int

const (
	right   verdict = iota
	asked           // a question back where none was needed
	missed          // ignored what should have been taken
	misread         // took something else than was meant
)

func (v verdict) String() string { return [...]string{"right", "asked", "missed", "misread"}[v] }

// corpus reads every phrase file whose name matches.
func corpus(t testing.TB, pattern string) []phrase {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(phrases, pattern))
	require.NoError(t, err)
	var list []phrase
	for _, name := range files {
		f, err := os.Open(name)
		require.NoError(t, err)
		s := bufio.NewScanner(f)
		s.Buffer(nil, 1<<20)
		for n := 1; s.Scan(); n++ {
			if strings.TrimSpace(s.Text()) == "" {
				continue
			}
			var p phrase
			require.NoError(t, json.Unmarshal(s.Bytes(), &p), "%s:%d", name, n)
			p.file, p.line = filepath.Base(name), n
			list = append(list, p)
		}
		require.NoError(t, s.Err())
		require.NoError(t, f.Close())
	}
	return list
}

var books = map[string]*Book{}

// register reads a farm's register file.
func register(t testing.TB, farm string) *Book {
	t.Helper()
	if b := books[farm]; b != nil {
		return b
	}
	f, err := os.Open(filepath.Join(phrases, "farms", farm+".csv"))
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	var list []Name
	for _, row := range rows[1:] {
		live := map[string]entry.LeafStage{"fescue": 2.5, "cocksfoot": 4.5}[row[2]]
		list = append(list, Name{Name: row[0], Live: live})
	}
	books[farm] = NewBook(list, nil)
	return books[farm]
}

// context makes the reading's context of a phrase.
func (p phrase) context(t testing.TB) Context {
	zone, err := time.LoadLocation(p.Zone)
	require.NoError(t, err, "%s:%d", p.file, p.line)
	c := Context{Now: p.At.In(zone), MonthFirst: MonthFirst(p.Zone)}
	if p.Farm == "" {
		c.AnyPaddock = true
		c.Book = NewBook(nil, nil)
		return c
	}
	c.Book = register(t, p.Farm)
	return c
}

// judge compares a reading with what was meant.
func (p phrase) judge(r entry.Reading) verdict {
	switch {
	case p.Ask && r.Ask != nil, p.Ignored && r.Ignored, r.Ask != nil && slices.Contains(p.Accept, "ask"),
		r.Ignored && slices.Contains(p.Accept, "ignored"), slices.Contains(p.Accept, "note") && onlyNotes(r.Entries),
		r.Question != nil && slices.Contains(p.Accept, "question"):
		return right
	case p.Question != nil && r.Question != nil && sameJSON(p.Question, r.Question):
		return right
	case len(p.Entries) > 0 && len(r.Entries) > 0 && p.sameEntries(r) && p.sameAlso(r):
		return right
	case r.Ask != nil:
		return asked
	case r.Ignored:
		return missed
	}
	return misread
}

func onlyNotes(list []entry.Entry) bool {
	for _, e := range list {
		if e.Kind() != entry.KindNote {
			return false
		}
	}
	return len(list) > 0
}

func (p phrase) sameAlso(r entry.Reading) bool {
	if p.Also == nil {
		return r.Also == nil
	}
	return r.Also != nil && sameJSON(p.Also, r.Also)
}

func (p phrase) sameEntries(r entry.Reading) bool {
	if len(p.Entries) != len(r.Entries) {
		return false
	}
	for i, want := range p.Entries {
		b, err := entry.Encode(r.Entries[i])
		if err != nil || !sameEntry(want, b) {
			return false
		}
	}
	return true
}

// straight writes smart quotes as plain ones, as the reader does.
var straight = strings.NewReplacer("’", "'", "‘", "'", "“", `"`, "”", `"`)

// extraKeys are ours beyond the contract: they don't count in a comparison.
var extraKeys = []string{"said", "head", "moved", "back_fence", "alarm", "about", "day"}

func sameEntry(want map[string]any, b []byte) bool {
	var got map[string]any
	if json.Unmarshal(b, &got) != nil {
		return false
	}
	want = fill(want)
	if want["kind"] == "setup" && len(want) == 2 {
		return want["what"] == got["what"]
	}
	for _, k := range extraKeys {
		if _, asked := want[k]; !asked {
			delete(got, k)
		}
	}
	if want["kind"] == "note" {
		want["text"] = straight.Replace(want["text"].(string)) // smart quotes don't matter
		if _, asked := want["mob"]; !asked {
			delete(got, "mob")
		}
	}
	return equal(want, got)
}

// fill adds the mean and number that a list of tillers implies.
func fill(m map[string]any) map[string]any {
	out := map[string]any{}
	for k, v := range m {
		out[k] = v
	}
	if list, ok := out["tillers"].([]any); ok {
		sum := 0.0
		for _, v := range list {
			sum += v.(float64)
		}
		if _, told := out["mean"]; !told {
			out["mean"] = sum / float64(len(list))
		}
		if _, told := out["n"]; !told {
			out["n"] = float64(len(list))
		}
	}
	return out
}

func sameJSON(want map[string]any, got any) bool {
	b, err := json.Marshal(got)
	if err != nil {
		return false
	}
	var m map[string]any
	if json.Unmarshal(b, &m) != nil {
		return false
	}
	for _, k := range []string{"picture", "file"} { // ours beyond the contract
		if _, told := want[k]; !told {
			delete(m, k)
		}
	}
	return equal(want, m)
}

// equal compares JSON values, numbers to a millionth.
func equal(a, b any) bool {
	switch x := a.(type) {
	case float64:
		y, ok := b.(float64)
		return ok && math.Abs(x-y) < 1e-4
	case map[string]any:
		y, ok := b.(map[string]any)
		if !ok || len(x) != len(y) {
			return false
		}
		for k := range x {
			if _, has := y[k]; !has || !equal(x[k], y[k]) {
				return false
			}
		}
		return true
	case []any:
		y, ok := b.([]any)
		if !ok || len(x) != len(y) {
			return false
		}
		for i := range x {
			if !equal(x[i], y[i]) {
				return false
			}
		}
		return true
	}
	return reflect.DeepEqual(a, b)
}

// score counts verdicts by topic.
type score map[string]*[4]int

func (s score) add(topic string, v verdict) {
	for _, k := range []string{topic, "all"} {
		if s[k] == nil {
			s[k] = &[4]int{}
		}
		s[k][v]++
	}
}

func (s score) String() string {
	var topics []string
	for k := range s {
		topics = append(topics, k)
	}
	sort.Strings(topics)
	var b strings.Builder
	fmt.Fprintf(&b, "%-12s %6s %6s %6s %7s\n", "kind", right, asked, missed, misread)
	for _, k := range topics {
		n := s[k]
		fmt.Fprintf(&b, "%-12s %6d %6d %6d %7d\n", k, n[right], n[asked], n[missed], n[misread])
	}
	return b.String()
}

// TestCorpus reads every message of the corpus. PHRASES narrows it to some
// files, such as PHRASES='blind-*'.
func TestCorpus(t *testing.T) {
	pattern := "*.jsonl"
	if p := os.Getenv("PHRASES"); p != "" {
		pattern = p + ".jsonl"
	}
	list := corpus(t, pattern)
	require.NotEmpty(t, list)
	scores := score{}
	for _, p := range list {
		r := Read(p.Text, p.context(t))
		v := p.judge(r)
		scores.add(p.Topic, v)
		if v != right {
			got, err := json.Marshal(r)
			require.NoError(t, err)
			t.Errorf("%s:%d %s: %q (farm %q)\n  want %s\n  got  %s", p.file, p.line, v, p.Text, p.Farm, p.want(), short(got))
		}
	}
	fmt.Println(scores)
}

func short(b []byte) string {
	s := string(b)
	if i := strings.Index(s, `"entries"`); i > 0 {
		s = s[i:]
	}
	return s
}

func (p phrase) want() string {
	switch {
	case p.Ask:
		return "ask, accept " + strings.Join(p.Accept, ",") + " " + p.Why
	case p.Ignored:
		return "ignored, accept " + strings.Join(p.Accept, ",") + " " + p.Why
	case p.Question != nil:
		b, _ := json.Marshal(p.Question)
		return "question " + string(b)
	}
	b, _ := json.Marshal(p.Entries)
	also, _ := json.Marshal(p.Also)
	return string(b) + " also " + string(also) + " accept " + strings.Join(p.Accept, ",")
}
