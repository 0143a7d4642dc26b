package bot

import (
	"fmt"
	"strconv"
	"strings"

	"leafround/bot/chat"
	"leafround/bot/ledger"
	"leafround/bot/reply"
	"leafround/core/answer"
	"leafround/core/entry"
)

// mostData is how many bytes a button may carry (Bot API, callback_data).
const mostData = 64

// buttonsOf gives the buttons under the reply to a message: those of its only
// answer; under several answers, undo alone.
func buttonsOf(spoken []Spoken, m ledger.Message) [][]chat.Button {
	if len(spoken) == 1 {
		return buttonsUnder(spoken[0].Answer, m)
	}
	for _, s := range spoken {
		for _, b := range reply.Buttons(s.Answer) {
			if b.Do == reply.DoUndo {
				return [][]chat.Button{{{Label: b.Label, Data: undoData(m)}}}
			}
		}
	}
	return nil
}

// buttonsUnder gives the buttons under one answer, side by side.
func buttonsUnder(a answer.Answer, m ledger.Message) [][]chat.Button {
	var row []chat.Button
	for _, b := range reply.Buttons(a) {
		data := ""
		switch b.Do {
		case reply.DoUndo:
			data = undoData(m)
		case reply.DoAsk:
			data = questionData(*b.Question)
		}
		if data != "" && len(data) <= mostData {
			row = append(row, chat.Button{Label: b.Label, Data: data})
		}
	}
	if len(row) == 0 {
		return nil
	}
	return [][]chat.Button{row}
}

func undoData(m ledger.Message) string {
	if m.ID == 0 {
		return ""
	}
	return fmt.Sprintf("undo:%d", m.ID)
}

// questionData writes a question into a button: q:ABOUT:FLAGS:DAYS:PADDOCK:MOB,
// the flags w (why) and p (picture).
func questionData(q entry.Question) string {
	flags := ""
	if q.Why {
		flags += "w"
	}
	if q.Picture {
		flags += "p"
	}
	return fmt.Sprintf("q:%s:%s:%g:%s:%s", q.About, flags, q.Days, q.Paddock, q.Mob)
}

// questionOf reads what questionData wrote, without its head.
func questionOf(data string) (q entry.Question, ok bool) {
	parts := strings.SplitN(data, ":", 5)
	if len(parts) != 5 {
		return q, false
	}
	days, err := strconv.ParseFloat(parts[2], 64)
	return entry.Question{About: entry.About(parts[0]), Why: strings.Contains(parts[1], "w"),
		Picture: strings.Contains(parts[1], "p"), Days: days, Paddock: parts[3], Mob: parts[4]}, err == nil
}
