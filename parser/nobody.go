package parser

// nobodyPart reads that nothing may go into a paddock until a day or for so many
// days: "nobody in there until 11/15", "no cows in 12 till friday", "nothing
// grazes it before the 5th". Without an end it may tell how things stand.
//
//	nobody = ( "nobody" | "nothing" | "no" ( stock | herd ) | "dont" "let" "anything" ) [ "to" ] [ "go" | "put" … "a" "hoof" | … ]
//	         ( "in" | "on" | "into" | "near" | "graze" | … ) { word } limit
func (r *reader) nobodyPart(c *clause, i int) int {
	t := r.tok(i)
	if t.shape != word || t.tag != negWord && t.tag != notWord && !r.oneOf(i, "nobodys", "nothings") || c.guard&^guardHear != 0 || c.count != nil {
		return i
	}
	k := i + 1
	switch {
	case r.oneOf(i, "nobody", "none", "nothing", "nothin", "nobodys", "nothings"):
		if r.oneOf(k, "'") && r.oneOf(k+1, "s") {
			k += 2
		}
	case r.oneOf(i, "not") && r.oneOf(k, "a", "one", "an", "single"):
		k = r.over(k, "a", "one", "an", "single")
		if _, j := r.mob(k); j > k {
			k = j
		} else if r.oneOf(k, "hoof", "foot", "animal", "beast", "soul", "thing") {
			k++
		} else {
			return i
		}
	case r.oneOf(i, "no") && r.oneOf(k, "one", "stock", "animals", "livestock", "hoof", "hooves", "beast", "beasts", "mouths"):
		k++
	case r.oneOf(i, "no"):
		name, j := r.mob(k)
		if j == k || name != "" {
			return i // "no heifers in 12 until friday": the others may
		}
		k = j
	case r.oneOf(i, "dont") && r.oneOf(k, "let", "have") && r.oneOf(k+1, "anything", "anyone", "anybody", "stock", "animals", "any"):
		k = r.over(k+2, "stock", "animals")
	default:
		return i
	}
	j := r.over(k, "to", "be", "go", "goes", "going", "is", "are", "allowed", "put", "back", "at", "all", "shall", "should", "must", "get", "gets", "comes", "steps", "sets")
	if r.hoofSaid(j) > j {
		j = r.hoofSaid(j)
	}
	u := r.tok(j)
	switch {
	case u.shape != word:
		return i
	case u.tag == inWord, u.tag == onWord, u.tag == intoWord, r.oneOf(j, "near", "past", "inside"):
	case r.oneOf(j, "graze", "grazes", "touch", "touches", "eat", "eats", "enter", "enters") && r.oneOf(j+1, "it", "that", "there", "this"):
	default:
		return i
	}
	for n := j + 1; n < j+8; n++ {
		u := r.tok(n)
		if u.shape == end || u.shape == newline || u.shape == mark {
			return i
		}
		if u.tag == untilWord || u.tag == forWord && r.spellAt(n) || u.text == "before" && r.dayToCome(n+1) {
			c.acts |= actHold
			r.heldAt(j + 1)
			return r.over(j+1, "there", "it", "that", "this")
		}
	}
	return i
}

// firstGrazing reads "first grazing the 5th" behind a spraying or a sowing: until
// then the paddock is held.
//
//	firstGrazing = ( "first" | "earliest" ) "grazing" [ "is" | "on" | … ] day
func (r *reader) firstGrazing(c *clause, i int) int {
	if r.tok(i+1).tag != grazingWord || c.until != 0 || len(c.mobs) > 0 {
		return i
	}
	held := false
	for k := i - 1; k >= 0 && k > i-longestPiece && !r.endsSentence(k) && !held; k-- {
		t := r.tok(k)
		held = t.shape == word && (t.tag == sprayWord || t.tag == fertWord || t.tag == effWord || t.tag == sowWord)
	}
	if !held {
		return i
	}
	k := r.over(i+2, "is", "on", "from", "will", "be", "about", "around", "not", "before", "until", "till")
	was := r.ahead
	r.ahead = true
	m := r.day(k)
	r.ahead = was
	if !m.ok || m.day <= r.today {
		c.guard |= guardPlan
		return i + 2
	}
	c.until = m.day
	return m.next
}

// hoofSaid steps over "so much as a hoof", "a foot" before where it may not go.
func (r *reader) hoofSaid(i int) int {
	k := r.over(i, "so", "much", "as", "a", "one", "single", "even", "any")
	if r.oneOf(k, "hoof", "foot", "toe", "hooves", "mouth", "stock", "animal", "beast", "nose") {
		return k + 1
	}
	return i
}

// dayToCome tells whether a day that lies ahead is told at a token.
func (r *reader) dayToCome(i int) bool {
	was := r.ahead
	r.ahead = true
	m := r.day(i)
	r.ahead = was
	return m.ok && m.day > r.today
}

// spellAt tells whether so many days or weeks are told at a token.
func (r *reader) spellAt(i int) bool {
	var c clause
	return r.spellPart(&c, i) > i && c.spell > 0
}

// spokenOf joins "it is far too wet in there" to the sentence before, which
// names a paddock and says nothing to log of it.
func (c *clause) spokenOf(d *clause) bool {
	if len(c.pads) != 1 || !c.pads[0].known || c.says() || c.guard != 0 || len(c.mobs) > 0 || len(c.nums) > 0 || c.trouble || c.event || c.share != 0 ||
		c.until != 0 || c.spell != 0 || d.sentence != c.sentence+1 || len(d.pads) > 0 || d.family() != famHold || d.guard != 0 || !d.there {
		return false
	}
	c.strange, c.strays, c.strangeW = 0, nil, ""
	c.absorb(d)
	c.sentence, c.bare, c.intro, c.there = d.sentence, false, false, true
	return true
}
