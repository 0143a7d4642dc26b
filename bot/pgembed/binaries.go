//go:build unix

package pgembed

import (
	"cmp"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
)

// binaryFolders are where systems keep PostgreSQL's server programs, which are
// seldom on the PATH.
var binaryFolders = []string{
	"/usr/lib/postgresql/*/bin", // Debian
	"/usr/pgsql-*/bin",          // Red Hat
	"/usr/lib/postgresql*/bin",  // SUSE
	"/usr/libexec/postgresql*",  // Alpine
	"/usr/local/pgsql/bin",      // from source
	"/opt/homebrew/opt/postgresql@*/bin",
	"/usr/local/opt/postgresql@*/bin",
	"/Applications/Postgres.app/Contents/Versions/*/bin",
}

var errNoBinaries = errors.New("PostgreSQL is not installed here")

// binaries gives the folder of the programs to use: of the cluster's own major
// version where there is a cluster, else the first on the PATH, else the
// newest.
func (p place) binaries() (string, error) {
	want := p.version()
	found := candidates(p.fetched())
	for _, dir := range found {
		if want == "" || majorOf(dir) == want {
			return dir, nil
		}
	}
	if want != "" && len(found) > 0 {
		return "", fmt.Errorf("the data in %s was made by PostgreSQL %s, which is not installed: install it, or set LEAFROUND_DATABASE_URL to a server that holds the data", p.cluster, want)
	}
	return "", errNoBinaries
}

// version gives the major version that made the cluster; "" where there is none.
func (p place) version() string {
	b, err := os.ReadFile(filepath.Join(p.cluster, "PG_VERSION"))
	if err != nil {
		return ""
	}
	return strings.TrimSpace(string(b))
}

// candidates lists the folders that hold both postgres and initdb.
func candidates(fetched string) []string {
	var dirs []string
	if path, err := exec.LookPath("postgres"); err == nil {
		if real, err := filepath.EvalSymlinks(path); err == nil {
			dirs = append(dirs, filepath.Dir(real))
		}
	}
	for _, pattern := range binaryFolders {
		match, _ := filepath.Glob(pattern) // the patterns are well formed
		slices.SortFunc(match, func(a, b string) int { return cmp.Compare(number(b), number(a)) })
		dirs = append(dirs, match...)
	}
	dirs = append(dirs, fetched)
	return slices.DeleteFunc(dirs, func(d string) bool {
		return !exists(filepath.Join(d, "postgres")) || !exists(filepath.Join(d, "initdb"))
	})
}

// number gives the version in a folder's name, 0 where it has none.
func number(dir string) float64 {
	digits := strings.FieldsFunc(dir, func(r rune) bool { return (r < '0' || r > '9') && r != '.' })
	if len(digits) == 0 {
		return 0
	}
	v, _ := strconv.ParseFloat(digits[len(digits)-1], 64)
	return v
}

// majorOf asks the program for its version: "postgres (PostgreSQL) 15.14 (...)".
func majorOf(dir string) string {
	out, err := exec.Command(filepath.Join(dir, "postgres"), "--version").Output()
	if err != nil {
		return ""
	}
	_, rest, _ := strings.Cut(string(out), ") ")
	major := strings.FieldsFunc(rest, func(r rune) bool { return r < '0' || r > '9' })
	if len(major) == 0 {
		return ""
	}
	return major[0]
}
