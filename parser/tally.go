package parser

// target reads the scores that stand behind one paddock.
//
//	count = place [ bracketed ] [ ":" | "," | "-" | "=" ] [ intro ] scores
func (r *reader) target(c *clause, p place, i int) (int, bool) {
	if c.acts&(actsGraze|actsHold|actsCut|actRelease|actOrder|actGoing|actRain|actTemp|actPlace) != 0 || r.rangeAt(p.next) {
		return i, false
	}
	if r.listedPads(p, i) {
		return i, false
	}
	k := r.bracketedDay(p.next)
	if k == p.next {
		k = r.described(k)
	}
	if k == p.next {
		k = r.gist(k)
	}
	if j := r.over(k+1, ":", "-", ","); r.tok(k).tag == doneWord && r.listAt(j) {
		k = j // "12 done: 2.5 2 2"
	}
	told := k
	also := 0
	if n, j := r.alsoTillers(r.over(k, ",", "-", "(")); n > 0 {
		also, k = n, r.over(j, ")", "-")
		if k == j {
			k = r.over(j, ",")
		}
	}
	k = r.intro(k)
	if r.howManyTold(k) {
		return i, false
	}
	t, next := r.scores(k)
	if t.empty() && len(c.mobs) == 0 {
		if v, j := r.vaguely(p.next); j > p.next {
			t, next = v, j
		}
	}
	t.n = max(t.n, also)
	if t.empty() && r.negative(k) && r.isScore(k+1) {
		t, next = r.scores(k + 1)
		t.unsure("A leaf score cannot be below nothing. Please send the scores again.")
	}
	if t.empty() || r.eventAhead(next) && !(t.decimal && len(t.said) > 1) || !r.plausible(p, &t, k) {
		return i, false
	}
	if n := r.tok(k); n.tag == numberWord && pullWords[r.tok(k-1).text] && !r.oneOf(k-1, "got") && r.tok(k+1).text == "," && r.tok(k+2).shape == number && t.decimal && len(t.said) > 3 {
		t.unsure("Is that “%s” a score, or how many tillers? I read %d scores behind it. Please send them again.", n.text, len(t.said)-1)
	}
	if len(t.said) == 1 && !t.decimal && !t.parts && r.tok(next).tag == atWord && r.isScore(next+1) {
		t.unsure("Are those %s's tillers, or averages of several paddocks? Please put a colon behind the paddock, or “p” before each.", p.name)
	}
	if r.oneOf(i-1, "managed", "manage", "only", "after") && !p.marked && p.next == i+1 && int(r.tok(i).value) == len(t.said) {
		t.unsure("Which paddock are those scores from?") // "only managed 3: 2 2.25 1.75"
	}
	if doubt, ok := r.unknownName(i); ok {
		t.unsure("%s", doubt)
	}
	p.marked = p.marked || r.tok(i-1).tag == inWord && k > p.next // "in 2 was 2.4"
	if p.next == i+1 && !p.marked && r.tok(i).shape == number && r.tok(i).value <= 4 && (!r.marked(p.next, k) || r.listOfCommas3(i)) {
		t.unsure("Is the %s at the start the paddock or a score? Please send “p%s” or “%s:” before the scores.",
			p.name, p.name, p.name)
		r.offer(t.doubt, i, p.next, "paddock "+p.name+":", "")
		if r.Recent != "" {
			r.offerScores(t.doubt, r.Recent, i)
		}
	}
	if t.doubt == "" && !p.marked && p.next == i+1 && r.tok(i).shape == number && r.tok(i).value <= 4 && r.tok(p.next).text == "," && !r.opensList(i) {
		t.unsure("Is the %s there the paddock or a score? Please send “p%s” or “%s:” before the scores.", p.name, p.name, p.name)
	}
	if !t.decimal && len(t.said) < 4 && !p.marked && r.tok(p.next).text == "," && r.hasTag(k, next, andWord) && r.tok(i).shape == number {
		t.unsure("Are those scores of %s, or more paddocks? Please send “p%s” before the scores.", p.name, p.name) // "walked 12, 3 and 4"
	}
	if s := r.tok(k + 1); s.text == "/" && s.glued && !c.days.ok && r.isScore(k+3) && r.tok(k+3).value >= 1 && r.isDayOrPart(k) {
		t.unsure("Is %s a score or the day? Please send the day before the paddock, and scores with points.", r.source(k, k+3))
	}
	if p.shorter != "" && r.tok(p.next-1).shape == number && r.tok(p.next-1).value <= 4 && !r.marked(p.next, k) {
		t.unsure("Is that %s, or %s with %s as its first score?", p.name, p.shorter, r.tok(p.next-1).text)
		r.offer(t.doubt, i, p.next, "paddock "+p.name+":", "")
		r.offer(t.doubt, i, p.next-1, "paddock "+p.shorter+":", "")
	}
	if r.oneOf(i, "paddocks", "pdks", "fields", "padds", "pads") && !r.leafy(next) && !(r.oneOf(k-1, "at", "on", "around", "about") && r.oneOf(p.next, "are", "all", "is", "both")) {
		t.unsure("Is that a leaf count, or a paddock and its area? Please send “paddock %s” for a count, or “paddocks” on a line of its own.", p.name)
	}
	if r.way != roleNone && c.count == nil && len(t.said) == 1 && !t.decimal && !r.leafy(next) && !r.leafyBefore(k) {
		t.unsure("Is that a leaf count of %s, or are stock in it?", p.name) // "in 12 at 3"
	}
	p.role = roleAt
	r.way = roleNone
	if c.count != nil {
		t.n = max(t.n, c.count.n)
	}
	if r.hasTag(p.next, k, todayWord) && !c.days.ok {
		c.days = moment{day: r.today, next: k, ok: true} // "12 today 2 2.5"
	}
	if r.bracketedDay(p.next) == told && told > p.next {
		r.whenPart(c, p.next+1)
	}
	c.pads = append(c.pads, p)
	c.count, c.before = t.kept(), c.strange
	return next, true
}

// isDayOrPart tells whether "3/4" before scores may be a day as well as a part
// of a leaf: a day of the last fortnight, or a part that nobody judges by.
func (r *reader) isDayOrPart(i int) bool {
	_, _, ok := r.slashed(i)
	return ok && (oddParts[r.tok(i+2).text] || r.lately(i, 14))
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
	if !told && !r.ranged(list, i) {
		t.unsure("Is that the score of each of those paddocks?")
	}
	c.pads, c.count, c.shared = list, t.kept(), true
	r.named += len(list)
	return next, true
}

// rangeAt tells whether a paddock behind a dash makes a range with the one before,
// whose one average follows: "5-7 are all at two leaves".
func (r *reader) rangeAt(i int) bool {
	t, n := r.tok(i), r.tok(i+1)
	if t.text != "-" || n.shape != number || n.decimal || n.value < 2 || !r.bears(n.text) || n.value <= r.tok(i-1).value {
		return false
	}
	k := r.over(i+2, "are", "all", "is", "were", "both", "at", "about", "around", "on", "each", "roughly", "sitting", "looking", "just")
	if k == i+2 || r.tok(k-1).shape != word || !r.isScore(k) || r.tok(k).value > 5 {
		return false
	}
	a, ok := r.value(k)
	return ok && !r.isScore(a.next) && r.tok(a.next).text != ","
}

// ranged tells whether the paddocks up to token i were told as a range of
// numbers: "p6-p9".
func (r *reader) ranged(list []place, i int) bool {
	for j := i - 1; len(list) > 2 && j >= 0 && j > i-5; j-- {
		if r.tok(j).text == "-" {
			return true
		}
	}
	return false
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
		case t.text == ":", t.text == "=", t.text == "~", t.text == "@", t.text == `"`, t.text == "'", t.text == ")", t.text == "," && (n == 0 || r.tok(i-1).text == ")"), t.text == "-" && !r.negative(i), t.text == "." && !t.glued, t.text == "...":
		case t.shape == word && (t.tag == averageWord || t.tag == leafUnit || t.tag == tillerUnit || t.tag == atWord || t.tag == hedgeWord || t.tag == grassWord && r.tok(i-1).text == "the" || introWords[t.text]):
		case r.oneOf(i, "came", "come", "comes", "averages", "averaged", "works", "worked") && r.oneOf(i+1, "to", "up", "out") && r.isScore(r.over(i+2, "at", "to", "as", "about")) && !r.oneOf(i-1, "stock", "cows"):
			i++
		case r.oneOf(i, "came", "coming", "comes", "come") && r.cameTo(i) > i:
			i = r.cameTo(i) - 1
		case r.oneOf(i, "it", "they", "these") && r.oneOf(i+1, "was", "were", "came") && r.tok(i-1).text == "," && r.listedScores(i+2):
			i++ // "three in 12, they were 1, 1.25 and 0.75"
		case t.text == "a" && r.tok(i+1).tag == averageWord:
		case t.text == "i" && r.oneOf(i+1, "make", "got", "get", "had", "counted", "count"):
		case r.oneOf(i, "bang", "spot", "dead", "smack", "right") && r.oneOf(i+1, "on"), r.oneOf(i, "right") && r.oneOf(i+1, "around", "about", "at"):
			i++
		case r.oneOf(i, "make", "made") && r.oneOf(i+1, "it"):
			i++
		case r.onlyAverage(i) > i:
			return r.onlyAverage(i)
		case t.text == "running" && r.runsLeaves(i+1):
		case r.oneOf(i, "sat") && r.oneOf(i+1, "on", "around", "about") && r.tok(i+2).decimal && r.tok(i+2).value <= 5:
		case t.tag == onWord && t.shape == word && r.tok(i+1).decimal && r.isScore(i+1) && r.tok(i+1).value <= 5:
		default:
			return i
		}
		i++
	}
	return i
}

// onlyAverage steps over "I only kept the average," before it.
func (r *reader) onlyAverage(i int) int {
	if !r.oneOf(i, "i", "ive", "we", "weve", "only", "just", "kept", "wrote", "jotted", "have", "saved", "noted") {
		return i
	}
	k := r.over(i, "i", "ive", "we", "weve", "only", "just", "kept", "wrote", "jotted", "have", "had", "got", "saved", "noted", "down", "took", "did", "the", "an", "a", "rough", "overall")
	if r.tok(k).tag != averageWord {
		return i
	}
	if k = r.over(k+1, ",", ":", "-", "=", "of", "is", "was", "at", "about", "around", "which"); r.isScore(k) && r.tok(k).value <= 5 {
		return k
	}
	return i
}

// listedScores tells whether two scores or more stand at a token.
func (r *reader) listedScores(i int) bool {
	a, ok := r.value(i)
	return ok && r.isScore(i) && r.isScore(r.listSeparator(a.next, true))
}

// runsLeaves tells whether a number of leaves follows "running": "creek bottom
// running about 3.5 leaves".
func (r *reader) runsLeaves(i int) bool {
	i = r.over(i, "at", "about", "around", "roughly")
	a, ok := r.value(i)
	return ok && (r.leafy(a.next) || r.tok(a.next).tag == averageWord)
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
	for last := i + longestRun; i < last && r.tok(i).tag == filler && r.tok(i).shape == word; {
		if d, _, ok := r.idiomAt(i); ok && d.none {
			return false // "im off"
		}
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
	if k > i && r.howManyTold(k) {
		return i
	}
	t, next := r.scores(k)
	if t.empty() {
		return r.tallyHead(c, i)
	}
	if r.eventAhead(next) && len(t.said) < 3 && !t.decimal {
		return i
	}
	if len(t.said) == 1 && !t.decimal && !t.parts && t.skipped.Total() == 0 && !r.leafy(next) && !r.leafyBefore(i) && len(c.pads) == 0 && !(r.paired && r.pairAt(k)) {
		return i // one whole number alone is no score
	}
	if b := r.tok(i - 1); (len(t.said) == 1 && !t.decimal || len(t.said) == 2 && r.tok(i+1).tag == partWord) && !t.parts && i > c.from && k == i && !r.leafy(next) && b.shape == word && numberedThings[b.text] && !c.names(i-1) {
		return i // "12 2 2.5 2, row 3"
	}
	if len(t.said) == 0 && len(c.pads) == 0 && c.count == nil {
		r.noScores = next
		return i
	}
	if c.count != nil {
		t.n = max(t.n, c.count.n)
	}
	c.count = t.kept()
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

// tallyHead reads what announces scores: "8 tillers", "average of 12 tillers".
func (r *reader) tallyHead(c *clause, i int) int {
	j := i
	if r.tok(i).tag == averageWord {
		j = r.over(i+1, "of", "for", "from", "over", "across")
	}
	n, k := r.whole(j)
	if k > i && r.tok(k).tag == tillerUnit && n <= 100 {
		if c.count == nil {
			c.count = &tally{}
		}
		c.count.n = n
		j := k + 1
		for r.oneOf(j, ",", ":", "-", ")", "=") && !r.negative(j) {
			j++
		}
		if r.isScore(r.intro(j)) {
			return j
		}
		return k + 1
	}
	return i
}
