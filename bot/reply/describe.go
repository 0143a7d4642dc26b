package reply

import (
	"fmt"
	"strings"

	"leafround/core/entry"
)

// Describe says an entry in a few plain words, without its date: for lists, for
// what was taken back, for the label of a button. It is not escaped.
func (v Voice) Describe(e entry.Entry) string {
	switch e := e.(type) {
	case entry.Count:
		return v.counted(e)
	case entry.Graze:
		return v.grazed(e)
	case entry.Cut:
		if e.What == entry.Topped {
			return pdk(e.Paddock) + " topped"
		}
		return pdk(e.Paddock) + " cut for " + string(e.What)
	case entry.Canopy:
		return pdk(e.Paddock) + " closed over"
	case entry.Hold:
		return pdk(e.Paddock) + " " + reason(e.Reason) + until(e.Until)
	case entry.Release:
		return pdk(e.Paddock) + " may be grazed again" + because(e.Reason)
	case entry.Rain:
		return mm(e.Mm) + " of rain"
	case entry.Temperature:
		return warmth(e)
	case entry.Note:
		return "note: " + short(e.Text)
	case entry.Undo:
		return "taken back"
	case entry.Correct:
		return v.corrected(e)
	case entry.Setup:
		return setting(e)
	}
	return ""
}

func (v Voice) counted(e entry.Count) string {
	s := pdk(e.Paddock) + " counted, " + leaves(e.Mean)
	if e.N > 0 {
		s += fmt.Sprintf(" on %d tillers", e.N)
	}
	return s
}

func (v Voice) grazed(e entry.Graze) string {
	var s string
	switch {
	case e.Event == entry.In:
		s = mobWord(e.Mob) + " into " + pdk(e.Paddock)
	case e.Event == entry.Out:
		s = mobWord(e.Mob) + " out of " + pdk(e.Paddock)
	case e.Mob != "":
		s = pdk(e.Paddock) + " grazed by " + mobWord(e.Mob)
	default:
		s = pdk(e.Paddock) + " grazed"
	}
	if e.Residual != nil {
		s += ", left " + v.residual(e.Residual)
	}
	return s
}

func until(d entry.Date) string {
	if d.IsZero() {
		return ""
	}
	return " until " + day(d)
}

// because words the reason of a release.
func because(r entry.Reason) string {
	if r == "" {
		return ""
	}
	return ", no longer " + reason(r)
}

func warmth(e entry.Temperature) string {
	var parts []string
	if e.Celsius != nil {
		parts = append(parts, tenth(*e.Celsius))
	}
	if e.Min != nil {
		parts = append(parts, tenth(*e.Min))
	}
	if e.Max != nil {
		parts = append(parts, tenth(*e.Max))
	}
	return string(e.Where) + " " + strings.Join(parts, " to ") + " °C"
}

// corrected says what a correction put in the place of what.
func (v Voice) corrected(e entry.Correct) string {
	to := e.ToName
	switch e.Field {
	case entry.FieldPaddock:
		to = pdk(to)
	case entry.FieldDate:
		to = day(e.ToDate)
	case entry.FieldTillers:
		to = scoreList(e.ToTillers)
	}
	what := map[entry.Field]string{entry.FieldPaddock: "the paddock", entry.FieldDate: "the day",
		entry.FieldTillers: "the scores", entry.FieldMob: "the mob"}[e.Field]
	if what == "" {
		what = string(e.Field)
	}
	verb := " is "
	if e.Field == entry.FieldTillers {
		verb = " are "
	}
	s := what + verb + to
	switch {
	case e.From != "":
		s += ", not " + e.From
	case e.Told():
		s += ", not " + scoreList(e.FromTillers)
	}
	return s
}

// scoreList writes scores with a space between them.
func scoreList(list []entry.Tiller) string {
	scores := make([]string, len(list))
	for i, t := range list {
		scores[i] = tenth(t.Stage(entry.RemnantBySize))
	}
	return strings.Join(scores, " ")
}

// settings says what each setting sets.
var settings = map[entry.What]string{
	entry.SetFarm: "the farm set up", entry.SetPaddocks: "the register", entry.SetMob: "mob",
	entry.SetSummary: "the summary's hour", entry.SetAim: "the aim", entry.SetPlace: "the farm's place",
	entry.SetGrass: "grass", entry.SetLastGrazed: "last grazed", entry.SetRemnant: "how remnants count",
	entry.SetHoldDays: "days of a hold", entry.SetOnly: "where a mob may graze", entry.SetBar: "where a mob may not graze",
	entry.SetDaily: "hectares a day", entry.SetRename: "renamed", entry.SetRetire: "taken off the farm",
	entry.SetSplit: "split", entry.SetMerge: "joined", entry.SetMerged: "mobs joined", entry.SetAway: "away",
	entry.SetBack: "back", entry.SetQuiet: "how entries are answered", entry.SetTopic: "where the summary goes",
	entry.SetUnits: "units", entry.SetPin: "a wish for the plan", entry.SetUnpin: "a wish dropped",
	entry.SetBackFence: "back fence", "manager": "who manages",
}

func setting(e entry.Setup) string {
	var of []string
	for _, name := range []string{e.Name, e.Paddock, e.Mob} {
		if name != "" {
			of = append(of, name)
		}
	}
	s := settings[e.What]
	if len(e.Paddocks) > 0 {
		s += fmt.Sprintf(", %d paddocks", len(e.Paddocks))
	}
	if e.To != "" {
		of = append(of, "now "+e.To)
	}
	if len(of) > 0 {
		s += ": " + strings.Join(of, ", ")
	}
	return s
}

// short cuts a note to what fits a line.
func short(s string) string {
	r := []rune(strings.Join(strings.Fields(s), " "))
	if len(r) > 80 {
		return string(r[:79]) + "…"
	}
	return string(r)
}
