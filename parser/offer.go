package parser

import (
	"slices"
	"strconv"
	"strings"

	"github.com/agext/levenshtein"

	"leafround/core/entry"
)

// How much is spent on offering ways out of an unclear message (ours).
const (
	mostOptions = 5   // as many as a phone shows at once
	mostTries   = 12  // ways tried for one message
	longestTry  = 400 // bytes of a message that is read again in other words
	mostAgain   = 800 // tokens read again in all
)

// way is another form of the message in which it would be clear, for a reason
// that may be asked about. It is read again only where that is what is asked.
type way struct {
	reason string
	text   string
	label  string // what its button says; its entries in plain words where empty
}

// offer keeps a way out of what is asked for a reason: the message with the
// tokens [from, to) put differently.
func (r *reader) offer(reason string, from, to int, instead, label string) {
	if !r.offers() || from > to || from >= len(r.toks) {
		return
	}
	start, stop := r.toks[from].start, r.toks[from].start
	if to > from {
		stop = r.toks[to-1].end
	} else {
		instead += " "
	}
	r.forms = append(r.forms, way{reason, r.text[:start] + instead + r.text[stop:], label})
}

// offers tells whether a further form of the message may be read.
func (r *reader) offers() bool {
	n := len(r.forms)
	return !r.retry && len(r.text) <= longestTry && n < mostTries && (n == 0 || (n+1)*len(r.toks) <= mostAgain)
}

// options reads the ways out of an ask and keeps those that are clear.
func (r *reader) options(ask *entry.Ask) {
	if len(ask.Options) > 0 {
		return
	}
	c := r.Context
	c.Recent = ""
	for _, w := range r.forms {
		if w.reason != ask.Reason {
			continue
		}
		got := r.readAgain(w.text, c)
		if len(got.Entries) == 0 || onlyANote(got.Entries) || got.Also != nil {
			continue
		}
		o := entry.Option{Label: w.label, Entries: got.Entries}
		if o.Label == "" {
			o.Label = labelOf(o.Entries, r.today)
		}
		if !slices.ContainsFunc(ask.Options, func(had entry.Option) bool { return had.Label == o.Label }) && len(ask.Options) < mostOptions {
			ask.Options = append(ask.Options, o)
		}
	}
}

// offerPoints offers scores with the points that were forgotten: 25 is 2.5.
func (r *reader) offerPoints(reason string, p place) {
	if !r.offers() || p.next < 1 || p.next > len(r.toks) {
		return
	}
	var b strings.Builder
	at := r.tok(p.next - 1).end
	b.WriteString(r.text[:at])
	for i := p.next; i < len(r.toks); i++ {
		t := r.tok(i)
		if t.shape != number || t.decimal || len(t.text) != 2 || t.value < 5 || t.value > 45 || r.unitAhead(i+1) || r.tok(i+1).text == "/" || r.tok(i-1).text == "/" {
			continue
		}
		b.WriteString(r.text[at:t.start] + t.text[:1] + "." + t.text[1:])
		at = t.end
	}
	b.WriteString(r.text[at:])
	r.forms = append(r.forms, way{reason: reason, text: b.String()})
}

// offerNames offers the registered names that lie near one that nobody knows:
// those that it is a word of, and those a typing error or two away. Digits are
// never taken for others.
func (r *reader) offerNames(reason, name string) {
	if !r.offers() || r.anyPaddock || name == "" || len(r.book.names) > 500 {
		return
	}
	at := -1
	for i := range r.toks {
		if r.tok(i).shape == word && strings.HasPrefix(r.text[r.tok(i).start:], name) {
			at = i
			break
		}
	}
	if at < 0 {
		return
	}
	words := len(scan(name, nil))
	for _, n := range r.book.names {
		if k := r.nearName(at, n.Name); k > at {
			k = max(k, at+words)
			r.offer(reason, at, k, "paddock "+n.Name+":", "")
			r.offer(reason, at, k, "paddock "+n.Name, "")
		}
	}
}

// nearName gives the token behind what may be a registered name that starts at
// a token: the nearest span of up to three, or a lone word of the name.
func (r *reader) nearName(at int, name string) int {
	want := foldOf(name)
	if k, ok := r.shortName(at); ok {
		if shortFor(r.tok(at).text, r.tok(at+1).text, want, name) {
			return k
		}
		return at
	}
	for n := 3; n > 0; n-- {
		if at+n > len(r.toks) {
			continue
		}
		got := foldOf(r.source(at, at+n))
		if sameDigits(got, want) && levenshtein.Distance(got, want, nil) <= min(2, (len(want)-1)/3) {
			return at + n
		}
	}
	for _, w := range strings.Fields(name) {
		if foldOf(w) != r.tok(at).text {
			continue
		}
		k := at + 1
		if t := r.tok(k); t.tag == padMark && len(t.text) > 2 {
			k++
		}
		return k
	}
	return at
}

// sameDigits tells whether two names bear the same digits.
func sameDigits(a, b string) bool {
	digits := func(s string) string {
		return strings.Map(func(c rune) rune {
			if c < '0' || c > '9' {
				return -1
			}
			return c
		}, s)
	}
	return digits(a) == digits(b)
}

// offerEither offers each of two paddocks that an "or" stands between.
func (r *reader) offerEither(reason string, c *clause) {
	for n := 1; n < len(c.pads); n++ {
		p, q := c.pads[n-1], c.pads[n]
		if p.next+1 == q.at && r.tok(p.next).text == "or" {
			r.offer(reason, p.next, q.next, "", "")
			r.offer(reason, p.at, q.at, "", "")
		}
	}
}

// offerScores offers a list of scores as those of a paddock.
func (r *reader) offerScores(reason, name string, at int) {
	r.offer(reason, at, at, "paddock "+name+":", "")
}

// offerUnit offers a number with units behind it.
func (r *reader) offerUnit(reason string, from, to int, units ...string) {
	for _, u := range units {
		r.offer(reason, from, to, r.source(from, to)+u, strings.TrimSpace(strconv.FormatFloat(r.tok(to-1).value, 'g', 4, 64)+" "+strings.TrimSpace(u)))
	}
}
