package invented

import (
	"fmt"
	"strings"
	"time"
)

// The people of the farm; the first one manages it.
const (
	Ana    = "Ana"
	Wiremu = "Wiremu"
	Jo     = "Jo"
)

// Zone is the farm's zone.
const Zone = "Pacific/Auckland"

// Message is one text of the season.
type Message struct {
	At   time.Time
	Who  string
	Text string
}

// ground is one paddock with the truth that the people can't see.
type ground struct {
	name   string
	ha     float64
	start  int     // day of the season on which its regrowth began
	stage  float64 // true leaves since
	vigour float64 // leaves a day, as a share of the farm's
	held   int     // the season's day until which it is held
	young  bool    // the heifers' country
}

// grounds lists the paddocks of Totara Bend.
func grounds() []*ground {
	var g []*ground
	for i := 1; i <= 22; i++ {
		g = append(g, &ground{name: fmt.Sprint(i), ha: 2.2 + float64((i*7)%11)/10})
	}
	for _, p := range []ground{{name: "River 1", ha: 3.1}, {name: "River 2", ha: 2.9}, {name: "Top Flat", ha: 4.0},
		{name: "House", ha: 0.9}, {name: "Dam", ha: 2.0, young: true}, {name: "Hill", ha: 3.3, young: true},
		{name: "Back Hill", ha: 3.6, young: true}, {name: "Gully", ha: 2.4, young: true}} {
		g = append(g, &p)
	}
	for i, p := range g {
		p.vigour = 0.88 + float64((i*5)%9)*0.03
	}
	return g
}

// opening is what Ana types on the first evening.
func opening(g []*ground) []string {
	var reg strings.Builder
	reg.WriteString("paddocks")
	for _, p := range g {
		fmt.Fprintf(&reg, "\n%s %.1f", p.name, p.ha)
	}
	texts := []string{"set up Totara Bend, " + Zone, reg.String(), "mob milkers 210 cows", "mob heifers 60",
		"aim 2.5 leaves", "we are at -37.81 175.28", "heifers only on Dam, Hill, Back Hill and Gully"}
	return texts
}
