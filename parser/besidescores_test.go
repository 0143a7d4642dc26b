package parser

import (
	"reflect"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
)

// besideScores are what people add behind scores, with numbers of other things in it
// (ours, common practice, no source).
var besideScores = strings.Split(`2 rails broken;3 posts down;4 gates shut;1 trough leaking;2 bars on the phone;3 wires off;2 dogs with me;1 boot full of water;2 thistles;3 rabbits in there;2 ducks on the pond;1 wet sock;3 hares;2 calls missed;1 more coffee then home;3 cups of tea needed;2 pies down;4 minutes each;1 min late;2 jackets on;3 layers on;2 deg out here;1 bar signal;2 bottles left in the ute;4 rolls of tape;2 reels of wire;1 reel short;3 standards missing;2 pigtails bent;1 of them is patchy;2 of us counted;3 of us on it;1 hand frozen;2 hands full;one arm in a sling;both boots wet;two beers owed;three thistle patches;one gate off its hinges;two trees down;one tree over the fence;4 goes at it;2nd go;3rd try;1st count was off;second time round;first time this year;3 times I checked;twice checked;3 days till rain;1 week to go;3 hours to go;2 hrs sleep;1 hr to do that;2 laps;2 tries;4 spots done;5 spots;6 pulls;3 pulls per spot;10 steps apart;20 paces in;4 corners done;back at 4;home by 3;lunch at 1;see you at 2;in 2 minutes;in 5 mins;done by 3;at it since 4;out for 2 hours;call me on 2;on channel 3;gate 3 is open;trough 2 dry;line 3 is off;fence 4 is dead;tank 2 half full;pump 1 on;page 2 of the book;row 3;bay 2;number 2 bull looks grand;race 1 muddy;take 2;version 2;half asleep;half soaked;half the fence is down;quarter past 3;half 4 now;ten to three;five past two;about 3pm;4am;2 lads off sick;3 staff on;team of 3;two left feet;one sore back;half day tomorrow;a third of them brown;third time lucky;two-thirds of the herd lying;2/3 of the herd lying down;3 quid a bag;$4 a bale;€3 a bale;2 euro says so;minus 2 last night;1 degree;0 rain;2 ml;quad 2 out of fuel;on bike 1;1st of 4;day 2 of 3;day 3;week 4;month 2;part 1;3 stars;4 out of 5;2-1 to us;3-2 final score;won 2 nil;up 3 goals;1 up;good 2 go;need 2 talk;b4 lunch;1 sec;2 ticks;one down five to go;1 down, 5 to go;two to go;2 more to do;3 left to do;1 of 6 done;4/6 done;three done, four to go;two more paddocks`, ";")

// A number of something else behind scores is never a score, nor a second count: at
// most it is asked about.
func TestBesideScores(t *testing.T) {
	totara := phrase{Farm: "totara", Zone: "Pacific/Auckland", At: time.Date(2026, 11, 24, 19, 0, 0, 0, time.UTC)}.context(t)
	asked, tried := 0, 0
	var wrong []string
	for _, first := range []string{"12 2 2.5 2", "p21 1.5 2 2.5 2", "hill 3 2.5 3 2.5 2"} {
		want := Read(first, totara).Entries
		for _, tail := range besideScores {
			for _, by := range []string{", ", ". ", "\n"} {
				text := first + by + tail
				got := Read(text, totara)
				tried++
				if got.Ask != nil {
					asked++
					continue
				}
				var counts []entry.Entry
				for _, e := range got.Entries {
					if e.Kind() == entry.KindCount {
						counts = append(counts, e)
					}
				}
				if !reflect.DeepEqual(want, counts) {
					wrong = append(wrong, text)
				}
			}
		}
	}
	t.Logf("%d messages, %d asked about", tried, asked)
	require.Empty(t, wrong)
	require.Less(t, asked*2, tried)
}
