package practice

import (
	"embed"
	"html/template"
	"io/fs"
	"net/http"
	"strconv"
	"strings"
	"time"
)

//go:embed assets
var assets embed.FS

// Page says what the practice page shows. Only Group is needed.
type Page struct {
	Group  int64                       // the chat that opens first
	People []Person                    // who may be picked; the first is the manager. All the cast if empty
	Tries  []Try                       // things to try; Tries() if nil
	Zone   func(chat int64) string     // IANA zone in which a chat's times are shown; UTC if nil
	Move   func(d time.Duration) error // puts the clock on and runs what falls due; the server's own clock if nil
	Hosts  []string                    // names under which the page may be asked for, besides localhost and addresses
}

// desk is the practice page at work.
type desk struct {
	s     *Server
	page  Page
	pages *template.Template
}

// Page gives the practice page and the Bot API behind one handler: the page at
// "/", the Bot API at "/bot<token>/". Whatever another site makes a browser
// post, to either, is refused.
func (s *Server) Page(p Page) http.Handler {
	if p.Tries == nil {
		p.Tries = Tries()
	}
	d := &desk{s: s, page: p}
	d.pages = template.Must(template.ParseFS(assets, "assets/*.html"))
	mux := http.NewServeMux()
	mux.HandleFunc("GET /{$}", d.showPage)
	mux.HandleFunc("GET /events", d.streamEvents)
	mux.HandleFunc("GET /earlier", d.showEarlier)
	mux.HandleFunc("GET /media/{id}", d.serveMedia)
	static, err := fs.Sub(assets, "assets")
	if err != nil {
		panic(err) // the folder is embedded above
	}
	mux.Handle("GET /practice.css", http.FileServerFS(static))
	mux.Handle("GET /practice.js", http.FileServerFS(static))
	mux.Handle("GET /practice.svg", http.FileServerFS(static))
	d.posts(mux)
	return d.guard(withAPI(s, mux))
}

// withAPI sends the Bot API's paths to it and the rest to the page.
func withAPI(api, page http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if strings.HasPrefix(r.URL.Path, "/bot") || strings.HasPrefix(r.URL.Path, "/file/") {
			api.ServeHTTP(w, r)
			return
		}
		page.ServeHTTP(w, r)
	})
}

// view is what the page's template reads.
type view struct {
	Who     Person
	Chat    int64
	Title   string
	Private bool
	People  []Person
	Manager Person
	Groups  []Group
	Lines   []line
	Earlier int // the first message shown, when there are earlier ones
	Seq     int64
	Clock   string
	CanMove bool
	Tries   []Try
}

// shown is how many messages the page opens with.
const shown = 60

func (d *desk) showPage(w http.ResponseWriter, r *http.Request) {
	v := d.view(r)
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.Header().Set("Cache-Control", "no-store")
	// The reader has gone if this fails.
	_ = d.pages.ExecuteTemplate(w, "page.html", v)
}

func (d *desk) view(r *http.Request) view {
	d.s.mu.Lock()
	defer d.s.mu.Unlock()
	v := view{People: d.people(), Tries: d.page.Tries, Seq: d.s.state.seq}
	v.CanMove = d.page.Move != nil || d.s.options.Clock != nil
	v.Manager = v.People[0]
	v.Who = pick(v.People, r.FormValue("who"))
	v.Chat, v.Title, v.Private = d.where(r.FormValue("where"), v.Who)
	for _, id := range d.s.state.order {
		if g := d.s.state.groups[id]; g.MovedTo == 0 {
			v.Groups = append(v.Groups, g)
		}
	}
	v.Clock = d.clock(v.Chat)
	last := d.s.state.chat(v.Chat).last
	v.Lines = d.lines(v.Chat, v.Who, max(1, last-shown+1), last)
	if last > shown {
		v.Earlier = last - shown + 1
	}
	return v
}

// people gives who may be picked. The caller holds the lock.
func (d *desk) people() []Person {
	switch {
	case len(d.page.People) > 0:
		return d.page.People
	case len(d.s.state.people) > 0:
		return d.s.state.people
	}
	return []Person{{ID: 0, Name: "nobody"}}
}

// pick finds a person by id; the first when there is no such person.
func pick(people []Person, id string) Person {
	for _, p := range people {
		if strconv.FormatInt(p.ID, 10) == id {
			return p
		}
	}
	return people[0]
}

// where gives the chat that is asked for: "private", a group's id, or the
// group that opens first.
func (d *desk) where(name string, who Person) (chat int64, title string, private bool) {
	if name == "private" {
		return who.ID, who.Name + " and the bot alone", true
	}
	if id, err := strconv.ParseInt(name, 10, 64); err == nil {
		if g, ok := d.s.state.groups[id]; ok {
			return id, g.Title, false
		}
	}
	return d.page.Group, d.s.state.groups[d.page.Group].Title, false
}

// zone gives the zone of a chat's times: that of a farm begun at the page, or
// what the host says.
func (d *desk) zone(chat int64) *time.Location {
	name := d.s.state.groups[chat].Zone
	if name == "" && d.page.Zone != nil {
		name = d.page.Zone(chat)
	}
	z, err := time.LoadLocation(name)
	if err != nil {
		return time.UTC
	}
	return z
}

// clock gives the clock's face for a chat.
func (d *desk) clock(chat int64) string {
	return d.s.now().In(d.zone(chat)).Format("Mon 2 Jan 2006 15:04")
}

func (d *desk) showEarlier(w http.ResponseWriter, r *http.Request) {
	before, _ := strconv.Atoi(r.FormValue("before"))
	d.s.mu.Lock()
	who := pick(d.people(), r.FormValue("who"))
	chat, _, _ := d.where(r.FormValue("where"), who)
	from := max(1, before-shown)
	lines := d.lines(chat, who, from, before-1)
	d.s.mu.Unlock()
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.Header().Set("X-First", strconv.Itoa(from))
	_ = d.pages.ExecuteTemplate(w, "lines.html", lines) // the reader has gone if this fails
}

func (d *desk) serveMedia(w http.ResponseWriter, r *http.Request) {
	f, ok := d.s.File(r.PathValue("id"))
	if !ok {
		http.NotFound(w, r)
		return
	}
	w.Header().Set("Content-Type", "application/octet-stream")
	switch {
	case f.Photo && (f.Mime == "image/png" || f.Mime == "image/jpeg"):
		w.Header().Set("Content-Type", f.Mime)
	default:
		w.Header().Set("Content-Disposition", "attachment; filename="+strconv.Quote(f.Name))
	}
	w.Header().Set("Cache-Control", "private, max-age=86400")
	_, _ = w.Write(f.Content) // the reader has gone if this fails
}
