package parser

import "github.com/agext/levenshtein"

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
// neighbours; the first letter must be right unless it was swapped or doubled.
func oneError(a, b string) bool {
	if levenshtein.Distance(a, b, nil) <= 1 {
		return a[0] == b[0] || len(a) > 6
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
