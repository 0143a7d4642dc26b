package answer

import (
	"testing"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
)

// "Into 3" this morning, then "3 to 4 yesterday": the later day stands, and
// that is said.
func TestAMoveToldLateIsHeldAgainstWhatWasToldBefore(t *testing.T) {
	l := totara()
	l.say(nov(7), "Jo", goes("3", nov(7)))
	a := l.logs(t, nov(7), goes("4", nov(6)))
	require.True(t, a.has(MovedSince))
	for _, r := range a.Remarks {
		if r.Kind == MovedSince {
			require.Equal(t, "3", r.Paddock)
			require.Equal(t, nov(7), r.Date)
		}
	}
	l = totara()
	late := l.say(nov(7), "Jo", goes("4", nov(6)))
	l.say(nov(7), "Jo", goes("3", nov(7)))
	require.False(t, Entry(l.farm(), late, noon(nov(7))).(Logged).has(MovedSince), "told in one message, in their order")
	require.Equal(t, entry.KindGraze, late.Entry.Kind())
}
