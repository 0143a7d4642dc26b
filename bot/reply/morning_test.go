package reply

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"leafround/core/answer"
)

// The gap is asked about once, and what was said yesterday is not said again in
// the same words.
func TestAdviceOfAMorning(t *testing.T) {
	slow := answer.Advice{Kind: "slow_down", Running: 13, Needed: 19, Stage: 1.6, Held: 2.5, On: nov(25)}
	short := answer.Advice{Kind: "shortage", Ha: 15.4, On: nov(27)}
	text := string(Voice{}.advices([]answer.Advice{slow, short}, nov(25)))
	require.Equal(t, "Slow down: at 13 days a round the mobs come to paddocks at about 1.6 leaves already; 19 days would hold 2.5 leaves."+
		" What feed fills the gap?\nThe mobs ask for more than the round grows: about 15.4 ha will be reached before it is ready.", text)
	slow.Again = true
	text = string(Voice{}.advices([]answer.Advice{slow, short}, nov(25)))
	require.True(t, strings.HasPrefix(text, "Still too fast: 13 days a round, where the grass needs 19 days.\n"), text)
	require.Equal(t, 1, strings.Count(text, gap))
}
