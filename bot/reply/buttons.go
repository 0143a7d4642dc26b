package reply

import (
	"leafround/core/answer"
	"leafround/core/entry"
)

// Deed is what a button does.
type Deed string

// The deeds of buttons under an answer.
const (
	DoUndo   Deed = "undo"   // withdraw what this message logged
	DoAsk    Deed = "ask"    // answer Question
	DoChoose Deed = "choose" // take option N of the question back
)

// Button is one button under a reply, as a value; the bot gives it its data.
type Button struct {
	Label    string
	Do       Deed
	Question *entry.Question // DoAsk
	Option   int             // DoChoose: counted from 0
}

// Buttons gives the buttons under one answer, a row each: only those where one
// tap helps.
func Buttons(a answer.Answer) []Button {
	switch a := a.(type) {
	case answer.Ask:
		return choices(a)
	case answer.Count:
		return []Button{undo(), ask("Why?", entry.Question{About: entry.AskPaddock, Paddock: a.Paddock, Why: true})}
	case answer.Logged:
		if k := a.Entry.Kind(); k != entry.KindUndo && k != entry.KindCorrect && k != entry.KindSetup {
			return []Button{undo()}
		}
	case answer.Paddock:
		return withWhy(a.Why == nil, entry.Question{About: entry.AskPaddock, Paddock: a.Paddock},
			ask("Picture", entry.Question{About: entry.AskPaddock, Paddock: a.Paddock, Picture: true}))
	case answer.Rate:
		return withWhy(a.Why == nil, entry.Question{About: entry.AskRate, Paddock: a.Paddock},
			ask("Picture", entry.Question{About: entry.AskRate, Paddock: a.Paddock, Picture: true}))
	case answer.Ranking:
		return []Button{ask("Plan", entry.Question{About: entry.AskPlan, Mob: a.Mob}),
			ask("Picture", entry.Question{About: entry.AskReady, Mob: a.Mob, Picture: true})}
	case answer.Plan:
		return []Button{ask("Picture", entry.Question{About: entry.AskPlan, Mob: a.Mob, Days: float64(a.Days), Picture: true})}
	case answer.Summary:
		return []Button{ask("Plan", entry.Question{About: entry.AskPlan}), ask("To count", entry.Question{About: entry.AskDue})}
	}
	return nil
}

func undo() Button { return Button{Label: "Undo", Do: DoUndo} }

func ask(label string, q entry.Question) Button {
	return Button{Label: label, Do: DoAsk, Question: &q}
}

// withWhy puts "Why?" before the others, where it was not asked.
func withWhy(offer bool, q entry.Question, others ...Button) []Button {
	if !offer {
		return others
	}
	q.Why = true
	return append([]Button{ask("Why?", q)}, others...)
}

// choices gives one button for each way to understand the message.
func choices(a answer.Ask) []Button {
	var out []Button
	for i, o := range a.Options {
		out = append(out, Button{Label: o.Label, Do: DoChoose, Option: i})
	}
	return out
}
