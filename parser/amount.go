package parser

import "leafround/core/entry"

// amountPart reads a number with its unit: a residual, rain, a temperature, a
// share of a paddock.
//
//	amount = residual | rain | temperature | share | number strange-unit
func (r *reader) amountPart(c *clause, i int) int {
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
	for r.tok(j).tag == hedgeWord && r.tok(j).shape == word || r.tok(j).text == "~" {
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

// residualPart reads what stock left.
//
//	residual = ( "residual" | "left" | "down" "to" ) [ "at" | "of" ] number [ unit ] | number unit
func (r *reader) residualPart(c *clause, i int) int {
	t := r.tok(i)
	j, named := i, false
	switch {
	case t.tag == residWord:
		named = true
		j++
		for r.tok(j).tag == residWord {
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
		for r.tok(j).text == ":" || r.tok(j).text == "=" || r.tok(j).tag == atWord || r.tok(j).tag == ofWord || r.tok(j).text == "was" || r.tok(j).text == "is" || r.tok(j).text == "a" && r.tok(j+1).shape != word || r.tok(j).text == "it" || r.tok(j).text == "about" {
			j++
		}
	}
	v, k, ok := r.plain(j)
	if !ok || v <= 0 {
		return i
	}
	unit, k2 := r.residualUnit(k, t.tag == residWord || c.has(actsGraze|actPlace) || named)
	switch {
	case unit != "":
	case v >= 800 && v < 6000 && (r.tok(k).tag == leftWord || r.tok(k).tag == residWord):
		unit = entry.KgDMPerHa
	case v >= 800 && v < 6000 && (named || c.has(actsGraze|actPlace)) && !r.unitAhead(k):
		unit = entry.KgDMPerHa
	case t.tag == residWord && v < 800 && !r.unitAhead(k):
		c.unsure("Is that residual in centimetres, clicks or kg DM/ha?")
		unit = entry.Centimetres
	default:
		return i
	}
	if r.tok(k2).tag == residWord && unit != "" {
		k2++
	}
	if r.tok(k2).tag == leftWord {
		c.acts |= actPlace
		k2++
	}
	if unit == entry.KgDMPerHa && v < 300 {
		return i
	}
	if t.tag == leftWord {
		c.acts |= actPlace
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
	case t.tag == inchUnit, t.text == "in" && (t.glued || r.tok(i+1).tag == leftWord || r.tok(i+1).tag == residWord), t.text == `"`:
		if r.tok(i+1).tag == ofWord || r.tok(i+1).tag == rainWord {
			return "", i
		}
		return entry.Inches, i + 1
	case t.tag == kgUnit && sure:
		j := i + 1
		for r.tok(j).tag == kgUnit || r.tok(j).text == "/" || r.tok(j).tag == haUnit || r.tok(j).text == "d" || r.tok(j).text == "m" {
			j++
		}
		return entry.KgDMPerHa, j
	}
	return "", i
}

// MillimetresPerInch is exact (international yard and pound agreement of
// 1959); a point of rain is a hundredth of an inch (common practice in
// Australia, no source).
const (
	millimetresPerInch  = 25.4
	millimetresPerPoint = 0.254
)

// rainPart reads an amount of rain.
//
//	rain = number rain-unit [ "of" ] [ "rain" ] | "rain" [ ":" ] number [ rain-unit ] | number [ "of" ] "rain"
func (r *reader) rainPart(c *clause, i int) int {
	j, named := i, false
	if r.tok(j).tag == rainWord && r.tok(j).shape == word {
		named = true
		j++
		for r.tok(j).text == ":" || r.tok(j).text == "=" || r.tok(j).text == "was" || r.tok(j).text == "-" && !r.negative(j) || r.tok(j).tag == gaugeWord || r.tok(j).text == "of" {
			j++
		}
	} else if r.tok(j).tag == gaugeWord {
		j++
		for introWords[r.tok(j).text] {
			j++
		}
		named = true
	}
	if r.tok(j).text == "no" && r.tok(j+1).tag == rainWord && len(c.pads) == 0 && r.tok(j+2).shape == end {
		c.acts |= actRain
		c.mm = 0
		return j + 2
	}
	v, k, ok := r.plain(j)
	if !ok {
		return i
	}
	if r.tok(k).text == "an" || r.tok(k).text == "a" {
		k++
	}
	per, k2 := r.rainUnit(k)
	k = k2
	if per == 0 && r.oneOf(k, "in") && (r.tok(k+1).tag == rainWord || r.oneOf(k+1, "of") && r.tok(k+2).tag == rainWord) {
		per, k = millimetresPerInch, k+1
	}
	if r.tok(k).tag == ofWord && r.tok(k+1).tag == rainWord || r.tok(k).text == "in" && (r.tok(k+1).tag == gaugeWord || r.tok(k+1).text == "the" && r.tok(k+2).tag == gaugeWord) {
		named = true
		for r.tok(k).tag == ofWord || r.tok(k).tag == rainWord || r.tok(k).tag == inWord || r.tok(k).text == "the" || r.tok(k).tag == gaugeWord {
			k++
		}
	} else if r.tok(k).tag == rainWord && r.tok(k).shape == word {
		named = true
		k++
	}
	if per == 0 {
		if !named || r.unitAhead(k) || v < 0 {
			return i
		}
		per = 1
	}
	if per > 1 && !named {
		return i // inches and points are of rain only where rain is named
	}
	if v < 0 || v*per > 1000 {
		c.unsure("How much rain was that, in millimetres?")
	}
	if c.has(actRain) && c.mm > 0 {
		r.cut = true
		return i
	}
	c.acts |= actRain
	c.mm = v * per
	c.share = 0
	return k
}

// rainUnit reads a unit of rain and gives the millimetres in it.
func (r *reader) rainUnit(i int) (per float64, next int) {
	t := r.tok(i)
	switch {
	case t.tag == mmUnit:
		return 1, i + 1
	case t.tag == inchUnit, t.text == `"`:
		return millimetresPerInch, i + 1
	case t.tag == pointUnit:
		return millimetresPerPoint, i + 1
	}
	return 0, i
}

// temperaturePart reads a temperature, with where it was taken.
//
//	temperature = [ depth ] place [ "temp" ] number [ degrees ] | ( "min" | "max" ) number | number degrees
func (r *reader) temperaturePart(c *clause, i int) int {
	j := i
	var where entry.Thermometer
	named := false
	var side tag
loop:
	for n := 0; n < 8; n++ {
		t := r.tok(j)
		switch {
		case t.tag == soilWord && t.shape == word:
			where, named = entry.Soil, named || t.text == "soil"
		case t.tag == airWord && t.shape == word:
			where, named = entry.Air, true
		case t.tag == tempWord && t.shape == word, t.tag == frostWord && t.shape == word:
			named = true
			if t.tag == frostWord && where == "" {
				where = entry.Air
			}
		case (t.tag == minWord || t.tag == maxWord) && t.shape == word:
			side, named = t.tag, true
		case t.shape == number && r.tok(j+1).tag == cmUnit && (r.tok(j+2).tag == soilWord || r.tok(j+2).tag == tempWord):
			j++
		case named && (t.text == ":" || t.text == "=" || t.text == "was" || t.text == "is" || t.text == "at" && r.tok(j+2).tag != cmUnit || t.text == "of" || t.text == "now" || t.text == "today"):
		case named && t.text == "at" && r.tok(j+2).tag == cmUnit:
			j += 2
		default:
			break loop
		}
		j++
	}
	v, k, ok := r.plain(j)
	if !ok || !named && j > i {
		return i
	}
	deg, fahrenheit, k := r.degrees(k)
	r.unitTold = deg
	if !named && !deg || !deg && r.unitAhead(k) && r.tok(k).tag != monthName {
		return i
	}
	if named && !deg && r.tok(k).tag == mmUnit {
		return i
	}
	if fahrenheit {
		v = (v - 32) / 1.8
	}
	for r.tok(k).tag == soilWord || r.tok(k).tag == airWord || r.tok(k).tag == tempWord {
		if r.tok(k).text == "soil" {
			where = entry.Soil
		} else if r.tok(k).tag == airWord {
			where = entry.Air
		}
		k++
	}
	r.keepTemperature(c, v, where, side)
	return k
}

// keepTemperature lays a reading in its place.
func (r *reader) keepTemperature(c *clause, v float64, where entry.Thermometer, side tag) {
	c.acts |= actTemp
	most := 50.0
	if where == entry.Soil {
		most = 40
	}
	if v < -60 || v > most || r.monthFirst && !r.unitTold && v >= 30 {
		c.unsure("Is that in degrees Fahrenheit? Please send it with °F or °C.")
	}
	if where != "" {
		c.where = where
	}
	switch side {
	case minWord:
		c.low = &v
	case maxWord:
		c.high = &v
	default:
		c.temps = append(c.temps, v)
	}
}

// degrees steps over °, °C, degrees, c, and f for Fahrenheit.
func (r *reader) degrees(i int) (deg, fahrenheit bool, next int) {
	t := r.tok(i)
	if t.text == "°" || t.tag == degreeUnit && t.shape == word {
		deg = true
		i++
		t = r.tok(i)
		if t.tag == degreeUnit && t.shape == word {
			i++
			t = r.tok(i)
		}
	}
	if t.text == "f" || t.text == "fahrenheit" {
		return true, true, i + 1
	}
	return deg, false, i
}

// sharePart reads a part of a paddock: half of, 1/2 of, 50 %, two thirds of.
func (r *reader) sharePart(c *clause, i int) int {
	t := r.tok(i)
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
	if t.text == "two" && (r.tok(i+1).text == "thirds" || r.tok(i+1).text == "third") {
		c.share = 2.0 / 3
		return r.ofThe(i + 2)
	}
	j := i
	if t.text == "front" || t.text == "back" || t.text == "first" || t.text == "other" || t.text == "top" || t.text == "bottom" || t.text == "second" || t.text == "last" {
		j++
	}
	u := r.tok(j)
	switch {
	case u.text == "half" && u.shape == word:
		if v := r.tok(j + 1); v.tag == leafUnit || v.tag == inchUnit || v.text == "an" || v.tag == andWord {
			return i
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
	if f, k, ok := r.slashed(j); ok && (r.tok(k).tag == ofWord || r.tok(k).tag == grazedWord) {
		c.share = f
		return r.ofThe(k)
	}
	return i
}

func (r *reader) ofThe(i int) int {
	for r.tok(i).tag == ofWord || r.tok(i).text == "the" && r.tok(i+1).tag == padMark {
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
	if t.shape != number {
		return i
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
	case u.shape == word && u.tag == kgUnit && (c.has(actFert) || r.tok(i+2).tag == fertWord || r.tok(i+3).tag == fertWord):
		c.remarks++
		k := i + 2
		for r.oneOf(k, "/", "ha", "n", "per", "to", "the") {
			k++
		}
		return k
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
