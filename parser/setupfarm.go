package parser

import (
	"fmt"
	"strings"
	"time"

	"leafround/core/entry"
)

// setFarm reads the farm's name and zone.
//
//	farm = "set" "up" name "," zone
func (r *reader) setFarm(from, to int) (s entry.Setup, why string, ok bool) {
	i, ok := r.run(from, "set", "up")
	if !ok {
		if i, ok = r.run(from, "setup"); !ok {
			return s, "", false
		}
	}
	for r.oneOf(i, "farm", "the", "our", ":") && i+1 < to {
		i++
	}
	if r.oneOf(i, "a", "an", "some", "new", "another", "for", "in", "on") {
		return s, "", false // "set up a break in 12"
	}
	text := r.source(i, to)
	if text == "" {
		return s, "What is the farm called, and in which time zone? For instance: set up Totara Bend, Pacific/Auckland", true
	}
	name, zone, found := cutLast(text, ",")
	if !found {
		name, zone, found = cutLast(text, " ")
		if !strings.Contains(zone, "/") {
			return s, "In which time zone? For instance: set up " + text + ", Pacific/Auckland", true
		}
	}
	z, known := zoneName(strings.TrimSpace(zone))
	if !known {
		return s, fmt.Sprintf("I know no time zone %q. Please send one like Pacific/Auckland or Europe/Dublin.", strings.TrimSpace(zone)), true
	}
	return entry.Setup{What: entry.SetFarm, Name: strings.TrimSpace(name), Zone: z}, "", found
}

func cutLast(s, sep string) (before, after string, found bool) {
	i := strings.LastIndex(s, sep)
	if i < 0 {
		return s, "", false
	}
	return s[:i], s[i+len(sep):], true
}

// zoneName gives the IANA spelling of a zone.
func zoneName(s string) (string, bool) {
	s = strings.ReplaceAll(strings.TrimRight(s, ".! "), " ", "_")
	if s == "" || strings.EqualFold(s, "local") {
		return "", false
	}
	try := []string{s, titleZone(s)}
	if strings.EqualFold(s, "utc") || strings.EqualFold(s, "gmt") {
		try = []string{"UTC"}
	}
	for _, z := range try {
		if _, err := time.LoadLocation(z); err == nil {
			return z, true
		}
	}
	return "", false
}

// titleZone writes pacific/auckland as Pacific/Auckland.
func titleZone(s string) string {
	b := []byte(strings.ToLower(s))
	for i := range b {
		if (i == 0 || b[i-1] == '/' || b[i-1] == '_') && 'a' <= b[i] && b[i] <= 'z' {
			b[i] -= 'a' - 'A'
		}
	}
	return string(b)
}

// setSummary reads the hour of the daily summary.
//
//	summary = "summary" [ "at" ] hour ":" minute [ "am" | "pm" ] | "summary" "off"
func (r *reader) setSummary(from, to int) (s entry.Setup, why string, ok bool) {
	i := from
	for r.oneOf(i, "set", "send", "daily", "the", "morning", "change", "move", "make", "turn", "no", "stop") && r.tok(i).shape == word {
		i++
	}
	if r.tok(i).text != "summary" {
		return s, "", false
	}
	off := r.oneOf(from, "no", "stop")
	i++
	if i == to {
		if off {
			return entry.Setup{What: entry.SetSummary, Off: true}, "", true
		}
		return s, "", false
	}
	for r.oneOf(i, "at", "to", "time", "is", ":", "for", "@") {
		i++
	}
	if r.oneOf(i, "off", "stop", "none", "never") && i+1 == to {
		return entry.Setup{What: entry.SetSummary, Off: true}, "", true
	}
	at, k := r.timeOfDay(i)
	if k == i || k != to {
		if r.tok(i).shape == number || r.tok(i-1).tag == atWord {
			return s, "At what time should the summary come? For instance: summary 6:15", true
		}
		return s, "", false
	}
	return entry.Setup{What: entry.SetSummary, At: at}, "", true
}

// timeOfDay reads 6:15, 6.15, 6am, 0615, 18:00, noon.
func (r *reader) timeOfDay(i int) (string, int) {
	t := r.tok(i)
	h, m, k := 0, 0, i+1
	switch {
	case t.text == "noon" || t.text == "midday":
		return "12:00", i + 1
	case t.text == "midnight":
		return "00:00", i + 1
	case t.shape != number:
		return "", i
	case t.decimal:
		whole, frac, _ := strings.Cut(t.text, ".")
		if len(frac) != 2 {
			return "", i
		}
		h, m = atoi(whole), atoi(frac)
	case len(t.text) == 4:
		h, m = atoi(t.text)/100, atoi(t.text)%100
	default:
		h = int(t.value)
	}
	if c, v := r.tok(k), r.tok(k+1); c.text == ":" && c.glued && v.shape == number && len(v.text) == 2 {
		m = int(v.value)
		k += 2
	}
	switch r.tok(k).text {
	case "am", "a":
		if h == 12 {
			h = 0
		}
		k++
	case "pm", "p":
		if h < 12 {
			h += 12
		}
		k++
	case "oclock", "hrs", "h":
		k++
	}
	if h > 23 || m > 59 {
		return "", i
	}
	return fmt.Sprintf("%02d:%02d", h, m), k
}

func atoi(s string) int {
	n := 0
	for i := 0; i < len(s) && i < 6; i++ {
		n = n*10 + int(s[i]-'0')
	}
	return n
}

// setAim reads the leaf stage that the farm grazes at.
//
//	aim = "aim" [ "for" ] score [ "leaves" ]
func (r *reader) setAim(from, to int) (s entry.Setup, why string, ok bool) {
	i := from
	for r.oneOf(i, "set", "our", "the", "we", "new", "change") {
		i++
	}
	if !r.oneOf(i, "aim", "target", "aiming") {
		return s, "", false
	}
	i++
	for r.oneOf(i, "for", "is", "at", "to", "of", ":", "=", "leaf", "stage") {
		i++
	}
	a, isNum := r.value(i)
	if !isNum {
		return s, "", false
	}
	k := a.next
	for r.tok(k).tag == leafUnit {
		k++
	}
	if k != to {
		return s, "", false
	}
	if a.value < 0.5 || a.value > 5 {
		return s, "At how many leaves do you want to graze? For instance: aim 2.75 leaves", true
	}
	return entry.Setup{What: entry.SetAim, Leaves: entry.LeafStage(a.value)}, "", true
}

// setPlace reads the farm's position.
//
//	position = [ "we" "are" "at" ] latitude [ "," ] longitude
func (r *reader) setPlace(from, to int) (s entry.Setup, why string, ok bool) {
	i := from
	said := false
	for r.oneOf(i, "we", "are", "were", "is", "at", "position", "location", "farm", "the", "lat", "latitude", "coordinates", "coords", "place", ":", "our", "its", "gps") {
		said = said || r.oneOf(i, "at", "position", "location", "lat", "coordinates", "coords", "place", "gps")
		i++
	}
	if !said {
		return s, "", false
	}
	lat, i, okLat := r.degreesOf(i, "n", "s")
	for r.oneOf(i, ",", "lon", "long", "lng", "longitude", ";", "/") {
		i++
	}
	lon, i, okLon := r.degreesOf(i, "e", "w")
	if !okLat || !okLon || i != to {
		return s, "", false
	}
	if lat < -90 || lat > 90 || lon < -180 || lon > 180 {
		return s, "That is no place on the map. Please send latitude and longitude, such as: we are at -37.81 175.28", true
	}
	return entry.Setup{What: entry.SetPlace, Lat: &lat, Lon: &lon}, "", true
}

// degreesOf reads a signed number of degrees with its hemisphere.
func (r *reader) degreesOf(i int, plus, minus string) (float64, int, bool) {
	sign := 1.0
	if r.tok(i).text == "-" {
		sign = -1
		i++
	} else if r.tok(i).text == "+" {
		i++
	}
	t := r.tok(i)
	if t.shape != number {
		return 0, i, false
	}
	v := t.value
	i++
	if r.tok(i).text == "°" {
		i++
	}
	switch r.tok(i).text {
	case plus:
		i++
	case minus:
		sign, i = -1, i+1
	}
	return sign * v, i, true
}
