package practice_test

import (
	"bufio"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"leafround/bot/practice"
)

// send posts a form to the page with headers of one's own.
func send(t *testing.T, url string, form url.Values, header map[string]string) (int, string) {
	t.Helper()
	r, err := http.NewRequest(http.MethodPost, url, strings.NewReader(form.Encode()))
	require.NoError(t, err)
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	for k, v := range header {
		if k == "Host" {
			r.Host = v
			continue
		}
		r.Header.Set(k, v)
	}
	answer, err := http.DefaultClient.Do(r)
	require.NoError(t, err)
	defer answer.Body.Close()
	body, err := bufio.NewReader(answer.Body).ReadString(0)
	if body == "" {
		require.Error(t, err)
	}
	return answer.StatusCode, strings.TrimSpace(body)
}

func quietPage(t *testing.T, p practice.Page) (*practice.Server, int64, string) {
	t.Helper()
	s := practice.New(practice.Options{Clock: practice.FrozenClock(time.Date(2026, 11, 25, 6, 0, 0, 0, time.UTC))})
	s.AddPerson("Ana")
	p.Group = s.AddGroup(practice.Group{Title: "Totara Bend"})
	server := httptest.NewServer(s.Page(p))
	t.Cleanup(server.Close)
	return s, p.Group, server.URL
}

func TestForeignPostsAreRefused(t *testing.T) {
	s, farm, base := quietPage(t, practice.Page{})
	text := url.Values{"text": {"p12 2 2.5"}}
	status, _ := send(t, base+"/say", text, map[string]string{"Origin": "https://evil.example"})
	assert.Equal(t, http.StatusForbidden, status)
	status, _ = send(t, base+"/say", text, map[string]string{"Sec-Fetch-Site": "cross-site"})
	assert.Equal(t, http.StatusForbidden, status)
	status, _ = send(t, base+"/say", text, map[string]string{"Host": "evil.example", "Origin": "http://evil.example"})
	assert.Equal(t, http.StatusForbidden, status, "a name made to point here")
	asBot := url.Values{"chat_id": {quoteSeq(farm)}, "text": {"hello"}}
	status, _ = send(t, base+"/bot1:practice/sendMessage", asBot, map[string]string{"Origin": "https://evil.example"})
	assert.Equal(t, http.StatusForbidden, status, "nor as the bot, whose practice token everybody knows")
	assert.Empty(t, s.Messages(farm))
	status, _ = send(t, base+"/say", text, map[string]string{"Origin": base, "Sec-Fetch-Site": "same-origin"})
	assert.Equal(t, http.StatusNoContent, status)
	assert.Len(t, s.Messages(farm), 1)
}

func TestMistakesAtThePageGetASentence(t *testing.T) {
	_, _, base := quietPage(t, practice.Page{})
	for _, c := range []struct {
		path string
		form url.Values
		want string
	}{
		{"/say", url.Values{"text": {"  "}}, "Write something first."},
		{"/say", url.Values{"text": {strings.Repeat("🌱", 2049)}}, "too long"},
		{"/amend", url.Values{"text": {"x"}, "message": {"7"}}, "Only one's own lines"},
		{"/press", url.Values{"message": {"7"}, "button": {"0"}}, "no longer there"},
		{"/pin", url.Values{"lat": {"NaN"}, "lon": {"0"}}, "two numbers"},
		{"/clock", url.Values{"hours": {"-1"}}, "forward only"},
		{"/upload", url.Values{}, "Choose a file"},
		{"/paddocks", url.Values{"farm": {"Puriri"}, "zone": {"Nowhere/Land"}, "paddocks": {"1 3"}}, "not a time zone"},
		{"/paddocks", url.Values{"farm": {"Puriri"}, "zone": {"Pacific/Auckland"}}, "List the paddocks"},
		{"/paddocks", url.Values{"zone": {"Pacific/Auckland"}, "paddocks": {"1 3"}}, "Give the farm a name"},
	} {
		status, body := send(t, base+c.path, c.form, nil)
		assert.Equal(t, http.StatusBadRequest, status, c.path)
		assert.Contains(t, body, c.want)
	}
}

func TestOwnPaddocksAsTableGoesAsAFile(t *testing.T) {
	s, _, base := quietPage(t, practice.Page{})
	status, to := send(t, base+"/paddocks", url.Values{"farm": {"Puriri  Flat"}, "zone": {"Pacific/Auckland"}, "paddocks": {"name,area_ha\r\n1,3.2\r\n"}}, nil)
	require.Equal(t, http.StatusOK, status)
	assert.Contains(t, to, "/?")
	group := s.AddGroup(practice.Group{Title: "Puriri Flat"})
	list := s.Messages(group)
	require.Len(t, list, 2)
	assert.Equal(t, "set up Puriri Flat, Pacific/Auckland", list[0].Text)
	kept, ok := s.File(list[1].File.ID)
	require.True(t, ok)
	assert.Equal(t, "name,area_ha\n1,3.2\n", string(kept.Content))
}

func TestClockIsTheHostsToMove(t *testing.T) {
	var moved time.Duration
	_, _, base := quietPage(t, practice.Page{Move: func(d time.Duration) error { moved = d; return nil }})
	status, _ := send(t, base+"/clock", url.Values{"hours": {"168"}}, nil)
	assert.Equal(t, http.StatusNoContent, status)
	assert.Equal(t, 7*24*time.Hour, moved)
}

func TestWordsOfPeopleAreNeverMarkup(t *testing.T) {
	s, farm, base := quietPage(t, practice.Page{})
	s.Say(farm, s.AddPerson("Ana"), `<img src=x onerror=alert(1)>`)
	page := fetch(t, base+"/")
	assert.NotContains(t, page, "<img src=x")
	assert.Contains(t, page, "&lt;img src=x onerror=alert(1)&gt;")
}

func TestEventsResumeWhereTheyLeftOff(t *testing.T) {
	s, farm, base := quietPage(t, practice.Page{})
	ana := s.AddPerson("Ana")
	s.Say(farm, ana, "one")
	seq := s.Seq()
	s.Say(farm, ana, "two")
	r, err := http.NewRequestWithContext(t.Context(), http.MethodGet, base+"/events", nil)
	require.NoError(t, err)
	r.Header.Set("Last-Event-ID", quoteSeq(seq))
	answer, err := http.DefaultClient.Do(r)
	require.NoError(t, err)
	defer answer.Body.Close()
	assert.Equal(t, "text/event-stream", answer.Header.Get("Content-Type"))
	lines := bufio.NewScanner(answer.Body)
	var seen strings.Builder
	for lines.Scan() && !strings.Contains(seen.String(), "event: busy") {
		seen.WriteString(lines.Text() + "\n")
	}
	assert.Contains(t, seen.String(), `\"text\"\u003etwo`)
	assert.NotContains(t, seen.String(), `\u003eone`)
}

func TestEarlierLinesAreLeafedBackTo(t *testing.T) {
	s, farm, base := quietPage(t, practice.Page{})
	ana := s.AddPerson("Ana")
	for i := range 70 {
		s.Say(farm, ana, "line "+quoteSeq(int64(i+1))+".")
	}
	page := fetch(t, base+"/")
	assert.NotContains(t, page, "line 10.")
	assert.Contains(t, page, "line 11.")
	assert.Contains(t, page, `data-before="11"`)
	earlier := fetch(t, base+"/earlier?before=11")
	assert.Contains(t, earlier, "line 1.")
	assert.Contains(t, earlier, "line 10.")
	assert.NotContains(t, earlier, "line 11.")
}

func TestNothingFromOutside(t *testing.T) {
	_, _, base := quietPage(t, practice.Page{})
	for _, path := range []string{"/", "/practice.css", "/practice.js"} {
		body := fetch(t, base+path)
		assert.NotContains(t, body, "http://")
		assert.NotContains(t, body, "https://")
		assert.NotContains(t, body, "//cdn")
	}
	answer, err := http.Get(base + "/")
	require.NoError(t, err)
	answer.Body.Close()
	assert.Contains(t, answer.Header.Get("Content-Security-Policy"), "default-src 'none'")
}
