package bot

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"leafround/bot/land"
	"leafround/bot/reply"
	"leafround/core/entry"
)

// document takes a file that a manager sent: a register as CSV, boundaries as
// GeoJSON, or daily weather as CSV.
func (t *turn) document() error {
	if !t.member.Manager {
		if !t.in.Private && !looksLikeOurs(t.in.File.Name) {
			return nil
		}
		return t.refuse("Only a manager can send me a file: ask " + t.managers() + ".")
	}
	if t.in.File.Size > 20<<20 {
		return t.refuse("The file is too large: I take up to 20 MB.")
	}
	content, err := t.content()
	if err != nil || content == nil {
		return err
	}
	switch kindOf(t.in.File.Name, content) {
	case "boundaries":
		plots, faults := land.Boundaries(content)
		return t.takePlots(plots, faults)
	case "weather":
		return t.takeWeather(content)
	case "register":
		plots, faults := land.Register(content)
		return t.takePlots(plots, faults)
	}
	return t.refuse("I can't tell what this file is: I take a register (CSV with name,area_ha), boundaries (GeoJSON) or daily weather (CSV with date,tmin,tmax,rain).")
}

func looksLikeOurs(name string) bool {
	name = strings.ToLower(name)
	return strings.HasSuffix(name, ".csv") || strings.HasSuffix(name, ".geojson")
}

// content gives the document's content; nil where the sender was told that it
// can't be had. It is fetched outside of the transaction.
func (t *turn) content() ([]byte, error) {
	t.b.mu.Lock()
	f, ok := t.b.files[t.in.File.ID]
	delete(t.b.files, t.in.File.ID)
	t.b.mu.Unlock()
	if !ok {
		return nil, fileWanted{t.in.File.ID}
	}
	if f.err != nil {
		t.b.o.Log.Warn("a file can't be fetched", "file", t.in.File.Name, "error", f.err)
		return nil, t.refuse("I could not fetch " + t.in.File.Name + ": please send it again.")
	}
	return f.content, nil
}

// kindOf tells what a file holds, by its first line more than by its name.
func kindOf(name string, content []byte) string {
	head, _, _ := bytes.Cut(bytes.TrimPrefix(content, []byte("\xEF\xBB\xBF")), []byte("\n"))
	columns := strings.Split(strings.ToLower(strings.TrimSpace(string(head))), ",")
	for i := range columns {
		columns[i] = strings.Trim(columns[i], " \"")
	}
	switch {
	case bytes.HasPrefix(bytes.TrimSpace(content), []byte("{")):
		return "boundaries"
	case slices.Contains(columns, "date") && (slices.Contains(columns, "rain") || slices.Contains(columns, "tmax")):
		return "weather"
	case slices.Contains(columns, "name") || strings.HasSuffix(strings.ToLower(name), ".csv"):
		return "register"
	}
	return ""
}

// takePlots logs a register or boundaries. An area that somebody typed stands;
// where a boundary says otherwise by more than 5 %, the reply names it.
func (t *turn) takePlots(plots []entry.Plot, faults []land.Fault) error {
	if len(faults) > 0 {
		return t.refuse(faultList(faultStrings(faults)))
	}
	for i, p := range plots {
		if known := t.farm.Find(p.Name); known != nil && known.Area > 0 && p.Boundary != "" {
			plots[i].Area = known.Area
		}
	}
	logged, refusal, err := t.record(t.ownWords(), []entry.Entry{entry.Setup{What: entry.SetPaddocks, Paddocks: plots}})
	if err != nil {
		return err
	}
	if refusal != "" {
		return t.refuse(refusal)
	}
	t.answerLogged(logged, nil)
	for _, d := range land.Differ(plots) {
		last := &t.out.Replies[len(t.out.Replies)-1]
		last.HTML += "\n" + reply.AreaDiffers(d.Name, d.Typed, d.Measured, t.voice())
	}
	return t.reply(t.msg)
}

func faultStrings(faults []land.Fault) (all []string) {
	for _, f := range faults {
		all = append(all, f.String())
	}
	return all
}

// faultList names what is wrong with a file, the first ten of it.
func faultList(all []string) string {
	const most = 10
	text := "Nothing was taken from this file. Mend it and send it again:"
	for _, s := range all[:min(most, len(all))] {
		text += "\n" + s
	}
	if n := len(all) - most; n > 0 {
		text += fmt.Sprintf("\nand %d more.", n)
	}
	return text
}
