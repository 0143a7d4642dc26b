//go:build unix

package pgembed

import (
	"fmt"
	"hash/fnv"
	"io"
	"os"
	"path/filepath"
	"strings"
	"syscall"
)

// maxSocketPath is the room that a Unix socket's address has on the narrowest
// system we know (104 bytes on macOS and the BSDs, 108 on Linux, with the
// closing zero).
const maxSocketPath = 103

// keepLog is the size past which the server's log starts afresh at a start.
const keepLog = 8 << 20

// socketDir makes a folder for the socket that only the owner can enter:
// beside the cluster where the path is short enough, else in the temporary
// folder, under a name that is the same each time.
func (p place) socketDir() (string, error) {
	dir := p.file("socket")
	if len(filepath.Join(dir, ".s.PGSQL."+port+".lock")) > maxSocketPath || strings.ContainsAny(dir, `,"\ `) {
		h := fnv.New64a()
		fmt.Fprint(h, p.cluster, p.owner.uid)
		dir = filepath.Join(shortTemp(), fmt.Sprintf("%s%016x", socketPrefix, h.Sum64()))
	}
	if err := os.Mkdir(dir, 0o700); err != nil && !os.IsExist(err) {
		return "", fmt.Errorf("pgembed: make the socket's folder: %w", err)
	}
	if err := p.ours(dir); err != nil {
		return "", err
	}
	return dir, p.give(dir)
}

// ours makes sure that a folder in a place where others may write was not put
// there by one of them.
func (p place) ours(dir string) error {
	info, err := os.Lstat(dir)
	if err != nil {
		return fmt.Errorf("pgembed: the socket's folder: %w", err)
	}
	st, ok := info.Sys().(*syscall.Stat_t)
	mine := ok && (int(st.Uid) == os.Geteuid() || int(st.Uid) == p.owner.uid)
	if !mine || !info.IsDir() || info.Mode().Perm()&0o077 != 0 {
		return fmt.Errorf("%s is not ours alone, and the database's socket must lie there: remove it, or choose a shorter data directory (LEAFROUND_DATA_DIR)", dir)
	}
	return nil
}

const socketPrefix = "lr-socket-"

func shortTemp() string {
	if t := os.TempDir(); len(t) <= 40 {
		return t
	}
	return "/tmp"
}

// clearSocket removes a socket's folder that a server left in the temporary
// folder.
func (p place) clearSocket(n note) {
	if strings.HasPrefix(filepath.Base(n.socket), socketPrefix) {
		os.RemoveAll(n.socket)
	}
}

// openLog opens the server's log to write on.
func (p place) openLog() (*os.File, error) {
	path := p.file("postgres.log")
	if info, err := os.Stat(path); err == nil && info.Size() > keepLog {
		os.Rename(path, path+".old")
	}
	f, err := os.OpenFile(path, os.O_CREATE|os.O_RDWR|os.O_APPEND, 0o600)
	if err != nil {
		return nil, fmt.Errorf("can't write the database's log %s: %w", path, err)
	}
	return f, p.give(path)
}

// tail gives what the log says from a position on.
func (p place) tail(from int64) string {
	f, err := os.Open(p.file("postgres.log"))
	if err != nil {
		return ""
	}
	defer f.Close()
	b, _ := io.ReadAll(io.NewSectionReader(f, from, 64<<10))
	return string(b)
}
