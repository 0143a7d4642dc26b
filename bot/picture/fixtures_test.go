package picture_test

import (
	"math"

	"leafround/bot/picture"
)

// All of these are made up (ours): a farm called Totara Bend.

func seasonPace() picture.Pace {
	v := picture.Pace{Farm: "Totara Bend", Today: today}
	pace := func(i float64) float64 { return 9.5 + 9*math.Exp(-math.Pow(i+10, 2)/2600) + 0.5*math.Sin(i/9) }
	for i := -100; i <= 0; i++ {
		p := pace(float64(i) + 100)
		v.Past = append(v.Past, picture.PaceDay{Day: today.Add(i), Days: p, Low: p * 0.9, High: p * 1.12})
		if i%4 == 0 {
			v.Counts = append(v.Counts, picture.Seen{Day: today.Add(i), Days: p * (1 + 0.16*math.Sin(float64(i*i))), Paddock: "12"})
		}
	}
	for i := 0; i <= 21; i++ {
		p := pace(float64(i) + 100)
		w := 0.1 + 0.008*float64(i)
		v.Ahead = append(v.Ahead, picture.PaceDay{Day: today.Add(i), Days: p, Low: p * (1 - w), High: p * (1 + w*1.2)})
	}
	return v
}

func regrowth() picture.Regrowth {
	v := picture.Regrowth{Paddock: "River 1", Farm: "Totara Bend", Today: today, From: 2, To: 3, Target: 2.5,
		TargetOn: today.Add(4), Low: today.Add(2), High: today.Add(7)}
	start := today.Add(-43)
	for i := -43; i <= 0; i++ {
		if i == -19 {
			start = today.Add(-19)
		}
		stage := float64(today.Add(i).Sub(start)) / 9
		w := 0.06 + 0.012*float64(today.Add(i).Sub(start))
		v.Past = append(v.Past, picture.StageDay{Day: today.Add(i), Stage: stage, Low: stage - w, High: stage + w})
	}
	for i := 0; i <= 11; i++ {
		stage := 19.0/9 + float64(i)/9
		w := 0.24 + 0.02*float64(i)
		v.Ahead = append(v.Ahead, picture.StageDay{Day: today.Add(i), Stage: stage, Low: stage - w, High: stage + w})
	}
	v.Starts = []picture.Start{{Day: today.Add(-43), What: "milkers out"}, {Day: today.Add(-19), What: "milkers out"}}
	v.Counts = []picture.CountMark{{Day: today.Add(-28), Stage: 1.6, Low: 1.2, High: 2, N: 6, Member: "Jo"},
		{Day: today.Add(-11), Stage: 0.9, Low: 0.5, High: 1.3, N: 8, Member: "Ana"}, {Day: today.Add(-2), Stage: 1.95, Low: 1.6, High: 2.3, N: 8, Member: "Wiremu"}}
	return v
}

func plan() picture.Plan {
	v := picture.Plan{Farm: "Totara Bend", Today: today, Days: 7}
	add := func(mob, paddock string, from, days int, stage float64) {
		v.Stays = append(v.Stays, picture.Stay{Mob: mob, Paddock: paddock, From: today.Add(from), To: today.Add(from + days), Stage: stage, Early: stage < 2, Now: from < 0})
	}
	add("milkers", "River 2", -1, 2, 2.8)
	for i, p := range []string{"14", "6", "Top Flat", "13", "20", "5"} {
		add("milkers", p, i+1, 1, 2.7-0.15*float64(i))
	}
	add("heifers", "Hill", -2, 4, 2.4)
	add("heifers", "Back Hill", 2, 3, 2.2)
	add("heifers", "Gully", 5, 3, 1.7)
	return v
}

// farmMap lays out plots as strips along a bent river, near 37.81° S, 175.28° E.
func farmMap() picture.Map {
	v := picture.Map{Farm: "Totara Bend", Today: today}
	all := rows()
	at := func(x, y float64) picture.LonLat { // metres east and south of a corner
		return picture.LonLat{175.28 + x/87800, -37.80 - y/111195}
	}
	for i, r := range all {
		c, row := i%5, i/5
		x, y := float64(c)*190+20*float64(row%2), float64(row)*160
		w, h := 180.0, 150.0
		if r.Paddock == "House" {
			w, h = 60, 40
		}
		bend := 25 * math.Sin(float64(row))
		p := picture.Plot{Paddock: r.Paddock, Stage: r.Stage, Held: r.Held,
			Ground: []picture.Outline{{Outer: []picture.LonLat{at(x+bend, y), at(x+w+bend, y+12), at(x+w, y+h), at(x, y+h-8)}}}}
		v.Plots = append(v.Plots, p)
	}
	return v
}
