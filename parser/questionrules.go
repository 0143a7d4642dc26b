package parser

import (
	"leafround/core/entry"
)

// questionRules are tried in order.
var questionRules = []func(*query) *entry.Question{
	askHelp, askFile, askWhatIf, askWhy, askAfterThat, askHistory, askDue, askWhere, askHeld, askRate, askOnePaddock, askRound, askPlan, askNext, askReady, askSummary,
}

func askHelp(q *query) *entry.Question {
	if len(q.pads) == 0 && !q.mobSaid && q.strange == 0 && q.any("help") && q.any("with", "using", "bot") && q.n <= 7 {
		return &entry.Question{About: entry.AskHelp}
	}
	if len(q.pads) == 0 && q.any("way", "trick") && q.any("send", "log", "enter", "text", "record", "tell", "put") && q.any("what", "whats", "how") {
		return &entry.Question{About: entry.AskHelp}
	}
	if q.any("instructions") && q.n <= 4 || len(q.pads) == 0 && !q.mobSaid && q.any("how") && q.any("do", "can") && q.any("i", "we", "you") &&
		q.any("fix", "take", "change", "edit", "delete", "correct") && q.any("back", "mistake", "mistakes", "something", "entry", "wrong", "message", "error") {
		return &entry.Question{About: entry.AskHelp}
	}
	if q.any("menu") && q.n <= 4 || q.any("how") && q.any("log", "undo", "send", "enter", "record", "tell", "correct") && q.any("do", "i", "can", "to") && len(q.pads) == 0 && q.n <= 8 ||
		q.any("what", "whats") && q.any("say", "type", "ask", "send", "text", "write") && q.any("i", "we", "can", "you") && len(q.pads) == 0 && !q.mobSaid && q.n <= 8 && (q.n <= 5 || q.any("type", "text", "ask", "say")) && !q.any("did") {
		return &entry.Question{About: entry.AskHelp}
	}
	if len(q.pads) == 0 && !q.mobSaid && (q.any("format") && q.any("what", "whats", "which") || q.any("where") && q.any("send", "text") && q.any("i", "we") || q.any("how") && q.any("i", "we", "you") && q.any("do", "should", "can") &&
		q.any("put", "text", "send", "submit", "type", "do") && q.any("count", "counts", "score", "scores", "rain", "entry", "reading", "readings", "grazing") && q.n <= 9 && !q.any("need", "needs", "many", "often")) {
		return &entry.Question{About: entry.AskHelp}
	}
	if len(q.pads) == 0 && !q.mobSaid && q.first == "what" && q.any("do") && q.any("i", "we") && q.any("send", "log", "enter", "text", "submit", "record") && q.any("to") && !q.any("need", "did", "yesterday") {
		return &entry.Question{About: entry.AskHelp}
	}
	if len(q.pads) == 0 && !q.mobSaid && q.any("what", "whats") && q.any("sort", "kind", "kinds", "things", "stuff", "everything") && q.any("ask", "say", "type", "send", "text", "tell", "do") && q.any("can", "could", "should", "able") && q.any("you", "bot", "this") && q.n <= 12 {
		return &entry.Question{About: entry.AskHelp}
	}
	if q.any("how") && q.any("many") && q.any("tillers", "tiller") && q.any("should", "count", "need", "pull") && !q.any("was", "were", "did") {
		return &entry.Question{About: entry.AskHelp}
	}
	if q.any("help", "commands") && q.n <= 4 && !q.any("coming") || q.any("you") && q.any("can", "do") && q.any("what") && q.n <= 6 && len(q.pads) == 0 && !q.any("think", "reckon") ||
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
	case q.any("map") && q.any("out"):
		return &entry.Question{About: entry.AskPlan, Days: q.days, Mob: q.mob}
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
		out := &entry.Question{About: about, Paddock: pad, Picture: true}
		if about == entry.AskPlan {
			out.Days, out.Mob = q.days, q.mob
		}
		return out
	}
	return nil
}

// askWhatIf reads questions about a round that is not being run.
func askWhatIf(q *query) *entry.Question {
	out := &entry.Question{About: entry.AskRound}
	change := q.any("slow", "slowed", "sped", "speed", "stretch", "stretched", "if", "happens", "happen", "drop", "push", "went", "faster", "slower", "speedy")
	change = change || q.any("would") && q.any("look", "be", "mean", "do", "work", "suit") || q.first == "if" || q.first == "suppose" || q.first == "supposing"
	aDay := q.any("day", "daily", "per") || q.any("a")
	switch {
	case q.any("without") && len(q.pads) == 0 && q.n <= 5:
		out.Without = true
	case q.any("if") && q.any("shut", "lock", "locked", "closed", "took", "take", "out", "silage", "hay") && len(q.pads) > 0:
		out.Shut = q.pads
	case q.days > 0 && (change || q.any("round", "rotation")) && !q.any("plan", "history", "log"):
		out.Days = q.days
	case q.days > 0 && len(q.pads) == 0 && !q.mobSaid && q.strange == 0 && q.any("can", "could", "should") && q.any("go", "come", "get", "bring", "run", "be") && q.any("to", "at", "on") && !q.any("plan", "history", "log"):
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

// askAfterThat reads "where after that": which paddock is next.
func askAfterThat(q *query) *entry.Question {
	if q.n > 3 || len(q.pads) > 0 || !q.any("where", "which") || !q.any("after") || !q.any("that", "this") {
		return nil
	}
	return &entry.Question{About: entry.AskNext, Mob: q.mob}
}

func askHistory(q *query) *entry.Question {
	past := q.any("grazed", "sprayed", "logged", "recorded", "entered", "counted", "happened", "cut", "eaten", "walked", "moved") ||
		q.any("last") && q.any("when", "whens", "did") || q.any("in") && q.any("when") && q.any("was", "were", "did")
	switch {
	case q.any("havent", "hasnt", "never", "not") && q.any("counted", "walked", "measured", "checked", "looked"):
		return nil // "which havent been counted": what is due
	case q.any("history", "entries"), q.first == "log" && q.n <= 4, q.any("when", "what", "whats", "who", "whos", "which", "how") && past && !q.any("next", "due", "needs", "should", "be"):
	case len(q.pads) == 1 && q.any("when", "whens") && q.any("did", "was", "were") && !q.any("ready", "next", "due"):
	case len(q.pads) == 1 && q.any("show", "give", "list") && q.any("everything", "all"):
	case q.any("what", "whats") && (q.any("did", "done", "been") && q.any("we", "log", "logged") || q.any("done") && q.any("been")):
	case q.any("been") && q.any("what", "whats") && q.any("put", "written", "done", "recorded", "logged", "down"):
	case q.any("show", "give") && q.any("last") && q.any("week", "fortnight") && q.n <= 4 && !q.any("plan", "round"):
	case q.any("show", "give", "list") && q.any("last") && q.days > 0 && !q.any("plan", "order", "round", "rate", "leaf", "leaves", "next"):
	case q.any("log", "entries", "logged") && q.any("show", "last", "recent", "recently", "give", "the", "see", "latest", "all") && q.n <= 7 && !q.any("how", "count"):
	default:
		return nil
	}
	out := &entry.Question{About: entry.AskHistory, Days: q.days}
	if len(q.pads) == 1 {
		out.Paddock = q.pads[0]
	}
	out.Days = q.span(map[string]float64{"month": 30, "today": 1, "yesterday": 2})
	return out
}

// span gives the days that a question speaks of: as told, by a week or a
// fortnight, or by one of the words that the question knows beside; 0 where
// none is told.
func (q *query) span(words map[string]float64) float64 {
	switch {
	case q.days > 0:
		return q.days
	case q.any("week", "wk"):
		return 7
	case q.any("fortnight"):
		return 14
	}
	for _, w := range []string{"month", "today", "yesterday", "tomorrow"} {
		if days, ok := words[w]; ok && q.any(w) {
			return days
		}
	}
	return 0
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
	case q.mobSaid && len(q.pads) == 0 && q.any("where", "wheres", "what", "which") && q.any("are", "is", "wheres", "in") && !q.any("next", "going", "go", "should", "plan", "ready", "will", "put", "putting", "moving", "shifting", "best", "tomorrow"):
		return &entry.Question{About: entry.AskHistory, Mob: q.mob}
	case len(q.pads) == 1 && q.any("who", "whos", "what", "which") && q.any("in", "whos") && (q.n <= 3 || q.mobSaid) && !q.any("ready", "next", "leaves", "leaf", "stage"):
		return &entry.Question{About: entry.AskPaddock, Paddock: q.pads[0]}
	}
	return nil
}

func askDue(q *query) *entry.Question {
	counting := q.any("count", "counting", "counted", "walk", "walking", "walked", "counts", "measure", "measured", "check", "checked", "checking", "countin", "walkin", "checkin")
	wants := q.any("needs", "need", "due", "should", "needing", "needed", "what", "which", "where", "whats", "anything", "shall", "overdue", "want", "wants", "ought", "any")
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
	if q.signal && (q.any("how", "hows", "ready", "stage", "status", "when", "whens", "leaf", "leaves", "what", "whats", "about", "held", "looking", "can", "ok", "target", "late", "score", "graze", "average", "wot", "wots", "back", "good", "available", "open", "due", "wheres", "where", "need", "needs", "left", "should", "shut") || q.any("long") && q.any("till", "til", "until", "before") && q.any("how") || q.n == 0) ||
		q.any("status", "report", "stage", "show") && q.n <= 4 || q.framed && q.any("story", "lowdown", "rundown", "latest", "info", "details", "about", "on", "report") && q.n <= 6 {
		return &entry.Question{About: entry.AskPaddock, Paddock: q.pads[0]}
	}
	return nil
}

func askRate(q *query) *entry.Question {
	leafy := q.any("leaf", "leaves", "lvs", "lf", "grass", "growing", "growth", "grow")
	switch {
	case q.any("rate", "pace"), leafy && q.any("fast", "quick", "quickly", "speed", "speeding", "slowing", "slow", "slowly", "coming", "appearance", "emergence", "picked", "dropped", "stalled", "eased", "improved"),
		q.any("days", "day") && q.any("per", "a") && q.any("leaf"), q.any("growing") && q.any("how"),
		q.n == 2 && q.any("how") && q.any("fast"):
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
	if q.signal && len(q.pads) == 0 && (q.any("fast", "slow", "slowing", "quick", "speed") && q.any("we", "us", "down", "up") && !q.any("leaf", "leaves", "grass", "growing") || q.any("break", "breaks") && q.any("big", "size", "how")) {
		return &entry.Question{About: entry.AskRound}
	}
	if q.signal && q.any("run", "enough", "last") && (q.any("out") || q.any("enough", "last")) && q.any("grass", "feed", "cover") && len(q.pads) == 0 {
		return &entry.Question{About: entry.AskRound}
	}
	length := q.any("round", "rotation") && (q.signal || q.any("length", "long", "days", "interval", "speed") || q.n <= 2)
	area := q.any("area", "ha", "hectares", "acres", "ground", "much", "many") && q.any("day", "daily") || q.any("many", "much") && q.any("ha", "hectares", "acres", "area", "ground") && q.any("get", "getting", "give", "giving", "use", "using", "doing", "eating")
	if (length || area) && !q.any("plan", "order") && len(q.pads) == 0 {
		return &entry.Question{About: entry.AskRound}
	}
	return nil
}

func askPlan(q *query) *entry.Question {
	ahead := q.any("days", "week", "wk", "fortnight", "coming", "few") || q.days > 0
	if q.any("where", "wheres") && q.any("will") && q.mobSaid && len(q.pads) == 0 || q.any("whats") && q.any("on") && q.any("week", "days") {
		return &entry.Question{About: entry.AskPlan, Days: q.days, Mob: q.mob}
	}
	if q.any("show", "give", "lay") && q.any("next", "coming", "later") && (q.any("week", "fortnight", "days") || q.days > 0) && len(q.pads) == 0 && !q.any("last", "ready", "round", "rotation") {
		return &entry.Question{About: entry.AskPlan, Days: q.span(nil), Mob: q.mob}
	}
	if q.any("order") && !q.signal && !q.any("days", "coming", "next", "week", "paddocks") {
		return nil
	}
	if !(q.any("plan", "order", "queue") || q.any("where", "which", "what", "whats") && ahead && q.any("next", "coming", "this") && !q.any("ready")) {
		return nil
	}
	return &entry.Question{About: entry.AskPlan, Days: q.span(map[string]float64{"tomorrow": 2}), Mob: q.mob}
}

func askNext(q *query) *entry.Question {
	asks := q.any("where", "which", "what", "whats", "wots", "wot", "wheres", "who", "whos", "paddock", "pdk", "show", "give", "tell")
	if q.any("did", "were", "was", "went", "gone") || q.any("fit") && q.any("graze") || q.any("good") && q.any("ones", "are") && q.any("graze") {
		return nil
	}
	if q.first == "should" && q.any("go", "graze", "put", "use", "do") && len(q.pads) > 0 {
		return &entry.Question{About: entry.AskNext, Mob: q.mob}
	}
	goes := q.any("where", "which", "wheres") && q.any("go", "going", "put", "putting", "move", "moving", "shift", "shifting", "to", "into", "graze", "best", "take", "taking", "bring", "bringing", "sending", "run", "turn", "feed") || q.any("which") && q.mobSaid && q.any("have", "get", "want")
	if q.any("after") && len(q.pads) == 1 && q.any("what", "whats", "where", "wheres", "which") && q.n <= 5 && !q.any("ready", "grazed") {
		return &entry.Question{About: entry.AskNext, Mob: q.mob}
	}
	if q.any("next", "nxt") && (asks || q.signal || q.n <= 2 && len(q.pads) == 0 || q.mobSaid && q.first == "next" && q.n <= 4 && len(q.pads) == 0 && q.any("for", "with", "up")) || goes && q.signal && len(q.pads) == 0 ||
		q.any("best") && q.signal && q.any("paddock", "pdk", "one") {
		return &entry.Question{About: entry.AskNext, Mob: q.mob}
	}
	return nil
}

func askReady(q *query) *entry.Question {
	if q.signal && len(q.pads) == 0 && q.strange == 0 && q.n <= 9 && q.any("which", "what", "whats", "any", "anything") {
		if q.any("hit", "reached", "passed", "made") && (q.any("target", "leaves", "leaf", "stage") || q.score) ||
			q.any("past") && q.any("best", "its") || q.any("had") && (q.any("leaves") || q.score) && q.any("their", "its", "which") ||
			q.any("furthest", "farthest", "highest", "ripest", "closest", "nearest") || q.any("good") && q.any("go") {
			return &entry.Question{About: entry.AskReady}
		}
	}
	if q.signal && len(q.pads) == 0 && !q.any("if") && q.any("anything", "which", "what", "whats", "any") && (q.any("past", "over", "late", "at", "above") && (q.any("leaves", "leaf", "it") || q.score) || q.any("late")) && q.n <= 8 {
		return &entry.Question{About: entry.AskReady}
	}
	if q.signal && len(q.pads) == 0 && q.strange == 0 && q.any("fit") && q.any("which", "what", "whats", "anything", "any") && q.n <= 5 {
		return &entry.Question{About: entry.AskReady}
	}
	if q.signal && len(q.pads) == 0 && q.any("fit", "suitable", "worth", "good") && (q.mobSaid || q.any("graze", "grazing", "stock")) && q.any("anything", "anywhere", "any", "what", "whats", "which") && q.n <= 8 {
		return &entry.Question{About: entry.AskReady}
	}
	if (q.any("ready") || q.any("fit") && q.any("graze")) && len(q.pads) == 0 && (q.signal || q.n <= 3) || q.signal && q.any("can") && q.any("graze") && q.any("what", "which", "we", "i") && len(q.pads) == 0 {
		return &entry.Question{About: entry.AskReady}
	}
	return nil
}

func askSummary(q *query) *entry.Question {
	if q.signal && q.any("rundown", "overview", "roundup", "brief", "digest", "lowdown") && len(q.pads) == 0 && q.strange == 0 && q.n <= 6 {
		return &entry.Question{About: entry.AskSummary}
	}
	if q.any("summary", "report") && !q.any("nothing", "no", "to") && (q.n <= 6 || q.n <= 10 && (q.first == "give" || q.first == "send" || q.first == "show")) && len(q.pads) == 0 {
		return &entry.Question{About: entry.AskSummary}
	}
	return nil
}
