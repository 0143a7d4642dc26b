package parser

import (
	"strings"

	"github.com/agext/levenshtein"
)

// speller finds the one known word that lies one typing error away: a letter
// left out, put in, changed, or two neighbours swapped. It keeps every known
// word under each form that lacks one of its letters, so that a look-up costs
// no walk over all words.
type speller struct {
	words map[string]bool
	less  map[string][]string
}

func newSpeller() *speller {
	return &speller{words: map[string]bool{}, less: map[string][]string{}}
}

// add makes a word known.
func (s *speller) add(w string) {
	if s.words[w] {
		return
	}
	s.words[w] = true
	for i := range w {
		f := w[:i] + w[i+1:]
		if had := s.less[f]; len(had) == 0 || had[len(had)-1] != w {
			s.less[f] = append(had, w)
		}
	}
	s.less[w] = append(s.less[w], w)
}

// nearest gives the one known word within a single error of w; ok is false
// where there is none, or more than one.
func (s *speller) nearest(w string) (found string, ok bool) {
	if len(w) < 4 || len(w) > 20 || s.words[w] {
		return "", false
	}
	try := func(form string) bool {
		for _, c := range s.less[form] {
			if c != found && oneError(w, c) {
				if found != "" {
					return false
				}
				found = c
			}
		}
		return true
	}
	if !try(w) {
		return "", false
	}
	for i := range w {
		if !try(w[:i] + w[i+1:]) {
			return "", false
		}
	}
	return found, found != ""
}

// oneError tells whether two words differ by one edit or one swap of
// neighbours. A wrong letter is forgiven only from six letters on: too many
// short words are real words a letter apart.
func oneError(a, b string) bool {
	if levenshtein.Distance(a, b, nil) <= 1 {
		return len(a) != len(b) || len(a) > 5
	}
	if len(a) != len(b) {
		return false
	}
	i := 0
	for i < len(a) && a[i] == b[i] {
		i++
	}
	return i+1 < len(a) && a[i] == b[i+1] && a[i+1] == b[i] && a[i+2:] == b[i+2:]
}

// forgiven are the words of the lexicon that a typing error is forgiven in:
// long ones that carry a message's meaning.
var forgiven = newForgiven(`paddock paddocks grazed grazing milkers heifers calves steers bullocks weaners hoggets weanlings yearlings
	silage baleage topped topping canopy closed sprayed spraying herbicide effluent slurry fertiliser fertilizer resown reseeded regrassed
	residual yesterday tonight tomorrow morning afternoon tillers tiller leaves average yellowing heading reproductive seedhead daughter remnant
	moved shifted turned finished flooded waterlogged pugged rainfall temperature rotation summary history Monday tuesday wednesday thursday friday
	saturday sunday january february september october november december until clicks counted walked another`)

func newForgiven(words string) *speller {
	s := newSpeller()
	for w := range wordSet(strings.ToLower(words)) {
		s.add(w)
	}
	return s
}

// respell takes words that nobody knows for the one word of the lexicon that
// is a typing error away. Names of paddocks come first.
func (r *reader) respell() {
	for i := range r.toks {
		t := &r.toks[i]
		if t.shape != word || t.tag != unknown || len(t.text) < 5 || t.names > 0 || commonWords[t.text] || r.book.near.words[t.text] || r.book.words[t.text] {
			continue
		}
		fix, ok := forgiven.nearest(t.text)
		if !ok {
			continue
		}
		if _, name := r.book.near.nearest(t.text); name {
			continue
		}
		m := lexicon[fix]
		r.respelt = append(r.respelt, "read “"+t.text+"” as "+fix)
		t.tag, t.sense = m.tag, m.value
		r.reword(t, fix)
	}
}
