//go:build unix

package pgembed

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"net/url"
	"os"
	"path/filepath"
	"sync"
	"time"
)

// Options says where the cluster lies and how it runs.
type Options struct {
	DataDir string       // the program's data directory; the cluster is a folder in it
	Log     *slog.Logger // what is told while starting; nil for silence
	Fast    bool         // no fsync: for clusters that are thrown away
	// Brief is for a program that is soon done (an export): a server that it
	// had to start goes on for those that have joined meanwhile.
	Brief bool
}

// role is the database user, and database the database, of the private server.
const (
	role     = "leafround"
	database = "postgres"
	port     = "5432" // names the socket only; nothing listens on TCP
)

// patience is how long a start or a stop may take before it is a failure.
const patience = 60 * time.Second

// Server is a running PostgreSQL and this program's share in it.
type Server struct {
	place   place
	bin     string
	socket  string // directory of the socket
	members *lock  // held shared as long as this program uses the server
	scratch bool   // the cluster was made by this program, to be thrown away
	options Options
	mu      sync.Mutex
	started *child // nil where another program started it
	stop    sync.Once
	stopped error         // what became of Stop
	quit    chan struct{} // closed by Stop
	watched chan struct{} // closed when the watch has ended
}

// Start gives a running server over the data directory: the one that is
// already up, or a new one.
func Start(ctx context.Context, o Options) (*Server, error) {
	if o.Log == nil {
		o.Log = slog.New(slog.DiscardHandler)
	}
	ctx, cancel := context.WithTimeout(ctx, patience)
	defer cancel()
	p, err := findPlace(o.DataDir)
	if err != nil {
		return nil, err
	}
	gate, err := p.lock(ctx, "start.lock", exclusive)
	if err != nil {
		return nil, err
	}
	defer gate.free()
	members, err := p.lock(ctx, "users.lock", shared)
	if err != nil {
		return nil, err
	}
	s := &Server{place: p, members: members, options: o, quit: make(chan struct{}), watched: make(chan struct{})}
	if err := s.joinOrLaunch(ctx); err != nil {
		members.free()
		return nil, err
	}
	go s.watch()
	return s, nil
}

// joinOrLaunch uses the postmaster that runs, or starts one. A postmaster that
// is on its way out, or whose remains still linger, is waited for.
func (s *Server) joinOrLaunch(ctx context.Context) error {
	for {
		state, note := s.place.postmaster()
		switch state {
		case ready:
			if s.members.alone() { // its program was killed, and it is about to end
				note.signalFast()
				break
			}
			s.options.Log.Debug("joining the PostgreSQL that runs already", "pid", note.pid)
			return s.setSocket(note.socket)
		case absent, stale:
			s.place.clearSocket(note)
			s.place.clearNote(note)
			err := s.launch(ctx)
			if !errors.Is(err, errLingering) {
				return err
			}
		case stopping:
			note.signalFast() // nobody new gets in any more: don't wait for clients
		}
		if err := pause(ctx, 50*time.Millisecond); err != nil {
			return fmt.Errorf("the private PostgreSQL in %s neither runs nor stops; see %s", s.place.cluster, s.place.file("postgres.log"))
		}
	}
}

// setSocket keeps the address for good: others have been told it.
func (s *Server) setSocket(dir string) error {
	if s.socket == "" {
		s.socket = dir
	}
	if s.socket != dir {
		return fmt.Errorf("the private PostgreSQL in %s runs under another address now: start the program again", s.place.cluster)
	}
	return nil
}

// URL gives the address for lib/pq.
func (s *Server) URL() string {
	q := url.Values{"host": {s.socket}, "port": {port}, "sslmode": {"disable"}}
	u := url.URL{Scheme: "postgres", User: url.User(role), Path: "/" + database, RawQuery: q.Encode()}
	return u.String()
}

// Owner tells whether this program started the server, rather than joined it.
func (s *Server) Owner() bool { return s.child() != nil }

func (s *Server) child() *child {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.started
}

func (s *Server) setChild(c *child) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.started = c
}

// Stop ends this program's share. The last one out stops the server and waits
// until it is down. Who started it gives the others a while to finish first,
// since the server does not outlive it; one of them that stays starts it anew.
func (s *Server) Stop() error {
	s.stop.Do(func() { s.stopped = s.end() })
	return s.stopped
}

func (s *Server) end() error {
	close(s.quit)
	<-s.watched
	ctx, cancel := context.WithTimeout(context.Background(), patience)
	defer cancel()
	defer s.members.free()
	for waited := time.Duration(0); ; waited += courtesy / 50 {
		done, err := s.leave(ctx, waited >= courtesy)
		if done || err != nil {
			return err
		}
		if err := pause(ctx, courtesy/50); err != nil {
			return fmt.Errorf("pgembed: stop: %w", err)
		}
	}
}

// courtesy is how long the program that started the server waits for others
// that use it (an export, say) before it takes the server down.
const courtesy = 2 * time.Second

// leave stops the server if nobody else uses it, or if it must. It tells
// whether there is nothing more to do.
func (s *Server) leave(ctx context.Context, must bool) (bool, error) {
	gate, err := s.place.lock(ctx, "start.lock", exclusive)
	if err != nil {
		return false, err
	}
	defer gate.free()
	if !s.members.alone() && !must {
		return !s.Owner() || s.options.Brief, nil
	}
	return true, s.shutDown(ctx)
}

// shutDown asks the postmaster to end (fast: clients are cut off, the data is
// whole) and waits for it.
func (s *Server) shutDown(ctx context.Context) error {
	_, note := s.place.postmaster()
	note.signalFast()
	if c := s.child(); c != nil {
		c.wait(ctx)
	}
	for {
		state, _ := s.place.postmaster()
		if state == absent || state == stale {
			s.place.clearSocket(note)
			return s.throwAway()
		}
		if err := pause(ctx, 20*time.Millisecond); err != nil {
			return fmt.Errorf("the private PostgreSQL in %s does not stop: %w", s.place.cluster, err)
		}
	}
}

func pause(ctx context.Context, d time.Duration) error {
	select {
	case <-ctx.Done():
		return ctx.Err()
	case <-time.After(d):
		return nil
	}
}

func (p place) file(name string) string { return filepath.Join(p.home, name) }

func exists(path string) bool {
	_, err := os.Stat(path)
	return err == nil
}
