package main

import (
	"os/exec"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// arrows says which of our own packages a package may import; a package that
// is not here may import none. DEVELOPERS.md draws the same picture.
var arrows = map[string][]string{
	"core/leaf":          {"core/entry"},
	"core/pace":          {"core/entry", "core/leaf", "core/pace/*"},
	"core/pace/weather":  {"core/entry"},
	"core/farm":          {"core/entry", "core/leaf", "core/pace"},
	"core/round":         {"core/entry", "core/leaf", "core/pace", "core/farm"},
	"core/answer":        {"core/*"},
	"parser":             {"core/entry"},
	"bot/reply":          {"core/answer", "core/entry", "bot/chat"},
	"bot/picture":        {"core/answer", "core/entry", "bot/chat"},
	"bot/ledger":         {"core/entry", "bot/chat", "migrations"},
	"bot/telegram":       {"bot/chat"},
	"bot/intake":         {"bot/chat"},
	"bot/send":           {"bot/chat"},
	"bot/sched":          {"bot/chat"},
	"bot/land":           {"core/entry"},
	"bot/skies":          {"core/entry"},
	"bot/sheet":          {"core/entry"},
	"bot/calendar":       {"core/entry"},
	"bot/pgembed/pgtest": {"bot/ledger", "bot/pgembed"},
	"bot":                {"parser", "core/*", "bot/chat", "bot/ledger", "bot/reply", "bot/picture", "bot/land", "bot/sheet", "bot/calendar"},
	"bot/play":           {"*"},
	"cmd/leafround":      {"*"},
}

// keepers says which outside libraries only some packages may import.
var keepers = map[string][]string{
	"github.com/jmoiron/sqlx":       {"bot/ledger", "migrations"},
	"github.com/lib/pq":             {"bot/ledger", "migrations"},
	"github.com/go-telegram/bot":    {"bot/telegram"},
	"github.com/pressly/goose":      {"migrations", "bot/ledger"},
	"github.com/alecthomas/kong":    {"cmd/leafround"},
	"github.com/fergusstrange":      {"bot/pgembed"},
	"gonum.org/v1/plot":             {"bot/picture"},
	"gonum.org/v1/gonum":            {"core/leaf", "core/pace", "core/farm", "core/round", "core/answer", "bot/picture"},
	"github.com/prometheus/":        {"cmd/leafround"},
	"github.com/agext/levenshtein":  {"parser"},
	"github.com/paulmach/orb":       {"bot/land", "bot/picture"},
	"github.com/arran4/golang-ical": {"bot/calendar"},
}

// pure packages read no clock and do no I/O.
var pure = []string{"core/", "parser"}

func TestImportArrows(t *testing.T) {
	for pkg, imports := range importsOf(t) {
		for _, imp := range imports {
			if own, ok := strings.CutPrefix(imp, "leafround/"); ok {
				require.Truef(t, allowed(arrows[pkg], own), "%s may not import %s: see the arrows in DEVELOPERS.md", pkg, own)
			}
			for lib, who := range keepers {
				if strings.HasPrefix(imp, lib) {
					require.Containsf(t, who, pkg, "%s may not import %s", pkg, imp)
				}
			}
		}
	}
}

func TestCoreIsPure(t *testing.T) {
	for pkg, imports := range importsOf(t) {
		if !slices.ContainsFunc(pure, func(p string) bool { return strings.HasPrefix(pkg, p) }) {
			continue
		}
		for _, bad := range []string{"os", "net", "net/http", "context", "database/sql", "io/fs", "log", "log/slog", "math/rand", "math/rand/v2", "os/exec"} {
			require.NotContainsf(t, imports, bad, "%s is pure", pkg)
		}
	}
}

func allowed(to []string, own string) bool {
	for _, a := range to {
		stem, wild := strings.CutSuffix(a, "*")
		if a == own || wild && strings.HasPrefix(own, stem) {
			return true
		}
	}
	return false
}

// importsOf lists the imports of each package of ours, tests left out.
func importsOf(t *testing.T) map[string][]string {
	t.Helper()
	out, err := exec.Command("go", "list", "-f", "{{.ImportPath}} {{join .Imports \" \"}}", "leafround/...").Output()
	require.NoError(t, err)
	all := map[string][]string{}
	for line := range strings.Lines(string(out)) {
		words := strings.Fields(line)
		all[strings.TrimPrefix(words[0], "leafround/")] = words[1:]
	}
	require.Greater(t, len(all), 10)
	return all
}
