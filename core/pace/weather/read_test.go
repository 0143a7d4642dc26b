package weather_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"leafround/core/entry"
	"leafround/core/pace/weather"
)

func TestGoodLinesAreRead(t *testing.T) {
	got := weather.Read("\ufeffdate,tmin,tmax,rain\r\n2026-11-24,8.5,19,0\r\n\r\n2026-11-25,,,12.4\n2026-11-26, 7 ,18,\n")
	require.Empty(t, got.Bad)
	require.Len(t, got.Entries, 4)
	first := got.Entries[0].(entry.Temperature)
	assert.Equal(t, []float64{8.5, 19}, []float64{*first.Min, *first.Max})
	assert.Equal(t, entry.Air, first.Where)
	assert.Equal(t, "2026-11-25", got.Entries[2].On().String())
	assert.Equal(t, 12.4, got.Entries[2].(entry.Rain).Mm)
	assert.Equal(t, 3, got.Days)
	assert.Equal(t, []string{"2026-11-24", "2026-11-26"}, []string{got.From.String(), got.To.String()})
}

func TestBadLinesAreNamedAndNoneIsHalfRead(t *testing.T) {
	for line, why := range map[string]string{
		"2026-11-25,9,x,2":       `tmax "x" is not a number`,
		"2026-11-25,9,12":        "3 fields where the header has 4",
		"2026-11-25,9,12,2,1":    "5 fields where the header has 4",
		"25/11/2026,9,12,2":      `"25/11/2026" is not a date like 2026-11-25`,
		"2026-02-30,9,12,2":      `"2026-02-30" is not a date like 2026-11-25`,
		"2026-11-25,19,12,2":     "tmin 19 is above tmax 12",
		"2026-11-25,9,,2":        "only one of tmin and tmax is given",
		"2026-11-25,,,":          "no value is given",
		"2026-11-25,9,12,-1":     "rain -1 can't be: it lies outside 0 to 1900",
		"2026-11-25,48,66,1":     "tmax 66 can't be: it lies outside -90 to 60",
		"2026-11-25,9,12,NaN":    `rain "NaN" is not a number`,
		"2026-11-25,9,0x1p3,1":   `tmax "0x1p3" is not a number`,
		"2026-11-25,\"9,12,1":    "the quotes don't match",
		"2026-11-24,9,12,1":      "2026-11-24 stands in line 2 already",
		"2026-11-25,9,12,2 mm":   `rain "2 mm" is not a number`,
		"date,tmin,tmax,rain":    `"date" is not a date like 2026-11-25`,
		"2026-11-25;9;12;2":      "1 fields where the header has 4",
		"2026-11-25,9,12,2\x00":  "rain \"2\\x00\" is not a number",
		"2026-11-25T00:00,9,1,2": `"2026-11-25T00:00" is not a date like 2026-11-25`,
	} {
		got := weather.Read("date,tmin,tmax,rain\n2026-11-24,8,19,0\n" + line + "\n2026-11-30,8,19,0\n")
		require.Len(t, got.Bad, 1, line)
		assert.Equal(t, weather.Bad{Line: 3, Text: line, Why: why}, got.Bad[0])
		assert.Len(t, got.Entries, 4, "the good lines around %q stand", line)
	}
}

func TestBadHeaders(t *testing.T) {
	for text, why := range map[string]string{
		"":                                "the table is empty: its first line should be date,tmin,tmax,rain",
		" \n\n":                           "the table is empty: its first line should be date,tmin,tmax,rain",
		"day,tmin,tmax\n2026-11-25,1,2\n": "the header has no column date: it should be date,tmin,tmax,rain",
		"date,tmin,rain\n":                "the header has only one of tmin and tmax: both are needed",
		"date,wind\n":                     "the header has neither tmin,tmax nor rain",
		"date,rain,rain\n":                "the column rain stands twice in the header",
	} {
		got := weather.Read(text)
		require.Len(t, got.Bad, 1, text)
		assert.Equal(t, why, got.Bad[0].Why)
		assert.Empty(t, got.Entries)
	}
}

func TestOtherSeparatorsAndColumns(t *testing.T) {
	got := weather.Read("station;RAIN;date\nA;1,5;2026-11-25\n")
	require.Empty(t, got.Bad)
	assert.Equal(t, entry.Rain{Date: entry.NewDate(2026, 11, 25), Mm: 1.5}, got.Entries[0])
	got = weather.Read("date\ttmin\ttmax\n2026-11-25\t-1,5\t3\n")
	require.Empty(t, got.Bad)
	assert.Equal(t, -1.5, *got.Entries[0].(entry.Temperature).Min)
}

// 1,461 days: npm vega-datasets 3.2.1, seattle-weather.csv.
func TestFourRealYears(t *testing.T) {
	text, err := os.ReadFile("../../../testdata/published/seattle-weather.csv")
	require.NoError(t, err)
	got := weather.Read(string(text))
	assert.Empty(t, got.Bad)
	assert.Equal(t, 1461, got.Days)
	assert.Len(t, got.Entries, 2*1461)
	assert.Equal(t, []string{"2012-01-01", "2015-12-31"}, []string{got.From.String(), got.To.String()})
}

func FuzzRead(f *testing.F) {
	f.Add("date,tmin,tmax,rain\n2026-11-25,1,2,3\n")
	f.Add("date;rain\n2026-11-25;1,2\n")
	f.Fuzz(func(t *testing.T, text string) {
		got := weather.Read(text)
		if lines := strings.Count(text, "\n") + 1; got.Days+len(got.Bad) > lines {
			t.Fatalf("%d days and %d bad lines of %d", got.Days, len(got.Bad), lines)
		}
	})
}
