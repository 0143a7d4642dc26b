//go:build unix

package pgembed

import (
	"fmt"
	"io"
	"io/fs"
	"net"
	"os"
	"path/filepath"

	embedded "github.com/fergusstrange/embedded-postgres"
)

// fetched is the folder of the binaries that were fetched, beside the cluster,
// so that whoever can reach the one can reach the other.
func (p place) fetched() string { return p.file("postgresql/bin") }

// repository is where the library fetches from.
var repository = embedded.DefaultConfig

// fetch gets PostgreSQL's binaries over the network. The library has no call
// for that alone: it fetches, unpacks, then starts a server of its own, which
// we stop at once (as root it can't start one, and we don't mind). They are
// moved in place when they are whole.
func (p place) fetch() (string, error) {
	fresh := p.file("postgresql.new")
	if err := os.RemoveAll(fresh); err != nil {
		return "", fmt.Errorf("pgembed: fetch PostgreSQL: %w", err)
	}
	failed := fetchInto(fresh)
	if majorOf(filepath.Join(fresh, "bin")) == "" {
		return "", fmt.Errorf("PostgreSQL is not installed here and can't be fetched (%w): install it (on Debian: apt install postgresql), or set LEAFROUND_DATABASE_URL", failed)
	}
	if err := letRead(fresh); err != nil {
		return "", fmt.Errorf("pgembed: fetch PostgreSQL: %w", err)
	}
	if err := os.Rename(fresh, filepath.Dir(p.fetched())); err != nil {
		return "", fmt.Errorf("pgembed: fetch PostgreSQL: %w", err)
	}
	return p.fetched(), nil
}

func fetchInto(dir string) error {
	scratch, err := os.MkdirTemp("", "lr-fetch-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(scratch)
	free, err := freePort()
	if err != nil {
		return err
	}
	server := embedded.NewDatabase(repository().
		CachePath(filepath.Join(scratch, "cache")).RuntimePath(filepath.Join(scratch, "run")).
		DataPath(filepath.Join(scratch, "data")).BinariesPath(dir).Port(free).Logger(io.Discard))
	if err := server.Start(); err != nil {
		return err
	}
	return server.Stop()
}

// letRead lets everybody read and run what was fetched, whatever our umask is:
// it is run by another user.
func letRead(dir string) error {
	return filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.Type()&fs.ModeSymlink != 0 {
			return err
		}
		info, err := d.Info()
		if err != nil {
			return err
		}
		mode := info.Mode().Perm() | 0o444
		if d.IsDir() || mode&0o100 != 0 {
			mode |= 0o111
		}
		return os.Chmod(path, mode)
	})
}

func freePort() (uint32, error) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return 0, err
	}
	defer l.Close()
	return uint32(l.Addr().(*net.TCPAddr).Port), nil
}
