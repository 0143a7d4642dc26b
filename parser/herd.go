package parser

import (
	"slices"
	"strings"
)

// herdPart reads a mob, with its head where told.
//
//	herd = [ count ] mob | mob [ count "head" ]
func (r *reader) herdPart(c *clause, i int) int {
	if k := r.allTimes(i); k > i && c.count == nil {
		return k
	}
	if name, k := r.mob(i); k > i {
		if n := len(c.pads); n > 0 && len(c.mobs) > 0 && c.pads[n-1].role != roleNone && r.way == roleNone && r.heads(k) && !r.joins(i-1) {
			r.cut = true
			return i
		}
		c.mobs, r.herded = append(c.mobs, name), true
		return r.headBehind(c, k)
	}
	n, k := r.whole(i)
	if k == i {
		return i
	}
	if r.tok(k).tag == headUnit {
		c.head = n
		return k + 1
	}
	k = r.over(k, "of", "the", "our", "my")
	name, j := r.mob(k)
	if j == k {
		return i
	}
	c.head = n
	c.mobs = append(c.mobs, name)
	return j
}

// herdAhead tells whether stock are named at i, "the" set aside.
func (r *reader) herdAhead(i int) bool {
	i = r.over(i, "the", "our")
	_, k := r.mob(i)
	return k > i
}

// headBehind reads "x 90" and "(90)" behind a mob.
func (r *reader) headBehind(c *clause, i int) int {
	t, n := r.tok(i), r.tok(i+1)
	if n.shape != number || n.decimal || n.value >= 1e6 {
		return i
	}
	switch {
	case t.tag == timesWord && t.shape == word:
		c.head = int(n.value)
		return i + 2
	case t.text == "(" && r.tok(i+2).text == ")":
		c.head = int(n.value)
		return i + 3
	}
	return i
}

// registeredMob gives the longest registered mob that starts at a token.
func (r *reader) registeredMob(i int) (found string, next int) {
	if !r.book.opens[r.tok(i).text] {
		return "", i
	}
	var fold strings.Builder
	next = i
	for k := i; k < i+4; k++ {
		t := r.tok(k)
		if t.shape != word && t.shape != number {
			break
		}
		foldToken(&fold, t)
		if m, ok := r.book.mobs[fold.String()]; ok {
			found, next = m, k+1
		}
	}
	return found, next
}

// mob reads the name of a mob; "cows" and "herd" give "" unless registered.
func (r *reader) mob(i int) (string, int) {
	t := r.tok(i)
	if t.shape != word {
		return "", i
	}
	if m, k := r.registeredMob(i); k > i {
		return m, k
	}
	u := r.tok(i + 1)
	if r.girls(i) {
		return "", i + 1
	}
	if u.shape == word {
		if t.text == "young" && u.text == "stock" {
			return "young stock", i + 2
		}
		if t.text == "dry" && (u.text == "cows" || u.text == "stock") {
			return "dries", i + 2
		}
	}
	switch t.tag {
	case mobWord:
		if t.text == "youngstock" {
			return "young stock", i + 1
		}
		return t.text, i + 1
	case looseMob:
		if r.numberedMob(i) && r.tok(i+2).shape == word {
			return t.text + " " + u.text, i + 2
		}
		if u.tag == mobWord {
			return "", i // "mob heifers"
		}
		return "", i + 1
	}
	return "", i
}

// girls tells whether "the girls" are the cows: "put the girls in 12", "girls
// into 12". Behind a greeting they are people.
func (r *reader) girls(i int) bool {
	return r.oneOf(i, "girls", "ladies") && (r.oneOf(i-1, "the", "our", "my") && r.tok(i-2).tag != ofWord && r.tok(i-2).tag != withWord || r.heads(i+1) && r.tok(i-1).tag != courtesy && r.tok(i-1).tag != daytimeWord)
}

// numberedMob tells whether "mob 2" or "herd b" stands at i.
func (r *reader) numberedMob(i int) bool {
	u := r.tok(i + 1)
	return r.oneOf(i, "mob", "herd", "group") &&
		(u.shape == number && !u.decimal && u.value >= 1 && u.value < 10 || u.shape == word && len(u.text) == 1 && u.tag == unknown)
}

// mobAlone reads a mob where nothing else can stand, so that "mob 2" is one
// without a word behind it.
func (r *reader) mobAlone(i int) (string, int) {
	if name, k := r.mob(i); name != "" || !r.numberedMob(i) {
		return name, k
	}
	return r.tok(i).text + " " + r.tok(i+1).text, i + 2
}

// mobOfAll lays a mob that stands alone behind grazings without one on all of
// them: "3 grazed on the 12th, 4 on the 13th. All milkers", "steers all three
// times".
func (r *reader) mobOfAll(out []clause, c *clause) bool {
	if len(c.mobs) != 1 || c.mobs[0] == "" || c.says() || len(c.pads) > 0 || c.guard != 0 || c.strange > 0 || c.remarks > 0 || len(c.nums) > 0 || c.head > 0 || c.days.ok ||
		c.share != 0 || c.until != 0 || c.spell != 0 || c.trouble || c.event || c.doubt != "" {
		return false
	}
	if n := len(out); c.colon || n > 0 && out[n-1].sentence != c.sentence && !r.endsSentence(c.to-1) && !r.endsSentence(c.to) && r.tok(c.to).shape != end {
		return false // "9 grazed. milkers - out of 12, into 13"
	}
	first := len(out)
	for first > 0 && (first == len(out) || out[first-1].sentence == out[len(out)-1].sentence) && out[first-1].family() == famGraze && out[first-1].guard == 0 && len(out[first-1].pads) > 0 && len(out[first-1].mobs) == 0 {
		first--
	}
	if first == len(out) || len(out)-first == 1 && out[first].sentence == c.sentence {
		return false
	}
	for n := first; n < len(out); n++ {
		out[n].mobs = c.mobs
	}
	return true
}

// bothIn lays the mobs that came out of their paddocks on the one where they all
// went: "calves out of 3, steers out of 2, both in 12". Where it is not plain
// which they are, it asks.
func (r *reader) bothIn(out []clause, c *clause) {
	if c.family() != famGraze && (c.says() || !c.only(roleAt)) || c.guard != 0 || len(c.pads) == 0 || c.has(actOut|actGrazed) || mobsOf(c)[0] != "" || !r.hasText(c.from, c.pads[0].at, "both") && !r.hasText(c.from, c.pads[0].at, "all") {
		return
	}
	if len(c.mobs) > 0 && !r.hasText(c.from, c.pads[0].at, "mobs") && !r.hasText(c.from, c.pads[0].at, "herds") {
		return // "all the cows in 9"
	}
	var mobs []string
	told, plain := 0, true
	for n := len(out) - 1; n >= max(0, len(out)-mostTogether) && out[n].family() == famGraze && out[n].guard == 0 && out[n].sentence >= c.sentence-1; n-- {
		own := mobsOf(&out[n])
		for _, m := range own {
			plain = plain && m != "" && !slices.Contains(mobs, m) && out[n].comesOut()
		}
		mobs = slices.Concat(own, mobs)
		told++
	}
	if told < 2 {
		return
	}
	if !plain {
		for _, m := range mobs {
			if m != mobs[0] {
				c.unsure("Which mobs went into " + c.pads[0].name + "?")
			}
		}
		return
	}
	c.mobs = mobs
}

// mostTogether is how many statements "both" and "all" speak of (ours).
const mostTogether = 20

// allTimes steps over "all three times", "both times", "each time".
func (r *reader) allTimes(i int) int {
	k := i
	for k < i+3 && r.oneOf(k, "all", "the", "on", "for", "of") {
		k++
	}
	if _, n := r.whole(k); n > k && r.oneOf(n, "times", "days", "occasions") && r.oneOf(i, "all", "on") {
		return n + 1
	}
	if r.oneOf(k, "both", "each", "every") && r.oneOf(k+1, "time", "times", "occasion", "occasions") {
		return k + 2
	}
	return i
}
