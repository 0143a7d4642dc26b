package parser

// How spray, fertiliser, effluent came onto a paddock, and what it was for, is
// said in many words that change nothing: "pumped effluent on 2", "flicked some
// urea on 12", "19 sprayed for capeweed".

// spreadVerbs tell how something was spread; they are harmless where it is
// named in the same breath.
var spreadVerbs = wordSet(`pumped irrigated tankered injected broadcast broadcasted dribbled chucked flicked threw flung slung shot blew knifed ran
	emptied hosed trailed splashed squirted banged whacked lashed slapped dumped tipped trickled boom boomsprayed knapsack sprinkled scattered drove
	towed umbilical splashplate dragged pulled hauled`)

// spreadTools are what it is spread with, and sources where it comes from. A tool
// stands for the work only beside a verb of it: "effluent irrigator on 12" may
// tell where the thing is.
var (
	spreadTools = wordSet(`pods pod irrigator irrigators gun boom hose umbilical tanker spreader truck trucks sprayer plane chopper helicopter`)
	sources     = wordSet(`dairy pond sump cowshed shed chicken poultry hog pig turkey hen horse`)
)

// spreadTool tells whether a word is no more than what was spread with, or its
// source.
func (r *reader) spreadTool(c *clause, i int) bool {
	t := r.tok(i)
	if t.shape != word || !spreadTools[t.text] && !sources[t.text] || !r.spreadBehind(c, i-1) {
		return false
	}
	_, verb := r.has(max(c.from, i-8), i, spreadVerbs)
	return sources[t.text] || verb || r.hasText(max(c.from, i-8), i, "through") || r.hasText(max(c.from, i-8), i, "with")
}

// spreading steps over a verb of spreading where what was spread stands in the
// next words, or is told already.
//
//	spreading = verb [ "out" | "on" ] { word } ( spray | fertiliser | effluent )
func (r *reader) spreading(c *clause, i int) int {
	t := r.tok(i)
	if t.shape != word || !spreadVerbs[t.text] {
		return i
	}
	if r.oneOf(i, "ran") && r.oneOf(i+1, "out") {
		return i // "ran out of urea"
	}
	if c.has(actSpray | actFert | actEff) {
		c.remarks++
		return i + 1
	}
	for k := i + 1; k < i+7; k++ {
		u := r.tok(k)
		switch {
		case u.shape == newline, u.shape == mark && u.text != ",", u.shape == end:
			return i
		case u.shape != word:
		case u.tag == sprayWord, u.tag == fertWord, u.tag == effWord:
			c.remarks++
			return r.over(i+1, "out", "some", "the", "a", "bit", "of", "lot", "load")
		}
	}
	return i
}

// sprayedFor steps over what was sprayed against: "for capeweed", "for dock and
// buttercup", "against red legged mites".
func (r *reader) sprayedFor(c *clause, i int) int {
	t := r.tok(i)
	if !c.has(actSpray) || t.shape != word || t.tag != forWord && !r.oneOf(i, "against") {
		return i
	}
	k := r.over(i+1, "the", "some", "all", "those", "bloody", "a", "bit", "of", "broadleaf", "broad", "leaf", "autumn", "spring", "early")
	first := k
	for n := 0; n < 6; n++ {
		u := r.tok(k)
		if n > 0 && k > first && (u.tag == andWord || u.text == "," || u.text == "&" || u.text == "/") && r.pest(k+1) {
			k += 2
			continue
		}
		if !r.pest(k) {
			break
		}
		k++
	}
	if k == first {
		return i
	}
	c.remarks++
	return k
}

// pest tells whether a word may name what is sprayed: nobody knows it, or it is
// one of the weeds that are worth a note.
func (r *reader) pest(i int) bool {
	t := r.tok(i)
	if t.shape != word || len(t.text) < 3 || r.padAhead(i) {
		return false
	}
	return t.tag == unknown && !times[t.text] && !r.oneOf(i, "weekend", "week") || r.oneOf(i, "weeds", "weed", "clover", "thistles", "thistle", "ragwort", "docks", "gorse", "grubs", "rape", "rushes", "poa")
}

// spreadBehind tells whether an amount is of what was spread: "3 tonne of lime
// on 22".
func (r *reader) spreadBehind(c *clause, i int) bool {
	if c.has(actSpray | actFert | actEff) {
		return true
	}
	t := r.tok(r.over(i, "of", "the"))
	if u := r.tok(i + 2); (spreadTools[r.tok(i+1).text] || sources[r.tok(i+1).text]) && u.shape == word && (u.tag == effWord || u.tag == fertWord) {
		return true // "dairy effluent"
	}
	return t.shape == word && (t.tag == sprayWord || t.tag == fertWord || t.tag == effWord)
}
