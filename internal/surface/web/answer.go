package web

import (
	"encoding/json"
	"errors"
	"io"
	"mime"
	"net/http"
	"path"
	"strings"
	"time"

	"scantling/internal/message"
	"scantling/internal/surface/screen"
)

// mostBody bounds the body of a request in bytes.
const mostBody = 64 << 10

// bodyWithin bounds the time that a body may take to arrive.
const bodyWithin = 10 * time.Second

// send answers with data of a type that is not to be kept.
func send(w http.ResponseWriter, kind string, data []byte) {
	w.Header().Set("Content-Type", kind)
	w.Header().Set("Cache-Control", "no-store")
	_, _ = w.Write(data) // who went away needs no answer
}

const jsonKind = "application/json; charset=utf-8"

func (s *Server) state(w http.ResponseWriter, r *http.Request) {
	text, revision, err := s.desk.State(r.Context())
	if err != nil {
		s.fail(w, err)
		return
	}
	tag := `"` + revision + `"`
	w.Header().Set("ETag", tag)
	if r.Header.Get("If-None-Match") == tag {
		w.WriteHeader(http.StatusNotModified)
		return
	}
	send(w, jsonKind, text)
}

func (s *Server) source(w http.ResponseWriter, r *http.Request) {
	text, err := s.desk.Source(r.Context())
	s.answer(w, "text/plain; charset=utf-8", text, err)
}

func (s *Server) scene(w http.ResponseWriter, r *http.Request) {
	data, err := s.desk.Scene(r.Context())
	s.answer(w, "model/gltf-binary", data, err)
}

func (s *Server) booklet(w http.ResponseWriter, r *http.Request) {
	paper := strings.ToLower(r.URL.Query().Get("paper"))
	if paper == "" {
		paper = "a4"
	}
	data, err := s.desk.Booklet(r.Context(), paper)
	if err == nil && data == nil {
		s.fail(w, refuse("server.no-paper"))
		return
	}
	w.Header().Set("Content-Disposition", `inline; filename="booklet-`+paper+`.pdf"`)
	s.answer(w, "application/pdf", data, err)
}

// listed is one file as /api/files lists it.
type listed struct {
	Name  string `json:"name"`
	Bytes int    `json:"bytes"`
}

func (s *Server) files(w http.ResponseWriter, r *http.Request) {
	files, err := s.desk.Files(r.Context())
	if err != nil {
		s.fail(w, err)
		return
	}
	list := []listed{}
	for _, f := range files {
		list = append(list, listed{f.Name, len(f.Data)})
	}
	text, err := json.Marshal(list)
	s.answer(w, jsonKind, text, err)
}

// fileKinds are the content types of what the plan is handed over as.
var fileKinds = map[string]string{
	".json": jsonKind, ".csv": "text/csv; charset=utf-8", ".svg": "image/svg+xml", ".pdf": "application/pdf", ".glb": "model/gltf-binary",
}

func (s *Server) file(w http.ResponseWriter, r *http.Request) {
	files, err := s.desk.Files(r.Context())
	if err != nil {
		s.fail(w, err)
		return
	}
	for _, f := range files {
		if kind := fileKinds[path.Ext(f.Name)]; f.Name == r.PathValue("name") && kind != "" {
			w.Header().Set("Content-Disposition", `attachment; filename="`+path.Base(f.Name)+`"`)
			send(w, kind, f.Data)
			return
		}
	}
	http.NotFound(w, r)
}

// changed answers a change: with the new state, or with why there is none.
func (s *Server) changed(w http.ResponseWriter, r *http.Request, err error) {
	if err != nil {
		s.fail(w, err)
		return
	}
	s.state(w, r)
}

func (s *Server) setInput(w http.ResponseWriter, r *http.Request) {
	var ask struct{ Revision, Name, Value string }
	if read(w, r, &ask) {
		s.changed(w, r, s.desk.SetInput(r.Context(), ask.Revision, ask.Name, ask.Value))
	}
}

func (s *Server) remedy(w http.ResponseWriter, r *http.Request) {
	var ask struct{ Revision, ID string }
	if read(w, r, &ask) {
		s.changed(w, r, s.desk.Remedy(r.Context(), ask.Revision, ask.ID))
	}
}

func (s *Server) undo(w http.ResponseWriter, r *http.Request) {
	var ask struct{}
	if read(w, r, &ask) {
		s.changed(w, r, s.desk.Undo(r.Context()))
	}
}

func (s *Server) redo(w http.ResponseWriter, r *http.Request) {
	var ask struct{}
	if read(w, r, &ask) {
		s.changed(w, r, s.desk.Redo(r.Context()))
	}
}

func (s *Server) record(w http.ResponseWriter, r *http.Request) {
	var ask struct{ Of, What, Value string }
	if read(w, r, &ask) {
		s.changed(w, r, s.desk.Record(r.Context(), ask.Of, ask.What, ask.Value))
	}
}

// read reads a bounded JSON body; where it cannot it answers and returns false.
func read(w http.ResponseWriter, r *http.Request, into any) bool {
	if kind, _, err := mime.ParseMediaType(r.Header.Get("Content-Type")); err != nil || kind != "application/json" {
		http.Error(w, "The body is to be application/json.", http.StatusUnsupportedMediaType)
		return false
	}
	// Bounded is the body only: planning takes the time that it takes.
	control := http.NewResponseController(w)
	if control.SetReadDeadline(time.Now().Add(bodyWithin)) == nil {
		defer control.SetReadDeadline(time.Time{})
	}
	d := json.NewDecoder(http.MaxBytesReader(w, r.Body, mostBody))
	d.DisallowUnknownFields()
	err := d.Decode(into)
	if err == nil {
		if _, more := d.Token(); !errors.Is(more, io.EOF) {
			err = errors.New("something stands behind the object")
		}
	}
	var large *http.MaxBytesError
	switch {
	case errors.As(err, &large):
		http.Error(w, "The body is too large.", http.StatusRequestEntityTooLarge)
	case err != nil:
		http.Error(w, "The body is not the object that is expected here.", http.StatusBadRequest)
	}
	return err == nil
}

func (s *Server) answer(w http.ResponseWriter, kind string, data []byte, err error) {
	if err != nil {
		s.fail(w, err)
		return
	}
	send(w, kind, data)
}

// fail answers with what was not done and why: 409 with the present state where
// the documents are others by now, 422 where the request cannot be done, 500
// where the outside failed.
func (s *Server) fail(w http.ResponseWriter, err error) {
	now := s.desk.now.Load()
	say := now.good.Words()
	var refused *refusal
	fault, status := screen.Fault{Diagnostics: []screen.Diagnostic{}}, http.StatusInternalServerError
	if errors.As(err, &refused) {
		status = http.StatusUnprocessableEntity
		fault.Text, fault.Diagnostics = say.Say(refused.text), screen.Diagnostics(refused.diags, say)
		if refused.moved {
			status, fault.State = http.StatusConflict, now.state
		}
	} else {
		fault.Text = say.Say(message.New("server.failed", message.Text("why", err.Error())))
	}
	text, err := json.Marshal(fault)
	if err != nil {
		http.Error(w, "The answer cannot be written.", http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", jsonKind)
	w.Header().Set("Cache-Control", "no-store")
	w.WriteHeader(status)
	_, _ = w.Write(text)
}
