package parser

import (
	"fmt"
	"os"
	"regexp"
	"strings"
	"testing"
	"encoding/json"
	"sort"
)

func TestZZNames(t *testing.T) {
	unknown := strings.Split(os.Getenv("ZZ"), ",")
	seen := map[string]int{}
	var outs []string
	n := 0
	for _, p := range corpus(t, "*.jsonl") {
		if len(p.Entries) == 0 || p.Farm == "" || len(p.Text) > 90 { continue }
		kind, _ := p.Entries[0]["kind"].(string)
		if kind == "note" || kind == "correct" || kind == "setup" || kind == "undo" { continue }
		names := map[string]bool{}
		for _, e := range p.Entries { if s, ok := e["paddock"].(string); ok { names[s] = true } }
		if len(names) != 1 { continue }
		var name string
		for k := range names { name = k }
		c := p.context(t)
		if p.judge(Read(p.Text, c)) != right { continue }
		re := regexp.MustCompile(`(?i)(^|[^\w.])((?:p|pdk|paddock|field|#)? ?` + strings.ReplaceAll(regexp.QuoteMeta(name), " ", " ?") + `)($|[^\w.])`)
		m := re.FindAllStringSubmatchIndex(p.Text, -1)
		if len(m) != 1 { continue }
		for _, u := range unknown {
			text := p.Text[:m[0][4]] + " "+u + p.Text[m[0][5]:]
			text = strings.TrimSpace(strings.ReplaceAll(text, "  ", " "))
			n++
			got := Read(text, c)
			bad := false
			for _, e := range got.Entries {
				switch e.Kind() { case "note", "rain", "temperature", "undo","setup": default: bad = true }
			}
			if bad {
				j, _ := json.Marshal(got.Entries)
				seen[u+" "+kind]++
				outs = append(outs, fmt.Sprintf("%s | %s | %.150s", u, text, j))
			}
		}
	}
	sort.Strings(outs)
	fmt.Println(n, len(outs), seen)
	for i, o := range outs { if i%(1+len(outs)/120) == 0 { fmt.Println(o) } }
}
