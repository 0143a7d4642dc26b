package parser

import (
	"strings"
	"time"

	"leafround/core/entry"
)

// moment is a day as told.
type moment struct {
	day     entry.Date
	next    int
	vague   bool // tonight, this arvo before noon: may lie ahead
	weekday bool // only a weekday's name
	ok      bool
}

// when reads a day.
//
//	when    = [ "on" | "since" | "from" ] day [ daytime ] | daytime-of-today
//	day     = "today" | "yesterday" | "tomorrow" | "last" "night" | count unit "ago"
//	        | [ "last" | "next" | "this" ] weekday | ordinal [ month ] | number month | month number
//	        | number "/" number [ "/" year ] | iso
func (r *reader) when(i int) moment {
	t := r.tok(i)
	if t.shape == word && (t.tag == onWord || t.tag == sinceWord) {
		if m := r.day(i + 1); m.ok {
			return r.daytime(m)
		}
		return moment{}
	}
	m := r.day(i)
	if !m.ok {
		return moment{}
	}
	return r.daytime(m)
}

// daytime steps over the hour behind a day: "yesterday arvo", "fri 6am".
func (r *reader) daytime(m moment) moment {
	for last := m.next + longestRun; m.next < last; {
		t := r.tok(m.next)
		switch {
		case t.tag == daytimeWord, t.tag == nightWord:
			m.next++
		case t.tag == clockWord:
			m.next++
		default:
			if k, ok := r.clock(m.next); ok {
				m.next = k
				continue
			}
			return m
		}
	}
	return m
}

// clock reads an hour: 6am, 6:15, 5.30pm, at 6, at noon.
func (r *reader) clock(i int) (int, bool) {
	t := r.tok(i)
	if t.tag == atWord && i > 0 && lookWords[r.tok(i-1).text] {
		return i, false // "looked at 5 and 6"
	}
	at := t.tag == atWord || t.text == "@" || t.text == "by" && r.tok(i+1).shape == number && i > 0
	if at {
		i++
		t = r.tok(i)
	}
	if t.tag == clockWord || at && t.text == "milking" {
		return i + 1, true
	}
	if k := r.halfHour(i, at); k > i {
		return k, true
	}
	if at && t.tag == numberWord && t.sense > 0 && t.sense <= 12 && !r.unitAhead(i+1) && r.tok(i+1).tag != partWord && r.tok(i+1).tag != pointWord && r.tok(i+1).tag != andWord && r.tok(i+1).tag != leafUnit {
		return i + 1, true // at nine
	}
	if t.tag == numberWord && t.sense > 0 && t.sense <= 12 && r.oneOf(i+1, "oclock") {
		return i + 2, true // four o'clock
	}
	if t.shape != number || t.value >= 25 {
		return i, false
	}
	u := r.tok(i + 1)
	if at && !t.decimal && t.value >= 1 && t.value <= 12 && u.text != ":" && u.shape != part && !r.unitAhead(i+1) && u.tag != leafUnit && !(u.shape == number && u.glued) && u.text != "/" {
		return i + 1, true // at 6
	}
	if t.decimal && at && r.pointedHour(i) {
		return r.over(i+1, "am", "pm"), true // at 5.30
	}
	if u.text == ":" && u.glued {
		if v := r.tok(i + 2); v.shape == number && v.glued && len(v.text) == 2 && v.value < 60 {
			i += 2
			if r.tok(i+1).text == "am" || r.tok(i+1).text == "pm" {
				i++
			}
			return i + 1, true
		}
		return i, false
	}
	if u.text == "am" || u.text == "pm" || u.text == "oclock" {
		return i + 2, true
	}
	if r.tok(i+1).text == "a" && r.tok(i+2).text == "m" {
		return i + 3, true
	}
	return i, false
}

// pointedHour tells whether a number with a point is an hour: two digits of
// minutes, and nothing behind it that is measured.
func (r *reader) pointedHour(i int) bool {
	t := r.tok(i)
	whole, minutes, _ := strings.Cut(t.text, ".")
	if len(minutes) != 2 || minutes > "59" || minutes == "25" || minutes == "50" || whole == "" || t.value < 1 || t.value >= 13 || r.unitAhead(i+1) {
		return false
	}
	u := r.tok(i + 1)
	if r.tok(i-3).text == "/" {
		return false // "moved to 3/11 at 2.30"
	}
	return u.shape == end || u.shape == newline || u.text == "." || u.text == "," || u.text == "am" || u.text == "pm" || u.tag == thisWord || u.tag == daytimeWord || u.tag == todayWord || u.tag == yesterdayWord
}

// lookWords are followed by what is looked at, not by the hour.
var lookWords = wordSet(`look looked looking squiz glance glanced gander peek peeked nosey butchers`)

func (r *reader) day(i int) moment {
	t := r.tok(i)
	is := func(d entry.Date, n int) moment { return moment{day: d, next: i + n, ok: true} }
	u := r.tok(i + 1)
	switch t.tag {
	case todayWord:
		return is(r.today, 1)
	case yesterdayWord:
		return is(r.today-1, 1)
	case tomorrowWord:
		return is(r.today+1, 1)
	case tonightWord:
		m := is(r.today, 1)
		m.vague = true
		return m
	case lastWord:
		return r.lastDay(i)
	case thisWord:
		return r.thisDay(i)
	case nextWord:
		if u.tag == weekdayWord {
			return is(r.weekdayAfter(int(u.sense), r.today), 2)
		}
	case weekdayWord:
		return r.weekday(i)
	case dayUnit:
		if w := r.tok(i + 2); t.text == "day" && (u.text == "before" || u.text == "b4") && w.tag == yesterdayWord {
			return is(r.today-2, 3)
		}
	case monthName:
		return r.monthDay(i)
	case ordinalWord:
		return r.ordinalDay(i, int(t.sense), i+1)
	}
	switch {
	case t.text == "may" && u.shape == number && r.isMonth(i):
		return r.monthDayOf(i, int(time.May))
	case t.text == "the" && (u.shape == number || u.tag == ordinalWord || u.text == "day"):
		m := r.day(i + 1)
		if m.ok && u.shape == number && r.tok(i+2).tag != monthName && !isOrdinalMark(r.tok(i+2)) {
			return moment{}
		}
		return m
	case t.text == "2" && u.text == "day" && u.glued:
		return is(r.today, 2)
	case t.text == "2" && (u.text == "nite" || u.text == "night") && u.glued:
		m := is(r.today, 2)
		m.vague = true
		return m
	case t.text == "2" && (u.text == "morrow" || u.text == "moro" || u.text == "moz") && u.glued:
		return is(r.today+1, 2)
	case t.text == "a" || t.text == "an" || t.shape == number || t.tag == numberWord:
		return r.numberedDay(i)
	}
	return moment{}
}

func isOrdinalMark(t *token) bool {
	return t.glued && (t.text == "st" || t.text == "nd" || t.text == "rd" || t.text == "th")
}

// lastDay reads "last night", "last tues", "last week" is none.
func (r *reader) lastDay(i int) moment {
	u := r.tok(i + 1)
	switch u.tag {
	case nightWord, daytimeWord:
		return moment{day: r.today - 1, next: i + 2, ok: true}
	case weekdayWord:
		d := r.weekdayBefore(int(u.sense), r.today-1)
		return moment{day: d, next: i + 2, ok: true}
	}
	return moment{}
}

// thisDay reads "this morning", "this arvo", "this am".
func (r *reader) thisDay(i int) moment {
	u := r.tok(i + 1)
	switch {
	case u.tag == daytimeWord:
		ahead := (u.text == "arvo" || u.text == "afternoon" || u.text == "pm") && r.hour < 12 ||
			(u.text == "evening" || u.text == "eve") && r.hour < 16
		return moment{day: r.today, next: i + 2, ok: true, vague: ahead}
	case u.tag == nightWord:
		return moment{day: r.today, next: i + 2, ok: true, vague: true}
	case u.tag == weekdayWord:
		m := r.weekday(i + 1)
		m.vague = m.day != r.today
		return m
	}
	return moment{}
}

// weekday reads a weekday's name: the latest one past, today if today is that
// day. "sun" and "sat" alone are weather and past tense only where the clause
// says so, which is never in our texts.
func (r *reader) weekday(i int) moment {
	t := r.tok(i)
	u := r.tok(i + 1)
	if r.oneOf(i, "sat") && r.oneOf(i+1, "on", "around", "about") && r.tok(i+2).decimal && r.tok(i+2).value <= 5 {
		return moment{} // "12 sat on 2.25"
	}
	if r.oneOf(i, "sun") && (r.oneOf(i-1, "the", "some", "more", "of") || r.oneOf(i-1, "for") && r.oneOf(i-2, "pray", "praying", "prayer", "prayers", "wish", "crossed", "need", "hope")) && u.shape != number {
		return moment{} // "pray for sun"
	}
	if r.oneOf(i, "sat") && r.seated(i) {
		return moment{} // "did these sat on a rock"
	}
	if u.text == "week" {
		return moment{day: r.weekdayAfter(int(t.sense), r.today) + 7, next: i + 2, ok: true}
	}
	next := i + 1
	if u.text == "." && u.glued && len(t.text) <= 5 {
		next++ // "Sat. 3 Nov"
	}
	if n := r.tok(next); n.shape == number || n.tag == monthName || n.text == "the" {
		if m := r.day(next); m.ok && (m.day.Weekday() == time.Weekday(t.sense) || n.tag == monthName || r.tok(next+1).tag == monthName) {
			return m
		}
	}
	d := r.weekdayBefore(int(t.sense), r.today)
	if r.ahead {
		d = r.weekdayAfter(int(t.sense), r.today)
	}
	return moment{day: d, next: i + 1, ok: true, weekday: true}
}

// seated tells whether "sat" is what somebody did, not the day.
func (r *reader) seated(i int) bool {
	k := r.over(i+1, "here", "there", "down", "up", "back", "right", "just")
	switch {
	case r.oneOf(k, "on", "in", "at", "under", "beside", "by", "behind", "against", "inside", "outside", "with"):
		k++
		return r.oneOf(k, "the", "a", "an", "my", "me", "his", "her", "our", "top") && r.tok(k+1).tag != daytimeWord && r.tok(k+1).tag != nightWord && !r.padAhead(k)
	case r.oneOf(k, "waiting", "watching", "having", "eating", "idle", "doing", "drinking", "looking", "talking"):
		return true
	}
	return r.oneOf(i-1, "been", "was", "were", "i", "we", "just") && (k > i+1 || r.tok(k).shape == word && r.tok(k).tag != daytimeWord)
}

// weekdayBefore gives the latest such weekday up to and including from.
func (r *reader) weekdayBefore(wd int, from entry.Date) entry.Date {
	return from - entry.Date((int(from.Weekday())-wd+7)%7)
}

// weekdayAfter gives the first such weekday after from.
func (r *reader) weekdayAfter(wd int, from entry.Date) entry.Date {
	n := (wd - int(from.Weekday()) + 7) % 7
	if n == 0 {
		n = 7
	}
	return from + entry.Date(n)
}

// numberedDay reads what starts with a number: 2 days ago, 3rd, 3 Nov, 3/11.
func (r *reader) numberedDay(i int) moment {
	t := r.tok(i)
	n, u := int(t.value), r.tok(i+1)
	switch {
	case t.text == "a", t.text == "an":
		n = 1
	case t.tag == numberWord:
		n = int(t.sense)
	case t.shape == number && !t.decimal && len(t.text) == 4 && u.text == "-" && u.glued:
		return r.isoDay(i)
	}
	if t.decimal || n > 400 {
		return moment{}
	}
	if u.tag == hourUnit && r.tok(i+2).tag == agoWord && n < 13 && n <= r.hour+1 {
		return moment{day: r.today, next: i + 3, ok: true}
	}
	if days := unitDays(u); days > 0 {
		if r.tok(i+2).tag == agoWord {
			return moment{day: r.today - entry.Date(n*days), next: i + 3, ok: true}
		}
		return moment{}
	}
	if t.shape != number {
		return moment{}
	}
	switch {
	case isOrdinalMark(u):
		return r.ordinalDay(i, n, i+2)
	case u.tag == monthName:
		return r.dayMonth(n, int(u.sense), i+2)
	case u.text == "may" && r.isMonth(i+1):
		return r.dayMonth(n, int(time.May), i+2)
	case u.text == "/" && u.glued:
		return r.slashDay(i)
	}
	return moment{}
}

// isMonth tells whether "may" is the month: no verb follows it.
func (r *reader) isMonth(i int) bool {
	t := r.tok(i + 1)
	return t.shape != word || t.tag != unknown && t.tag != filler && t.tag != planWord && t.tag != notWord && t.tag != grazeWord && t.tag != moveWord && t.tag != cutWord
}

func unitDays(t *token) int {
	switch {
	case t.tag == dayUnit:
		return 1
	case t.tag == weekUnit:
		return 7
	case t.text == "fortnight" || t.text == "fortnights":
		return 14
	}
	return 0
}
