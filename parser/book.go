package parser

import (
	"math"
	"strings"

	"leafround/core/entry"
)

// Name is one paddock of the register.
type Name struct {
	Name string
	Live entry.LeafStage // live leaves that its grass carries; 0 where not known: 3
}

// Book is a register of paddocks and mobs made ready for reading. Make one
// when the farm changes and keep it; it is never changed after that.
type Book struct {
	names  []Name
	byFold map[string]int // folded name to its place in names
	first  map[string]int // first folded word of a name: most words a name that starts so has
	near   *speller       // the words of names, for typing errors
	mobs   map[string]string
	opens  map[string]bool   // what the folded name of a mob may begin with
	folds  []string          // the names, folded
	byHead map[byte][]string // the words of names by their first letter
	words  map[string]bool   // the words of mobs: never a typing error
}

// NewBook makes a register ready.
func NewBook(paddocks []Name, mobs []string) *Book {
	b := &Book{names: paddocks, byFold: make(map[string]int, len(paddocks)),
		first: make(map[string]int, len(paddocks)), mobs: make(map[string]string, len(mobs)), near: newSpeller(), words: map[string]bool{}, opens: map[string]bool{}, byHead: map[byte][]string{}}
	for i, n := range paddocks {
		fold := entry.FoldName(n.Name)
		b.byFold[fold] = i
		b.folds = append(b.folds, fold)
		toks := scan(clean(n.Name), nil)
		if len(toks) == 0 {
			continue
		}
		b.first[toks[0].text] = max(b.first[toks[0].text], len(toks))
		for _, t := range toks {
			if t.shape == word && len(t.text) > 3 {
				b.near.add(t.text)
			}
		}
	}
	for w := range b.near.words {
		b.byHead[w[0]] = append(b.byHead[w[0]], w)
	}
	b.aliases()
	for _, m := range mobs {
		fold := entry.FoldName(m)
		b.mobs[fold] = m
		for n := 1; n <= len(fold); n++ {
			b.opens[fold[:n]] = true
		}
		for _, t := range scan(clean(m), nil) {
			b.words[t.text] = true
		}
	}
	return b
}

// aliases lets "house paddock" and "house field" find House Pdk, where no other
// paddock bears the name.
func (b *Book) aliases() {
	for i, n := range b.names {
		toks := scan(clean(n.Name), nil)
		if len(toks) < 2 || toks[len(toks)-1].tag != padMark {
			continue
		}
		base := entry.FoldName(n.Name[:toks[len(toks)-1].start])
		for _, mark := range []string{"paddock", "pdk", "pad", "field", "pasture"} {
			if _, taken := b.byFold[base+mark]; !taken {
				b.byFold[base+mark] = i
			}
		}
	}
}

// live gives the live leaves of a paddock.
func (b *Book) live(name string) entry.LeafStage {
	if i, ok := b.byFold[entry.FoldName(name)]; ok && b.names[i].Live > 0 {
		return b.names[i].Live
	}
	return 3
}

// has gives the register's spelling of a name.
func (b *Book) has(folded string) (string, bool) {
	i, ok := b.byFold[folded]
	if !ok {
		return "", false
	}
	return b.names[i].Name, true
}

// longest gives the longest name in the register that starts at token i, and
// how many other shorter names start there too.
func (r *reader) longest(i int) (found place, ok bool) {
	t := r.tok(i)
	if t.shape != word && t.shape != number && t.shape != broken || t.decimal {
		return place{}, false
	}
	most := min(int(t.names), len(r.toks)-i)
	if most == 0 && r.possessive(i) {
		most = min(int(r.book.most(t.text[:len(t.text)-1])), len(r.toks)-i)
	}
	if most == 0 {
		return r.gluedName(i)
	}
	var fold strings.Builder
	for n := 0; n < most; n++ {
		u := r.tok(i + n)
		if n > 0 && (u.text == "'" || u.text == "-" && u.glued || u.text == "." && u.glued) {
			most = min(most+1, len(r.toks)-i)
			continue
		}
		if u.shape != word && u.shape != number {
			break
		}
		foldToken(&fold, u)
		if name, has := r.book.has(fold.String()); has && !r.runsOn(i+n) && !(n > 0 && ok && r.daysBehind(i+n)) {
			found, ok = place{name: name, known: true, next: i + n + 1, shorter: found.name}, true
		} else if r.possessive(i + n) {
			whole := fold.String()
			if name, has := r.book.has(whole[:len(whole)-1]); has {
				found, ok = place{name: name, known: true, next: i + n + 1, shorter: found.name}, true
			}
			break
		}
	}
	if !ok {
		return r.gluedName(i)
	}
	return found, ok
}

// daysBehind tells whether a number is one of days that have gone: the 2 of "flat two
// days ago" is none of the name Flat 2.
func (r *reader) daysBehind(i int) bool {
	t, u := r.tok(i), r.tok(i+1)
	return (t.shape == number || t.tag == numberWord) && (u.tag == dayUnit || u.tag == weekUnit || u.tag == monthUnit || u.tag == hourUnit) && r.tok(i+2).tag == agoWord
}

// possessive tells whether a word was typed with "'s": "dam's really uneven".
func (r *reader) possessive(i int) bool {
	t := r.tok(i)
	return t.shape == word && t.end-t.start > 2 && strings.HasSuffix(t.text, "s") && strings.HasSuffix(r.text[t.start:t.end], "'s")
}

// most gives how many tokens a name that starts with this word can have.
func (b *Book) most(first string) int16 { return int16(min(b.first[first], math.MaxInt16)) }

// runsOn tells whether the number at i is glued to letters that make it
// another name or a time: the 9 of 9A is not paddock 9.
func (r *reader) runsOn(i int) bool {
	t, u := r.tok(i), r.tok(i+1)
	if t.shape != number || !u.glued {
		return false
	}
	if u.shape == word {
		return len(u.text) == 1 && !(u.text == "s" && t.value > 5) && u.tag != timesWord && u.tag != dayUnit || u.text == "st" || u.text == "nd" || u.text == "rd" || u.text == "th"
	}
	return false
}

// gluedName finds a name typed without its spaces: riverflat, topflat1.
func (r *reader) gluedName(i int) (place, bool) {
	t := r.tok(i)
	if t.shape != word || len(t.text) < 4 {
		return place{}, false
	}
	if u := r.tok(i + 1); u.shape == number && !u.decimal && u.glued {
		if name, ok := r.book.has(t.text + u.text); ok {
			return place{name: name, known: true, next: i + 2}, true
		}
	}
	if name, ok := r.book.has(t.text); ok {
		return place{name: name, known: true, next: i + 1}, true
	}
	return place{}, false
}

// foldToken adds a token to a folded name as entry.FoldName would.
func foldToken(b *strings.Builder, t *token) {
	if t.shape == number && b.Len() > 0 && !t.glued {
		if s := b.String(); isDigit(s[len(s)-1]) {
			b.WriteByte(' ')
		}
	}
	b.WriteString(t.text)
}
