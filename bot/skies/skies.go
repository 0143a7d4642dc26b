// Package skies fetches daily weather for a place from a public forecast
// service, where the operator has set one. It keeps nothing and knows no farm.
//
// The service is named by a template of an address with {lat} and {lon} in it,
// and answers with JSON of this form (parallel lists; °C and mm; null where
// unknown; others beside them are left alone):
//
//	{"daily": {"time": ["2026-11-24", "2026-11-25"],
//	           "temperature_2m_min": [8.5, 9.1], "temperature_2m_max": [19, 21.4],
//	           "precipitation_sum": [0, 2.4]}}
//
//	days, err := skies.Service{Template: t}.Fetch(ctx, -37.81, 175.28)
package skies

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"net/url"
	"strconv"
	"strings"
	"time"

	"leafround/core/entry"
)

// Service is a weather service.
type Service struct {
	Template string       // an address with {lat} and {lon}
	Client   *http.Client // one with a timeout if nil
}

// Check refuses a template that can't be one.
func Check(template string) error {
	u, err := url.Parse(strings.NewReplacer("{lat}", "0", "{lon}", "0").Replace(template))
	ok := err == nil && (u.Scheme == "http" || u.Scheme == "https") && u.Host != ""
	if !ok || !strings.Contains(template, "{lat}") || !strings.Contains(template, "{lon}") {
		return fmt.Errorf("LEAFROUND_WEATHER_URL is a web address with {lat} and {lon} in it, such as https://weather.example/daily?latitude={lat}&longitude={lon}")
	}
	return nil
}

type answer struct {
	Daily struct {
		Time []entry.Date `json:"time"`
		Min  []*float64   `json:"temperature_2m_min"`
		Max  []*float64   `json:"temperature_2m_max"`
		Rain []*float64   `json:"precipitation_sum"`
	} `json:"daily"`
}

const mostBytes = 1 << 20

// Fetch gives the days that the service tells of a place (degrees, north and
// east positive), as entries.
func (s Service) Fetch(ctx context.Context, lat, lon float64) ([]entry.Entry, error) {
	number := func(v float64) string { return strconv.FormatFloat(v, 'f', 4, 64) }
	address := strings.NewReplacer("{lat}", number(lat), "{lon}", number(lon)).Replace(s.Template)
	req, err := http.NewRequestWithContext(ctx, http.MethodGet, address, nil)
	if err != nil {
		return nil, fmt.Errorf("skies: %w", err)
	}
	client := s.Client
	if client == nil {
		client = &http.Client{Timeout: 20 * time.Second}
	}
	resp, err := client.Do(req)
	if err != nil {
		return nil, fmt.Errorf("skies: %w", err)
	}
	defer resp.Body.Close()
	if resp.StatusCode != http.StatusOK {
		return nil, fmt.Errorf("skies: the weather service says %s", resp.Status)
	}
	var a answer
	if err := json.NewDecoder(io.LimitReader(resp.Body, mostBytes)).Decode(&a); err != nil {
		return nil, fmt.Errorf("skies: the weather service's answer is not understood: %w", err)
	}
	return a.entries()
}

// entries checks each day and gives what it tells; a day that can't be is a
// fault of the whole answer.
func (a answer) entries() ([]entry.Entry, error) {
	var all []entry.Entry
	for i, day := range a.Daily.Time {
		lo, hi, rain := at(a.Daily.Min, i), at(a.Daily.Max, i), at(a.Daily.Rain, i)
		if lo != nil && hi != nil {
			if *lo > *hi || *lo < -60 || *hi > 60 {
				return nil, fmt.Errorf("skies: %g to %g °C on %s can't be", *lo, *hi, day)
			}
			all = append(all, entry.Temperature{Date: day, Min: lo, Max: hi, Where: entry.Air})
		}
		if rain != nil {
			if *rain < 0 || *rain > 2000 {
				return nil, fmt.Errorf("skies: %g mm of rain on %s can't be", *rain, day)
			}
			all = append(all, entry.Rain{Date: day, Mm: *rain})
		}
	}
	if len(all) == 0 {
		return nil, fmt.Errorf("skies: the weather service's answer holds no day")
	}
	return all, nil
}

func at(list []*float64, i int) *float64 {
	if i < len(list) {
		return list[i]
	}
	return nil
}
