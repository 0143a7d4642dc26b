package intake

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"leafround/bot/chat"
)

// inbox is an inbox in memory that may refuse a few times.
type inbox struct {
	mu      sync.Mutex
	refuse  int
	kept    map[string]chat.Raw
	refused int
}

func (b *inbox) Receive(_ context.Context, updates []chat.Raw) error {
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.refuse > 0 {
		b.refuse--
		b.refused++
		return errors.New("the database does not answer")
	}
	if b.kept == nil {
		b.kept = map[string]chat.Raw{}
	}
	for _, u := range updates {
		b.kept[string(u.JSON)] = u
	}
	return nil
}

func (b *inbox) count() int {
	b.mu.Lock()
	defer b.mu.Unlock()
	return len(b.kept)
}

// api is a Bot API server with faults. It forgets an update when a call's
// offset lies behind it, as Telegram does.
type api struct {
	mu      sync.Mutex
	updates []string                      // as JSON, with their number first
	faults  []func(w http.ResponseWriter) // one for each of the first calls; nil for none
	offsets []int64
	kinds   string
	inbox   *inbox
	early   int // updates forgotten before they were kept
}

func number(raw string) int64 {
	m := numberPattern.FindStringSubmatch(raw)
	if m == nil {
		return -1
	}
	n, _ := strconv.ParseInt(m[1], 10, 64)
	return n
}

func (a *api) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	if err := r.ParseMultipartForm(1 << 20); err != nil {
		http.Error(w, err.Error(), http.StatusBadRequest)
		return
	}
	a.mu.Lock()
	defer a.mu.Unlock()
	offset, _ := strconv.ParseInt(r.FormValue("offset"), 10, 64)
	a.offsets = append(a.offsets, offset)
	a.kinds = r.FormValue("allowed_updates")
	var still []string
	for _, u := range a.updates {
		if n := number(u); n < offset && n >= 0 {
			a.inbox.mu.Lock()
			if _, kept := a.inbox.kept[u]; !kept {
				a.early++
			}
			a.inbox.mu.Unlock()
			continue
		}
		still = append(still, u)
	}
	a.updates = still
	if len(a.faults) > 0 {
		fault := a.faults[0]
		a.faults = a.faults[1:]
		if fault != nil {
			fault(w)
			return
		}
	}
	if len(still) == 0 {
		time.Sleep(5 * time.Millisecond) // a very short long poll
	}
	fmt.Fprintf(w, `{"ok":true,"result":[%s]}`, strings.Join(still[:min(len(still), 100)], ","))
}

func says(code int, body string) func(http.ResponseWriter) {
	return func(w http.ResponseWriter) { w.WriteHeader(code); io.WriteString(w, body) }
}

func hangsUp(w http.ResponseWriter) {
	conn, _, err := w.(http.Hijacker).Hijack()
	if err == nil {
		io.WriteString(conn, "HTTP/1.1 200 OK\r\nContent-Length: 500\r\n\r\n{\"ok\":true,\"result\":[{\"upd")
		conn.Close()
	}
}

func text(id int64) string {
	return fmt.Sprintf(`{"update_id":%d,"message":{"message_id":%d,"chat":{"id":-100},"text":"p12 2"}}`, id, id)
}

// poll runs a poller until the inbox holds so many updates, and a little more.
func poll(t *testing.T, a *api, want int) {
	t.Helper()
	s := httptest.NewServer(a)
	defer s.Close()
	ctx, cancel := context.WithTimeout(t.Context(), 15*time.Second)
	defer cancel()
	p := &Poller{URL: s.URL + "/bot123:SECRET/getUpdates", Inbox: a.inbox, Wait: time.Second}
	done := make(chan error, 1)
	go func() { done <- p.Run(ctx) }()
	require.Eventually(t, func() bool { return a.inbox.count() >= want }, 14*time.Second, 2*time.Millisecond)
	time.Sleep(30 * time.Millisecond)
	cancel()
	require.NoError(t, <-done)
	require.Equal(t, want, a.inbox.count())
	require.Zero(t, a.early, "the server was told to forget an update that was not kept")
}

func TestEveryUpdateIsKeptBeforeTheServerForgetsIt(t *testing.T) {
	a := &api{inbox: &inbox{refuse: 2}}
	for i := range int64(250) {
		a.updates = append(a.updates, text(i+700))
	}
	a.faults = []func(http.ResponseWriter){
		says(502, "<html>Bad Gateway</html>"), hangsUp, nil, nil, nil, // the inbox refuses the first two that come through
		says(409, `{"ok":false,"error_code":409,"description":"Conflict: terminated by other getUpdates request"}`),
		says(500, `{"ok":false,"error_code":500,"description":"Internal Server Error"}`), nil,
		says(200, "garbage"), says(200, `{"ok":true}`), says(200, ""),
	}
	poll(t, a, 250)
	require.Zero(t, a.offsets[0], "an offset from before the start is trusted")
	require.Empty(t, a.updates, "the server still holds updates that are kept")
	require.Equal(t, 2, a.inbox.refused)
	require.JSONEq(t, `["message","edited_message","callback_query","my_chat_member"]`, a.kinds)
}

func TestTheServersPauseIsKept(t *testing.T) {
	a := &api{inbox: &inbox{}, updates: []string{text(1)}}
	a.faults = []func(http.ResponseWriter){says(429, `{"ok":false,"error_code":429,"description":"Too Many Requests","parameters":{"retry_after":1}}`)}
	begin := time.Now()
	poll(t, a, 1)
	require.GreaterOrEqual(t, time.Since(begin), time.Second)
}

func TestMalformedUpdatesAreKeptAndHoldUpNobody(t *testing.T) {
	a := &api{inbox: &inbox{}}
	a.updates = []string{
		text(1),
		`{"update_id":2,"message":"not an object"}`,
		`{"update_id":3}`,
		`{"update_id":4,"message":{"text":}}`, // no JSON: the whole answer is none
		`{"update_id":5,"message":{"message_id":5,"chat":{"id":-200},"text":"a } in \" it"}}`,
		`{"update_id":"6","message":{"chat":{"id":"-100"}}}`,
		text(7),
	}
	poll(t, a, 7)
	require.Empty(t, a.updates)
	require.EqualValues(t, -200, a.inbox.kept[`{"update_id":5,"message":{"message_id":5,"chat":{"id":-200},"text":"a } in \" it"}}`].Chat)
}

func TestAnUpdateWithoutANumberIsKept(t *testing.T) {
	a := &api{inbox: &inbox{}}
	a.updates = []string{`{"message":{"chat":{"id":-100}}}`, text(7)}
	poll(t, a, 2)
}

// After a quiet week an offset of before would hide updates that are numbered
// anew.
func TestAStaleOffsetIsForgotten(t *testing.T) {
	a := &api{inbox: &inbox{}, updates: []string{text(900)}}
	s := httptest.NewServer(a)
	defer s.Close()
	now := time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC)
	p := &Poller{URL: s.URL + "/bot1:x/getUpdates", Inbox: a.inbox, Now: func() time.Time { return now }}
	p.fill()
	require.NoError(t, p.once(t.Context()))
	require.NoError(t, p.once(t.Context()))
	now = now.Add(8 * 24 * time.Hour)
	a.updates = append(a.updates, text(5))
	require.NoError(t, p.once(t.Context()))
	require.Equal(t, []int64{0, 901, 0}, a.offsets)
	require.Equal(t, 2, a.inbox.count())
}

func TestTheTokenIsNotTold(t *testing.T) {
	var told strings.Builder
	p := &Poller{URL: "http://127.0.0.1:1/bot123:SECRET/getUpdates", Inbox: &inbox{}, Log: slog.New(slog.NewTextHandler(&told, nil))}
	ctx, cancel := context.WithTimeout(t.Context(), 300*time.Millisecond)
	defer cancel()
	require.NoError(t, p.Run(ctx))
	require.Contains(t, told.String(), "trying again")
	require.NotContains(t, told.String(), "SECRET")
}

func TestTheWebhookSaysYesOnlyWhenAnUpdateIsKept(t *testing.T) {
	b := &inbox{refuse: 1}
	h := &Webhook{Secret: "s3cret", Inbox: b}
	post := func(secret, body string) int {
		r := httptest.NewRequest(http.MethodPost, "/", strings.NewReader(body))
		r.Header.Set("X-Telegram-Bot-Api-Secret-Token", secret)
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		return w.Code
	}
	require.Equal(t, http.StatusServiceUnavailable, post("s3cret", text(1)))
	require.Zero(t, b.count())
	require.Equal(t, http.StatusOK, post("s3cret", text(1)))
	require.Equal(t, http.StatusOK, post("s3cret", text(1)))
	require.Equal(t, http.StatusOK, post("s3cret", `{"update_id":2,"message":`))
	require.Equal(t, http.StatusForbidden, post("", text(3)))
	require.Equal(t, http.StatusForbidden, post("s3cret2", text(3)))
	require.Equal(t, http.StatusBadRequest, post("s3cret", ""))
	require.Equal(t, 2, b.count())
	w := httptest.NewRecorder()
	h.ServeHTTP(w, httptest.NewRequest(http.MethodGet, "/", nil))
	require.Equal(t, http.StatusMethodNotAllowed, w.Code)
}

func TestTheChatOfAnUpdate(t *testing.T) {
	for raw, want := range map[string]int64{
		`{"update_id":1,"edited_message":{"chat":{"id":-1}}}`:                                -1,
		`{"update_id":1,"callback_query":{"from":{"id":9},"message":{"chat":{"id":-2}}}}`:    -2,
		`{"update_id":1,"my_chat_member":{"chat":{"id":-3}}}`:                                -3,
		`{"update_id":1,"dream":{"chat":{"id":-4}}}`:                                         -4,
		`{"update_id":1,"message":{"chat":{"id":-5},"reply_to_message":{"chat":{"id":-6}}}}`: -5,
		`{"update_id":1,"message":{"chat":{"id":-7},"migrate_to_chat_id":-1007}}`:            -1007,
		`{"update_id":1,"message":{"chat":"x"}}`:                                             0,
		`{"update_id":1}`:                                                                    0,
		`[]`:                                                                                 0,
	} {
		require.Equal(t, want, Read([]byte(raw), time.Now()).Chat, raw)
	}
}

// Whatever the answer is, splitting it ends, stays within it, and finds all
// objects of a sound one.
func FuzzSplit(f *testing.F) {
	f.Add([]byte(`{"ok":true,"result":[{"update_id":1},{"update_id":2,"t":"}{\""}]}`))
	f.Add([]byte(`{"ok":true,"result":[{"update_id":1},{"update_id":2`))
	f.Fuzz(func(t *testing.T, answer []byte) {
		got := split(answer)
		total := 0
		for _, o := range got {
			total += len(o)
		}
		if total > len(answer) {
			t.Fatal("more comes out than goes in")
		}
		var sound struct {
			Result []struct{} `json:"result"`
		}
		prefix := strings.HasPrefix(string(answer), `{"ok":true,"result":[{`) && strings.Count(string(answer), "result") == 1
		if prefix && json.Unmarshal(answer, &sound) == nil && len(sound.Result) != len(got) {
			t.Fatalf("%d objects of %d", len(got), len(sound.Result))
		}
	})
}
