package parser

import (
	"bytes"
	"fmt"
	"strings"

	"leafround/core/entry"
)

// setup reads a message that sets something of the farm.
//
//	setup = farm | register | mob | summary | aim | position | grass | last-grazed | year
func (r *reader) setup(from, to int) (outcome, bool) {
	var out outcome
	for i := from; i < to; {
		k := r.setupEnd(i, to)
		a, b := r.trim(i, k)
		i = k + 1
		if a >= b {
			continue
		}
		if o, ok := r.manySetups(a, b); ok {
			out.entries = append(out.entries, o.entries...)
			if out.ask == nil {
				out.ask = o.ask
			}
			continue
		}
		s, why, ok := r.oneSetup(a, b)
		if !ok {
			return outcome{}, false
		}
		if why != "" {
			out.ask = &entry.Ask{Reason: why}
		}
		out.entries = append(out.entries, s)
	}
	return out, len(out.entries) > 0 || out.ask != nil
}

// sayAgain sees to it that a setting which names something can be said again:
// where what it prints as reads to another, some name could not be told from
// the words around it, and is asked about.
func (r *reader) sayAgain(out *entry.Reading) {
	for _, e := range out.Entries {
		if s, ok := e.(entry.Setup); ok && !r.sayable(s) {
			out.Entries, out.Also = nil, nil
			out.Ask = &entry.Ask{Reason: "I cannot make out the names in that. Please send them with letters, numbers and spaces only."}
			return
		}
	}
}

// sayable tells whether a setting prints to a text that reads to the same.
func (r *reader) sayable(s entry.Setup) bool {
	text := printSetup(s)
	if r.retry || text == "" || len(text) > longestTry {
		return len(text) <= MaxUnits
	}
	c := r.Context
	c.Rule = entry.RemnantBySize
	got := r.readAgain(text, c)
	if len(got.Entries) != 1 || got.Ask != nil {
		return false
	}
	said, err := entry.Encode(s)
	again, err2 := entry.Encode(got.Entries[0])
	return err == nil && err2 == nil && bytes.Equal(said, again)
}

// oneSetup reads one setting.
func (r *reader) oneSetup(from, to int) (s entry.Setup, why string, ok bool) {
	for _, read := range setupReaders {
		if s, why, ok := read(r, from, to); ok {
			return s, why, true
		}
	}
	return s, "", false
}

// setupEnd gives the end of a setting: its line, or the lines of a register up
// to one that sets something else.
func (r *reader) setupEnd(i, to int) int {
	register := r.oneOf(i, "paddocks", "fields") || r.oneOf(i, "add", "set", "new") && r.oneOf(i+1, "paddocks", "fields", "paddock", "field")
	for k := i; k < to; k++ {
		if r.tok(k).shape != newline {
			continue
		}
		if !register || r.oneOf(k+1, "mob", "summary", "aim", "setup", "paddocks") || r.oneOf(k+1, "set") && r.oneOf(k+2, "up") || r.oneOf(k+1, "we") && r.oneOf(k+2, "are") {
			return k
		}
	}
	return to
}

// setupReaders are tried in order; each gives a setup, or what must be asked.
var setupReaders = []func(*reader, int, int) (entry.Setup, string, bool){
	(*reader).setFarm, (*reader).setPaddocks, (*reader).setMob, (*reader).setSummary, (*reader).setAim,
	(*reader).setPlace, (*reader).setGrass, (*reader).setManager,
	(*reader).setRename, (*reader).setRetire, (*reader).setSplit, (*reader).setMerge, (*reader).setOnly, (*reader).setBar,
	(*reader).setDaily, (*reader).setAway, (*reader).setQuiet, (*reader).setUnits, (*reader).setPin, (*reader).setBackFence,
	(*reader).setRemnant, (*reader).setHoldDays,
}

// run tells whether some words stand at i, and gives the token behind them.
func (r *reader) run(i int, words ...string) (int, bool) {
	for n, w := range words {
		if r.tok(i+n).text != w {
			return i, false
		}
	}
	return i + len(words), true
}

// oneOf tells whether a token is one of some words.
func (r *reader) oneOf(i int, words ...string) bool {
	text := r.tok(i).text
	for _, w := range words {
		if w == text {
			return true
		}
	}
	return false
}

// setPaddocks reads the register, one paddock a line.
//
//	register = "paddocks" newline { name area [ unit ] newline }
func (r *reader) setPaddocks(from, to int) (s entry.Setup, why string, ok bool) {
	i := from
	if r.oneOf(i, "add", "set", "new") && r.oneOf(i+1, "paddocks", "fields", "paddock", "field") {
		i++
	}
	if !r.oneOf(i, "paddocks", "fields") && !(i > from && r.oneOf(i, "paddock", "field")) {
		return s, "", false
	}
	i++
	if r.tok(i).text == ":" {
		i++
	}
	if r.tok(i).shape != newline && i == from+1 {
		return s, "", false
	}
	s.What = entry.SetPaddocks
	acres := true
	for i < to {
		k := i
		for k < to && r.tok(k).shape != newline && r.tok(k).text != ";" {
			k++
		}
		if k > i {
			plot, unit, bad := r.plot(i, k)
			if bad != "" {
				return s, bad, true
			}
			s.Paddocks = append(s.Paddocks, plot)
			acres = acres && unit == "acres"
		}
		i = k + 1
	}
	if len(s.Paddocks) == 0 {
		return s, "Please send one paddock a line behind “paddocks”: its name and its area in hectares.", true
	}
	if acres {
		s.Unit = "acres" // all of them: the farm thinks in acres
	}
	return s, "", true
}

// plot reads one line of the register.
//
//	plot = name area [ "ha" | "acres" ] [ grass ]
func (r *reader) plot(from, to int) (p entry.Plot, unit, bad string) {
	line := r.source(from, to)
	if g, k := r.grassAt(to - 1); k > 0 && to-1 > from {
		p.Grass = g
		to--
		if r.oneOf(to-1, "tall", "perennial", "prairie", "italian", "annual", ",") {
			if gg, n := r.grassAt(to - 1); n > 0 {
				p.Grass = gg
			}
			to--
		}
	}
	for to-1 > from {
		t := r.tok(to - 1)
		if t.tag == haUnit {
			to--
		} else if t.tag == acreUnit {
			unit = "acres"
			to--
		} else if t.text == "," || t.text == "." {
			to--
		} else {
			break
		}
	}
	area, name := r.tok(to-1), to-1
	v := area.value
	if name-2 > from && r.commaPair(name-2) && !r.tok(name-2).glued {
		v = r.tok(name-2).value + area.value/pow10(len(area.text))
		name -= 2
	}
	if area.shape != number || name <= from || v <= 0 || v > 5000 {
		return p, "", fmt.Sprintf("I cannot read “%s” as a paddock: please send its name, then its area, such as “River 1 4.1 ha”.", line)
	}
	for from < name && r.tok(from).shape == mark && r.tok(from).text != "#" {
		from++
	}
	if r.negative(name-1) && name-1 > from {
		return p, "", fmt.Sprintf("I cannot read “%s” as a paddock: an area cannot be below nothing.", line)
	}
	for name > from && (r.oneOf(name-1, ",", ":", "-", "=") || r.tok(name-1).shape == mark && r.tok(name-1).text != "#") {
		name--
	}
	first := from
	for name-first > 1 && (r.tok(first).tag == padMark || r.tok(first).shape == mark) {
		first++
	}
	p.Name = strings.TrimSpace(r.source(first, name))
	p.Area = entry.Hectares(v)
	if unit == "acres" {
		p.Area = entry.Acres(v)
	}
	if w := r.tok(first); p.Name == "" || settingWords[w.text] {
		return p, "", fmt.Sprintf("I cannot read “%s” as a paddock: please send its name, then its area.", line)
	}
	return p, unit, ""
}

// settingWords open other settings: no paddock's name begins with one.
var settingWords = wordSet(`mob summary aim setup paddocks`)

// grasses gives the grass of a word.
var grasses = map[string]entry.Grass{
	"ryegrass": entry.Ryegrass, "rye": entry.Ryegrass, "perennial": entry.Ryegrass, "annual": entry.AnnualRye, "italian": entry.ItalianRye,
	"fescue": entry.Fescue, "cocksfoot": entry.Cocksfoot, "orchardgrass": entry.Cocksfoot, "prairie": entry.PrairieGrass, "brome": entry.Brome,
}

// grassAt reads a grass; n is how many tokens it took.
func (r *reader) grassAt(i int) (g entry.Grass, n int) {
	t, u := r.tok(i), r.tok(i+1)
	if t.shape != word {
		return "", 0
	}
	if (t.text == "tall" || t.text == "perennial" || t.text == "annual" || t.text == "italian" || t.text == "prairie" || t.text == "pasture") && u.shape == word {
		switch {
		case t.text == "tall" && u.text == "fescue":
			return entry.Fescue, 2
		case t.text == "pasture" && u.text == "brome":
			return entry.Brome, 2
		case u.text == "ryegrass" || u.text == "rye" || u.text == "grass":
			return grasses[t.text], 2
		}
	}
	g, ok := grasses[t.text]
	if !ok {
		return "", 0
	}
	return g, 1
}

// setMob reads a mob and its head.
//
//	mob = "mob" name [ whole [ "cows" | "head" ] ]
func (r *reader) setMob(from, to int) (s entry.Setup, why string, ok bool) {
	i := from
	if r.oneOf(i, "new", "add", "set") && r.tok(i+1).text == "mob" {
		i++
	}
	if r.tok(i).text != "mob" || i+1 >= to {
		return s, "", false
	}
	i++
	k := i
	for k < to && r.tok(k).shape == word && (r.tok(k).tag == unknown || r.tok(k).tag == mobWord || r.tok(k).tag == looseMob || r.oneOf(k, "dry", "young", "stock", "spring", "autumn", "fresh", "late", "early", "old", "big", "small", "first", "second", "cull", "rising", "wet")) {
		k++
	}
	if k == i || k-i > 3 {
		return s, "", false
	}
	s = entry.Setup{What: entry.SetMob, Mob: strings.ToLower(r.source(i, k))}
	for r.oneOf(k, ":", ",", "=", "-") || r.oneOf(k, "is", "of", "now", "are") {
		k++
	}
	if k == to {
		return s, "", k-i <= 2
	}
	n, j := r.whole(k)
	if j == k || n < 1 {
		return s, "", false
	}
	s.Head = n
	for j < to && (r.tok(j).tag == looseMob || r.tok(j).tag == mobWord || r.tok(j).tag == headUnit || r.tok(j).shape == word && r.tok(j).tag == filler) {
		j++
	}
	if j < to {
		return s, "How many head has that mob? Please send “mob " + s.Mob + " 320”.", true
	}
	return s, "", true
}

// setGrass reads the grass of paddocks.
//
//	grass = place [ "is" ] grass
func (r *reader) setGrass(from, to int) (s entry.Setup, why string, ok bool) {
	p, isPad := r.onePad(from, true)
	if t := r.tok(from); !isPad && t.shape == number && !t.decimal {
		p, isPad = place{name: t.text, next: from + 1}, true // a number that no paddock bears
	}
	if !isPad {
		return s, "", false
	}
	i := p.next
	for r.oneOf(i, "is", "are", "in", "all", "now", "has", "grass", ":", "=", "its") {
		i++
	}
	g, n := r.grassAt(i)
	if n == 0 || i+n != to {
		return s, "", false
	}
	if !p.known {
		return s, r.noSuch(p.name), true
	}
	return entry.Setup{What: entry.SetGrass, Paddock: p.name, Grass: g}, "", true
}
