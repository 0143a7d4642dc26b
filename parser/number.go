package parser

// amount is a number as read, and the token behind it.
type amount struct {
	value   float64
	decimal bool // written with a point, a comma or a fraction
	next    int
}

// value reads one number in any notation.
//
//	value = whole [ fraction ] | fraction | decimal | number-word [ fraction-words | "point" digit-word ]
func (r *reader) value(i int) (amount, bool) {
	t := r.tok(i)
	switch {
	case t.shape == number:
		return r.digits(i)
	case t.shape == part:
		return amount{t.value, true, i + 1}, true
	case t.tag == numberWord:
		return r.wordValue(i)
	case t.tag == partWord && t.shape == word:
		return amount{quarters(t) / 4, true, i + 1}, true
	case t.text == "a" && r.tok(i+1).text == "leaf" && r.tok(i+1).tag == leafUnit:
		if f, next, ok := r.andPart(i + 2); ok {
			return amount{1 + f, true, next}, true // a leaf and a half
		}
	case t.text == "a" && r.tok(i+1).tag == partWord:
		return amount{quarters(r.tok(i+1)) / 4, true, i + 2}, true
	}
	return amount{}, false
}

// quarters gives how many quarters a word like "half" is.
func quarters(t *token) float64 { return float64(t.sense) }

// digits reads what starts with a digit.
//
//	digits = number [ part | number "/" number | "and" "a" half ] | number "/" number | number "," number
func (r *reader) digits(i int) (amount, bool) {
	t := r.tok(i)
	if f, next, ok := r.slashed(i); ok {
		return amount{f, true, next}, true
	}
	if t.decimal {
		return amount{t.value, true, i + 1}, true
	}
	if u := r.tok(i + 1); u.shape == part && (u.glued || !r.partsApart(i)) {
		return amount{t.value + u.value, true, i + 2}, true
	}
	if f, next, ok := r.slashed(i + 1); ok && f < 1 && r.tok(i+1).shape == number {
		return amount{t.value + f, true, next}, true
	}
	if r.commas == commaDecimal && r.commaPair(i) {
		u := r.tok(i + 2)
		return amount{t.value + u.value/pow10(len(u.text)), true, i + 3}, true
	}
	if f, next, ok := r.andPart(i + 1); ok {
		return amount{t.value + f, true, next}, true
	}
	return amount{t.value, false, i + 1}, true
}

// partsApart tells whether a list writes its parts close to their whole numbers
// and has parts alone as well, so that a part with a space before it is a score of its own: "¾ 1 1¼ 1 ¾".
// What was found holds for the whole list.
func (r *reader) partsApart(i int) bool {
	if r.apartFrom <= i && i < r.apartTo {
		return r.apart
	}
	inList := func(t *token) bool { return t.shape == number || t.shape == part || t.text == "," }
	from, to := i, i
	for inList(r.tok(from-1)) && i-from < 4*mostTillers {
		from--
	}
	for inList(r.tok(to+1)) && to-i < 4*mostTillers {
		to++
	}
	close, alone := false, false
	for k := from; k <= to; k++ {
		if t := r.tok(k); t.shape == part {
			behind := k > from && r.tok(k-1).shape == number
			close, alone = close || behind && t.glued, alone || !behind
		}
	}
	r.apart, r.apartFrom, r.apartTo = close && alone, from, to+1
	return r.apart
}

// slashed reads a fraction of two whole numbers below one: 1/2, 3/4.
func (r *reader) slashed(i int) (f float64, next int, ok bool) {
	a, s, b := r.tok(i), r.tok(i+1), r.tok(i+2)
	if a.shape != number || a.decimal || s.text != "/" || !s.glued || b.shape != number || b.decimal || !b.glued {
		return 0, i, false
	}
	if b := r.tok(i - 1); i > 0 && b.text == "/" && b.glued {
		return 0, i, false
	}
	if n := r.tok(i + 3); n.text == "/" && n.glued {
		return 0, i, false // a date, or a list with slashes
	}
	if a.value >= b.value || b.value > 10 || a.value == 0 {
		return 0, i, false
	}
	if oddParts[b.text] && r.lately(i, 21) {
		return 0, i, false // 5/6 is a day of the last weeks
	}
	return a.value / b.value, i + 3, true
}

// oddParts are parts that nobody judges a leaf by; two numbers with a slash
// between them are rather a day.
var oddParts = map[string]bool{"5": true, "6": true, "7": true, "9": true, "10": true}

// lately tells whether a day with a slash lies within some days up to today.
func (r *reader) lately(i, days int) bool {
	m := r.slashDay(i)
	return m.ok && m.day <= r.today && r.today.Sub(m.day) <= days
}

// andPart reads "and a half", "n a half", "and three quarters".
func (r *reader) andPart(i int) (f float64, next int, ok bool) {
	if r.tok(i).tag != andWord && !(r.tok(i).text == "&" && r.oneOf(i+1, "a")) && !(r.tok(i).text == "&" && r.tok(i+1).tag == numberWord && r.tok(i+2).tag == partWord) {
		return 0, i, false
	}
	i++
	n := 1.0
	switch t := r.tok(i); {
	case t.text == "a":
		i++
	case t.tag == numberWord && t.sense > 0 && t.sense < 4 && r.tok(i+1).tag == partWord:
		n = float64(t.sense)
		i++
	}
	if t := r.tok(i); t.tag == partWord && !(r.oneOf(i+1, "a", "an") && r.tok(i+2).tag == inchUnit && !r.oneOf(i-1, "a")) {
		return n * quarters(t) / 4, i + 1, n*quarters(t) < 4
	}
	return 0, i, false
}

// wordValue reads a number in words.
func (r *reader) wordValue(i int) (amount, bool) {
	v := float64(r.tok(i).sense)
	next := r.tok(i + 1)
	if f, j, ok := r.andPart(i + 1); ok {
		return amount{v + f, true, j}, true
	}
	if u := r.tok(i + 2); next.tag == pointWord && u.tag == numberWord && u.sense < 10 {
		if w := r.tok(i + 3); w.tag == numberWord && w.sense == 5 && (u.sense == 2 || u.sense == 7) && r.tok(i+4).tag != pointWord {
			return amount{v + float64(u.sense)/10 + 0.05, true, i + 4}, true // two point two five
		}
		return amount{v + float64(u.sense)/10, true, i + 3}, true
	}
	if next.tag == partWord && v > 0 && v*quarters(next) < 4 {
		return amount{v * quarters(next) / 4, true, i + 2}, true // three quarters
	}
	return amount{v, false, i + 1}, true
}

// commaUse tells what a comma without spaces means in a list of scores.
type commaUse uint8

const (
	commaList    commaUse = iota // it separates: 2,2,3
	commaDecimal                 // it is a decimal comma: 2,5 3,0
	commaUnclear                 // it could be either: 2,3
)

// commaPair tells whether two whole numbers are joined by a comma without spaces.
func (r *reader) commaPair(i int) bool {
	a, c, b := r.tok(i), r.tok(i+1), r.tok(i+2)
	return a.shape == number && !a.decimal && c.text == "," && c.glued &&
		b.shape == number && !b.decimal && b.glued && len(b.text) <= 2
}

// commaUse looks along a list of scores and settles its commas: decimal where
// every comma joins just two whole numbers and the list is parted otherwise. A
// stretch without such commas is remembered, so that it is looked along once.
func (r *reader) commaUse(i int) commaUse {
	if r.plainFrom <= i && i < r.plainTo {
		return commaList
	}
	start, pairs, items, points := i, 0, 0, false
	defer func() {
		if pairs == 0 {
			r.plainFrom, r.plainTo = start, i
			return
		}
		r.tillers += (i - start) / 32 // so that long stretches are not looked along for ever
	}()
	for last := i + 4*mostTillers; ; {
		t := r.tok(i)
		switch {
		case i > last:
			return settleCommas(pairs, items, points, r.tok(i-1))
		case t.shape == number && r.commaPair(i):
			if n := r.tok(i + 3); n.text == "," {
				if m := r.tok(i + 4); n.glued && m.glued && m.shape == number {
					return commaList
				}
				if r.tok(i+4).shape == number && !r.commaPair(i+4) {
					return commaList
				}
			}
			pairs, items = pairs+1, items+1
			i += 3
		case t.shape == number || t.shape == part:
			points = points || t.decimal
			items++
			i++
		case t.text == "," && t.glued && r.tok(i+1).glued && r.tok(i+1).shape == number:
			return commaList
		case t.shape == mark && (t.text == ";" || t.text == "," || t.text == "+") || t.tag == timesWord || t.tag == reproWord:
			i++
		default:
			return settleCommas(pairs, items, points, r.tok(i-1))
		}
	}
}

func settleCommas(pairs, items int, points bool, last *token) commaUse {
	switch {
	case pairs == 0:
		return commaList
	case points:
		return commaUnclear
	case items > 1 || last.value > 4:
		return commaDecimal
	}
	return commaUnclear
}

func pow10(n int) float64 {
	p := 1.0
	for ; n > 0; n-- {
		p *= 10
	}
	return p
}
