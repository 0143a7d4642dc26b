package parser

import (
	"slices"
	"strings"

	"leafround/core/entry"
)

// query is what a question's words say, before it is known what it is about.
type query struct {
	words   wordList
	pads    []string
	bad     string // a paddock that nobody knows
	mob     string
	mobSaid bool
	days    float64
	ha      float64
	signal  bool // a question mark or a question word
	framed  bool // somebody asks to be given something
	score   bool // a number of leaves
	loose   bool // a word that belongs to a question only where it is plainly one
	strange int  // words that belong to no question
	n       int  // words in all
	first   string
}

func (q *query) any(list ...string) bool {
	for _, w := range list {
		if q.words.has(w) {
			return true
		}
	}
	return false
}

// wordList holds a few words for many look-ups: most of what is looked up is
// not in it, which a bit for each word's outer form tells at once.
type wordList struct {
	forms uint64
	words []string
}

func (l *wordList) add(w string) {
	l.forms |= outerForm(w)
	l.words = append(l.words, w)
}

func (l *wordList) has(w string) bool {
	return l.forms&outerForm(w) != 0 && slices.Contains(l.words, w)
}

// outerForm gives one of 64 bits for a word by its length and letters at its ends.
func outerForm(w string) uint64 {
	if w == "" {
		return 0
	}
	return 1 << ((len(w)*5 + int(w[0])*3 + int(w[len(w)-1])) % 64)
}

// opensQuestion tells whether a sentence starts as a question does.
func (r *reader) opensQuestion(i int) bool {
	for {
		t := r.tok(i)
		if t.shape != word {
			return false
		}
		if t.text == "did" && r.didCount(i+1) {
			return false // "did dam. 3 3.5 4"
		}
		if t.text == "should" && r.oneOf(i+1, "have", "of", "ve") {
			return false // "should have sent these Sunday"
		}
		if t.text == "did" && r.walkDone(i+1) {
			return false
		}
		if t.text == "any" && (r.tok(i+1).tag == padMark || r.oneOf(i+1, "chance")) || t.text == "got" && r.oneOf(i+1, "any", "anything") {
			return true
		}
		if openers[t.text] || t.tag == whWord || r.oneOf(i, "anything", "anywhere") && r.oneOf(i+1, "fit", "ready", "suitable", "worth", "good", "to", "at", "past", "over", "i", "we") {
			return true
		}
		if t.text == "have" || t.text == "has" || t.text == "was" || t.text == "can" || t.text == "had" {
			u := r.tok(i + 1)
			return t.text != "had" && (askers[u.text] || u.tag == mobWord || u.tag == looseMob || r.padAhead(i+1) && (t.text != "was" || r.wasDone(i+1)))
		}
		if t.text != "so" && t.text != "and" && t.text != "hey" && t.tag != courtesy && t.text != "bot" && t.text != "ok" {
			return false
		}
		i++
	}
}

// wasDone tells whether "was 12" asks what was done there: "was 12 sprayed".
func (r *reader) wasDone(i int) bool {
	p, _ := r.onePad(r.over(i, "the", "our"), true)
	t := r.tok(p.next)
	return t.shape == word && (isStates[t.tag] || r.oneOf(p.next, "counted", "walked", "eaten", "checked"))
}

// walkDone tells whether "did" tells of a leaf walk that was done: "did the
// walk yesterday".
func (r *reader) walkDone(i int) bool {
	k := r.over(i, "the", "a", "my", "our", "full", "whole", "leaf", "farm", "quick", "weekly")
	return k > i && r.oneOf(k, "walk", "round", "rounds", "counts", "count", "counting") && !r.oneOf(k+1, "get", "go", "happen", "help", "work", "say", "done", "change", "finish")
}

var (
	openers = wordSet(`did does do is are were should shall could would will anyone anybody any does isnt`)
	askers  = wordSet(`the they you we anyone anybody he she it i somebody someone any those these that u ye ya yous`)
)

const (
	longestQuestion = 60 // tokens that a question can have (ours)
	mostAsked       = 8  // places of a sentence where one may start (ours)
)

// dictated takes the words "question mark" at the end of a message for the mark:
// who speaks to the phone says them.
func (r *reader) dictated() {
	n := len(r.toks)
	if n < 3 || !r.oneOf(n-1, "mark") || !r.oneOf(n-2, "question") || r.oneOf(n-3, "the", "a", "big") {
		return
	}
	t := &r.toks[n-2]
	*t = token{shape: mark, text: "?", start: t.start, end: r.toks[n-1].end}
	r.toks = r.toks[:n-1]
}

// ask gives the question in a run of tokens, nil where there is none.
func (r *reader) ask(from, to int, signal bool) *entry.Question {
	if u := r.tok(from + 1); r.oneOf(from, "will", "gonna") && (u.tag == hearWord || u.tag == grazeWord || u.tag == planWord) && r.tok(to).text != "?" {
		return nil // "will prob graze 3 next"
	}
	if r.oneOf(from, "should") && r.oneOf(from+1, "be", "get") && (r.oneOf(from+2, "grazing", "in", "into", "cutting", "done", "finished", "through", "out", "closing", "shutting", "spraying") || r.tok(from+2).tag == grazingWord) && r.tok(to).text != "?" {
		return nil // "should be grazing 6 by friday"
	}
	if k := r.over(from, "the", "our", "my"); r.oneOf(k, "plan") && r.oneOf(k+1, "was", "is") && r.tok(to).text != "?" {
		return nil // "the plan was to graze 12 today"
	}
	signal = signal || r.oneOf(from, "if", "suppose", "supposing") && (r.hasTag(from, to, whWord) || r.hasTag(from, to, haUnit) || r.hasTag(from, to, dayUnit)) ||
		r.tok(from).text == "at" && r.hasTag(from, to, whWord)
	if r.oneOf(from, "days", "hectares") && (r.oneOf(from+1, "per", "a") && r.oneOf(from+2, "leaf", "day") && (to-from == 3 || r.oneOf(from+3, "on", "in", "for", "at") && r.padAhead(from+4)) || r.oneOf(from+1, "till", "until", "til", "to") && r.padAhead(from+2)) {
		signal = true // "days per leaf", "days till 12 is ready"
	}
	body, framed := r.request(from, to)
	signal = signal || framed
	if !signal && to-from > 10 || to-from > longestQuestion {
		return nil
	}
	if !signal && (!r.asksSomething(from, to) || r.agreesAnywhere(from, to)) {
		return nil
	}
	q := r.query(body, to, 1)
	q.signal, q.framed = signal, framed
	for i := from; i < body; i++ {
		if r.oneOf(i, "show", "give", "list", "see", "lay") {
			q.words.add(r.tok(i).text)
		}
	}
	if q.loose && !q.signal || q.strange > 0 && (!q.signal || q.strange > 1 || !r.opensQuestion(from)) {
		return nil
	}
	for _, rule := range questionRules {
		if out := rule(q); out != nil {
			return out
		}
	}
	return nil
}

// hasTag tells whether a word of some part stands in a run of tokens.
func (r *reader) hasTag(from, to int, want tag) bool {
	for i := from; i < to; i++ {
		if t := r.tok(i); t.shape == word && t.tag == want {
			return true
		}
	}
	return false
}

// asksSomething is a quick look for any word that questions are made of.
func (r *reader) asksSomething(from, to int) bool {
	for i := from; i < to; i++ {
		if t := r.tok(i); t.shape == word && questionKeys[t.text] {
			return true
		}
	}
	return false
}

var questionKeys = wordSet(`next nxt ready plan round rotation rate pace due history log summary help commands export map picture chart graph csv
	spreadsheet calendar status report counting slow speed order forecast without why leaves length figures wedge explain menu entries recent instructions`)

// questionWords are words that questions are made of, beside those of the
// lexicon that carry nothing.
var questionWords = wordSet(`next nxt ready plan planning round rotation rate pace due history log logged logging summary help commands command
	export map picture pic chart graph csv spreadsheet calendar ics status report counting count counted counts slow speed stretch down up order forecast
	without why leaves leaf length figures how hows what whats wot wots which where wheres when whens who whos should shall could can do does did will would
	is are was were go goes going going to into in on at for of about around be been being we us our they them i me you it that this these those
	days day week weeks ha hectares hectare acres acre area ground per a many much long fast quick quickly slowly coming growing grow grown growth
	grazed graze grazing sprayed spray walk walking walked needs need needed wants want paddock paddocks pdk pdks pad p field fields cows cow
	herd mob mobs stock move moved moving shift shifted happens happen happened if went drop dropped push pushed out stage average score
	show send give tell list get see please thanks now today tonight tomorrow yesterday last coming few left recorded entered entries
	best first second after then order queue file download table daily todays morning appearance emergence interval needing
	shut lock locked closed silage hay baleage up take taken hold held back off look looks looking lookin doing done standing stand sitting
	getting gets reaches hits gets there time soon yet any anything anywhere anyone something nothing else same so and or the an make makes made run running runs
	use used work works you your explain reason reckon think put putting turn feed cover ok okay with as from until since till have has had got
	current currently right just next? one ones two three left over ahead behind lately recently season year spring it? thing things say says
	commands start started option options know eat eaten open available sort behind wait close worth check checked measured measure rest
	eta mo atm sec target window overdue late early past leafstage lf lvs lv expect expected bring longs moment good its am taking bringing sending block blocks before yesterdays picked dropped stalled eased improved mistake mistakes error instructions mornings evenings furthest farthest highest ripest closest nearest along reached passed hit made checking story lowdown rundown
	info details overview roundup brief digest menu using bot rank ranking ranked pick choose choice suggest recommend
	wedge farm all every whole some more again another instead only those my his her their arvo night nite am pm weekend fortnight month speedy faster slower speeding slowing would look mean did above big size break breaks recent latest menu say type send enter record undo correct since rotation until till own ahead held on tillers tiller pull enough whats wheres be eating gave given giving offer
	offered offering fed text texting format submit reading readings everything slowed sped stretched oughta ought wats countin`)

// looseWords belong to a question where something else tells that it is one:
// "any idea where I am putting the cows".
var looseWords = wordSet(`idea ideas fit gave given giving offered allocated allocate fed suitable whatd anywhere ran leave suppose supposing`)

// query gathers what the words of a question say, up to where more than some
// of them belong to no question. They are good until the next look.
func (r *reader) query(from, to, strange int) *query {
	q := &r.q
	*q = query{words: wordList{words: r.words[:0]}, first: r.tok(from).text}
	defer func() { r.words = q.words.words }()
	for i := from; i < to && q.strange <= strange && r.asked <= mostPads; {
		if k := r.queryPart(q, i); k > i {
			i = k
			continue
		}
		t := r.tok(i)
		i++
		if t.shape == mark || t.shape == arrow || t.text == "t" && r.tok(i).shape == word || i == to && (t.text == "x" || t.text == "xx" || t.text == "xxx") {
			continue
		}
		if w, ok := dialect[t.text]; ok {
			q.words.add(w)
		}
		if u := r.tok(i); t.tag == nextWord && (u.tag == monthUnit || u.tag == weekdayWord || r.oneOf(i, "week", "year", "door", "time", "season", "to")) {
			if u.text != "to" {
				if u.text == "week" {
					q.words.add("week")
				}
				i++
			}
			q.words.add("later")
			q.n++
			continue
		}
		q.n++
		q.words.add(t.text)
		if looseWords[t.text] {
			q.loose = true
		} else if !questionWords[t.text] && t.tag != filler && t.tag != courtesy && t.tag != daytimeWord && t.tag != mobWord && t.tag != hedgeWord {
			q.strange++
		}
	}
	return q
}

// queryPart reads an amount, a paddock or a mob of a question.
func (r *reader) queryPart(q *query, i int) int {
	long, named := r.longest(i)
	named = named && long.next > i+1
	if n, k, ok := r.plain(i); ok && n > 0 && !named {
		if r.tok(k).text == "-" {
			k++
		}
		switch u := r.tok(k); {
		case (u.tag == dayUnit || u.text == "dy") && u.shape == word && r.tok(i).text != "a":
			q.days = n
			return k + 1
		case u.tag == leafUnit && u.shape == word:
			q.score = true
			return k
		case u.tag == weekUnit:
			q.days = n * 7
			return k + 1
		case u.tag == haUnit && u.shape == word:
			q.ha = n
			return k + 1
		case u.tag == acreUnit && u.shape == word:
			q.ha = float64(entry.Acres(n))
			return k + 1
		}
	}
	if t := r.tok(i); t.shape == number && t.glued && r.tok(i-1).shape == word && i > 0 && r.tok(i-1).tag != padMark {
		q.strange += 2 // the 3 of an N3 that no paddock is called
		return i + 1
	}
	if t := r.tok(i); t.tag == unknown || t.tag == padMark || t.shape == number || t.text == "#" || !questionWords[t.text] || t.names > 0 {
		if m := r.day(i); m.ok && t.shape != word {
			return m.next
		}
		if p, ok := r.onePad(i, r.anyPaddock && (i > 0 && (r.tok(i-1).text == "hows" || r.tok(i-1).text == "is" || r.tok(i-1).tag == inWord || r.tok(i-1).tag == ofWord || r.tok(i-1).text == "about"))); ok && !(t.shape == word && questionWords[t.text] && p.next == i+1 && t.tag != padMark && !(i > 0 && r.capital(i)) && !r.askedOf(i)) {
			if !p.known {
				q.bad = p.name
			}
			list, k := r.padList(p, i, false)
			r.asked += len(list)
			for _, one := range list {
				q.pads = append(q.pads, one.name)
			}
			return k
		}
	}
	if name, k := r.mob(i); k > i {
		q.mobSaid = true
		if name != "" {
			q.mob = name
		}
		q.words.add(r.tok(i).text)
		return k
	}
	return i
}

// askedOf tells whether a word that questions are made of is a paddock's name by
// what stands around it: "how's back going", "is top ready".
func (r *reader) askedOf(i int) bool {
	b := r.back(i-1, "the", "'", "s")
	if !positions[r.tok(i).text] || !r.oneOf(b, "hows", "how", "is") || r.oneOf(b, "how") && b == i-1 {
		return false
	}
	return r.oneOf(i+1, "going", "doing", "looking", "getting", "coming", "standing", "tracking", "travelling", "traveling", "growing", "ready", "fit", "due")
}

// capital tells whether a word was typed with a capital.
func (r *reader) capital(i int) bool {
	t := r.tok(i)
	return t.shape == word && r.text[t.start] >= 'A' && r.text[t.start] <= 'Z'
}

// yetAsked tells whether a sentence that ends in "yet", with nothing in it that says
// that it is not so, asks: "12 grazed yet".
func (r *reader) yetAsked(from, to int) bool {
	if !r.oneOf(to-1, "yet") || to-from < 2 {
		return false
	}
	for i := from; i < to-1; i++ {
		t := r.tok(i)
		if r.negative(i) || t.tag == notWord || t.tag == negWord || t.tag == planWord || t.tag == toWord || strings.HasSuffix(t.text, "nt") || r.oneOf(i, "no", "nobody", "none", "nothing", "un", "never", "and", "but") {
			return false
		}
		if d, _, ok := r.idiomAt(i); ok && d.guard&guardNeg != 0 {
			return false
		}
	}
	return true
}
