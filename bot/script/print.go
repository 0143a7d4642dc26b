package script

import (
	"fmt"
	"io"
	"strings"
)

// Printer prints a script again, with the bot's words as they are now.
type Printer struct{ W io.Writer }

// Verbatim prints a comment or a blank line.
func (p Printer) Verbatim(s string) error { return p.put(s) }

// Message prints what a person did.
func (p Printer) Message(m *Message) error {
	if m.Text == "" {
		return p.put(m.Head)
	}
	first, rest, more := strings.Cut(m.Text, "\n")
	if first != "" {
		first = " " + first
	}
	s := m.Head + first
	if more {
		s += "\n" + indent(rest)
	}
	return p.put(s)
}

// Reply prints the bot's reply to the message above it.
func (p Printer) Reply(text string) error { return p.put("bot: " + continued(text)) }

// Unasked prints what the bot said of its own accord, and a blank line.
func (p Printer) Unasked(local, text string) error {
	return p.put(local + " bot* " + continued(text) + "\n")
}

func continued(text string) string {
	first, rest, more := strings.Cut(text, "\n")
	if !more {
		return first
	}
	return first + "\n" + indent(rest)
}

func indent(s string) string { return "  " + strings.ReplaceAll(s, "\n", "\n  ") }

func (p Printer) put(s string) error {
	_, err := fmt.Fprintln(p.W, s)
	return err
}
