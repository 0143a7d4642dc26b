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
	pid    int
	socket string
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
	n.pid, err = strconv.Atoi(strings.TrimSpace(lines[0]))
	if err != nil || n.pid <= 0 || !p.runs(n.pid) {
		return stale, n
	}
	switch strings.TrimSpace(lines[7]) {
	case "ready":
		return ready, n
	case "stopping":
		return stopping, n
	}
	return starting, n
}

// runs tells whether a process is this cluster's postmaster. A pid that was
// given to another program since is told apart where the system shows it.
func (p place) runs(pid int) bool {
	if syscall.Kill(pid, 0) != nil {
		return false // gone, or another user's: ours runs as we do, or we are root
	}
	stat, err := os.ReadFile("/proc/" + strconv.Itoa(pid) + "/stat")
	if err != nil {
		return true // no such files on this system: the note's word stands
	}
	_, rest, _ := strings.Cut(string(stat), ") ")
	if strings.HasPrefix(rest, "Z") {
		return false
	}
	cwd, err := os.Readlink("/proc/" + strconv.Itoa(pid) + "/cwd")
	if err != nil {
		return true
	}
	real, err := filepath.EvalSymlinks(p.cluster)
	return err != nil || cwd == real
}

// signalFast asks for a fast shutdown: clients are cut off, data is whole.
func (n note) signalFast() {
	if n.pid > 0 {
		syscall.Kill(n.pid, syscall.SIGINT)
	}
}
