package parser

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// shape is the outer form of a token.
type shape uint8

const (
	end     shape = iota // behind the last token
	word                 // letters
	number               // digits, with or without a decimal point
	part                 // a one-character fraction: ½
	mark                 // one punctuation character, in text
	arrow                // ->, →, =>, >
	newline              // one line break
	broken               // digits that make no number: 2..5, 1.2.3
)

// token is one piece of a message.
type token struct {
	shape      shape
	text       string // lower case, apostrophes dropped
	tag        tag    // what the lexicon says of a word
	sense      int16  // the number that goes with the tag
	right      bool   // no word of a name is a typing error away
	names      int16  // most words that a registered name has which starts with it
	value      float64
	decimal    bool // a number with a decimal point
	glued      bool // nothing stands between it and the token before
	pair       bool // it is the paddock of a pair of paddock and average
	frac       fraction
	start, end int // where it lies in the cleaned text
}

// scanner cuts a cleaned text into tokens.
//
//	text   = { token | space }
//	token  = word | number | part | mark | arrow | newline
//	word   = letter { letter | "'" letter }
//	number = digits [ "." digits ] | "." digits
type scanner struct {
	text string
	pos  int
	toks []token
}

// scan gives the tokens of a cleaned text, appended to toks[:0].
func scan(text string, toks []token) []token {
	s := scanner{text: text, toks: toks[:0]}
	for s.pos < len(s.text) {
		s.next()
	}
	return s.toks
}

func (s *scanner) next() {
	c := s.text[s.pos]
	switch {
	case c == '\n':
		s.emit(newline, 1)
	case c == ' ' || c == '\t' || c == '_' || c < ' ':
		s.pos++
	case isDigit(c), c == '.' && s.digitAt(s.pos+1) && !s.behind(inWordOrNumber):
		s.number()
	case c >= utf8.RuneSelf:
		s.wide()
	case isLetter(c):
		s.word()
	case c == '>' || (c == '-' || c == '=') && s.at(s.pos+1) == '>':
		s.arrow()
	default:
		s.emit(mark, 1)
	}
}

func isLetter(c byte) bool { return 'a' <= c|0x20 && c|0x20 <= 'z' }

func isDigitOrDot(c byte) bool { return isDigit(c) || c == '.' }

// inWordOrNumber tells whether a point behind this byte starts no number.
func inWordOrNumber(c byte) bool { return isDigitOrDot(c) || isLetter(c) }

func (s *scanner) at(i int) byte {
	if i < len(s.text) {
		return s.text[i]
	}
	return 0
}

func (s *scanner) digitAt(i int) bool { return isDigit(s.at(i)) }

func (s *scanner) behind(is func(byte) bool) bool { return s.pos > 0 && is(s.text[s.pos-1]) }

// emit adds a token of n bytes at the scanner's place.
func (s *scanner) emit(sh shape, n int) *token {
	glued := len(s.toks) > 0 && s.toks[len(s.toks)-1].end == s.pos
	s.toks = append(s.toks, token{shape: sh, text: s.text[s.pos : s.pos+n], glued: glued,
		start: s.pos, end: s.pos + n})
	s.pos += n
	return &s.toks[len(s.toks)-1]
}

func (s *scanner) number() {
	i, dots := s.pos, 0
	for s.digitAt(i) || s.at(i) == '.' && s.digitAt(i+1) {
		if s.at(i) == '.' {
			dots++
		}
		i++
	}
	if s.at(i) == '.' && s.at(i+1) == '.' && s.digitAt(i+2) {
		for isDigitOrDot(s.at(i)) {
			i++
		}
		dots = 2
	}
	t := s.emit(number, i-s.pos)
	v, err := strconv.ParseFloat(t.text, 64)
	t.value, t.decimal = v, dots == 1
	if dots > 1 || err != nil || i-t.start > 24 {
		t.shape, t.value = broken, 0
	}
}

func (s *scanner) word() {
	if s.text[s.pos]|0x20 == 't' && s.at(s.pos+1) == '\'' {
		t := s.emit(word, 2) // t'ewes, wi' t' ewes
		t.text, t.tag = "the", filler
		return
	}
	i, plain := s.pos, true
	for i < len(s.text) {
		c := s.text[i]
		switch {
		case c == '\'' && i+1 < len(s.text) && isLetter(s.text[i+1]):
			plain = false
		case c >= utf8.RuneSelf:
			r, n := utf8.DecodeRuneInString(s.text[i:])
			if !unicode.IsLetter(r) {
				s.lower(i, plain)
				return
			}
			plain = false
			i += n - 1
		case !isLetter(c):
			s.lower(i, plain)
			return
		case c < 'a':
			plain = false
		}
		i++
	}
	s.lower(i, plain)
}

// lower emits the word that ends before i, in lower case.
func (s *scanner) lower(i int, plain bool) {
	t := s.emit(word, i-s.pos)
	if !plain {
		t.text = strings.ReplaceAll(strings.ToLower(t.text), "'", "")
	}
	m := lexicon[t.text]
	t.tag, t.sense = m.tag, m.value
	if len(t.text) > longestWord {
		t.tag = noise
	}
}

// longestWord is how many letters a word has at most that may be part of a name
// (ours).
const longestWord = 40

// wide reads a token that starts with a character beyond ASCII.
func (s *scanner) wide() {
	r, n := utf8.DecodeRuneInString(s.text[s.pos:])
	switch {
	case unicode.IsLetter(r):
		s.word()
	case r == '→':
		s.emit(arrow, n)
	case vulgar(r).den != 0:
		t := s.emit(part, n)
		t.frac = vulgar(r)
		t.value = float64(t.frac.num) / float64(t.frac.den)
	default:
		s.emit(mark, n)
	}
}

func (s *scanner) arrow() {
	i := s.pos
	for strings.IndexByte("-=>", s.at(i)) >= 0 && i < len(s.text) {
		i++
	}
	s.emit(arrow, i-s.pos)
}
