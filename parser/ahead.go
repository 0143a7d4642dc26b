package parser

// How many tillers were pulled may be told before the scores, and why there are
// no more of them.

// tillersAhead reads a number of tillers behind a word for counting, where as
// many scores follow behind the next mark: "counted five in the Bog: …", "only
// got 4 done - …".
func (r *reader) tillersAhead(c *clause, i int) int {
	t := r.tok(i)
	if t.shape != number && t.tag != numberWord || c.count != nil || c.acts&^(actRain|actDone) != 0 {
		return i
	}
	n, k := r.whole(i)
	if k == i || n < 2 || n > 20 || r.tok(k).glued && r.tok(k).shape != mark || r.tok(k).tag == tillerUnit || !r.pulling(c, i) {
		return i
	}
	if r.tok(k).shape == mark && r.bears(t.text) && !r.namedBefore(i) {
		return i // "counted 5: 2 2 2" is paddock 5
	}
	if r.oneOf(k, "out") && r.oneOf(k+1, "of") {
		k += 2
	}
	k = r.over(k, "done", "in", "before", "tillers", "of", "them")
	if r.tok(k-1).tag == inWord || r.oneOf(k-1, "before") {
		k--
	}
	if !r.listOf(k, n) {
		return i
	}
	c.count = &tally{n: n}
	return k
}

// namedBefore tells whether a paddock is named before a token in its sentence.
func (r *reader) namedBefore(i int) bool {
	for j := i - 1; j >= max(0, i-24); j-- {
		t := r.tok(j)
		if t.shape == newline || t.shape == mark && t.text == "." {
			return false
		}
		if p, ok := r.longest(j); ok && p.known {
			return true
		}
	}
	return false
}

// listOf tells whether n scores stand behind one of the next marks, with no
// other number before them.
func (r *reader) listOf(k, n int) bool {
	for j := k; j < k+16; j++ {
		m := r.tok(j)
		if m.shape == mark || m.shape == newline {
			said, _ := r.lookAtScores(r.over(j+1, "-", ":", "is", "was", "it", "its", "they", "were", "got"))
			if len(said.said)+said.skipped.Total() == n && said.doubt == "" {
				return true
			}
			continue
		}
		if m.shape == end || m.shape == number && !r.bears(m.text) {
			return false
		}
	}
	return false
}

// howManyTold tells whether a number in words behind a paddock and a word for
// counting is how many tillers were pulled: "South I counted four, is 2, 2.25,
// 2.5, 2.25".
func (r *reader) howManyTold(i int) bool {
	t := r.tok(i)
	if t.tag != numberWord || t.sense < 2 || !pullWords[r.tok(i-1).text] || r.oneOf(i-1, "got") || r.tok(i+1).text != "," && r.tok(i+1).text != ":" && r.tok(i+1).text != "-" {
		return false
	}
	k := r.over(i+2, "is", "was", "it", "its", "they", "were", "got")
	return r.tok(k).shape == number && r.listOf(i+1, int(t.sense))
}

// pulling tells whether a word for counting stands before a number.
func (r *reader) pulling(c *clause, i int) bool {
	for k := i - 1; k >= i-3; k-- {
		if pullWords[r.tok(k).text] {
			return true
		}
	}
	return r.oneOf(i+1, "done", "tillers")
}

var pullWords = wordSet(`counted count did pulled sampled scored measured got managed only just after took checked looked`)

// aroundWeather reads when something was done by the weather, with no amount in
// it: "before the rain came", "until it hosed down".
//
//	weather = ( "before" | "until" | "after" | "when" | "as" ) [ "the" | "it" ] weather-word { verb | particle }
func (r *reader) aroundWeather(c *clause, i int) int {
	k := i + 1
	if j := r.byWeather(i); j > i && c.remarks > 0 {
		return j
	}
	switch {
	case r.oneOf(i, "ahead") && r.oneOf(k, "of"):
		k++
	case r.oneOf(i, "in") && r.oneOf(k, "between"):
		k++
	case !r.oneOf(i, "before", "until", "till", "til", "after", "when", "as", "between", "while"):
		return i
	}
	name := r.over(k, "the", "that", "this", "big", "heavy", "next", "a")
	switch {
	case weatherNames[r.tok(name).text]:
		k = name + 1
	case r.oneOf(k, "it", "she") && weatherVerbs[r.tok(k+1).text]:
		k++
	default:
		return i
	}
	from := k
	for weatherVerbs[r.tok(k).text] || k > from && r.oneOf(k, "in", "down", "up", "again", "on", "properly", "heavy", "hard", "through", "over", "to", "rain", "pour") {
		k++
	}
	if r.oneOf(i, "when", "as", "while") && k == from {
		return i // "when rain" tells of no time past
	}
	for j := k; j < k+6; j++ {
		if u := r.tok(j); u.tag == mmUnit || u.tag == gaugeWord || u.tag == pointUnit {
			return i
		}
	}
	c.remarks++
	return k
}

var (
	weatherNames = wordSet(`rain hail storm storms shower showers weather thunder lightning heavens fog mist heat frost cloud cloudburst sky skies wind snow sleet downpour deluge squall drizzle dark`)
	weatherVerbs = wordSet(`came started hit arrived set got stopped opened bucketed poured rained hailed stormed turned closed broke pelted tipped hosed pissed
	drizzled cleared lifted burned burnt thawed melted eased blew snowed kicked rolled moved went was had began`)
)

// drivenOff reads that somebody had to leave a paddock: "rain ran me out of
// 10", "got rained off in 10". No stock are spoken of, and no rain is told.
//
//	driven = weather verb ( "me" | "us" ) [ "out" ] [ "of" | "off" | "from" | "in" ] | ( "got" | "was" ) driven ( "off" | "out" ) [ "of" | "in" ]
func (r *reader) drivenOff(c *clause, i int) int {
	if len(c.mobs) > 0 || c.acts != 0 || c.count != nil {
		return i
	}
	k := i
	switch {
	case (weatherNames[r.tok(i).text] || r.oneOf(i, "darkness", "bull", "cold")) && r.oneOf(i+2, "me", "us") && drivers[r.tok(i+1).text]:
		k = i + 3
	case r.oneOf(i, "got", "was", "were", "been", "being") && drivers[r.tok(i+1).text] && r.oneOf(i+2, "off", "out"):
		k = i + 2
	case r.oneOf(i, "rained", "hailed", "snowed", "blown") && r.oneOf(i+1, "off", "out"):
		k = i + 1
	default:
		return i
	}
	k = r.over(k, "out", "off")
	if j := r.afterMany(k); j > k {
		c.remarks++
		return j
	}
	k = r.over(k, "of", "from", "in", "on", "at", "the")
	c.remarks++
	r.way = roleNone
	return k
}

// afterMany steps over "after four", "after two paddocks": how far somebody got.
func (r *reader) afterMany(i int) int {
	if !r.oneOf(i, "after") {
		return i
	}
	n, k := r.whole(r.over(i+1, "only", "just", "about", "the", "first"))
	if n == 0 || n > 40 {
		return i
	}
	j := r.over(k, "paddocks", "paddock", "pdks", "fields", "tillers", "of", "them")
	if u := r.tok(j); j > k || u.shape == end || u.shape == mark && u.text != ":" && u.text != "." || r.oneOf(j, "so", "and", "but") {
		return j
	}
	return i
}

// byWeather steps over "by the rain": who drove somebody off.
func (r *reader) byWeather(i int) int {
	if !r.oneOf(i, "by") {
		return i
	}
	if k := r.over(i+1, "the", "a", "that"); weatherNames[r.tok(k).text] || r.oneOf(k, "darkness", "bull", "cold") {
		return k + 1
	}
	return i
}

var drivers = wordSet(`ran chased drove forced pushed washed sent kicked beat caught got hunted rained hailed blown blew run driven flooded put stopped`)

// eachBefore gives averages behind "10 tillers each" that number, and leaves
// the day that stood with it.
func eachBefore(list []clause) []clause {
	for n := range list {
		c := &list[n]
		if !c.onlyTillers() || !c.count.each || c.guard != 0 {
			continue
		}
		given := 0
		for k := n + 1; k < len(list); k++ {
			if d := &list[k]; d.count != nil && len(d.pads) > 0 && d.count.n == 0 {
				d.count.n = c.count.n
				given++
			}
		}
		if given > 0 {
			c.count, c.colon = nil, false
			if !c.days.ok {
				return append(list[:n:n], list[n+1:]...)
			}
		}
	}
	return list
}
