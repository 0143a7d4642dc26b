package parser

import (
	"strconv"

	"leafround/core/entry"
)

// A clause may tell of two things at once, with no mark between them: "p12 2 2.5
// 3 10mm", "12 2.5 2.5 2.5 too wet though", "soil 11 rain 4". None of them is
// dropped because another one was found.

// countBeside gives the count of a clause that tells by its way of rain, of a
// temperature, or that the paddock is held, cut or free again.
func (r *reader) countBeside(c *clause) ([]entry.Entry, string, bool) {
	f := c.family()
	if c.count == nil || len(c.count.said) == 0 {
		return nil, "", false
	}
	weather := f == famRain || f == famTemp
	if s := c.count.said[0].Score; (f == famHold || f == famCut || f == famRelease) && len(c.count.said) == 1 && s > 5 {
		return nil, "What is the " + strconv.FormatFloat(float64(s), 'f', -1, 64) + ": a paddock? Please name each paddock, such as: 12 and 13 closed for silage", true // "22 to 26 closed for silage", of 24 paddocks
	}
	if f == famCount && c.resid != nil && len(c.mobs) == 0 && c.acts&^actPlace == 0 && len(c.pads) == 1 && len(c.count.said) > 2 && c.count.decimal && c.count.doubt == "" && c.share == 0 && c.head == 0 {
		count, rest := *c, *c
		count.acts, count.resid, rest.count = 0, nil, nil
		list, doubt := r.counts(&count)
		more, doubt2 := r.entriesOf(&rest)
		if doubt == "" && doubt2 == "" {
			return append(list, more...), rest.doubt, true // "12 2.5 2 2 res 7cm"
		}
	}
	if (f == famHold || f == famCut || f == famRelease) && len(c.count.said) > 1 && c.count.decimal && c.count.doubt != "" {
		return nil, c.count.doubt, true
	}
	if !weather && (f != famHold && f != famRelease && f != famCut || len(c.count.said) < 2 || !c.count.decimal && len(c.count.said) < 3 || len(c.pads) != 1 || c.count.doubt != "") {
		return nil, "", false
	}
	count, rest := *c, *c
	count.acts, count.until, count.spell, rest.count = 0, 0, 0, nil
	if weather {
		rest.pads = nil
		if r.extremes(c) {
			return nil, leastOfScores, true
		}
		if len(c.pads) != 1 || c.acts&^(actRain|actTemp|actDamp|actWet) != 0 {
			return nil, "Is that a leaf count, the weather, or both? Please send them apart.", true
		}
		if len(c.count.said) == 1 && !c.count.decimal && !c.pads[0].marked {
			return nil, "Is that a leaf count, the weather, or both? Please send them apart.", true
		}
	}
	if weather && c.days.ok && c.days.day != r.today && c.days.next >= c.to-1 {
		return nil, "Which day do you mean?", true // "12 2 2.5 10mm yesterday"
	}
	list, doubt := r.counts(&count)
	if doubt != "" || len(list) == 0 {
		return nil, doubt, weather && doubt != ""
	}
	more, doubt := r.entriesOf(&rest)
	if doubt == "" {
		doubt = rest.doubt
	}
	return append(list, more...), doubt, true
}

// rainsAnd gives the rain told, and the temperature beside it.
func (r *reader) rainsAnd(c *clause) ([]entry.Entry, string) {
	list, doubt := r.rains(c)
	if doubt != "" || len(list) == 0 || !c.has(actTemp) {
		return list, doubt
	}
	more, doubt := r.temperatures(c)
	if doubt != "" {
		return nil, doubt
	}
	return append(list, more...), ""
}

// listOfPads tells whether what was read as a paddock and its scores may be a
// list of paddocks, whose average follows, or amounts of several days: "2,3 and
// 4 2.5 leaves", "1,2 and 3 at 2.25", "5, 2 and 0 mm".
//
//	listOfPads = whole { "," whole } "and" whole ( "at" | "all" | … | decimal | unit )
func (r *reader) listOfPads(c *clause) bool {
	p := c.pads[0]
	if p.marked || p.next != p.at+1 || r.tok(p.at).shape != number || r.tok(p.next).text != "," {
		return false
	}
	i, pads := p.next, true
	for r.tok(i).text == "," && r.tok(i+1).shape == number && !r.tok(i+1).decimal {
		pads = pads && r.bears(r.tok(i+1).text)
		i += 2
	}
	if i == p.next || !r.joins(i) || r.tok(i+1).shape != number || r.tok(i+1).decimal {
		return false
	}
	if u := r.tok(i + 2).tag; u == mmUnit || u == degreeUnit || u == inchUnit {
		return true
	}
	if !pads || !r.bears(r.tok(i+1).text) {
		return false
	}
	if r.tok(i+2).decimal && r.tok(i+3).shape != number {
		return true
	}
	k := r.over(i+2, "are", "were", "is", "at", "on", "about", "around", "all", "both", "each", "averaged", "average", "avg", "ave", "averaging", ":")
	return k > i+2 && r.isScore(k)
}

// bodyScore steps over a score of animals, which is none of leaves: "bcs 3.5",
// "cond score 4".
//
//	bodyScore = ( "bcs" | ( "condition" | "cond" | "body" | … ) "score" ) [ "of" | "is" | … ] number
func (r *reader) bodyScore(i int) int {
	k := i
	switch {
	case r.oneOf(i, "bcs", "cs") && r.tok(i).shape == word:
		k = i + 1
	case r.oneOf(i, "condition", "cond", "body", "locomotion", "lameness", "dag", "fec"):
		k = r.over(i, "condition", "cond", "body", "locomotion", "lameness", "dag", "fec")
		if !r.oneOf(k, "score", "scores", "scored", "scoring") && !r.oneOf(i, "cond", "condition") {
			return i
		}
		k = r.over(k, "score", "scores", "scored", "scoring")
	default:
		return i
	}
	k = r.over(k, "of", "is", "was", "at", "about", "average", "averaging", "avg", "ave", "around", ":", "=")
	_, next, ok := r.plain(k)
	if !ok {
		return i
	}
	return next
}

// besideWeather tells whether a clause with an amount of rain or a temperature
// tells of a paddock too: that it was grazed, cut or held, or who went there.
func (r *reader) besideWeather(c *clause) bool {
	return len(c.pads) > 0 && (c.acts&(actGrazed|actMoved|actOut|actsCut|actsHold&^actWet) != 0 || len(c.mobs) > 0 && c.guard == 0)
}
