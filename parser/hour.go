package parser

// halfHour reads an hour told by its half or quarter, or by minutes: "half 5",
// "half past five", "quarter to 6", "20 past 4". "Half 5" alone may be a half
// of paddock 5: a word of time must stand before it.
//
//	halfHour = ( "half" | "quarter" | minutes ) [ "past" | "to" | "after" ] hour [ "am" | "pm" ]
func (r *reader) halfHour(i int, at bool) int {
	t := r.tok(i)
	k := i
	if t.text == "a" {
		k++
	}
	minutes, _ := r.whole(k)
	switch {
	case r.tok(k).shape == word && r.oneOf(k, "half", "quarter"):
	case (minutes == 5 || minutes == 10 || minutes == 20 || minutes == 25) && r.oneOf(k+1, "past", "to") && (at || r.oneOf(i-1, "by", "about", "around")):
	default:
		return i
	}
	half := r.oneOf(k, "half")
	k++
	past := r.oneOf(k, "past", "after") || r.oneOf(k, "to", "til", "till") && !half
	if past {
		k++
	}
	b := r.tok(i - 1)
	if n := r.tok(k + 1); !past && half && r.oneOf(k+1, "milking", "start") && n.shape == word {
		return k + 1
	}
	if !past && (!half || !at && !(b.shape == word && r.oneOf(i-1, "by", "about", "around", "bout", "since", "before", "after", "til", "till", "until", "roughly"))) {
		return i
	}
	n, next := r.whole(k)
	if next == k || n < 1 || n > 12 || r.unitAhead(next) {
		return i
	}
	if r.oneOf(next, "ish", "oclock") {
		next++
	}
	if u := r.tok(next); u.text == "am" || u.text == "pm" {
		next++
	}
	return next
}
