package practice

import (
	"net/http"
	"os"
	"sync"
	"time"
)

// Options say how the server is made. Only Token is needed.
type Options struct {
	Token   string           // the bot's token, "1:practice" if empty
	Bot     string           // the bot's user name, "leafround_bot" if empty
	Now     func() time.Time // dates of messages; the Clock's time, or the wall clock's, if nil
	Clock   *Clock           // a clock that the page may move; kept in the journal
	Journal string           // file of JSON lines, for Open
}

// Server is the Bot API server and all its chats. Its methods may be called
// from several goroutines.
type Server struct {
	options Options
	mux     *http.ServeMux

	mu      sync.Mutex
	state   *state
	changed chan struct{} // closed and made anew at every event
	journal *os.File
	failure error // the journal could not be written
	poll    *poller
	twice   bool
	handed  map[int64]int // how often an update was handed over
	faults  []*Fault
	hook    *webhook        // nil while the bot polls
	allowed map[string]bool // kinds that the bot asked for; nil is the usual ones
}

// New makes a server that keeps everything in memory. It panics when a
// journal is asked for: that is Open's to read.
func New(o Options) *Server {
	if o.Journal != "" {
		panic("practice: a server with a journal is made by Open")
	}
	return newServer(o)
}

func newServer(o Options) *Server {
	if o.Token == "" {
		o.Token = "1:practice"
	}
	if o.Bot == "" {
		o.Bot = "leafround_bot"
	}
	if o.Now == nil {
		o.Now = time.Now
		if o.Clock != nil {
			o.Now = o.Clock.Now
		}
	}
	s := &Server{options: o, state: newState(), changed: make(chan struct{}), handed: map[int64]int{}}
	s.mux = http.NewServeMux()
	s.mux.HandleFunc("/file/", s.serveFile)
	s.mux.HandleFunc("/", s.serveMethod)
	return s
}

// ServeHTTP serves the Bot API: /bot<token>/<method> and
// /file/bot<token>/<path>.
func (s *Server) ServeHTTP(w http.ResponseWriter, r *http.Request) { s.mux.ServeHTTP(w, r) }

// Token gives the token that the bot must use.
func (s *Server) Token() string { return s.options.Token }

// Self gives the bot as a sender.
func (s *Server) Self() Person { return Person{ID: botID, Name: "Leafround", Bot: true} }

// botID is the bot's own user id.
const botID = 1

// now gives the time for a message, to the second as the wire has it.
func (s *Server) now() time.Time { return s.options.Now().Truncate(time.Second) }

// record applies an event, writes it to the journal and wakes who waits. The
// caller holds the lock.
func (s *Server) record(e Event) {
	e.Seq = s.state.seq + 1
	if e.At.IsZero() {
		e.At = s.now()
	}
	s.state.apply(e)
	s.write(e)
	close(s.changed)
	s.changed = make(chan struct{})
}
