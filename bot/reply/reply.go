package reply

import (
	"bytes"
	"embed"
	"fmt"
	"html/template"
	"strings"

	"leafround/core/answer"
	"leafround/core/entry"
)

// Voice is how a farm is spoken to.
type Voice struct {
	Acres      bool     // areas in acres
	Inches     bool     // heights in inches
	Understood []string // what was forgiven in the message, told at the end
}

// HTML words one answer as escaped HTML.
func HTML(a answer.Answer, v Voice) string {
	return v.understood(render(a, v))
}

// understood puts what was forgiven behind a text.
func (v Voice) understood(text string) string {
	if len(v.Understood) > 0 {
		text += "\n" + template.HTMLEscapeString("I "+strings.Join(v.Understood, ", ")+".")
	}
	return text
}

// many is how many answers one reply words in full (ours: with three, four
// lines each fill a screen).
const many = 2

// Each words the answers to one message, each on its own, in brief where they are
// many. What was forgiven in the message stands behind the last.
func Each(as []answer.Answer, v Voice) []string {
	word := HTML
	if len(as) > many {
		word = Brief
	}
	each := v
	each.Understood = nil
	var texts []string
	for i, a := range as {
		if i == len(as)-1 {
			each.Understood = v.Understood
		}
		texts = append(texts, word(a, each))
	}
	return texts
}

// Join puts the words of several answers into one reply; what several of them say
// alike is said once.
func Join(texts []string) string {
	var lines []string
	said := map[string]bool{}
	for _, text := range texts {
		for line := range strings.SplitSeq(text, "\n") {
			if !said[line] {
				lines = append(lines, line)
			}
			said[line] = true
		}
	}
	return strings.Join(lines, "\n")
}

//go:embed templates/*.tmpl
var files embed.FS

// units are what the words of a voice depend on.
type units struct{ acres, inches bool }

// pages holds the templates for each choice of units, ready to run. They call
// each other by way of it, so it is filled when the program starts.
var pages = map[units]*template.Template{}

func init() {
	for _, v := range []Voice{{}, {Acres: true}, {Inches: true}, {Acres: true, Inches: true}} {
		pages[units{v.Acres, v.Inches}] = parse(v)
	}
}

func parse(v Voice) *template.Template {
	return template.Must(template.New("").Funcs(v.funcs()).ParseFS(files, "templates/*.tmpl"))
}

// page is what a template sees.
type page struct {
	A answer.Answer // the answer
	E entry.Entry   // the entry, where it is one
	M answer.More   // what comes beside the entry
	V Voice
}

// render runs the template that bears the answer's name.
func render(a answer.Answer, v Voice) string {
	p := page{A: a, V: v}
	if l, ok := a.(answer.Logged); ok {
		p.E, p.M = l.Entry, l.More
	}
	return run(a.Subject()+".tmpl", p, v)
}

// run runs one template; a template that fails is a fault of ours that a test
// finds, not the reader's: they get the plain word.
func run(name string, data any, v Voice) string {
	var b bytes.Buffer
	if err := pages[units{v.Acres, v.Inches}].ExecuteTemplate(&b, name, data); err != nil {
		return broken(name, err)
	}
	return tidy(b.String())
}

// broken is what is said where a template failed.
func broken(name string, err error) string {
	return template.HTMLEscapeString(fmt.Sprintf("Noted, but I could not word the answer (%s: %v).", name, err))
}

// tidy trims each line, closes gaps and drops empty lines.
func tidy(s string) string {
	var lines []string
	for line := range strings.SplitSeq(s, "\n") {
		line = strings.Join(strings.Fields(line), " ")
		if line != "" {
			lines = append(lines, line)
		}
	}
	return strings.Join(lines, "\n")
}
