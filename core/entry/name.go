package entry

import (
	"strings"
	"unicode"
)

// FoldName gives the form in which names are compared: without regard to case,
// spaces and punctuation ("River 1" and "river1" are one). Digits that stood
// apart stay apart: "1 1" is not "11".
func FoldName(s string) string {
	var b strings.Builder
	last, gap := rune(0), false
	for _, r := range s {
		if !unicode.IsLetter(r) && !unicode.IsDigit(r) {
			gap = true
			continue
		}
		if gap && unicode.IsDigit(last) && unicode.IsDigit(r) {
			b.WriteByte(' ')
		}
		b.WriteRune(unicode.ToLower(r))
		last, gap = r, false
	}
	return b.String()
}
