package parser

import (
	"strings"

	"leafround/core/entry"
)

// query is what a question's words say, before it is known what it is about.
type query struct {
	words   map[string]bool
	pads    []string
	bad     string // a paddock that nobody knows
	mob     string
	mobSaid bool
	days    float64
	ha      float64
	signal  bool // a question mark or a question word
	score   bool // a number of leaves
	strange int  // words that belong to no question
	n       int  // words in all
	first   string
}

func (q *query) any(list ...string) bool {
	for _, w := range list {
		if q.words[w] {
			return true
		}
	}
	return false
}

// opensQuestion tells whether a sentence starts as a question does.
func (r *reader) opensQuestion(i int) bool {
	for {
		t := r.tok(i)
		if t.shape != word {
			return false
		}
		if openers[t.text] || t.tag == whWord {
			return true
		}
		if t.text == "have" || t.text == "has" || t.text == "was" || t.text == "can" || t.text == "had" {
			u := r.tok(i + 1)
			return t.text != "had" && (askers[u.text] || u.tag == mobWord || u.tag == looseMob || r.padAhead(i+1) && t.text != "was")
		}
		if t.text != "so" && t.text != "and" && t.text != "hey" && t.tag != courtesy && t.text != "bot" && t.text != "ok" {
			return false
		}
		i++
	}
}

var (
	openers = wordSet(`did does do is are were should shall could would will anyone anybody any does isnt`)
	askers  = wordSet(`the they you we anyone anybody he she it i somebody someone any those these that`)
)

// question reads a question at the sentence's start, or behind a statement; at
// is the token where it starts.
//
//	question = [ "so" | "and" ] words-of-a-question [ "?" ]
func (r *reader) question(from, to int, asked bool) (q *entry.Question, at int, ok bool) {
	for i := from + 1; i < to; i++ {
		t := r.tok(i)
		if t.text != "," && t.text != "-" && t.tag != andWord && t.text != "so" && t.tag != thenWord {
			continue
		}
		for r.tok(i).text == "," || r.tok(i).text == "-" || r.tok(i).tag == andWord || r.tok(i).text == "so" || r.tok(i).tag == thenWord {
			i++
		}
		if r.tok(i).tag != whWord && r.tok(i).tag != nextWord {
			continue
		}
		if q := r.ask(i, to, true); q != nil {
			return q, i, true
		}
	}
	return r.wholeQuestion(from, to, asked)
}

// wholeQuestion reads a sentence that is nothing but a question.
func (r *reader) wholeQuestion(from, to int, asked bool) (*entry.Question, int, bool) {
	q := r.ask(from, to, asked || r.opensQuestion(from))
	return q, from, q != nil
}

// longestQuestion is how many tokens a question can have (ours).
const longestQuestion = 60

// ask gives the question in a run of tokens, nil where there is none.
func (r *reader) ask(from, to int, signal bool) *entry.Question {
	signal = signal || r.tok(from).text == "if" && (r.hasTag(from, to, whWord) || r.hasTag(from, to, haUnit) || r.hasTag(from, to, dayUnit)) ||
		r.tok(from).text == "at" && r.hasTag(from, to, whWord)
	if !signal && to-from > 10 || to-from > longestQuestion {
		return nil
	}
	if !r.asksSomething(from, to) && !signal {
		return nil
	}
	q := r.query(from, to)
	q.signal = signal
	if q.strange > 0 && (!q.signal || q.strange > 1 || !r.opensQuestion(from)) {
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
	spreadsheet calendar status report counting slow speed order forecast without why leaves length figures wedge explain menu entries recent`)

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
	getting there time soon yet any anything anywhere anyone something nothing else same so and or the an make makes made run running runs
	use used work works you your explain reason reckon think put putting turn feed cover ok okay with as from until since till have has had got
	current currently right just next? one ones two three left over ahead behind lately recently season year spring it? thing things say says
	commands start started option options know eat eaten open available sort behind wait close worth check checked measured measure rest
	eta target window overdue late early past leafstage lf lvs lv expect expected bring rank ranking ranked pick choose choice suggest recommend
	wedge farm all every whole some more again another instead only those my his her their arvo night nite am pm weekend fortnight month speedy faster slower speeding slowing would look mean did above big size break breaks recent latest menu say type send enter record undo correct since rotation until till own ahead held on whats wheres be eating`)

// query gathers what the words of a question say.
func (r *reader) query(from, to int) *query {
	q := &query{words: make(map[string]bool, to-from), first: r.tok(from).text}
	for i := from; i < to; {
		if k := r.queryPart(q, i); k > i {
			i = k
			continue
		}
		t := r.tok(i)
		i++
		if t.shape == mark || t.shape == arrow {
			continue
		}
		if u := r.tok(i); t.tag == nextWord && (u.tag == monthUnit || u.tag == weekdayWord || r.oneOf(i, "week", "year", "door", "time", "season", "to")) {
			if u.text != "to" {
				q.words["week"] = q.words["week"] || u.text == "week"
				i++
			}
			q.words["later"] = true
			q.n++
			continue
		}
		q.n++
		q.words[t.text] = true
		if !questionWords[t.text] && t.tag != filler && t.tag != courtesy && t.tag != daytimeWord && t.tag != mobWord && t.tag != hedgeWord {
			q.strange++
		}
	}
	return q
}

// queryPart reads an amount, a paddock or a mob of a question.
func (r *reader) queryPart(q *query, i int) int {
	if n, k, ok := r.plain(i); ok && n > 0 {
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
	if t := r.tok(i); t.tag == unknown || t.tag == padMark || t.shape == number || t.text == "#" || !questionWords[t.text] || r.book.first[t.text] > 0 {
		if m := r.day(i); m.ok && t.shape != word {
			return m.next
		}
		if p, ok := r.onePad(i, r.anyPaddock && (i > 0 && (r.tok(i-1).text == "hows" || r.tok(i-1).text == "is" || r.tok(i-1).tag == inWord || r.tok(i-1).tag == ofWord || r.tok(i-1).text == "about"))); ok && !(t.shape == word && questionWords[t.text] && p.next == i+1 && t.tag != padMark && !r.capital(i)) {
			if !p.known {
				q.bad = p.name
			}
			list, k := r.padList(p, i, false)
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
		q.words[r.tok(i).text] = true
		return k
	}
	return i
}

// capital tells whether a word was typed with a capital inside a sentence.
func (r *reader) capital(i int) bool {
	t := r.tok(i)
	return i > 0 && t.shape == word && r.text[t.start] >= 'A' && r.text[t.start] <= 'Z'
}

// questionRules are tried in order.
var questionRules = []func(*query) *entry.Question{
	askHelp, askFile, askWhatIf, askWhy, askHistory, askDue, askWhere, askHeld, askRate, askOnePaddock, askRound, askPlan, askNext, askReady, askSummary,
}

func askHelp(q *query) *entry.Question {
	if q.any("menu") && q.n <= 2 || q.any("how") && q.any("log", "undo", "send", "enter", "record", "tell", "correct") && q.any("do", "i", "can", "to") && len(q.pads) == 0 && q.n <= 8 ||
		q.any("what") && q.any("say", "type", "ask", "send") && q.any("i", "can") && q.n <= 5 {
		return &entry.Question{About: entry.AskHelp}
	}
	if q.any("help", "commands") && q.n <= 4 || q.any("you") && q.any("can", "do") && q.any("what") && q.n <= 6 && len(q.pads) == 0 && !q.any("think", "reckon") ||
		q.any("how") && q.any("work", "works", "use") && len(q.pads) == 0 && q.n <= 8 {
		return &entry.Question{About: entry.AskHelp}
	}
	return nil
}

func askFile(q *query) *entry.Question {
	pad := ""
	if len(q.pads) == 1 {
		pad = q.pads[0]
	}
	switch {
	case q.any("calendar", "ics"):
		return &entry.Question{About: entry.AskPlan, Days: q.days, Mob: q.mob, File: true}
	case q.any("export", "csv", "spreadsheet", "download"):
		return &entry.Question{About: entry.AskHistory, Paddock: pad, Days: q.days, File: true}
	case q.any("map", "picture", "pic", "chart", "graph", "wedge"):
		about := entry.AskReady
		switch {
		case q.any("plan", "order"):
			about = entry.AskPlan
		case q.any("rate", "pace", "leaf", "leaves"):
			about = entry.AskRate
		case pad != "":
			about = entry.AskPaddock
		case q.any("round", "rotation"):
			about = entry.AskRound
		}
		return &entry.Question{About: about, Paddock: pad, Picture: true}
	}
	return nil
}

// askWhatIf reads questions about a round that is not being run.
func askWhatIf(q *query) *entry.Question {
	out := &entry.Question{About: entry.AskRound}
	change := q.any("slow", "speed", "stretch", "if", "happens", "happen", "drop", "push", "went", "faster", "slower", "speedy")
	change = change || q.any("would") && q.any("look", "be", "mean", "do") || q.first == "if"
	aDay := q.any("day", "daily", "per") || q.any("a")
	switch {
	case q.any("without") && len(q.pads) == 0 && q.n <= 5:
		out.Without = true
	case q.any("if") && q.any("shut", "lock", "locked", "closed", "took", "take", "out", "silage", "hay") && len(q.pads) > 0:
		out.Shut = q.pads
	case q.days > 0 && (change || q.any("round", "rotation")) && !q.any("plan", "history", "log"):
		out.Days = q.days
	case q.ha > 0 && (change || aDay):
		out.Ha = q.ha
	default:
		return nil
	}
	return out
}

func askWhy(q *query) *entry.Question {
	if !q.any("why", "explain", "whys") {
		return nil
	}
	switch {
	case len(q.pads) == 1 && !q.any("next", "first"):
		return &entry.Question{About: entry.AskPaddock, Paddock: q.pads[0], Why: true}
	case q.any("round", "rotation", "long"):
		return &entry.Question{About: entry.AskRound, Why: true}
	case q.any("rate", "pace", "slow", "fast"):
		return &entry.Question{About: entry.AskRate, Why: true}
	case q.any("plan", "order"):
		return &entry.Question{About: entry.AskPlan, Why: true}
	case q.any("next", "first", "that", "it") || q.n == 1:
		return &entry.Question{About: entry.AskNext, Mob: q.mob, Why: true}
	}
	return nil
}

func askHistory(q *query) *entry.Question {
	past := q.any("grazed", "sprayed", "logged", "recorded", "entered", "counted", "happened", "cut", "eaten", "walked", "moved") ||
		q.any("last") && q.any("when", "whens", "did") || q.any("in") && q.any("when") && q.any("was", "were", "did")
	switch {
	case q.any("history", "entries"), q.first == "log" && q.n <= 4, q.any("when", "what", "who", "whos", "which", "how") && past && !q.any("next", "due", "needs", "should", "be"):
	case q.any("what", "whats") && q.any("did", "done", "been") && q.any("we", "log", "logged"):
	case q.any("log", "entries", "logged") && q.any("show", "last", "recent", "recently", "give", "the", "see", "latest", "all") && q.n <= 7 && !q.any("how", "count"):
	default:
		return nil
	}
	out := &entry.Question{About: entry.AskHistory, Days: q.days}
	if len(q.pads) == 1 {
		out.Paddock = q.pads[0]
	}
	switch {
	case q.days > 0:
	case q.any("week"):
		out.Days = 7
	case q.any("fortnight"):
		out.Days = 14
	case q.any("month"):
		out.Days = 30
	case q.any("today"):
		out.Days = 1
	case q.any("yesterday"):
		out.Days = 2
	}
	return out
}

// askHeld reads "what's held", "what's shut up": the ready list tells what is
// left out, and why.
func askHeld(q *query) *entry.Question {
	if len(q.pads) == 0 && q.any("what", "whats", "which") && (q.any("held", "shut", "locked", "hold") || q.any("out") && q.any("round", "rotation")) && q.n <= 7 {
		return &entry.Question{About: entry.AskReady}
	}
	return nil
}

// askWhere answers where a mob is, and who is in a paddock, from the log.
func askWhere(q *query) *entry.Question {
	switch {
	case q.mobSaid && len(q.pads) == 0 && q.any("where", "wheres", "what", "which") && q.any("are", "is", "wheres", "in") && !q.any("next", "going", "go", "should", "plan", "ready", "will", "put"):
		return &entry.Question{About: entry.AskHistory, Mob: q.mob}
	case len(q.pads) == 1 && q.any("who", "whos", "what", "which") && q.any("in", "whos") && (q.n <= 3 || q.mobSaid) && !q.any("ready", "next", "leaves", "leaf", "stage"):
		return &entry.Question{About: entry.AskPaddock, Paddock: q.pads[0]}
	}
	return nil
}

func askDue(q *query) *entry.Question {
	counting := q.any("count", "counting", "counted", "walk", "walking", "walked", "counts", "measure", "measured", "check", "checked")
	wants := q.any("needs", "need", "due", "should", "needing", "needed", "what", "which", "where", "whats", "anything", "shall", "overdue", "want", "wants")
	if counting && wants && !q.any("ready") || q.any("due") && q.n <= 4 && len(q.pads) == 0 {
		return &entry.Question{About: entry.AskDue}
	}
	return nil
}

func askOnePaddock(q *query) *entry.Question {
	if len(q.pads) != 1 || q.any("rate", "pace") || q.any("days") && q.any("leaf") {
		return nil
	}
	if q.any("after", "next") && q.any("next", "what", "whats", "where", "which") {
		return nil
	}
	if q.mobSaid && q.any("put", "move", "shift", "take", "get", "bring") {
		return nil
	}
	if q.any("would", "love", "wish") && !q.any("when", "what", "how") {
		return nil
	}
	if q.signal && (q.any("how", "hows", "ready", "stage", "status", "when", "whens", "leaf", "leaves", "what", "whats", "about", "held", "looking", "can", "ok", "target", "late", "score", "graze", "average", "wot", "wots", "back", "available", "open", "due", "wheres", "where", "need", "needs", "left", "should", "shut") || q.n == 0) ||
		q.any("status", "report", "stage", "show") && q.n <= 4 {
		return &entry.Question{About: entry.AskPaddock, Paddock: q.pads[0]}
	}
	return nil
}

func askRate(q *query) *entry.Question {
	leafy := q.any("leaf", "leaves", "lvs", "lf", "grass", "growing", "growth", "grow")
	switch {
	case q.any("rate", "pace"), leafy && q.any("fast", "quick", "quickly", "speed", "speeding", "slowing", "slow", "slowly", "coming", "appearance", "emergence"),
		q.any("days", "day") && q.any("per", "a") && q.any("leaf"), q.any("growing") && q.any("how"):
	default:
		return nil
	}
	out := &entry.Question{About: entry.AskRate}
	if len(q.pads) == 1 {
		out.Paddock = q.pads[0]
	}
	return out
}

func askRound(q *query) *entry.Question {
	if q.signal && len(q.pads) == 0 && (q.any("fast", "slow", "slowing", "quick") && q.any("we", "us", "down", "up") && !q.any("leaf", "leaves", "grass", "growing") || q.any("break", "breaks") && q.any("big", "size", "how")) {
		return &entry.Question{About: entry.AskRound}
	}
	length := q.any("round", "rotation") && (q.signal || q.any("length", "long", "days", "interval", "speed") || q.n <= 2)
	area := q.any("area", "ha", "hectares", "acres", "ground", "much", "many") && q.any("day", "daily")
	if (length || area) && !q.any("plan", "order") && len(q.pads) == 0 {
		return &entry.Question{About: entry.AskRound}
	}
	return nil
}

func askPlan(q *query) *entry.Question {
	ahead := q.any("days", "week", "fortnight", "coming", "few") || q.days > 0
	if q.any("where", "wheres") && q.any("will") && q.mobSaid && len(q.pads) == 0 || q.any("whats") && q.any("on") && q.any("week", "days") {
		return &entry.Question{About: entry.AskPlan, Days: q.days, Mob: q.mob}
	}
	if !(q.any("plan", "order", "queue") || q.any("where", "which", "what", "whats") && ahead && q.any("next", "coming", "this") && !q.any("ready")) {
		return nil
	}
	out := &entry.Question{About: entry.AskPlan, Days: q.days, Mob: q.mob}
	switch {
	case q.days > 0:
	case q.any("week"):
		out.Days = 7
	case q.any("fortnight"):
		out.Days = 14
	case q.any("tomorrow"):
		out.Days = 2
	}
	return out
}

func askNext(q *query) *entry.Question {
	asks := q.any("where", "which", "what", "whats", "wots", "wot", "wheres", "who", "whos", "paddock", "pdk", "show", "give", "tell")
	if q.any("did", "were", "was", "went", "gone") {
		return nil
	}
	goes := q.any("where", "which", "wheres") && q.any("go", "going", "put", "move", "shift", "to", "into", "graze", "best", "take", "bring", "run", "turn", "feed")
	if q.any("next", "nxt") && (asks || q.signal || q.n <= 2 && len(q.pads) == 0) || goes && q.signal && len(q.pads) == 0 ||
		q.any("best") && q.signal && q.any("paddock", "pdk", "one") {
		return &entry.Question{About: entry.AskNext, Mob: q.mob}
	}
	return nil
}

func askReady(q *query) *entry.Question {
	if q.signal && len(q.pads) == 0 && q.any("anything", "which", "what", "whats", "any") && (q.any("past", "over", "late", "at", "above") && (q.any("leaves", "leaf", "it") || q.score) || q.any("late")) && q.n <= 8 {
		return &entry.Question{About: entry.AskReady}
	}
	if q.any("ready") && len(q.pads) == 0 && (q.signal || q.n <= 3) || q.signal && q.any("can") && q.any("graze") && q.any("what", "which", "we", "i") && len(q.pads) == 0 {
		return &entry.Question{About: entry.AskReady}
	}
	return nil
}

func askSummary(q *query) *entry.Question {
	if q.any("summary", "report") && q.n <= 6 && len(q.pads) == 0 {
		return &entry.Question{About: entry.AskSummary}
	}
	return nil
}

// command reads a slash command: /next, /plan@botname 7.
//
//	command = "/" name [ "@" bot ] [ words ]
func (r *reader) command(from, to int) (outcome, bool) {
	if r.tok(from).text != "/" || !r.tok(from+1).glued || r.tok(from+1).shape != word {
		return outcome{}, false
	}
	name := r.tok(from + 1).text
	next := from + 2
	if r.tok(next).text == "@" && r.tok(next).glued {
		next++
		start := next
		for r.tok(next).glued && next < to {
			next++
		}
		if r.Bot != "" && !strings.EqualFold(r.source(start, next), r.Bot) {
			return outcome{talk: true}, true
		}
	}
	if name == "start" {
		name = "help"
	}
	if name == "undo" {
		return outcome{entries: []entry.Entry{entry.Undo{}}}, true
	}
	q := r.query(next, to)
	for _, a := range entry.Abouts() {
		if string(a) == name {
			return r.commandOf(a, q, next, to), true
		}
	}
	switch name {
	case "export":
		return outcome{question: &entry.Question{About: entry.AskHistory, File: true}}, true
	case "map":
		return outcome{question: &entry.Question{About: entry.AskReady, Picture: true}}, true
	}
	return outcome{ask: &entry.Ask{Reason: "I know no command /" + name + ". Send /help for what I can do."}}, true
}

// commandOf fills a command's question from its words.
func (r *reader) commandOf(a entry.About, q *query, from, to int) outcome {
	out := &entry.Question{About: a, Days: q.days, Ha: q.ha, Mob: q.mob}
	if len(q.pads) == 1 {
		out.Paddock = q.pads[0]
	}
	if n, k := r.whole(from); k == to && k > from && out.Days == 0 && (a == entry.AskPlan || a == entry.AskRound || a == entry.AskHistory && out.Paddock == "") {
		out.Days, out.Paddock = float64(n), ""
	}
	switch a {
	case entry.AskPaddock:
		if out.Paddock == "" {
			return outcome{ask: &entry.Ask{Reason: "Which paddock? Send its name behind /paddock."}}
		}
	case entry.AskNext, entry.AskPlan, entry.AskRound, entry.AskDue, entry.AskReady, entry.AskSummary, entry.AskHelp:
		out.Paddock = ""
	}
	return outcome{question: out}
}
