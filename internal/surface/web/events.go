package web

import (
	"context"
	"fmt"
	"net/http"
	"sync"
	"time"
)

// hub tells the open pages that there is a new revision.
type hub struct {
	mu    sync.Mutex
	pages map[chan string]bool
}

// listen returns a channel of revisions, and what to call at the end. A page that
// is slow gets the newest revision only.
func (h *hub) listen() (revisions <-chan string, stop func()) {
	c := make(chan string, 1)
	h.mu.Lock()
	defer h.mu.Unlock()
	if h.pages == nil {
		h.pages = map[chan string]bool{}
	}
	h.pages[c] = true
	return c, func() {
		h.mu.Lock()
		defer h.mu.Unlock()
		delete(h.pages, c)
	}
}

func (h *hub) tell(revision string) {
	h.mu.Lock()
	defer h.mu.Unlock()
	for c := range h.pages {
		select {
		case <-c:
		default:
		}
		c <- revision
	}
}

// anyone reports whether a page listens.
func (h *hub) anyone() bool {
	h.mu.Lock()
	defer h.mu.Unlock()
	return len(h.pages) > 0
}

// watch looks at the documents from time to time, while a page is open.
func (d *Desk) watch(ctx context.Context, every time.Duration) {
	tick := time.NewTicker(every)
	defer tick.Stop()
	for {
		select {
		case <-ctx.Done():
			return
		case <-tick.C:
			if d.hub.anyone() {
				_, _ = d.present(ctx) // a page that asks for the state is told what fails
			}
		}
	}
}

// beat is how often an open stream shows that it is alive.
const beat = 15 * time.Second

// events streams a "changed" event with each new revision.
func (s *Server) events(w http.ResponseWriter, r *http.Request) {
	revisions, stop := s.desk.hub.listen()
	defer stop()
	w.Header().Set("Content-Type", "text/event-stream; charset=utf-8")
	control := http.NewResponseController(w)
	send := func(text string) bool {
		_, err := fmt.Fprint(w, text)
		return err == nil && control.Flush() == nil
	}
	if !send("retry: 1000\n\n") {
		return
	}
	tick := time.NewTicker(beat)
	defer tick.Stop()
	for {
		select {
		case <-r.Context().Done():
			return
		case <-s.closing:
			return
		case rev := <-revisions:
			if !send("event: changed\ndata: " + rev + "\n\n") {
				return
			}
		case <-tick.C:
			if !send(": here\n\n") {
				return
			}
		}
	}
}
