package parser

import (
	"leafround/core/entry"
)

// Rain and temperatures of several days may come in one sentence: "22 mil rain
// saturday 8 sunday", "soil temps: mon 12.1, tues 12.6, today 13".

// mostReadings is how many readings one series can hold (ours): a month's.
const mostReadings = 31

// reading is an amount with its day.
type reading struct {
	value float64
	per   float64 // millimetres in its unit, 0 where none was told
	days  moment
	from  int
	to    int
}

// series reads a sentence that is nothing but amounts of rain, or temperatures,
// each with its day, or one behind its day; ok is false where it is anything else, or where amounts
// and days may belong together in two ways.
//
//	series    = [ header ] reading { [ "," | "and" | "on" "top" "of" ] reading }
//	header    = [ depth | hour ] ( "rain" | [ "soil" | "air" ] "temp" ) [ ":" ]
//	reading   = amount day | day amount
func (r *reader) series(from, to, sentence int) (list []clause, ok bool) {
	if to-from > 6*mostReadings || !r.hasTag(from, to, rainWord) && !r.hasTag(from, to, gaugeWord) && !r.hasTag(from, to, tempWord) && !r.hasText(from, to, "soil") && !r.hasTag(from, to, mmUnit) {
		return nil, false
	}
	kind, where, start := r.seriesHeader(from)
	first, a := r.readings(start, to, kind, false)
	second, b := r.readings(start, to, kind, true)
	if a == b {
		return nil, false
	}
	got := first
	if b {
		got = second
	}
	rain, unit := kind == actRain, 0.0
	for _, one := range got {
		rain = rain || one.per > 0
		if unit == 0 {
			unit = one.per
		}
	}
	if kind == 0 && !rain {
		return nil, false
	}
	ahead := guard(0)
	for _, one := range got {
		if one.days.day > r.today || one.days.vague {
			ahead = guardFuture // a forecast
		}
	}
	for n, one := range got {
		c := clause{from: one.from, to: one.to, days: one.days, sentence: sentence, where: where, guard: ahead, future: ahead != 0, series: true}
		if n == 0 {
			c.from = from
		}
		if kind == actTemp {
			r.keepTemperature(&c, one.value, where, 0)
		} else {
			c.acts = actRain
			c.mm = one.value * rainPer(one.per, unit)
			if c.mm > 1000 || c.mm < 0 {
				c.unsure("How much rain was that, in millimetres?")
			}
		}
		list = append(list, c)
	}
	return list, true
}

// rainPer gives the millimetres in a unit, or in the one told beside it.
func rainPer(per, beside float64) float64 {
	switch {
	case per > 0:
		return per
	case beside > 0:
		return beside
	}
	return 1
}

// seriesHeader reads what the amounts are of.
func (r *reader) seriesHeader(i int) (kind act, where entry.Thermometer, next int) {
	if k, ok := r.clock(i); ok && (r.tok(k).tag == soilWord || r.tok(k).tag == tempWord || r.tok(k).tag == airWord) {
		i = k // "9am soil temps"
	}
	start := i
	for {
		t := r.tok(i)
		switch {
		case t.shape == number && r.tok(i+1).tag == cmUnit && (r.tok(i+2).tag == soilWord || r.tok(i+2).tag == tempWord):
			i++
		case t.shape != word && t.text != ":" && t.text != "-" && t.text != "=":
			return kind, where, i
		case t.tag == soilWord && (t.text == "soil" || r.tok(i+1).tag == tempWord):
			kind, where = actTemp, entry.Soil
		case t.tag == airWord:
			kind, where = actTemp, entry.Air
		case t.tag == tempWord:
			kind = actTemp
		case t.tag == rainWord, t.tag == gaugeWord:
			kind = actRain
		case t.shape == mark && (i == start || r.negative(i)):
			return kind, where, i
		case t.shape == mark, t.tag == courtesy, t.text == "the", t.text == "in", t.text == "we", t.text == "had", t.text == "got", t.text == "was", t.text == "were", t.text == "readings", t.tag == mmUnit && kind == actRain:
		default:
			return kind, where, i
		}
		i++
	}
}

// readings reads amounts with their days to the end, day first or amount first;
// two or more of them.
func (r *reader) readings(i, to int, kind act, dayFirst bool) (list []reading, ok bool) {
	for len(list) < mostReadings {
		one, k, ok := r.reading(i, to, kind, dayFirst)
		if !ok {
			return nil, false
		}
		list = append(list, one)
		i = r.readingJoin(k)
		for i < to && r.tok(i).tag == courtesy {
			i++
		}
		if i >= to {
			return list, len(list) > 1 || dayFirst && kind != 0
		}
	}
	return nil, false
}

// readingJoin steps over what parts two readings.
func (r *reader) readingJoin(i int) int {
	if k, ok := r.run(i, "on", "top", "of"); ok {
		return r.over(k, "the", "that")
	}
	for r.joins(i) || r.tok(i).tag == thenWord || r.tok(i).text == ";" {
		i++
	}
	return i
}

// reading reads one amount with its day.
func (r *reader) reading(i, to int, kind act, dayFirst bool) (one reading, next int, ok bool) {
	one.from = i
	if dayFirst {
		if one.days = r.when(i); !one.days.ok {
			return one, i, false
		}
		i = one.days.next
		for r.oneOf(i, ":", "=", "was", "had", "got", "-") && !r.negative(i) {
			i++
		}
	}
	t := r.tok(i)
	if t.shape != number && t.tag != numberWord && t.tag != hedgeWord && !r.negative(i) || !dayFirst && r.day(i).ok {
		return one, i, false
	}
	v, k, ok := r.plain(i)
	if !ok {
		return one, i, false
	}
	one.value = v
	if kind == actTemp {
		_, fahrenheit, j := r.degrees(k)
		if fahrenheit {
			return one, i, false
		}
		k = j
	} else {
		one.per, k = r.rainUnit(k)
		if r.tok(k).tag == ofWord && r.tok(k+1).tag == rainWord {
			k++
		}
		if r.tok(k).tag == rainWord {
			k++
		}
	}
	if !dayFirst {
		if one.days = r.when(k); !one.days.ok {
			return one, i, false
		}
		k = one.days.next
	}
	one.to = k
	return one, k, k <= to
}
