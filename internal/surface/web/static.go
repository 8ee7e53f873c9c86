package web

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"io/fs"
	"net/http"
	"path"
	"strings"
	"time"
)

// static serves the built pages out of memory: only names that are there, with a
// tag of their contents.
type static struct{ files map[string]served }

type served struct {
	data []byte
	tag  string
	kind string
}

// kinds are the content types by the end of a name. Nothing else is served.
var kinds = map[string]string{
	".html": "text/html; charset=utf-8", ".js": "text/javascript; charset=utf-8", ".css": "text/css; charset=utf-8",
	".svg": "image/svg+xml", ".woff2": "font/woff2", ".woff": "font/woff", ".txt": "text/plain; charset=utf-8",
}

func newStatic(pages fs.FS) (*static, error) {
	s := &static{files: map[string]served{}}
	err := fs.WalkDir(pages, ".", func(name string, e fs.DirEntry, err error) error {
		kind := kinds[path.Ext(name)]
		if err != nil || e.IsDir() || kind == "" {
			return err
		}
		data, err := fs.ReadFile(pages, name)
		if err != nil {
			return err
		}
		sum := sha256.Sum256(data)
		s.files["/"+name] = served{data, `"` + hex.EncodeToString(sum[:8]) + `"`, kind}
		return nil
	})
	return s, err
}

func (s *static) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	name := r.URL.Path
	if strings.HasSuffix(name, "/") {
		name += "index.html"
	}
	p, ok := s.files[name]
	if !ok {
		http.NotFound(w, r)
		return
	}
	w.Header().Set("Content-Type", p.kind)
	w.Header().Set("ETag", p.tag)
	w.Header().Set("Cache-Control", "no-cache")
	http.ServeContent(w, r, "", time.Time{}, bytes.NewReader(p.data))
}
