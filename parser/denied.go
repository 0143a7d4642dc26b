package parser

// A sender may first say what was not done: "no counts today sorry 18mm rain",
// "haven't walked, 12 grazed". What follows stands on its own.

// workWords are what a sender owes and may not have done.
var workWords = wordSet(`count counts counted counting walk walked walking score scores tillers measure measured measuring`)

// owes tells whether a clause denies a count or a walk, of no paddock, and says
// nothing else.
func (r *reader) owes(c *clause) bool {
	if c.guard != guardNeg || c.says() || len(c.pads) > 0 || len(c.mobs) > 0 || len(c.nums) > 0 {
		return false
	}
	_, ok := r.has(c.from, c.to, workWords)
	return ok
}

// apologised tells whether an apology ends a clause that owes a count.
func (r *reader) apologised(c *clause, i int) bool {
	if !r.oneOf(i, "sorry", "soz", "sry", "apologies") || c.guard != guardNeg {
		return false
	}
	c.to = i
	return r.owes(c)
}

// countDone tells whether "done" behind scores tells of the counting: "p12 2
// 2.5 2, done yesterday".
func (r *reader) countDone(c *clause, i int) bool {
	t := r.tok(i)
	if t.tag != doneWord || r.tok(i+1).tag == grazingWord || r.tok(i+1).tag == withWord {
		return false
	}
	if c.acts == 0 && len(c.mobs) == 0 && c.resid == nil && !c.stock && (r.countingSaid(c, i) || r.doneListed(c, i)) {
		return true
	}
	return c.count != nil && len(c.count.said) > 1 && c.acts == 0 && len(c.mobs) == 0 && c.resid == nil
}

// doneBefore steps over "done" in front of a paddock and its scores: "done 12 2.5
// 2.5 2".
func (r *reader) doneBefore(c *clause, i int) int {
	if i != r.opening || c.acts != 0 {
		return i
	}
	p, ok := r.onePad(i+1, true)
	if !ok || !p.known || !r.listAt(r.over(p.next, ":", "-", ",")) {
		return i
	}
	c.remarks++
	return i + 1
}

// doneListed tells whether a colon and scores stand behind "done" and its day, so
// that it is the counting that is done: "8 done 18/5: 2 2 1.5".
func (r *reader) doneListed(c *clause, i int) bool {
	k := i + 1
	if m := r.when(k); m.ok {
		k = m.next
	}
	if len(c.pads) != 1 || c.pads[0].role != roleNone {
		return false
	}
	if e := r.sentenceEnd(k, len(r.toks)); r.pulledNext(e + 1) {
		return true // "Back Creek done this morning. Took ten of them: five were 2, …"
	}
	if r.tok(k).text != ":" {
		return false
	}
	list, _ := r.lookAtScores(k + 1)
	return len(list.said) > 1 && list.doubt == ""
}

// pulledNext tells whether a sentence opens with how many tillers were pulled:
// "took ten of them:", "pulled 8 tillers".
func (r *reader) pulledNext(i int) bool {
	i = r.over(i, "i", "we", "and")
	if !r.oneOf(i, "took", "pulled", "counted", "did", "got", "picked") {
		return false
	}
	n, k := r.whole(i + 1)
	if k == i+1 || n < 2 || n > 40 {
		return false
	}
	j := r.over(k, "of", "them", "in", "there", "it", "tillers", "tiller")
	return r.tok(j-1).tag == tillerUnit || r.oneOf(j-1, "them", "there", "it") && (r.tok(j).text == ":" || r.tok(j).text == "," || r.tok(j).text == "-")
}

// countingSaid tells whether what is done is the counting: "paddock 24 count is
// finished", "finished counting 24".
func (r *reader) countingSaid(c *clause, i int) bool {
	if r.oneOf(i+1, "counting", "the", "my") && r.oneOf(r.over(i+1, "the", "my"), "counting", "count", "counts", "tillers", "walk") {
		return true
	}
	for k := c.from; k < i; k++ {
		if r.oneOf(k, "count", "counts", "counting", "tillers") && r.tok(k).shape == word {
			return true
		}
	}
	return false
}

// doneCounting tells whether a clause behind a count says no more than that it
// is done, and when.
func (r *reader) doneCounting(last, c *clause) bool {
	return last.count != nil && len(last.count.said) > 0 && last.family() == famCount &&
		c.has(actDone) && c.acts&^(actDone|actOut) == 0 && len(c.pads) == 0 && len(c.mobs) == 0 && c.resid == nil && c.share == 0 &&
		c.guard == 0 && len(c.nums) == 0 && !r.hasTag(c.from, c.to, grazingWord) && !r.hasTag(c.from, c.to, outWord) && !r.hasTag(c.from, c.to, withWord) &&
		!r.hasTag(c.from, c.to, inWord)
}

// dayOfCount lays the day that a count was done on the count.
func (c *clause) dayOfCount(d *clause) {
	c.to = d.to
	if !d.days.ok {
		return
	}
	if c.days.ok && c.days.day != d.days.day {
		c.unsure("Which day do you mean?")
	}
	c.days, c.future = d.days, d.future
	c.guard |= d.guard & guardFuture
}

// outside tells whether "out" belongs to the weather: "pretty wet out there".
func (r *reader) outside(c *clause, i int) bool {
	if r.tok(i).tag != outWord || len(c.mobs) > 0 {
		return false
	}
	if t := r.tok(i + 1); t.shape == word && t.tag != filler && t.tag != todayWord && t.tag != thisWord && t.tag != jokeWord && t.tag != daytimeWord && t.tag != courtesy && t.tag != remark {
		return false
	}
	if r.oneOf(i+1, "there") && len(c.pads) == 0 {
		return true
	}
	return i > c.from && weatherWords[r.tok(i-1).text]
}

var weatherWords = wordSet(`wet damp cold hot warm cool rainy windy muddy foggy misty frosty snowy sunny raining pouring miserable horrible freezing
	bitter chilly lovely beautiful greasy sloppy slippery humid soaking grim nasty blowing howling baking icy boggy`)

// onlyPerhaps tells whether a count of one paddock is in doubt, but planned by
// nothing: "11 maybe 2.5".
func (r *reader) onlyPerhaps(c *clause) bool {
	if c.family() != famCount || len(c.pads) != 1 || !c.pads[0].known || c.strange > 0 || len(c.count.said) == 0 && c.count.doubt == "" || c.acts != 0 {
		return false
	}
	perhaps := false
	for i := c.from; i < c.to; i++ {
		if t := r.tok(i); t.shape == word && (t.tag == planWord || t.tag == nextWord) {
			if !r.oneOf(i, "maybe", "perhaps") {
				return false
			}
			perhaps = true
		}
	}
	return perhaps
}
