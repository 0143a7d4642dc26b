package script

import (
	"strings"
	"testing"
	"time"
	_ "time/tzdata"

	"github.com/stretchr/testify/require"
)

const sample = `# a comment

2026-09-26 17:40 Ana: set up Totara Bend, Pacific/Auckland
bot: Done.
  More.
2026-09-27 02:10 Jo [group 2] [reply 1]: p12
  2 2.5 2
bot: 12 stands at 2.2 leaves.

2026-09-27 06:15 bot* Good morning.
  Line two.

2026-09-27 08:00 Jo [press 1]:
2026-09-27 08:01 Jo [pin -37.8 175.3]:
`

func TestReadDropsTheBotAndKeepsTheRest(t *testing.T) {
	lines, err := Read(sample)
	require.NoError(t, err)
	var said []*Message
	for _, l := range lines {
		if l.Message != nil {
			said = append(said, l.Message)
		}
	}
	require.Len(t, said, 4)
	require.Equal(t, "p12\n2 2.5 2", said[1].Text)
	require.Equal(t, 2, said[1].Group)
	require.Equal(t, 1, said[1].Reply)
	require.Equal(t, 1, said[2].Press)
	require.Equal(t, [2]float64{-37.8, 175.3}, *said[3].Pin)
}

func TestPrintingGivesTheScriptBack(t *testing.T) {
	lines, err := Read(sample)
	require.NoError(t, err)
	var b strings.Builder
	p := Printer{W: &b}
	replies := map[int]string{1: "Done.\nMore.", 2: "12 stands at 2.2 leaves."}
	for _, l := range lines {
		if l.Message == nil {
			require.NoError(t, p.Verbatim(l.Verbatim))
			continue
		}
		if l.Message.Index == 3 {
			require.NoError(t, p.Unasked("2026-09-27 06:15", "Good morning.\nLine two."))
		}
		require.NoError(t, p.Message(l.Message))
		if r := replies[l.Message.Index]; r != "" {
			require.NoError(t, p.Reply(r))
		}
	}
	require.Equal(t, sample, b.String())
}

func TestMomentsInAnHourThatComesTwice(t *testing.T) {
	zone, err := time.LoadLocation("Pacific/Auckland")
	require.NoError(t, err)
	// New Zealand's clocks went from 03:00 back to 02:00 on 2026-04-05 (tz database).
	first := Message{Local: "2026-04-05 02:30"}
	at, err := first.At(zone)
	require.NoError(t, err)
	require.Equal(t, "2026-04-05T02:30:00+13:00", at.Format(time.RFC3339))
	second := Message{Local: "2026-04-05 02:30", Offset: "+12:00"}
	at, err = second.At(zone)
	require.NoError(t, err)
	require.Equal(t, "2026-04-05T02:30:00+12:00", at.Format(time.RFC3339))
}

func TestFaultsNameTheLineAndTheMend(t *testing.T) {
	for text, want := range map[string]string{
		"hello":                        "line 1: a message begins with a moment",
		"2026-13-01 10:00 Jo: x":       "is not a moment",
		"2026-11-01 10:00 Jo [fly]: x": "[fly] is not a mark",
		"2026-11-02 10:00 Jo: x\n2026-11-01 10:00 Jo: y": "line 2: time goes back",
		"  more":                          "none stands above",
		"2026-11-02 10:00 Jo [edit 4]: x": "message 4 does not stand above",
	} {
		_, err := Read(text)
		require.ErrorContains(t, err, want, text)
	}
}
