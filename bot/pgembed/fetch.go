//go:build unix

package pgembed

import (
	"context"
	"fmt"
	"io"
	"net"
	"os"
	"path/filepath"

	embedded "github.com/fergusstrange/embedded-postgres"
)

// fetched is the folder of the binaries that were fetched, beside the cluster,
// so that whoever can reach the one can reach the other.
func (p place) fetched() string { return p.file("postgresql/bin") }

// fetch gets PostgreSQL's binaries over the network. The library has no call
// for that alone: it fetches, unpacks, then starts a server of its own, which
// we stop at once (as root it can't start one, and we don't mind).
func (p place) fetch(context.Context) (string, error) {
	scratch, err := os.MkdirTemp("", "lr-fetch-")
	if err != nil {
		return "", fmt.Errorf("pgembed: fetch PostgreSQL: %w", err)
	}
	defer os.RemoveAll(scratch)
	free, err := freePort()
	if err != nil {
		return "", fmt.Errorf("pgembed: fetch PostgreSQL: %w", err)
	}
	server := embedded.NewDatabase(embedded.DefaultConfig().
		CachePath(scratch).RuntimePath(filepath.Join(scratch, "run")).
		DataPath(filepath.Join(scratch, "data")).
		BinariesPath(p.file("postgresql")).Port(free).Logger(io.Discard))
	failed := server.Start()
	if failed == nil {
		failed = server.Stop()
	}
	if !exists(filepath.Join(p.fetched(), "postgres")) {
		return "", fmt.Errorf("PostgreSQL is not installed here and can't be fetched (%w): install it (on Debian: apt install postgresql), or set LEAFROUND_DATABASE_URL", failed)
	}
	return p.fetched(), nil
}

func freePort() (uint32, error) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return 0, err
	}
	defer l.Close()
	return uint32(l.Addr().(*net.TCPAddr).Port), nil
}
