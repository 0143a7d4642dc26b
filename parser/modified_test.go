package parser

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// What turns a report into none must do so whatever the report is: each short
// message of the corpus that logs something is read again with such words before or
// behind it, and then logs nothing but a note.

// takingBack stand behind a message.
var takingBack = []string{
	" scratch that", ", scratch that", ". Scratch that!", " ignore that", " - ignore that sorry", ", ignore this", " forget it", " - forget it lads", " cancel that", " - cancel that please",
	", delete that", " never mind", ", nevermind", " nvm", " nope", ", nope", ". no", " - no wait", ", no wait", ", wait no", ". hang on", " just kidding", ", only joking", " jk", " - not really",
	" - wrong paddock", ". wrong paddock sorry", " wrong chat", ", wrong farm", " - that was wrong", ". Thats wrong", " - actually no", ", i lied", " in my dreams", " i wish", " - test", " (test)", ". just testing",
	". this is a test", " for example", ", just an example", " - dont log that", ". Dont log it", " thats the plan", " (plan)", " (not done)", " - not done yet", " - is that right", " or was it 13",
	" except it wasnt",
}

// planned stand behind what may be a plan: scores are none.
var planned = []string{" is the plan", " would be good", " would be nice", " eventually", " at some point"}

// headingAway stand before a message.
var headingAway = []string{
	"plan: ", "todo: ", "to do: ", "example: ", "for example ", "eg ", "e.g. ", "draft: ", "test: ", "testing: ", "ignore: ", "wrong: ", "cancel: ",
	"just text it like ", "send it like this: ", "you type ", "just write ", "the format is ", "imagine ", "suppose ", "idea: ", "practice: ",
}

func TestModified(t *testing.T) {
	tried := 0
	for _, p := range corpus(t, "*.jsonl") {
		if len(p.Entries) != 1 || len(p.Text) > 60 || strings.ContainsAny(p.Text, "\n?:") {
			continue
		}
		switch p.Topic {
		case "count", "graze", "cut", "hold", "release", "canopy", "weather":
		default:
			continue
		}
		c := p.context(t)
		if !reports(Read(p.Text, c).Entries) {
			continue
		}
		tails := takingBack
		if p.Topic != "count" {
			tails = append(tails[:len(tails):len(tails)], planned...)
		}
		for _, tail := range tails {
			text := strings.TrimRight(p.Text, " .!") + tail
			got := Read(text, c)
			require.False(t, reports(got.Entries), "%q logs %v", text, got.Entries)
			tried++
		}
		for _, head := range headingAway {
			text := head + p.Text
			got := Read(text, c)
			require.False(t, reports(got.Entries), "%q logs %v", text, got.Entries)
			tried++
		}
	}
	require.Greater(t, tried, 10_000)
}
