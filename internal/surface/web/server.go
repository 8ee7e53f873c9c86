package web

import (
	"context"
	"errors"
	"io/fs"
	"net"
	"net/http"
	"time"
)

// Server serves one desk.
type Server struct {
	desk    *Desk
	handler http.Handler
	closing chan struct{}
}

// NewServer returns a server of a desk and of built pages.
func NewServer(d *Desk, pages fs.FS) (*Server, error) {
	s := &Server{desk: d, closing: make(chan struct{})}
	static, err := newStatic(pages)
	if err != nil {
		return nil, err
	}
	mux := http.NewServeMux()
	mux.HandleFunc("GET /api/state", s.state)
	mux.HandleFunc("GET /api/source", s.source)
	mux.HandleFunc("GET /api/events", s.events)
	mux.HandleFunc("GET /api/scene.glb", s.scene)
	mux.HandleFunc("GET /api/booklet.pdf", s.booklet)
	mux.HandleFunc("GET /api/files", s.files)
	mux.HandleFunc("GET /api/files/{name...}", s.file)
	mux.HandleFunc("POST /api/inputs", s.setInput)
	mux.HandleFunc("POST /api/remedy", s.remedy)
	mux.HandleFunc("POST /api/undo", s.undo)
	mux.HandleFunc("POST /api/redo", s.redo)
	mux.HandleFunc("POST /api/record", s.record)
	mux.Handle("GET /", static)
	s.handler = guard(mux)
	return s, nil
}

// ServeHTTP implements http.Handler.
func (s *Server) ServeHTTP(w http.ResponseWriter, r *http.Request) { s.handler.ServeHTTP(w, r) }

// Listen binds a port of the loopback address; 0 takes one that is free.
func Listen(port int) (net.Listener, error) {
	return net.ListenTCP("tcp4", &net.TCPAddr{IP: net.IPv4(127, 0, 0, 1), Port: port})
}

// How long the server waits for others.
const (
	lookEvery  = 700 * time.Millisecond
	stopWithin = 3 * time.Second
)

// Serve answers until the context ends, then lets running answers finish.
func (s *Server) Serve(ctx context.Context, l net.Listener) error {
	if addr, ok := l.Addr().(*net.TCPAddr); !ok || !addr.IP.IsLoopback() {
		return errors.New("the app is served on the loopback address only")
	}
	ctx, cancel := context.WithCancel(ctx)
	defer cancel()
	go s.desk.watch(ctx, lookEvery)
	server := &http.Server{Handler: s, ReadHeaderTimeout: 5 * time.Second, IdleTimeout: 2 * time.Minute, MaxHeaderBytes: 64 << 10}
	stopped := make(chan error, 1)
	go func() {
		<-ctx.Done()
		close(s.closing)
		rest, done := context.WithTimeout(context.Background(), stopWithin)
		defer done()
		stopped <- server.Shutdown(rest)
	}()
	if err := server.Serve(l); !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return <-stopped
}
