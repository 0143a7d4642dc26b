package skies

import (
	"net/http"
	"net/http/httptest"
	"testing"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
)

func serve(t *testing.T, status int, body string) (Service, *string) {
	asked := new(string)
	s := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		*asked = r.URL.String()
		w.WriteHeader(status)
		_, err := w.Write([]byte(body))
		require.NoError(t, err)
	}))
	t.Cleanup(s.Close)
	return Service{Template: s.URL + "/daily?latitude={lat}&longitude={lon}"}, asked
}

func TestFetchReadsDays(t *testing.T) {
	s, asked := serve(t, 200, `{"daily":{"time":["2026-11-24","2026-11-25"],"temperature_2m_min":[8.5,null],
		"temperature_2m_max":[19,21],"precipitation_sum":[0,2.4]},"elevation":40}`)
	got, err := s.Fetch(t.Context(), -37.81, 175.28)
	require.NoError(t, err)
	require.Equal(t, "/daily?latitude=-37.8100&longitude=175.2800", *asked)
	lo, hi := 8.5, 19.0
	day := entry.NewDate(2026, 11, 24)
	require.Equal(t, []entry.Entry{
		entry.Temperature{Date: day, Min: &lo, Max: &hi, Where: entry.Air},
		entry.Rain{Date: day, Mm: 0}, entry.Rain{Date: day.Add(1), Mm: 2.4}}, got)
}

func TestFetchSaysWhatIsWrong(t *testing.T) {
	for body, want := range map[string]string{
		`{"daily":{}}`: "holds no day", `no json`: "not understood",
		`{"daily":{"time":["2026-11-24"],"temperature_2m_min":[9],"temperature_2m_max":[5]}}`: "can't be",
		`{"daily":{"time":["2026-11-24"],"precipitation_sum":[-1]}}`:                          "can't be",
		`{"daily":{"time":["soon"],"precipitation_sum":[1]}}`:                                 "not understood",
	} {
		s, _ := serve(t, 200, body)
		_, err := s.Fetch(t.Context(), 0, 0)
		require.ErrorContains(t, err, want)
	}
	s, _ := serve(t, 503, "")
	_, err := s.Fetch(t.Context(), 0, 0)
	require.ErrorContains(t, err, "503")
}

func TestCheck(t *testing.T) {
	require.NoError(t, Check("https://weather.example/daily?latitude={lat}&longitude={lon}"))
	for _, bad := range []string{"", "weather", "https://weather.example/{lat}", "ftp://x/{lat}/{lon}"} {
		require.Error(t, Check(bad), bad)
	}
}
