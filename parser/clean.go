package parser

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// clean gives the text with every look-alike character in its plain form:
// quotes, dashes, spaces, full-width digits, multiplication signs and arrows.
// Emoji become spaces, those that laugh become "lol". Plain ASCII comes back
// as it is, without a copy.
func clean(text string) string {
	if isPlain(text) {
		return text
	}
	text = norm.NFC.String(strings.ToValidUTF8(text, " "))
	var b strings.Builder
	b.Grow(len(text) + 8)
	var last rune
	for i, r := range text {
		if r < utf8.RuneSelf {
			if r != '\r' {
				b.WriteByte(byte(r))
				last = r
			}
			continue
		}
		last = cleanRune(&b, last, r, text[i+utf8.RuneLen(max(r, 0)):])
	}
	return b.String()
}

// isPlain tells whether the text is ASCII without carriage returns.
func isPlain(text string) bool {
	for i := 0; i < len(text); i++ {
		if text[i] >= utf8.RuneSelf || text[i] == '\r' {
			return false
		}
	}
	return true
}

// plainForms maps characters to how they are read; "" drops them.
var plainForms = map[rune]string{
	'‘': "'", '’': "'", 'ʼ': "'", '′': "'", '´': "'",
	'“': `"`, '”': `"`, '„': `"`, '«': `"`, '»': `"`, '″': `"`,
	'‐': "-", '‑': "-", '‒': "-", '–': "-", '—': " - ", '―': " - ", '−': "-",
	'…': "...", '×': "x", '✕': "x", '✖': "x", '⨯': "x", '∗': "*",
	'➡': "→", '⇒': "→", '➜': "→", '⟶': "→", '➔': "→", '→': "→", '▶': "→", '⟹': "→", '↦': "→",
	'≈': "~", '∼': "~", '～': "~", '≃': "~", 'º': "°", '˚': "°", '°': "°", '℃': "°c", '℉': "°f",
	'⁄': "/", '∕': "/", '／': "/", '∶': ":", '•': " ", '▪': " ", '●': " ",
	'❓': "?", '❔': "?", '😂': " lol ", '🤣': " lol ", '😜': " lol ", '😆': " lol ", '🙃': " lol ",
	'\u200d': "", '\ufe0f': "", '\u20e3': "", '\ufeff': "", '\u2060': "",
	'\u200b': "", '\u200c': "", '\u200e': "", '\u200f': "", '\u00ad': "",
	'\u2028': "\n", '\u2029': "\n", '\u0085': "\n",
}

// cleanRune writes one character that is not ASCII and gives the last rune
// that was written.
func cleanRune(b *strings.Builder, last, r rune, rest string) rune {
	if vulgar(r).den != 0 {
		b.WriteRune(r)
		return r
	}
	if plain, ok := plainForms[r]; ok {
		b.WriteString(plain)
		if plain == "" {
			return last
		}
		return rune(plain[len(plain)-1])
	}
	switch {
	case r == '·' && unicode.IsDigit(last) && rest != "" && isDigit(rest[0]):
		b.WriteByte('.') // the raised decimal point
		return '.'
	case unicode.Is(unicode.Mn, r):
		return last
	}
	var one [utf8.UTFMax]byte
	n := utf8.EncodeRune(one[:], r)
	if plain := norm.NFKC.Properties(one[:n]).Decomposition(); len(plain) == 1 {
		b.WriteByte(plain[0]) // full-width letters and digits
		return rune(plain[0])
	}
	if unicode.IsLetter(r) {
		b.WriteRune(r)
		return r
	}
	b.WriteByte(' ')
	return ' '
}

// fraction is a part of a whole: num over den.
type fraction struct{ num, den int }

// vulgar gives the value of a one-character fraction; den is 0 for others.
func vulgar(r rune) fraction {
	switch r {
	case '¼':
		return fraction{1, 4}
	case '½':
		return fraction{1, 2}
	case '¾':
		return fraction{3, 4}
	}
	if r < '⅐' || r > '⅞' {
		return fraction{}
	}
	return [...]fraction{{1, 7}, {1, 9}, {1, 10}, {1, 3}, {2, 3}, {1, 5}, {2, 5}, {3, 5}, {4, 5},
		{1, 6}, {5, 6}, {1, 8}, {3, 8}, {5, 8}, {7, 8}}[r-'⅐']
}

func isDigit(b byte) bool { return '0' <= b && b <= '9' }
