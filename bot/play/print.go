package play

import (
	"encoding/json"
	"html"
	"io"
	"regexp"
	"strings"
	"time"

	"leafround/bot"
	"leafround/bot/script"
	"leafround/core/answer"
	"leafround/core/entry"
)

// Text prints the script again.
func Text(w io.Writer) Printer { return text{script.Printer{W: w}} }

type text struct{ script.Printer }

func (t text) Message(m *script.Message, _ time.Time, outcomes []bot.Outcome) error {
	if err := t.Printer.Message(m); err != nil {
		return err
	}
	for _, o := range outcomes {
		if said := plainly(o); said != "" {
			if err := t.Reply(said); err != nil {
				return err
			}
		}
	}
	return nil
}

func (t text) Unasked(o bot.Outcome) error {
	return t.Printer.Unasked(o.At.Format("2006-01-02 15:04"), plainly(o))
}

// plainly gives what the bot sent as plain text, pictures as a line that says
// what they show.
func plainly(o bot.Outcome) string {
	var lines []string
	groups := map[int64]bool{}
	for _, s := range o.Sent {
		if groups[s.Out.Chat] = true; len(groups) > 1 {
			break // the same words to another group of the farm
		}
		switch {
		case s.Out.Picture != nil:
			lines = append(lines, "[picture: "+s.Out.Picture.Shows+"]")
		case s.Out.Document != nil:
			lines = append(lines, "[file "+s.Out.Document.Name+"] "+Plain(s.Out.Document.Caption))
		case s.Out.React != "":
			lines = append(lines, "[reaction: "+s.Out.React+"]")
		case s.Out.HTML != "":
			lines = append(lines, Plain(s.Out.HTML))
		}
	}
	return strings.Join(lines, "\n")
}

var tag = regexp.MustCompile(`</?[a-z][^>]*>`)

// Plain gives escaped HTML as plain text.
func Plain(s string) string { return html.UnescapeString(tag.ReplaceAllString(s, "")) }

// JSON prints one object a message or unasked reply.
func JSON(w io.Writer) Printer {
	out := json.NewEncoder(w)
	out.SetEscapeHTML(false)
	return lines{out}
}

type lines struct{ out *json.Encoder }

// line is the JSON of one message.
type line struct {
	At      string            `json:"at"`
	From    string            `json:"from"`
	Text    string            `json:"text"`
	Entries []json.RawMessage `json:"entries"`
	Replies []replied         `json:"replies"`
}

type replied struct {
	Text   string        `json:"text"`
	Answer answer.Answer `json:"answer"`
}

const localMinute = "2006-01-02T15:04"

func (l lines) Verbatim(string) error { return nil }

func (l lines) Message(m *script.Message, at time.Time, outcomes []bot.Outcome) error {
	o := line{At: at.Format(localMinute), From: m.Name, Text: m.Text, Entries: []json.RawMessage{}, Replies: []replied{}}
	for _, c := range outcomes {
		if err := o.add(c); err != nil {
			return err
		}
	}
	return l.out.Encode(o)
}

func (l lines) Unasked(c bot.Outcome) error {
	o := line{At: c.At.Format(localMinute), From: "bot", Text: plainly(c), Entries: []json.RawMessage{}, Replies: []replied{}}
	if err := o.add(c); err != nil {
		return err
	}
	return l.out.Encode(o)
}

func (o *line) add(c bot.Outcome) error {
	for _, e := range c.Entries {
		b, err := entry.Encode(e)
		if err != nil {
			return err
		}
		o.Entries = append(o.Entries, b)
	}
	for _, s := range c.Replies {
		o.Replies = append(o.Replies, replied{Plain(s.HTML), s.Answer})
	}
	return nil
}
