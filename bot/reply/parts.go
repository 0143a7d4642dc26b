package reply

import (
	"html/template"
	"strings"

	"leafround/core/answer"
	"leafround/core/entry"
)

// remark words one remark; caution and advice likewise. Each kind has its part
// in the template of that name.
func (v Voice) remark(r answer.Remark, today entry.Date) template.HTML {
	return v.part("remark "+string(r.Kind), dict("R", r, "Today", today))
}

// remarks words several as one line.
func (v Voice) remarks(rs []answer.Remark, today entry.Date) template.HTML {
	var out []string
	for _, r := range rs {
		out = append(out, string(v.remark(r, today)))
	}
	return line(out)
}

func (v Voice) caution(c answer.Caution) template.HTML {
	return v.part("caution "+string(c.Danger), c)
}

func (v Voice) cautions(cs []answer.Caution) template.HTML {
	var out []string
	for _, c := range cs {
		out = append(out, string(v.caution(c)))
	}
	return line(out)
}

// advice words one advice; one that was said yesterday too in a short form.
func (v Voice) advice(a answer.Advice, today entry.Date) template.HTML {
	name := "advice " + a.Kind
	if a.Again {
		name = "still " + a.Kind
	}
	return v.part(name, dict("A", a, "Today", today))
}

// gap is what advice to slow down or of a shortage asks; once is enough.
const gap = " What feed fills the gap?"

// advices words several, one a line.
func (v Voice) advices(as []answer.Advice, today entry.Date) template.HTML {
	var out []string
	asked := false
	for _, a := range as {
		s := string(v.advice(a, today))
		if asked {
			s = strings.ReplaceAll(s, gap, "")
		}
		asked = asked || strings.Contains(s, gap)
		out = append(out, s)
	}
	return template.HTML(strings.Join(out, "\n")) //nolint:gosec // escaped one by one
}

// line joins sentences, each said once, into one line.
func line(sentences []string) template.HTML {
	var out []string
	said := map[string]bool{}
	for _, s := range sentences {
		s = strings.ReplaceAll(s, "\n", " ")
		if s != "" && !said[s] {
			out = append(out, s)
		}
		said[s] = true
	}
	return template.HTML(strings.Join(out, " ")) //nolint:gosec // escaped sentence by sentence
}

// whys words the reasons of the ranking, of what is left out and of what needs
// counting.
var whys = map[string]string{
	"canopy": "it has closed over", "past": "past its best", "window": "ready", "below": "not ready yet",
	"odd": "the last count can't be right", "unknown": "nothing known yet", "next": "one of the next",
	"near": "nearly ready and not counted since it was grazed", "uncertain": "could be ready or not",
	"middle": "the middle of the round", "last": "the last of the round, to see the pace",
	"shut": "shut in this what-if", "no_mob": "no mob may graze it", "later": "free only much later",
}
