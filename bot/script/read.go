package script

import (
	"fmt"
	"strings"
)

// Read reads a whole script. The error names the line and says what to do.
func Read(text string) ([]Line, error) {
	r := reader{}
	text = strings.ReplaceAll(strings.TrimPrefix(text, "\uFEFF"), "\r\n", "\n")
	for i, s := range strings.Split(strings.TrimSuffix(text, "\n"), "\n") {
		if err := r.line(i+1, s); err != nil {
			return nil, fmt.Errorf("script line %d: %w", i+1, err)
		}
	}
	return r.lines, nil
}

type reader struct {
	lines    []Line
	messages int
	last     string // local moment of the last message
	state    state
}

// state tells what an indented line would continue.
type state int

const (
	inNothing state = iota
	inMessage
	inReply   // a reply of the bot: dropped
	inUnasked // an unasked word of the bot: dropped with the blank lines after it
)

func (r *reader) line(number int, s string) error {
	blank := strings.TrimSpace(s) == ""
	switch {
	case strings.HasPrefix(s, "  ") && r.state == inMessage:
		m := r.lines[len(r.lines)-1].Message
		m.Text += "\n" + s[2:]
	case strings.HasPrefix(s, "  ") && (r.state == inReply || r.state == inUnasked):
	case blank && r.state == inUnasked:
	case blank || strings.HasPrefix(s, "#"):
		r.state = inNothing
		r.lines = append(r.lines, Line{Number: number, Verbatim: s})
	case strings.HasPrefix(s, "bot:"):
		r.state = inReply
	case len(s) > 16 && strings.HasPrefix(strings.TrimLeft(trimOffset(s[16:]), " "), "bot*"):
		r.state = inUnasked
	case strings.HasPrefix(s, "  "):
		return fmt.Errorf("an indented line continues a message, and none stands above it")
	default:
		return r.message(number, s)
	}
	return nil
}

func trimOffset(s string) string {
	if len(s) >= 6 && (s[0] == '+' || s[0] == '-') {
		return s[6:]
	}
	return s
}

func (r *reader) message(number int, s string) error {
	m, err := head(s)
	if err != nil {
		return err
	}
	if m.Offset == "" && m.Local < r.last && m.Local[:10] < r.last[:10] {
		return fmt.Errorf("time goes back, from %s to %s", r.last, m.Local)
	}
	r.messages++
	m.Index = r.messages
	for _, ref := range []int{m.Edit, m.Reply} {
		if ref >= m.Index {
			return fmt.Errorf("message %d does not stand above this one", ref)
		}
	}
	r.last = m.Local
	r.state = inMessage
	r.lines = append(r.lines, Line{Number: number, Message: m})
	return nil
}
