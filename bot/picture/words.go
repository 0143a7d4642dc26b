package picture

import (
	"fmt"
	"html"
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf16"
	"unicode/utf8"

	"leafround/core/entry"
)

// maxCaption is how long a caption may be, in UTF-16 units (Bot API).
const maxCaption = 1024

// day words a date: "Sat 28 Nov".
func day(d entry.Date) string { return d.Time().Format("Mon 2 Jan") }

// shortDay words a date where space is short: "28 Nov".
func shortDay(d entry.Date) string { return d.Time().Format("2 Jan") }

// leaves words a leaf stage.
func leaves(v float64) string { return fmt.Sprintf("%.1f", v) }

// list joins names as people do: "7, 9 and 12"; after most of them it counts
// the rest.
func list(names []string, most int) string {
	rest := 0
	if len(names) > most+1 {
		names, rest = names[:most], len(names)-most
	}
	switch {
	case rest > 0:
		return strings.Join(names, ", ") + " and " + fmt.Sprint(rest) + " more"
	case len(names) < 2:
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}

// plural puts a noun to its number.
func plural(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprint(n) + " " + many
}

func splitWords(s string) []string { return strings.Fields(s) }

// escape makes words safe for the Bot API's HTML.
func escape(s string) string { return html.EscapeString(s) }

// clip cuts a caption that is too long at a word.
func clip(s string) string {
	for len(utf16.Encode([]rune(escape(s)))) > maxCaption {
		cut := strings.LastIndexByte(strings.TrimSuffix(s, " …"), ' ')
		if cut < 0 {
			return "…"
		}
		s = s[:cut] + " …"
	}
	return s
}

// number words a figure with no more digits than it has.
func number(v float64) string { return strconv.FormatFloat(math.Round(v*100)/100, 'f', -1, 64) }

// capital makes the first letter a capital.
func capital(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:]
}

// orMore words a leaf stage, from the end of the window on as that or more.
func orMore(stage, end float64) string {
	if end > 0 && stage >= end {
		return number(end) + " or more"
	}
	return leaves(stage)
}
