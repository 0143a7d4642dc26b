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

// Message is one text of the season, or a file.
type Message struct {
	At      time.Time
	Who     string
	Text    string
	File    string // name; "" for none
	Content string
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

// grounds lists the paddocks of Totara Bend: the milkers' flats, and the hill
// country where the heifers go.
func grounds() []*ground {
	var g []*ground
	for i := 1; i <= 18; i++ {
		g = append(g, &ground{name: fmt.Sprint(i), ha: 2.2 + float64((i*7)%11)/10})
	}
	for _, p := range []ground{{name: "River 1", ha: 3.1}, {name: "River 2", ha: 2.9}, {name: "Top Flat", ha: 4.0}, {name: "House", ha: 0.9}} {
		g = append(g, &p)
	}
	for i, name := range young {
		g = append(g, &ground{name: name, ha: 2.0 + float64((i*5)%7)/5, young: true})
	}
	for i, p := range g {
		p.vigour = 0.88 + float64((i*5)%9)*0.03
	}
	return g
}

// young is the hill country.
var young = []string{"Dam", "Hill", "Back Hill", "Gully", "Terrace", "Ridge", "Bush Edge", "Saddle"}

// opening is what Ana types on the first evening, before and after she sends
// the register.
func opening() (before, after []string) {
	return []string{"set up Totara Bend, " + Zone, "mob milkers 210 cows", "mob heifers 60"},
		[]string{"aim 2.5 leaves", "we are at -37.81 175.28",
			"heifers only on " + strings.Join(young[:len(young)-1], ", ") + " and " + young[len(young)-1]}
}

// register is the file of the farm's paddocks: the hill country is for the
// heifers alone.
func register(g []*ground) string {
	var b strings.Builder
	b.WriteString("name,area_ha,mob\n")
	for _, p := range g {
		mob := ""
		if p.young {
			mob = "heifers"
		}
		fmt.Fprintf(&b, "%s,%.1f,%s\n", p.name, p.ha, mob)
	}
	return b.String()
}

// mark gives a paddock's name as one types it: p before a number.
func mark(name string) string {
	if name[0] >= '0' && name[0] <= '9' {
		return "p" + name
	}
	return strings.ToLower(name)
}

func bare(name string) string { return strings.ToLower(name) }
