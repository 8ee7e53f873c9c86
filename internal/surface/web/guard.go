package web

import (
	"net"
	"net/http"
	"net/netip"
)

// policy lets a page load nothing but its own files, and nobody frame it.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; font-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"

// guard refuses requests that are not meant for this machine's own pages, and
// sends the headers that every answer carries.
func guard(next http.Handler) http.Handler {
	origin := http.NewCrossOriginProtection()
	next = origin.Handler(next)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		if !here(r.Host) {
			http.Error(w, "This server answers to 127.0.0.1 and localhost only.", http.StatusMisdirectedRequest)
			return
		}
		if o := r.Header.Get("Origin"); o != "" && o != "http://"+r.Host {
			http.Error(w, "This server answers its own pages only.", http.StatusForbidden)
			return
		}
		next.ServeHTTP(w, r)
	})
}

// here reports whether a Host header names this machine itself. A page of
// somebody else's name that resolves to this machine is refused.
func here(host string) bool {
	name, _, err := net.SplitHostPort(host)
	if err != nil {
		name = host
	}
	if name == "localhost" {
		return true
	}
	addr, err := netip.ParseAddr(name)
	return err == nil && addr.IsLoopback()
}
