//go:build unix

package pgembed

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
)

// state is what the postmaster's own note (postmaster.pid) tells.
type state int

const (
	absent   state = iota // no postmaster
	stale                 // a note whose writer is gone
	starting              // up, not yet taking connections
	ready                 // taking connections
	stopping              // on its way out
)

// note is what we read of postmaster.pid: its lines are pid, data directory,
// start time, port, socket directory, address, shared memory, status
// (PostgreSQL's source, miscadmin.h).
type note struct {
	pid      int
	socket   string
	stranger bool // stale, and its pid is another program's by now
}

func (p place) postmaster() (state, note) {
	b, err := os.ReadFile(filepath.Join(p.cluster, "postmaster.pid"))
	if err != nil {
		return absent, note{}
	}
	lines := strings.Split(string(b), "\n")
	for len(lines) < 8 {
		lines = append(lines, "")
	}
	n := note{socket: strings.TrimSpace(lines[4])}
	pid, err := strconv.Atoi(strings.TrimSpace(lines[0]))
	if err != nil || pid <= 0 {
		return stale, n
	}
	switch p.whose(pid) {
	case gone:
		return stale, n
	case strange:
		n.stranger = true
		return stale, n
	}
	n.pid = pid
	switch strings.TrimSpace(lines[7]) {
	case "ready":
		return ready, n
	case "stopping":
		return stopping, n
	}
	return starting, n
}

// whose is a process.
type whose int

const (
	gone    whose = iota // nobody's, or dead and not yet buried
	strange              // another program's, which was given the pid since
	ours                 // this cluster's postmaster
)

// whose tells a process by its working directory, which is the cluster, where
// the system shows it.
func (p place) whose(pid int) whose {
	if syscall.Kill(pid, 0) != nil {
		return gone // or another user's: ours runs as we do, or we are root
	}
	stat, err := os.ReadFile("/proc/" + strconv.Itoa(pid) + "/stat")
	if err != nil {
		return ours // no such files on this system: the note's word stands
	}
	if _, rest, _ := strings.Cut(string(stat), ") "); strings.HasPrefix(rest, "Z") {
		return gone
	}
	cwd, err := os.Readlink("/proc/" + strconv.Itoa(pid) + "/cwd")
	real, realErr := filepath.EvalSymlinks(p.cluster)
	if err == nil && realErr == nil && cwd != real {
		return strange
	}
	return ours
}

// clearNote removes notes whose pid is a stranger's: PostgreSQL would take the
// stranger for its postmaster and not start. (Processes of its own that linger
// it finds by the shared memory of the data directory, note or no note.)
func (p place) clearNote(n note) {
	if !n.stranger {
		return
	}
	os.Remove(filepath.Join(p.cluster, "postmaster.pid"))
	if n.socket != "" {
		os.Remove(filepath.Join(n.socket, ".s.PGSQL."+port+".lock"))
	}
}

// signalFast asks for a fast shutdown: clients are cut off, data is whole.
func (n note) signalFast() {
	if n.pid > 0 {
		syscall.Kill(n.pid, syscall.SIGINT)
	}
}
