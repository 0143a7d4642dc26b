package parser

// A paddock's name may be cut short by leaving out vowels or its end: "Creek
// Btm", "River Flt", "Rd 1". It is taken where one word of the register alone
// can be meant; the reply then says how it was read. Two letters are asked about.

// cutShortName reads a name of several words of which some are cut short.
func (r *reader) cutShortName(i int) (place, bool) {
	if r.anyPaddock {
		return place{}, false
	}
	if t := r.tok(i); mayBeShort(t) && !r.book.near.words[t.text] {
		if _, ok := r.book.wordCutTo(t.text); !ok {
			return place{}, false
		}
	}
	for n := 3; n > 1; n-- {
		if p, ok := r.shortOf(i, n); ok {
			return p, true
		}
	}
	return place{}, false
}

// shortOf reads n tokens as a name of which a word is cut short.
func (r *reader) shortOf(i, n int) (place, bool) {
	was := ""
	var old [3]token
	short := false
	for k := 0; k < n; k++ {
		t := r.tok(i + k)
		if t.shape != word && t.shape != number || t.decimal || k > 0 && t.glued {
			return place{}, false
		}
		short = short || t.shape == word && mayBeShort(t)
	}
	if !short {
		return place{}, false
	}
	copy(old[:], r.toks[i:i+n])
	restore := func() { copy(r.toks[i:i+n], old[:]) }
	for k := 0; k < n; k++ {
		t := r.tok(i + k)
		if t.shape != word || !mayBeShort(t) || r.book.near.words[t.text] {
			continue
		}
		full, ok := r.book.wordCutTo(t.text)
		if !ok {
			restore()
			return place{}, false
		}
		was = t.text
		r.reword(t, full)
	}
	if was == "" {
		return place{}, false
	}
	p, ok := r.longest(i)
	restore()
	if !ok || p.next != i+n {
		return place{}, false
	}
	if len(was) < 3 {
		short := r.source(i, i+n) // "rd 1"
		if reason := noSuchReason(short); len(r.forms) == 0 || r.forms[len(r.forms)-1].reason != reason {
			r.offer(reason, i, i+n, "paddock "+p.name+":", "")
			r.offer(reason, i, i+n, "paddock "+p.name, "")
		}
		return place{name: short, next: i + n}, true
	}
	p.guess = r.source(i, i+n)
	return p, true
}

// mayBeShort tells whether a word may stand for a longer one: nobody knows it,
// or it is a usual short form of a place's name.
func mayBeShort(t *token) bool {
	return len(t.text) > 1 && len(t.text) < 6 && (t.tag == unknown && !commonWords[t.text] || usualShort[t.text])
}

var usualShort = wordSet(`rd pk bk ck rvr riv flt btm nth sth hse mid upr lwr frt crk`)

// wordCutTo gives the one word of the names that letters are short for: they
// are its beginning, or leave its vowels out.
func (b *Book) wordCutTo(w string) (string, bool) {
	found := ""
	for _, full := range b.byHead[w[0]] {
		if len(full) <= len(w) || !cutFrom(w, full) {
			continue
		}
		if found != "" {
			return "", false
		}
		found = full
	}
	return found, found != ""
}

// cutFrom tells whether w is the beginning of a word, of three letters or more,
// or that word with some of its letters left out: its first and last consonants
// stay.
func cutFrom(w, full string) bool {
	if len(w) > 2 && full[:len(w)] == w {
		return true
	}
	if w[0] != full[0] {
		return false
	}
	if len(w) > 2 && len(full) == len(w)+1 && w[len(w)-1] == full[len(w)] && oneError(w, full) {
		return true // "bak creek"
	}
	k := 1
	for i := 1; i < len(full) && k < len(w); i++ {
		if isVowel(w[k]) {
			return false
		}
		if full[i] == w[k] {
			k++
		}
	}
	last := full[len(full)-1]
	if isVowel(last) {
		last = full[len(full)-2]
	}
	return k == len(w) && w[len(w)-1] == last
}

func isVowel(b byte) bool { return b == 'a' || b == 'e' || b == 'i' || b == 'o' || b == 'u' }
