package parser

import "strings"

// Phrases that say nothing of what is reported, though their words could: on
// which way something was seen, how long it took, what was wet or dry.

// wayOf steps over "on the way back from the sheds", where it is the counter's
// way: no stock are spoken of, and no paddock is named.
func (r *reader) wayOf(c *clause, i int) int {
	if !r.oneOf(i, "on") || len(c.mobs) > 0 || c.head > 0 || c.has(actsGraze|actOrder|actGoing) {
		return i
	}
	k := r.over(i+1, "the", "my", "our", "your", "ur", "yer", "ye", "their", "his", "her")
	if k == i+1 || !r.oneOf(k, "way", "road") || r.oneOf(k, "road") && !r.oneOf(k+1, "home", "back") {
		return i
	}
	k = r.over(k+1, "back", "home", "over", "up", "down", "out", "in")
	if r.oneOf(k-1, "home", "back", "out", "in", "down", "up", "over") && (r.joins(k) || r.tok(k).shape == end || r.endsSentence(k)) {
		return k
	}
	if !r.oneOf(k, "from", "to", "past", "through", "by") {
		return i
	}
	k = r.over(k+1, "the", "my", "our")
	if _, j := r.mob(k); j > k || r.tok(k).shape != word || r.padAhead(k) {
		return i
	}
	if strings.HasSuffix(r.tok(k).text, "ing") {
		for j := k + 1; j < k+longestRun; j++ {
			switch t := r.tok(j); {
			case t.shape == number, t.shape == word && r.padAhead(j):
				return k + 1
			case t.shape != word:
				return j // "from dropping the calf meal off"
			}
		}
	}
	return k + 1
}

// seenFrom steps over "off the bike", "from the gate": where somebody looked from,
// where no stock are spoken of.
func (r *reader) seenFrom(c *clause, i int) int {
	if !r.oneOf(i, "off", "from") || len(c.mobs) > 0 || c.head > 0 || c.acts&actsGraze != 0 || r.oneOf(i-1, "came", "come", "fell", "fallen", "thrown", "got", "get", "knocked", "bucked", "out", "hopped", "jumped") {
		return i
	}
	k := r.over(i+1, "the", "my", "our", "back", "of", "a", "side", "seat")
	if k == i+1 || !r.oneOf(k, "bike", "quad", "ute", "tractor", "fence", "fenceline", "gate", "gateway", "road", "race", "lane", "track", "buggy", "truck", "motorbike", "horse", "saddle", "window", "cab") || r.padAhead(i+1) {
		return i
	}
	return k + 1
}

// timeTaken steps over "took them three days in the finish": how long something
// took is no time that a paddock is held.
func (r *reader) timeTaken(_ *clause, i int) int {
	if !r.oneOf(i, "took", "taken", "takes") {
		return i
	}
	j := r.over(i+1, "them", "us", "me", "it", "him", "her", "about", "only", "just", "nearly", "over", "the", "cows", "cattle", "lads", "a", "good", "whole")
	n, k := r.whole(j)
	if k == j || n < 1 {
		k = j
		if !r.oneOf(j-1, "a") {
			return i
		}
	}
	if u := r.tok(k); u.shape != word || unitDays(u) == 0 && u.tag != hourUnit || r.oneOf(k+1, "off") {
		return i
	}
	return k + 1
}

// groundIn steps over "the ground in" before paddocks that are told to be wet or
// dry: it is not how warm the soil is.
func (r *reader) groundIn(c *clause, i int) int {
	if !r.oneOf(i, "ground", "soil") || c.says() || r.tok(i+1).tag != inWord && !r.oneOf(i+1, "on") || !r.padAhead(i+2) {
		return i
	}
	for k := i + 3; k < i+longestPiece; k++ {
		switch t := r.tok(k); {
		case t.shape == end, t.shape == newline, t.tag == degreeUnit, t.decimal, t.tag == tempWord:
			return i
		case t.tag == dryWord, t.tag == wetWord, t.tag == dampWord, r.oneOf(k, "dry"):
			return i + 2
		}
	}
	return i
}

// readFrom steps over "by the shed thermometer".
func (r *reader) readFrom(c *clause, i int) int {
	if !c.has(actTemp) || !r.oneOf(i, "by", "on", "from", "off", "at") {
		return i
	}
	k := r.over(i+1, "the", "our", "my")
	for n := 0; n < 3 && r.tok(k).shape == word; n++ {
		if r.oneOf(k, "thermometer", "thermometers", "probe") {
			return k + 1
		}
		k++
	}
	return i
}

// firstSince steps over "since March" behind "the first frost": how long ago the
// one before was.
func (r *reader) firstSince(c *clause, i int) int {
	if u := r.tok(i + 1); !c.has(actTemp) || !r.oneOf(i, "since") || u.tag != monthName && !r.oneOf(i+1, "last", "spring", "autumn", "winter", "summer", "fall") {
		return i
	}
	for k := i - 1; k >= c.from; k-- {
		if r.oneOf(k, "first", "coldest", "hottest", "warmest", "hardest", "worst") {
			return r.over(i+2, "spring", "autumn", "winter", "summer", "fall", "year", "month")
		}
	}
	return i
}

// perhapsRange reads "11 maybe 2-2.5": leaves, with the doubt that a range has.
func (r *reader) perhapsRange(c *clause, i int) int {
	if !r.oneOf(i, "maybe", "perhaps") || len(c.pads) != 1 || c.pads[0].next != i || c.count != nil || c.acts != 0 || !r.isScore(i+1) || r.tok(i+1).value > 5 {
		return i
	}
	t, k := r.scores(i + 1)
	if t.doubt == "" || t.empty() || len(t.said) > 1 {
		return i
	}
	c.count = &t
	return k
}

// entered reads "and entered West 40" behind stock: they went in there. Who
// enters something in the log is no stock.
func (r *reader) entered(c *clause, i int) int {
	if !r.oneOf(i, "entered", "enter") || !r.padAhead(i+1) || r.oneOf(i, "enter") && !r.oneOf(i-1, "they") || r.oneOf(i-1, "i", "we", "you", "he", "she", "was", "were", "is", "just") {
		return i
	}
	for k := i - 1; k >= 0 && k > i-longestPiece; k-- {
		if t := r.tok(k); t.shape == newline || t.text == "." || t.text == "?" {
			return i
		}
		if name, j := r.mobAlone(k); j > k && name != "" {
			c.acts |= actIn
			r.prefix(c, roleIn)
			return i + 1
		}
	}
	return i
}

// thisSeason tells whether "this summer" stands beside a crop, which is in the
// ground then: the day of the hold is not in doubt.
func (r *reader) thisSeason(c *clause, i int) bool {
	return r.oneOf(i, "summer", "winter", "season") && r.oneOf(i-1, "this", "the") && c.has(actCrop) && c.acts&^(actCrop|actSow|actHold) == 0
}
