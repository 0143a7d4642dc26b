package parser

import "strings"

// comesLater tells whether "in the morning" and the like, with no verb in the past
// beside it, may be a time to come: "steers to West 80 in the morning".
//
//	later = "in" "the" ( "morning" | "arvo" | "evening" | … )
func (r *reader) comesLater(c *clause) bool {
	if c.has(actGrazed) || c.guard != 0 || c.days.ok && (c.days.day != r.today || !c.days.vague) {
		return false
	}
	switch c.family() {
	case famGraze, famCut, famHold:
	default:
		return false
	}
	found := false
	for i := c.from; i < c.to; i++ {
		t := r.tok(i)
		if t.shape != word {
			continue
		}
		if t.tag == daytimeWord && r.oneOf(i-1, "the") && r.oneOf(i-2, "in") {
			found = found || strings.HasPrefix(t.text, "morn") || r.hour < 12 || r.hour < 16 && strings.HasPrefix(t.text, "eve")
			continue
		}
		if pastForm(t.text) {
			return false
		}
	}
	return found
}
