package parser

import (
	"leafround/core/entry"
)

// amountPart reads a number with its unit: a residual, rain, a temperature, a
// share of a paddock.
//
//	amount = residual | rain | temperature | share | number strange-unit
func (r *reader) amountPart(c *clause, i int) int {
	if t := r.tok(i); t.shape == word && t.tag == unknown && !r.oneOf(i, "another", "most", "couple", "minus", "part", "front", "other") && !r.oneOf(i, "bcs", "cs", "condition", "cond", "body", "locomotion", "lameness", "dag", "fec") {
		return i // no amount begins so
	}
	if r.tok(i).shape == number {
		if p, ok := r.longest(i); ok && p.next > i+1 {
			return i // a paddock named 40 Acre
		}
	}
	if _, ok := r.acreName(i); ok && len(c.pads) == 0 {
		return i
	}
	for _, read := range amountReaders {
		if k := read(r, c, i); k > i {
			return k
		}
	}
	return i
}

var amountReaders = []func(*reader, *clause, int) int{
	(*reader).sharePart,
	(*reader).temperaturePart,
	(*reader).rainPart,
	(*reader).residualPart,
	(*reader).strangeAmount,
}

// plain reads a number that is no score notation: digits or a word, signed.
func (r *reader) plain(i int) (v float64, next int, ok bool) {
	sign := 1.0
	j := i
	for j < i+3 && (r.tok(j).tag == hedgeWord && r.tok(j).shape == word || r.tok(j).text == "~") {
		j++
	}
	if r.tok(j).text == "-" && r.tok(j+1).shape == number && r.tok(j+1).glued || r.tok(j).tag == minusTag && r.tok(j).text == "minus" {
		sign, j = -1, j+1
	}
	was := r.commas
	if r.commaPair(j) {
		r.commas = commaDecimal
	}
	a, ok := r.value(j)
	r.commas = was
	if !ok {
		return 0, i, false
	}
	if t := r.tok(j); t.shape == number && !t.decimal && r.tok(j+1).text == "," && r.tok(j+1).glued {
		if u := r.tok(j + 2); u.glued && u.shape == number && len(u.text) == 3 && !u.decimal {
			return sign * (t.value*1000 + u.value), j + 3, true // 1,500
		}
	}
	return sign * a.value, a.next, true
}

const minusTag = unknown

// leftCover tells whether a number without a unit can be the cover in kg DM/ha that
// stock left (bounds ours).
func leftCover(v float64) bool { return v >= 800 && v < 6000 }

// residualPart reads what stock left.
//
//	residual = ( "residual" | "left" | "down" "to" ) [ leftIn ] [ "at" | "of" ] number [ unit ] | number ( unit | leftOver )
func (r *reader) residualPart(c *clause, i int) int {
	t := r.tok(i)
	j, named := i, false
	switch {
	case t.tag == residWord:
		named = true
		j++
		if t.text == "post" {
			j = r.over(j, "graze", "grazing", "grazed", "-")
		}
		for j < i+longestRun && (r.tok(j).tag == residWord || r.oneOf(j, "grazing") && r.tok(j+1).tag == residWord) {
			j++
		}
	case t.tag == leftWord:
		named = true
		j++
	case (t.text == "down" || t.text == "back") && r.tok(i+1).tag == toWord:
		named = true
		j += 2
	case t.tag == toWord && c.has(actsGraze|actPlace):
		j++
	}
	if named {
		for last := j + longestRun; j < last && (r.tok(j).tag == atWord || r.tok(j).tag == ofWord || r.oneOf(j, ":", "=", "was", "is", "it", "about") || r.tok(j).text == "a" && r.tok(j+1).shape != word); {
			j++
		}
	}
	if named && (r.oneOf(j, "spot", "bang", "right", "dead", "smack") && r.oneOf(j+1, "on") || r.oneOf(j, "came", "sitting", "sits", "ended") && r.oneOf(j+1, "in", "at", "up")) {
		j = r.over(j+2, "at", "about", "around", ":")
	}
	var where place
	if named && t.text != "down" && len(c.pads) == 0 {
		where, j = r.leftIn(j)
	}
	v, k, ok := r.plain(j)
	if !ok || v <= 0 {
		return i
	}
	unit, k2 := r.residualUnit(k, t.tag == residWord || c.has(actsGraze|actPlace) || named)
	switch {
	case unit != "":
	case leftCover(v) && (r.leftOver(k) > k || r.tok(k).tag == residWord):
		unit = entry.KgDMPerHa
	case leftCover(v) && (named || c.has(actsGraze|actPlace)) && !r.unitAhead(k):
		unit = entry.KgDMPerHa
	case t.tag == residWord && v < 800 && !r.unitAhead(k):
		const why = "Is that residual in centimetres, clicks or kg DM/ha?"
		c.unsure(why)
		r.offerUnit(why, j, k, " cm", " clicks")
		unit = entry.Centimetres
	default:
		return i
	}
	if r.tok(k2).tag == residWord && unit != "" {
		k2++
	}
	if n := r.leftOver(k2); n > k2 {
		c.acts |= actPlace
		k2 = n
	}
	if unit == entry.KgDMPerHa && v < 300 {
		return i
	}
	if t.tag == leftWord {
		c.acts |= actPlace
	}
	if _, aim := r.has(max(c.from, i-8), i+1, aimWords); aim {
		c.guard |= guardPlan // "aim is 1500 behind them"
	}
	high := unit == entry.KgDMPerHa && v >= 2000 && !named && len(c.mobs) == 0 && !c.has(actGrazed) && c.has(actOut) && r.oneOf(i-1, "at", "about", "around", "to") && r.oneOf(i-2, "out", "in", "at") // "came out at 2350 kg"
	if !named && (high || !c.has(actsGraze|actPlace) && r.standing(k2, unit, v)) {
		c.unsure("Is that what stock left, or how high it stands? Please say “left” where it is what they left.")
	}
	if where.name != "" {
		c.pads = append(c.pads, where)
	}
	if n := r.tok(k2); i == r.opening && !named && unit == entry.Clicks && r.tok(i).shape == number && r.bears(r.tok(i).text) && n.shape == number && !n.decimal && !n.glued {
		c.unsure("Which is the paddock, " + r.tok(i).text + " or " + n.text + "? Please send it such as: left 7 clicks in p12") // "12 clicks 7"
	}
	c.resid = &entry.Residual{Value: v, Unit: unit}
	return k2
}

// residualUnit reads a unit of grass height or cover.
func (r *reader) residualUnit(i int, sure bool) (entry.ResidualUnit, int) {
	t := r.tok(i)
	switch {
	case t.tag == cmUnit:
		return entry.Centimetres, i + 1
	case t.tag == clickUnit:
		return entry.Clicks, i + 1
	case t.tag == inchUnit, t.text == "in" && (t.glued || r.tok(i+1).tag == leftWord || r.tok(i+1).tag == residWord || r.tok(i-2).tag == leftWord && r.tok(i-1).shape == number && (r.tok(i+1).shape == end || r.tok(i+1).shape == newline || r.tok(i+1).text == ".") || sure && (r.tok(i-1).decimal || r.monthFirst) && (r.tok(i+1).shape == end || r.day(i+1).ok)), t.text == `"`:
		ofGrass := grassWords[r.tok(i+2).text] && (sure || r.tok(i+3).tag == leftWord)
		if r.tok(i+1).tag == ofWord && !ofGrass || r.tok(i+1).tag == rainWord {
			return "", i
		}
		return entry.Inches, i + 1
	case t.tag == kgUnit && (sure || r.tok(i+1).tag == leftWord || r.tok(i+1).tag == residWord || r.oneOf(i+1, "behind")):
		j := i + 1
		for j < i+longestRun && (r.tok(j).tag == kgUnit || r.tok(j).text == "/" || r.tok(j).tag == haUnit || r.tok(j).text == "d" || r.tok(j).text == "m") {
			j++
		}
		return entry.KgDMPerHa, j
	}
	return "", i
}

// standing tells whether a height may be that of grass which stands there:
// higher than stock leave it, or told as high.
func (r *reader) standing(next int, unit entry.ResidualUnit, v float64) bool {
	return r.oneOf(next, "high", "tall", "long", "deep", "cover", "covers", "pregraze", "pre", "before") || r.oneOf(next, "of") && grassWords[r.tok(next+1).text] && r.tok(next+2).tag != leftWord ||
		unit == entry.Centimetres && v > 12 || unit == entry.Clicks && v > 18 || unit == entry.Inches && v > 5
}

// grassWords name what stands in a paddock, whose height may be told.
var grassWords = wordSet(`grass feed cover stubble residual forage pasture sward herbage`)

// sharePart reads a part of a paddock: half of, 1/2 of, 50 %, two thirds of.
func (r *reader) sharePart(c *clause, i int) int {
	t := r.tok(i)
	if _, _, ok := r.inches(i); ok {
		return i
	}
	if t.shape == number && r.tok(i+1).text == "%" && t.value > 0 && t.value <= 100 {
		c.share = t.value / 100
		k := i + 2
		if r.tok(k).tag == ofWord {
			k++
		}
		return k
	}
	if u := r.tok(i + 1); t.text == "part" && u.shape == number && u.value > 0 && u.value <= 1 {
		c.share = u.value
		return i + 2
	}
	if k := r.shareValue(c, i); k > i {
		return k
	}
	if t.text == "two" && (r.tok(i+1).text == "thirds" || r.tok(i+1).text == "third") {
		c.share = 2.0 / 3
		return r.ofThe(i + 2)
	}
	if u := r.tok(i + 1); t.tag == numberWord && t.sense == 3 && u.tag == partWord && (r.tok(i+2).tag == ofWord || r.tok(i+2).tag == grazedWord) && quarters(u) == 1 {
		c.share = 0.75
		return r.ofThe(i + 2)
	}
	j := i
	if t.text == "front" || t.text == "back" || t.text == "first" || t.text == "other" || t.text == "top" || t.text == "bottom" || t.text == "second" || t.text == "last" {
		j++
	}
	u := r.tok(j)
	switch {
	case u.text == "half" && u.shape == word:
		if k := r.over(j+1, "of", "the", "my", "our"); r.tok(k).tag == mobWord || r.tok(k).tag == looseMob {
			c.unsure("Only a part of the mob? Please say which animals went where.")
			return j + 1
		}
		if v := r.tok(j + 1); v.tag == leafUnit || v.tag == inchUnit || v.text == "an" || v.tag == andWord {
			return i
		}
		if r.tok(j+1).tag == inWord && len(c.mobs) > 0 {
			c.unsure("Only a part of the mob? Please say which animals went where.")
		}
		c.share = 0.5
		return r.ofThe(j + 1)
	case u.shape == part && !u.glued && (r.tok(j+1).tag == ofWord || r.tok(j+1).tag == grazedWord):
		c.share = u.value
		return r.ofThe(j + 1)
	case u.text == "quarter" && r.tok(j+1).tag == ofWord || u.text == "third" && (r.tok(j+1).tag == ofWord) && r.tok(j-1).text != "the":
		c.share = map[string]float64{"quarter": 0.25, "third": 1.0 / 3}[u.text]
		return r.ofThe(j + 1)
	}
	if f, k, ok := r.slashed(j); ok && (r.tok(k).tag == ofWord || r.tok(k).tag == grazedWord || r.tok(k).tag == leftWord) {
		c.share = f
		return r.ofThe(k)
	}
	return i
}

func (r *reader) ofThe(i int) int {
	for last := i + longestRun; i < last && (r.tok(i).tag == ofWord || r.tok(i).text == "the" && r.tok(i+1).tag == padMark); {
		i++
	}
	return i
}

// strangeAmount steps over an amount that is none of ours: 20 litres, $450.
func (r *reader) strangeAmount(c *clause, i int) int {
	t, u := r.tok(i), r.tok(i+1)
	if (t.text == "$" || t.text == "€" || t.text == "£") && u.shape == number {
		return r.odd(c, i, i+2)
	}
	if k := r.bodyScore(i); k > i {
		return r.odd(c, i, k)
	}
	if t.shape != number {
		return i
	}
	if k, ok := r.balePart(c, i); ok {
		return k
	}
	if k := r.over(i+2, "of"); (u.tag == kgUnit || r.oneOf(i+1, "units", "unit")) && r.oneOf(k, "n", "nitrogen") && !r.joins(k+1) {
		c.acts |= actFert
		return k + 1 // "46 units of N on 11"
	}
	switch {
	case u.shape == word && u.tag == hourUnit:
		c.remarks++
		if r.tok(i+2).tag == agoWord {
			return i + 3
		}
		return i + 2
	case u.shape == word && u.tag == baleWord && len(c.pads) == 0 && c.acts == 0 && i > 0 && r.joins(i-1), u.shape == word && (u.tag == haUnit || u.tag == acreUnit):
		c.remarks++
		return i + 2
	case u.shape == word && u.tag == kgUnit && (c.has(actFert) || r.oneOf(i+2, "n") && r.tok(i+3).tag == onWord || r.tok(i+2).tag == fertWord || r.tok(i+3).tag == fertWord):
		c.remarks++
		k := i + 2
		for k < i+longestRun && r.oneOf(k, "/", "ha", "n", "per", "to", "the") && !(r.oneOf(k, "n") && r.tok(k+1).tag == onWord && !c.has(actFert)) {
			k++
		}
		return k
	case u.shape == word && u.tag == strangeUnit && c.has(actBale|actCut|actMow) && r.oneOf(i+1, "rolls", "loads", "tons", "tonnes", "ton", "tonne", "load"):
		c.remarks++
		return r.over(i+2, "of")
	case u.shape == word && u.tag == strangeUnit && r.spreadBehind(c, i+2):
		c.remarks++
		return r.over(i+2, "of", "the", "a", "to", "per", "ha", "/", "hectare", "acre")
	case u.text == "%", u.shape == word && (u.tag == strangeUnit || u.tag == monthUnit || u.tag == cmUnit || u.tag == kgUnit ||
		u.tag == dayUnit || u.tag == weekUnit || u.glued && u.tag == unknown && len(u.text) > 1):
		return r.odd(c, i, i+2)
	}
	return i
}

// odd notes an amount that is none of ours.
func (r *reader) odd(c *clause, from, to int) int {
	if c.strange == 0 {
		c.strangeW = r.source(from, to)
	}
	c.strange++
	return to
}
