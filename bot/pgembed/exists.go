//go:build unix

package pgembed

import (
	"os"
	"path/filepath"
)

// Exists tells whether a cluster has been made for a data directory: in it, or
// behind the link that Start leaves where the cluster had to lie elsewhere.
func Exists(dir string) bool {
	_, err := os.Stat(filepath.Join(dir, "postgres", "PG_VERSION"))
	return err == nil || os.IsPermission(err)
}
