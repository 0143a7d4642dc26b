package send_test

import (
	"fmt"
	"io"
	"math/rand/v2"
	"net/http"
	"net/http/httptest"
	"path"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// fakeAPI is a Bot API server with bad moments: it drops connections before
// and after it has done what it was asked, answers 429, 500 and garbage, and
// now and then hands over what it was told to forget.
type fakeAPI struct {
	url string

	mu      sync.Mutex
	epoch   int
	quiet   bool // no more bad moments
	updates []update
	sends   []sending
	again   int // updates handed over after they were forgotten
	lost    int // sends that were taken and not answered
}

type update struct {
	id     int64
	json   string
	forgot bool
}

// sending is one message that the server took.
type sending struct {
	chat    string
	replyTo string
	n       int // which message it answers
	epoch   int // how often the program had been killed
	lost    bool
}

func newAPI(t *testing.T) *fakeAPI {
	a := &fakeAPI{}
	s := httptest.NewServer(a)
	t.Cleanup(s.Close)
	a.url = s.URL
	return a
}

// say has Ana write message n in a chat.
func (a *fakeAPI) say(chat int64, n int) {
	a.mu.Lock()
	defer a.mu.Unlock()
	a.updates = append(a.updates, update{id: int64(5000 + n), json: fmt.Sprintf(`{"update_id":%d,"message":{"message_id":%d,"date":1764000000,`+
		`"chat":{"id":%d,"type":"supergroup","title":"Totara Bend"},"from":{"id":7,"first_name":"Ana"},"text":"note %d"}}`, 5000+n, n, chat, n)})
}

func (a *fakeAPI) nextEpoch() { a.mu.Lock(); a.epoch++; a.mu.Unlock() }
func (a *fakeAPI) calm()      { a.mu.Lock(); a.quiet = true; a.mu.Unlock() }

func (a *fakeAPI) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	if err := r.ParseMultipartForm(1 << 20); err != nil {
		return // the program died while it was asking
	}
	switch path.Base(r.URL.Path) {
	case "getUpdates":
		a.getUpdates(w, r)
	case "sendMessage":
		a.sendMessage(w, r)
	default:
		http.Error(w, `{"ok":false,"error_code":404,"description":"Not Found"}`, http.StatusNotFound)
	}
}

// bad is true once in n calls, while the server has bad moments.
func (a *fakeAPI) bad(n int) bool { return !a.quiet && rand.N(n) == 0 }

func (a *fakeAPI) getUpdates(w http.ResponseWriter, r *http.Request) {
	offset, _ := strconv.ParseInt(r.FormValue("offset"), 10, 64)
	a.mu.Lock()
	var batch []string
	for i := range a.updates {
		u := &a.updates[i]
		u.forgot = u.forgot || u.id < offset
		if !u.forgot || a.bad(40) {
			if u.forgot {
				a.again++
			}
			batch = append(batch, u.json)
		}
	}
	drop, trouble := a.bad(15), a.bad(15)
	a.mu.Unlock()
	switch {
	case drop:
		hangUp(w)
	case trouble:
		http.Error(w, "<html>Bad Gateway</html>", http.StatusBadGateway)
	default:
		if len(batch) == 0 {
			time.Sleep(20 * time.Millisecond) // a very short long poll
		}
		fmt.Fprintf(w, `{"ok":true,"result":[%s]}`, strings.Join(batch[:min(len(batch), 100)], ","))
	}
}

func (a *fakeAPI) sendMessage(w http.ResponseWriter, r *http.Request) {
	a.mu.Lock()
	defer a.mu.Unlock()
	switch {
	case a.bad(12):
		hangUp(w)
		return
	case a.bad(12):
		http.Error(w, `{"ok":false,"error_code":500,"description":"Internal Server Error"}`, http.StatusInternalServerError)
		return
	case a.bad(40):
		http.Error(w, `{"ok":false,"error_code":429,"description":"Too Many Requests","parameters":{"retry_after":1}}`, http.StatusTooManyRequests)
		return
	}
	n, _ := strconv.Atoi(strings.TrimPrefix(r.FormValue("text"), "note "))
	s := sending{chat: r.FormValue("chat_id"), replyTo: r.FormValue("reply_parameters"), n: n, epoch: a.epoch, lost: a.bad(12)}
	a.sends = append(a.sends, s)
	if s.lost {
		a.lost++
		hangUp(w)
		return
	}
	fmt.Fprintf(w, `{"ok":true,"result":{"message_id":%d,"date":1764000000,"chat":{"id":%s,"type":"supergroup"}}}`, 100000+len(a.sends), s.chat)
}

func hangUp(w http.ResponseWriter) {
	if conn, _, err := w.(http.Hijacker).Hijack(); err == nil {
		io.WriteString(conn, "HTTP/1.1 200 OK\r\nContent-Length: 500\r\n\r\n{\"ok\":")
		conn.Close()
	}
}

// answered counts the messages that have been answered.
func (a *fakeAPI) answered() int {
	a.mu.Lock()
	defer a.mu.Unlock()
	seen := map[int]bool{}
	for _, s := range a.sends {
		seen[s.n] = true
	}
	return len(seen)
}

// judge holds what was sent against what was promised.
func (a *fakeAPI) judge(t *testing.T) {
	t.Helper()
	a.mu.Lock()
	defer a.mu.Unlock()
	last := map[string]sending{} // the latest send of each chat
	for _, s := range a.sends {
		require.Equal(t, fmt.Sprintf(`{"message_id":%d,"allow_sending_without_reply":true}`, s.n), s.replyTo)
		before, any := last[s.chat]
		if any {
			require.GreaterOrEqual(t, s.n, before.n, "chat %s out of order", s.chat)
		}
		if any && s.n == before.n {
			require.True(t, before.lost || before.epoch < s.epoch, "reply %d was answered and sent again", s.n)
		}
		last[s.chat] = s
	}
}
