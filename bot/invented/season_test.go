package invented

import (
	"testing"
	"time"
	_ "time/tzdata"

	"github.com/stretchr/testify/require"
)

func TestSeasonIsTheSameTwiceAndEndsByNow(t *testing.T) {
	for _, now := range []string{"2026-11-25T08:00:00+13:00", "2026-06-30T05:00:00+12:00", "2027-01-01T00:30:00+13:00"} {
		at, err := time.Parse(time.RFC3339, now)
		require.NoError(t, err)
		one, two := Season(at), Season(at)
		require.Equal(t, one, two)
		require.Greater(t, len(one), 200)
		require.Less(t, len(one), 420)
		last := one[0].At
		for _, m := range one {
			require.False(t, m.At.Before(last), "texts come in order")
			require.False(t, m.At.After(at), "no text comes from the future")
			last = m.At
		}
	}
}
