//go:build unix

package pgembed

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"
)

// errLingering means that processes of the last postmaster are still dying.
var errLingering = errors.New("pgembed: the last server's processes linger")

// launch makes the cluster where there is none and starts a postmaster.
func (s *Server) launch(ctx context.Context) error {
	o := s.options
	var err error
	if s.bin, err = s.place.binaries(); errors.Is(err, errNoBinaries) {
		o.Log.Info("PostgreSQL is not installed here: fetching it")
		s.bin, err = s.place.fetch()
	}
	if err != nil {
		return err
	}
	if s.place.version() == "" {
		o.Log.Info("making the database", "in", s.place.cluster)
		if err := s.place.create(ctx, s.bin); err != nil {
			return err
		}
		s.scratch = o.Fast
	}
	if err := s.place.admit(); err != nil {
		return err
	}
	socket, err := s.place.socketDir()
	if err == nil {
		err = s.setSocket(socket)
	}
	if err != nil {
		return err
	}
	return s.run(ctx)
}

// create makes the cluster aside and moves it in place when it is whole, so
// that a start that is cut short leaves nothing half made. Where the system
// does not have the locale C.UTF-8, plain C does, with UTF-8 all the same.
func (p place) create(ctx context.Context, bin string) error {
	fresh := p.cluster + ".new"
	said, err := p.initdb(ctx, bin, fresh, "C.UTF-8")
	if err != nil && strings.Contains(said, "locale") {
		said, err = p.initdb(ctx, bin, fresh, "C")
	}
	if err != nil {
		return fmt.Errorf("PostgreSQL can't make its cluster in %s (%w): %s", fresh, err, lastLine(said))
	}
	if err := os.Rename(fresh, p.cluster); err != nil {
		return fmt.Errorf("pgembed: move the cluster in place: %w", err)
	}
	return nil
}

func (p place) initdb(ctx context.Context, bin, dir, ctype string) (said string, err error) {
	if err := os.RemoveAll(dir); err != nil {
		return "", fmt.Errorf("clear the folder: %w", err)
	}
	if err := os.Mkdir(dir, 0o700); err != nil {
		return "", fmt.Errorf("make the folder: %w", err)
	}
	if err := p.give(dir); err != nil {
		return "", err
	}
	cmd := exec.CommandContext(ctx, filepath.Join(bin, "initdb"), "-D", dir, "-U", role,
		"--auth=peer", "--encoding=UTF8", "--locale=C", "--lc-ctype="+ctype, "--no-sync", "--no-instructions")
	cmd.Dir = dir
	p.dress(cmd)
	signalOnOurDeath(cmd.SysProcAttr)
	out, err := cmd.CombinedOutput()
	return string(out), err
}

// give hands a file or folder to the user that runs PostgreSQL.
func (p place) give(path string) error {
	if !p.owner.other {
		return nil
	}
	if err := os.Lchown(path, p.owner.uid, p.owner.gid); err != nil {
		return fmt.Errorf("pgembed: hand %s to user %s: %w", path, p.owner.name, err)
	}
	return nil
}

// admit writes who may connect: over the socket, by the kernel's word, the
// cluster's owner and root.
func (p place) admit() error {
	files := map[string]string{
		"pg_hba.conf":   "local all all peer map=program\n",
		"pg_ident.conf": fmt.Sprintf("program root %s\nprogram \"%s\" %s\n", role, p.owner.name, role),
	}
	for name, text := range files {
		path := filepath.Join(p.cluster, name)
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			return fmt.Errorf("pgembed: write %s: %w", path, err)
		}
		if err := p.give(path); err != nil {
			return err
		}
	}
	return nil
}

// run starts the postmaster and waits until it takes connections.
func (s *Server) run(ctx context.Context) error {
	log, err := s.place.openLog()
	if err != nil {
		return err
	}
	defer log.Close()
	from, err := log.Seek(0, 2)
	if err != nil {
		return fmt.Errorf("pgembed: read the log: %w", err)
	}
	cmd := exec.Command(filepath.Join(s.bin, "postgres"), s.settings()...)
	cmd.Dir, cmd.Stdout, cmd.Stderr = s.place.cluster, log, log
	s.place.dress(cmd)
	if !s.options.Brief {
		signalOnOurDeath(cmd.SysProcAttr)
	}
	c, err := startChild(cmd)
	if err != nil {
		return fmt.Errorf("PostgreSQL can't be started: %w", err)
	}
	s.setChild(c)
	if err := s.awaitReady(ctx, c); err != nil {
		s.setChild(nil)
		return explain(err, s.place.tail(from), s.place.file("postgres.log"))
	}
	return nil
}

func (s *Server) settings() []string {
	set := []string{"-D", s.place.cluster, "-p", port,
		"-c", "listen_addresses=", "-c", "unix_socket_directories=" + s.socket,
		"-c", "unix_socket_permissions=0700", "-c", "max_connections=60",
		"-c", "shared_buffers=32MB", "-c", "logging_collector=off", "-c", "log_timezone=UTC",
		"-c", "timezone=UTC", "-c", "log_checkpoints=off"}
	if s.options.Fast {
		set = append(set, "-c", "fsync=off", "-c", "synchronous_commit=off",
			"-c", "full_page_writes=off", "-c", "autovacuum=off")
	}
	return set
}

// awaitReady polls the postmaster's own note, as pg_ctl does.
func (s *Server) awaitReady(ctx context.Context, c *child) error {
	for {
		if state, note := s.place.postmaster(); state == ready && note.pid == c.pid() {
			return nil
		}
		select {
		case <-c.done:
			return errors.New("it ended at once")
		case <-ctx.Done():
			c.kill()
			return ctx.Err()
		case <-time.After(10 * time.Millisecond):
		}
	}
}

// explain turns the postmaster's last words into one sentence, or tells that
// it is worth trying again.
func explain(err error, said, file string) error {
	for _, sign := range []string{"is still in use", "another server might be running", "\" already exists"} {
		if strings.Contains(said, sign) {
			return errLingering
		}
	}
	return fmt.Errorf("PostgreSQL doesn't start (%w): %s (more in %s)", err, lastLine(said), file)
}

func lastLine(s string) string {
	lines := strings.Split(strings.TrimSpace(s), "\n")
	for _, l := range lines {
		if strings.Contains(l, "FATAL") || strings.Contains(l, "error:") {
			return strings.TrimSpace(l)
		}
	}
	return strings.TrimSpace(lines[len(lines)-1])
}
