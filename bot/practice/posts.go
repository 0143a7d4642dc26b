package practice

import (
	"errors"
	"fmt"
	"io"
	"net/http"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"
)

// posts registers what the page may ask for.
func (d *desk) posts(mux *http.ServeMux) {
	for path, do := range map[string]func(*http.Request, Person, int64) error{
		"/say": d.postSay, "/amend": d.postAmend, "/press": d.postPress,
		"/pin": d.postPin, "/upload": d.postFile, "/clock": d.postClock,
	} {
		mux.HandleFunc("POST "+path, func(w http.ResponseWriter, r *http.Request) { d.post(w, r, do) })
	}
	mux.HandleFunc("POST /paddocks", d.postPaddocks)
}

// refusal is what the person at the page did wrong, in words to them.
type refusal string

func (r refusal) Error() string { return string(r) }

// maxPost is the largest post taken; a register of boundaries may be long.
const maxPost = 20 << 20

// post reads who writes where, does it, and answers with nothing or a sentence.
func (d *desk) post(w http.ResponseWriter, r *http.Request, do func(*http.Request, Person, int64) error) {
	r.Body = http.MaxBytesReader(w, r.Body, maxPost)
	who, chat, err := d.writer(r)
	if err == nil {
		err = do(r, who, chat)
	}
	tellPost(w, err)
}

// tellPost answers a post: the person's mistake as a sentence with status 400.
func tellPost(w http.ResponseWriter, err error) {
	var mine refusal
	switch {
	case err == nil:
		w.WriteHeader(http.StatusNoContent)
	case errors.As(err, &mine):
		http.Error(w, mine.Error(), http.StatusBadRequest)
	default:
		http.Error(w, err.Error(), http.StatusInternalServerError)
	}
}

// writer reads the form's person and chat.
func (d *desk) writer(r *http.Request) (Person, int64, error) {
	if err := r.ParseMultipartForm(maxPost); err != nil && !errors.Is(err, http.ErrNotMultipart) {
		return Person{}, 0, refusal("That could not be read: it may be too large.")
	}
	d.s.mu.Lock()
	defer d.s.mu.Unlock()
	who := pick(d.people(), r.FormValue("who"))
	chat, _, _ := d.where(r.FormValue("where"), who)
	return who, chat, nil
}

func (d *desk) postSay(r *http.Request, who Person, chat int64) error {
	text, err := said(r)
	if err != nil {
		return err
	}
	reply, _ := strconv.Atoi(r.FormValue("reply"))
	d.s.Say(chat, who, text, ReplyTo(reply))
	return nil
}

// said reads a text as a person's chat program would let it through: not
// empty, at most 4,096 units.
func said(r *http.Request) (string, error) {
	text := strings.TrimSpace(strings.ReplaceAll(r.FormValue("text"), "\r\n", "\n"))
	switch {
	case text == "":
		return "", refusal("Write something first.")
	case !utf8.ValidString(text):
		return "", refusal("That text could not be read.")
	case units(text) > maxText:
		return "", refusal(fmt.Sprintf("That is too long: at most %d characters go into one message.", maxText))
	}
	return text, nil
}

func (d *desk) postAmend(r *http.Request, who Person, chat int64) error {
	text, err := said(r)
	if err != nil {
		return err
	}
	id, _ := strconv.Atoi(r.FormValue("message"))
	d.s.mu.Lock()
	m, ok := d.s.state.message(chat, id)
	d.s.mu.Unlock()
	if !ok || m.From.ID != who.ID {
		return refusal("Only one's own lines can be amended.")
	}
	d.s.Edit(chat, id, text)
	return nil
}

func (d *desk) postPress(r *http.Request, who Person, chat int64) error {
	id, _ := strconv.Atoi(r.FormValue("message"))
	button, err := strconv.Atoi(r.FormValue("button"))
	if err != nil {
		return refusal("That button could not be read.")
	}
	if _, ok := d.s.PressButton(chat, who, id, button); !ok {
		return refusal("That button is no longer there.")
	}
	return nil
}

func (d *desk) postPin(r *http.Request, who Person, chat int64) error {
	lat, err := strconv.ParseFloat(strings.TrimSpace(r.FormValue("lat")), 64)
	lon, err2 := strconv.ParseFloat(strings.TrimSpace(r.FormValue("lon")), 64)
	if err != nil || err2 != nil || !(lat >= -90 && lat <= 90 && lon >= -180 && lon <= 180) {
		return refusal("A place is two numbers in degrees, such as -37.81 and 175.28.")
	}
	d.s.Pin(chat, who, lat, lon)
	return nil
}

func (d *desk) postFile(r *http.Request, who Person, chat int64) error {
	f, header, err := r.FormFile("file")
	if err != nil {
		return refusal("Choose a file first.")
	}
	defer f.Close()
	content, err := io.ReadAll(f)
	if err != nil {
		return fmt.Errorf("practice: read the file: %w", err)
	}
	d.s.SendFile(chat, who, header.Filename, content, strings.TrimSpace(r.FormValue("text")))
	return nil
}

// longestMove is how far the clock goes in one press.
const longestMove = 31 * 24 * time.Hour

func (d *desk) postClock(r *http.Request, _ Person, _ int64) error {
	hours, err := strconv.ParseFloat(r.FormValue("hours"), 64)
	by := time.Duration(hours * float64(time.Hour))
	if err != nil || by <= 0 || by > longestMove {
		return refusal("The clock goes forward only, at most a month at once.")
	}
	if d.page.Move != nil {
		return d.page.Move(by)
	}
	d.s.MoveClock(by)
	return nil
}
