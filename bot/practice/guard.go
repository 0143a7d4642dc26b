package practice

import (
	"net"
	"net/http"
	"slices"
	"strings"
)

// policy lets the page load from its own server and from nowhere else.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"

// guard refuses posts that another site makes a browser send, and requests
// under a foreign name (a name that an attacker points at this machine).
func (d *desk) guard(next http.Handler) http.Handler {
	origin := http.NewCrossOriginProtection()
	inner := origin.Handler(next)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "no-referrer")
		if !d.known(r.Host) {
			http.Error(w, "This page is served to localhost only.", http.StatusForbidden)
			return
		}
		inner.ServeHTTP(w, r)
	})
}

// known tells whether the page may be asked for by this name: an address
// cannot be made to point elsewhere, nor can localhost.
func (d *desk) known(host string) bool {
	name := host
	if h, _, err := net.SplitHostPort(host); err == nil {
		name = h
	}
	name = strings.Trim(strings.ToLower(name), "[]")
	return name == "localhost" || net.ParseIP(name) != nil || slices.Contains(d.page.Hosts, name)
}
