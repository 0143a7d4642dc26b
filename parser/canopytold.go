package parser

// What tells of a closed canopy beside other words.

// overNotShut takes "closed up" before "no dirt to be seen" as the canopy's.
func (r *reader) overNotShut(last, c *clause) bool {
	if last.acts != actShut || c.acts != actCanopy || last.sentence != c.sentence || len(last.pads) == 0 || len(c.pads)+len(c.mobs)+len(last.mobs) > 0 || last.guard|c.guard != 0 ||
		last.until != 0 || last.spell != 0 || c.until != 0 || c.spell != 0 || c.days.ok || last.count != nil || !r.hasText(last.from, last.to, "closed") && !r.hasText(last.from, last.to, "closing") {
		return false
	}
	last.acts = actCanopy
	last.remarks += c.remarks + c.strange
	return true
}

// closedRemark steps over "anywhere" behind what tells that a canopy has closed:
// "can't see dirt anywhere".
func (r *reader) closedRemark(c *clause, i int) int {
	if !c.has(actCanopy) {
		return i
	}
	c.remarks++
	return i + 1
}
