package reply

import (
	"html"
	"regexp"
	"strings"
	"unicode/utf16"
)

// Most is how long one Telegram message may be, in UTF-16 units.
const Most = 4096

// Split cuts a text into messages at line ends, each within Most units. A line
// that is longer by itself is cut where it must, never within a tag, an entity
// or a character; replies keep their tags within one line.
func Split(text string) []string {
	var parts []string
	var now strings.Builder
	size := 0
	for _, line := range lines(text) {
		n := Units(line)
		if size > 0 && size+1+n > Most {
			parts = append(parts, now.String())
			now.Reset()
			size = 0
		}
		if size > 0 {
			now.WriteByte('\n')
			size++
		}
		now.WriteString(line)
		size += n
	}
	return append(parts, now.String())
}

// Units gives the length of a text in UTF-16 units.
func Units(s string) int {
	n := 0
	for _, r := range s {
		n += utf16.RuneLen(r)
	}
	return n
}

// lines gives the lines of a text, those too long cut in pieces.
func lines(text string) []string {
	var out []string
	for line := range strings.SplitSeq(text, "\n") {
		if Units(line) <= Most {
			out = append(out, line)
			continue
		}
		out = append(out, pieces(line)...)
	}
	return out
}

// token is what may not be cut: a tag, an entity, or one character.
var token = regexp.MustCompile(`(?s)<[^<>]*>|&[#a-zA-Z0-9]+;|.`)

// pieces cuts a long line; a piece with an open tag would not be valid alone,
// so tags are dropped.
func pieces(line string) []string {
	var out []string
	var now strings.Builder
	size := 0
	for _, t := range token.FindAllString(line, -1) {
		if strings.HasPrefix(t, "<") {
			continue
		}
		if n := Units(t); size+n > Most {
			out = append(out, now.String())
			now.Reset()
			size = 0
		}
		now.WriteString(t)
		size += Units(t)
	}
	return append(out, now.String())
}

var tag = regexp.MustCompile(`</?[a-z]+>`)

// Plain gives a text without its tags and entities, as a script or a log shows
// it.
func Plain(text string) string { return html.UnescapeString(tag.ReplaceAllString(text, "")) }
