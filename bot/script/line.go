package script

import (
	"fmt"
	"strconv"
	"strings"
	"time"
)

// Line is one piece of a script: a message, or text that is printed back as it
// stands (a comment, a blank line).
type Line struct {
	Number   int    // in the file, from 1
	Verbatim string // a comment or a blank line; Message is nil then
	Message  *Message
}

// Message is what one person does at one moment.
type Message struct {
	Index   int    // the script's messages are counted from 1
	Head    string // everything before the text, as written: for printing back
	Local   string // "2006-01-02 15:04"
	Offset  string // "+12:00" where written, else ""
	Name    string
	Text    string
	Group   int // 1 where not told
	Private bool
	Manager bool
	Edit    int // the message that this one edits; 0 for none
	Reply   int // the message that this one answers; 0 for none
	Press   int // the button pressed, from 1; 0 for none
	Pin     *[2]float64
	File    string
}

// At gives the moment of the message in a zone: in an hour that a clock change
// repeats, the first, unless an offset was written.
func (m Message) At(zone *time.Location) (time.Time, error) {
	if m.Offset != "" {
		t, err := time.Parse("2006-01-02 15:04-07:00", m.Local+m.Offset)
		return t.In(zone), err
	}
	t, err := time.ParseInLocation("2006-01-02 15:04", m.Local, zone)
	if err != nil {
		return t, err
	}
	return firstOf(t), nil
}

// firstOf gives the earlier of two moments that share a wall clock reading.
func firstOf(t time.Time) time.Time {
	for _, back := range []time.Duration{2 * time.Hour, time.Hour, 30 * time.Minute} {
		e := t.Add(-back)
		_, now := t.Zone()
		_, then := e.Zone()
		shift := time.Duration(then-now) * time.Second
		if shift <= 0 {
			continue
		}
		if c := t.Add(-shift); c.Format("2006-01-02 15:04") == t.Format("2006-01-02 15:04") {
			return c
		}
	}
	return t
}

// head reads "2026-11-25 17:40 Jo [group 2]" and what follows the colon.
func head(s string) (*Message, error) {
	if len(s) < 17 || s[10] != ' ' {
		return nil, fmt.Errorf("a message begins with a moment and a name: 2026-11-25 17:40 Jo: text")
	}
	m := &Message{Local: s[:16], Group: 1}
	if _, err := time.Parse("2006-01-02 15:04", m.Local); err != nil {
		return nil, fmt.Errorf("%q is not a moment like 2026-11-25 17:40", m.Local)
	}
	rest := s[16:]
	if rest != "" && (rest[0] == '+' || rest[0] == '-') && len(rest) >= 6 {
		m.Offset, rest = rest[:6], rest[6:]
	}
	rest = strings.TrimLeft(rest, " ")
	end := strings.IndexAny(rest, ":[")
	if end < 0 {
		return nil, fmt.Errorf("after the moment comes a name and a colon: Jo: text")
	}
	m.Name = strings.TrimSpace(rest[:end])
	if m.Name == "" {
		return nil, fmt.Errorf("the message has no sender's name")
	}
	rest, err := m.marks(rest[end:])
	if err != nil {
		return nil, err
	}
	m.Head = strings.TrimRight(s[:len(s)-len(rest)], " ")
	m.Text = strings.TrimPrefix(rest, " ")
	return m, nil
}

// marks reads the bracketed marks up to the colon and returns what follows it.
func (m *Message) marks(s string) (string, error) {
	for strings.HasPrefix(s, "[") {
		end := strings.IndexByte(s, ']')
		if end < 0 {
			return "", fmt.Errorf("a mark is not closed: %s", s)
		}
		if err := m.mark(strings.Fields(s[1:end])); err != nil {
			return "", err
		}
		s = strings.TrimLeft(s[end+1:], " ")
	}
	if s == "" && (m.Press > 0 || m.Pin != nil || m.File != "") {
		return "", nil
	}
	if !strings.HasPrefix(s, ":") {
		return "", fmt.Errorf("a colon is missing before the text")
	}
	return s[1:], nil
}

// mark reads one mark.
func (m *Message) mark(words []string) error {
	if len(words) == 0 {
		return fmt.Errorf("a mark is empty: []")
	}
	numbers := map[string]*int{"group": &m.Group, "edit": &m.Edit, "reply": &m.Reply, "press": &m.Press}
	if to, ok := numbers[words[0]]; ok && len(words) == 2 {
		n, err := strconv.Atoi(words[1])
		if err != nil || n < 1 {
			return fmt.Errorf("[%s] needs a number from 1", strings.Join(words, " "))
		}
		*to = n
		return nil
	}
	switch {
	case words[0] == "private" && len(words) == 1:
		m.Private = true
	case words[0] == "manager" && len(words) == 1:
		m.Manager = true
	case words[0] == "pin" && len(words) == 3:
		lat, err1 := strconv.ParseFloat(strings.TrimSuffix(words[1], ","), 64)
		lon, err2 := strconv.ParseFloat(words[2], 64)
		if err1 != nil || err2 != nil {
			return fmt.Errorf("[pin] needs two numbers: [pin -37.8 175.3]")
		}
		m.Pin = &[2]float64{lat, lon}
	case words[0] == "file" && len(words) >= 2:
		m.File = strings.Join(words[1:], " ")
	default:
		return fmt.Errorf("[%s] is not a mark this script knows", strings.Join(words, " "))
	}
	return nil
}
