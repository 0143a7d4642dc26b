package practice

import (
	"encoding/json"
	"fmt"
	"net/http"
	"strconv"
	"strings"
	"time"
)

// beat is how often the page hears what the clock shows.
const beat = 15 * time.Second

// streamEvents sends what happens in one chat as server-sent events: "line"
// (a message, new or changed), "gone", "toast" (the bot's answer to a press),
// "clock" and "busy".
func (d *desk) streamEvents(w http.ResponseWriter, r *http.Request) {
	flow := http.NewResponseController(w)
	after := lastSeen(r)
	w.Header().Set("Content-Type", "text/event-stream")
	w.Header().Set("Cache-Control", "no-store")
	tick := time.NewTicker(beat)
	defer tick.Stop()
	for {
		out, seq, changed := d.news(r, after)
		after = seq
		if _, err := w.Write([]byte(out)); err != nil {
			return
		}
		if err := flow.Flush(); err != nil {
			return
		}
		select {
		case <-changed:
		case <-tick.C:
		case <-r.Context().Done():
			return
		}
	}
}

// lastSeen tells up to which event the page has everything.
func lastSeen(r *http.Request) int64 {
	after, _ := strconv.ParseInt(r.FormValue("after"), 10, 64)
	if id, err := strconv.ParseInt(r.Header.Get("Last-Event-ID"), 10, 64); err == nil {
		after = id
	}
	return after
}

// news words the events since the page last heard, and the clock.
func (d *desk) news(r *http.Request, after int64) (string, int64, <-chan struct{}) {
	d.s.mu.Lock()
	defer d.s.mu.Unlock()
	who := pick(d.people(), r.FormValue("who"))
	chat, _, _ := d.where(r.FormValue("where"), who)
	var b strings.Builder
	events := d.s.state.events
	for i := min(max(after, 0), int64(len(events))); i < int64(len(events)); i++ {
		d.tell(&b, events[i], chat, who)
	}
	frame(&b, d.s.state.seq, "clock", d.clock(chat))
	frame(&b, d.s.state.seq, "busy", len(d.s.state.pending))
	return b.String(), d.s.state.seq, d.s.changed
}

// tell words one event, where it concerns the chat that is shown.
func (d *desk) tell(b *strings.Builder, e Event, chat int64, who Person) {
	switch {
	case e.Message != nil && e.Message.Chat == chat && e.Message.Gone:
		frame(b, e.Seq, "gone", object{"id": e.Message.ID})
	case e.Message != nil && e.Message.Chat == chat:
		// The message as it is now: an old state would only flicker.
		if m, ok := d.s.state.message(chat, e.Message.ID); ok {
			frame(b, e.Seq, "line", object{"id": m.ID, "html": d.render(m, who)})
		}
	case e.Did == DidToast && e.Press.By.ID == who.ID && e.Press.Answer != "":
		frame(b, e.Seq, "toast", e.Press.Answer)
	}
}

func (d *desk) render(m Message, who Person) string {
	var b strings.Builder
	if err := d.pages.ExecuteTemplate(&b, "lines.html", []line{d.line(m, who)}); err != nil {
		return "<p>This line can't be shown.</p>"
	}
	return b.String()
}

// frame writes one server-sent event.
func frame(b *strings.Builder, seq int64, name string, data any) {
	body, err := json.Marshal(data)
	if err != nil {
		return // strings, numbers and objects of them always encode
	}
	fmt.Fprintf(b, "id: %d\nevent: %s\ndata: %s\n\n", seq, name, body)
}
