package parser

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
)

// A name that the register does not hold, in the place of a registered one, files
// nothing on the paddock of its number: each report of the corpus that names one
// paddock once is read again with such names, where the farm has none of them.
func TestUnregistered(t *testing.T) {
	tried, asked := 0, 0
	for _, p := range corpus(t, "*.jsonl") {
		if len(p.Entries) == 0 || p.Farm == "" || len(p.Text) > 90 {
			continue
		}
		switch p.Entries[0]["kind"] {
		case "count", "graze", "cut", "canopy", "hold", "release":
		default:
			continue
		}
		name, _ := p.Entries[0]["paddock"].(string)
		for _, e := range p.Entries {
			if e["paddock"] != name {
				name = ""
			}
		}
		c := p.context(t)
		if name == "" || p.judge(Read(p.Text, c)) != right {
			continue
		}
		at := regexp.MustCompile(`(?i)(?:^|[^\w.])((?:p|pdk|paddock|field|#)? ?`+strings.ReplaceAll(regexp.QuoteMeta(name), " ", " ?")+`)(?:$|[^\w.])`).FindAllStringSubmatchIndex(p.Text, -1)
		if len(at) != 1 {
			continue
		}
		for _, stranger := range []string{"kauri 7", "rimu 12", "marlow 6", "river 9", "bottom 40", "long acre", "the triangle", "25b"} {
			if _, has := c.Book.has(entry.FoldName(stranger)); has {
				continue
			}
			text := strings.TrimSpace(strings.ReplaceAll(p.Text[:at[0][2]]+" "+stranger+p.Text[at[0][3]:], "  ", " "))
			if strings.Contains(strings.ToLower(text), "paddock "+strings.ToLower(name)) {
				continue // it is named elsewhere as well
			}
			tried++
			got := Read(text, c)
			if got.Ask != nil {
				asked++
			}
			for _, e := range got.Entries {
				switch e.Kind() {
				case entry.KindNote, entry.KindRain, entry.KindTemperature, entry.KindUndo, entry.KindSetup:
				default:
					require.Failf(t, "logged", "%q logs %+v", text, e)
				}
			}
		}
	}
	require.Greater(t, tried, 10_000)
	require.Greater(t, asked*10, tried*7, "most are asked about, not ignored")
}
