package parser

import (
	"fmt"
	"slices"

	"leafround/core/entry"
)

// target reads the scores that stand behind one paddock.
//
//	count = place [ ":" | "," | "-" | "=" ] [ intro ] scores
func (r *reader) target(c *clause, p place, i int) (int, bool) {
	if c.acts&(actsGraze|actsHold|actsCut|actRelease|actOrder|actGoing|actRain|actTemp|actPlace) != 0 {
		return i, false
	}
	k := r.intro(p.next)
	t, next := r.scores(k)
	if t.empty() || r.eventAhead(next) || !r.plausible(p, &t, k) {
		return i, false
	}
	if p.next == i+1 && !p.marked && r.tok(i).shape == number && r.tok(i).value <= 4 && !r.marked(p.next, k) {
		t.unsure("Is the %s at the start the paddock or a score? Please send “p%s” or “%s:” before the scores.",
			p.name, p.name, p.name)
	}
	if p.shorter != "" && r.tok(p.next-1).shape == number && r.tok(p.next-1).value <= 4 && !r.marked(p.next, k) {
		t.unsure("Is that %s, or %s with %s as its first score?", p.name, p.shorter, r.tok(p.next-1).text)
	}
	if r.oneOf(i, "paddocks", "pdks", "fields", "padds", "pads") {
		t.unsure("Is that a leaf count, or a paddock and its area? Please send “paddock %s” for a count, or “paddocks” on a line of its own.", p.name)
	}
	p.role = roleAt
	r.way = roleNone
	if c.count != nil {
		t.n = max(t.n, c.count.n)
	}
	c.pads = append(c.pads, p)
	c.count = &t
	return next, true
}

// sharedTarget reads one average told of several paddocks: "p6-p9 all 1.5".
func (r *reader) sharedTarget(c *clause, list []place, i int) (int, bool) {
	if c.acts != 0 {
		return i, false
	}
	k := r.intro(i)
	t, next := r.scores(k)
	if len(t.said) != 1 || t.doubt != "" || r.eventAhead(next) {
		return i, false
	}
	told := r.leafy(next)
	for j := i; j < k; j++ {
		told = told || r.tok(j).tag == allWord || r.tok(j).tag == eachWord || r.tok(j).text == "both" || r.tok(j).text == ":" || r.tok(j).tag == averageWord
	}
	if !told {
		t.unsure("Is that the score of each of those paddocks?")
	}
	c.pads, c.count, c.shared = list, &t, true
	return next, true
}

// marked tells whether a colon, comma or equals sign parts paddock and scores.
func (r *reader) marked(from, to int) bool {
	for ; from < to; from++ {
		switch t := r.tok(from); t.text {
		case ":", ",", "=", "leaf", "average", "avg", "ave", "av", "at", "counted", "count":
			return true
		}
	}
	return false
}

// plausible refuses a paddock followed by numbers that are paddocks too: "12 13".
func (r *reader) plausible(p place, t *tally, i int) bool {
	if t.doubt != "" || len(t.said) == 0 {
		return true
	}
	if _, known := r.onePad(i, false); !known || t.decimal || p.marked && len(t.said) > 1 {
		return true
	}
	first := float64(t.said[0].Score)
	return first <= 5 || p.marked
}

// intro steps over what may stand between a paddock and its scores.
func (r *reader) intro(i int) int {
	for n := 0; n < 8; n++ {
		t := r.tok(i)
		switch {
		case t.text == ":", t.text == "=", t.text == "~", t.text == "@", t.text == `"`, t.text == "'", t.text == ")", t.text == "," && n == 0, t.text == "-" && !r.negative(i), t.text == "." && !t.glued, t.text == "...":
		case t.shape == word && (t.tag == averageWord || t.tag == leafUnit || t.tag == tillerUnit || t.tag == atWord || t.tag == hedgeWord || introWords[t.text]):
		case (t.text == "came" || t.text == "coming" || t.text == "comes") && r.tok(i+1).tag == inWord:
			i++
		case t.text == "a" && r.tok(i+1).tag == averageWord:
		default:
			return i
		}
		i++
	}
	return i
}

// introWords may stand between a paddock and its scores.
var introWords = wordSet(`is was at got counted count counts stage score scores scored has had about approx all now just
	looking looks only all each both the an reads reading sits sitting giving gave says today were are pulled measured walked sampled still bout been gives`)

// negative tells whether a dash is a minus sign: glued to the number behind it
// and not to what stands before.
func (r *reader) negative(i int) bool {
	t, n := r.tok(i), r.tok(i+1)
	return t.text == "-" && !t.glued && n.glued && n.shape == number
}

// eventAhead tells whether a verb follows that makes the numbers before it
// paddocks: "1, 2, 3 grazed".
func (r *reader) eventAhead(i int) bool {
	for r.tok(i).tag == filler && r.tok(i).shape == word {
		i++
	}
	t := r.tok(i)
	if d, _, ok := r.idiomAt(i); ok {
		return d.acts&^(actCanopy|actWet) != 0
	}
	switch t.tag {
	case grazedWord, grazingWord, movedWord, doneWord, outWord, offWord, sprayWord, fertWord, effWord, sowWord, shutWord, lockWord, toppedWord, cutWord, silageWord, mowWord:
		return t.shape == word
	case inWord:
		return !r.padAhead(i + 1)
	}
	return false
}

// tallyPart reads scores that stand without a paddock before them, and what
// belongs to scores already read.
func (r *reader) tallyPart(c *clause, i int) int {
	if c.count != nil {
		if k := r.tallyTail(c, i); k > i {
			return k
		}
	}
	if c.says() && c.count == nil || c.count != nil && !c.count.empty() || i < r.noScores {
		return i
	}
	k := i
	if t := r.tok(i); t.shape == mark && t.text != "~" && t.text != "." {
		return i
	}
	if len(c.pads) > 0 || c.count != nil || r.tok(i).tag == averageWord || r.tok(i).tag == hedgeWord || r.tok(i).text == "~" || r.tok(i).tag == leafUnit || r.tok(i).tag == tillerUnit {
		k = r.intro(i)
	}
	t, next := r.scores(k)
	if t.empty() {
		return r.tallyHead(c, i)
	}
	if r.eventAhead(next) && len(t.said) < 3 && !t.decimal {
		return i
	}
	if len(t.said) == 1 && !t.decimal && !t.parts && t.skipped.Total() == 0 && !r.leafy(next) && !r.leafyBefore(i) && len(c.pads) == 0 {
		return i // one whole number alone is no score
	}
	if len(t.said) == 0 && len(c.pads) == 0 && c.count == nil {
		r.noScores = next
		return i
	}
	if c.count != nil {
		t.n = max(t.n, c.count.n)
	}
	c.count = &t
	return next
}

// leafy tells whether a word about leaves follows: "3 leaves".
func (r *reader) leafy(i int) bool { return r.tok(i).tag == leafUnit && r.tok(i).shape == word }

// leafyBefore tells whether an average or a leaf word stands before.
func (r *reader) leafyBefore(i int) bool {
	if i == 0 {
		return false
	}
	t := r.tok(i - 1)
	return t.shape == word && (t.tag == averageWord || t.tag == leafUnit || t.text == "stage" || t.text == "score")
}

// tallyHead reads what announces scores: "8 tillers", "counted 10".
func (r *reader) tallyHead(c *clause, i int) int {
	n, k := r.whole(i)
	if k > i && r.tok(k).tag == tillerUnit && n <= 100 {
		if c.count == nil {
			c.count = &tally{}
		}
		c.count.n = n
		return k + 1
	}
	return i
}

// tallyTail reads what stands behind scores: how many tillers, an average,
// yellowing, tillers set aside.
//
//	tail = "n" "=" whole | [ "from" | "over" | "of" ] whole "tillers" | average value | [ count ] yellowing | aside
func (r *reader) tallyTail(c *clause, i int) int {
	t := c.count
	if u := r.tok(i); u.shape == word && len(u.text) == 1 && (u.tag == unknown || u.glued) && u.text != "i" && len(t.said) > 0 {
		t.unsure("What does “%s” mean among the scores? Please say repro, daughter, no remnant or x for a tiller set aside.", u.text)
		return i + 1
	}
	if k := r.tillersTold(t, i); k > i {
		return k
	}
	if k := r.yellowTail(t, i); k > i {
		return k
	}
	u := r.tok(i)
	if u.tag == leafUnit || u.text == "stage" || u.tag == averageWord && !r.isScore(i+1) || u.text == "ish" {
		return i + 1
	}
	if (u.tag == averageWord || u.text == "=") && len(t.said) > 1 {
		if k := r.statedMean(t, i+1); k > i {
			return k
		}
	}
	if u.tag == eachWord || u.text == "per" && r.tok(i+1).tag == tillerUnit {
		return i + 1
	}
	if u.text == "," || u.text == "(" || u.tag == andWord || u.tag == plusWord || u.tag == withWord {
		if k, ok := r.aside(t, i+1); ok {
			return k
		}
		if k := r.tillersTold(t, i+1); k > i+1 {
			return k
		}
		if k := r.yellowTail(t, i+1); k > i+1 {
			return k
		}
		return i
	}
	if u.shape == number && len(t.said) > 0 && !r.isScore(i) {
		return i
	}
	if k, ok := r.aside(t, i); ok {
		return k
	}
	return i
}

// tillersTold reads how many tillers stand behind an average.
func (r *reader) tillersTold(t *tally, i int) int {
	j := i
	u := r.tok(j)
	if u.text == "n" && r.tok(j+1).text == "=" {
		if n, k := r.whole(j + 2); k > j+2 {
			t.n = n
			return k
		}
	}
	prefixed := false
	for u.tag == fromWord || u.text == "over" || u.tag == ofWord || u.tag == onlyWord || u.text == "(" || u.text == "across" || u.text == "off" || u.text == "on" || u.text == "based" || u.text == "out" || u.text == "just" {
		prefixed = prefixed || u.tag == fromWord || u.text == "over" || u.text == "of" || u.text == "across"
		j++
		u = r.tok(j)
	}
	n, k := r.whole(j)
	if k == j || n > 200 || n < 1 {
		return i
	}
	if r.tok(k).tag == tillerUnit {
		t.n = n
		return k + 1
	}
	if prefixed && len(t.said) == 1 && !r.unitAhead(k) {
		t.n = n
		return k
	}
	return i
}

// statedMean reads the average told beside the scores and checks it.
func (r *reader) statedMean(t *tally, i int) int {
	k := r.intro(i)
	a, ok := r.value(k)
	if !ok || r.unitAhead(a.next) {
		return i
	}
	if len(t.said) > 1 {
		mean := scored(t, entry.RemnantBySize).Mean
		if d := float64(mean) - a.value; d > 0.13 || d < -0.13 {
			t.unsure("Those scores average %.2f, not %g. Which is right?", float64(mean), a.value)
		}
	}
	return a.next
}

// yellowTail reads "yellowing at base", "2 yellowing", "oldest leaf dying".
func (r *reader) yellowTail(t *tally, i int) int {
	j := i
	n, k := r.whole(j)
	switch u := r.tok(j); {
	case k > j && k > 0:
		j = k
	case u.tag == allWord, u.text == "both":
		n, j = -1, j+1
	case u.text == "some":
		n, j = 0, j+1
	default:
		n = -2
	}
	for r.tok(j).shape == word && (yellowIntro[r.tok(j).text] || r.tok(j).tag == leafWord || r.tok(j).tag == leafUnit || r.tok(j).tag == withWord || r.tok(j).tag == ofWord) {
		j++
	}
	if r.tok(j).tag != yellowWord {
		return i
	}
	j++
	for r.tok(j).shape == word && (yellowOutro[r.tok(j).text] || r.tok(j).tag == leafWord || r.tok(j).tag == leafUnit || r.tok(j).tag == yellowWord) {
		j++
	}
	switch {
	case n == -2, n == -1:
		t.yellow = -1
	case n == 0:
		t.unsure("How many tillers had the oldest leaf yellowing?")
	default:
		t.yellow = n
	}
	if n > 0 && n > len(t.said) && len(t.said) > 1 {
		t.unsure("There are fewer scores than the %d yellowing. Please send the scores again.", n)
	}
	return j
}

var (
	yellowIntro = wordSet(`them those were was is are the had have has going turning starting to gone a bit with and just its looking being now showing`)
	yellowOutro = wordSet(`off at the base a bit now leaf on out back and already down leaves in it up`)
)

// countOf makes the count entry of a tally, or says what must be asked.
func (r *reader) countOf(p place, t *tally, day entry.Date) (entry.Count, string) {
	if t.doubt != "" {
		return entry.Count{}, t.doubt
	}
	if why := r.outOfRange(p, t); why != "" {
		return entry.Count{}, why
	}
	c := scored(t, r.rule)
	c.Paddock, c.Date, c.Skipped = p.name, day, t.skipped
	if t.n > 0 && len(t.said) > 1 && t.n != len(t.said) && t.n != len(t.said)+t.skipped.Total() {
		return c, fmt.Sprintf("You say %d tillers, but I read %d scores. Please send them again.", t.n, len(t.said))
	}
	return c, ""
}

// outOfRange says so where a score cannot be: more than one leaf above what the
// grass carries.
func (r *reader) outOfRange(p place, t *tally) string {
	top := r.book.live(p.name) + 1
	for _, s := range t.said {
		if v := s.Stage(entry.RemnantBySize); v > top {
			return fmt.Sprintf("A score of %g is more leaves than that grass carries. Is a point missing? Please send the scores again.", float64(v))
		}
	}
	return ""
}

// scored gives the tally's figures as a count by a rule.
func scored(t *tally, rule entry.RemnantRule) entry.Count {
	said := slices.Clone(t.said)
	past := floors(said, t.yellow)
	if len(said) == 1 && t.skipped.Total() == 0 && !t.parts {
		return entry.Count{Mean: said[0].Stage(rule), N: t.n, Past: past}
	}
	c := entry.Count{Said: said}.Scored(rule)
	if !t.parts && past == 0 {
		c.Said = nil
	}
	return c
}

// floors marks the tillers whose score is a floor and gives how many. Where
// yellowing was told of the paddock, it is the tillers at 3 or above, which
// carry all their leaves, or else all of them; where a number was told, the
// highest scores (ours).
func floors(said []entry.Tiller, yellow int) int {
	n := 0
	mark := func(from entry.LeafStage, most int) {
		for i := range said {
			if !said[i].Floor && most > 0 && said[i].Stage(entry.RemnantBySize) >= from {
				said[i].Floor = true
				most--
			}
		}
	}
	switch {
	case yellow == -1:
		mark(3, len(said))
		if !slices.ContainsFunc(said, func(t entry.Tiller) bool { return t.Floor }) {
			mark(-1, len(said))
		}
	case yellow > 0:
		for left := yellow; left > 0; left-- {
			markHighest(said)
		}
	}
	for _, t := range said {
		if t.Floor {
			n++
		}
	}
	return n
}

// markHighest makes the highest score that is no floor yet one.
func markHighest(said []entry.Tiller) {
	best := -1
	for i, t := range said {
		if !t.Floor && (best < 0 || t.Stage(entry.RemnantBySize) > said[best].Stage(entry.RemnantBySize)) {
			best = i
		}
	}
	if best >= 0 {
		said[best].Floor = true
	}
}
