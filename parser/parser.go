package parser

import (
	"sync"
	"time"
	"unicode/utf8"

	"leafround/core/entry"
)

// MaxUnits is the longest text that Telegram carries, in UTF-16 units (Bot API
// documentation, sendMessage); a longer one is asked about.
const MaxUnits = 4096

// Context is what the reader may know beside the text.
type Context struct {
	Now        time.Time // when the message was written, in the farm's zone
	MonthFirst bool      // 11/3 is the 3rd of November (zones of the United States)
	Book       *Book     // the register made ready; built from Paddocks and Mobs where nil
	Paddocks   []Name
	AnyPaddock bool // no register: any name may be a paddock
	Mobs       []string
	Rule       entry.RemnantRule
	Recent     string        // paddock that the sender named within the hour: bare scores are its
	Last       []entry.Entry // the sender's latest message's entries: "same again in 13"
	Bot        string        // the bot's user name, for commands that name a bot
	Reply      bool          // the message answers one that was logged: a bare correction is one
}

// reader reads one message.
type reader struct {
	Context
	*room
	toks       []token // the room's, for as long as the reading lasts
	none       token   // what stands beyond either end
	looks      int     // how often a token may still be looked at
	retry      bool    // another form of a message is read: it offers no forms of its own
	q          query   // the question last looked at
	book       *Book
	anyPaddock bool
	monthFirst bool
	rule       entry.RemnantRule
	today      entry.Date
	hour       int
	text       string // the cleaned text
	commas     commaUse
	ahead      bool // days without a year are the next to come
	way        role // a direction that waits for its place
	herded     bool // the clause has named a mob
	unitTold   bool // the temperature came with its unit
	awaiting   bool // the clause before, of this sentence, says whose scores follow
	afterTalk  int  // how often a question before talk was looked for
	asking     bool // the sentence asks
	please     bool // somebody is asked to do something
	paired     bool // the sentence tells scores before their paddocks
	ofIt       bool // it is asked when "it" will be ready
	tillers    int  // scores looked at so far
	named      int  // paddocks named so far
	asked      int  // paddocks named in what may be questions
	plainFrom  int  // from here to plainTo no comma is a decimal one
	plainTo    int
	apart      bool // from apartFrom to apartTo parts stand apart from whole numbers
	apartFrom  int
	apartTo    int
	asideFrom  int // from here to asideNext no word sets tillers aside
	asideNext  int
	noScores   int     // before this token there are no scores: they were looked for
	opening    int     // the clause's first token
	cut        bool    // the token here opens a clause of its own
	rained     bool    // the clause before told rain
	perRain    float64 // millimetres in the unit of the rain told last
	tied       bool    // a list of paddocks may be parted in two ways
	headed     bool    // the line before was a paddock's name alone
	heldSeen   int     // up to this token a hold was looked for
	heldSaid   bool    // one was found there
	prefixed   bool    // the direction that waits came from "to" or "from"
	understood []string
	respelt    []string
	forms      []way // other forms of the message, for what may be asked
}

// tok gives a token; beyond either end, and when too many were looked at, an empty
// one.
func (r *reader) tok(i int) *token {
	if uint(i) < uint(len(r.toks)) && r.looks > 0 { // neither below 0 nor beyond the end
		r.looks--
		return &r.toks[i]
	}
	return &r.none
}

// source gives the text of some tokens as typed.
func (r *reader) source(from, to int) string {
	if from >= to || from >= len(r.toks) {
		return ""
	}
	return r.text[r.toks[from].start:r.toks[to-1].end]
}

// room is what one reading borrows and the next may have.
type room struct {
	toks   []token
	seen   []entry.Tiller // the scores last looked at
	told   []clause       // the clauses, in order
	stated []clause       // the statements that they come to
	words  []string       // of the question last looked at
}

var rooms = sync.Pool{New: func() any { return &room{toks: make([]token, 0, 128)} }}

// giveBack empties the room for the next reading.
func (r *reader) giveBack() {
	clear(r.told[:min(len(r.told)+1, cap(r.told))])
	clear(r.stated)
	r.room.toks, r.seen, r.told, r.stated, r.words = r.toks[:0], r.seen[:0], r.told[:0], r.stated[:0], r.words[:0]
	rooms.Put(r.room)
}

// Read gives what a message says. It never fails: what it cannot take is a
// question back to the sender, or ignored where it is no business of the bot's.
func Read(text string, c Context) entry.Reading {
	if tooLong(text) {
		return entry.Reading{Text: text, Ask: &entry.Ask{Reason: "That message is too long for me. Please send it in parts."}}
	}
	return newReader(text, c).read(text)
}

// readAgain reads a form of the message, or a part of it: it costs of the looks
// that the message has.
func (r *reader) readAgain(text string, c Context) entry.Reading {
	c.Book = r.book
	again := newReader(text, c)
	again.looks, again.retry = r.looks, true
	out := again.read(text)
	r.looks = again.looks
	return out
}

// mostLooks is how often a message's tokens are looked at, all its forms and parts
// taken together; a message that would take more is asked to come in parts. The
// most that one of the corpus takes is a twentieth of it. It holds the time that a
// message made to cost time can take, whatever it is made of (ours).
const mostLooks = 220_000

func (r *reader) read(text string) entry.Reading {
	out := entry.Reading{Text: text}
	r.room = rooms.Get().(*room)
	r.toks = r.room.toks
	r.scan()
	if len(r.toks) > mostTokens {
		r.tooMuch(&out)
	} else {
		r.dictated()
		r.joinNumbers()
		r.shorthand()
		r.respell()
		r.fullStops()
		r.message(&out)
		r.sayAgain(&out)
	}
	if r.looks <= 0 { // what was read last was read without its words
		out = entry.Reading{Text: text}
		r.tooMuch(&out)
	} else if out.Ask != nil {
		r.options(out.Ask)
	}
	if len(out.Entries) > 0 || out.Question != nil || out.Ask != nil {
		r.understood = append(r.understood, r.respelt...)
	}
	r.giveBack()
	out.Understood = append(out.Understood, r.understood...)
	return out
}

// mostTokens is how many words, numbers and marks are read in one message: a
// walk of 66 paddocks with ten tillers each. It holds the time that a message
// made to cost time can take (ours).
const mostTokens = 800

// tooMuch settles a message of more tokens: what may be for the bot is asked to
// come in parts, marks alone are no message.
func (r *reader) tooMuch(out *entry.Reading) {
	for i := range r.toks {
		if s := r.toks[i].shape; s == word || s == number {
			out.Ask = &entry.Ask{Reason: tooMuchReason}
			return
		}
	}
	out.Ignored = true
}

const tooMuchReason = "That is too much for me at once. Please send it in parts."

// scan cuts the text into tokens and notes what names may start at each.
func (r *reader) scan() {
	r.toks = scan(r.text, r.toks)
	for i := range r.toks {
		r.toks[i].names = r.book.most(r.toks[i].text)
	}
}

// fullStops drops the line's end behind a full stop: the sentence has ended. A
// register is one paddock a line, whatever stands at its end.
func (r *reader) fullStops() {
	if r.oneOf(0, "paddocks", "fields") {
		return
	}
	n := 0
	for i := range r.toks {
		if i > 0 && r.toks[i].shape == newline && n > 0 && r.toks[n-1].shape == mark && r.toks[n-1].text == "." {
			continue
		}
		if n < i {
			r.toks[n] = r.toks[i]
		}
		n++
	}
	r.toks = r.toks[:n]
}

// remake makes a token another mark, a line's end or a number.
func (r *reader) remake(t *token, s shape, text string) {
	t.shape = s
	r.reword(t, text)
	r.apartTo = 0
}

// reword puts another word in a token's place.
func (r *reader) reword(t *token, text string) {
	r.asideNext = -1
	t.text, t.names, t.right = text, r.book.most(text), false
}

func newReader(text string, c Context) *reader {
	r := &reader{Context: c, book: c.Book, anyPaddock: c.AnyPaddock, monthFirst: c.MonthFirst, rule: c.Rule,
		today: entry.DateOf(c.Now), hour: c.Now.Hour(), text: clean(text), asideNext: -1, looks: mostLooks}
	if r.book == nil {
		r.book = NewBook(c.Paddocks, c.Mobs)
	}
	return r
}

// tooLong counts UTF-16 units.
func tooLong(text string) bool {
	if len(text) <= MaxUnits {
		return false
	}
	n := 0
	for _, c := range text {
		n++
		if c > 0xFFFF {
			n++
		}
	}
	return n > MaxUnits || !utf8.ValidString(text) && len(text) > MaxUnits*4
}

// foldOf is how names are compared.
func foldOf(s string) string { return entry.FoldName(s) }
