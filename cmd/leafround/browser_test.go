package main

import (
	"context"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The practice page with the real bot behind it, at a desk and on a phone: a
// farm of one's own from its set-up to the next morning's summary.
func TestBrowser(t *testing.T) {
	if testing.Short() {
		t.Skip("starts a PostgreSQL and a browser")
	}
	chromium(t)
	url := runDemo(t)
	for _, c := range []struct {
		name, farm    string
		width, height int64
		phone         bool
		who           int // who asks alone, as the page lists them
	}{
		{"desk", "Puriri Flat", 1280, 900, false, 3},
		{"phone", "Kowhai Bank", 390, 844, true, 2},
	} {
		t.Run(c.name, func(t *testing.T) {
			w := &walk{openWindow(t, c.width, c.height, c.phone), c.phone}
			w.open(url)
			w.look("Totara Bend")
			w.setUp(c.farm)
			w.count()
			w.asked()
			w.undo()
			w.ask()
			w.sleepOver(c.farm)
			w.amend()
			w.alone(c.who, c.farm)
		})
	}
}

// runDemo runs the demo until the test ends, and gives its address.
func runDemo(t *testing.T) string {
	t.Helper()
	ctx, stop := context.WithCancel(context.Background())
	out, errs := listenFor("practice chat is at"), listenFor("\x00")
	code := make(chan int, 1)
	dir := t.TempDir()
	go func() {
		code <- run(ctx, []string{"demo", "--data-dir", dir, "--listen", "127.0.0.1:0"}, streams{strings.NewReader(""), out, errs})
	}()
	t.Cleanup(func() {
		stop()
		assert.Equal(t, exitOK, <-code, errs.String())
	})
	select {
	case <-out.seen:
	case <-time.After(2 * time.Minute):
		require.Fail(t, "the demo does not start", errs.String())
	}
	url := regexp.MustCompile(`http://[0-9.]+:\d+/`).FindString(out.String())
	require.NotEmpty(t, url, out.String())
	return url
}

// walk is a person at the page.
type walk struct {
	*window
	phone bool
}

// say types a text, sends it, and waits for a new slip that holds words.
func (w *walk) say(text string, words ...string) {
	w.t.Helper()
	had := w.slips()
	w.fill("#text", text)
	w.click(".send")
	w.newSlip(had, words...)
}

// slips is how many slips the bot has pasted in so far.
func (w *walk) slips() int {
	w.t.Helper()
	n, err := strconv.Atoi(w.js(`String(document.querySelectorAll(".slip").length)`))
	require.NoError(w.t, err)
	return n
}

// newSlip waits for one slip more than there were, with words on the last.
func (w *walk) newSlip(had int, words ...string) {
	w.t.Helper()
	w.until(fmt.Sprintf(`document.querySelectorAll(".slip").length > %d`, had))
	for _, s := range words {
		w.until(`[...document.querySelectorAll(".slip")].at(-1).textContent.includes(` + strconv.Quote(s) + `)`)
	}
}

// tap presses the last button of that label with the mouse or a finger.
func (w *walk) tap(label string) {
	w.t.Helper()
	find := `[...document.querySelectorAll(".tap")].filter((b) => b.textContent === ` + strconv.Quote(label) + `).at(-1)`
	w.until(find)
	w.js(`document.querySelectorAll("[data-now]").forEach((b) => delete b.dataset.now), ` + find + `.dataset.now = "1"`)
	w.click("[data-now]")
}

// drawers opens the drawers where they are folded away.
func (w *walk) drawers() {
	w.t.Helper()
	if w.phone {
		w.click(".drawers > summary")
		w.until(`document.querySelector(".drawers").open`)
	}
}

// look is the first glance: the invented farm, its season told and answered,
// nothing wider than the screen.
func (w *walk) look(farm string) {
	w.t.Helper()
	w.until(`document.querySelector("h1").textContent === ` + strconv.Quote(farm))
	w.until(`document.querySelectorAll(".slip").length >= 10`)
	w.until(`document.documentElement.scrollWidth <= innerWidth`)
	w.artefact("first-glance")
}

// setUp loads a farm of one's own through the page.
func (w *walk) setUp(farm string) {
	w.t.Helper()
	w.drawers()
	w.fill(`#own [name=farm]`, farm)
	w.fill(`#own [name=zone]`, "Pacific/Auckland")
	w.fill(`#own [name=paddocks]`, "1 3.2\n2 2.8\n7 2.9\n12 3\nTop Flat 10 acres")
	w.artefact("own-paddocks")
	w.click(`#own button`)
	w.until(`document.querySelector("h1").textContent === ` + strconv.Quote(farm))
	w.ready()
	w.newSlip(1, "5 paddocks", "15.9 ha") // 3.2 + 2.8 + 2.9 + 3 + 10 × 0.40469
	w.say("mob milkers 210 cows", "210")
	w.say("summary 6:15", "06:15")
	for _, s := range []string{"12 last grazed 18 days ago", "7 last grazed 20 days ago", "1 last grazed 3 days ago", "2 last grazed 33 days ago"} {
		w.say(s, "last grazed")
	}
	w.artefact("set-up")
}

// count sends a count; the mean of 2, 2.5 and 2 is 2.2 to one place.
func (w *walk) count() {
	w.t.Helper()
	w.say("p12 2 2.5 2", "12", "2.2 leaves", "3 tillers")
	w.until(`[...document.querySelectorAll(".slip")].at(-1).querySelectorAll(".tap").length === 2`)
	w.artefact("count")
}

// asked sends what is no full sentence, is asked, and answers by button.
func (w *walk) asked() {
	w.t.Helper()
	w.say("1", "Paddock 1")
	w.artefact("asked")
	had := w.slips()
	w.tap("Paddock 1")
	w.until(`![...document.querySelectorAll(".tap")].some((b) => b.textContent === "Paddock 1")`)
	w.newSlip(had, "Paddock 1 is not ready yet")
	w.artefact("answered")
}

// undo takes a count back by its button, which then is gone.
func (w *walk) undo() {
	w.t.Helper()
	w.say("p7 1 1 1.5 1", "4 tillers")
	slips, taps := w.slips(), w.js(`String(document.querySelectorAll(".tap").length)`)
	w.tap("Undo")
	w.newSlip(slips, "Taken back: paddock 7 counted")
	w.until(`document.querySelectorAll(".tap").length < ` + taps)
	w.artefact("undone")
}

// ask asks what people ask most, and sees a picture load.
func (w *walk) ask() {
	w.t.Helper()
	w.say("milkers into 7", "7")
	w.say("next", "12")
	w.artefact("next")
	w.say("plan 10 days", "next 10 days", "milkers")
	w.artefact("plan")
	w.tap("Picture")
	w.picture()
	w.artefact("plan-picture")
}

// picture waits until the last slip's picture has loaded and is scrolled to.
func (w *walk) picture() {
	w.t.Helper()
	w.until(`[...document.querySelectorAll(".plate img")].at(-1)?.naturalWidth > 0`)
	w.until(`[...document.querySelectorAll(".plate img")].at(-1).getBoundingClientRect().width <= innerWidth`)
	w.until(`sheet.scrollHeight - sheet.scrollTop - sheet.clientHeight < 2`)
}

// sleepOver moves the clock a day on: the summary of the morning comes.
func (w *walk) sleepOver(farm string) {
	w.t.Helper()
	had, face := w.slips(), w.js(`document.getElementById("clock").textContent`)
	w.drawers()
	w.click(`[data-hours="24"]`)
	w.until(`document.getElementById("clock").textContent !== ` + strconv.Quote(face))
	w.until(`document.getElementById("moving").textContent.includes("was moved on")`)
	w.until(fmt.Sprintf(`document.querySelector(".drawers").open === %t`, !w.phone)) // they would hide what came
	w.newSlip(had)
	w.until(`[...document.querySelectorAll(".slip")].at(-1).querySelector("img")?.naturalWidth > 0`)
	w.until(`[...document.querySelectorAll(".slip")].at(-2).textContent.includes("06:15")`)
	words := w.js(`[...document.querySelectorAll(".slip")].at(-2).querySelector(".text").innerText`)
	assert.True(w.t, strings.HasPrefix(words, farm+", "), words)
	assert.LessOrEqual(w.t, strings.Count(words, "\n")+1, 12, words)
	w.picture()
	w.artefact("summary")
}

// amend mends a line, and the reply to it changes in its place.
func (w *walk) amend() {
	w.t.Helper()
	w.say("p12 2 2 2", "3 tillers")
	had := w.slips()
	w.js(`[...document.querySelectorAll("[data-amend]")].at(-1).dataset.now = "2", ""`)
	w.click(`[data-now="2"]`)
	w.fill("#text", "p12 2.5 2.5 3 2.5")
	w.click(".send")
	w.until(`[...document.querySelectorAll(".slip")].at(-1).textContent.includes("4 tillers")`)
	require.Equal(w.t, had, w.slips(), "the reply is edited, not repeated")
	w.until(`[...document.querySelectorAll(".hand")].at(-1).textContent.includes("amended")`)
	w.artefact("amended")
}

// alone asks on the private page: who is on two farms is asked which one.
func (w *walk) alone(who int, farm string) {
	w.t.Helper()
	w.click(fmt.Sprintf(`.who li:nth-child(%d) a`, who))
	w.until(fmt.Sprintf(`document.querySelector(".who li:nth-child(%d) a").ariaCurrent === "true"`, who))
	w.ready()
	w.say("how is 12?", "Paddock 12 is ready") // by which the bot comes to know who works here
	w.click(`.where li:last-child a`)
	w.until(`document.body.dataset.where === "private"`)
	w.ready()
	w.say("how is 12?", "which one")
	w.artefact("alone-asked")
	had := w.slips()
	w.tap(farm)
	w.newSlip(had)
	if w.js(`[...document.querySelectorAll(".slip")].at(-1).textContent.includes("Ask again") ? "yes" : ""`) != "" {
		w.say("how is 12?")
	}
	w.until(`[...document.querySelectorAll(".slip")].at(-1).textContent.includes("Paddock 12 is ready")`)
	w.artefact("alone")
}
