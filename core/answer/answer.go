package answer

import (
	"time"

	"leafround/core/entry"
	"leafround/core/farm"
)

// Answer is what the bot has to say to one entry or one question. The set of
// its types is closed.
type Answer interface {
	// Subject names what it is about: an entry kind, a question, or "ask".
	Subject() string
	closed()
}

// Head is the first key of every answer.
type Head struct {
	About string `json:"about"`
}

// Subject names what the answer is about.
func (h Head) Subject() string { return h.About }

func (Head) closed() {}

// Question answers a question at a moment.
func Question(f *farm.Farm, q entry.Question, at time.Time) Answer {
	day := f.Today(at)
	switch q.About {
	case entry.AskNext, entry.AskReady:
		return ranking(f, q, day)
	case entry.AskPaddock:
		if q.Paddock == "" && q.Mob != "" {
			return mobHistory(f, entry.Question{About: entry.AskHistory, Mob: q.Mob}, day)
		}
		return onePaddock(f, q, day)
	case entry.AskRate:
		return rate(f, q, day)
	case entry.AskRound:
		return roundLength(f, q, day)
	case entry.AskPlan:
		return plan(f, q, day)
	case entry.AskDue:
		return due(f, day)
	case entry.AskHistory:
		return history(f, q, day)
	case entry.AskSummary:
		return summary(f, day, at)
	}
	return help(f)
}

// Entry answers an entry that the farm has just taken.
func Entry(f *farm.Farm, l entry.Logged, at time.Time) Answer {
	day := f.Today(at)
	if c, ok := l.Entry.(entry.Count); ok {
		return count(f, l, c, day)
	}
	return logged(f, l, day)
}

// Ask is the bot's question back.
type Ask struct {
	Head
	Reason  string         `json:"reason"`
	Options []entry.Option `json:"options"`
}

// FromAsk gives the question back as an answer.
func FromAsk(a entry.Ask) Ask {
	options := a.Options
	if options == nil {
		options = []entry.Option{}
	}
	return Ask{Head{"ask"}, a.Reason, options}
}

// noPaddock asks which paddock was meant, when none bears that name.
func noPaddock(f *farm.Farm, name string) Ask {
	a := entry.Ask{Reason: "No paddock here is called " + name + ". Which one is it?"}
	if name == "" {
		a.Reason = "Which paddock?"
	}
	return FromAsk(a)
}
