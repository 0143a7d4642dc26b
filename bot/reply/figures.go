package reply

import (
	"math"
	"reflect"
	"strconv"

	"leafround/core/entry"
)

// number gives any figure as a float.
func number(v any) float64 {
	r := reflect.ValueOf(v)
	for r.Kind() == reflect.Pointer {
		if r.IsNil() {
			return math.NaN()
		}
		r = r.Elem()
	}
	switch {
	case r.CanFloat():
		return r.Float()
	case r.CanInt():
		return float64(r.Int())
	}
	return math.NaN()
}

// tenth rounds to a tenth and drops a zero: 2.2, 3.
func tenth(v any) string {
	return strconv.FormatFloat(math.Round(number(v)*10)/10, 'f', -1, 64)
}

// whole rounds to a whole number, with commas from four digits on.
func whole(v any) string {
	s := strconv.FormatFloat(math.Round(number(v)), 'f', 0, 64)
	if len(s) > 3 && s[0] != '-' {
		return s[:len(s)-3] + "," + s[len(s)-3:]
	}
	return s
}

// leaves words a leaf stage: 2.2 leaves, 1 leaf, no new leaf.
func leaves(v any) string {
	switch s := tenth(v); s {
	case "0", "-0":
		return "no new leaf"
	case "1":
		return "1 leaf"
	default:
		return s + " leaves"
	}
}

// upTo words a leaf stage that can't be told above the grass's last live leaf.
func upTo(v, most any) string {
	if number(v) >= number(most) {
		return leaves(most) + " or more"
	}
	return leaves(v)
}

// about is upTo with "about" before what is only estimated.
func about(v, most any) string {
	if number(v) >= number(most) || number(v) < 0.05 {
		return upTo(v, most)
	}
	return "about " + leaves(v)
}

// stands words where a paddock stands.
func stands(v, most any) string {
	if number(v) < 0.05 {
		return "has no new leaf yet"
	}
	return "stands at " + about(v, most)
}

// days words a number of days, whole.
func days(v any) string {
	s := whole(v)
	if s == "1" {
		return "1 day"
	}
	return s + " days"
}

// perLeaf words a pace.
func perLeaf(v any) string {
	s := tenth(v)
	if number(v) >= 20 {
		s = whole(v)
	}
	if s == "1" {
		return "1 day a leaf"
	}
	return s + " days a leaf"
}

// area words an area in the farm's unit: to a tenth, and to a hundredth where
// it is less than one.
func (v Voice) area(ha any) string {
	n, unit := number(ha), " ha"
	if v.Acres {
		n, unit = n/entry.HectaresPerAcre, " acres"
	}
	if n < 1 {
		return hundredth(n) + unit
	}
	return tenth(n) + unit
}

// hundredth rounds to a hundredth and drops zeros: 0.12, 0.5.
func hundredth(v any) string {
	return strconv.FormatFloat(math.Round(number(v)*100)/100, 'f', -1, 64)
}

func mm(v any) string { return tenth(v) + " mm" }

// percent words a share.
func percent(v any) string {
	p := number(v) * 100
	if p != 0 && math.Abs(p) < 0.1 {
		return "less than 0.1 %"
	}
	if math.Abs(p) >= 10 {
		return whole(p) + " %"
	}
	return tenth(p) + " %"
}

// exact words a leaf stage that somebody set, to a hundredth: 2.75 leaves.
func exact(v any) string {
	s := hundredth(v)
	if s == "1" {
		return "1 leaf"
	}
	return s + " leaves"
}
