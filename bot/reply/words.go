package reply

import (
	"fmt"
	"html/template"
	"reflect"
	"strings"
	"unicode"

	"leafround/core/answer"
	"leafround/core/entry"
)

// funcs are the words and figures that templates use.
func (v Voice) funcs() template.FuncMap {
	return template.FuncMap{
		"day": day, "when": when, "on": on, "leaves": leaves, "upto": upTo, "lf": tenth, "days": days,
		"perleaf": perLeaf, "ha": v.area, "mm": mm, "pdk": pdk, "Pdk": func(n string) string { return upper(pdk(n)) },
		"Up": upper, "list": list, "names": names, "reason": reason, "Reason": func(r any) string { return upper(reason(r)) },
		"residual": v.residual, "percent": percent, "num": tenth, "whole": whole,
		"remark": v.remark, "remarks": v.remarks, "caution": v.caution, "cautions": v.cautions,
		"advices": v.advices, "next": func(n int) int { return n + 1 }, "why": why, "holds": holds, "brief": short, "exact": exact, "around": around, "mobs": mobs, "lost": lost,
		"one": func(s string) []string { return []string{s} }, "stop": stop, "about": about, "say": func(e entry.Entry) string { return v.Describe(e) },
		"mob": mobWord, "Mob": func(m string) string { return upper(mobWord(m)) }, "grass": grass, "has": has,
		"first": first, "ranked": func(r answer.Ranked) template.HTML { return v.part("ranked", r) },
		"where": func(w answer.Where, today entry.Date) template.HTML {
			return v.part("where", map[string]any{"Mob": w.Mob, "Paddock": w.Paddock, "Since": w.Since, "Away": w.Away, "Today": today})
		},
		"left": func(l answer.LeftOut) template.HTML { return v.part("left", l) }, "dict": dict,
		"gone": gone, "stands": stands, "odd": odd, "drift": drift, "is": func(a any, b string) bool { return fmt.Sprint(a) == b }, "sum": sumUp,
	}
}

// part runs a named part of the templates on one value.
func (v Voice) part(name string, data any) template.HTML {
	return template.HTML(run(name, data, v)) //nolint:gosec // escaped by its own template
}

// day words a date: Sat 28 Nov.
func day(d entry.Date) string { return d.Time().Format("Mon 2 Jan") }

// near words a date close to today, or gives false.
func near(d, today entry.Date) (string, bool) {
	switch d {
	case today:
		return "today", true
	case today - 1:
		return "yesterday", true
	case today + 1:
		return "tomorrow", true
	}
	return "", false
}

// when words a date in a sentence: today, yesterday, tomorrow, or the date.
func when(d, today entry.Date) string {
	if w, ok := near(d, today); ok {
		return w
	}
	return far(d, today)
}

// far words a date, with its year where that could be doubted.
func far(d, today entry.Date) string {
	if gap := d.Sub(today); gap > 180 || gap < -180 {
		return d.Time().Format("2 Jan 2006")
	}
	return day(d)
}

// around words a forecast: "about Sat 28 Nov", but "tomorrow".
func around(d, today entry.Date) string {
	if w, ok := near(d, today); ok {
		return w
	}
	return "about " + far(d, today)
}

// on is when with its preposition: "on Sat 28 Nov".
func on(d, today entry.Date) string {
	if w, ok := near(d, today); ok {
		return w
	}
	return "on " + far(d, today)
}

// pdk puts "paddock" before a name that is a number: 12, 6a, but not 40 Acre.
func pdk(name string) string {
	if name != "" && unicode.IsDigit([]rune(name)[0]) && !strings.Contains(name, " ") {
		return "paddock " + name
	}
	return name
}

func upper(s string) string {
	r := []rune(s)
	if len(r) > 0 {
		r[0] = unicode.ToUpper(r[0])
	}
	return string(r)
}

// mobWord names a mob, or stock without a name.
func mobWord(m string) string {
	if m == "" {
		return "stock"
	}
	if strings.EqualFold(m, "cows") || strings.EqualFold(m, "herd") {
		return "the " + strings.ToLower(m)
	}
	return m
}

// mobs names several mobs, or stock without a name.
func mobs(names []string) string {
	var out []string
	for _, m := range names {
		if m != "" {
			out = append(out, mobWord(m))
		}
	}
	if len(out) == 0 {
		return mobWord("")
	}
	return list(out)
}

// lost names the mobs of which nobody knows where they are.
func lost(ws []answer.Where) string {
	var out []string
	for _, w := range ws {
		if !w.Away && w.Paddock == "" {
			out = append(out, mobWord(w.Mob))
		}
	}
	return list(out)
}

// list joins words: a, b and c.
func list(words []string) string {
	switch n := len(words); n {
	case 0:
		return ""
	case 1:
		return words[0]
	default:
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
}

// names joins the names in a list of values, at most so many of them.
func names(values any, most int) string {
	r := reflect.ValueOf(values)
	var out []string
	for i := range r.Len() {
		e := r.Index(i)
		for _, field := range []string{"Paddock", "Name", "Mob"} {
			if f := e.FieldByName(field); f.IsValid() && f.String() != "" {
				out = append(out, f.String())
				break
			}
		}
	}
	return sumUp(out, most)
}

// sumUp joins words and says how many more there are.
func sumUp(words []string, most int) string {
	if len(words) <= most {
		return list(words)
	}
	return strings.Join(words[:most], ", ") + fmt.Sprintf(" and %d more", len(words)-most)
}

// reasons says what holds a paddock.
var reasons = map[entry.Reason]string{
	entry.HoldSilage: "shut for silage", entry.HoldHay: "shut for hay", entry.HoldSpray: "sprayed",
	entry.HoldFertiliser: "under fertiliser", entry.HoldEffluent: "under effluent",
	entry.HoldResown: "newly sown", entry.HoldWet: "too wet", entry.HoldCrop: "in crop", entry.HoldOther: "held back",
}

func reason(r any) string {
	if w, ok := reasons[entry.Reason(fmt.Sprint(r))]; ok {
		return w
	}
	return "held back"
}

// grasses names the grasses.
var grasses = map[entry.Grass]string{
	"": "ryegrass", entry.Ryegrass: "perennial ryegrass", entry.AnnualRye: "annual ryegrass",
	entry.ItalianRye: "Italian ryegrass", entry.Fescue: "tall fescue", entry.Cocksfoot: "cocksfoot",
	entry.PrairieGrass: "prairie grass", entry.Brome: "pasture brome",
}

func grass(g entry.Grass) string {
	if w, ok := grasses[g]; ok {
		return w
	}
	return string(g)
}

// residual words what stock left.
func (v Voice) residual(r *entry.Residual) string {
	if r == nil {
		return ""
	}
	switch r.Unit {
	case entry.KgDMPerHa:
		return whole(r.Value) + " kg of dry matter a hectare"
	case entry.Inches:
		return inches(r.Value)
	case entry.Clicks:
		return tenth(r.Value) + " clicks"
	}
	if v.Inches {
		return inches(r.Value / cmPerInch)
	}
	return tenth(r.Value) + " cm"
}

// cmPerInch is exact (international yard and pound agreement of 1959).
const cmPerInch = 2.54

func inches(v float64) string {
	if s := tenth(v); s != "1" {
		return s + " inches"
	}
	return "1 inch"
}

// odd words why a count does not fit, without the words that only say that it
// does not.
func odd(text string) string {
	if lead, rest, ok := strings.Cut(text, ": "); ok && strings.HasSuffix(lead, "than fits") {
		return rest
	}
	return text
}

// holds words the holds of a paddock.
func holds(hs []answer.Hold) string {
	var out []string
	for _, h := range hs {
		w := reason(h.Reason)
		if !h.Until.IsZero() {
			w += " until " + day(h.Until)
		}
		out = append(out, w)
	}
	return list(out)
}

// stop ends a sentence.
func stop(s string) string {
	if s == "" || strings.ContainsAny(s[len(s)-1:], ".?!") {
		return s
	}
	return s + "."
}

// has tells whether remarks hold one of a kind.
func has(rs []answer.Remark, kind string) bool {
	for _, r := range rs {
		if string(r.Kind) == kind {
			return true
		}
	}
	return false
}

// gone gives the day on which stock were down as gone before that was told;
// zero where they were not.
func gone(rs []answer.Remark) entry.Date {
	for _, r := range rs {
		if string(r.Kind) == "completes" {
			return r.Date
		}
	}
	return 0
}

// first gives at most n values of a list.
func first(n int, values any) any {
	r := reflect.ValueOf(values)
	return r.Slice(0, min(n, r.Len())).Interface()
}

// dict makes a map of pairs, for a part that needs several values.
func dict(pairs ...any) map[string]any {
	m := map[string]any{}
	for i := 0; i+1 < len(pairs); i += 2 {
		m[fmt.Sprint(pairs[i])] = pairs[i+1]
	}
	return m
}

// why words a reason of the ranking or of what is due.
func why(code any) string { return whys[fmt.Sprint(code)] }
