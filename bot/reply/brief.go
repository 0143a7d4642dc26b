package reply

import (
	"html/template"
	"slices"
	"strings"

	"leafround/core/answer"
	"leafround/core/entry"
)

// Brief words one answer of several that one message gets: a count in its first
// two lines, a last grazing in one. What warns is never left out. Other answers
// are worded as [HTML] does.
func Brief(a answer.Answer, v Voice) string {
	lines := strings.Split(render(a, v), "\n")
	switch a := a.(type) {
	case answer.Count:
		lines = lines[:min(2, len(lines))]
		lines = append(lines, v.warnings(a, lines)...)
	case answer.Logged:
		if e, ok := a.Entry.(entry.Setup); ok && e.What == entry.SetLastGrazed && len(a.Remarks) == 0 {
			lines = []string{v.lastGrazed(lines[0], a.Stood)}
		}
	}
	return v.understood(strings.Join(lines, "\n"))
}

// warning are the remarks that a brief answer keeps.
var warning = []answer.RemarkKind{answer.Odd, answer.Held, answer.InIt, answer.Older, answer.ToldTwice, answer.ClosedEarly}

// warnings words what must be said of a count that is not said yet.
func (v Voice) warnings(a answer.Count, said []string) []string {
	kept := slices.DeleteFunc(slices.Clone(a.Remarks), func(r answer.Remark) bool { return !slices.Contains(warning, r.Kind) })
	var out []string
	for _, text := range []template.HTML{v.remarks(kept, a.Today), v.cautions(a.Cautions)} {
		if text != "" && !slices.Contains(said, string(text)) {
			out = append(out, string(text))
		}
	}
	return out
}

// lastGrazed puts where a paddock stands behind when it was last grazed.
func (v Voice) lastGrazed(line string, at *answer.Paddock) string {
	if at == nil || at.Stage == nil || *at.Stage < 0.05 {
		return line
	}
	return strings.TrimSuffix(line, ".") + ", now at " + template.HTMLEscapeString(about(at.Stage, at.To)) + "."
}
