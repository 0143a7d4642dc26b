package farm

import (
	"maps"
	"slices"

	"leafround/core/entry"
	"leafround/core/pace"
)

// Day is the weather of one day, as far as it was told.
type Day struct {
	Date     entry.Date
	Rain     *float64 // mm, all that was told added up
	Min, Max *float64 // °C, air: the latest told
	Mean     *float64 // °C, air: one reading
	Soil     *float64 // °C
	said     []item
}

// rain adds to the day's rain.
func (f *Farm) rain(l entry.Logged, e entry.Rain) { f.weatherItem(e.Date, itemOf(l)) }

// temperature adds a reading to the day.
func (f *Farm) temperature(l entry.Logged, e entry.Temperature) { f.weatherItem(e.Date, itemOf(l)) }

func (f *Farm) weatherItem(day entry.Date, it item) {
	d := f.weather[day]
	if d == nil {
		d = &Day{Date: day}
		f.weather[day] = d
	}
	d.said = slices.Insert(d.said, placeOf(d.said, it), it)
	f.stale[day] = true
}

// noWeather takes what one entry said of a day out again.
func (f *Farm) noWeather(day entry.Date, id int64) {
	if d := f.weather[day]; d != nil {
		d.said = slices.DeleteFunc(d.said, func(it item) bool { return it.id == id })
		f.stale[day] = true
	}
}

// tellWeather reckons the days anew of which something changed.
func (f *Farm) tellWeather() {
	for day := range f.stale {
		f.weather[day].reckon()
	}
}

// reckon adds the rain up and takes the latest of each temperature.
func (d *Day) reckon() {
	d.Rain, d.Min, d.Max, d.Mean, d.Soil = nil, nil, nil, nil, nil
	for _, it := range d.said {
		switch e := it.entry.(type) {
		case entry.Rain:
			sum := e.Mm
			if d.Rain != nil {
				sum += *d.Rain
			}
			d.Rain = &sum
		case entry.Temperature:
			d.warmth(e)
		}
	}
}

func (d *Day) warmth(e entry.Temperature) {
	one := e.Celsius
	if e.Where == entry.Soil {
		if one == nil && e.Min != nil && e.Max != nil {
			mean := (*e.Min + *e.Max) / 2
			one = &mean
		}
		d.Soil = latest(d.Soil, one)
		return
	}
	d.Mean = latest(d.Mean, one)
	d.Min, d.Max = latest(d.Min, e.Min), latest(d.Max, e.Max)
}

func latest(old, now *float64) *float64 {
	if now != nil {
		return now
	}
	return old
}

// Weather gives what was told of a day; ok is false where nothing was.
func (f *Farm) Weather(day entry.Date) (Day, bool) {
	d := f.weather[day]
	if d == nil || len(d.said) == 0 {
		return Day{Date: day}, false
	}
	return *d, true
}

// LastWeather gives the latest day of which rain and the latest of which a
// temperature was told; zero where none was.
func (f *Farm) LastWeather() (rain, warmth entry.Date) {
	for day, d := range f.weather {
		if d.Rain != nil {
			rain = max(rain, day)
		}
		if d.Min != nil || d.Max != nil || d.Mean != nil || d.Soil != nil {
			warmth = max(warmth, day)
		}
	}
	return rain, warmth
}

// RainSince adds up the rain of the days after one day, up to another.
func (f *Farm) RainSince(after, to entry.Date) (mm float64, told bool) {
	for day := after.Add(1); day <= to; day++ {
		if d := f.weather[day]; d != nil && d.Rain != nil {
			mm, told = mm+*d.Rain, true
		}
	}
	return mm, told
}

// weatherKey holds a day's figures as values that can be compared.
type weatherKey struct {
	has                        uint8
	rain, least, most, av, sub float64
}

func (d *Day) key() (k weatherKey) {
	for i, v := range []struct {
		from *float64
		to   *float64
	}{{d.Rain, &k.rain}, {d.Min, &k.least}, {d.Max, &k.most}, {d.Mean, &k.av}, {d.Soil, &k.sub}} {
		if v.from != nil {
			*v.to = *v.from
			k.has |= 1 << i
		}
	}
	return k
}

// weather tells the estimator of the days that changed.
func (c *estimator) weather(f *Farm) {
	for _, day := range slices.Sorted(maps.Keys(f.stale)) {
		d := f.weather[day]
		told, was := c.days[day]
		if k := d.key(); was && k == told.w || !was && k.has == 0 {
			continue
		}
		if was {
			c.since = min(c.since, day)
			c.keeper.Remove(told.id)
			delete(c.days, day)
		}
		if d.key().has != 0 {
			c.tellDay(d)
		}
	}
	clear(f.stale)
}

// forgetDays takes back what was told of days of which nothing is known now.
func (c *estimator) forgetDays(f *Farm) {
	for day, told := range c.days {
		if f.weather[day] == nil {
			c.since = min(c.since, day)
			c.keeper.Remove(told.id)
			delete(c.days, day)
		}
	}
}

func (c *estimator) tellDay(d *Day) {
	id := int64(d.Date) - 1<<40 // before whatever else the day brought
	c.days[d.Date] = toldDay{id, d.key()}
	c.news = append(c.news, pace.Event{ID: id, Day: d.Date, Do: &pace.Weather{Rain: d.Rain,
		Min: d.Min, Max: d.Max, Mean: d.Mean, Soil: d.Soil}})
}
