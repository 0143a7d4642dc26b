package practice_test

import (
	"bytes"
	"encoding/json"
	"io"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"leafround/bot/practice"
)

func fetch(t *testing.T, url string) string {
	t.Helper()
	r, err := http.Get(url)
	require.NoError(t, err)
	defer r.Body.Close()
	b, err := io.ReadAll(r.Body)
	require.NoError(t, err)
	return string(b)
}

// reply is the body of an answer of the Bot API.
type reply struct {
	OK         bool `json:"ok"`
	ErrorCode  int  `json:"error_code"`
	Parameters struct {
		RetryAfter int `json:"retry_after"`
	} `json:"parameters"`
	Result []struct {
		ID int64 `json:"update_id"`
	} `json:"result"`
}

// poll calls getUpdates as raw JSON and gives the ids.
func poll(t *testing.T, base string, call map[string]any) ([]int64, reply) {
	t.Helper()
	body, err := json.Marshal(call)
	require.NoError(t, err)
	r, err := http.Post(base+"/bot1:practice/getUpdates", "application/json", bytes.NewReader(body))
	require.NoError(t, err)
	defer r.Body.Close()
	var out reply
	require.NoError(t, json.NewDecoder(r.Body).Decode(&out))
	ids := []int64{}
	for _, u := range out.Result {
		ids = append(ids, u.ID)
	}
	return ids, out
}

func TestOffsetsAcknowledge(t *testing.T) {
	s := practice.New(practice.Options{})
	server := httptest.NewServer(s)
	defer server.Close()
	ana := s.AddPerson("Ana")
	farm := s.AddGroup(practice.Group{Title: "Totara Bend"})
	_, a := s.Say(farm, ana, "one")
	_, b := s.Say(farm, ana, "two")
	_, c := s.Say(farm, ana, "three")
	ids, _ := poll(t, server.URL, nil)
	assert.Equal(t, []int64{a, b, c}, ids)
	ids, _ = poll(t, server.URL, nil)
	assert.Equal(t, []int64{a, b, c}, ids, "not acknowledged: they come again")
	ids, _ = poll(t, server.URL, map[string]any{"offset": b, "limit": 1})
	assert.Equal(t, []int64{b}, ids)
	ids, _ = poll(t, server.URL, map[string]any{"offset": -1})
	assert.Equal(t, []int64{c}, ids, "a negative offset counts from the end")
	ids, _ = poll(t, server.URL, map[string]any{"offset": c + 1})
	assert.Empty(t, ids)
	assert.Empty(t, s.Pending())
}

func TestAllowedUpdatesHold(t *testing.T) {
	s := practice.New(practice.Options{})
	server := httptest.NewServer(s)
	defer server.Close()
	ana := s.AddPerson("Ana")
	farm := s.AddGroup(practice.Group{Title: "Totara Bend"})
	poll(t, server.URL, map[string]any{"allowed_updates": []string{"message"}})
	id, _ := s.Say(farm, ana, "one")
	editID, ok := s.Edit(farm, id, "two")
	assert.True(t, ok)
	assert.Zero(t, editID)
	ids, _ := poll(t, server.URL, nil)
	assert.Len(t, ids, 1)
}

func TestSecondPollEndsTheFirst(t *testing.T) {
	s := practice.New(practice.Options{})
	server := httptest.NewServer(s)
	defer server.Close()
	first := make(chan reply)
	go func() {
		_, r := poll(t, server.URL, map[string]any{"timeout": 20})
		first <- r
	}()
	for {
		poll(t, server.URL, nil)
		select {
		case r := <-first:
			assert.Equal(t, 409, r.ErrorCode)
			return
		case <-time.After(20 * time.Millisecond):
		}
	}
}

func TestDeliverTwice(t *testing.T) {
	s := practice.New(practice.Options{})
	server := httptest.NewServer(s)
	defer server.Close()
	s.DeliverTwice(true)
	ana := s.AddPerson("Ana")
	farm := s.AddGroup(practice.Group{Title: "Totara Bend"})
	_, a := s.Say(farm, ana, "one")
	ids, _ := poll(t, server.URL, nil)
	require.Equal(t, []int64{a}, ids)
	_, b := s.Say(farm, ana, "two")
	ids, _ = poll(t, server.URL, map[string]any{"offset": a + 1})
	require.Equal(t, []int64{a, b}, ids, "the first one once more, then the new one")
	ids, _ = poll(t, server.URL, map[string]any{"offset": b + 1})
	require.Equal(t, []int64{b}, ids)
	ids, _ = poll(t, server.URL, map[string]any{"offset": b + 1})
	require.Empty(t, ids)
	assert.NoError(t, s.Settled(t.Context()))
}

func TestFaults(t *testing.T) {
	s := practice.New(practice.Options{})
	server := httptest.NewServer(s)
	defer server.Close()
	farm := s.AddGroup(practice.Group{Title: "Totara Bend"})
	send := func() (*http.Response, error) {
		body, err := json.Marshal(map[string]any{"chat_id": farm, "text": "hello"})
		require.NoError(t, err)
		return http.Post(server.URL+"/bot1:practice/sendMessage", "application/json", bytes.NewReader(body))
	}
	s.Inject(practice.Fault{Method: "sendMessage", Do: practice.TooMany, RetryAfter: 7})
	s.Inject(practice.Fault{Method: "sendMessage", Do: practice.ServerError})
	s.Inject(practice.Fault{Method: "sendMessage", Do: practice.Cut})
	s.Inject(practice.Fault{Method: "sendMessage", Do: practice.DropAnswer})
	r, err := send()
	require.NoError(t, err)
	var out reply
	require.NoError(t, json.NewDecoder(r.Body).Decode(&out))
	r.Body.Close()
	assert.Equal(t, [2]int{429, 7}, [2]int{out.ErrorCode, out.Parameters.RetryAfter})
	r, err = send()
	require.NoError(t, err)
	r.Body.Close()
	assert.Equal(t, 500, r.StatusCode)
	_, err = send()
	assert.Error(t, err)
	assert.Empty(t, s.FromBot(farm))
	_, err = send()
	assert.Error(t, err)
	assert.Len(t, s.FromBot(farm), 1, "it was accepted, only the answer was lost")
}

func TestJournalOutlivesARestart(t *testing.T) {
	path := filepath.Join(t.TempDir(), "practice.jsonl")
	clock := practice.FrozenClock(time.Date(2026, 11, 25, 6, 0, 0, 0, time.UTC))
	s, err := practice.Open(practice.Options{Journal: path, Clock: clock})
	require.NoError(t, err)
	ana := s.AddPerson("Ana")
	farm := s.AddGroup(practice.Group{Title: "Totara Bend"})
	_, a := s.Say(farm, ana, "one")
	server := httptest.NewServer(s)
	poll(t, server.URL, map[string]any{"offset": a + 1})
	s.MoveClock(48 * time.Hour)
	_, b := s.Say(farm, ana, "two")
	server.Close()
	require.NoError(t, s.Close())
	f, err := os.OpenFile(path, os.O_APPEND|os.O_WRONLY, 0)
	require.NoError(t, err)
	_, err = f.WriteString(`{"seq":99,"did":"say","mess`)
	require.NoError(t, err)
	require.NoError(t, f.Close())

	again := practice.FrozenClock(time.Date(2026, 11, 25, 6, 0, 0, 0, time.UTC))
	s, err = practice.Open(practice.Options{Journal: path, Clock: again})
	require.NoError(t, err)
	defer s.Close()
	assert.Equal(t, "two", s.Messages(farm)[1].Text)
	require.Len(t, s.Pending(), 1)
	assert.Equal(t, b, s.Pending()[0].ID)
	assert.Equal(t, clock.Now(), again.Now(), "the clock was moved before the restart")
	_, c := s.Say(farm, ana, "three")
	assert.Equal(t, b+1, c)
	assert.Equal(t, ana, s.AddPerson("Ana"))
}

func TestRunningClockKeepsItsLead(t *testing.T) {
	path := filepath.Join(t.TempDir(), "practice.jsonl")
	open := func() (*practice.Server, *practice.Clock) {
		clock := practice.NewClock(time.Now())
		s, err := practice.Open(practice.Options{Journal: path, Clock: clock})
		require.NoError(t, err)
		return s, clock
	}
	s, _ := open()
	ana := s.AddPerson("Ana")
	s.MoveClock(7 * 24 * time.Hour)
	s.Say(ana.ID, ana, "a week on")
	require.NoError(t, s.Close())
	s, clock := open()
	defer s.Close()
	assert.WithinDuration(t, time.Now().Add(7*24*time.Hour), clock.Now(), 10*time.Second)
	assert.False(t, clock.Now().Before(s.Messages(ana.ID)[0].At), "time never goes back")
}

func TestWebhookBringsUpdatesUntilTheyAreTaken(t *testing.T) {
	s := practice.New(practice.Options{})
	server := httptest.NewServer(s)
	defer server.Close()
	defer s.Close()
	type got struct{ body, secret string }
	came := make(chan got, 10)
	status := []int{http.StatusInternalServerError, http.StatusOK, http.StatusOK}
	bot := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		b, _ := io.ReadAll(r.Body)
		w.WriteHeader(status[0])
		status = status[1:]
		came <- got{string(b), r.Header.Get("X-Telegram-Bot-Api-Secret-Token")}
	}))
	defer bot.Close()
	r, err := http.PostForm(server.URL+"/bot1:practice/setWebhook", url.Values{"url": {bot.URL}, "secret_token": {"s3cret"}})
	require.NoError(t, err)
	r.Body.Close()
	ana := s.AddPerson("Ana")
	farm := s.AddGroup(practice.Group{Title: "Totara Bend"})
	s.Say(farm, ana, "one")
	s.Say(farm, ana, "two")
	for _, want := range []string{`"text":"one"`, `"text":"one"`, `"text":"two"`} {
		g := <-came
		assert.Contains(t, g.body, want)
		assert.Equal(t, "s3cret", g.secret)
	}
	assert.NoError(t, s.Settled(t.Context()))
	_, refused := poll(t, server.URL, nil)
	assert.Equal(t, 409, refused.ErrorCode, "no polling while a webhook is set")
}
