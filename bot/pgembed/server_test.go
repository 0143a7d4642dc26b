//go:build unix

package pgembed

import (
	"bufio"
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// TestMain lets this binary stand in for a program that uses a server and is
// then killed: with PGEMBED_HOLD set it starts one, says so, and waits.
func TestMain(m *testing.M) {
	if dir := os.Getenv("PGEMBED_HOLD"); dir != "" {
		hold(dir)
	}
	os.Exit(m.Run())
}

func hold(dir string) {
	s, err := Start(context.Background(), Options{DataDir: dir, Fast: os.Getenv("PGEMBED_FAST") != ""})
	if err != nil {
		fmt.Println(err)
		os.Exit(1)
	}
	fmt.Println("up", s.Owner())
	bufio.NewReader(os.Stdin).ReadString('\n') // a line, or the end of our parent
	if err := s.Stop(); err != nil {
		fmt.Println(err)
		os.Exit(1)
	}
	os.Exit(0)
}

// program is another process that uses a server.
type program struct {
	t   *testing.T
	cmd *exec.Cmd
	in  *os.File
}

func start(t *testing.T, dir string, env ...string) (*program, string) {
	t.Helper()
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(append(os.Environ(), "PGEMBED_HOLD="+dir), env...)
	r, w, err := os.Pipe()
	require.NoError(t, err)
	cmd.Stdin = r
	out, err := cmd.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, cmd.Start())
	r.Close()
	p := &program{t, cmd, w}
	t.Cleanup(func() { p.cmd.Process.Kill(); p.cmd.Wait() })
	line, err := bufio.NewReader(out).ReadString('\n')
	require.NoError(t, err, line)
	return p, strings.TrimSpace(line)
}

func (p *program) kill() {
	require.NoError(p.t, p.cmd.Process.Kill())
	p.cmd.Wait()
}

func (p *program) end() {
	p.in.Close()
	require.NoError(p.t, p.cmd.Wait())
}

// dataDir gives a folder whose parents the server's user may pass.
func dataDir(t *testing.T) string {
	t.Helper()
	dir, err := os.MkdirTemp("", "lr-test-")
	require.NoError(t, err)
	t.Cleanup(func() { os.RemoveAll(dir) })
	return dir
}

func begin(t *testing.T, dir string) *Server {
	t.Helper()
	s, err := Start(t.Context(), Options{DataDir: dir, Fast: true})
	require.NoError(t, err)
	return s
}

// down tells whether no postmaster runs over a cluster.
func down(s *Server) bool {
	st, _ := s.place.postmaster()
	return st == absent || st == stale
}

func (s *Server) up() bool {
	st, _ := s.place.postmaster()
	return st == ready
}

func query(t *testing.T, s *Server, sql string) string {
	t.Helper()
	psql, err := exec.LookPath("psql")
	if err != nil {
		t.Skip("psql is not installed")
	}
	cmd := exec.Command(psql, s.URL(), "-XAtc", sql)
	out, err := cmd.CombinedOutput()
	require.NoError(t, err, string(out))
	return strings.TrimSpace(string(out))
}

func TestAServerStartsStopsAndStartsAgainWithItsData(t *testing.T) {
	s := begin(t, dataDir(t))
	require.Equal(t, "UTF8 C.UTF-8", query(t, s, "SELECT getdatabaseencoding() || ' ' || datctype FROM pg_database WHERE datname = current_database()"))
	query(t, s, "CREATE TABLE kept (n int); INSERT INTO kept VALUES (7)")
	require.NoError(t, s.Stop())
	require.True(t, down(s))

	s = begin(t, s.place.home)
	require.Equal(t, "7", query(t, s, "SELECT n FROM kept"))
	require.Empty(t, query(t, s, "SHOW listen_addresses"))
	require.NoError(t, s.Stop())
}

func TestTheSecondJoinsAndTheLastOneOutStops(t *testing.T) {
	dir := dataDir(t)
	first, said := start(t, dir, "PGEMBED_FAST=1")
	require.Equal(t, "up true", said)
	s := begin(t, dir)
	require.False(t, s.Owner())
	require.NoError(t, s.Stop())
	require.False(t, down(s), "a guest takes the server down")
	first.end()
	require.True(t, down(s), "a server is left behind")
}

// The one that started the server ends while another still uses it: the server
// comes back for that one, under the same address.
func TestAServerComesBackForWhoStays(t *testing.T) {
	dir := dataDir(t)
	first, said := start(t, dir)
	require.Equal(t, "up true", said)
	s := begin(t, dir)
	query(t, s, "CREATE TABLE kept (n int); INSERT INTO kept VALUES (7)")
	url := s.URL()
	first.end()
	require.Eventually(t, s.up, 10*time.Second, 20*time.Millisecond)
	require.Equal(t, url, s.URL())
	require.Equal(t, "7", query(t, s, "SELECT n FROM kept"))
	require.NoError(t, s.Kill())
	require.Eventually(t, s.up, 10*time.Second, 20*time.Millisecond)
	require.NoError(t, s.Stop())
	require.True(t, down(s))
}

// A program that is soon done has started the server, and another has joined:
// the server goes on.
func TestABriefProgramTakesNothingDown(t *testing.T) {
	dir := dataDir(t)
	brief, err := Start(t.Context(), Options{DataDir: dir, Fast: true, Brief: true})
	require.NoError(t, err)
	require.True(t, brief.Owner())
	other, said := start(t, dir)
	require.Equal(t, "up false", said)
	_, before := brief.place.postmaster()
	require.NoError(t, brief.Stop())
	_, after := brief.place.postmaster()
	require.True(t, brief.up())
	require.Equal(t, before.pid, after.pid)
	other.end()
	require.True(t, down(brief))
}

func TestAKilledProgramLeavesWholeData(t *testing.T) {
	dir := dataDir(t)
	for range 3 {
		p, said := start(t, dir)
		require.Contains(t, said, "up")
		p.kill()
	}
	s := begin(t, dir)
	query(t, s, "SELECT 1")
	require.NoError(t, s.Stop())
	require.True(t, down(s))
}

func TestAKilledServerIsRecovered(t *testing.T) {
	dir := dataDir(t)
	p, _ := start(t, dir)
	s := begin(t, dir)
	query(t, s, "CREATE TABLE kept (n int); INSERT INTO kept VALUES (7)")
	_, note := s.place.postmaster()
	require.NoError(t, syscall.Kill(note.pid, syscall.SIGKILL))
	p.kill()
	require.NoError(t, s.Stop())

	s, err := Start(t.Context(), Options{DataDir: dir})
	require.NoError(t, err)
	require.Equal(t, "7", query(t, s, "SELECT n FROM kept"))
	require.NoError(t, s.Stop())
}

// A note from before a power cut names a process that is another's by now.
func TestAStaleNoteHarmsNobody(t *testing.T) {
	if _, err := os.Stat("/proc/self"); err != nil {
		t.Skip("only Linux tells processes apart")
	}
	dir := dataDir(t)
	s := begin(t, dir)
	require.NoError(t, s.Stop())
	stranger := exec.Command("sleep", "60")
	require.NoError(t, stranger.Start())
	ended := make(chan error, 1)
	go func() { ended <- stranger.Wait() }()
	text := fmt.Sprintf("%d\n%s\n1764000000\n5432\n%s\n\n  0 0\nready   \n", stranger.Process.Pid, s.place.cluster, s.socket)
	require.NoError(t, os.WriteFile(filepath.Join(s.place.cluster, "postmaster.pid"), []byte(text), 0o644))
	lock := fmt.Sprintf("%d\n%s\n1764000000\n5432\n%s\n", stranger.Process.Pid, s.place.cluster, s.socket)
	require.NoError(t, os.WriteFile(filepath.Join(s.socket, ".s.PGSQL.5432.lock"), []byte(lock), 0o600))

	s = begin(t, dir)
	require.True(t, s.Owner())
	query(t, s, "SELECT 1")
	require.NoError(t, s.Stop())
	select {
	case err := <-ended:
		t.Fatalf("a stranger was ended: %v", err)
	default:
		require.NoError(t, stranger.Process.Kill())
	}
}

func TestAnOrphanedServerEndsByItself(t *testing.T) {
	if _, err := os.Stat("/proc/self"); err != nil {
		t.Skip("only Linux tells the server")
	}
	dir := dataDir(t)
	p, _ := start(t, dir, "PGEMBED_FAST=1")
	pl, err := findPlace(dir)
	require.NoError(t, err)
	p.kill()
	require.Eventually(t, func() bool { return down(&Server{place: pl}) }, 10*time.Second, 20*time.Millisecond)
}

func TestTwoStartsAtOnceShareOneServer(t *testing.T) {
	dir := dataDir(t)
	type outcome struct {
		s   *Server
		err error
	}
	done := make(chan outcome, 3)
	for range cap(done) {
		go func() {
			s, err := Start(context.Background(), Options{DataDir: dir, Fast: true})
			done <- outcome{s, err}
		}()
	}
	owners := 0
	var all []*Server
	for range cap(done) {
		o := <-done
		require.NoError(t, o.err)
		all = append(all, o.s)
		if o.s.Owner() {
			owners++
		}
	}
	require.Equal(t, 1, owners)
	for _, s := range all {
		if !s.Owner() {
			require.NoError(t, s.Stop())
		}
	}
	for _, s := range all {
		if s.Owner() {
			require.NoError(t, s.Stop())
			require.True(t, down(s))
		}
	}
}

func TestALongPathGetsAShortSocket(t *testing.T) {
	top := dataDir(t)
	require.NoError(t, os.Chmod(top, 0o711))
	dir := filepath.Join(top, strings.Repeat("a-long-name/", 10))
	s := begin(t, dir)
	require.LessOrEqual(t, len(s.socket), maxSocketPath)
	info, err := os.Stat(s.socket)
	require.NoError(t, err)
	require.Equal(t, os.FileMode(0o700), info.Mode().Perm())
	query(t, s, "SELECT 1")
	require.NoError(t, s.Stop())
	require.NoDirExists(t, s.socket)
}

func TestAFolderThatOthersCantEnter(t *testing.T) {
	if os.Geteuid() != 0 {
		t.Skip("only root runs the server as somebody else")
	}
	closed := dataDir(t) // 0700
	begin := func(name string, fast bool) *Server {
		s, err := Start(t.Context(), Options{DataDir: filepath.Join(closed, name), Fast: fast})
		require.NoError(t, err)
		t.Cleanup(func() { os.RemoveAll(s.place.home) })
		require.True(t, strings.HasPrefix(s.place.home, rootHome))
		return s
	}
	s := begin("data", false)
	query(t, s, "CREATE TABLE kept (n int)")
	require.NoError(t, s.Stop())
	at, err := os.Readlink(filepath.Join(closed, "data", "postgres"))
	require.NoError(t, err)
	require.Equal(t, s.place.cluster, at)
	s = begin("data", true)
	query(t, s, "SELECT n FROM kept")
	require.NoError(t, s.Stop())
	require.DirExists(t, s.place.cluster)

	s = begin("scratch", true)
	require.NoError(t, s.Stop())
	require.NoDirExists(t, s.place.home, "a throw-away cluster is left behind")
	info, err := os.Stat(closed)
	require.NoError(t, err)
	require.Equal(t, os.FileMode(0o700), info.Mode().Perm(), "somebody else's folder was opened up")
}

func TestADataDirectoryThatIsAFileIsOnePlainSentence(t *testing.T) {
	file := filepath.Join(dataDir(t), "file")
	require.NoError(t, os.WriteFile(file, nil, 0o600))
	_, err := Start(t.Context(), Options{DataDir: file})
	require.ErrorContains(t, err, "can't make the data directory")
	require.NotContains(t, err.Error(), "\n")
}

func TestAClusterOfAnotherVersionIsOnePlainSentence(t *testing.T) {
	dir := dataDir(t)
	s := begin(t, dir)
	require.NoError(t, s.Stop())
	require.NoError(t, os.WriteFile(filepath.Join(s.place.cluster, "PG_VERSION"), []byte("9\n"), 0o600))
	_, err := Start(t.Context(), Options{DataDir: dir})
	require.ErrorContains(t, err, "PostgreSQL 9, which is not installed")
}
