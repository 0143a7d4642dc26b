package parser

import (
	"strings"

	"leafround/core/entry"
)

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
		name, _, _ := strings.Cut(strings.ReplaceAll(r.text[r.tok(next-1).end:], "\n", " "), " ")
		for next < to && r.tok(next).start < r.tok(from+2).end+len(name) {
			next++
		}
		if r.Bot != "" && !strings.EqualFold(name, r.Bot) {
			return outcome{talk: true}, true
		}
	}
	if name == "start" {
		name = "help"
	}
	if name == "undo" {
		return outcome{entries: []entry.Entry{entry.Undo{}}}, true
	}
	q := r.query(next, to, to)
	if r.asked > mostPads {
		return outcome{ask: &entry.Ask{Reason: tooMuchReason}}, true
	}
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
