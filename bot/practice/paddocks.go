package practice

import (
	"fmt"
	"io"
	"net/http"
	"net/url"
	"strconv"
	"strings"
	"time"
)

// postPaddocks starts a farm of one's own: a group of its name, the first
// message that sets it up, and the register, typed or as a file. The answer
// leads to the new group.
func (d *desk) postPaddocks(w http.ResponseWriter, r *http.Request) {
	r.Body = http.MaxBytesReader(w, r.Body, maxPost)
	_, _, err := d.writer(r)
	if err != nil {
		tellPost(w, err)
		return
	}
	name, content, err := register(r)
	farm := strings.Join(strings.Fields(r.FormValue("farm")), " ")
	if err == nil && farm == "" {
		err = refusal("Give the farm a name.")
	}
	if err == nil && strings.ContainsAny(farm, ",;") {
		err = refusal("Leave commas out of the farm's name.")
	}
	zone := r.FormValue("zone")
	if _, bad := time.LoadLocation(zone); err == nil && (bad != nil || zone == "" || zone == "Local") {
		err = refusal(fmt.Sprintf("%q is not a time zone like Pacific/Auckland.", zone))
	}
	if err != nil {
		tellPost(w, err)
		return
	}
	who, group := d.openFarm(farm, zone, name, content)
	query := url.Values{"who": {strconv.FormatInt(who.ID, 10)}, "where": {strconv.FormatInt(group, 10)}}
	w.Header().Set("Content-Type", "text/plain; charset=utf-8")
	_, _ = io.WriteString(w, "/?"+query.Encode()) // the reader has gone if this fails
}

// openFarm sends the messages with which a manager would begin.
func (d *desk) openFarm(farm, zone, name string, content []byte) (Person, int64) {
	d.s.mu.Lock()
	manager := d.people()[0]
	d.s.mu.Unlock()
	group := d.s.AddGroup(Group{Title: farm, Zone: zone, Admins: []int64{manager.ID}})
	if d.s.Messages(group) == nil {
		d.s.Say(group, manager, fmt.Sprintf("set up %s, %s", farm, zone))
	}
	if name != "" {
		d.s.SendFile(group, manager, name, content, "")
		return manager, group
	}
	d.s.Say(group, manager, "paddocks\n"+string(content))
	return manager, group
}

// register reads the paddocks: a file, a pasted table with the register's
// header (sent as a file), or one paddock a line (name "", sent as a message).
func register(r *http.Request) (name string, content []byte, err error) {
	if f, header, err := r.FormFile("file"); err == nil {
		defer f.Close()
		content, err := io.ReadAll(f)
		if err != nil {
			return "", nil, fmt.Errorf("practice: read the register: %w", err)
		}
		if len(content) > 0 {
			return header.Filename, content, nil
		}
	}
	text := strings.TrimSpace(strings.ReplaceAll(r.FormValue("paddocks"), "\r\n", "\n"))
	switch {
	case text == "":
		return "", nil, refusal("List the paddocks, or choose a file.")
	case strings.HasPrefix(strings.ToLower(text), "name,"):
		return "paddocks.csv", []byte(text + "\n"), nil
	case units(text) > maxText-len("paddocks\n"):
		return "", nil, refusal("That list is too long for one message: send it as a CSV file with the header name,area_ha.")
	}
	return "", []byte(text), nil
}
