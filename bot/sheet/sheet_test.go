package sheet

import (
	"bytes"
	"encoding/csv"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
)

func TestWriteKeepsEveryEntryAndQuotesWhatNeedsIt(t *testing.T) {
	at := time.Date(2026, 11, 25, 4, 40, 0, 0, time.UTC)
	day := entry.NewDate(2026, 11, 25)
	log := []entry.Logged{
		{ID: 1, SentAt: at, Member: `Jo "J"`, Entry: entry.Count{Paddock: "River, 1", Date: day, Mean: 2.125, N: 4}, ReplacedBy: 3},
		{ID: 2, SentAt: at, Member: "Ana", Entry: entry.Note{Text: "gate\nopen"}},
		{ID: 3, SentAt: at, Member: "Ana", Entry: entry.Undo{}},
		{ID: 4, SentAt: at, Member: "Ana", Entry: entry.Graze{Paddock: "7", Date: day, Event: entry.Out, Mob: "milkers",
			Residual: &entry.Residual{Value: 1500, Unit: entry.KgDMPerHa}}},
		{ID: 5, SentAt: at, Member: "Ana", Entry: entry.Temperature{Date: day, Where: entry.Air, Min: ptr(-1.0), Max: ptr(8.0)}},
		{ID: 6, SentAt: at, Member: "Ana", Entry: entry.Temperature{Date: day, Where: entry.Air, Max: ptr(8.0)}},
	}
	var b bytes.Buffer
	require.NoError(t, Write(&b, time.FixedZone("", 13*3600), log))
	rows, err := csv.NewReader(&b).ReadAll()
	require.NoError(t, err)
	require.Equal(t, Columns, rows[0])
	require.Len(t, rows, 7)
	require.Equal(t, []string{"1", "2026-11-25T17:40:00+13:00", `Jo "J"`, "count", "River, 1", "", "2026-11-25", "2.125", "leaves"}, rows[1][:9])
	require.Equal(t, "3", rows[1][10])
	require.Equal(t, "gate\nopen", rows[2][9])
	require.Equal(t, "undo", rows[3][3])
	require.Equal(t, []string{"1500", "kgDM/ha"}, rows[4][7:9])
	require.Equal(t, []string{"3.5", "°C"}, rows[5][7:9], "the day's mean")
	require.Contains(t, rows[5][9], `"min":-1`)
	require.Equal(t, []string{"8", "°C"}, rows[6][7:9])
}

func ptr(v float64) *float64 { return &v }
