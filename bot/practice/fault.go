package practice

import (
	"net/http"
	"slices"
	"strings"
	"time"
)

// Harm names what goes wrong.
type Harm string

// What may go wrong with a call.
const (
	DropAnswer  Harm = "drop answer"  // the call takes effect, its answer is lost
	Cut         Harm = "cut"          // the connection is cut before the call takes effect
	TooMany     Harm = "too many"     // 429 with RetryAfter
	ServerError Harm = "server error" // 500
	BadGateway  Harm = "bad gateway"  // 502 with a page of HTML instead of JSON
	Forbidden   Harm = "forbidden"    // 403
	Garbage     Harm = "garbage"      // 200 with a body cut short
	Slow        Harm = "slow"         // answered after Delay
)

// Fault makes calls of one method go wrong.
type Fault struct {
	Method     string        // "sendMessage"; any method if empty
	Chat       int64         // calls for this chat only; any if 0
	Skip       int           // so many matching calls go well first
	Times      int           // so many go wrong; 1 if 0, for ever if negative
	Do         Harm          //
	RetryAfter int           // seconds, with TooMany
	Delay      time.Duration // with Slow
}

// Inject makes calls go wrong; faults are tried in the order they came.
func (s *Server) Inject(f Fault) {
	if f.Times == 0 {
		f.Times = 1
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	s.faults = append(s.faults, &f)
}

// ClearFaults lets everything go well again.
func (s *Server) ClearFaults() {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.faults = nil
}

// fault takes the fault that hits this call, if any.
func (s *Server) fault(name string, p params) *Fault {
	s.mu.Lock()
	defer s.mu.Unlock()
	for i, f := range s.faults {
		if f.Method != "" && !strings.EqualFold(f.Method, name) || f.Chat != 0 && f.Chat != p.int64("chat_id") {
			continue
		}
		if f.Skip > 0 {
			f.Skip--
			continue
		}
		hit := *f
		if f.Times--; f.Times == 0 {
			s.faults = slices.Delete(s.faults, i, i+1)
		}
		return &hit
	}
	return nil
}

// callWithFaults runs a call, unless a fault is in its way; done tells that
// the answer has been given, or will never be.
func (s *Server) callWithFaults(w http.ResponseWriter, r *http.Request, name string, p params) (result any, err error, done bool) {
	f := s.fault(name, p)
	if f == nil {
		result, err = s.call(r.Context(), name, p)
		return result, err, false
	}
	switch f.Do {
	case Cut:
		panic(http.ErrAbortHandler)
	case DropAnswer:
		_, _ = s.call(r.Context(), name, p) // its answer is what gets lost
		panic(http.ErrAbortHandler)
	case TooMany:
		return nil, &apiError{Code: 429, Text: "Too Many Requests: retry later", RetryAfter: f.RetryAfter}, false
	case ServerError:
		return nil, &apiError{Code: 500, Text: "Internal Server Error"}, false
	case Forbidden:
		return nil, &apiError{Code: 403, Text: "Forbidden: bot was blocked by the user"}, false
	case BadGateway:
		http.Error(w, "<html><body><h1>502 Bad Gateway</h1></body></html>", http.StatusBadGateway)
		return nil, nil, true
	case Garbage:
		_, _ = w.Write([]byte(`{"ok":true,"result":{"message_`))
		return nil, nil, true
	case Slow:
		select {
		case <-time.After(f.Delay):
		case <-r.Context().Done():
		}
	}
	result, err = s.call(r.Context(), name, p)
	return result, err, false
}
