package web

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"scantling/internal/outside"
	"scantling/internal/surface/folder"
	"scantling/internal/surface/screen"
)

const demo = "needle-chest.piece.hcl"

// bench is a server of a copy of the demonstration piece.
type bench struct {
	t    *testing.T
	dir  string
	desk *Desk
	http *httptest.Server
}

func newBench(t *testing.T) *bench {
	t.Helper()
	dir := t.TempDir()
	for _, name := range []string{demo, "shop.hcl"} {
		data, err := os.ReadFile(filepath.Join(outside.Root(), "examples", "needle-chest", name))
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, name), data, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	w, err := folder.Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { w.Close() })
	desk, err := Open(context.Background(), w, demo)
	if err != nil {
		t.Fatal(err)
	}
	pages := fstest.MapFS{
		"index.html": {Data: []byte("<!doctype html><title>x</title>")}, "app.js": {Data: []byte("1")},
		"notes.md": {Data: []byte("not served")}, "fonts/a.woff2": {Data: []byte("font")},
	}
	s, err := NewServer(desk, pages)
	if err != nil {
		t.Fatal(err)
	}
	b := &bench{t: t, dir: dir, desk: desk, http: httptest.NewServer(s)}
	t.Cleanup(b.http.Close)
	return b
}

// ask sends a request and returns status, headers and body.
func (b *bench) ask(r *http.Request) (int, http.Header, []byte) {
	b.t.Helper()
	answer, err := http.DefaultClient.Do(r)
	if err != nil {
		b.t.Fatal(err)
	}
	defer answer.Body.Close()
	body, err := io.ReadAll(answer.Body)
	if err != nil {
		b.t.Fatal(err)
	}
	return answer.StatusCode, answer.Header, body
}

func (b *bench) request(method, path, body string) *http.Request {
	b.t.Helper()
	r, err := http.NewRequest(method, b.http.URL+path, strings.NewReader(body))
	if err != nil {
		b.t.Fatal(err)
	}
	if method == http.MethodPost {
		r.Header.Set("Content-Type", "application/json")
	}
	return r
}

func (b *bench) get(path string) (int, http.Header, []byte) {
	return b.ask(b.request(http.MethodGet, path, ""))
}

// post sends a body as JSON; it returns the new state or the fault.
func (b *bench) post(path string, body any) (int, screen.State, screen.Fault) {
	b.t.Helper()
	text, err := json.Marshal(body)
	if err != nil {
		b.t.Fatal(err)
	}
	status, _, answer := b.ask(b.request(http.MethodPost, path, string(text)))
	var s screen.State
	var f screen.Fault
	into := any(&f)
	if status == http.StatusOK {
		into = &s
	}
	if err := json.Unmarshal(answer, into); err != nil {
		b.t.Fatalf("%s: %d, %v: %.200s", path, status, err, answer)
	}
	return status, s, f
}

func (b *bench) state() screen.State {
	b.t.Helper()
	status, _, body := b.get("/api/state")
	var s screen.State
	if err := json.Unmarshal(body, &s); status != http.StatusOK || err != nil {
		b.t.Fatalf("%d, %v: %.200s", status, err, body)
	}
	return s
}

func (b *bench) file(name string) string {
	b.t.Helper()
	data, err := os.ReadFile(filepath.Join(b.dir, name))
	if err != nil {
		b.t.Fatal(err)
	}
	return string(data)
}

func (b *bench) write(name, text string) {
	b.t.Helper()
	if err := os.WriteFile(filepath.Join(b.dir, name), []byte(text), 0o644); err != nil {
		b.t.Fatal(err)
	}
}

func set(s screen.State, name, value string) map[string]string {
	return map[string]string{"revision": s.Revision, "name": name, "value": value}
}

func input(s screen.State, name string) screen.Input {
	for _, in := range s.Inputs {
		if in.Name == name {
			return in
		}
	}
	return screen.Input{}
}

func TestState(t *testing.T) {
	b := newBench(t)
	s := b.state()
	if s.Piece.Name != "Needle chest" || s.File != demo || s.Stale || len(s.Diagnostics) != 0 || s.Undo != "" {
		t.Errorf("piece %q of %q, stale %v, %v, undo %q", s.Piece.Name, s.File, s.Stale, s.Diagnostics, s.Undo)
	}
	for what, n := range map[string]int{
		"inputs": len(s.Inputs), "parts": len(s.Parts), "objects": len(s.Objects), "diagrams": len(s.Diagrams), "set-ups": len(s.Setups),
		"steps": len(s.Steps), "stages": len(s.Tables.Stages), "held": len(s.Tables.Held.Rows), "buying": len(s.Tables.Buying.Rows),
		"rows": len(s.Rows), "measures": len(s.Measures), "labels": len(s.Words), "view": len(s.Views.Isometric),
	} {
		if n == 0 {
			t.Errorf("no %s", what)
		}
	}
	if _, after, ok := strings.Cut(b.text(), "⟦"); ok {
		t.Errorf("not in the catalogue: %.60s", after)
	}
	length := input(s, "needle_length")
	if length.Value != "350" || length.Kind != screen.LengthInput || length.Unit != "mm" || length.Stops[0].Value != "250" || length.Stops[int(length.At)].Value != "350" {
		t.Errorf("needle length: %+v", length)
	}
	status, header, _ := b.ask(func() *http.Request {
		r := b.request(http.MethodGet, "/api/state", "")
		r.Header.Set("If-None-Match", `"`+s.Revision+`"`)
		return r
	}())
	if status != http.StatusNotModified {
		t.Errorf("the same state again: %d %v", status, header)
	}
}

func (b *bench) text() string {
	_, _, body := b.get("/api/state")
	return string(body)
}

// A change is spliced: all other bytes of the file stay, comments and all.
func TestSetInput(t *testing.T) {
	b := newBench(t)
	before := b.file(demo)
	status, s, _ := b.post("/api/inputs", set(b.state(), "needle_length", "360"))
	if status != http.StatusOK || input(s, "needle_length").Value != "360" {
		t.Fatalf("%d, needle length %+v", status, input(s, "needle_length"))
	}
	if want := strings.Replace(before, "length = 350\n", "length = 360\n", 1); b.file(demo) != want {
		t.Error("more than the one value was changed")
	}
	if s.Piece.Overall[1] == (screen.Fact{}) || !strings.Contains(s.Undo, "350") || !strings.Contains(s.Undo, "360") {
		t.Errorf("overall %v, undo %q", s.Piece.Overall, s.Undo)
	}
	if history := b.file("needle-chest.history.jsonl"); strings.Count(history, "\n") != 1 {
		t.Errorf("history: %q", history)
	}
	for value, want := range map[string]string{"14 1/8 in": `"14 1/8 in"`, "355,5": "355.5"} {
		status, s, f := b.post("/api/inputs", set(b.state(), "needle_length", value))
		if status != http.StatusOK || !strings.Contains(b.file(demo), "length = "+want+"\n") {
			t.Errorf("%q: %d %v, shown %q", value, status, f, input(s, "needle_length").Shown)
		}
	}
	if status, _, f := b.post("/api/inputs", set(b.state(), "timber", "black walnut")); status != http.StatusOK || !strings.Contains(b.file(demo), `choice  = "black walnut"`) {
		t.Errorf("timber: %d %v", status, f)
	}
	now := b.file(demo)
	if status, _, _ := b.post("/api/inputs", set(b.state(), "timber", "black walnut")); status != http.StatusOK || b.file(demo) != now {
		t.Errorf("the same value again: %d", status)
	}
}

// A value that the plan cannot take is not written, and the last plan stays.
func TestRefusedValues(t *testing.T) {
	b := newBench(t)
	before, s := b.file(demo), b.state()
	for _, c := range []struct{ name, value string }{
		{"needle_length", "3"}, {"needle_length", "9999"}, {"needle_length", "a long one"}, {"needle_length", ""}, {"needle_length", "-350"},
		{"needle_length", "sizes.case_wide"}, {"needle_length", "350\"\n}\n"}, {"needle_length", strings.Repeat("3", 300)}, {"needle_length", "\xff"},
		{"drawers", "2.5"}, {"drawers", "many"}, {"timber", "balsa"}, {"timber", "${input.edition}"}, {"gone", "1"}, {"", "1"},
	} {
		status, _, f := b.post("/api/inputs", set(s, c.name, c.value))
		if status != http.StatusUnprocessableEntity || f.Text == "" || strings.ContainsAny(f.Text, "⟦⟧") {
			t.Errorf("%s = %q: %d %+v", c.name, c.value, status, f)
		}
		for _, d := range f.Diagnostics {
			if d.Text == "" || strings.ContainsAny(d.Text, "⟦⟧") || d.Where == "" {
				t.Errorf("%s = %q: %+v", c.name, c.value, d)
			}
		}
	}
	if b.file(demo) != before {
		t.Error("the file was changed")
	}
	if now := b.state(); now.Revision != s.Revision || input(now, "needle_length").Value != "350" {
		t.Error("the plan was changed")
	}
	if _, err := os.Stat(filepath.Join(b.dir, "needle-chest.history.jsonl")); err == nil {
		t.Error("a history was begun")
	}
}

func TestUndo(t *testing.T) {
	b := newBench(t)
	before := b.file(demo)
	if status, _, f := b.post("/api/undo", struct{}{}); status != http.StatusUnprocessableEntity || f.Text == "" {
		t.Errorf("nothing to undo: %d %v", status, f)
	}
	b.post("/api/inputs", set(b.state(), "drawers", "4"))
	b.post("/api/inputs", set(b.state(), "head_diameter", "13"))
	after := b.file(demo)
	for _, step := range []struct{ path, undo, redo string }{
		{"/api/undo", "4", "13"}, {"/api/undo", "", "4"}, {"/api/redo", "4", "13"}, {"/api/redo", "13", ""},
	} {
		status, s, f := b.post(step.path, struct{}{})
		if status != http.StatusOK || !strings.HasSuffix(s.Undo, step.undo) || !strings.HasSuffix(s.Redo, step.redo) || (step.redo == "") != (s.Redo == "") {
			t.Errorf("%s: %d %v, undo %q, redo %q", step.path, status, f, s.Undo, s.Redo)
		}
		if step.undo == "" && b.file(demo) != before {
			t.Error("what was undone is not as before")
		}
	}
	if b.file(demo) != after {
		t.Error("what was done again is not as it was")
	}
	// The history is found again by the next server.
	w, err := folder.Open(b.dir)
	if err != nil {
		t.Fatal(err)
	}
	defer w.Close()
	again, err := Open(context.Background(), w, demo)
	if err != nil {
		t.Fatal(err)
	}
	if err := again.Undo(context.Background()); err != nil || strings.Contains(b.file(demo), "length = 13") {
		t.Errorf("undo by another server: %v", err)
	}
	// A stretch that other hands have changed is not overwritten.
	b.write(demo, strings.Replace(b.file(demo), "count = 4", "count = 5", 1))
	if status, _, f := b.post("/api/undo", struct{}{}); status != http.StatusConflict || f.State == nil || !strings.Contains(b.file(demo), "count = 5") {
		t.Errorf("undo of what others changed: %d %q", status, f.Text)
	}
}

// A change meant for another revision is answered with the present state.
func TestConflict(t *testing.T) {
	b := newBench(t)
	old := b.state()
	b.write(demo, strings.Replace(b.file(demo), "count = 3", "count = 2", 1))
	status, _, f := b.post("/api/inputs", set(old, "needle_length", "360"))
	if status != http.StatusConflict || f.State == nil || input(*f.State, "drawers").Value != "2" || f.State.Revision == old.Revision {
		t.Fatalf("%d %+v", status, f.Text)
	}
	if strings.Contains(b.file(demo), "360") {
		t.Error("the change was made all the same")
	}
	// A change of the shop counts too: the plan was made from it.
	s := b.state()
	b.write("shop.hcl", strings.Replace(b.file("shop.hcl"), "Small workshop", "Smaller workshop", 1))
	if now := b.state(); now.Revision == s.Revision || now.Piece.Shop != "Smaller workshop" {
		t.Errorf("shop %q", now.Piece.Shop)
	}
}

// While the document is broken the last good plan stays, with what is wrong, and
// it recovers by itself.
func TestBrokenDocument(t *testing.T) {
	b := newBench(t)
	good, s := b.file(demo), b.state()
	b.write(demo, strings.Replace(good, "count = 3", "count = 99", 1))
	broken := b.state()
	if !broken.Stale || len(broken.Diagnostics) == 0 || broken.Diagnostics[0].Where == "" || len(broken.Parts) != len(s.Parts) || broken.Revision == s.Revision {
		t.Errorf("stale %v, %v, %d parts", broken.Stale, broken.Diagnostics, len(broken.Parts))
	}
	// The app can mend it.
	if status, now, f := b.post("/api/inputs", set(broken, "drawers", "4")); status != http.StatusOK || now.Stale || len(now.Diagnostics) != 0 {
		t.Errorf("%d %v", status, f)
	}
	if err := os.Remove(filepath.Join(b.dir, demo)); err != nil {
		t.Fatal(err)
	}
	if gone := b.state(); !gone.Stale || len(gone.Diagnostics) != 1 || len(gone.Parts) == 0 {
		t.Errorf("without a file: stale %v, %v", gone.Stale, gone.Diagnostics)
	}
	b.write(demo, good)
	if back := b.state(); back.Stale || back.Revision != s.Revision {
		t.Errorf("back again: stale %v %v", back.Stale, back.Diagnostics)
	}
}

func TestRemedy(t *testing.T) {
	b := newBench(t)
	b.write(demo, strings.Replace(b.file(demo), `choice  = "black cherry"`, `choice  = "black chery"`, 1))
	s := b.state()
	if !s.Stale || len(s.Diagnostics) == 0 || len(s.Diagnostics[0].Remedies) == 0 || !s.Diagnostics[0].Remedies[0].Applies {
		t.Fatalf("no remedy: %+v", s.Diagnostics)
	}
	id := s.Diagnostics[0].Remedies[0].ID
	if status, _, _ := b.post("/api/remedy", map[string]string{"revision": s.Revision, "id": "nothing"}); status != http.StatusUnprocessableEntity {
		t.Errorf("an unknown remedy: %d", status)
	}
	if status, _, _ := b.post("/api/remedy", map[string]string{"revision": "old", "id": id}); status != http.StatusConflict {
		t.Errorf("a remedy of another revision: %d", status)
	}
	status, now, f := b.post("/api/remedy", map[string]string{"revision": s.Revision, "id": id})
	if status != http.StatusOK || now.Stale || !strings.Contains(b.file(demo), `choice  = "black cherry"`) {
		t.Errorf("%d %+v", status, f)
	}
}

func TestRecord(t *testing.T) {
	b := newBench(t)
	s := b.state()
	r := s.Measures[0].Readings[0]
	for _, c := range []struct{ of, what, value string }{
		{r.Of, "colour", "1"}, {"nothing.here", r.What, "1"}, {r.Of, r.What, ""}, {r.Of, r.What, "thick"}, {r.Of, r.What, strings.Repeat("1", 500)},
	} {
		if status, _, f := b.post("/api/record", c2(c.of, c.what, c.value)); status != http.StatusUnprocessableEntity || f.Text == "" || strings.ContainsAny(f.Text, "⟦⟧") {
			t.Errorf("%v: %d %q", c, status, f.Text)
		}
	}
	status, now, f := b.post("/api/record", c2(r.Of, r.What, "13,8"))
	if status != http.StatusOK {
		t.Fatalf("%d %+v", status, f)
	}
	if found := now.Measures[0].Readings[0].Found; found != "13.8 mm" {
		t.Errorf("found %q", found)
	}
	if record := b.file("needle-chest.record.jsonl"); strings.Count(record, "\n") != 1 || !strings.Contains(record, "13.8") {
		t.Errorf("record %q", record)
	}
}

func c2(of, what, value string) map[string]string {
	return map[string]string{"of": of, "what": what, "value": value}
}

func TestOutputs(t *testing.T) {
	b := newBench(t)
	for path, want := range map[string]struct{ kind, head string }{
		"/api/scene.glb":                {"model/gltf-binary", "glTF"},
		"/api/booklet.pdf":              {"application/pdf", "%PDF-"},
		"/api/booklet.pdf?paper=letter": {"application/pdf", "%PDF-"},
		"/api/source":                   {"text/plain; charset=utf-8", "scantling = 1"},
		"/api/files":                    {"application/json; charset=utf-8", "["},
		"/api/files/parts.csv":          {"text/csv; charset=utf-8", ""},
		"/api/files/plan.json":          {"application/json; charset=utf-8", "{"},
		"/":                             {"text/html; charset=utf-8", "<!doctype html>"},
		"/app.js":                       {"text/javascript; charset=utf-8", "1"},
		"/fonts/a.woff2":                {"font/woff2", "font"},
	} {
		status, header, body := b.get(path)
		if status != http.StatusOK || header.Get("Content-Type") != want.kind || !bytes.HasPrefix(body, []byte(want.head)) {
			t.Errorf("%s: %d %s %.20q", path, status, header.Get("Content-Type"), body)
		}
		if header.Get("X-Content-Type-Options") != "nosniff" || !strings.Contains(header.Get("Content-Security-Policy"), "default-src 'none'") {
			t.Errorf("%s: headers %v", path, header)
		}
	}
	if status, _, f := b.get("/api/booklet.pdf?paper=a0"); status != http.StatusUnprocessableEntity {
		t.Errorf("a paper that is none: %d %s", status, f)
	}
}

// No name leads out of the pages or of the plan's own files.
func TestNoWayOut(t *testing.T) {
	b := newBench(t)
	for _, path := range []string{
		"/../" + demo, "/%2e%2e/" + demo, "/..%2f" + demo, "/" + demo, "/api/files/../" + demo, "/api/files/%2e%2e%2f" + demo, "/api/files/..%2fshop.hcl",
		"/api/files//etc/passwd", "/api/files/%2fetc%2fpasswd", "/notes.md", "/fonts", "/fonts/", "/api", "/api/", "/api/nothing", "/api/files/",
		"/..\\" + demo, "/%00", "/index.html/", "/needle-chest.history.jsonl",
	} {
		r := b.request(http.MethodGet, "/", "")
		r.URL.Opaque = strings.Replace(b.http.URL, "http:", "", 1) + path
		client := http.Client{CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
		answer, err := client.Do(r)
		if err != nil {
			continue // not even a request
		}
		body, _ := io.ReadAll(answer.Body)
		answer.Body.Close()
		if answer.StatusCode == http.StatusOK || bytes.Contains(body, []byte("scantling = 1")) {
			t.Errorf("%s: %d %.60q", path, answer.StatusCode, body)
		}
	}
}

// Others' names for this machine, others' pages and odd bodies are refused, and
// nothing is changed by them.
func TestRefusals(t *testing.T) {
	b := newBench(t)
	before := b.file(demo)
	good := fmt.Sprintf(`{"revision":%q,"name":"drawers","value":"4"}`, b.state().Revision)
	change := func(alter func(*http.Request)) *http.Request {
		r := b.request(http.MethodPost, "/api/inputs", good)
		alter(r)
		return r
	}
	for name, c := range map[string]struct {
		r    *http.Request
		want int
	}{
		"host":            {change(func(r *http.Request) { r.Host = "example.org" }), http.StatusMisdirectedRequest},
		"host with port":  {change(func(r *http.Request) { r.Host = "example.org:80" }), http.StatusMisdirectedRequest},
		"host of the LAN": {change(func(r *http.Request) { r.Host = "192.168.1.4:80" }), http.StatusMisdirectedRequest},
		"host like ours":  {change(func(r *http.Request) { r.Host = "127.0.0.1.example.org" }), http.StatusMisdirectedRequest},
		"reading by name": {func() *http.Request {
			r := b.request(http.MethodGet, "/api/state", "")
			r.Host = "example.org"
			return r
		}(), http.StatusMisdirectedRequest},
		"origin":            {change(func(r *http.Request) { r.Header.Set("Origin", "http://example.org") }), http.StatusForbidden},
		"origin of no name": {change(func(r *http.Request) { r.Header.Set("Origin", "null") }), http.StatusForbidden},
		"origin, port":      {change(func(r *http.Request) { r.Header.Set("Origin", "http://127.0.0.1:1") }), http.StatusForbidden},
		"cross-site":        {change(func(r *http.Request) { r.Header.Set("Sec-Fetch-Site", "cross-site") }), http.StatusForbidden},
		"same-site":         {change(func(r *http.Request) { r.Header.Set("Sec-Fetch-Site", "same-site") }), http.StatusForbidden},
		"a form":            {change(func(r *http.Request) { r.Header.Set("Content-Type", "application/x-www-form-urlencoded") }), http.StatusUnsupportedMediaType},
		"plain text":        {change(func(r *http.Request) { r.Header.Set("Content-Type", "text/plain") }), http.StatusUnsupportedMediaType},
		"no JSON":           {b.request(http.MethodPost, "/api/inputs", "drawers=4"), http.StatusBadRequest},
		"two objects":       {b.request(http.MethodPost, "/api/inputs", good+good), http.StatusBadRequest},
		"another field":     {b.request(http.MethodPost, "/api/inputs", `{"revison":"","name":"drawers","value":"4"}`), http.StatusBadRequest},
		"an array":          {b.request(http.MethodPost, "/api/inputs", `[]`), http.StatusBadRequest},
		"too large":         {b.request(http.MethodPost, "/api/inputs", `{"value":"`+strings.Repeat("4", mostBody)+`"}`), http.StatusRequestEntityTooLarge},
		"by reading":        {b.request(http.MethodGet, "/api/inputs", ""), http.StatusNotFound},
		"state by writing":  {b.request(http.MethodPost, "/api/state", "{}"), http.StatusMethodNotAllowed},
		"deleting":          {b.request(http.MethodDelete, "/api/state", ""), http.StatusMethodNotAllowed},
	} {
		if status, _, body := b.ask(c.r); status != c.want {
			t.Errorf("%s: %d, want %d: %.80s", name, status, c.want, body)
		}
	}
	if b.file(demo) != before {
		t.Error("a refused request changed the file")
	}
	if status, _, _ := b.ask(change(func(r *http.Request) { r.Host = "localhost:1"; r.Header.Set("Origin", "http://localhost:1") })); status != http.StatusOK {
		t.Errorf("its own page: %d", status)
	}
}

// An open page is told of changes, its own server's and others'.
func TestEvents(t *testing.T) {
	b := newBench(t)
	ctx, cancel := context.WithTimeout(context.Background(), 3*time.Minute)
	defer cancel()
	r := b.request(http.MethodGet, "/api/events", "").WithContext(ctx)
	answer, err := http.DefaultClient.Do(r)
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	if kind := answer.Header.Get("Content-Type"); !strings.HasPrefix(kind, "text/event-stream") {
		t.Fatal(kind)
	}
	var heard strings.Builder
	until := func(want string) {
		t.Helper()
		for buf := make([]byte, 4096); !strings.Contains(heard.String(), want); {
			n, err := answer.Body.Read(buf)
			heard.Write(buf[:n])
			if err != nil {
				t.Fatalf("%v after %q", err, heard.String())
			}
		}
	}
	until("retry:")
	_, s, _ := b.post("/api/inputs", set(b.state(), "drawers", "4"))
	until("event: changed\ndata: " + s.Revision)
	b.write(demo, strings.Replace(b.file(demo), "count = 4", "count = 5", 1))
	until("data: " + b.state().Revision)
}

// Serve binds the loopback address only, and stops when it is told to, with an
// open page.
func TestServe(t *testing.T) {
	b := newBench(t)
	s, err := NewServer(b.desk, fstest.MapFS{"index.html": {Data: []byte("x")}})
	if err != nil {
		t.Fatal(err)
	}
	l, err := Listen(0)
	if err != nil {
		t.Fatal(err)
	}
	if !strings.HasPrefix(l.Addr().String(), "127.0.0.1:") {
		t.Errorf("bound to %v", l.Addr())
	}
	ctx, stop := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	go func() { ended <- s.Serve(ctx, l) }()
	answer, err := http.Get("http://" + l.Addr().String() + "/api/events")
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	stop()
	select {
	case err := <-ended:
		if err != nil {
			t.Error(err)
		}
	case <-time.After(10 * time.Second):
		t.Error("it does not stop")
	}
}

func FuzzWritten(f *testing.F) {
	for _, v := range []string{"350", "14 1/8 in", "3,5", `a"b`, "${x}", "%{if}", `\`, "true"} {
		f.Add("length", v)
		f.Add("choice", v)
	}
	b := "input \"x\" {\n  choice = %s\n}\n"
	f.Fuzz(func(t *testing.T, kind, value string) {
		text, err := written(kind, value)
		if err != nil {
			return
		}
		if strings.ContainsAny(text, "\n\r") {
			t.Fatalf("%q is written over lines: %q", value, text)
		}
		if plain, ok := readBack(fmt.Sprintf(b, text)); strings.HasPrefix(text, `"`) && (!ok || plain != strings.TrimSpace(value)) {
			t.Fatalf("%q is written as %s, which reads as %q", value, text, plain)
		}
	})
}
