package pace_test

import (
	"fmt"
	"math"
	"strings"
	"time"

	"leafround/core/entry"
	"leafround/core/pace"
)

// The ways to forecast that a trial compares.
const (
	bot     = iota // the estimator
	withSky        // the estimator, with the weather told
	onPaper        // pen and paper
	handed         // the filter that is handed the truth's own figures
	ways
)

// tally scores one way's forecasts.
type tally struct {
	n, in, early, late int
	right              int     // true stages within the 95 % interval of the stage
	squares            float64 // days²
}

// cell is one line of a table.
type cell struct {
	side, manner string
	paddocks     int
	by           [ways]tally
}

func (c *cell) way(i int) *tally { return &c.by[i] }

func (c *cell) add(o cell) {
	for i := range c.by {
		a, b := &c.by[i], o.by[i]
		a.n, a.in, a.early, a.late = a.n+b.n, a.in+b.in, a.early+b.early, a.late+b.late
		a.right += b.right
		a.squares += b.squares
	}
}

func (c cell) name() string { return fmt.Sprintf("%s %s %d", c.side, c.manner, c.paddocks) }

func (c cell) ratio(a, b int) float64 { return c.by[a].rmse() / c.by[b].rmse() }

func (t *tally) rmse() float64 { return math.Sqrt(t.squares / float64(t.n)) }

// inside gives how many truths in a hundred lay within the 80 % interval.
func (t *tally) inside() float64 { return 100 * float64(t.in) / float64(t.n) }

// miss scores a forecast moment, to the nearest day as people are told it.
func (t *tally) miss(moment float64, h happened) {
	d := math.Round(moment) - math.Round(h.due)
	t.n++
	t.squares += d * d
}

// take scores an estimate's forecast of 2.5 leaves, and its interval. An
// estimate that has none counts as a year late.
func (t *tally) take(e *pace.Estimate, from entry.Date, h happened) {
	if st, _ := e.Stage(fmt.Sprint(h.paddock)); st.Low <= h.stage && h.stage <= st.High {
		t.right++
	}
	f, ok := e.Reach(fmt.Sprint(h.paddock), 2.5)
	if !ok {
		f.On = from.Add(h.day + 365)
	}
	t.miss(float64(f.On.Sub(from)), h)
	switch due := from.Add(int(math.Round(h.due))); {
	case due < f.Low:
		t.early++
	case due > f.High:
		t.late++
	default:
		t.in++
	}
}

// tables words the result.
func tables(invented, real, strangers []cell, seeds uint64, days int) string {
	var b strings.Builder
	n := sum("", invented).by[bot].n + sum("", real).by[bot].n
	fmt.Fprintf(&b, "# Season trial\n\nThe date of 2.5 leaves, forecast at each count before it, on invented farms; %d farms a cell, %d forecasts in all.\n", seeds, n)
	fmt.Fprintf(&b, "Errors are root-mean-square, in days, over whole days. Made on %s by\n\n", time.Now().Format(time.DateOnly))
	b.WriteString("    go test ./core/pace -run TestSeasonTrial -season.long -season.out ../../testdata/season-trial.md -timeout 60m\n\n")
	b.WriteString("Goals: at most half of pen and paper's error in all and less in every cell; at most 1.15 of the error of a filter\n" +
		"that is handed the farm's own figures; 75–85 of a hundred truths inside the 80 % interval in each hemisphere and\n" +
		"manner of counting; with weather told, never worse than without. Of pen and paper's error we reach " +
		fmt.Sprintf("%.3f in all,\nof the handed filter's %.3f.\n\n", sum("", invented).ratio(bot, onPaper), sum("", invented).ratio(bot, handed)))
	fmt.Fprintf(&b, "## First world: months' table and wandering weather, %d days from the first day of the log\n\n", days)
	lines(&b, withSums(invented))
	skyLines(&b, withSums(real))
	b.WriteString("\n## Farms of the first world that the rule of thumb gets wrong, at 38° S\n\n")
	lines(&b, strangers)
	return b.String()
}

// years words what a farm's growing log is worth.
func years(cells []cell) string {
	var b strings.Builder
	b.WriteString("\n## First world, year by year of the log\n\n" +
		"What is left above the handed filter is mostly the farm's own season, most of all in the first year.\n\n")
	lines(&b, append(cells, sum("year", cells)))
	return b.String()
}

// skyLines words cells of the second world.
func skyLines(b *strings.Builder, cells []cell) {
	b.WriteString("\n## Second world: four real years of weather at Seattle, a response of another form\n\n" +
		"South is the same days moved by half a year, with other farms.\n\n" +
		"| farms | forecasts | no weather | weather told | paper | told ÷ not | told ÷ paper | not ÷ paper | inside, not, % | inside, told, % |\n|---|--:|--:|--:|--:|--:|--:|--:|--:|--:|\n")
	for _, c := range cells {
		fmt.Fprintf(b, "| %s | %d | %.2f | %.2f | %.2f | %.3f | %.3f | %.3f | %.1f | %.1f |\n", label(c), c.by[bot].n,
			c.way(bot).rmse(), c.way(withSky).rmse(), c.way(onPaper).rmse(), c.ratio(withSky, bot), c.ratio(withSky, onPaper),
			c.ratio(bot, onPaper), c.way(bot).inside(), c.way(withSky).inside())
	}
}

// lines words cells of the first world.
func lines(b *strings.Builder, cells []cell) {
	b.WriteString("| farms | forecasts | bot | paper | handed | bot ÷ paper | bot ÷ handed | inside, % | earlier, % | later, % | stage inside 95, % |\n|---|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|\n")
	for _, c := range cells {
		t := c.by[bot]
		fmt.Fprintf(b, "| %s | %d | %.2f | %.2f | %.2f | %.3f | %.3f | %.1f | %.1f | %.1f | %.1f |\n", label(c), t.n, t.rmse(),
			c.way(onPaper).rmse(), c.way(handed).rmse(), c.ratio(bot, onPaper), c.ratio(bot, handed), t.inside(),
			100*float64(t.early)/float64(t.n), 100*float64(t.late)/float64(t.n),
			100*float64(t.right)/float64(t.n))
	}
}

// withSums gives the cells, then the sums that the goals speak of.
func withSums(cells []cell) []cell {
	out := append([]cell(nil), cells...)
	for _, part := range []string{"south sparse", "south dense", "north sparse", "north dense", ""} {
		out = append(out, sum(part, cells))
	}
	return out
}

func label(c cell) string {
	switch {
	case c.paddocks > 0:
		return c.name()
	case c.side == "":
		return "**all**"
	}
	return "**" + c.side + "**"
}
