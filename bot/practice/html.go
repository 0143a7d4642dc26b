package practice

import (
	"fmt"
	"html"
	"slices"
	"strings"
)

// Entity is a marked part of a text, in UTF-16 units.
type Entity struct {
	Type     string `json:"type"`
	Offset   int    `json:"offset"`
	Length   int    `json:"length"`
	URL      string `json:"url,omitempty"`
	Language string `json:"language,omitempty"`
}

// marked is what Telegram's HTML comes to: plain text, its entities, and safe
// HTML made anew from them.
type marked struct {
	Text     string
	Entities []Entity
	Safe     string
}

// tags are the tags that Telegram knows (core.telegram.org/bots/api, HTML
// style, from memory), the entity that each makes and the tag we show it by.
var tags = map[string]struct{ entity, show string }{
	"b": {"bold", "b"}, "strong": {"bold", "b"},
	"i": {"italic", "i"}, "em": {"italic", "i"},
	"u": {"underline", "u"}, "ins": {"underline", "u"},
	"s": {"strikethrough", "s"}, "strike": {"strikethrough", "s"}, "del": {"strikethrough", "s"},
	"code": {"code", "code"}, "pre": {"pre", "pre"},
	"a": {"text_link", "a"}, "blockquote": {"blockquote", "blockquote"},
	"tg-spoiler": {"spoiler", "mark"}, "span": {"spoiler", "mark"},
}

// htmlParser walks a text once.
type htmlParser struct {
	in    string
	pos   int
	text  strings.Builder
	safe  strings.Builder
	open  []openTag
	out   []Entity
	units int
}

type openTag struct {
	name, show string
	entity     Entity
}

// parseHTML reads Telegram's subset of HTML. Anything else is an error in
// Telegram's words: only what is understood is ever shown.
func parseHTML(in string) (marked, error) {
	p := &htmlParser{in: in}
	for p.pos < len(in) {
		var err error
		switch {
		case strings.HasPrefix(in[p.pos:], "</"):
			err = p.close()
		case in[p.pos] == '<':
			err = p.start()
		default:
			p.plain()
		}
		if err != nil {
			return marked{}, err
		}
	}
	if len(p.open) > 0 {
		return marked{}, fmt.Errorf("can't find end tag corresponding to start tag %s", p.open[len(p.open)-1].name)
	}
	slices.SortStableFunc(p.out, func(a, b Entity) int { return a.Offset - b.Offset })
	return marked{p.text.String(), p.out, p.safe.String()}, nil
}

// plain takes text up to the next tag.
func (p *htmlParser) plain() {
	end := strings.IndexByte(p.in[p.pos:], '<')
	if end < 0 {
		end = len(p.in) - p.pos
	}
	s := html.UnescapeString(p.in[p.pos : p.pos+end])
	p.pos += end
	p.text.WriteString(s)
	p.safe.WriteString(html.EscapeString(s))
	p.units += units(s)
}

// start takes a start tag.
func (p *htmlParser) start() error {
	end := strings.IndexByte(p.in[p.pos:], '>')
	if end < 0 {
		return fmt.Errorf("unclosed start tag at byte offset %d", p.pos)
	}
	body := p.in[p.pos+1 : p.pos+end]
	name, attrs, _ := strings.Cut(body, " ")
	name = strings.ToLower(name)
	known, ok := tags[name]
	if !ok {
		return fmt.Errorf("unsupported start tag %q at byte offset %d", name, p.pos)
	}
	p.pos += end + 1
	t := openTag{name, known.show, Entity{Type: known.entity, Offset: p.units}}
	p.safe.WriteString("<" + known.show)
	if name == "a" {
		t.entity.URL = attribute(attrs, "href")
		p.safe.WriteString(link(t.entity.URL))
	}
	p.safe.WriteString(">")
	p.open = append(p.open, t)
	return nil
}

// close takes an end tag, which must be the innermost one's.
func (p *htmlParser) close() error {
	end := strings.IndexByte(p.in[p.pos:], '>')
	if end < 0 {
		return fmt.Errorf("unclosed end tag at byte offset %d", p.pos)
	}
	name := strings.ToLower(strings.TrimSpace(p.in[p.pos+2 : p.pos+end]))
	if len(p.open) == 0 {
		return fmt.Errorf("unexpected end tag at byte offset %d", p.pos)
	}
	t := p.open[len(p.open)-1]
	if t.name != name {
		return fmt.Errorf("unmatched end tag at byte offset %d, expected \"</%s>\", found \"</%s>\"", p.pos, t.name, name)
	}
	p.open, p.pos = p.open[:len(p.open)-1], p.pos+end+1
	p.safe.WriteString("</" + t.show + ">")
	if t.entity.Length = p.units - t.entity.Offset; t.entity.Length > 0 {
		p.out = append(p.out, t.entity)
	}
	return nil
}

// attribute finds a quoted attribute's value.
func attribute(attrs, name string) string {
	_, rest, ok := strings.Cut(attrs, name+"=")
	if !ok || rest == "" {
		return ""
	}
	quote := rest[:1]
	if quote != `"` && quote != "'" {
		value, _, _ := strings.Cut(rest, " ")
		return html.UnescapeString(value)
	}
	value, _, _ := strings.Cut(rest[1:], quote)
	return html.UnescapeString(value)
}

// link gives the attributes of a link that may be followed from the page:
// only web addresses, in a window of their own.
func link(url string) string {
	if !strings.HasPrefix(url, "https://") && !strings.HasPrefix(url, "http://") {
		return ""
	}
	return ` href="` + html.EscapeString(url) + `" rel="noopener noreferrer" target="_blank"`
}
