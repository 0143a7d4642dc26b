package parser

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
)

// What ails animals and what befalls people is told in many orders of words: each of
// the signs below with each animal or person in each frame is an alarm of its kind.
// The lists are ours (common practice, no source); not one of them was taken from the
// tables that read them.
var (
	sickAnimals = strings.Split(`cow;a heifer;ewe;one of the cows;a steer;2 heifers;couple of calves;three ewes;cow 412;the bull;some lambs`, ";")
	sickSigns   = strings.Split(`down;wobbly;staggering;bloated;blown up;lame;coughing;shaking;crook;sick;cast;collapsed;frothing at the mouth;scouring;bleeding;dead;prolapsed;swollen up;not getting up;off its feed;gasping;breathing hard;having a fit;not right;not well;on its side;drooling;hunched up;twitching;unsteady;panting;not eating`, ";")
	sickFrames  = strings.Split(`$a $s in $p;$p: $a $s;$a in $p $s;$a is $s in $p;found $a $s in $p;$p has $a $s;theres $a $s in $p;got $a $s in $p;just seen $a $s in $p;$a in $p is $s;$a $s at the trough in $p;$p $a $s;in $p $a $s;$a over in $p $s;walked $p and $a $s;$a $s, $p;$a $s again in $p;milkers into 9. $a $s in $p`, ";")

	hurtPeople = strings.Split(`dave;the relief milker;dad;one of the lads;young sean;mick;the contractor;my wife;ann;the driver;someone;he;she`, ";")
	hurtHow    = strings.Split(`came off the bike;fell off the quad;has rolled the tractor;is trapped under the trailer;got kicked by a cow;got crushed against the gate;is unconscious;has broken a leg;cut his hand badly;isnt breathing;collapsed;got a belt off the fence and wont wake;is hurt;is hurt bad;has chest pains;was knocked down by the bull;got trampled;passed out;hit his head;fell off the roof;is bleeding badly;went down a hole and cant move;got his arm caught in the pto;rolled the quad;tipped the ute;got sprayed in the eyes;got a needle in the hand;is having a heart attack;cant feel his legs;got run over;is pinned under the quad;is stuck under the bike;had a fall;drank some spray;has been stung and cant breathe;is having a seizure;had a stroke i think;got burnt;is in a bad way;got gored;needs an ambulance;has gone into the effluent pond`, ";")
	hurtFrames = strings.Split(`$a $s in $p;$a $s;$p: $a $s;in $p $a $s;help $a $s in $p;$a $s, $p;milkers into 9. $a $s in $p;$a $s need help`, ";")

	// unhurt speak of people, animals and mishaps, and of no harm.
	unhurt = strings.Split(`dave cut 12 for hay;got stuck behind the mower, 12 2 2.5 2;he broke the gate in 12;dad fell asleep, 12 is grazed;mick came off 12 at noon;someone cut the wire in 12;dave knocked over the fence in hill;the lads are in bad form, 12 2 2 2;quad is stuck in 12;he had a fit when he saw 12, grazed to dirt;driver took a belt of rain, 14mm;went into the river paddock with the heifers;got a shock at how good 12 is;hes dying to get into 12;im dying for a cuppa. 12 2 2.5 2;needs stitches that fence in 12;he ran over the plate meter, 12 2 2.5 2;ran over the gauge with the quad;lost my hand counter, 12 about 2.5;hit by hail, 12 flattened;fell in love with 12, 3 leaves already;the well went dry in hill;had a bad fall of rain, 20mm;contractor hit a rock in 12, 2 hours late;a tree fell on the fence in 12;bale fell on the gate;tank fell on its side;my back is killing me. 12 2 2 2.5 2;I broke down in 12, quad dead;mum is sick, back tomorrow;dave off sick. milkers to 12;careful not to get kicked in the shed;the bull nearly got me in 12;we got hammered by rain, 30 mm;dave was burnt out, day off;knocked off 12 at 4;caught in the rain, 12 to finish;he is having a shocker, wrong paddock;dad had a stroke of luck, 20mm last night;the man down the road has hay for sale;2 lads down the back of 12 fencing;milkers in 12 down at the bottom;heifers in 12 down to 1500`, ";")
)

func TestAlarmsDrawn(t *testing.T) {
	totara := phrase{Farm: "totara", Zone: "Pacific/Auckland", At: time.Date(2026, 11, 24, 19, 0, 0, 0, time.UTC)}.context(t)
	draw := func(kind entry.Alarm, who, how, frames []string) {
		tried := 0
		var lost []string
		for _, f := range frames {
			for _, a := range who {
				for _, s := range how {
					for _, pad := range []string{"12", "hill"} {
						text := strings.NewReplacer("$a", a, "$s", s, "$p", pad).Replace(f)
						tried++
						list := Read(text, totara).Entries
						if strings.HasPrefix(f, "milkers into 9. ") && len(list) < 2 {
							lost = append(lost, "the move beside: "+text)
						}
						if got := alarmKindOf(list); got != kind && !(kind == entry.AlarmStock && got != "") {
							lost = append(lost, text)
						}
					}
				}
			}
		}
		require.Greater(t, tried, 5_000)
		require.Empty(t, lost, "no alarm of kind %s, of %d", kind, tried)
	}
	draw(entry.AlarmStock, sickAnimals, sickSigns, sickFrames)
	draw(entry.AlarmPerson, hurtPeople, hurtHow, hurtFrames)
	for _, text := range unhurt {
		require.Empty(t, alarmKindOf(Read(text, totara).Entries), text)
	}
}

// alarmKindOf gives the first alarm among entries.
func alarmKindOf(list []entry.Entry) entry.Alarm {
	for _, e := range list {
		if n, ok := e.(entry.Note); ok && n.Alarm != "" {
			return n.Alarm
		}
	}
	return ""
}
