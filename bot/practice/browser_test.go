package practice_test

import (
	"strconv"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"leafround/bot/practice"
)

func quote(s string) string { return strconv.Quote(s) }

func quoteSeq(n int64) string { return strconv.FormatInt(n, 10) }

// write has the bot answer a few lines, so that a page has something to show.
func (tb *table) write(t *testing.T) {
	t.Helper()
	ana, wiremu, jo := tb.cast[0], tb.cast[1], tb.cast[2]
	id, _ := tb.Say(tb.farm, ana, "p12 2 2.5 2 3 2.5 2")
	tb.wait(t, practice.ReplyFrom(tb.farm, id))
	id, _ = tb.Say(tb.farm, wiremu, "16 mm of rain overnight")
	tb.wait(t, practice.ReactionTo(tb.farm, id))
	id, _ = tb.Say(tb.farm, jo, "plan 7 days")
	tb.wait(t, practice.ReplyFrom(tb.farm, id))
	tb.MoveClock(24 * time.Hour)
	id, _ = tb.Say(tb.farm, ana, "p14 2 2 1.5 repro 2", practice.ReplyTo(2))
	tb.wait(t, practice.ReplyFrom(tb.farm, id))
	seq := tb.Seq()
	tb.Edit(tb.farm, id, "p14 2 2 1.5 2")
	_, err := tb.Await(t.Context(), seq, practice.ReplyFrom(tb.farm, id))
	require.NoError(t, err)
	seq = tb.Seq()
	tb.Say(tb.farm, ana, "export")
	_, err = tb.Await(t.Context(), seq, practice.SpokenIn(tb.farm))
	require.NoError(t, err)
}

func TestPageAtTheDesk(t *testing.T) {
	w, tb := browser(t, 1280, 900, false), setTable(t)
	tb.write(t)
	w.open(tb.url)
	w.until(`document.querySelector(".plate img").naturalWidth === 800`)
	w.says("p12 2 2.5 2 3 2.5 2", "12 stands at 2.3 leaves", "amended", "noted by the bot", "log.csv",
		"Wednesday 25 November 2026", "Thursday 26 November 2026")
	w.artefact("desk-1280")
}

func TestKeyboardAlone(t *testing.T) {
	w, tb := browser(t, 1280, 900, false), setTable(t)
	w.open(tb.url)
	w.until(`document.activeElement.id === "text"`)
	w.keys("p12 2 2.5 2" + kb.Enter)
	w.until(`document.querySelectorAll(".tap").length === 2`)
	on := ""
	for i := 0; i < 12 && on != "Undo"; i++ {
		w.keys(kb.Tab, chromedp.KeyModifiers(chromedp.ModifierShift))
		on = w.js(`document.activeElement.textContent`)
	}
	require.Equal(t, "Undo", on, "the button is within reach of the Tab key")
	w.keys(kb.Enter)
	w.until(`document.querySelectorAll(".tap").length === 0`)
	w.says("Taken back.")
	w.until(`document.getElementById("toast").textContent === "Taken back."`)
	w.until(`document.activeElement.id === "text"`)
	w.artefact("keyboard-1280")
}

func TestAmendAnswerAndSwitch(t *testing.T) {
	w, tb := browser(t, 1280, 900, false), setTable(t)
	id, _ := tb.Say(tb.farm, tb.cast[0], "p12 2 2.5 2")
	tb.wait(t, practice.ReplyFrom(tb.farm, id))
	w.open(tb.url)
	w.click("#m1 [data-amend]")
	w.fill("#text", "p12 2 2.5 3")
	w.click(".send")
	w.says("Read again: p12 2 2.5 3", "amended")
	w.click("#m2 [data-answer]")
	w.keys("why?")
	w.artefact("answer-1280")
	w.click(".send")
	w.until(`document.querySelectorAll(".about .to").length >= 3`)
	assert.Equal(t, 2, tb.Messages(tb.farm)[3].ReplyTo)
	w.click(`.who li:nth-child(3) a`)
	w.until(`document.querySelector(".writes").textContent.startsWith("Jo")`)
	w.click(`.where li:last-child a`)
	w.until(`document.body.dataset.where === "private"`)
	w.click("#text")
	w.keys("hello" + kb.Enter)
	w.until(`document.querySelectorAll(".slip").length === 1`)
	assert.Equal(t, "hello", tb.Messages(tb.cast[2].ID)[0].Text)
}

func TestClockAndOwnPaddocks(t *testing.T) {
	w, tb := browser(t, 1280, 900, false), setTable(t)
	w.open(tb.url)
	w.click(`[data-hours="24"]`)
	w.until(`document.getElementById("clock").textContent.startsWith("Thu 26 Nov 2026")`)
	w.fill(`#own [name=farm]`, "Puriri Flat")
	w.fill(`#own [name=zone]`, "Pacific/Auckland")
	w.fill(`#own [name=paddocks]`, "1 3.2\n2 2.8\nTop Flat 10 acres")
	w.click(`#own button`)
	w.until(`document.querySelector("h1").textContent === "Puriri Flat" && document.querySelectorAll(".slip").length >= 2`)
	w.says("set up Puriri Flat, Pacific/Auckland", "Top Flat 10 acres")
	w.artefact("own-paddocks-1280")
}

func TestPageOnAPhone(t *testing.T) {
	w, tb := browser(t, 390, 844, true), setTable(t)
	tb.write(t)
	w.open(tb.url)
	w.until(`document.querySelector(".plate img").naturalWidth === 800`)
	w.until(`document.documentElement.scrollWidth <= 390 && document.getElementById("sheet").scrollWidth <= 390`)
	w.artefact("phone-390")
	w.js(`document.getElementById("sheet").scrollTop = 0, ""`)
	w.artefact("phone-top-390")
	w.click(".drawers > summary")
	w.artefact("phone-drawers-390")
	w.click(`[data-try="what's next?"]`)
	assert.Equal(t, "what's next?", w.js(`document.getElementById("text").value`))
	w.click(".send")
	w.says("what's next?")
	w.click(".more > summary")
	w.artefact("phone-pin-390")
	w.click("#send-pin")
	w.says("That is in paddock 7")
	w.until(`!document.getElementById("log").textContent.includes("undefined")`)
}
