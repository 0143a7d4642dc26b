package practice

import (
	"html/template"
	"strings"
	"time"
)

// line is one message as the page shows it.
type line struct {
	ID       int
	Chat     int64
	Day      string // set where a new day begins
	Time     string
	Name     string
	Bot      bool
	Mine     bool // written by who sits at the page: may be amended
	About    *about
	Text     string        // a person's words, plain
	HTML     template.HTML // the bot's words, made safe
	Amended  string        // when it was edited
	Buttons  []tap
	Picture  string // a picture's id
	Width    int
	Height   int
	Alt      string
	File     *File
	Pin      *Pin
	Media    string
	Service  string
	Reaction string
	Topic    string
}

// about is the message that a line answers.
type about struct {
	ID   int
	Name string
	Text string
}

// tap is a button under a line.
type tap struct {
	Index int
	Text  string
	URL   string
}

// lines gives a chat's messages from one id to another. The caller holds the
// lock.
func (d *desk) lines(chat int64, who Person, from, to int) []line {
	var out []line
	for id := from; id <= to; id++ {
		if m, ok := d.s.state.message(chat, id); ok {
			out = append(out, d.line(m, who))
		}
	}
	return out
}

func (d *desk) line(m Message, who Person) line {
	zone := d.zone(m.Chat)
	l := line{ID: m.ID, Chat: m.Chat, Time: m.At.In(zone).Format("15:04"), Name: m.From.Name, Bot: m.From.Bot,
		Mine: m.From.ID == who.ID && m.Pin == nil && m.Media == "" && m.Service == "", Text: m.Text, Pin: m.Pin, Media: m.Media, Service: m.Service, Reaction: m.Reaction}
	if !m.EditedAt.IsZero() {
		l.Amended = m.EditedAt.In(zone).Format("15:04")
	}
	if m.HTML != "" {
		if read, err := parseHTML(m.HTML); err == nil {
			l.HTML = template.HTML(read.Safe) //nolint:gosec // made anew by parseHTML from what it understood
		}
	}
	if answered, ok := d.s.state.message(m.Chat, m.ReplyTo); ok {
		l.About = &about{answered.ID, answered.From.Name, gist(answered)}
	}
	if topic, ok := d.s.state.message(m.Chat, m.Topic); ok {
		l.Topic = strings.TrimPrefix(topic.Service, "topic ")
	}
	l.Day = d.newDay(m, zone)
	d.attach(&l, m)
	return l
}

// attach adds a line's buttons, picture and file.
func (d *desk) attach(l *line, m Message) {
	n := 0
	for _, row := range m.Buttons {
		for _, b := range row {
			l.Buttons = append(l.Buttons, tap{n, b.Text, safeURL(b.URL)})
			n++
		}
	}
	switch {
	case m.File == nil:
	case m.File.Photo:
		l.Picture, l.Width, l.Height, l.Alt = m.File.ID, m.File.Width, m.File.Height, m.Text
		if l.Alt == "" {
			l.Alt = "a picture from the bot"
		}
	default:
		l.File = m.File
	}
}

// newDay names the day where a message is the first of its day.
func (d *desk) newDay(m Message, zone *time.Location) string {
	day := m.At.In(zone).Format("Monday 2 January 2006")
	for id := m.ID - 1; id > 0; id-- {
		if before, ok := d.s.state.message(m.Chat, id); ok {
			if before.At.In(zone).Format("Monday 2 January 2006") == day {
				return ""
			}
			break
		}
	}
	return day
}

// gist gives the first words of a message.
func gist(m Message) string {
	text := strings.Join(strings.Fields(m.Text), " ")
	switch {
	case text == "" && m.File != nil:
		text = m.File.Name
	case text == "" && m.Pin != nil:
		text = "a pin on the map"
	}
	if r := []rune(text); len(r) > 48 {
		return strings.TrimSpace(string(r[:46])) + " …"
	}
	return text
}

// safeURL lets only web addresses through.
func safeURL(url string) string {
	if strings.HasPrefix(url, "https://") || strings.HasPrefix(url, "http://") {
		return url
	}
	return ""
}
