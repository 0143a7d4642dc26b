package parser

// unsent steps over a clause that only says that what stands before it was not
// sent in time: "11 mm yesterday which I forgot to tell you lot about", "that
// never got written down". It denies nothing.
//
//	unsent = ( "which" | "that" | "but" | "and" ) [ who ] ( "forgot" | "never" | "didnt" | … ) [ "to" ] [ told ] { who | where }
func (r *reader) unsent(c *clause, i int) int {
	if !c.says() || c.guard != 0 || r.asking {
		return i
	}
	k := r.unsentAt(i)
	if k > i {
		c.remarks++
	}
	return k
}

// unsentAt gives the token behind such words, up to the end of their piece.
func (r *reader) unsentAt(i int) int {
	k := r.over(i, "and", "but", "which", "that", "sorry")
	who := r.over(k, "i", "ive", "id", "we", "weve", "nobody", "never", "he", "she", "they", "it", "just", "had", "have", "clean", "completely", "only", "somehow")
	never := who > k && r.oneOf(who-1, "never", "nobody") || r.oneOf(k, "nobody", "never")
	k = who
	switch {
	case r.oneOf(k, "forgot", "forgotten", "neglected", "failed", "omitted", "meant"):
		k = r.over(k+1, "all", "to", "about", "then")
		never = !r.oneOf(k-1, "meant") && !r.oneOf(who, "meant") || r.oneOf(k-1, "to")
		if !unsentVerbs[r.tok(k).text] {
			if r.oneOf(k-1, "to") || r.oneOf(who, "meant") {
				return i
			}
			break
		}
		k++
	case r.oneOf(k, "didnt", "havent", "hadnt", "wasnt", "hasnt"):
		k = r.over(k+1, "get", "got", "round", "around", "to", "been", "ever", "yet")
		if !unsentVerbs[r.tok(k).text] {
			return i
		}
		never = true
		k++
	case never && (unsentVerbs[r.tok(k).text] || r.oneOf(k, "got") && unsentVerbs[r.tok(k+1).text]):
		k = r.over(k, "got") + 1
	default:
		return i
	}
	if !never {
		return i
	}
	for last := k + longestRun; k < last && unsentTails[r.tok(k).text]; {
		k++
	}
	if t := r.tok(k); t.shape == end || t.text == "," || t.text == ")" || r.endsSentence(k) {
		return k
	}
	return i
}

// meantTo reads "I meant to send them to 13": it did not happen. What was meant
// to be sent to the group is no plan.
func (r *reader) meantTo(c *clause, i int) int {
	if r.oneOf(i, "meant") && r.oneOf(i+1, "to") && r.oneOf(i+2, "say", "write", "type", "text", "put") && r.padAhead(i+3) && r.padBefore(i) {
		c.unsure("Which paddock do you mean? Please send it again.") // "12 to 13, I meant to say 14"
		return i + 3
	}
	if !r.oneOf(i, "meant", "wanted", "intended") || !r.oneOf(i+1, "to") || !r.oneOf(i+2, "send", "put", "move", "shift", "take", "bring", "leave", "let", "have", "graze", "spray") {
		return i
	}
	k := r.over(i+3, "all", "the", "our")
	if _, j := r.mob(k); j == k && !r.oneOf(k, "them", "em", "him") && !r.padAhead(k) {
		return i
	}
	c.guard |= guardPlan
	return i + 3
}

var (
	unsentVerbs = wordSet(`send sent tell told text texted log logged put write wrote written mention mentioned report reported enter entered post posted message
		messaged record recorded note noted say said pass share shared upload`)
	unsentTails = wordSet(`it in up down on here you you's ye yous lot guys all about that them this the group chat bot log book board sheet anyone anybody everyone folks
		team lads boss dad then at time sorry of to along either before now yet till until again thread app diary page them`)
)
