package parser

import "leafround/core/entry"

// Temperatures, of the soil and of the air.

// temperaturePart reads a temperature, with where it was taken.
//
//	temperature = [ depth ] place [ "temp" ] number [ degrees ] | ( "min" | "max" ) number | number degrees
func (r *reader) temperaturePart(c *clause, i int) int {
	j := i
	var where entry.Thermometer
	named, frost, instrument := false, false, false // who says it: the radio is no instrument
	var side tag
loop:
	for n := 0; n < 8; n++ {
		t := r.tok(j)
		switch {
		case t.tag == soilWord && t.shape == word:
			where, named = entry.Soil, named || t.text != "ground"
		case t.tag == airWord && t.shape == word:
			where, named = entry.Air, true
		case t.tag == tempWord && t.shape == word, t.tag == frostWord && t.shape == word:
			named = true
			frost = frost || t.tag == frostWord
			if t.tag == frostWord && where == "" {
				where = entry.Air
			}
		case (t.tag == minWord || t.tag == maxWord) && t.shape == word:
			side, named = t.tag, true
		case t.shape == number && r.tok(j+1).tag == cmUnit && (r.tok(j+2).tag == soilWord || r.tok(j+2).tag == tempWord):
			j++
		case named && t.text == "," && r.tok(j+1).shape == word && (r.tok(j+1).tag == minWord || r.tok(j+1).tag == maxWord) && side == unknown:
		case named && r.hourOf(j) > j:
			j = r.hourOf(j) - 1
		case named && (t.text == ":" || t.text == "=" || t.text == "was" || t.text == "is" || t.text == "at" && r.tok(j+2).tag != cmUnit || t.text == "of" || t.text == "range" || t.text == "ranged" || t.text == "only" || t.text == "just" || t.text == "now" || t.text == "today"):
		case where != "" && j == i+1 && r.oneOf(j, "thermometer", "thermo", "probe", "gauge"):
			named, instrument = true, true
		case named && j > i && (r.oneOf(j, "reads", "read", "reading", "shows", "showed", "showing") || instrument && r.oneOf(j, "says", "said", "reckons")):
		case named && t.text == "at" && r.tok(j+2).tag == cmUnit:
			j += 2
		default:
			break loop
		}
		j++
	}
	if k := r.downAndUp(c, j, where); named && k > j {
		return k
	}
	v, k, ok := r.plain(j)
	if k := r.over(i+1, "temp", "temps", "temperature", "temperatures"); !ok && c.where == "" && (r.oneOf(i, "soil") && k > i+1 || r.oneOf(i, "air")) && r.when(k).ok {
		c.where = where // "soil temp yesterday at nine was 10", "air yesterday min 3 max 11"
		return k
	}
	if !ok || !named && j > i {
		return i
	}
	told := k
	deg, fahrenheit, k := r.degrees(k)
	r.unitTold = deg
	c.heated = c.heated || fahrenheit
	below := v < 0 && (r.tok(k).tag == airWord || r.tok(k).tag == frostWord) // "minus 2 air", "-3 frost"
	if below && r.tok(k).tag == frostWord {
		where, k = entry.Air, k+1
	}
	if !named && !deg && !below && !r.leastFirst(j) || !deg && r.unitAhead(k) && r.tok(k).tag != monthName {
		return i
	}
	if named && !deg && r.tok(k).tag == mmUnit {
		return i
	}
	if fahrenheit {
		v = (v - 32) / 1.8
	}
	for last := k + longestRun; k < last && (r.tok(k).tag == soilWord || r.tok(k).tag == airWord || r.tok(k).tag == tempWord) && !r.otherReading(k, where); {
		if r.tok(k).text == "soil" && where == entry.Air || r.tok(k).tag == airWord && where == entry.Soil {
			c.unsure(whichIsWhich) // "11 soil 18 air"
		}
		if r.tok(k).text == "soil" {
			where = entry.Soil
		} else if r.tok(k).tag == airWord {
			where = entry.Air
		}
		k++
	}
	if (len(c.temps) > 0 || c.low != nil || c.high != nil) && c.where != "" && where != "" && where != c.where {
		r.cut = true
		return i // "soil 11 air 18": another reading
	}
	k = r.leastAndMost(c, v, k, where, side)
	if frost && !deg && v > 5 {
		c.unsure(fahrenheitOrNot)
	}
	if c.doubt == fahrenheitOrNot || c.tooHot > 0 {
		r.offerUnit(fahrenheitOrNot, j, told, "°F", "°C")
	}
	return k
}

const fahrenheitOrNot = "Is that in degrees Fahrenheit? Please send it with °F or °C."

// hourOf steps over the hour of a reading, which must be plain as one: "soil
// temp at nine in the morning was 10".
func (r *reader) hourOf(i int) int {
	k, ok := r.clock(i)
	if !ok {
		return i
	}
	j := r.over(k, "in", "the")
	switch {
	case j > k && r.tok(j).tag == daytimeWord:
		return j + 1
	case r.oneOf(k-1, "am", "pm", "oclock", "m") || r.oneOf(k, "was", "were", "is"):
		return k
	}
	return i
}

// mostSoil is the warmest soil that is taken without asking, in °C (ours).
const mostSoil = 40

// keepTemperature lays a reading in its place.
func (r *reader) keepTemperature(c *clause, v float64, where entry.Thermometer, side tag) {
	c.acts |= actTemp
	most := 50.0
	if where == entry.Soil {
		most = mostSoil
	}
	bare := r.monthFirst && !r.unitTold
	switch {
	case bare && side != unknown && v > most:
		c.tooHot++ // both the least and the most of a day: settled in temperatures
	case v < -60, v > most, bare && v >= 20:
		c.unsure(fahrenheitOrNot)
	}
	if where != "" {
		c.where = where
	}
	if side == minWord && c.low != nil || side == maxWord && c.high != nil {
		c.unsure(whichIsWhich)
	}
	switch side {
	case minWord:
		c.low, c.bareLow = &v, !r.unitTold
	case maxWord:
		c.high, c.bareHigh = &v, !r.unitTold
	default:
		c.temps = append(c.temps, v)
	}
}

// fromFahrenheit takes the least and the most of a day in Fahrenheit where one was
// told so and the other without a unit ("low 41 high 77 F"), or where, in the United
// States, neither has one and one of them cannot be in Celsius. What no day has is
// asked about.
func (r *reader) fromFahrenheit(c *clause) string {
	if c.low == nil || c.high == nil {
		if c.tooHot > 0 {
			return fahrenheitOrNot
		}
		return ""
	}
	if c.tooHot == 0 && !(c.heated && c.bareLow != c.bareHigh) {
		return ""
	}
	low, high := *c.low, *c.high
	if c.bareLow {
		low = (low - 32) / 1.8
	}
	if c.bareHigh {
		high = (high - 32) / 1.8
	}
	if high-low > 70/1.8 || high > 50 || high > mostSoil && c.where == entry.Soil || low < -50 {
		return fahrenheitOrNot
	}
	c.low, c.high, c.tooHot = &low, &high, 0
	if c.heated && c.doubt == fahrenheitOrNot {
		c.doubt = ""
	}
	return ""
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
